import { elbowCoefficient } from '../fittings/elbow.ts';
import type { LossCoefficient } from '../fittings/loss-coefficient.ts';
import { readTable } from '../quantities/table.ts';
import { requireBetween, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';

/** Where the step model of a corrugated hose is meant. */
export const HAWTHORNE_RANGE: ValidRange = { 'pitch over diameter': { low: 0.02, high: 0.3, unit: '-' } };
/** Diameters and slackness on which the factor for slack flexible duct was fitted. */
export const COMPRESSED_HOSE_RANGE: ValidRange = {
  diameter: { low: 0.1524, high: 0.254, unit: 'm' },
  compression: { low: 0, high: 0.3, unit: '-' },
};
/** Where the practice for bent hose was meant. */
export const HOSE_BEND_RANGE: ValidRange = { 'radius over diameter': { low: 0.75, high: 2.5, unit: '-' } };

/**
 * Darcy friction factor of a corrugated hose, each fold taken as a sudden expansion.
 *
 * `K1 = [1 - (D/(D + 0.438 s))^2]^2` for each fold, so `f = K1 D / s`.
 *
 * @param diameter_m - `D`, inside diameter [m]
 * @param pitch_m - `s`, distance from fold to fold [m]
 * @returns Darcy friction factor [-], the same at any Reynolds number
 * @throws ImpossibleInput naming the argument: not finite or not above zero
 *
 * @remarks
 * Range: as data in HAWTHORNE_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: depth and rounding of the folds, Reynolds number, bending.
 * Limits: no pitch, no loss; a smooth-bore hose is not meant, see its roughness.
 * Basis: published (read as quoted in a secondary note).
 * Source: Hawthorne, Product Engineering, 10 June 1963.
 * Checked: test/reference/hose.test.ts.
 *
 * @example
 * ```ts
 * hawthorneFriction(0.1, 0.01); // 0.0675
 * ```
 */
export function hawthorneFriction(diameter_m: number, pitch_m: number): number {
  const D = requirePositive('diameter_m', diameter_m);
  const s = requirePositive('pitch_m', pitch_m);
  const ratio = D / (D + 0.438 * s);
  return ((1 - ratio * ratio) ** 2 * D) / s;
}

/**
 * Factor on the friction drop of a flexible duct that is not pulled straight.
 *
 * `PDCF = 1 + 0.58 c exp(-0.126 D)`, with `c` the compression in percent and `D` in inches.
 *
 * @param diameter_m - `D`, inside diameter [m]
 * @param compression - one minus length as laid over length fully stretched [-], 0 to 1
 * @returns factor on the drop of the same laid length, fully stretched [-]
 * @throws ImpossibleInput naming a diameter not above zero or a compression outside 0 to 1
 *
 * @remarks
 * Range: 150 to 250 mm, up to 30 %; as data in COMPRESSED_HOSE_RANGE. A shop's 63 to 125 mm hose extrapolates.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: sag between hangers, liner material.
 * Limits: 1 when pulled straight.
 * Basis: from-memory (page not seen; agrees with the abstract of the measurements: about 4 times and close to 10).
 * Source: ASHRAE Fundamentals, 2009 and later, ch. 21; after Abushakra, Walker and Sherman.
 * Checked: test/reference/hose.test.ts.
 *
 * @example
 * ```ts
 * compressedHoseFactor(0.1524, 0.15); // 5.085
 * ```
 */
export function compressedHoseFactor(diameter_m: number, compression: number): number {
  const inches = requirePositive('diameter_m', diameter_m) / 0.0254;
  return 1 + 58 * requireBetween('compression', compression, 0, 1) * Math.exp(-0.126 * inches);
}

/** A bend laid in a hose. */
export interface HoseBend {
  /** Radius of the hose's centre line [m]. */
  readonly bendRadius_m: number;
  /** Inside diameter [m]. */
  readonly diameter_m: number;
  /** Change of direction [rad]. */
  readonly angle_rad: number;
}

/** What a tight bend in hose costs over a smooth elbow of the same radius, by radius over diameter. */
const TIGHT_BEND = { radiusRatio: [1, 1.5, 2], factor: [2, 1.5, 1] };

/**
 * Upper-bound loss coefficient of a bend laid in a hose; friction along the arc is extra and the caller's.
 *
 * The coefficient of a smooth elbow, times 2 at R/D 1 and below, 1.5 at 1.5, 1 from 2 on, straight between.
 *
 * @param bend - centre-line radius [m], inside diameter [m], angle [rad]
 * @returns `k` [-] with `on: 'upstream'`; both ends are alike
 * @throws ImpossibleInput naming a radius or diameter not above zero or an angle outside 0 to pi
 *
 * @remarks
 * Range: as data in HOSE_BEND_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: flattening of the hose, folds that stand up on the inside of the bend.
 * Limits: 0 at no turn; falls with radius.
 * Basis: common-practice, no source for bends of small suction hose; the elbow under it is from memory.
 * Source: practice: a smooth elbow, times 1.5 to 2 where tighter than R/D 1.5; the taper to 1 at R/D 2 is ours.
 * Checked: test/reference/hose.test.ts, limits only; no measurement was found.
 *
 * @example
 * ```ts
 * hoseBendCoefficient({ bendRadius_m: 0.1, diameter_m: 0.1, angle_rad: Math.PI / 2 }).k; // 0.44
 * ```
 */
export function hoseBendCoefficient(bend: HoseBend): LossCoefficient {
  const radiusRatio =
    requirePositive('bendRadius_m', bend.bendRadius_m) / requirePositive('diameter_m', bend.diameter_m);
  const smooth = elbowCoefficient({
    style: 'smooth',
    radiusRatio,
    angle_rad: bend.angle_rad,
    angleRule: 'ashrae',
  });
  return { k: smooth.k * readTable(TIGHT_BEND.radiusRatio, TIGHT_BEND.factor, radiusRatio), on: smooth.on };
}
