/** The hand rests when nothing has been asked for so long [ms]. */
const REST_MS = 80;
/** What follows a hand that does not rest, follows it as often as this [ms]. */
const MOST_MS = 500;

/**
 * Does something when the hand rests: after the frame that shows the edit itself, and not in the way of the next edit of a
 * drag or of quick typing.
 */
export class AtRest {
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** When it was asked for first and last since it was done [ms]; null when nothing waits. */
  private first_ms: number | null = null;
  private last_ms = 0;

  constructor(
    private readonly act: () => void,
    private readonly rest_ms = REST_MS,
    private readonly most_ms = MOST_MS,
  ) {}

  ask(): void {
    this.last_ms = performance.now();
    if (this.first_ms !== null) return;
    this.first_ms = this.last_ms;
    this.timer = setTimeout(() => this.look(), this.rest_ms);
  }

  /** Forgets what waits. */
  drop(): void {
    clearTimeout(this.timer);
    this.first_ms = null;
  }

  // setting the timer anew at each edit would cost more than looking how long ago the last one was
  private look(): void {
    if (this.first_ms === null) return;
    const left_ms = Math.min(this.last_ms + this.rest_ms, this.first_ms + this.most_ms) - performance.now();
    if (left_ms > 0) {
      this.timer = setTimeout(() => this.look(), left_ms);
      return;
    }
    this.first_ms = null;
    this.act();
  }
}
