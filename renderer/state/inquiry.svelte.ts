import solverAddress from 'virtual:solver-worker';
import type { FromPaper, PaperKind, PaperWork, ToPaper } from './paper-messages.ts';

/** After this long an old question is given up for a newer one; sooner it is let finish [ms]. */
const PATIENCE_MS = 700;

/**
 * A question that is asked again whenever something changes, answered beside the page by a worker of its own. While it
 * works only the newest question waits, and the last answer stays until the next is there.
 */
export class Inquiry<K extends PaperKind> {
  answer = $state.raw<PaperWork[K]['answer'] | null>(null);
  busy = $state(false);
  /** What went wrong in the reckoning itself. */
  fault = $state<string | null>(null);

  private worker: Worker | null = null;
  private waiting: PaperWork[K]['asked'] | null = null;
  private serial = 0;
  private working = false;
  private since_ms = 0;

  constructor(private readonly of: K) {}

  ask(asked: PaperWork[K]['asked']): void {
    this.waiting = asked;
    this.busy = true;
    // what nobody waits for any more is not worked out to its end
    if (this.working && performance.now() - this.since_ms > PATIENCE_MS) this.close();
    this.next();
  }

  close(): void {
    this.worker?.terminate();
    this.worker = null;
    this.working = false;
  }

  private next(): void {
    if (this.working || this.waiting === null) return;
    if (this.worker === null) {
      this.worker = new Worker(solverAddress, { type: 'module' });
      this.worker.onmessage = ({ data }: MessageEvent<FromPaper>) => this.take(data);
    }
    this.working = true;
    this.since_ms = performance.now();
    const asked = this.waiting;
    this.waiting = null;
    const message = { kind: 'paper', of: this.of, serial: ++this.serial, asked };
    this.worker.postMessage(message as unknown as ToPaper);
  }

  private take(data: FromPaper): void {
    if (data.serial !== this.serial) return;
    if (data.ok) this.answer = data.answer;
    this.fault = data.ok ? null : data.message;
    this.working = false;
    if (this.waiting === null) this.busy = false;
    else this.next();
  }
}
