import type { Finding, RunResult } from '../../core/network/solution.ts';

/** How a run fares; each has a word, a mark and a colour. */
export type RunStatus = 'holds' | 'slim' | 'too-slow' | 'too-little' | 'fast' | 'shut' | 'no-requirement';

export const STATUS_WORDS: Readonly<Record<RunStatus, string>> = {
  holds: 'holds',
  slim: 'holds barely',
  'too-slow': 'too slow',
  'too-little': 'too little air',
  fast: 'fast',
  shut: 'shut',
  'no-requirement': 'no requirement',
};

/** Strokes of each mark from the upper left corner of a square of 10 by 10; the word stands beside it always. */
export const STATUS_MARKS: Readonly<Record<RunStatus, string>> = {
  holds: 'm1 5.5l3 3l5 -7',
  slim: 'm3 5.5l2.2 2.5l3.8 -5',
  'too-slow': 'm1 2h8l-4 7z',
  'too-little': 'm1 2h8l-4 7z',
  fast: 'm1 1.5l3.5 3.5l-3.5 3.5m4.5 -7l3.5 3.5l-3.5 3.5',
  shut: 'm1 5h8',
  'no-requirement': 'm4 5a1 1 0 1 0 2 0a1 1 0 1 0 -2 0',
};

export const STATUS_INK: Readonly<Record<RunStatus, string>> = {
  holds: 'var(--holds)',
  slim: 'var(--slim)',
  'too-slow': 'var(--too-slow)',
  'too-little': 'var(--too-slow)',
  fast: 'var(--fast)',
  shut: 'var(--ink-2)',
  'no-requirement': 'var(--ink-2)',
};

/** Ids of runs whose velocity is close to what is needed, or wastefully high, by what the checks say. */
export interface SpeedFindings {
  readonly close: ReadonlySet<string>;
  readonly high: ReadonlySet<string>;
}

export function speedFindings(findings: readonly Finding[]): SpeedFindings {
  const where = (code: string) => new Set(findings.filter((f) => f.code === code).map((f) => f.where));
  return { close: where('velocity-close'), high: where('velocity-high') };
}

export function runStatus(result: RunResult, speeds: SpeedFindings): RunStatus {
  if (result.massFlow_kgs === 0) return 'shut';
  if (result.holds === null) return 'no-requirement';
  if (!result.holds) {
    const { velocity_ms: v, requiredVelocity_ms: need } = result;
    return need !== null && (v ?? 0) < need ? 'too-slow' : 'too-little';
  }
  if (speeds.high.has(result.id)) return 'fast';
  return speeds.close.has(result.id) ? 'slim' : 'holds';
}
