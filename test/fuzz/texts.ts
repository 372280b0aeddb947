import fc from 'fast-check';
import { UNITS } from '../../core/quantities/units.ts';
import { strings } from './hostile.ts';

/** What a text tries that wants more than a quantity. */
const TRICKS = [
  'import("fs")',
  'import({canary: 1})',
  'createUnit("canary", "1 m")',
  'evaluate("canary = 1")',
  'parse("1").compile()',
  'simplify("x", {}, {})',
  'f(x) = x^2; f(2)',
  'canary = 1',
  'globalThis.canary = 1',
  'constructor.constructor("canary = 1")()',
  'process.exit(9)',
  'process.mainModule',
  'm.constructor',
  '[1, 2; 3, 4]',
  'zeros(1e9)',
  '1:1e9',
  '1e9!',
  '170!',
  '9^9^9',
  '9^9^9^9^9',
  '(9^9)^(9^9)',
  '1e308 * 10 m',
  '1 / 0 m',
  '0 / 0 m',
  '1e-308 / 1e308 m',
  '"text"',
  "concat('a', 'b')",
  '0x7fffffff m',
  '1e999999999 m',
  '1e-999999999 m',
  '2 to m',
  '2 m to __proto__',
  'cfm^12',
  'm^-12',
  '(m^12)^12',
  '1.7976931348623157e308 m',
  '#comment',
  '1\n2',
  '٣ m',
  '２ m',
  '2 µm',
  '½ in',
];

const word = fc.constantFrom(
  ...UNITS.keys(),
  'reach',
  'n0',
  'n1',
  'n2',
  'wg',
  'deg C',
  '__proto__',
  'constructor',
);
const number = fc.oneof(
  fc.constantFrom('0', '1', '2.5', '.5', '5.', '1e3', '1E-3', '1e400', '007', '3 1/2', '1e', '--1'),
  fc.integer({ min: -9, max: 999 }).map(String),
);
const sign = fc.constantFrom(
  '+',
  '-',
  '*',
  '/',
  '^',
  ' ',
  '(',
  ')',
  ',',
  '.',
  '%',
  "'",
  '"',
  '°',
  '²',
  '·',
  '!',
  ':',
  '=',
  ';',
  '[',
  '{',
  '?',
  '|',
  '\\',
  'mod',
  'to',
);
const measure = fc.tuple(number, word).map((parts) => parts.join(' '));
const sums = fc
  .array(fc.tuple(measure, fc.constantFrom(' + ', ' - ', ' * ', ' / ', '^', ' ')), {
    minLength: 1,
    maxLength: 5,
  })
  .map((terms) => terms.flat().slice(0, -1).join(''));
const soup = fc.array(fc.oneof(number, word, sign), { maxLength: 14 }).map((parts) => parts.join(''));
const long = fc
  .tuple(
    fc.constantFrom('(', '-', '2^', '1+', 'm*', "1'", '((1+', '9', '[', 'sqrt('),
    fc.constantFrom(20, 21, 60, 190, 200, 201, 5000, 200_000),
    fc.constantFrom('', '1', '1 m', ')'),
  )
  .map(([start, times, end]) => start.repeat(times / start.length) + end);

/** Texts that are typed into a field of a quantity: right ones, nearly right ones, tricks and noise. */
export const quantityTexts: fc.Arbitrary<string> = fc.oneof(
  { weight: 3, arbitrary: measure },
  { weight: 3, arbitrary: sums },
  { weight: 3, arbitrary: soup },
  { weight: 3, arbitrary: fc.constantFrom(...TRICKS) },
  { weight: 1, arbitrary: fc.tuple(measure, fc.constantFrom(...TRICKS)).map((parts) => parts.join(' + ')) },
  { weight: 2, arbitrary: strings },
  { weight: 1, arbitrary: long },
);

const valueName = fc.oneof(
  { weight: 12, arbitrary: fc.nat({ max: 12 }).map((n) => `n${n}`) },
  { weight: 1, arbitrary: strings },
);
const valueText = fc.oneof(
  fc.array(valueName, { minLength: 1, maxLength: 4 }).map((names) => names.join(' + ')),
  fc.tuple(valueName, measure).map((parts) => parts.join(' + ')),
  measure,
  quantityTexts,
);

/** Tables of named values that lean on each other, in circles too. */
export const valueTables = fc.oneof(
  { weight: 9, arbitrary: fc.array(fc.record({ name: valueName, text: valueText }), { maxLength: 14 }) },
  {
    weight: 1,
    arbitrary: fc.tuple(fc.constantFrom(2, 50, 500, 501), fc.boolean()).map(([count, closed]) =>
      Array.from({ length: count }, (_, i) => ({
        name: `n${i}`,
        text: i === count - 1 ? (closed ? 'n0 * 2' : '1 m') : `n${i + 1} + n${(i * 7) % count}`,
      })),
    ),
  },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom(10, 400)
      .map((count) => [
        { name: 'n0', text: '2 m' },
        ...Array.from({ length: count }, (_, i) => ({ name: `n${i + 1}`, text: `n${i} + n${i}` })),
      ]),
  },
);

const cell = fc.oneof(
  number,
  measure,
  fc.constantFrom(
    'Flow m3/h',
    'Pressure (kPa)',
    'Power [W]',
    'speed',
    '1,5',
    '=1+1',
    '"',
    '""',
    '',
    '"a\nb"',
  ),
  quantityTexts,
);
/** Tables as they are pasted from a spreadsheet or a maker's page. */
export const pastedTables = fc
  .tuple(
    fc.array(fc.array(cell, { maxLength: 7 }), { maxLength: 12 }),
    fc.constantFrom('\t', ';', ',', ' '),
    fc.constantFrom('\n', '\r\n', '\r'),
  )
  .map(([rows, between, end]) => rows.map((row) => row.join(between)).join(end));
