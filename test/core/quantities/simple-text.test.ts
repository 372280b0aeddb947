import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseAnyQuantity } from '../../../core/quantities/parse.ts';
import type { NamedValues } from '../../../core/quantities/parse.ts';
import { UNITS } from '../../../core/quantities/units.ts';

const names: NamedValues = new Map([
  ['reach', { si: 2.4, dimension: 'length' as const }],
  ['huge', { si: 1e300, dimension: 'length' as const }],
]);
const read = (text: string) => {
  const parsed = parseAnyQuantity(text, { field: 'x', names });
  return parsed.ok ? parsed.value : parsed.error.reason;
};

const numbers = fc
  .oneof(
    fc.double({ min: 0, max: 1e12, noNaN: true }),
    fc.integer({ min: 0, max: 99999 }),
    fc.constantFrom('1e308', '.5', '3.', '007', '1e-320', '1E5'),
  )
  .map((n) => (Object.is(n, -0) ? '0' : String(n)));
const words = fc.constantFrom(...UNITS.keys(), 'reach', 'huge', 'nothing', 'mod');

describe('a number and a word', () => {
  // a bracket sends the same text through the grammar
  it('mean what the grammar makes of them', () => {
    fc.assert(
      fc.property(numbers, words, (number, word) => {
        expect(read(`${number} ${word}`)).toEqual(read(`(${number}) ${word}`));
        expect(read(number)).toEqual(read(`(${number})`));
      }),
      { seed: 4127, numRuns: 600 },
    );
  });

  it('alone: a name is read, a unit has lost its number', () => {
    expect(read('reach')).toEqual(read('(reach)'));
    expect(read('in')).toBe('syntax');
    expect(read('nothing')).toBe('unknown-name');
  });
});
