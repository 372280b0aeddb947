import { BUTTERFLY, SLIDE_GATE, SLIDE_GATE_OPEN } from '../catalogue/gates.ts';
import { ImpossibleInput, requireBetween } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { LossCoefficient } from './loss-coefficient.ts';
import { degrees, readLogTable } from '../quantities/table.ts';

/** Openings that the printed column of the slide gate covers. */
export const SLIDE_GATE_RANGE: ValidRange = { opening: { low: 0.2, high: 1, unit: '-' } };
/** Angles that the printed column of the butterfly covers. */
export const BUTTERFLY_RANGE: ValidRange = { angle: { low: 0, high: degrees(60), unit: 'rad' } };

/** An opening below this is shut: what it passes is leakage, which nobody has published [-]. */
export const SLIDE_GATE_SHUT_BELOW = 1e-4;

/**
 * Loss coefficient of a slide gate (blast gate) in a round duct.
 *
 * The printed column, straight in `ln K` between its openings, with SLIDE_GATE_OPEN at 1. Below the column's first
 * opening the jet through the free crescent mixes out as in a step: `sqrt(K) + 1` grows as one over the crescent's area,
 * which a blade with a round end leaves: `1 - (2/pi)(acos(h) - h sqrt(1 - h^2))` of the duct.
 *
 * @param opening - open height over diameter [-], 0.0001 to 1
 * @returns `k` [-] with `on: 'upstream'`: the duct's velocity pressure
 * @throws ImpossibleInput naming an opening outside 0.0001 to 1: a shut gate has no coefficient, it ends the path
 *
 * @remarks
 * Range: 0.2 to 1; as data in SLIDE_GATE_RANGE.
 * Outside: the value is still returned, by that law; `findOutside` reports it.
 * Leaves out: leakage of a shut gate; chips packed in the slot; what the skewed jet does to the next fitting.
 * Limits: falls strictly with opening.
 * Basis: published (page read from 0.2 to 0.9 open); fully open common-practice; below 0.2 assumed.
 * Source: Idelchik, Handbook of Hydraulic Resistance, diagram 9-5, circular cross-section.
 * Checked: test/reference/gate.test.ts.
 *
 * @example
 * ```ts
 * slideGateCoefficient(0.5).k; // 2.1
 * ```
 */
export function slideGateCoefficient(opening: number): LossCoefficient {
  const h = requireBetween('opening', opening, SLIDE_GATE_SHUT_BELOW, 1);
  const first = SLIDE_GATE.at[0]!;
  if (h < first) {
    const root = ((1 + Math.sqrt(SLIDE_GATE.k[0]!)) * crescent(first)) / crescent(h) - 1;
    return { k: root * root, on: 'upstream' };
  }
  return { k: readLogTable([...SLIDE_GATE.at, 1], [...SLIDE_GATE.k, SLIDE_GATE_OPEN.k], h), on: 'upstream' };
}

/** Free share of a round duct behind a round-ended blade that leaves `h` of the diameter open. */
function crescent(h: number): number {
  return (2 / Math.PI) * (Math.asin(h) + h * Math.sqrt(1 - h * h));
}

/**
 * Loss coefficient of a butterfly damper in a round duct.
 *
 * The printed column, straight in `ln K` between its angles; beyond the last angle `a0` the free area vanishes at 90
 * degrees as `1 - sin a`: `K = K0 ((1 - sin a0)/(1 - sin a))^2`.
 *
 * @param angle_rad - angle from fully open [rad], 0 up to but not including a right angle
 * @returns `k` [-] with `on: 'upstream'`: the duct's velocity pressure
 * @throws ImpossibleInput naming an angle below 0 or above 89.9 degrees: a shut damper has no coefficient
 *
 * @remarks
 * Range: 0 to 60 degrees; as data in BUTTERFLY_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: blade thickness; chips caught on the shaft: such a damper does not belong where chips pass.
 * Limits: rises strictly with angle.
 * Basis: from-memory (page not seen); beyond 60 degrees assumed.
 * Source: ASHRAE, round butterfly damper.
 * Checked: test/reference/gate.test.ts.
 *
 * @example
 * ```ts
 * butterflyCoefficient(Math.PI / 6).k; // 4.5
 * ```
 */
export function butterflyCoefficient(angle_rad: number): LossCoefficient {
  if (!(angle_rad >= 0 && angle_rad <= degrees(89.9))) {
    throw new ImpossibleInput(
      'angle_rad',
      angle_rad,
      'from 0 to 89.9 degrees; a shut damper has no coefficient',
    );
  }
  const angles = BUTTERFLY.at.map(degrees);
  const last = angles.at(-1)!;
  if (angle_rad <= last) return { k: readLogTable(angles, BUTTERFLY.k, angle_rad), on: 'upstream' };
  const shrink = (1 - Math.sin(last)) / (1 - Math.sin(angle_rad));
  return { k: BUTTERFLY.k.at(-1)! * shrink * shrink, on: 'upstream' };
}
