import type { FanShape } from '../../catalogue/fan-shapes.ts';
import { requirePositive } from '../../quantities/impossible-input.ts';
import { curveValueAndSlope, monotoneCurve } from '../monotone-curve.ts';
import type { CurveFamily } from './estimate.ts';

/** Waves by which a pressure curve may stray from its shape; each wave is less likely than the one before it. */
const PRESSURE_WAVES = 6;
const POWER_WAVES = 4;
/** How far the power of a real fan strays from the shape, share of that at free delivery [-]; assumed. */
const POWER_STRAY = 0.05;
/** Standard deviation of the tilt of a power curve from end to end [-]; assumed. */
const POWER_TILT = 0.3;
/** Closest to the blocked inlet that a slope is asked [-]: a bent shape has none at zero. */
const LEAST_SHARE = 1e-6;

/** Heights of waves `sin(j pi x)` that fall off as `1/(1 + (j/2)^3)` and together have the variance of `stray`. */
function waveHeights(count: number, stray: number): number[] {
  const raw = Array.from({ length: count }, (_, i) => 1 / (1 + ((i + 1) / 2) ** 3));
  const mean = raw.reduce((sum, height) => sum + height ** 2 / 2, 0);
  return raw.map((height) => (height * stray) / Math.sqrt(mean));
}

/** Unknown of the pressure family that carries the flow at free delivery. */
const FREE_FLOW = 1;

/** Pressure curves of a kind of fan, and where one of them ends. */
export interface PressureFamily extends CurveFamily {
  /** Flow coefficient at free delivery for given unknowns [-]. */
  freeFlow(unknowns: ArrayLike<number>): number;
  /** Pressure coefficient with the inlet blocked for given unknowns [-]. */
  shutOff(unknowns: ArrayLike<number>): number;
}

/**
 * Pressure coefficient over flow coefficient for a kind of fan, before and after measuring.
 *
 * `psi(phi) = psi0 (f(x^e) + sum a_j v_j sin(j pi x))` with `x = phi/phiF`: height `psi0`, free delivery `phiF` and bend
 * `e` are log-normal about the kind's usual figures, `f` is its shape as a monotone curve, and the waves let a real
 * curve stray from it, smoothly, but neither at the blocked inlet nor at free delivery. Beyond free delivery it goes on
 * straight.
 *
 * @param shape - row of FAN_SHAPES, each figure a share or ratio [-]
 * @param outletShare - area of the outlet over that of the wheel's disc [-]
 * @returns the family; unknowns are height, free delivery, bend, and six waves
 * @throws ImpossibleInput if `outletShare` is not above zero
 *
 * @remarks
 * Range: fans whose curve looks like one of the shapes; a deep stall is smoothed over.
 * Outside: the value is still returned.
 * Leaves out: stray of the curve at free delivery; hysteresis of a stalling wheel.
 * Limits: all unknowns zero give the shape itself.
 * Basis: assumed: shape and spans are those of the row.
 * Source: none: the free delivery is set by the outlet, whose velocity is a usual share of tip speed.
 * Checked: test/core/fan/reduce/families.test.ts.
 *
 * @example
 * ```ts
 * const family = pressureFamily(FAN_SHAPES['radial-backward'], 0.25);
 * family.evaluate(0, new Float64Array(9), new Float64Array(10)); // 1.05
 * family.freeFlow(new Float64Array(9)); // 0.15
 * ```
 */
