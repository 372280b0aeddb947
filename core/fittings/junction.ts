import { requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import { branchCorrection, branchCorrectionSlope, branchCorrectionWeight } from './branch-correction.ts';

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

/** Flow ratios are not followed below this inflow [kg/s]: one millionth of what a 10 mm hose carries. */
const LEAST_INFLOW_kgs = 1e-9;

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
  let most = 0;
  let least = Infinity;
  let branches = 0;
  for (const { role, area_m2 } of legs) {
    if (role === 'branch') branches += area_m2;
    else {
      most = Math.max(most, area_m2);
      least = Math.min(least, area_m2);
    }
  }
  if (branches === 0 || most === 0) return;

  const n = legs.length;
  if (mixedSlope.length < n) mixedSlope = new Float64Array(n);
  const mixed = mixedThroughPressure(legs, flows_kgs, out, jac);
  for (let b = 0; b < n; b++) {
    if (legs[b]!.role !== 'branch') continue;
    const weight = branchCorrectionWeight(legs[b]!.area_m2 / most, (most - least) / branches);
    if (weight > 0) correctBranch(n, b, weight, inflow, mixed, flows_kgs, out, jac);
  }
}

/** Adds the branch correction to the row of leg `b`; see the remarks of `junctionLegPressures`. */
function correctBranch(
  n: number,
  b: number,
  weight: number,
  inflow: number,
  mixed: number,
  flows: ArrayLike<number>,
  out: Float64Array,
  jac: Float64Array,
): void {
  const row = b * n;
  const m = flows[b]!;
  if (!(m > 0)) {
    const idle = branchCorrection(0, weight) - 1;
    out[b] = out[b]! - idle * mixed;
    for (let k = 0; k < n; k++) jac[row + k] = jac[row + k]! - idle * mixedSlope[k]!;
    return;
  }
  const q = Math.min(1, m / inflow);
  const extra = branchCorrection(q, weight) - 1;
  // Without air coming in the flow ratio has no slope; a solver may pass such a state, so it is held finite there.
  const bend = branchCorrectionSlope(q, weight) / Math.max(inflow, LEAST_INFLOW_kgs);
  const excess = out[b]! - mixed;
  out[b] = out[b]! + extra * excess;
  for (let k = 0; k < n; k++) {
    let change = extra * (jac[row + k]! - mixedSlope[k]!);
    if (flows[k]! > 0) change += bend * ((k === b ? 1 : 0) - q) * excess;
    jac[row + k] = jac[row + k]! + change;
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
    // thrust = sum_in( w_j V_j cos(theta_jo) ): the pull of the incoming jets along this leg. It is summed over the
    // inflow, since shares stay of ordinary size where flows vanish.
    let thrustPerFlow = 0;
    for (let j = 0; j < n; j++) {
      if (!(flows[j]! > 0)) continue;
      const share = flows[j]! / inflow;
      thrustPerFlow += (share * share * turnCosine(legs[j]!, legs[i]!)) / (rho * legs[j]!.area_m2);
    }
    const thrust = thrustPerFlow * inflow;
    if (m === 0) {
      // Mean of the two one-sided slopes, 0 for inflow and -thrust/area for outflow.
      jac[row + i] = (-0.5 * thrust) / area;
      continue;
    }
    out[i] = (-m * m) / (2 * rho * area * area) - (m / area) * thrust;
    jac[row + i] = -m / (rho * area * area) - thrust / area;
    for (let k = 0; k < n; k++) {
      if (!(flows[k]! > 0)) continue;
      const pull = (2 * (flows[k]! / inflow) * turnCosine(legs[k]!, legs[i]!)) / (rho * legs[k]!.area_m2);
      jac[row + k] = (-m / area) * (pull - thrustPerFlow);
    }
  }
  return inflow;
}

/** Cosine of the turn from leg `from` into leg `to`: 1 straight on, -1 straight back. */
function turnCosine(from: JunctionLeg, to: JunctionLeg): number {
  return -Math.cos(from.direction_rad - to.direction_rad);
}

/** A through leg with air leaving. */
function takesAway(leg: JunctionLeg, flow_kgs: number): boolean {
  return leg.role !== 'branch' && flow_kgs < 0;
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
  for (let o = 0; o < n; o++) if (takesAway(legs[o]!, flows[o]!)) outflow -= flows[o]!;
  let mixed = 0;
  for (let o = 0; o < n; o++) if (takesAway(legs[o]!, flows[o]!)) mixed -= (flows[o]! / outflow) * e[o]!;
  for (let o = 0; o < n; o++) {
    if (!takesAway(legs[o]!, flows[o]!)) continue;
    for (let k = 0; k < n; k++) mixedSlope[k] = mixedSlope[k]! - (flows[o]! / outflow) * jac[o * n + k]!;
    mixedSlope[o] = mixedSlope[o]! - (e[o]! - mixed) / outflow;
  }
  return mixed;
}
