import { ImpossibleInput, requirePositive } from '../quantities/impossible-input.ts';
import type { GradeCurve } from './efficiency.ts';

/** Lognormal distribution of dust mass over particle size. */
export interface SizeDistribution {
  /** Half of the mass is finer [m]. */
  readonly median_m: number;
  /** Geometric standard deviation, 1 for dust of one size [-]. */
  readonly geometricDeviation: number;
}

/** Standard deviations to each side of the median that the sum covers; the rest holds 6e-16 of the mass. */
const REACH = 8.125;
/** Step of the sum in standard deviations. */
const STEP = 1 / 32;

/** Points of the rule in standard deviations, with their weights before scaling. */
const RULE: readonly { readonly z: number; readonly weight: number }[] = Array.from(
  { length: 2 * Math.round(REACH / STEP) + 1 },
  (_, i) => {
    const z = -REACH + i * STEP;
    return { z, weight: Math.exp(-0.5 * z * z) };
  },
);

/** Sizes at the points of the rule, written anew for each sum: it stands in the inner loop of a long march [m]. */
const SIZES = new Float64Array(RULE.length);

/** Throws unless the distribution can be; returns `ln` of its median and deviation. */
function logarithms(size: SizeDistribution): { readonly median: number; readonly deviation: number } {
  requirePositive('median_m', size.median_m);
  requirePositive('geometricDeviation', size.geometricDeviation);
  if (size.geometricDeviation < 1) {
    throw new ImpossibleInput('geometricDeviation', size.geometricDeviation, 'at least 1');
  }
  return { median: Math.log(size.median_m), deviation: Math.log(size.geometricDeviation) };
}

/** Calls `visit(d, weight)` at each point of the rule; weights sum to 1. Sizes beyond double range are dropped. */
function eachSize(size: SizeDistribution, visit: (diameter_m: number, weight: number) => void): void {
  const { median, deviation } = logarithms(size);
  if (deviation === 0) {
    visit(size.median_m, 1);
    return;
  }
  let sum = 0;
  RULE.forEach(({ z, weight }, i) => {
    const diameter_m = Math.exp(median + deviation * z);
    SIZES[i] = diameter_m;
    if (diameter_m > 0 && diameter_m < Infinity) sum += weight;
  });
  RULE.forEach(({ weight }, i) => {
    const diameter_m = SIZES[i]!;
    if (diameter_m > 0 && diameter_m < Infinity) visit(diameter_m, weight / sum);
  });
}

/**
 * Share of the dust mass that a separator catches.
 *
 * The grade efficiency is averaged over a lognormal feed: `E = integral eta(d) dm/d(ln d) d(ln d)`. The trapezoid rule
 * in `ln d` over 8 deviations to each side converges exponentially for a smooth grade curve.
 *
 * @param grade - share caught [-] of each size [m]
 * @param size - mass median [m] and geometric deviation [-] of the feed
 * @returns share of the mass caught [-], 0 to 1
 * @throws ImpossibleInput naming `median_m` not above zero or `geometricDeviation` below 1
 *
 * @remarks
 * Range: grade curves that vary smoothly over a thirtieth of a deviation, as all of GRADE_MODELS.
 * Outside: a curve with a jump is right to about 3e-3.
 * Leaves out: feeds that are not lognormal; real chips have a second, coarse peak.
 * Limits: a deviation of 1 gives the grade at the median.
 * Basis: from-memory (definition of a mass average).
 * Source: none, numerical integration as in Vatavuk, EPA-450/2-73-002, 1973.
 * Checked: test/reference/catch.test.ts (two closed forms; second quadrature to 1e-6).
 *
 * @example
 * ```ts
 * lognormalCatch((d) => 1 / (1 + (3.8e-6 / d) ** 2), { median_m: 50e-6, geometricDeviation: 3 }); // 0.96472
 * ```
 */
export function lognormalCatch(grade: GradeCurve, size: SizeDistribution): number {
  let caught = 0;
  eachSize(size, (diameter_m, weight) => (caught += weight * grade(diameter_m)));
  return Math.min(1, caught);
}

