import { requireFinite, requirePositive } from '../quantities/impossible-input.ts';
import type { FanCurve } from './fan-points.ts';
import { curveValueAndSlope, type MonotoneCurve } from './monotone-curve.ts';

export { fanCurve, type FanCurve, type FanCurveInput, type FanPoint } from './fan-points.ts';
export { hasHump } from './curve-shape.ts';
export { scaleFan, type FanScale } from './scale-fan.ts';

/** The state in which a fan is asked what it does. */
export interface FanState {
  /** Volume flow at the inlet [m3/s]; below zero when air is blown back through the fan. */
  readonly flow_m3s: number;
  /** Density of the air in the fan [kg/m3]. */
  readonly density_kgm3: number;
  /** Speed over the speed at which the points hold [-]. */
  readonly speedRatio: number;
}

/** Share of the points' span of flow, beyond the ends, in which a result may still be used (common practice, no source). */
export const EXTRAPOLATION_MARGIN = 0.05;

/** Rounding of scaled flows must not push an end point outside; far below any reading. */
const ROUNDING = 1e-12;

/** Where a flow lies: among the points, a little beyond them, or too far beyond to be used. */
export type Extrapolation = 'within' | 'margin' | 'beyond';

/**
 * Rise of total pressure over a fan at a flow, density and speed, with its slopes.
 *
 * Affinity laws: flow follows speed, `Q ~ n`, and pressure follows density and speed squared, `p ~ rho n^2`. With
 * `r = n/n0`: `p(Q) = (rho/rho0) r^2 p0(Q/r)`, where `p0` is the total pressure at the rated speed and density.
 * Writes into `out`, so that a solver's inner loop allocates nothing.
 *
 * @param curve - made by `fanCurve`
 * @param state - flow, density and speed ratio
 * @param out - receives `out[0]` pressure [Pa], `out[1]` its slope over flow [Pa s/m3], `out[2]` its slope over
 *   density [Pa m3/kg]
 * @returns nothing; see `out`
 * @throws ImpossibleInput naming the field: flow not finite, density or speed ratio not above zero
 *
 * @remarks
 * Range: flows of the points times the speed ratio; tip speeds like the rated one.
 * Outside: total pressure goes on along its end slope; `extrapolation` tells the caller, who refuses.
 * Leaves out: Reynolds number (a slow or small wheel does worse), compression (0.5 % at 1.4 kPa), the pull of a
 *   stopped fan, system effect of an elbow close to the inlet.
 * Limits: speed ratio 1 at rated density gives the points; zero flow gives shut-off pressure times `rho r^2`.
 * Basis: published (fan laws read in Process Heating, a trade journal).
 * Source: fan laws, AMCA 210 / ISO 5801, as in the journal Process Heating.
 * Checked: test/reference/fan.test.ts, test/core/fan/fan-curve.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ flow_m3s: 0, pressure_Pa: 2000 }, { flow_m3s: 0.1, pressure_Pa: 1000 }];
 * const rated = { ratedSpeed_rpm: 3450, ratedDensity_kgm3: 1.2 };
 * const fan = fanCurve({ pressureKind: 'total', outletArea_m2: 0.01, points, ...rated });
 * const out = new Float64Array(3);
 * fanTotalPressure(fan, { flow_m3s: 0.06, density_kgm3: 1.0, speedRatio: 1.2 }, out);
 * out[0]; // 1800
 * ```
 */
export function fanTotalPressure(curve: FanCurve, state: FanState, out: Float64Array): void {
  requireFinite('flow_m3s', state.flow_m3s);
  const ratio = requirePositive('speedRatio', state.speedRatio);
  const density = requirePositive('density_kgm3', state.density_kgm3);
  const flow = state.flow_m3s / ratio;
  curveValueAndSlope(curve.pressure, flow, out);
  if (curve.velocityFactor > 0) {
    // Held to its tangent beyond the ends: a parabola would lift the total pressure without bound.
    const flows = curve.pressure.x;
    const near = Math.min(Math.max(flow, flows[0]!), flows[flows.length - 1]!);
    out[0] = out[0]! + curve.velocityFactor * near * (near + 2 * (flow - near));
    out[1] = out[1]! + 2 * curve.velocityFactor * near;
  }
  const perDensity = (ratio * ratio * out[0]!) / curve.input.ratedDensity_kgm3;
  out[0] = perDensity * density;
  out[1] = (density / curve.input.ratedDensity_kgm3) * ratio * out[1]!;
  out[2] = perDensity;
}

