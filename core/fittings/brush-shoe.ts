import { requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { LossCoefficient } from './loss-coefficient.ts';

/** Coefficients that practice uses for the two parts of a shoe. */
export const BRUSH_SHOE_RANGE: ValidRange = {
  'throat coefficient': { low: 0.25, high: 0.9, unit: '-' },
  'bristle coefficient': { low: 1.8, high: 2.8, unit: '-' },
};

/** A shroud with a brush skirt around a cutter. */
export interface BrushShoe {
  /** Area of the duct or hose behind the shoe [m2]. */
  readonly ductArea_m2: number;
  /** Open area between bristles and work, and wherever else air gets in [m2]. */
  readonly gapArea_m2: number;
  /** Entry loss from the shoe into the duct, on the duct's velocity pressure [-]. */
  readonly throatCoefficient: number;
  /** Loss through the bristles, on the gap's velocity pressure [-]; 1.8 to 2.8 is taken. */
  readonly bristleCoefficient: number;
}

/**
 * Loss of a shoe with a brush skirt: what comes through the bristles, and the entry into the duct.
 *
 * `K = Kthroat + Kbristle (Aduct/Agap)^2` on the duct's velocity pressure.
 *
 * @param shoe - duct area [m2], gap area [m2], throat coefficient [-], bristle coefficient [-]
 * @returns `k` [-] with `on: 'downstream'`: the duct's velocity pressure
 * @throws ImpossibleInput naming an area not above zero or a negative coefficient
 *
 * @remarks
 * Range: as data in BRUSH_SHOE_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: the jet that the cutter throws, cooling air of the spindle, bristles that lift. It says nothing on how
 * much dust the shoe catches: fine dust still escapes from such a shoe, so wear a mask and measure.
 * Limits: a skirt lifted clear leaves the throat alone.
 * Basis: assumed; no published loss of a brush shoe was found.
 * Source: practice: the skirt as a sharp-edged slot (1.78), the throat as a hood entry.
 * Checked: test/reference/entry.test.ts, limits only.
 *
 * @example
 * ```ts
 * const areas = { ductArea_m2: 0.004, gapArea_m2: 0.008 };
 * brushShoeCoefficient({ ...areas, throatCoefficient: 0.5, bristleCoefficient: 2 }).k; // 1
 * ```
 */
export function brushShoeCoefficient(shoe: BrushShoe): LossCoefficient {
  const ratio =
    requirePositive('ductArea_m2', shoe.ductArea_m2) / requirePositive('gapArea_m2', shoe.gapArea_m2);
  const throat = requireNotNegative('throatCoefficient', shoe.throatCoefficient);
  const bristles = requireNotNegative('bristleCoefficient', shoe.bristleCoefficient);
  return { k: throat + bristles * ratio * ratio, on: 'downstream' };
}
