import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curveValueAndSlope, monotoneCurve } from '../../../core/fan/monotone-curve.ts';
import { ImpossibleInput } from '../../../core/quantities/impossible-input.ts';

const out = new Float64Array(2);
const at = (curve: ReturnType<typeof monotoneCurve>, x: number) => {
  curveValueAndSlope(curve, x, out);
  return { value: out[0]!, slope: out[1]! };
};

/** Whole numbers underneath: doubles would be drawn evenly over exponents, so mostly next to zero. Points with spans and rises of any sign, and a place among them. */
const pointsAndPlace = fc
  .array(
    fc.record({
      span: fc.integer({ min: 1, max: 1000 }).map((n) => n / 100),
      rise: fc.integer({ min: -10_000, max: 10_000 }),
    }),
    {
      minLength: 1,
      maxLength: 12,
    },
  )
  .chain((steps) => {
    const x = [0];
    const y = [0];
    for (const { span, rise } of steps) {
      x.push(x.at(-1)! + span);
      y.push(y.at(-1)! + rise);
    }
    return fc.record({
      x: fc.constant(x),
      y: fc.constant(y),
      share: fc.integer({ min: 0, max: 10_000 }).map((n) => n / 10_000),
    });
  });

describe('monotone curve', () => {
  it('stays between the two neighbouring points', () => {
    fc.assert(
      fc.property(pointsAndPlace, ({ x, y, share }) => {
        const curve = monotoneCurve(x, y);
        const place = share * x.at(-1)!;
        const i = Math.max(0, x.findIndex((right) => right >= place) - 1);
        const [low, high] = [Math.min(y[i]!, y[i + 1]!), Math.max(y[i]!, y[i + 1]!)];
        const slack = 1e-12 * (Math.abs(low) + Math.abs(high));
        const { value } = at(curve, place);
        expect(value).toBeGreaterThanOrEqual(low - slack);
        expect(value).toBeLessThanOrEqual(high + slack);
      }),
      { seed: 13 },
    );
  });

  it('gives the slope of its own values', () => {
    fc.assert(
      fc.property(pointsAndPlace, ({ x, y, share }) => {
        const curve = monotoneCurve(x, y);
        const place = share * x.at(-1)!;
        const step = 1e-6;
        const difference = (at(curve, place + step).value - at(curve, place - step).value) / (2 * step);
        // Curvature up to about 6 secants per span; a knot between the two places costs one step of it.
        const steepest = Math.max(
          ...y.slice(1).map((value, i) => Math.abs(value - y[i]!) / (x[i + 1]! - x[i]!)),
        );
        const shortest = Math.min(...x.slice(1).map((value, i) => value - x[i]!));
        const slack = (30 * steepest * step) / shortest + 1e-3;
        expect(Math.abs(at(curve, place).slope - difference)).toBeLessThanOrEqual(slack);
      }),
      { seed: 14 },
    );
  });

  it('is straight through two points and through points on a line', () => {
    const two = monotoneCurve([1, 3], [10, 4]);
    expect(at(two, 2)).toEqual({ value: 7, slope: -3 });
    const line = monotoneCurve([0, 1, 4, 6], [5, 7, 13, 17]);
    for (const x of [-1, 0.3, 3.7, 5, 9]) expect(at(line, x).value).toBeCloseTo(5 + 2 * x, 12);
  });

  it('goes on beyond the ends along the end slope', () => {
    const curve = monotoneCurve([0, 1, 2], [0, 1.5, 4]);
    expect(at(curve, 2)).toEqual({ value: 4, slope: 3 });
    expect(at(curve, 3)).toEqual({ value: 7, slope: 3 });
    expect(at(curve, 2 + 1e-9).value).toBeCloseTo(4, 7);
    expect(at(curve, -2)).toEqual({ value: -2, slope: 1 });
  });

  it('is not changed by a later change of the lists it was made from', () => {
    const y = [0, 1, 4];
    const curve = monotoneCurve([0, 1, 2], y);
    y[1] = 99;
    expect(at(curve, 1).value).toBe(1);
  });

  it('names the point that makes it impossible', () => {
    const field = (x: number[], y: number[]) => {
      try {
        monotoneCurve(x, y);
      } catch (error) {
        if (error instanceof ImpossibleInput) return error.field;
        throw error;
      }
      return 'nothing';
    };
    expect(field([0, 2, 2], [1, 2, 3])).toBe('x[2]');
    expect(field([0, 2, 1], [1, 2, 3])).toBe('x[2]');
    expect(field([0, NaN], [1, 2])).toBe('x[1]');
    expect(field([0, 1], [1, Infinity])).toBe('y[1]');
    expect(field([0, 1], [1])).toBe('y');
    expect(field([0], [1])).toBe('x');
    expect(field([0, 1e-300], [0, 1e300])).toBe('x[1]');
    expect(() => at(monotoneCurve([0, 1], [0, 1]), NaN)).toThrow(ImpossibleInput);
  });
});
