import type { ShopDocument } from '../../core/document/schema.ts';
import { SolverBench } from './solver-bench.ts';
import type { ProblemsAnswer, SettingAnswer } from './solver-messages.ts';

/** Longest that a solve may keep the page from its next frame [ms]. */
export const PAGE_BUDGET_MS = 12;
/** The middle one of so many solves decides, so that one slow one does not; a shop that grew at once does. */
const LAST = 5;
const GROWN = 4;
/** Solves by which the page's own code gets quick before it is relied upon, unless the first are as slow as this [ms]. */
const WARM_UPS = 5;
const HOPELESS_MS = 60;

/**
 * Solves the setting on screen in the page itself, so that the result stands in the same frame as the edit: a worker's
 * answer comes a frame later at best. Only shops that were solved within the budget of late are; what takes longer would
 * make the page halt, and is left to the worker.
 */
export class PageSolver {
  private readonly solver = new SolverBench();
  private times_ms: readonly number[] = [];
  private warmed = 0;

  /** Takes note of how long a solve took, wherever. */
  note(took_ms: number): void {
    this.times_ms = took_ms > GROWN * PAGE_BUDGET_MS ? [took_ms] : [...this.times_ms, took_ms].slice(-LAST);
  }

  /** Another shop: nothing is known of it yet. */
  forget(): void {
    this.times_ms = [];
    this.warmed = 0;
    this.solver.bench = null;
  }

  /** Nothing of this shop has been solved yet, here or in the worker. */
  get fresh(): boolean {
    return this.times_ms.length === 0;
  }

  get ready(): boolean {
    return this.warmed >= WARM_UPS && this.usual_ms <= PAGE_BUDGET_MS;
  }

  /** Worth practising. */
  get cold(): boolean {
    return this.warmed < WARM_UPS && (this.warmed < 2 || this.usual_ms < HOPELESS_MS);
  }

  private get usual_ms(): number {
    const sorted = [...this.times_ms].sort((a, b) => a - b);
    return sorted[Math.floor(sorted.length / 2)] ?? Infinity;
  }

  /** Solves for practice, while the user does nothing. */
  warm(document: ShopDocument, setting: string): void {
    this.warmed++;
    this.now(document, setting, 0, true);
  }

  now(
    document: ShopDocument,
    setting: string,
    serial: number,
    last: boolean,
  ): SettingAnswer | ProblemsAnswer | null {
    const answers: (SettingAnswer | ProblemsAnswer)[] = [];
    this.solver.solve(document, [setting], serial, last, (given) => answers.push(given));
    const answer = answers[0] ?? null;
    if (answer?.kind === 'setting') this.note(answer.took_ms);
    return answer;
  }
}
