import type { ShopDocument } from '../../core/document/schema.ts';
import { openShop, solveSetting } from '../../core/network/solve.ts';
import type { Workbench } from '../../core/network/solve.ts';
import type { ProblemsAnswer, SettingAnswer } from './solver-messages.ts';

/** Solves one document after the other, each warm from the one before; in the worker and in the page alike. */
export class SolverBench {
  bench: Workbench | null = null;

  /** Solves settings in order, and hands out each as soon as it is there. */
  solve(
    document: ShopDocument,
    settings: readonly string[],
    serial: number,
    last: boolean,
    out: (answer: SettingAnswer | ProblemsAnswer) => void,
  ): void {
    const started = performance.now();
    try {
      const opened = openShop(document, this.bench);
      if (!opened.ok) {
        out({ kind: 'problems', serial, problems: opened.problems });
        return;
      }
      const { bench } = opened;
      this.bench = bench;
      settings.forEach((name, i) => {
        const result = solveSetting(bench, name);
        const took_ms = performance.now() - started;
        const ends = last && i === settings.length - 1;
        out({ kind: 'setting', serial, result, air: bench.shop.air, last: ends, took_ms });
      });
    } catch (cause) {
      out({ kind: 'problems', serial, problems: [faultOf(cause)] });
    }
  }
}

/** A fault of the solver itself, in words. */
export function faultOf(cause: unknown): ProblemsAnswer['problems'][number] {
  const message = cause instanceof Error ? cause.message : String(cause);
  return {
    path: '',
    message: `the solver met a fault of its own: ${message}`,
    remedy: 'undo, and report it',
  };
}
