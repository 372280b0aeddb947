import type { ShopDocument } from '../../core/document/schema.ts';
import type { FromSolver, ToSolver } from './solver-messages.ts';

/** Sends documents to the worker, one at a time: while it works only the newest waits, the ones between are dropped. */
export class Solver {
  private readonly worker: Worker;
  private serial = 0;
  private busy = false;
  private waiting: { document: ShopDocument; setting: string } | null = null;
  private curveWaiting: { setting: string; fan: string | null } | null = null;

  constructor(private readonly onAnswer: (answer: FromSolver, newest: boolean) => void) {
    this.worker = new Worker(new URL('./solver.worker.ts', import.meta.url), { type: 'module' });
    this.worker.onmessage = ({ data }: MessageEvent<FromSolver>) => {
      const done = data.kind !== 'setting' || data.last;
      this.onAnswer(data, data.serial === this.serial && this.waiting === null);
      if (!done) return;
      this.busy = false;
      this.next();
    };
  }

  solve(document: ShopDocument, setting: string): void {
    this.waiting = { document, setting };
    this.next();
  }

  curve(setting: string, fan: string | null): void {
    this.curveWaiting = { setting, fan };
    this.next();
  }

  private next(): void {
    if (this.busy) return;
    if (this.waiting) {
      const { document, setting } = this.waiting;
      this.waiting = null;
      this.post({ kind: 'solve', serial: ++this.serial, document, setting });
    } else if (this.curveWaiting) {
      const { setting, fan } = this.curveWaiting;
      this.curveWaiting = null;
      this.post({ kind: 'curve', serial: this.serial, setting, fan });
    }
  }

  private post(message: ToSolver): void {
    this.busy = true;
    this.worker.postMessage(message);
  }
}
