import { ENTRIES, SLOT_HOOD, TAPERED_HOODS } from '../catalogue/entries.ts';
import { requireBetween, requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { LossCoefficient } from './loss-coefficient.ts';
import { degrees, readTable } from '../quantities/table.ts';

export { bevelledEntryCoefficient, roundedEntryCoefficient } from './entry-edge.ts';
export { brushShoeCoefficient } from './brush-shoe.ts';
export type { BrushShoe } from './brush-shoe.ts';

/** Key of an entry with one printed coefficient. */
export type EntryKind = keyof typeof ENTRIES;

/** Angles that the printed columns for tapered hoods cover. */
export const TAPERED_HOOD_RANGE: ValidRange = {
  'included angle': { low: degrees(15), high: degrees(180), unit: 'rad' },
};

/**
 * Entry loss of an opening with one printed coefficient.
 *
 * @param kind - which opening; see ENTRIES
 * @returns `k` [-] with `on: 'downstream'`: the duct's velocity pressure
 * @throws none: every kind has a row
 *
 * @remarks
 * Range: turbulent flow; round duct.
 * Outside: not applicable.
 * Leaves out: walls, table or work close to the opening, which add loss.
 * Limits: none: a table.
 * Basis: from-memory (pages not seen); each row tells.
 * Source: as the row in ENTRIES tells.
 * Checked: test/reference/entry.test.ts.
 *
 * @example
 * ```ts
 * entryCoefficient('flanged').k; // 0.49
 * ```
 */
export function entryCoefficient(kind: EntryKind): LossCoefficient {
  return { k: ENTRIES[kind].k, on: 'downstream' };
}

/**
 * Entry loss of a hood that tapers into its duct.
 *
 * The printed column, by straight lines between its angles.
 *
 * @param includedAngle_rad - full (major) angle of the taper [rad]
 * @param shape - `round` cone, or `rectangular` to round
 * @returns `k` [-] with `on: 'downstream'`: the duct's velocity pressure
 * @throws ImpossibleInput naming an angle outside 0 to pi
 *
 * @remarks
 * Range: 15 to 180 degrees; as data in TAPERED_HOOD_RANGE.
 * Outside: the end value is returned; `findOutside` reports it.
 * Leaves out: a face less than twice the duct's area, for which it was not meant.
 * Limits: least near 45 degrees; 180 degrees is a flat plate, 0.50.
 * Basis: published (page read in a copy).
 * Source: ACGIH, Industrial Ventilation, hood entry losses, p. 5-35.
 * Checked: test/reference/entry.test.ts.
 *
 * @example
 * ```ts
 * taperedHoodCoefficient(Math.PI / 2, 'round').k; // 0.15
 * ```
 */
export function taperedHoodCoefficient(
  includedAngle_rad: number,
  shape: 'round' | 'rectangular',
): LossCoefficient {
  requireBetween('includedAngle_rad', includedAngle_rad, 0, Math.PI);
  const k = readTable(TAPERED_HOODS.angles_deg.map(degrees), TAPERED_HOODS[shape], includedAngle_rad);
  return { k, on: 'downstream' };
}

/** A slot in front of a plenum and duct. */
export interface SlotHood {
  /** Open area of the slots together [m2]. */
  readonly slotArea_m2: number;
  /** Area of the duct behind [m2]. */
  readonly ductArea_m2: number;
}

/**
 * Entry loss of a slot hood.
 *
 * `1.78 VPslot + 0.25 VPduct`, written on the duct's velocity pressure: `K = 1.78 (Aduct/Aslot)^2 + 0.25`.
 *
 * @param hood - slot area [m2] and duct area [m2]
 * @returns `k` [-] with `on: 'downstream'`: the duct's velocity pressure
 * @throws ImpossibleInput naming an area not above zero
 *
 * @remarks
 * Range: none printed; a plenum of at least twice the slot's area, so that the slot draws evenly.
 * Outside: the value is still returned.
 * Leaves out: a narrow plenum, in which velocity pressure is not lost between slot and duct.
 * Limits: a very wide slot leaves 0.25, the entry from plenum to duct.
 * Basis: from-memory (page not seen).
 * Source: ACGIH, Industrial Ventilation, compound hoods.
 * Checked: test/reference/entry.test.ts.
 *
 * @example
 * ```ts
 * slotHoodCoefficient({ slotArea_m2: 0.02, ductArea_m2: 0.01 }).k; // 0.695
 * ```
 */
export function slotHoodCoefficient(hood: SlotHood): LossCoefficient {
  const ratio =
    requirePositive('ductArea_m2', hood.ductArea_m2) / requirePositive('slotArea_m2', hood.slotArea_m2);
  return { k: SLOT_HOOD.slot * ratio * ratio + SLOT_HOOD.duct, on: 'downstream' };
}

/**
 * Coefficient of entry: real flow over the flow that the same suction would draw without loss.
 *
 * `Ce = 1 / sqrt(1 + K)`.
 *
 * @param k - entry loss on the duct's velocity pressure [-]
 * @returns coefficient of entry [-], 0 to 1
 * @throws ImpossibleInput naming a negative loss
 *
 * @remarks
 * Range: none: an identity.
 * Outside: not applicable.
 * Leaves out: nothing.
 * Limits: no loss gives 1.
 * Basis: from-memory (definition).
 * Source: ACGIH, Industrial Ventilation, hood static suction.
 * Checked: test/reference/entry.test.ts.
 *
 * @example
 * ```ts
 * coefficientOfEntry(0.49); // 0.8192
 * ```
 */
export function coefficientOfEntry(k: number): number {
  return 1 / Math.sqrt(1 + requireNotNegative('k', k));
}

/**
 * Entry loss from a coefficient of entry.
 *
 * `K = (1 - Ce^2) / Ce^2`.
 *
 * @param entry - `Ce`, coefficient of entry [-], above 0 up to 1
 * @returns entry loss on the duct's velocity pressure [-]
 * @throws ImpossibleInput naming a coefficient outside 0.001 to 1
 *
 * @remarks
 * Range: none: an identity.
 * Outside: not applicable.
 * Leaves out: nothing.
 * Limits: 1 gives no loss.
 * Basis: from-memory (definition).
 * Source: ACGIH, Industrial Ventilation, hood static suction.
 * Checked: test/reference/entry.test.ts.
 *
 * @example
 * ```ts
 * entryLossFromCoefficient(0.82); // 0.4872
 * ```
 */
export function entryLossFromCoefficient(entry: number): number {
  const Ce = requireBetween('entry', entry, 1e-3, 1);
  return (1 - Ce * Ce) / (Ce * Ce);
}

/**
 * Static suction just behind a hood.
 *
 * `SPh = VP (1 + K)`: the loss, and the velocity pressure that the air has gained.
 *
 * @param velocityPressure_Pa - `VP` in the duct [Pa]
 * @param k - `K`, entry loss on that velocity pressure [-]
 * @returns suction below the room [Pa], a positive number
 * @throws ImpossibleInput naming a negative argument
 *
 * @remarks
 * Range: none: an identity.
 * Outside: not applicable.
 * Leaves out: friction between the hood and the tapping, which belongs 4 diameters or more behind it.
 * Limits: no flow, no suction.
 * Basis: from-memory (definition).
 * Source: ACGIH, Industrial Ventilation, hood static suction.
 * Checked: test/reference/entry.test.ts.
 *
 * @example
 * ```ts
 * hoodStaticSuction(240, 0.5); // 360
 * ```
 */
export function hoodStaticSuction(velocityPressure_Pa: number, k: number): number {
  return requireNotNegative('velocityPressure_Pa', velocityPressure_Pa) * (1 + requireNotNegative('k', k));
}