export function pressureFamily(shape: FanShape, outletShare: number): PressureFamily {
  const curve = monotoneCurve(shape.flow, shape.pressure);
  const middle = shape.freeOutlet.median * requirePositive('outletShare', outletShare);
  const heights = waveHeights(PRESSURE_WAVES, shape.stray);
  const at = new Float64Array(2);
  const shutOff = (u: ArrayLike<number>) => shape.shutOff.median * Math.exp(shape.shutOff.logError * u[0]!);
  const freeFlow = (u: ArrayLike<number>) => middle * Math.exp(shape.freeOutlet.logError * u[FREE_FLOW]!);
  return {
    unknowns: 3 + PRESSURE_WAVES,
    freeFlow,
    shutOff,
    evaluate(flow, u, out) {
      const height = shutOff(u);
      const free = freeFlow(u);
      const bend = Math.exp(shape.bend * u[2]!);
      const x = Math.max(flow / free, 0);
      const near = Math.max(x, LEAST_SHARE);
      const bent = near ** bend;
      curveValueAndSlope(curve, x === 0 ? 0 : bent, at);
      const perBent = at[1]!;
      let share = at[0]!;
      let slope = (perBent * bend * bent) / near;
      for (let j = 0; j < PRESSURE_WAVES; j++) {
        const turn = (j + 1) * Math.PI;
        const wave = x < 1 ? heights[j]! * Math.sin(turn * x) : 0;
        share += wave * u[3 + j]!;
        if (x < 1) slope += heights[j]! * turn * Math.cos(turn * x) * u[3 + j]!;
        out[4 + j] = height * wave;
      }
      const value = height * share;
      out[0] = (height * slope) / free;
      out[1] = shape.shutOff.logError * value;
      out[2] = -shape.freeOutlet.logError * height * slope * x;
      out[3] = x === 0 ? 0 : height * perBent * bent * Math.log(near) * bend * shape.bend;
      return value;
    },
  };
}

/**
 * Power coefficient over flow coefficient for a kind of fan, before and after measuring.
 *
 * `lambda(phi) = lambdaF (g(x) + 0.3 t (x - 1/2) + sum a_j v_j sin(j pi x))` with `x = phi/phiF`: height `lambdaF`
 * log-normal about the kind's usual figure, shape `g`, tilt `t` and waves.
 *
 * @param shape - row of FAN_SHAPES, each figure a share or ratio [-]
 * @param freeFlow - `phiF`, flow coefficient at free delivery [-]
 * @returns the family; unknowns are height, tilt, and four waves
 * @throws ImpossibleInput if `freeFlow` is not above zero
 *
 * @remarks
 * Range: fans whose power looks like one of the shapes.
 * Outside: the value is still returned; a wild tilt may bring it below zero near one end.
 * Leaves out: losses that do not follow the cube of speed, where power of the supply is fitted.
 * Limits: all unknowns zero give the shape itself.
 * Basis: assumed: shape and spans are those of the row.
 * Source: none: see FAN_SHAPES.
 * Checked: test/core/fan/reduce/families.test.ts.
 *
 * @example
 * ```ts
 * const family = powerFamily(FAN_SHAPES['radial-backward'], 0.15);
 * family.evaluate(0.15, new Float64Array(6), new Float64Array(7)); // 0.15
 * ```
 */
export function powerFamily(shape: FanShape, freeFlow: number): CurveFamily {
  const curve = monotoneCurve(shape.flow, shape.power);
  requirePositive('freeFlow', freeFlow);
  const heights = waveHeights(POWER_WAVES, POWER_STRAY);
  const at = new Float64Array(2);
  return {
    unknowns: 2 + POWER_WAVES,
    evaluate(flow, u, out) {
      const height = shape.freePower.median * freeFlow * Math.exp(shape.freePower.logError * u[0]!);
      const x = Math.max(flow / freeFlow, 0);
      curveValueAndSlope(curve, x, at);
      let share = at[0]! + POWER_TILT * u[1]! * (x - 0.5);
      let slope = at[1]! + POWER_TILT * u[1]!;
      for (let j = 0; j < POWER_WAVES; j++) {
        const turn = (j + 1) * Math.PI;
        const wave = x < 1 ? heights[j]! * Math.sin(turn * x) : 0;
        share += wave * u[2 + j]!;
        if (x < 1) slope += heights[j]! * turn * Math.cos(turn * x) * u[2 + j]!;
        out[3 + j] = height * wave;
      }
      out[0] = (height * slope) / freeFlow;
      out[1] = shape.freePower.logError * height * share;
      out[2] = height * POWER_TILT * (x - 0.5);
      return height * share;
    },
  };
}