/** What separators in series catch, as shares of the feed of the first. */
export interface SeriesCatch {
  /** Caught by all of them together [-]. */
  readonly caught: number;
  /** Caught by each, in the order of flow; they sum to `caught` [-]. */
  readonly byStage: readonly number[];
}

/**
 * Share of the dust mass that separators in series catch.
 *
 * At each size the shares that pass are multiplied, then the product is averaged over the feed. Multiplying average
 * shares instead would count the coarse dust twice.
 *
 * @param stages - grade curves, share caught [-] of each size [m], in the order of flow
 * @param size - mass median [m] and geometric deviation [-] of the feed
 * @returns share caught [-] by all and by each, of the feed of the first
 * @throws ImpossibleInput naming `median_m` not above zero or `geometricDeviation` below 1
 *
 * @remarks
 * Range: as lognormalCatch.
 * Outside: as lognormalCatch.
 * Leaves out: clumps that the first stage breaks up or makes.
 * Limits: no stage catches nothing; one stage gives lognormalCatch.
 * Basis: from-memory (mass balance).
 * Source: none, mass balance at each size.
 * Checked: test/core/separator/catch.test.ts (single, equal stages, never below the better one).
 *
 * @example
 * ```ts
 * seriesCatch([() => 0.5, () => 0.5], { median_m: 50e-6, geometricDeviation: 3 }).caught; // 0.75
 * ```
 */
export function seriesCatch(stages: readonly GradeCurve[], size: SizeDistribution): SeriesCatch {
  const byStage = stages.map(() => 0);
  eachSize(size, (diameter_m, weight) => {
    let left = weight;
    stages.forEach((grade, index) => {
      const kept = left * grade(diameter_m);
      byStage[index]! += kept;
      left -= kept;
    });
  });
  const caught = byStage.reduce((sum, share) => sum + share, 0);
  return { caught: Math.min(1, caught), byStage };
}

/**
 * Mass median of the dust that passes separators in series.
 *
 * The feed at each size is multiplied by the shares that pass; the median is where half of the rest is finer.
 *
 * @param stages - grade curves, share caught [-] of each size [m]
 * @param size - mass median [m] and geometric deviation [-] of the feed
 * @returns mass median of what passes [m], or null where less than 1e-12 of the feed passes
 * @throws ImpossibleInput naming `median_m` not above zero or `geometricDeviation` below 1
 *
 * @remarks
 * Range: as lognormalCatch.
 * Outside: as lognormalCatch.
 * Leaves out: clumps; what passes is no longer lognormal, so the median alone describes it roughly.
 * Limits: without a stage the median of the feed.
 * Basis: from-memory (mass balance).
 * Source: none, mass balance at each size.
 * Checked: test/core/separator/catch.test.ts (closed form of a lognormal grade).
 *
 * @example
 * ```ts
 * penetratedMedian([() => 0.5], { median_m: 50e-6, geometricDeviation: 3 })! * 1e6; // 50.00
 * ```
 */
export function penetratedMedian(stages: readonly GradeCurve[], size: SizeDistribution): number | null {
  const passed: { readonly log: number; readonly mass: number }[] = [];
  let total = 0;
  eachSize(size, (diameter_m, weight) => {
    const mass = stages.reduce((left, grade) => left * (1 - grade(diameter_m)), weight);
    total += mass;
    passed.push({ log: Math.log(diameter_m), mass });
  });
  if (!(total > 1e-12)) return null;
  let below = 0;
  let previous = passed[0]!;
  for (const point of passed) {
    const step = (previous.mass + point.mass) / 2; // trapezoid between two points
    if (point !== previous && below + step >= total / 2) {
      const share = step > 0 ? (total / 2 - below) / step : 0;
      return Math.exp(previous.log + share * (point.log - previous.log));
    }
    if (point !== previous) below += step;
    previous = point;
  }
  return Math.exp(previous.log);
}
