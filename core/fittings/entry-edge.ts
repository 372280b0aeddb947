import { requireBetween, requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { LossCoefficient } from './loss-coefficient.ts';

/** Rounding for which the rounded entry is given; beyond one diameter it does not change. */
export const ROUNDED_ENTRY_RANGE: ValidRange = { 'radius over diameter': { low: 0, high: 1, unit: '-' } };
/** Bevels for which the bevelled entry was fitted. */
export const BEVELLED_ENTRY_RANGE: ValidRange = {
  'bevel length over diameter': { low: 0, high: 1, unit: '-' },
};

/**
 * Entry loss of a duct flush with a wall, its edge rounded to a radius.
 *
 * `lambda = 1 + 0.622 (1 - 0.30 sqrt(x) - 0.70 x)^4`, `K = 0.0696 (1 - 0.569 x) lambda^2 + (lambda - 1)^2`, `x = r/D`.
 *
 * @param edgeRadius_m - `r`, radius of the edge [m]
 * @param diameter_m - `D`, inside diameter of the duct [m]
 * @returns `k` [-] with `on: 'downstream'`: the duct's velocity pressure
 * @throws ImpossibleInput naming a negative radius or a diameter not above zero
 *
 * @remarks
 * Range: as data in ROUNDED_ENTRY_RANGE.
 * Outside: a radius above the diameter counts as the diameter; `findOutside` reports it.
 * Leaves out: a bell that stands free in the room, whose lip draws air from behind.
 * Limits: a sharp edge gives 0.57; a large radius 0.03.
 * Basis: from-memory (page not seen).
 * Source: Rennels and Hudson, Pipe Flow, Wiley, 2012, ch. 9, rounded-edged entrance.
 * Checked: test/reference/entry.test.ts.
 *
 * @example
 * ```ts
 * roundedEntryCoefficient(0.005, 0.1).k; // 0.29684
 * ```
 */
export function roundedEntryCoefficient(edgeRadius_m: number, diameter_m: number): LossCoefficient {
  const r = requireNotNegative('edgeRadius_m', edgeRadius_m);
  const x = Math.min(1, r / requirePositive('diameter_m', diameter_m));
  const lambda = 1 + 0.622 * (1 - 0.3 * Math.sqrt(x) - 0.7 * x) ** 4;
  return { k: 0.0696 * (1 - 0.569 * x) * lambda * lambda + (lambda - 1) ** 2, on: 'downstream' };
}

/** A duct flush with a wall whose edge is cut to a cone. */
export interface BevelledEntry {
  /** Length of the bevel along the axis [m]. */
  readonly bevelLength_m: number;
  /** Angle of the bevel from the axis [rad]. */
  readonly bevelAngle_rad: number;
  /** Inside diameter of the duct [m]. */
  readonly diameter_m: number;
}

/**
 * Entry loss of a duct flush with a wall, its edge bevelled.
 *
 * `C = (1 - a)(a)^(1/(1 + x))`, `lambda = 1 + 0.622 (1 - 1.5 C x^((1 - x^0.25)/2))`,
 * `K = 0.0696 (1 - C x) lambda^2 + (lambda - 1)^2`, with `a` the angle over a right angle and `x` length over diameter.
 *
 * @param entry - length of the bevel [m], its angle from the axis [rad], diameter [m]
 * @returns `k` [-] with `on: 'downstream'`: the duct's velocity pressure
 * @throws ImpossibleInput naming a negative length, an angle outside 0 to a right angle, a diameter not above zero
 *
 * @remarks
 * Range: as data in BEVELLED_ENTRY_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: rounding of the two edges of the bevel.
 * Limits: no bevel gives the sharp entry, 0.57.
 * Basis: from-memory (page not seen).
 * Source: Rennels and Hudson, Pipe Flow, Wiley, 2012, ch. 9, bevelled-edged entrance.
 * Checked: test/reference/entry.test.ts.
 *
 * @example
 * ```ts
 * bevelledEntryCoefficient({ bevelLength_m: 0.0125, bevelAngle_rad: Math.PI / 4, diameter_m: 0.125 }).k; // 0.369471
 * ```
 */
export function bevelledEntryCoefficient(entry: BevelledEntry): LossCoefficient {
  const x =
    requireNotNegative('bevelLength_m', entry.bevelLength_m) /
    requirePositive('diameter_m', entry.diameter_m);
  const a = requireBetween('bevelAngle_rad', entry.bevelAngle_rad, 0, Math.PI / 2) / (Math.PI / 2);
  const C = (1 - a) * a ** (1 / (1 + x));
  const gain = x === 0 ? 0 : 1.5 * C * x ** ((1 - x ** 0.25) / 2);
  const lambda = 1 + 0.622 * (1 - gain);
  return { k: 0.0696 * (1 - C * x) * lambda * lambda + (lambda - 1) ** 2, on: 'downstream' };
}
