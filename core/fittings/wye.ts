import { BRANCH_ENTRY } from '../catalogue/wyes.ts';
import { requireBetween, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import { branchCorrection, branchCorrectionWeight } from './branch-correction.ts';
import type { LossCoefficient } from './loss-coefficient.ts';
import { degrees, readTable } from '../quantities/table.ts';

/** Where published wye coefficients exist. */
export const WYE_RANGE: ValidRange = {
  'branch angle': { low: degrees(10), high: degrees(90), unit: 'rad' },
  'flow ratio': { low: 0, high: 1, unit: '-' },
};

/** A branch that joins a main. */
export interface WyeGeometry {
  /** Branch flow over joined flow [-], 0 to 1. */
  readonly flowRatio: number;
  /** Area of the branch [m2]. */
  readonly branchArea_m2: number;
  /** Area of the main before the branch [m2]. */
  readonly straightArea_m2: number;
  /** Area of the main after the branch [m2]. */
  readonly commonArea_m2: number;
  /** Angle between branch and main, 0 when parallel [rad]. */
  readonly angle_rad: number;
}

/** Losses from each inlet of a wye to its outlet, both on the outlet's velocity pressure. */
export interface WyeLosses {
  readonly branch: LossCoefficient;
  readonly straight: LossCoefficient;
}

/**
 * Loss coefficients of a wye in which a branch joins a main; they may be negative.
 *
 * With `q` the branch's share of the flow and areas `F`: branch
 * `A (1 + (q Fc/Fb)^2 - 2 (Fc/Fs)(1-q)^2 - 2 (Fc/Fb) q^2 cos(alpha))`, straight
 * `1 + ((1-q) Fc/Fs)^2 - 2 (Fc/Fs)(1-q)^2 - 2 (Fc/Fb) q^2 cos(alpha)`. It is what `junctionLegPressures` gives for the
 * same case, written out.
 *
 * @param wye - flow ratio [-], the three areas [m2], angle [rad]
 * @returns both coefficients [-] with `on: 'downstream'`: the velocity pressure after the join
 * @throws ImpossibleInput naming a flow ratio outside 0 to 1, an area not above zero, an angle outside 0 to pi
 *
 * @remarks
 * Range: 10 to 90 degrees; as data in WYE_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: what `junctionLegPressures` leaves out.
 * Limits: a dead branch leaves the straight leg the Borda-Carnot step from `Fs` to `Fc`; `q = 1` and `alpha = 0` leaves
 * the branch that from `Fb` to `Fc`, times `A`.
 * Basis: published (equations 7-1 and 7-2 read as quoted in an open-source library; page not seen).
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., 2006, pp. 417-418.
 * Checked: test/reference/junction.test.ts.
 *
 * @example
 * ```ts
 * const areas = { branchArea_m2: 0.005, straightArea_m2: 0.01, commonArea_m2: 0.01 };
 * convergingWye({ flowRatio: 0.5, ...areas, angle_rad: Math.PI / 4 }).straight.k; // 0.0429
 * ```
 */
export function convergingWye(wye: WyeGeometry): WyeLosses {
  const q = requireBetween('flowRatio', wye.flowRatio, 0, 1);
  const common = requirePositive('commonArea_m2', wye.commonArea_m2);
  const branchSpeed = common / requirePositive('branchArea_m2', wye.branchArea_m2);
  const straightSpeed = common / requirePositive('straightArea_m2', wye.straightArea_m2);
  const cosine = Math.cos(requireBetween('angle_rad', wye.angle_rad, 0, Math.PI));
  const brought = 2 * straightSpeed * (1 - q) ** 2 + 2 * branchSpeed * q * q * cosine;
  const main = Math.max(wye.commonArea_m2, wye.straightArea_m2);
  const growth = Math.abs(wye.commonArea_m2 - wye.straightArea_m2) / wye.branchArea_m2;
  const factor = branchCorrection(q, branchCorrectionWeight(wye.branchArea_m2 / main, growth));
  return {
    branch: { k: factor * (1 + (q * branchSpeed) ** 2 - brought), on: 'downstream' },
    straight: { k: 1 + ((1 - q) * straightSpeed) ** 2 - brought, on: 'downstream' },
  };
}

/**
 * Branch entry loss by angle alone, for branch and main of like velocity: a second opinion on `convergingWye`.
 *
 * @param angle_rad - angle between branch and main [rad]
 * @returns `k` [-] with `on: 'upstream'`: the branch's own velocity pressure
 * @throws ImpossibleInput naming an angle outside 0 to pi
 *
 * @remarks
 * Range: 10 to 90 degrees; as data in WYE_RANGE. Read by straight lines between the printed angles.
 * Outside: the end value is returned; `findOutside` reports it.
 * Leaves out: flow split and areas; the main is charged nothing.
 * Limits: rises with the angle, 1 at 90 degrees.
 * Basis: from-memory (page not seen).
 * Source: ACGIH, Industrial Ventilation, figure 5-17.
 * Checked: test/reference/junction.test.ts, against `convergingWye`.
 *
 * @example
 * ```ts
 * acgihBranchEntry(Math.PI / 6).k; // 0.18
 * ```
 */
export function acgihBranchEntry(angle_rad: number): LossCoefficient {
  requireBetween('angle_rad', angle_rad, 0, Math.PI);
  return { k: readTable(BRANCH_ENTRY.angles_deg.map(degrees), BRANCH_ENTRY.k, angle_rad), on: 'upstream' };
}
