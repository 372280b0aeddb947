import type { CauseId, UsedRange } from './ranges.ts';

/**
 * How likely the shop holds in one gate setting. Plain data in SI, gauge pressures; what does not apply is null, never
 * absent. The screen, the paper and the command line read this and work nothing out again.
 */
export interface Chance {
  readonly document: string;
  readonly setting: string;
  readonly samples: number;
  readonly seed: number;
  /** Whether the shop as drawn has a solution; without one nothing is drawn and the lists are empty. */
  readonly converged: boolean;
  readonly reason: string | null;
  readonly reasonText: string | null;
  readonly failures: Failures;
  readonly ranges: readonly UsedRange[];
  readonly runs: readonly RunChance[];
  readonly fans: readonly FanChance[];
  /** Run that is least likely to hold; of equals the one with the least margin as drawn. Null where none is asked. */
  readonly worstRun: string | null;
  /** Largest causes of the spread of the worst run's margin, largest first. */
  readonly causes: readonly CauseShare[];
  readonly sentence: string;
}

/** Samples that have no balance, or one where nothing is known; in such a sample no run holds. */
export interface Failures {
  readonly count: number;
  /** How many for each reason of the solver's list. */
  readonly byReason: Readonly<Record<string, number>>;
}

/** What 5, 50 and 95 of 100 samples lie below; of those that have a balance. */
export interface Band {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export interface RunChance {
  readonly id: string;
  readonly name: string | null;
  readonly from: string;
  readonly to: string;
  readonly requiredVelocity_ms: number | null;
  readonly requiredFlow_m3s: number | null;
  /** As drawn, with every figure at its nominal value; see `RunResult.holds`. */
  readonly holds: boolean | null;
  readonly nominalVelocity_ms: number | null;
  readonly nominalFlow_m3s: number;
  /** Share of the samples in which it holds [-]; null where nothing is asked or no air moves. */
  readonly probability: number | null;
  /** Standard error of that share from the number of samples alone [-]. */
  readonly probabilityError: number | null;
  /** As in `RunResult`: the lowest velocity in a straight piece. */
  readonly velocity_ms: Band | null;
  readonly flow_m3s: Band | null;
  /** What the causes are shares of: velocity or flow, less the required one; that which has less to spare as drawn. */
  readonly margin: 'velocity' | 'flow' | null;
  /** Largest first; empty where nothing is asked or nothing is spread. */
  readonly causes: readonly CauseShare[];
  /** Share of the margin's variance that the causes explain, each by itself [-]; the rest is curvature and interplay. */
  readonly explained: number | null;
}

/** Share of the variance of a margin that goes with one cause alone. */
export interface CauseShare {
  readonly cause: CauseId;
  readonly label: string;
  /** First-order share [-]. */
  readonly share: number;
  /** Standard error of it from the number of samples [-]. */
  readonly error: number;
}

export interface FanChance {
  readonly id: string;
  readonly flow_m3s: Band;
  readonly staticPressure_Pa: Band;
  readonly totalPressure_Pa: Band;
  /** Some of the samples, in the order in which they were drawn, for a chart. */
  readonly cloud: readonly FanPoint[];
}

export interface FanPoint {
  readonly flow_m3s: number;
  readonly staticPressure_Pa: number;
  readonly totalPressure_Pa: number;
}
