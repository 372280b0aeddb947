import type { ShopDocument } from '../../core/document/schema.ts';
import type { SystemCurve } from '../../core/network/system-curve.ts';
import type { FromSolver, ToSolver } from './solver-messages.ts';

/** A curve that somebody waits for. */
interface Asked {
  readonly setting: string;
  readonly fan: string | null;
  readonly speed: number;
  readonly done: (curve: SystemCurve | null) => void;
}

/** Sends documents to the worker, one at a time: while it works only the newest waits, the ones between are dropped. */
export class Solver {
  private readonly worker: Worker;
  private serial = 0;
  private busy = false;
  private waiting: { document: ShopDocument; setting: string } | null = null;
  private curveWaiting: { setting: string; fan: string | null } | null = null;
  private readonly asked: Asked[] = [];
  /** Who waits for what the worker does now. */
  private serving: Asked | null = null;

  constructor(private readonly onAnswer: (answer: FromSolver, newest: boolean) => void) {
    this.worker = new Worker(new URL('./solver.worker.ts', import.meta.url), { type: 'module' });
    this.worker.onmessage = ({ data }: MessageEvent<FromSolver>) => {
      const done = data.kind !== 'setting' || data.last;
      const { serving } = this;
      if (serving) serving.done(data.kind === 'curve' ? data.curve : null);
      else this.onAnswer(data, data.serial === this.serial && this.waiting === null);
      if (!done) return;
      this.busy = false;
      this.serving = null;
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

  /**
   * A curve beside the one on screen, of the document that was solved last; null where it has none.
   *
   * @param speed - speed of the fan over the one it has in the shop
   */
  curveOf(setting: string, fan: string | null, speed = 1): Promise<SystemCurve | null> {
    return new Promise((done) => {
      this.asked.push({ setting, fan, speed, done });
      this.next();
    });
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
      this.post({ kind: 'curve', serial: this.serial, setting, fan, speed: 1 });
    } else if (this.asked.length > 0) {
      this.serving = this.asked.shift()!;
      const { setting, fan, speed } = this.serving;
      this.post({ kind: 'curve', serial: this.serial, setting, fan, speed });
    }
  }

  private post(message: ToSolver): void {
    this.busy = true;
    this.worker.postMessage(message);
  }
}
