import { requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import { branchCorrection } from './branch-correction.ts';

export { convergingWye, acgihBranchEntry, WYE_RANGE } from './wye.ts';
export type { WyeGeometry, WyeLosses } from './wye.ts';

/** Where the momentum picture of a junction is fair. */
export const JUNCTION_RANGE: ValidRange = {
  'number of legs': { low: 3, high: 4, unit: '-' },
  'turn angle': { low: 0, high: Math.PI / 2, unit: 'rad' },
};

/** One duct that meets others in a wye, tee, breech or cross. */
export interface JunctionLeg {
  /** Cross-section of the duct [m2]. */
  readonly area_m2: number;
  /** Direction in the junction's plane in which air that leaves through this leg travels [rad]. */
  readonly direction_rad: number;
  /**
   * `branch`: joins from the side, and the measured branch correction applies to it. `through`: part of the main.
   * Absent everywhere: a plain momentum junction, as for a breech whose legs are alike.
   */
  readonly role?: 'branch' | 'through';
}

let mixedSlope = new Float64Array(8);

/**
 * Total pressure of every leg of a junction over the static pressure that its legs share, and its slopes.
 *
 * Inflow legs meet at one static pressure `p`, so `e = rho V^2 / 2`. An outflow leg takes what momentum along its own
 * direction the inflow brings: `e = -rho Vo^2/2 + rho Vo sum_in( w_j V_j cos(theta_jo) )`, with `w_j` the share of
 * the inflow and `theta_jo` the turn from leg `j` into leg `o` (0 is straight on). The difference of `e` between an
 * inflow and an outflow leg is the loss between them; it may be negative, where a fast stream drags a slow one along.
 * A leg with role `branch` gets `(A - 1)(e - T)` on top, with `A` of `branchCorrection` and `T` the flow-weighted `e`
 * of the through legs that take air away; while air leaves through it, `e` counts as 0 and its share as 0 there, which
 * keeps the sum continuous through a dead branch.
 *
 * @param legs - areas [m2], directions [rad] and roles
 * @param flows_kgs - mass flow in each leg, positive into the junction [kg/s]
 * @param density_kgm3 - density at the junction [kg/m3]
 * @param out - receives `e` for each leg [Pa]
 * @param jac - receives `d e_i / d m_k` at `i n + k` [Pa s/kg]
 * @returns nothing; the results are in `out` and `jac`, so that a solver's inner loop allocates nothing
 * @throws ImpossibleInput naming a density or an area that is not above zero
 *
 * @remarks
 * Range: three or four legs in one plane, turns up to 90 degrees; as data in JUNCTION_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: rounding at the crotch (so it errs high), an elbow close upstream, chips; the measured corrections for
 * the straight leg of a wye and for both legs of a split, which cannot be made continuous simply. At 90 degrees the
 * straight leg comes out up to 0.45 velocity pressures too high when most of the air comes from the branch.
 * Limits: one leg in and one out is the step loss of Borda and Carnot; no flow gives 0; with no inflow (which only
 * happens while a solver iterates) the momentum term is 0.
 * Basis: from-memory (derived from momentum); the branch correction is published, see `branchCorrection`.
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., ch. 7 (momentum theory after Levin and Taliev).
 * Checked: test/reference/junction.test.ts; slopes and continuity in test/core/fittings/junction.test.ts.
 *
 * @example
 * ```ts
 * const legs = [{ area_m2: 0.01, direction_rad: Math.PI }, { area_m2: 0.02, direction_rad: 0 }];
 * const e = new Float64Array(2);
 * junctionLegPressures(legs, [0.12, -0.12], 1.2, e, new Float64Array(4));
 * e[0]! - e[1]!; // 15
 * ```
 */
export function junctionLegPressures(
  legs: readonly JunctionLeg[],
  flows_kgs: ArrayLike<number>,
  density_kgm3: number,
  out: Float64Array,
  jac: Float64Array,
): void {
  requirePositive('density_kgm3', density_kgm3);
  const inflow = momentumPressures(legs, flows_kgs, density_kgm3, out, jac);
  let throughArea = 0;
  let hasBranch = false;
  for (const leg of legs) {
    if (leg.role === 'branch') hasBranch = true;
    else if (leg.area_m2 > throughArea) throughArea = leg.area_m2;
  }
  if (!hasBranch || throughArea === 0) return;

  const n = legs.length;
  if (mixedSlope.length < n) mixedSlope = new Float64Array(n);
  const mixed = mixedThroughPressure(legs, flows_kgs, out, jac);
  for (let b = 0; b < n; b++) {
    const leg = legs[b]!;
    if (leg.role !== 'branch') continue;
    const m = flows_kgs[b]!;
    const areaRatio = leg.area_m2 / throughArea;
    const row = b * n;
    if (!(m > 0)) {
      const idle = branchCorrection(0, areaRatio).factor - 1;
      out[b] = out[b]! - idle * mixed;
      for (let k = 0; k < n; k++) jac[row + k] = jac[row + k]! - idle * mixedSlope[k]!;
      continue;
    }
    const { factor, slope } = branchCorrection(m / inflow, areaRatio);
    const excess = out[b]! - mixed;
    out[b] = out[b]! + (factor - 1) * excess;
    for (let k = 0; k < n; k++) {
      let change = (factor - 1) * (jac[row + k]! - mixedSlope[k]!);
      if (flows_kgs[k]! > 0) change += ((slope * ((k === b ? inflow : 0) - m)) / (inflow * inflow)) * excess;
      jac[row + k] = jac[row + k]! + change;
    }
  }
}

/** Fills `out` and `jac` by momentum alone; returns the sum of the inflow [kg/s]. */
function momentumPressures(
  legs: readonly JunctionLeg[],
  flows: ArrayLike<number>,
  rho: number,
  out: Float64Array,
  jac: Float64Array,
): number {
  const n = legs.length;
  let inflow = 0;
  for (let j = 0; j < n; j++) if (flows[j]! > 0) inflow += flows[j]!;
  for (let i = 0; i < n; i++) {
    const area = requirePositive('area_m2', legs[i]!.area_m2);
    const m = flows[i]!;
    const row = i * n;
    for (let k = 0; k < n; k++) jac[row + k] = 0;
    if (m >= 0) {
      out[i] = (m * m) / (2 * rho * area * area);
      jac[row + i] = m / (rho * area * area);
      // A dead leg may start to flow either way; the slope of the outflow side holds the momentum term.
      if (m > 0 || inflow === 0) continue;
    }
    // thrust = sum_in( m_j V_j cos(theta_jo) ) / inflow: the pull of the incoming jets along this leg.
    let thrust = 0;
    if (inflow > 0) {
      for (let j = 0; j < n; j++) {
        const mj = flows[j]!;
        if (mj > 0) thrust += (mj * mj * turnCosine(legs[j]!, legs[i]!)) / (rho * legs[j]!.area_m2 * inflow);
      }
    }
    if (m === 0) {
      // Mean of the two one-sided slopes, 0 for inflow and -thrust/area for outflow.
      jac[row + i] = (-0.5 * thrust) / area;
      continue;
    }
    out[i] = (-m * m) / (2 * rho * area * area) - (m / area) * thrust;
    jac[row + i] = -m / (rho * area * area) - thrust / area;
    if (inflow === 0) continue;
    for (let k = 0; k < n; k++) {
      const mk = flows[k]!;
      if (!(mk > 0)) continue;
      const pull = (2 * mk * turnCosine(legs[k]!, legs[i]!)) / (rho * legs[k]!.area_m2);
      jac[row + k] = ((-m / area) * (pull - thrust)) / inflow;
    }
  }
  return inflow;
}

/** Cosine of the turn from leg `from` into leg `to`: 1 straight on, -1 straight back. */
function turnCosine(from: JunctionLeg, to: JunctionLeg): number {
  return -Math.cos(from.direction_rad - to.direction_rad);
}

/** Flow-weighted `e` of the through legs that take air away, and its slopes in `mixedSlope`. */
function mixedThroughPressure(
  legs: readonly JunctionLeg[],
  flows: ArrayLike<number>,
  e: Float64Array,
  jac: Float64Array,
): number {
  const n = legs.length;
  for (let k = 0; k < n; k++) mixedSlope[k] = 0;
  let outflow = 0;
  let sum = 0;
  for (let o = 0; o < n; o++) {
    if (legs[o]!.role === 'branch' || !(flows[o]! < 0)) continue;
    outflow -= flows[o]!;
    sum -= flows[o]! * e[o]!;
  }
  if (outflow === 0) return 0;
  const mixed = sum / outflow;
  for (let o = 0; o < n; o++) {
    if (legs[o]!.role === 'branch' || !(flows[o]! < 0)) continue;
    for (let k = 0; k < n; k++) mixedSlope[k] = mixedSlope[k]! - (flows[o]! / outflow) * jac[o * n + k]!;
    mixedSlope[o] = mixedSlope[o]! - (e[o]! - mixed) / outflow;
  }
  return mixed;
}
