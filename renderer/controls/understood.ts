import { resolveWithin } from '../../core/document/resolve.ts';
import type { DocumentProblem } from '../../core/document/problem.ts';
import type { Quantity, QuantityRule } from '../../core/document/quantity-field.ts';
import type { Dimension, UnitSystem } from '../../core/quantities/dimensions.ts';
import type { NamedValues } from '../../core/quantities/parse.ts';
import { printQuantity } from '../../core/quantities/print.ts';

/** What a field makes of the text typed into it. */
export type Understood =
  { readonly ok: true; readonly si: number } | { readonly ok: false; readonly message: string };

const FIELD = 'field';

/** Reads a text as the document would: unit, named values and the rule of its field; the message names no field. */
export function understand(
  text: string,
  dimension: Dimension,
  rule: QuantityRule,
  names: NamedValues,
): Understood {
  const problems: DocumentProblem[] = [];
  const typed: Quantity = { dimension, rule, text: text.trim(), si: NaN };
  const read = resolveWithin(typed, [FIELD], { [FIELD]: typed }, names, problems) as Quantity;
  const problem = problems[0];
  if (problem === undefined) return { ok: true, si: read.si };
  const start = `${FIELD}: `;
  const { message } = problem;
  return { ok: false, message: message.startsWith(start) ? message.slice(start.length) : message };
}

const FIGURES = 4;

/** Leaves out zeros that say nothing: `4.000 in` becomes `4 in`. */
const trimmed = (text: string): string => text.replace(/^(-?\d+)(?:\.0+|(\.\d*?)0+)(?=\s|$)/, '$1$2');

/** A value in a field that nobody typed, to four figures; it can be typed back. */
export function shortText(si: number, dimension: Dimension, units: UnitSystem): string {
  const decimals = dimension === 'temperature' || dimension === 'angle';
  return trimmed(printQuantity(si, dimension, units, { digits: decimals ? 1 : FIGURES }));
}

/** What stands in a field: the text that was typed, or the value where none was. */
export function fieldText(value: Quantity | undefined, units: UnitSystem): string {
  if (value === undefined) return '';
  return value.text ?? shortText(value.si, value.dimension, units);
}

/** Without blanks and ways of writing, so that `4in`, `4 in` and `4.0 in` count as the same. */
const bare = (text: string): string =>
  trimmed(text)
    .replace(/[\s^]+/g, '')
    .replace('deg', '°')
    .toLowerCase();

/**
 * The value in the units on screen and in the other ones, without what already stands in the field: `101.6 mm, 4 in`
 * for a named value, `101.6 mm` for `4 in`. Empty where there is nothing to add.
 */
export function equivalents(si: number, dimension: Dimension, units: UnitSystem, text: string): string {
  const other: UnitSystem = units === 'si' ? 'us' : 'si';
  const both = [...new Set([shortText(si, dimension, units), shortText(si, dimension, other)])];
  return both.filter((value) => bare(value) !== bare(text)).join(', ');
}

/** In a column whose heading names the unit: the text without it. */
export function withoutUnit(text: string, unit: string | undefined): string {
  return unit && text.endsWith(` ${unit}`) ? text.slice(0, -unit.length - 1) : text;
}

/** As `withoutUnit`, back: a bare number gets the unit of its column. */
export function withUnit(text: string, unit: string | undefined): string {
  return unit && /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(text) ? `${text} ${unit}` : text;
}
