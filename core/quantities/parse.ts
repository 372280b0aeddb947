import { dimensionOf, DIMENSIONS, type Dimension } from './dimensions.ts';
import { describe, evaluate, siValue, type NamedValue, type NamedValues } from './expression.ts';
import { isPure, samePowers, type Powers } from './powers.ts';
import { QuantityError, Refusal, shorten, whatFits } from './quantity-error.ts';
import { LONGEST_TEXT, PARTIAL_UNITS, tokenise, type Token } from './tokens.ts';
import { TEMPERATURE_SCALES, UNITS } from './units.ts';

export type { NamedValue, NamedValues } from './expression.ts';

/** Where a text stands: the field's name for messages, and the named values (`checkName`) that it may use. */
export interface ParseContext {
  readonly field: string;
  readonly names?: NamedValues;
}

export type Parsed = { readonly ok: true; readonly si: number } | Refused;
export type ParsedAny = { readonly ok: true; readonly value: NamedValue } | Refused;
export interface Refused {
  readonly ok: false;
  readonly error: QuantityError;
}

const NO_NAMES: NamedValues = new Map();

/**
 * Reads a typed quantity, such as `2 ft + 3 in`, `350 cfm` or `reach + 300 mm`, into its SI value (rpm for a rotation
 * speed). Text is data: it is split into numbers, known words and signs, and anything else is refused with a reason.
 *
 * @param text - what was typed
 * @param dimension - the kind that the field takes
 * @param context - the field's name for the message, and named values
 * @returns the SI value, or the error that says what was wrong and what would fit
 */
export function parseQuantity(text: string, dimension: Dimension, context: ParseContext): Parsed {
  return attempt(text, context.field, dimension, () => {
    const tokens = forceUnits(tokenise(text), dimension);
    const { si, powers } = read(tokens, context.names ?? NO_NAMES);
    if (samePowers(powers, DIMENSIONS[dimension].powers)) return { ok: true, si };
    if (isPure(powers)) throw new Refusal('needs-unit');
    throw new Refusal('wrong-dimension', `is ${describe(powers)}`);
  });
}

/** As `parseQuantity`, but throws the `QuantityError`. */
export function requireQuantity(text: string, dimension: Dimension, context: ParseContext): number {
  const parsed = parseQuantity(text, dimension, context);
  if (!parsed.ok) throw parsed.error;
  return parsed.si;
}

/** Reads a quantity of any kind and says which kind it is; a plain number is a `coefficient`. */
export function parseAnyQuantity(text: string, context: ParseContext): ParsedAny {
  return attempt(text, context.field, null, () => {
    const { si, powers } = read(tokenise(text), context.names ?? NO_NAMES);
    const dimension = dimensionOf(powers);
    if (dimension === undefined) throw new Refusal('wrong-dimension', `is ${describe(powers)}`);
    return { ok: true, value: { si, dimension } };
  });
}

/** Longest name that a value may have. */
export const LONGEST_NAME = 40;

/** Words of the grammar, and constants that a reader would take for something else. */
const RESERVED: ReadonlySet<string> = new Set(
  'to mod and or xor not true false null undefined NaN Infinity end i e pi'.split(' '),
);

/**
 * Says whether a value may be called this: a letter, then letters, digits or `_`, at most 40; not a unit, not a word
 * that the grammar keeps, not a name that every object carries.
 *
 * @param name - the name to test
 * @returns null where the name is good, otherwise the error
 */
export function checkName(name: string): QuantityError | null {
  const refuse = (about: string): QuantityError =>
    new QuantityError('Name', shorten(name, LONGEST_TEXT), 'not-allowed', about, '');
  if (name === '') return new QuantityError('Name', '', 'empty', '', '');
  if (name.length > LONGEST_NAME) return refuse(`a name has at most ${LONGEST_NAME} characters`);
  if (!/^[A-Za-z][A-Za-z0-9_]*$/.test(name)) return refuse('a name is a letter, then letters, digits or _');
  if (UNITS.has(name) || TEMPERATURE_SCALES.has(name) || PARTIAL_UNITS.has(name))
    return refuse('it is a unit');
  if (RESERVED.has(name) || name in {}) return refuse('the word is kept for other use');
  return null;
}

/** Runs a reading and turns a refusal into the error that a field shows. */
function attempt<T>(text: string, field: string, dimension: Dimension | null, reading: () => T): T | Refused {
  try {
    return reading();
  } catch (cause) {
    if (!(cause instanceof Refusal)) throw cause;
    const fits = dimension === null ? '' : whatFits(dimension);
    const typed = shorten(text.slice(0, LONGEST_TEXT + 1).trim(), LONGEST_TEXT);
    return { ok: false, error: new QuantityError(field, typed, cause.reason, cause.about, fits, { cause }) };
  }
}

interface Reading {
  readonly si: number;
  readonly powers: Powers;
}

function read(tokens: readonly Token[], names: NamedValues): Reading {
  const temperature = readTemperature(tokens, names);
  if (temperature !== undefined) return { si: temperature, powers: DIMENSIONS.temperature.powers };
  const measure = evaluate(tokens, names);
  return { si: siValue(measure), powers: measure.powers };
}

/** Kelvin of `20 C`, `-5 degF` or one named temperature; undefined for anything else. */
function readTemperature(tokens: readonly Token[], names: NamedValues): number | undefined {
  const first = tokens[0]!;
  if (tokens.length === 1 && first.kind === 'word') {
    const named = UNITS.has(first.text) ? undefined : names.get(first.text);
    return named?.dimension === 'temperature' ? named.si : undefined;
  }
  const signed = first.text === '-' || first.text === '+';
  const [number, unit, ...rest] = signed ? tokens.slice(1) : tokens;
  const scale = unit?.kind === 'word' ? TEMPERATURE_SCALES.get(unit.text) : undefined;
  if (scale === undefined || number?.kind !== 'number' || rest.length > 0) return undefined;
  const reading = Number(number.text) * (first.text === '-' ? -1 : 1);
  const kelvin = ((reading - scale.mark) * scale.numerator) / scale.denominator + scale.markK;
  if (!Number.isFinite(kelvin)) throw new Refusal('not-finite');
  if (kelvin < 0) throw new Refusal('not-allowed', 'it is below absolute zero');
  return kelvin;
}

/** In a pressure field `oz/in2` and `lb/in2` mean the force that a pound or an ounce weighs. */
function forceUnits(tokens: readonly Token[], dimension: Dimension): readonly Token[] {
  if (dimension !== 'pressure') return tokens;
  return tokens.map((token, position) => {
    const [slash, area, hat, exponent] = tokens.slice(position + 1, position + 5);
    const perSquareInch =
      slash?.text === '/' &&
      (area?.text === 'in2' || (area?.text === 'in' && `${hat?.text}${exponent?.text}` === '^2'));
    if (!perSquareInch || token.kind !== 'word') return token;
    if (token.text === 'oz') return { kind: 'word', text: 'ozf' };
    return token.text === 'lb' ? { kind: 'word', text: 'lbf' } : token;
  });
}
