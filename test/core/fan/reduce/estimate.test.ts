import { describe, expect, it } from 'vitest';
import { curveError, drawUnknowns, estimateCurve } from '../../../../core/fan/reduce/estimate.ts';
import type { CurveFamily, MeasuredPoint } from '../../../../core/fan/reduce/estimate.ts';
import { normalDraws } from '../../../../core/quantities/random.ts';

/** `y = 10 u0 + 10 u1 x`: wide before anything is measured. */
const LINE: CurveFamily = {
  unknowns: 2,
  evaluate: (x, u, out) => {
    out[0] = 10 * u[1]!;
    out[1] = 10;
    out[2] = 10 * x;
    return 10 * u[0]! + 10 * u[1]! * x;
  },
};
const point = (
  flow: number,
  value: number,
  error: number,
  common: MeasuredPoint['common'] = [],
): MeasuredPoint => ({
  flow,
  value,
  own: [{ flow: 0, value: error }],
  common,
});
const valueAt = (unknowns: ArrayLike<number>, x: number) => LINE.evaluate(x, unknowns, new Float64Array(3));

describe('estimateCurve', () => {
  it('without points is the middle of the family', () => {
    const found = estimateCurve(LINE, []);
    expect([...found.unknowns]).toEqual([0, 0]);
    expect(curveError(found, 0, null)).toBeCloseTo(10, 9);
  });

  /** By hand: three points, equal weights, wide prior: slope 1, mean 2; standard error of the mean 0.1/sqrt(3). */
  it('is the least-squares line where the family says little', () => {
    const found = estimateCurve(LINE, [point(0, 1.1, 0.1), point(1, 1.8, 0.1), point(2, 3.1, 0.1)]);
    expect(valueAt(found.unknowns, 1)).toBeCloseTo(2, 3);
    expect(valueAt(found.unknowns, 2) - valueAt(found.unknowns, 1)).toBeCloseTo(1, 3);
    expect(curveError(found, 1, null)).toBeCloseTo(0.1 / Math.sqrt(3), 4);
  });

  /** By hand: the line through the others, 2 at x = 1; error of that 0.1/sqrt(2), of the difference 0.1 sqrt(1.5). */
  it('tells how far a point lies from the line through the others, as if it had been left out', () => {
    const three = [point(0, 1, 0.1), point(1, 2.5, 0.1), point(2, 3, 0.1)];
    const whole = estimateCurve(LINE, three).distances[1]!;
    expect(whole).toBeCloseTo(0.5 / (0.1 * Math.sqrt(1.5)), 3);
    const others = estimateCurve(LINE, [three[0]!, three[2]!]);
    const apart = (2.5 - valueAt(others.unknowns, 1)) / Math.hypot(0.1, curveError(others, 1, null));
    expect(whole).toBeCloseTo(apart, 6);
  });

  it('lets a common error shift all together, and not be averaged away', () => {
    const common = [{ flow: 0, value: 0.3 }];
    const many = Array.from({ length: 50 }, (_, i) => point(i / 49, 1, 0.1, common));
    expect(curveError(estimateCurve(LINE, many), 0.5, null)).toBeCloseTo(
      Math.hypot(0.3, 0.1 / Math.sqrt(50)),
      2,
    );
  });

  it('takes no harm from an error that moves a point along the curve', () => {
    const steep = Array.from({ length: 9 }, (_, i) => ({
      flow: i / 8,
      value: 1 + i / 8,
      own: [
        { flow: 0.5, value: 0.5 },
        { flow: 0, value: 0.01 },
      ],
      common: [],
    }));
    expect(curveError(estimateCurve(LINE, steep), 0.5, null)).toBeLessThan(0.02);
  });

  it('draws with the covariance that it states', () => {
    const found = estimateCurve(LINE, [point(0, 1, 0.1), point(2, 3, 0.2)]);
    const next = normalDraws(11);
    const draws = Array.from({ length: 20000 }, () => valueAt(drawUnknowns(found, [next(), next()]), 1.5));
    const mean = draws.reduce((a, b) => a + b, 0) / draws.length;
    const deviation = Math.sqrt(draws.reduce((a, b) => a + (b - mean) ** 2, 0) / draws.length);
    expect(mean).toBeCloseTo(valueAt(found.unknowns, 1.5), 2);
    expect(Math.abs(deviation / curveError(found, 1.5, null) - 1)).toBeLessThan(0.02);
  });
});
