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

/** Strokes of each mark in a square of 10 by 10; the word stands beside it always. */
export const STATUS_MARKS: Readonly<Record<RunStatus, string>> = {
  holds: 'M1 5.5L4 8.5L9 1.5',
  slim: 'M3 5.5L5.2 8L9 3',
  'too-slow': 'M1 2H9L5 9Z',
  'too-little': 'M1 2H9L5 9Z',
  fast: 'M1 1.5L4.5 5L1 8.5M5.5 1.5L9 5L5.5 8.5',
  shut: 'M1 5H9',
  'no-requirement': 'M4 5a1 1 0 1 0 2 0a1 1 0 1 0 -2 0',
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
