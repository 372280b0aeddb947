import type { FanShape } from '../../catalogue/fan-shapes.ts';
import { requirePositive } from '../../quantities/impossible-input.ts';
import { curveValueAndSlope, monotoneCurve } from '../monotone-curve.ts';
import { SHARP_HOLE } from './hole-plate.ts';

/** A fan before its tests: what its holes must fit. */
export interface PlateFan {
  /** `D`, wheel diameter [m]. */
  readonly wheelDiameter_m: number;
  /** `D2`, outlet diameter [m]. */
  readonly outletDiameter_m: number;
  /** `psi0`, pressure coefficient with the inlet blocked [-]; null takes the usual one. */
  readonly shutOffCoefficient: number | null;
  /** `phiF`, flow coefficient at free delivery [-]; null takes the usual one. */
  readonly freeFlowCoefficient: number | null;
}

/**
 * Holes whose points lie evenly between the blocked and the open inlet.
 *
 * Of `k` plates the `i`-th shall let `x = i/(k + 1)` of the free flow pass, where the shape `f` of the kind gives the
 * pressure `p0 f(x)`. With `Q = C (pi/4) d^2 sqrt(2 p/rho)` and coefficients in the place of flow and pressure, speed
 * and density drop out: `d^2 = phiF x D^2/(C sqrt(psi0 f(x)))`.
 *
 * @param shape - row of FAN_SHAPES, each figure a share or ratio [-]
 * @param fan - wheel, outlet, and coefficients where they are known
 * @param plates - number of plates [-], one or more
 * @returns diameters of one hole each, rising, to the whole millimetre [m]
 * @throws ImpossibleInput naming the field that is not above zero
 *
 * @remarks
 * Range: inlets of a still box, sharp edges; as HOLE_PLATE_RANGE.
 * Outside: the value is still returned.
 * Leaves out: what the box and the plate's pipe add to the loss.
 * Limits: one plate lets half of the free flow pass. Measured coefficients make the spread even in fact.
 * Basis: assumed: the shape is that of the row; the algebra follows from the flow of a hole.
 * Source: none: a plan for tests, which the tests then correct.
 * Checked: test/core/fan/tests/plate-sizes.test.ts.
 *
 * @example
 * ```ts
 * const fan = { wheelDiameter_m: 0.2, outletDiameter_m: 0.1, shutOffCoefficient: 1, freeFlowCoefficient: 0.15 };
 * plateSizes(FAN_SHAPES['radial-backward'], fan, 4)[0]; // 0.045
 * ```
 */
export function plateSizes(shape: FanShape, fan: PlateFan, plates: number): readonly number[] {
  const D = requirePositive('wheelDiameter_m', fan.wheelDiameter_m);
  const outlet = requirePositive('outletDiameter_m', fan.outletDiameter_m);
  const shutOff = requirePositive('shutOffCoefficient', fan.shutOffCoefficient ?? shape.shutOff.median);
  const usual = shape.freeOutlet.median * (outlet / D) ** 2;
  const free = requirePositive('freeFlowCoefficient', fan.freeFlowCoefficient ?? usual);
  const curve = monotoneCurve(shape.flow, shape.pressure);
  const at = new Float64Array(2);
  return Array.from({ length: Math.max(1, Math.floor(plates)) }, (_, i) => {
    const x = (i + 1) / (Math.max(1, Math.floor(plates)) + 1);
    curveValueAndSlope(curve, x, at);
    const square = (free * x * D ** 2) / (SHARP_HOLE.value * Math.sqrt(shutOff * at[0]!));
    return Math.round(Math.sqrt(square) * 1000) / 1000;
  });
}
