import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withoutFaintRise } from '../../../../core/fan/reduce/faint-rise.ts';

describe('withoutFaintRise', () => {
  it('leaves a rise that the errors carry', () => {
    expect(withoutFaintRise([10, 11, 8], () => 0.4)).toEqual([10, 11, 8]);
  });
  it('leaves what only falls as it is', () => {
    expect(withoutFaintRise([3, 2, 2, 1], () => 9)).toEqual([3, 2, 2, 1]);
  });
  it('lays a faint rise flat: never rising, the same sum, nowhere beyond the values', () => {
    const values = fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(values, (list) => {
        const flat = withoutFaintRise(list, () => 1e9);
        flat.slice(1).forEach((value, i) => expect(value).toBeLessThanOrEqual(flat[i]! + 1e-12));
        const sum = (of: readonly number[]) => of.reduce((a, b) => a + b, 0);
        expect(Math.abs(sum(flat) - sum(list))).toBeLessThan(1e-9);
        expect(Math.max(...flat)).toBeLessThanOrEqual(Math.max(...list) + 1e-12);
      }),
      { seed: 4102 },
    );
  });
});
