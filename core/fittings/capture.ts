import { ImpossibleInput, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';

export { enclosureFlow, enclosureVelocity } from './enclosure.ts';

/** Distance from the face for which the fall-off of DallaValle was measured, over the root of the face area. */
export const CAPTURE_RANGE: ValidRange = { 'distance over root of area': { low: 0, high: 1.5, unit: '-' } };
/** Slots are long and narrow. */
export const SLOT_CAPTURE_RANGE: ValidRange = { 'width over length': { low: 0, high: 0.2, unit: '-' } };
/** Faces on which the relation of Fletcher was measured. */
export const FLETCHER_RANGE: ValidRange = { 'width over length': { low: 1 / 16, high: 1, unit: '-' } };

/** How an opening stands; a flange cuts off the air that would come from behind. */
export type OpeningStyle = 'plain' | 'flanged';

/** Share of a plain opening's flow that a flanged one needs, and flow for each metre of slot length and distance. */
const OPENINGS: Readonly<Record<OpeningStyle, { readonly share: number; readonly slot: number }>> = {
  plain: { share: 1, slot: 3.7 },
  flanged: { share: 0.75, slot: 2.6 },
};

/** A round or nearly square opening that draws in air. */
export interface CaptureOpening {
  /** Plain, or with a flange at least as wide as the root of the face area. */
  readonly style: OpeningStyle;
  /** Face area [m2]. */
  readonly faceArea_m2: number;
  /** Distance from the face, on its axis, to where dust is set free [m]; zero is the face itself. */
  readonly distance_m: number;
}

function spread(opening: CaptureOpening): number {
  const A = requirePositive('faceArea_m2', opening.faceArea_m2);
  const X = opening.distance_m;
  if (!(X >= 0 && X < 1e6)) throw new ImpossibleInput('distance_m', X, 'a finite number, zero or more');
  return OPENINGS[opening.style].share * (10 * X * X + A);
}

/**
 * Flow that an opening needs to draw air at a wanted velocity at a distance.
 *
 * `Q = V (10 X^2 + A)` plain; three quarters of it with a flange.
 *
 * @param opening - style, face area `A` [m2], distance `X` [m]
 * @param captureVelocity_ms - `V`, wanted at the distance [m/s]
 * @returns flow [m3/s]
 * @throws ImpossibleInput naming an area or velocity not above zero or a negative distance
 *
 * @remarks
 * Range: round or nearly square faces, distance up to 1.5 diameters; as data in CAPTURE_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: draughts, and the throw of a cutter: chips at 30 m/s are not captured by moving air at 1 m/s, a hood must
 * stand in their way.
 * Limits: at the face of a plain opening it is `V A`.
 * Basis: from-memory (page not seen).
 * Source: DallaValle, 1930s, as in ACGIH, Industrial Ventilation, figure 3-11.
 * Checked: test/reference/capture.test.ts.
 *
 * @example
 * ```ts
 * captureFlow({ style: 'plain', faceArea_m2: 0.01, distance_m: 0.1 }, 1); // 0.11
 * ```
 */
export function captureFlow(opening: CaptureOpening, captureVelocity_ms: number): number {
  return requirePositive('captureVelocity_ms', captureVelocity_ms) * spread(opening);
}

/**
 * Velocity that an opening draws at a distance.
 *
 * `V = Q / (10 X^2 + A)` plain; a third more with a flange.
 *
 * @param opening - style, face area `A` [m2], distance `X` [m]
 * @param flow_m3s - `Q`, flow [m3/s]
 * @returns velocity at the distance, on the axis [m/s]
 * @throws ImpossibleInput naming an area or flow not above zero or a negative distance
 *
 * @remarks
 * Range: as data in CAPTURE_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: as `captureFlow`.
 * Limits: falls with the square of distance; at the face of a flanged opening it reads a third too high.
 * Basis: from-memory (page not seen).
 * Source: DallaValle, 1930s, as in ACGIH, Industrial Ventilation, figure 3-11.
 * Checked: test/reference/capture.test.ts.
 *
 * @example
 * ```ts
 * captureVelocity({ style: 'plain', faceArea_m2: 0.01, distance_m: 0.1 }, 0.11); // 1
 * ```
 */
export function captureVelocity(opening: CaptureOpening, flow_m3s: number): number {
  return requirePositive('flow_m3s', flow_m3s) / spread(opening);
}

/** A slot that draws in air over its length. */
export interface CaptureSlot {
  /** Plain, or with a flange. */
  readonly style: OpeningStyle;
  /** Length of the slot [m]. */
  readonly slotLength_m: number;
  /** Distance from the slot to where dust is set free [m]. */
  readonly distance_m: number;
}

function slotSpread(slot: CaptureSlot): number {
  const L = requirePositive('slotLength_m', slot.slotLength_m);
  return OPENINGS[slot.style].slot * L * requirePositive('distance_m', slot.distance_m);
}

/**
 * Flow that a slot needs to draw air at a wanted velocity at a distance.
 *
 * `Q = 3.7 L V X` plain, `2.6 L V X` with a flange.
 *
 * @param slot - style, length `L` [m], distance `X` [m]
 * @param captureVelocity_ms - `V`, wanted at the distance [m/s]
 * @returns flow [m3/s]
 * @throws ImpossibleInput naming a number not above zero
 *
 * @remarks
 * Range: width up to a fifth of the length; as data in SLOT_CAPTURE_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: draughts; the ends of the slot.
 * Limits: rises in proportion to distance, where an opening's flow rises with the square.
 * Basis: from-memory (page not seen).
 * Source: ACGIH, Industrial Ventilation, figure 3-11.
 * Checked: test/reference/capture.test.ts.
 *
 * @example
 * ```ts
 * slotCaptureFlow({ style: 'flanged', slotLength_m: 0.5, distance_m: 0.2 }, 1); // 0.26
 * ```
 */
export function slotCaptureFlow(slot: CaptureSlot, captureVelocity_ms: number): number {
  return requirePositive('captureVelocity_ms', captureVelocity_ms) * slotSpread(slot);
}

/**
 * Velocity that a slot draws at a distance.
 *
 * `V = Q / (3.7 L X)` plain, `Q / (2.6 L X)` with a flange.
 *
 * @param slot - style, length `L` [m], distance `X` [m]
 * @param flow_m3s - `Q`, flow [m3/s]
 * @returns velocity at the distance [m/s]
 * @throws ImpossibleInput naming a number not above zero
 *
 * @remarks
 * Range: as data in SLOT_CAPTURE_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: as `slotCaptureFlow`; close to the slot it grows without bound.
 * Limits: falls in proportion to distance.
 * Basis: from-memory (page not seen).
 * Source: ACGIH, Industrial Ventilation, figure 3-11.
 * Checked: test/reference/capture.test.ts.
 *
 * @example
 * ```ts
 * slotCaptureVelocity({ style: 'flanged', slotLength_m: 0.5, distance_m: 0.2 }, 0.26); // 1
 * ```
 */
export function slotCaptureVelocity(slot: CaptureSlot, flow_m3s: number): number {
  return requirePositive('flow_m3s', flow_m3s) / slotSpread(slot);
}

/** A rectangular face without flange. */
export interface RectangularFace {
  /** Longer side [m]. */
  readonly length_m: number;
  /** Shorter side [m]. */
  readonly width_m: number;
  /** Distance from the face, on its axis [m]. */
  readonly distance_m: number;
}

/**
 * Velocity at a distance over mean face velocity, for a plain rectangular face: a second opinion on DallaValle.
 *
 * `V/V0 = 1 / (0.93 + 8.58 a^2)`, `a = k (W/L)^-b`, `k = X/sqrt(A)`, `b = 0.2 k^(-1/3)`.
 *
 * @param face - longer side `L` [m], shorter side `W` [m], distance `X` [m]
 * @returns velocity ratio [-]
 * @throws ImpossibleInput naming a side or distance not above zero, or a width above the length
 *
 * @remarks
 * Range: sides up to 16 to 1; as data in FLETCHER_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: flanges and draughts.
 * Limits: at the face 1.075; far off it falls with the square of distance.
 * Basis: from-memory (page not seen).
 * Source: Fletcher, Annals of Occupational Hygiene, 1977.
 * Checked: test/reference/capture.test.ts.
 *
 * @example
 * ```ts
 * fletcherVelocityRatio({ length_m: 0.1, width_m: 0.1, distance_m: 0.1 }); // 0.10515
 * ```
 */
export function fletcherVelocityRatio(face: RectangularFace): number {
  const L = requirePositive('length_m', face.length_m);
  const W = requirePositive('width_m', face.width_m);
  if (W > L) throw new ImpossibleInput('width_m', W, 'at most the length');
  const k = requirePositive('distance_m', face.distance_m) / Math.sqrt(L * W);
  const a = k * (L / W) ** (0.2 / Math.cbrt(k));
  return 1 / (0.93 + 8.58 * a * a);
}
