/**
 * Does what is asked at most once a frame. Pointers may report faster than the screen paints: the first place of a frame
 * is worked out at once, so that the frame shows it, and of those after it only the newest, in the next.
 */
export class OnceAFrame {
  private frame = 0;
  private next: (() => void) | null = null;

  ask(act: () => void): void {
    this.next = act;
    if (this.frame === 0) this.doNext();
  }

  private doNext(): void {
    this.frame = 0;
    const next = this.next;
    this.next = null;
    if (!next) return;
    next();
    this.frame = requestAnimationFrame(() => this.doNext());
  }

  /** Does what waits, at once. */
  flush(): void {
    this.next?.();
    this.drop();
  }

  /** Forgets what waits. */
  drop(): void {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.next = null;
  }
}
