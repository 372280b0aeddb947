import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIMENSION_NAMES, type Dimension } from '../../../core/quantities/dimensions.ts';
import { parseAnyQuantity, parseQuantity, type NamedValues } from '../../../core/quantities/parse.ts';
import { QuantityError } from '../../../core/quantities/quantity-error.ts';

const FIELD = 'Length of duct';

function refusal(text: string, dimension: Dimension): QuantityError {
  const parsed = parseQuantity(text, dimension, { field: FIELD });
  if (parsed.ok) throw new Error(`${text} was read as ${parsed.si}`);
  expect(parsed.error).toBeInstanceOf(QuantityError);
  return parsed.error;
}

describe('hostile text', () => {
  const HOSTILE: readonly string[] = [
    'import("fs")',
    'import(1)',
    'createUnit("x")',
    'createUnit(m)',
    'evaluate("1")',
    'parse(1)',
    'simplify(1)',
    'derivative(1, 2)',
    'constructor.constructor("return 1")()',
    'constructor',
    'm.constructor',
    '__proto__',
    '__proto__ m',
    'toString',
    'valueOf()',
    'hasOwnProperty',
    'a=1',
    'm=1',
    'f(x)=x',
    '[1,2]',
    '{a: 1}',
    '"s"',
    "'s'",
    '`s`',
    'cos(1)',
    'sqrt 4',
    '1:2',
    'm ? 1 : 2',
    '1 m; 2 m',
    '1 m\n2 m',
    '5!',
    '5 mod 3',
    '5 to m',
    'not 5',
    '1 == 1',
    '1 < 2',
    '1 | 2',
    "m'",
    'true',
    'null',
    'undefined',
    'NaN',
    'Infinity',
    'i',
    'e',
    'pi',
    'end',
    '#',
    '$x',
    '\\u0061',
    '9^9^9',
    '-'.repeat(190) + '1',
    '2^'.repeat(99) + '9',
    '('.repeat(21) + '1' + ')'.repeat(21),
    '('.repeat(99) + '1' + ')'.repeat(99),
    '('.repeat(50_000),
    '1'.repeat(100_000),
    '1+'.repeat(50_000) + '1',
  ];
  it.each(HOSTILE.map((text) => [text.slice(0, 40), text] as const))('%j is refused quickly', (_, text) => {
    const start = performance.now();
    for (const dimension of ['length', 'coefficient', 'temperature'] as const) {
      const error = refusal(text, dimension);
      expect(error.typed.length).toBeLessThanOrEqual(201);
      expect(error.message.length).toBeLessThan(400);
    }
    expect(parseAnyQuantity(text, { field: FIELD }).ok).toBe(false);
    expect(performance.now() - start).toBeLessThan(500);
  });

  it('keeps objects as they were', () => {
    const names: NamedValues = new Map([['__proto__', { si: 1, dimension: 'length' }]]);
    expect(parseQuantity('__proto__', 'length', { field: FIELD, names })).toEqual({ ok: true, si: 1 });
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect(({} as Record<string, unknown>)['si']).toBeUndefined();
  });

  it('answers any text with a finite value or a typed error, never with anything else', () => {
    const piece = fc.constantFrom(
      ...'0 1 2.5 1e3 m in ft kg C F rpm % ( ) + - * / ^ wg \' " ° , . = [ ] { } : ; ! ? true NaN mod to'.split(
        ' ',
      ),
    );
    const text = fc.oneof(
      fc.string({ maxLength: 60 }),
      fc.array(piece, { maxLength: 14 }).map((pieces) => pieces.join(' ')),
      fc.array(piece, { maxLength: 14 }).map((pieces) => pieces.join('')),
    );
    fc.assert(
      fc.property(text, fc.constantFrom(...DIMENSION_NAMES), (typed, dimension) => {
        const parsed = parseQuantity(typed, dimension, { field: FIELD });
        if (parsed.ok) expect(Number.isFinite(parsed.si)).toBe(true);
        else expect(parsed.error).toBeInstanceOf(QuantityError);
      }),
      { seed: 12, numRuns: 3000 },
    );
  });
});
