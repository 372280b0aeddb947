import { requireBetween, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';

/** Where the measured branch correction applies. */
export const BRANCH_CORRECTION_RANGE: ValidRange = {
  'flow ratio': { low: 0, high: 1, unit: '-' },
  'branch to main area': { low: 0, high: 1, unit: '-' },
};

/** The factor never falls below this [-]. */
const LEAST_FACTOR = 0.55;
/** Factor of a large branch that carries nothing, and its fall with the flow ratio [-]. */
const IDLE_FACTOR = 0.9;

/**
 * How far the correction for a large branch applies to a wye, by its areas.
 *
 * 0 for a branch up to 0.30 of the main's area, 1 from 0.40 on (the source steps at 0.35); and 1 where the main keeps its
 * size, falling to 0 where it grows by the whole branch, which is the other kind of wye in the source.
 *
 * @param areaRatio - branch area over main area [-]
 * @param mainGrowth - growth of the main's area over the branch's area [-]; 0 keeps its size, 1 grows by the branch
 * @returns weight of the correction [-], 0 to 1
 * @throws ImpossibleInput naming an area ratio not above zero or a growth that is negative
 *
 * @remarks
 * Range: as data in BRANCH_CORRECTION_RANGE.
 * Outside: the end value is returned; `findOutside` reports it.
 * Leaves out: nothing; it only joins the source's cases without a step.
 * Limits: 0 for a small branch; 0 for a main that grows by the branch.
 * Basis: assumed (the two blends are ours); the cases that they join are published.
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., 2006, p. 417.
 * Checked: test/reference/branch-correction.test.ts.
 *
 * @example
 * ```ts
 * branchCorrectionWeight(0.5, 0); // 1
 * ```
 */
export function branchCorrectionWeight(areaRatio: number, mainGrowth: number): number {
  requirePositive('areaRatio', areaRatio);
  requireBetween('mainGrowth', mainGrowth, 0, Number.MAX_VALUE);
  const large = Math.min(1, Math.max(0, (areaRatio - 0.3) / 0.1));
  return large * Math.max(0, 1 - mainGrowth);
}

/**
 * Share `A` of the momentum loss that a branch really takes where it joins a main, by measurement.
 *
 * `A = 0.9 (1 - q)`, never below 0.55, with `q` the share of the flow, for a large branch on a main that keeps its size;
 * 1 for others. `weight` tells how far the case is the first kind.
 *
 * @param flowRatio - `q`, branch flow over joined flow [-], 0 to 1
 * @param weight - of the correction, from `branchCorrectionWeight` [-], 0 to 1
 * @returns factor `A` [-]
 * @throws ImpossibleInput naming an argument outside 0 to 1
 *
 * @remarks
 * Range: as data in BRANCH_CORRECTION_RANGE.
 * Outside: not applicable; the arguments cannot be outside.
 * Leaves out: rounding of the crotch; the branch angle, on which the table does not depend. The first edition of the
 * same handbook and the air-conditioning tables have no such factor up to 60 degrees: for a large branch that carries
 * more than 0.4 of the flow the sources differ by nearly half.
 * Limits: 1 without weight; 0.9 for a large branch that carries nothing.
 * Basis: published (read as quoted in an open-source library; the handbook's page was not seen).
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., 2006, p. 417, table 7-1.
 * Checked: test/reference/branch-correction.test.ts.
 *
 * @example
 * ```ts
 * branchCorrection(0.2, 1); // 0.72
 * ```
 */
export function branchCorrection(flowRatio: number, weight: number): number {
  requireBetween('flowRatio', flowRatio, 0, 1);
  requireBetween('weight', weight, 0, 1);
  return 1 + weight * (Math.max(LEAST_FACTOR, IDLE_FACTOR * (1 - flowRatio)) - 1);
}

/**
 * Slope of `branchCorrection` with the flow ratio.
 *
 * @param flowRatio - `q`, branch flow over joined flow [-], 0 to 1
 * @param weight - of the correction, from `branchCorrectionWeight` [-], 0 to 1
 * @returns `dA/dq` [-]
 * @throws ImpossibleInput naming an argument outside 0 to 1
 *
 * @remarks
 * Range: as data in BRANCH_CORRECTION_RANGE.
 * Outside: not applicable; the arguments cannot be outside.
 * Leaves out: the kink where the factor meets its least value; there the slope beyond it is given.
 * Limits: 0 without weight.
 * Basis: published, as `branchCorrection`.
 * Source: derivative of `branchCorrection`.
 * Checked: test/reference/branch-correction.test.ts, and by finite differences in test/core/fittings/junction.test.ts.
 *
 * @example
 * ```ts
 * branchCorrectionSlope(0.2, 1); // -0.9
 * ```
 */
export function branchCorrectionSlope(flowRatio: number, weight: number): number {
  requireBetween('flowRatio', flowRatio, 0, 1);
  requireBetween('weight', weight, 0, 1);
  return IDLE_FACTOR * (1 - flowRatio) > LEAST_FACTOR ? -IDLE_FACTOR * weight : 0;
}
