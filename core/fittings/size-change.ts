import {
  ImpossibleInput,
  requireBetween,
  requireNotNegative,
  requirePositive,
} from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { LossCoefficient } from './loss-coefficient.ts';
import { taperedExpansion } from './tapered-expansion.ts';
import type { Taper } from './tapered-expansion.ts';

export { taperedExpansion, TAPERED_EXPANSION_RANGE } from './tapered-expansion.ts';
export type { Taper } from './tapered-expansion.ts';

/** Where a step in diameter is covered. */
export const STEP_RANGE: ValidRange = { 'Reynolds number': { low: 1e4, unit: '-' } };
/** Where the conical contraction was fitted. */
export const TAPERED_CONTRACTION_RANGE: ValidRange = {
  'included angle': { low: (5 * Math.PI) / 180, high: Math.PI, unit: 'rad' },
};

/** Darcy friction factor along a taper's wall that `sizeChange` takes: sheet-metal duct of 100 to 200 mm [-]. */
export const TAPER_WALL_FRICTION = 0.02;

/**
 * Total-pressure loss coefficient where a round duct widens in one step.
 *
 * The jet from the small duct mixes out in the large one: `K = (1 - A1/A2)^2`.
 *
 * @param upstreamDiameter_m - `D1`, inside diameter before the step [m]
 * @param downstreamDiameter_m - `D2`, inside diameter after the step [m], at least `D1`
 * @returns `k` [-] with `on: 'upstream'`: the velocity pressure of the small duct
 * @throws ImpossibleInput naming a diameter not above zero, or `D2` below `D1`
 *
 * @remarks
 * Range: turbulent, even approach; as data in STEP_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: a skewed profile from a fitting close upstream.
 * Limits: `D2 = D1` gives 0; `D2` without bound gives 1 (free discharge).
 * Basis: published (read as quoted in an open library; it follows from momentum and continuity).
 * Source: Borda-Carnot, as in Rennels and Hudson, Pipe Flow, Wiley, 2012, as quoted in an open library.
 * Checked: test/reference/size-change.test.ts.
 *
 * @example
 * ```ts
 * suddenExpansion(0.1, 0.15).k; // 0.3086
 * ```
 */
export function suddenExpansion(upstreamDiameter_m: number, downstreamDiameter_m: number): LossCoefficient {
  const beta = widening(upstreamDiameter_m, downstreamDiameter_m);
  return { k: (1 - beta * beta) ** 2, on: 'upstream' };
}

/** `D1/D2` of a widening; throws where it is not one. */
function widening(upstreamDiameter_m: number, downstreamDiameter_m: number): number {
  const D1 = requirePositive('upstreamDiameter_m', upstreamDiameter_m);
  const D2 = requirePositive('downstreamDiameter_m', downstreamDiameter_m);
  if (D2 < D1) throw new ImpossibleInput('downstreamDiameter_m', D2, 'at least the upstream diameter');
  return D1 / D2;
}

/** `D2/D1` of a narrowing; throws where it is not one. */
function narrowing(upstreamDiameter_m: number, downstreamDiameter_m: number): number {
  const D1 = requirePositive('upstreamDiameter_m', upstreamDiameter_m);
  const D2 = requirePositive('downstreamDiameter_m', downstreamDiameter_m);
  if (D2 > D1) throw new ImpossibleInput('downstreamDiameter_m', D2, 'at most the upstream diameter');
  return D2 / D1;
}

/**
 * Total-pressure loss coefficient where a round duct narrows in one step.
 *
 * `lambda = 1 + 0.622 (1 - 0.215 b^2 - 0.785 b^5)` is the speed of the contracted jet over that of the duct;
 * `K = 0.0696 (1 - b^5) lambda^2 + (lambda - 1)^2`, with `b = D2/D1`.
 *
 * @param upstreamDiameter_m - `D1`, inside diameter before the step [m]
 * @param downstreamDiameter_m - `D2`, inside diameter after the step [m], at most `D1`
 * @returns `k` [-] with `on: 'downstream'`: the velocity pressure of the small duct
 * @throws ImpossibleInput naming a diameter not above zero, or `D2` above `D1`
 *
 * @remarks
 * Range: turbulent, sharp edge; as data in STEP_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: a rounded or burred edge. Other handbooks give 15 to 35 % less.
 * Limits: `D2 = D1` gives 0; `D1` without bound gives 0.57, the sharp flush entry.
 * Basis: published (read as quoted in an open library; page not seen).
 * Source: Rennels and Hudson, Pipe Flow, Wiley, 2012, ch. 10, sharp-edged contraction, as quoted in an open
 *   library.
 * Checked: test/reference/size-change.test.ts.
 *
 * @example
 * ```ts
 * suddenContraction(0.1, 0.08).k; // 0.23034
 * ```
 */
