import { DIMENSIONS, type Dimension, type DimensionRow, type UnitSystem } from './dimensions.ts';
import { ImpossibleInput } from './impossible-input.ts';
import { samePowers } from './powers.ts';
import { TEMPERATURE_SCALES, unitMeasure } from './units.ts';

/** What stands where there is no value. */
export const NO_VALUE = '–';

export interface PrintOptions {
  /** Significant figures, or decimals for an angle or a temperature. */
  readonly digits?: number;
  /** A unit of the same kind, in place of the one that suits the size. */
  readonly unit?: string;
}

/**
 * Prints an SI value (rpm for a rotation speed) with its unit, in as many figures as a person reads: `103 mm`,
 * `1.25 kPa`, `3520 fpm`. What it prints can be typed back. No value, or one that is not finite, prints as a dash.
 *
 * @param si - the value, or null where there is none
 * @param dimension - its kind
 * @param system - units to read in
 * @param options - figures and unit, where the kind's own do not serve
 * @returns the text
 * @throws ImpossibleInput naming `unit` where it is not a unit of this kind
 */
export function printQuantity(
  si: number | null | undefined,
  dimension: Dimension,
  system: UnitSystem,
  options: PrintOptions = {},
): string {
  if (si === null || si === undefined || !Number.isFinite(si)) return NO_VALUE;
  const row = DIMENSIONS[dimension];
  const unit = options.unit ?? unitForSize(row, system, si);
  const value = convert(si, dimension, unit);
  if (!Number.isFinite(value)) return NO_VALUE;
  const number = printNumber(value, options.digits ?? row.digits, row.digitsAre);
  return unit === '' ? number : `${number} ${unit}`;
}

/** Unit that a column, an axis or a field's label uses for a kind, empty for a plain number. */
export function displayUnit(dimension: Dimension, system: UnitSystem): string {
  return columnUnit(DIMENSIONS[dimension], system);
}

/** SI value as a number in `displayUnit`. */
export function toDisplay(si: number, dimension: Dimension, system: UnitSystem): number {
  return convert(si, dimension, displayUnit(dimension, system));
}

function columnUnit(row: DimensionRow, system: UnitSystem): string {
  return (row[system].find(({ column }) => column) ?? row[system][0]!).unit;
}

function unitForSize(row: DimensionRow, system: UnitSystem, si: number): string {
  if (si === 0) return columnUnit(row, system);
  return row[system].findLast(({ from }) => Math.abs(si) >= from)!.unit;
}

function convert(si: number, dimension: Dimension, unit: string): number {
  if (dimension === 'temperature') {
    const scale = TEMPERATURE_SCALES.get(unit);
    if (scale === undefined) throw notAUnit(unit, dimension);
    return ((si - scale.markK) * scale.denominator) / scale.numerator + scale.mark;
  }
  const measure = unitMeasure(unit);
  if (measure === undefined || !samePowers(measure.powers, DIMENSIONS[dimension].powers)) {
    throw notAUnit(unit, dimension);
  }
  return (si * measure.denominator) / measure.numerator;
}

function notAUnit(unit: string, dimension: Dimension): ImpossibleInput {
  return new ImpossibleInput('unit', unit, `a unit of ${DIMENSIONS[dimension].label}`);
}

const MOST_DIGITS = 15;
/** Powers of ten between which a number is written out. */
const WRITTEN_OUT = { from: -4, below: 7 } as const;

function printNumber(value: number, digits: number, digitsAre: DimensionRow['digitsAre']): string {
  if (digitsAre === 'decimals') {
    const text = value.toFixed(Math.min(Math.max(Math.round(digits), 0), MOST_DIGITS));
    return Number(text) === 0 ? text.replace('-', '') : text;
  }
  if (value === 0) return '0';
  const figures = Math.min(Math.max(Math.round(digits), 1), MOST_DIGITS);
  const scientific = value.toExponential(figures - 1);
  const exponent = Number(scientific.slice(scientific.indexOf('e') + 1));
  if (exponent < WRITTEN_OUT.from || exponent >= WRITTEN_OUT.below) return scientific.replace('e+', 'e');
  return Number(scientific).toFixed(Math.max(figures - 1 - exponent, 0));
}
