/** One step that can be undone: what the user would call it, and the document on either side. */
export interface Step<D> {
  readonly label: string;
  readonly before: D;
  readonly after: D;
}

/**
 * Undo and redo without limit. Documents share what an edit did not touch, so a step costs only what changed. Between
 * `begin` and `end` everything is one step, as a drag is.
 */
export class History<D> {
  private past: Step<D>[] = [];
  private future: Step<D>[] = [];
  private open: { label: string; before: D; depth: number } | null = null;

  constructor(private current: D) {}

  get document(): D {
    return this.current;
  }

  get undoLabel(): string | null {
    return this.open?.label ?? this.past.at(-1)?.label ?? null;
  }

  get redoLabel(): string | null {
    return this.open ? null : (this.future.at(-1)?.label ?? null);
  }

  /** What was done since the document was opened, the newest last. */
  get steps(): readonly Step<D>[] {
    return this.past;
  }

  /** Starts afresh with another document. */
  reset(document: D): void {
    this.current = document;
    this.past = [];
    this.future = [];
    this.open = null;
  }

  /** Takes an edit. */
  push(label: string, after: D): void {
    if (after === this.current) return;
    if (!this.open) this.past.push({ label, before: this.current, after });
    this.future = [];
    this.current = after;
  }

  begin(label: string): void {
    if (this.open) this.open.depth++;
    else this.open = { label, before: this.current, depth: 1 };
  }

  /** Closes what `begin` opened; a gesture that changed nothing leaves no step. */
  end(): void {
    if (!this.open || --this.open.depth > 0) return;
    const { label, before } = this.open;
    this.open = null;
    if (before !== this.current) this.past.push({ label, before, after: this.current });
  }

  /** Drops what has happened since `begin`. */
  cancel(): void {
    if (!this.open) return;
    this.current = this.open.before;
    this.open = null;
  }

  undo(): boolean {
    if (this.open) {
      // undo in the middle of a gesture takes the gesture back
      this.cancel();
      return true;
    }
    const step = this.past.pop();
    if (!step) return false;
    this.future.push(step);
    this.current = step.before;
    return true;
  }

  redo(): boolean {
    const step = this.open ? undefined : this.future.pop();
    if (!step) return false;
    this.past.push(step);
    this.current = step.after;
    return true;
  }
}
