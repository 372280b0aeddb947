import { roundArea } from '../../core/network/round-area.ts';
import type { UnitSystem } from '../../core/quantities/dimensions.ts';

const IN_m = 0.0254;

/** One size that can be bought, with the text that a field gets. */
export interface DuctSize {
  readonly diameter_m: number;
  readonly text: string;
}

const millimetres = [25, 32, 38, 50, 63, 75, 80, 100, 125, 150, 160, 180, 200, 250, 315, 355, 400, 450, 500];
const inches = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20];

/** Sizes of duct and hose that shops sell, smallest first; common practice, no source. */
export const DUCT_SIZES: Readonly<Record<UnitSystem, readonly DuctSize[]>> = {
  si: millimetres.map((mm) => ({ diameter_m: mm / 1000, text: `${mm} mm` })),
  us: inches.map((inch) => ({ diameter_m: inch * IN_m, text: `${inch} in` })),
};

/** What is known of a run whose size is to change. */
export interface SizeAsked {
  readonly diameter_m: number;
  readonly velocity_ms: number;
  readonly required_ms: number;
}

/** A tenth in hand, as the messages of the checks advise. */
const IN_HAND = 1.1;

/** How much the velocity grows from one size to another if the same air flows: the ratio of the areas. */
const quicker = (from_m: number, to_m: number): number => roundArea(from_m) / roundArea(to_m);

/** A run that would have to shrink below this share of its size lacks air, not a smaller duct. */
const LEAST_SHARE = 0.6;

/**
 * Largest size on sale, below the one in use, at which the velocity would hold with a tenth in hand if the same air
 * flowed. A first guess: a smaller duct costs more pressure, so less air will flow. Null where no size would do.
 */
export function smallerSize(run: SizeAsked, units: UnitSystem): DuctSize | null {
  const fits = DUCT_SIZES[units].filter(
    ({ diameter_m }) =>
      diameter_m < run.diameter_m * (1 - 1e-6) &&
      diameter_m >= LEAST_SHARE * run.diameter_m &&
      run.velocity_ms * quicker(run.diameter_m, diameter_m) >= run.required_ms * IN_HAND,
  );
  return fits.at(-1) ?? null;
}

/** Next larger size on sale, if the velocity would still hold there with a tenth in hand; as rough as `smallerSize`. */
export function largerSize(run: SizeAsked, units: UnitSystem): DuctSize | null {
  const next = DUCT_SIZES[units].find(({ diameter_m }) => diameter_m > run.diameter_m * (1 + 1e-6));
  if (next === undefined) return null;
  const holds = run.velocity_ms * quicker(run.diameter_m, next.diameter_m) >= run.required_ms * IN_HAND;
  return holds ? next : null;
}
