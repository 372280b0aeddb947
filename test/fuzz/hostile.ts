import fc from 'fast-check';

// Values that no careful writer puts into a file, a field or a message.

/** Numbers at the edges of what a double holds, and plain ones. */
export const numbers: fc.Arbitrary<number> = fc.oneof(
  fc.constantFrom(0, -0, 1, -1, 0.5, 2, 100, 1e-3, 1e6, 1e12, 1e13, -273.15),
  fc.constantFrom(
    NaN,
    Infinity,
    -Infinity,
    5e-324,
    -5e-324,
    1e-300,
    1e300,
    Number.MAX_VALUE,
    2 ** 53,
    -1e308,
  ),
  fc.integer({ min: -3, max: 300 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);

/** Names that reach into every object, and names that are only odd. */
export const keys: fc.Arbitrary<string> = fc.oneof(
  fc.constantFrom('__proto__', 'constructor', 'prototype', 'toString', 'valueOf', 'hasOwnProperty', 'then'),
  fc.constantFrom(
    'toJSON',
    'length',
    '__defineGetter__',
    '',
    ' ',
    '0',
    '-1',
    'id',
    'kind',
    'text',
    'si',
    'dimension',
  ),
  fc.string({ maxLength: 8 }),
);

/** Half of a character, marks that turn the direction of writing, ends of lines, escapes of a terminal. */
const ODD_TEXTS = [
  '\ud800',
  'a\udfffb',
  '\u202e\u2066',
  '\0',
  '\u001b[2J\u001b]0;x\u0007',
  'a\nb\r\nc\u2028d',
  '<script>canary=1</script>',
  '${process.exit(9)}',
  '=cmd|0',
  '\ufeff',
  '木工房 план 🪵',
  'e\u0301'.repeat(30),
];

export const strings: fc.Arbitrary<string> = fc.oneof(
  fc.constantFrom('', ' ', 'R1', 'F1', 'saw', 'out', 'open', 'null', 'NaN', ...ODD_TEXTS),
  keys,
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.nat({ max: 6 }).map((n) => 'x'.repeat(10 ** n)),
);

/** Anything that JSON can hold, names that reach into objects included. */
export const json: fc.Arbitrary<unknown> = fc.letrec<{ value: unknown; group: unknown }>((tie) => ({
  value: fc.oneof(
    { maxDepth: 3, withCrossShrink: true },
    fc.constantFrom(null, true, false, {}, []),
    numbers.filter(Number.isFinite),
    strings,
    fc.array(tie('value'), { maxLength: 4 }),
    tie('group'),
  ),
  group: fc.array(fc.tuple(keys, tie('value')), { maxLength: 4 }).map(groupOf),
})).value;

/** A group with own fields of any names: `__proto__` too is a field here, as JSON makes it. */
export function groupOf(entries: readonly (readonly [string, unknown])[]): Record<string, unknown> {
  const group: Record<string, unknown> = {};
  for (const [key, value] of entries) putOwn(group, key, value);
  return group;
}

export function putOwn(group: object, key: PropertyKey, value: unknown): void {
  Object.defineProperty(group, key, { value, writable: true, enumerable: true, configurable: true });
}

/** Anything at all, as code may hand it over: what JSON holds, and what it cannot. */
export const anything: fc.Arbitrary<unknown> = fc.oneof(
  json,
  numbers,
  fc.constantFrom<unknown>(undefined, Symbol('odd'), 10n, () => 1, new Date(NaN), new Map([[1, 2]]), /x/),
  fc.constantFrom<unknown>(new Uint8Array(3), new Error('odd'), new Proxy({}, {}), Object.create(null)),
  fc.constant(null).map(() => {
    const round: Record<string, unknown> = { id: 'R1' };
    round['self'] = round;
    return { round, both: [round, round] };
  }),
);