/**
 * Power that a fan takes at a flow, density and speed.
 *
 * Affinity law `P ~ rho n^3`: with `r = n/n0`, `P(Q) = (rho/rho0) r^3 P0(Q/r)`.
 *
 * @param curve - made by `fanCurve`
 * @param state - flow, density and speed ratio
 * @returns power of the kind that the points carry, shaft or electrical [W]; null if they carry none
 * @throws ImpossibleInput naming the field: flow not finite, density or speed ratio not above zero
 *
 * @remarks
 * Range: flows of the points that carry power, times the speed ratio.
 * Outside: goes on along the end slope, never below zero; `extrapolation` tells the caller.
 * Leaves out: bearing friction and motor losses, which do not follow the cube of speed.
 * Limits: speed ratio 1 at rated density gives the points; power over air power stays the same at any speed.
 * Basis: published (fan laws read in Process Heating, a trade journal).
 * Source: fan laws, AMCA 210 / ISO 5801, as in the journal Process Heating.
 * Checked: test/reference/fan.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ flow_m3s: 0, pressure_Pa: 2000, power_W: 300 }, { flow_m3s: 0.1, pressure_Pa: 1000, power_W: 500 }];
 * const rated = { ratedSpeed_rpm: 3450, ratedDensity_kgm3: 1.2 };
 * const fan = fanCurve({ pressureKind: 'total', outletArea_m2: 0.01, points, ...rated });
 * fanPower(fan, { flow_m3s: 0.06, density_kgm3: 1.0, speedRatio: 1.2 }); // 576
 * ```
 */
export function fanPower(curve: FanCurve, state: FanState): number | null {
  return cubeLaw(curve, curve.power, state);
}

/**
 * Motor current at a flow, density and speed, scaled as power.
 *
 * At a fixed supply voltage current follows power: `I(Q) = (rho/rho0) r^3 I0(Q/r)` with `r = n/n0`.
 *
 * @param curve - made by `fanCurve`
 * @param state - flow, density and speed ratio
 * @returns current [A]; null if the points carry none
 * @throws ImpossibleInput naming the field: flow not finite, density or speed ratio not above zero
 *
 * @remarks
 * Range: near the rated speed and density, same supply voltage; flows of the points that carry current.
 * Outside: goes on along the end slope, never below zero; `extrapolation` tells the caller.
 * Leaves out: no-load current and power factor, so a slowed fan draws more than this says; a motor model does better.
 * Limits: speed ratio 1 at rated density gives the points.
 * Basis: common-practice.
 * Source: none: trade rule that current goes with power.
 * Checked: test/core/fan/fan-curve.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ flow_m3s: 0, pressure_Pa: 2000, current_A: 3 }, { flow_m3s: 0.1, pressure_Pa: 1000, current_A: 5 }];
 * const rated = { ratedSpeed_rpm: 3450, ratedDensity_kgm3: 1.2 };
 * const fan = fanCurve({ pressureKind: 'total', outletArea_m2: 0.01, points, ...rated });
 * fanCurrent(fan, { flow_m3s: 0.06, density_kgm3: 1.0, speedRatio: 1.2 }); // 5.76
 * ```
 */
export function fanCurrent(curve: FanCurve, state: FanState): number | null {
  return cubeLaw(curve, curve.current, state);
}

const scratch = new Float64Array(2);

function cubeLaw(curve: FanCurve, figure: MonotoneCurve | null, state: FanState): number | null {
  requireFinite('flow_m3s', state.flow_m3s);
  const ratio = requirePositive('speedRatio', state.speedRatio);
  const density = requirePositive('density_kgm3', state.density_kgm3);
  if (figure === null) return null;
  curveValueAndSlope(figure, state.flow_m3s / ratio, scratch);
  return Math.max(0, scratch[0]!) * (density / curve.input.ratedDensity_kgm3) * ratio ** 3;
}

/**
 * Where a flow lies against a fan's points at a given speed.
 *
 * The flow is brought to the rated speed, `Q/r`. Up to EXTRAPOLATION_MARGIN of the span of flow outside the points is
 * `margin`; more, or air blown back through the fan, is `beyond`.
 *
 * @param curve - made by `fanCurve`
 * @param flow_m3s - volume flow at the inlet [m3/s]
 * @param speedRatio - speed over the rated speed [-]
 * @returns `within`, `margin` or `beyond`
 * @throws ImpossibleInput naming the parameter: flow not finite, speed ratio not above zero
 *
 * @remarks
 * Range: any flow.
 * Outside: none: it answers for every flow.
 * Leaves out: none: it only compares.
 * Limits: the first and the last point are within.
 * Basis: common-practice.
 * Source: none: the share is a habit of the trade; test standards allow no extrapolation.
 * Checked: test/core/fan/fan-curve.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ flow_m3s: 0, pressure_Pa: 2000 }, { flow_m3s: 0.1, pressure_Pa: 1000 }];
 * const rated = { ratedSpeed_rpm: 3450, ratedDensity_kgm3: 1.2 };
 * const fan = fanCurve({ pressureKind: 'total', outletArea_m2: 0.01, points, ...rated });
 * extrapolation(fan, 0.102, 1); // 'margin'
 * ```
 */
export function extrapolation(curve: FanCurve, flow_m3s: number, speedRatio: number): Extrapolation {
  const flow = requireFinite('flow_m3s', flow_m3s) / requirePositive('speedRatio', speedRatio);
  const flows = curve.pressure.x;
  const first = flows[0]!;
  const last = flows[flows.length - 1]!;
  const slack = ROUNDING * last;
  if (flow >= first - slack && flow <= last + slack) return 'within';
  const margin = EXTRAPOLATION_MARGIN * (last - first);
  const low = Math.max(0, first - margin);
  return flow >= low && flow <= last + margin + slack ? 'margin' : 'beyond';
}
