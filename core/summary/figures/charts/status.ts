import type { RunResult, SettingResult } from '../../../network/solution.ts';
import { NO_VALUE } from '../../../quantities/print.ts';

/** How a run stands, in the order of how bad it is; `none` asks for nothing. */
export type RunStatus = 'backwards' | 'too slow' | 'short' | 'slim' | 'fast' | 'holds' | 'none' | 'shut';

/** A status as it is shown: never by its colour alone. */
export interface StatusLook {
  readonly word: string;
  /** SVG path in a box of 12 by 12. */
  readonly mark: string;
  /** Whether the mark is filled; else it is a stroke. */
  readonly filled: boolean;
  /** What it means, in a sentence for a tooltip. */
  readonly meaning: string;
}

export const STATUS_LOOKS: Readonly<Record<RunStatus, StatusLook>> = {
  holds: {
    word: 'holds',
    mark: 'M2 6.5 L5 9.5 L10 2.5',
    filled: false,
    meaning: 'the velocity and flow that are needed are held',
  },
  slim: {
    word: 'slim',
    mark: 'M2 6.5 L5 9.5 L7 6.5',
    filled: false,
    meaning: 'held by less than 5 %; a filter that fills will take that away',
  },
  'too slow': {
    word: 'too slow',
    mark: 'M1.5 2.5 H10.5 L6 10.5 Z',
    filled: true,
    meaning: 'slower than the chips need; they will settle',
  },
  short: {
    word: 'short of air',
    mark: 'M1.5 2.5 H10.5 L6 10.5 Z',
    filled: false,
    meaning: 'the velocity is held, but less air flows than the port needs to catch the dust',
  },
  fast: {
    word: 'fast',
    mark: 'M2 2 L6 6 L2 10 M6 2 L10 6 L6 10',
    filled: false,
    meaning: 'faster than it need be; loss grows with the square of velocity',
  },
  backwards: {
    word: 'backwards',
    mark: 'M10.5 6 H2 M5.5 2 L1.5 6 L5.5 10',
    filled: false,
    meaning: 'air blows out of a port, or in at an exhaust',
  },
  shut: {
    word: 'shut',
    mark: 'M6 1.5 V10.5',
    filled: false,
    meaning: 'no air moves here: a gate is shut, or nothing draws on it',
  },
  none: {
    word: 'nothing asked',
    mark: 'M6 4.2 A1.8 1.8 0 1 1 5.99 4.2 Z',
    filled: true,
    meaning: 'no velocity or flow is asked of this run',
  },
};

/** A run that holds by less than this share is slim. */
export const SLIM_MARGIN = 0.05;

/** By how much a run holds: the smaller of what velocity and flow have in hand; null where nothing is asked or moves. */
export function marginOf(run: RunResult): number | null {
  if (run.massFlow_kgs === 0) return null;
  const margins = [
    ...(run.requiredVelocity_ms ? [(run.velocity_ms ?? 0) / run.requiredVelocity_ms - 1] : []),
    ...(run.requiredFlow_m3s ? [run.flow_m3s / run.requiredFlow_m3s - 1] : []),
  ];
  return margins.length > 0 ? Math.min(...margins) : null;
}

/** Whether air comes out of a port or in at an exhaust. */
const wrongWay = (run: RunResult): boolean =>
  run.massFlow_kgs < 0 && (run.pieces[0]?.kind === 'hood' || run.pieces.at(-1)?.kind === 'exhaust');

function judge(run: RunResult, fast: boolean): RunStatus {
  if (run.massFlow_kgs === 0) return 'shut';
  if (wrongWay(run)) return 'backwards';
  if (run.requiredVelocity_ms !== null && (run.velocity_ms ?? 0) < run.requiredVelocity_ms) return 'too slow';
  if (run.holds === false) return 'short';
  const margin = marginOf(run);
  if (margin !== null && margin < SLIM_MARGIN) return 'slim';
  if (fast) return 'fast';
  return margin === null ? 'none' : 'holds';
}

/**
 * How a run stands.
 *
 * @param high_ms - velocity above which the run is wastefully fast [m/s]; where a whole result is at hand,
 *   `statusesOf` takes it from the findings
 */
export function statusOf(run: RunResult, high_ms: number | null = null): RunStatus {
  return judge(run, high_ms !== null && (run.velocity_ms ?? 0) > high_ms);
}

/** How every run of a setting stands, by id. */
export function statusesOf(result: SettingResult): ReadonlyMap<string, RunStatus> {
  const fast = new Set(result.findings.filter((f) => f.code === 'velocity-high').map((f) => f.where));
  return new Map(result.runs.map((run) => [run.id, judge(run, fast.has(run.id))]));
}

/** A margin as text, cut and not rounded, so that a slim one never reads as a good one: `+29 %`, `-3.2 %`. */
export function marginText(margin: number | null): string {
  if (margin === null) return NO_VALUE;
  const percent = Math.abs(margin) * 100;
  const figure = percent < 10 ? (Math.trunc(percent * 10) / 10).toFixed(1) : String(Math.trunc(percent));
  return `${margin < 0 ? '-' : '+'}${figure} %`;
}