export function suddenContraction(upstreamDiameter_m: number, downstreamDiameter_m: number): LossCoefficient {
  const b = narrowing(upstreamDiameter_m, downstreamDiameter_m);
  const lambda = 1 + 0.622 * (1 - 0.215 * b * b - 0.785 * b ** 5);
  return { k: 0.0696 * (1 - b ** 5) * lambda * lambda + (lambda - 1) ** 2, on: 'downstream' };
}

/**
 * Total-pressure loss coefficient of a cone that narrows.
 *
 * `lambda = 1 + 0.622 (a/pi)^(4/5) (1 - 0.215 b^2 - 0.785 b^5)`;
 * `K = 0.0696 sin(a/2) (1 - b^5) lambda^2 + (lambda - 1)^2`, plus wall friction `f (1 - b^4) / (8 sin(a/2))`.
 *
 * @param taper - diameters [m], included angle `a` [rad], Darcy friction factor `f` of the wall [-]
 * @returns `k` [-] with `on: 'downstream'`: the velocity pressure of the small duct
 * @throws ImpossibleInput naming a diameter not above zero, `D2` above `D1`, an angle outside 0 to pi, a negative
 * friction factor
 *
 * @remarks
 * Range: as data in TAPERED_CONTRACTION_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: rounding where cone and duct meet. The exhaust trade's table reads two to three times more, the valve
 * trade's up to three and a half times; both losses are small beside the rest of a run.
 * Limits: equal diameters give 0; pi with no wall friction gives `suddenContraction`.
 * Basis: published (read as quoted in an open library; page not seen).
 * Source: Rennels and Hudson, Pipe Flow, Wiley, 2012, ch. 10, conical contraction, as quoted in an open library.
 * Checked: test/reference/size-change.test.ts.
 *
 * @example
 * ```ts
 * const cone = { upstreamDiameter_m: 0.2, downstreamDiameter_m: 0.1, includedAngle_rad: Math.PI / 2 };
 * taperedContraction({ ...cone, wallFrictionFactor: 0.019 }).k; // 0.195818
 * ```
 */
export function taperedContraction(taper: Taper): LossCoefficient {
  const b = narrowing(taper.upstreamDiameter_m, taper.downstreamDiameter_m);
  const a = requireAngle(taper.includedAngle_rad);
  const f = requireNotNegative('wallFrictionFactor', taper.wallFrictionFactor);
  const s = Math.sin(a / 2);
  const lambda = 1 + 0.622 * (a / Math.PI) ** 0.8 * (1 - 0.215 * b * b - 0.785 * b ** 5);
  const jet = 0.0696 * s * (1 - b ** 5) * lambda * lambda + (lambda - 1) ** 2;
  return { k: jet + (f * (1 - b ** 4)) / (8 * s), on: 'downstream' };
}

/** A cone flatter than this is a duct, not a taper [rad]. */
const LEAST_ANGLE_rad = 1e-4;

function requireAngle(angle_rad: number): number {
  return requireBetween('includedAngle_rad', angle_rad, LEAST_ANGLE_rad, Math.PI);
}

/** A change of diameter between two round ducts. */
export interface SizeChange {
  /** Inside diameter before [m]. */
  readonly upstreamDiameter_m: number;
  /** Inside diameter after [m]. */
  readonly downstreamDiameter_m: number;
  /** Full angle of the cone [rad]; null is a plain step. */
  readonly includedAngle_rad: number | null;
}

/**
 * Total-pressure loss coefficient of any change of diameter between round ducts.
 *
 * Picks among the four relations of this file by direction and angle; a cone's wall has TAPER_WALL_FRICTION.
 *
 * @param change - diameters [m] and included angle [rad], null for a plain step
 * @returns `k` [-] on the velocity pressure of the small duct: `upstream` if it widens, `downstream` if it narrows
 * @throws ImpossibleInput as the four relations do
 *
 * @remarks
 * Range: as that of the relation picked: STEP_RANGE, TAPERED_CONTRACTION_RANGE, TAPERED_EXPANSION_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: square to round (take the diameters of equal area and accept some 20 % more).
 * Limits: equal diameters give 0.
 * Basis: published, as the four relations.
 * Source: Rennels and Hudson, Pipe Flow, Wiley, 2012, ch. 10 and 11.
 * Checked: test/reference/size-change.test.ts.
 *
 * @example
 * ```ts
 * sizeChange({ upstreamDiameter_m: 0.1, downstreamDiameter_m: 0.15, includedAngle_rad: null }).k; // 0.3086
 * ```
 */
export function sizeChange(change: SizeChange): LossCoefficient {
  const { upstreamDiameter_m, downstreamDiameter_m, includedAngle_rad } = change;
  const widens = downstreamDiameter_m > upstreamDiameter_m;
  if (includedAngle_rad === null) {
    return widens
      ? suddenExpansion(upstreamDiameter_m, downstreamDiameter_m)
      : suddenContraction(upstreamDiameter_m, downstreamDiameter_m);
  }
  const taper = { ...change, includedAngle_rad, wallFrictionFactor: TAPER_WALL_FRICTION };
  return widens ? taperedExpansion(taper) : taperedContraction(taper);
}
