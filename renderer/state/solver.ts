import solverAddress from 'virtual:solver-worker';
import type { ShopDocument } from '../../core/document/schema.ts';
import { settingNames } from '../../core/network/apply-setting.ts';
import type { SystemCurve } from '../../core/network/system-curve.ts';
import { AtRest } from './at-rest.ts';
import { patchOf } from './document-patch.ts';
import { PageSolver } from './page-solver.ts';
import type { FromSolver, ToSolver } from './solver-messages.ts';

/** A curve that somebody waits for. */
interface Asked {
  readonly setting: string;
  readonly fan: string | null;
  readonly speed: number;
  readonly done: (curve: SystemCurve | null) => void;
}

type Task = ToSolver extends infer T ? (T extends unknown ? Omit<T, 'serial' | 'patch'> : never) : never;

/** How long an idle page may put a practice solve off [ms]. */
const PRACTICE_WITHIN_MS = 2000;
/** A shop of so many runs, just opened, is solved in the page before a worker could have started. */
const FEW_RUNS = 16;

/**
 * Solves documents: the setting on screen of a shop that is quick to solve in the page, at once, and all else in the
 * worker. The worker gets one task at a time, and while it works only the newest document waits; those between are dropped.
 */
export class Solver {
  private worker: Worker | null = null;
  private readonly page = new PageSolver();
  private serial = 0;
  private busy = false;
  /** The newest document, and the setting on screen. */
  private newest: { document: ShopDocument; setting: string } | null = null;
  /** The document as the worker has it. */
  private sent: ShopDocument | null = null;
  /** Settings of the newest document that the worker is to solve. */
  private waiting: readonly string[] | null = null;
  private readonly others = new AtRest(() => this.next());
  private curveWaiting: { setting: string; fan: string | null } | null = null;
  private readonly asked: Asked[] = [];
  /** Who waits for what the worker does now. */
  private serving: Asked | null = null;

  constructor(private readonly onAnswer: (answer: FromSolver, newest: boolean) => void) {}

  /** Starts the worker; it comes after the first result where the page has that by itself. */
  private startWorker(): Worker {
    const worker = new Worker(solverAddress, { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<FromSolver>) => {
      const done = data.kind !== 'setting' || data.last;
      const { serving } = this;
      if (serving) serving.done(data.kind === 'curve' ? data.curve : null);
      else this.onAnswer(data, data.serial === this.serial);
      if (data.kind === 'setting' && data.result.name === this.newest?.setting) this.page.note(data.took_ms);
      if (!done) return;
      this.busy = false;
      this.serving = null;
      this.next();
      if (data.kind === 'setting') this.practise();
    };
    return worker;
  }

  /** Another shop comes. */
  forget(): void {
    this.page.forget();
  }

  solve(document: ShopDocument, setting: string): void {
    const serial = ++this.serial;
    this.newest = { document, setting };
    const others = settingNames(document).filter((name) => name !== setting);
    const opened = this.page.fresh && document.runs.length <= FEW_RUNS;
    const inPage = this.page.ready || opened;
    const answer = inPage ? this.page.now(document, setting, serial, others.length === 0) : null;
    if (opened) this.practise();
    if (answer === null) {
      this.waiting = [setting, ...others];
      this.next();
      return;
    }
    this.waiting = answer.kind === 'setting' && others.length > 0 ? others : null;
    this.onAnswer(answer, true);
    // what nobody looks at does not hold the next edit up
    if (this.waiting) this.others.ask();
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
      const settings = this.waiting;
      this.waiting = null;
      this.post({ kind: 'solve', settings });
    } else if (this.curveWaiting) {
      const { setting, fan } = this.curveWaiting;
      this.curveWaiting = null;
      this.post({ kind: 'curve', setting, fan, speed: 1 });
    } else if (this.asked.length > 0) {
      this.serving = this.asked.shift()!;
      const { setting, fan, speed } = this.serving;
      this.post({ kind: 'curve', setting, fan, speed });
    }
  }

  private post(task: Task): void {
    this.busy = true;
    const document = this.newest?.document ?? null;
    const patch = document && document !== this.sent ? patchOf(this.sent, document) : null;
    this.sent = document;
    this.worker ??= this.startWorker();
    this.worker.postMessage({ ...task, serial: this.serial, patch } satisfies ToSolver);
  }

  /** Gets the page's own solver ready while nothing else is to be done. */
  private practise(): void {
    if (!this.page.cold || typeof requestIdleCallback !== 'function') return;
    requestIdleCallback(
      () => {
        this.worker ??= this.startWorker();
        if (!this.page.cold || !this.newest) return;
        this.page.warm(this.newest.document, this.newest.setting);
        this.practise();
      },
      { timeout: PRACTICE_WITHIN_MS },
    );
  }
}
