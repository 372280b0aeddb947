import { requireBetween, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';

/** Where the measured branch correction applies. */
export const BRANCH_CORRECTION_RANGE: ValidRange = {
  'flow ratio': { low: 0, high: 1, unit: '-' },
  'branch to main area': { low: 0, high: 1, unit: '-' },
};

/** Correction `A` and its slope with the flow ratio, both pure numbers. */
export interface BranchCorrection {
  readonly factor: number;
  readonly slope: number;
}

/**
 * Measured share `A` of the momentum loss that a branch really takes where it joins a main.
 *
 * `A = 1` for a branch up to 0.35 of the main's area; above that `0.9 (1 - q)`, never below 0.55, with `q` the share
 * of the flow. The step in area is blended linearly over 0.30 to 0.40, so that no result jumps with a diameter.
 *
 * @param flowRatio - `q`, branch flow over joined flow [-], 0 to 1
 * @param areaRatio - branch area over main area [-]
 * @returns the factor `A` [-] and `dA/dq` [-]
 * @throws ImpossibleInput naming the argument: a flow ratio outside 0 to 1, an area ratio not above zero
 *
 * @remarks
 * Range: as data in BRANCH_CORRECTION_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: rounding of the crotch and the branch angle, on which the table does not depend.
 * Limits: 1 for a small branch; 0.9 for a large branch that carries nothing.
 * Basis: published (read as quoted in an open-source library; the handbook's page was not seen).
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., 2006, p. 417, table 7-1.
 * Checked: test/reference/junction.test.ts.
 *
 * @example
 * ```ts
 * branchCorrection(0.2, 0.5).factor; // 0.72
 * ```
 */
export function branchCorrection(flowRatio: number, areaRatio: number): BranchCorrection {
  requireBetween('flowRatio', flowRatio, 0, 1);
  requirePositive('areaRatio', areaRatio);
  const weight = Math.min(1, Math.max(0, (areaRatio - 0.3) / 0.1));
  if (weight === 0) return UNCORRECTED;
  const falling = 0.9 * (1 - flowRatio);
  return falling > 0.55
    ? { factor: 1 + weight * (falling - 1), slope: -0.9 * weight }
    : { factor: 1 + weight * (0.55 - 1), slope: 0 };
}

const UNCORRECTED: BranchCorrection = { factor: 1, slope: 0 };
