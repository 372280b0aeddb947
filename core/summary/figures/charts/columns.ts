import { displayUnit, NO_VALUE, toDisplay } from '../../../quantities/print.ts';
import type { Dimension, UnitSystem } from '../../../quantities/dimensions.ts';

/** Decimals of a column, by kind and units: one unit and one number of decimals, so that figures stand under each other. */
const DECIMALS: Readonly<Record<UnitSystem, Partial<Record<Dimension, number>>>> = {
  si: { length: 0, velocity: 1, pressure: 0, flow: 0, speed: 0, power: 0 },
  us: { length: 1, velocity: 0, pressure: 2, flow: 0, speed: 0, power: 0 },
};

/** Unit of lengths along a run, which are long beside a diameter. */
export const LONG_UNIT: Readonly<Record<UnitSystem, { readonly unit: string; readonly perMetre: number }>> = {
  si: { unit: 'm', perMetre: 1 },
  us: { unit: 'ft', perMetre: 1 / 0.3048 },
};

/** A number with so many decimals, and no minus before zero. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** A figure of a column, without its unit; a dash where there is none. */
export function figure(si: number | null, dimension: Dimension, units: UnitSystem): string {
  if (si === null || !Number.isFinite(si)) return NO_VALUE;
  return fixed(toDisplay(si, dimension, units), DECIMALS[units][dimension] ?? 2);
}

/** A length along a run, without its unit. */
export function longFigure(length_m: number | null, units: UnitSystem): string {
  return length_m === null ? NO_VALUE : fixed(length_m * LONG_UNIT[units].perMetre, 2);
}

/** A plain number with so many decimals; a dash where there is none. */
export const plainFigure = (value: number | null, decimals: number): string =>
  value === null || !Number.isFinite(value) ? NO_VALUE : fixed(value, decimals);

/** A column's heading with its unit beneath. */
export const unitOf = (dimension: Dimension, units: UnitSystem): string => displayUnit(dimension, units);
