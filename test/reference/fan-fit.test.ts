import { describe, it } from 'vitest';
import { curveBand } from '../../core/fan/reduce/band.ts';
import { normalDraws } from '../../core/quantities/random.ts';
import { curveError, drawUnknowns, estimateCurve } from '../../core/fan/reduce/estimate.ts';
import type { CurveFamily, MeasuredPoint } from '../../core/fan/reduce/estimate.ts';
import { withoutFaintRise } from '../../core/fan/reduce/faint-rise.ts';
import norris from './data/15_straight_line.json' with { type: 'json' };
import { against } from './ledger.ts';

/** `y = 1e5 u0 + 1e3 u1 x`: so wide before anything is measured that it pulls by less than 1e-10. */
const [LEVEL, SLOPE] = [1e5, 1e3];
const LINE: CurveFamily = {
  unknowns: 2,
  evaluate: (x, u, out) => {
    out[0] = SLOPE * u[1]!;
    out[1] = LEVEL;
    out[2] = SLOPE * x;
    return LEVEL * u[0]! + SLOPE * u[1]! * x;
  },
};
const { certified } = norris;
const points = (own: MeasuredPoint['own'], common: MeasuredPoint['common'] = []): MeasuredPoint[] =>
  norris.points.map(([flow, value]) => ({ flow: flow!, value: value!, own, common }));
const PLAIN = estimateCurve(LINE, points([{ flow: 0, value: certified.residual }]));

// The least error of a point, a millionth of the largest value, adds 6e-7 of itself to a standard error here.
describe('a straight line through certified data', () => {
  const coefficients = against({
    relation: 'estimateCurve',
    source: 'data 15: certified intercept and slope',
    basis: 'independent-program',
    kind: 'value',
  });
  const errors = against({
    relation: ['curveError', 'estimateCurve'],
    source: 'data 15: certified standard deviations of intercept and slope',
    basis: 'independent-program',
    kind: 'value',
  });
  const alongFlow = against({
    relation: ['curveError', 'estimateCurve'],
    source: 'data 15: the same where a part of the error lies along the flow and counts by the slope',
    basis: 'independent-program',
    kind: 'value',
  });
  const common = against({
    relation: ['curveError', 'estimateCurve'],
    source:
      'by hand: an error common to all points adds its square to that of the intercept, nothing to the slope',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const draws = against({
    relation: 'drawUnknowns',
    source: 'data 15: certified standard deviations, summed over one draw along each normal',
    basis: 'independent-program',
    kind: 'value',
  });
  const middle = against({
    relation: 'drawUnknowns',
    source: 'normals of zero give the most likely curve',
    basis: 'hand-calculation',
    kind: 'limit',
  });
  const band = against({
    relation: 'curveBand',
    source: 'data 15: certified standard deviations times 1.64485, 40 000 draws',
    basis: 'independent-program',
    kind: 'value',
  });

  it('has the certified coefficients', () => {
    coefficients.within(LEVEL * PLAIN.unknowns[0]!, certified.intercept, 1e-8);
    coefficients.within(SLOPE * PLAIN.unknowns[1]!, certified.slope, 1e-8);
  });

  it('has the certified standard deviations', () => {
    errors.within(curveError(PLAIN, 0, null), certified.interceptDeviation, 1e-6);
    errors.within(curveError(PLAIN, 1, 0), certified.slopeDeviation, 1e-6);
    errors.within(curveError(PLAIN, 0, 1), certified.slopeDeviation, 1e-6);
  });

  it('counts errors along the flow by the slope', () => {
    const along = 0.6 * certified.residual;
    const across = 0.8 * certified.residual;
    const own = [
      { flow: along / certified.slope, value: 0 },
      { flow: 0, value: across },
    ];
    const found = estimateCurve(LINE, points(own));
    alongFlow.within(curveError(found, 0, null), certified.interceptDeviation, 1e-6);
    alongFlow.within(curveError(found, 1, 0), certified.slopeDeviation, 1e-6);
  });

  it('does not average a common error away', () => {
    const own = [{ flow: 0, value: certified.residual }];
    const found = estimateCurve(LINE, points(own, [{ flow: 0, value: 0.5 }]));
    common.within(curveError(found, 0, null), Math.hypot(certified.interceptDeviation, 0.5), 1e-6);
    common.within(curveError(found, 1, 0), certified.slopeDeviation, 1e-6);
  });

  it('draws with the certified covariance', () => {
    const away = [0, 1].map((j) => {
      const drawn = drawUnknowns(PLAIN, [j === 0 ? 1 : 0, j === 1 ? 1 : 0]);
      return [0, 1].map((i) => drawn[i]! - PLAIN.unknowns[i]!);
    });
    const deviation = (i: number) => Math.hypot(...away.map((shift) => shift[i]!));
    draws.within(LEVEL * deviation(0), certified.interceptDeviation, 1e-6);
    draws.within(SLOPE * deviation(1), certified.slopeDeviation, 1e-6);
    const still = drawUnknowns(PLAIN, [0, 0]);
    middle.holds(
      still.every((value, i) => value === PLAIN.unknowns[i]),
      'exactly',
    );
  });

  it('has the band of nine in ten', () => {
    const { low, high, samples } = curveBand(PLAIN, [0], 40_000, 15);
    const half = 1.64485 * certified.interceptDeviation;
    // an edge of 40 000 draws is known to 0.0106 deviations, 0.65 % of the half width: three of these
    band.within(high[0]! - certified.intercept, half, 0.02);
    band.within(certified.intercept - low[0]!, half, 0.02);
    const outside = samples.filter(([value]) => value! < low[0]! || value! > high[0]!).length;
    band.within(outside / samples.length, 0.1, 0.02);
  });
});

describe('normal draws', () => {
  const shares = against({
    relation: 'core/quantities/random.ts#normalDraws',
    source: 'share of the normal distribution below a place, its density integrated; a million draws',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const moments = against({
    relation: 'core/quantities/random.ts#normalDraws',
    source:
      'mean 0, variance 1, third moment 0, fourth 3, neighbours not correlated; over their standard errors',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const N = 1_000_000;
  const next = normalDraws(20);
  const drawn = Float64Array.from({ length: N }, () => next());

  /** Simpson's rule from -8, below which 6e-16 of the distribution lie. */
  function below(z: number): number {
    const steps = 2000;
    const h = (z + 8) / steps;
    let sum = 0;
    for (let i = 0; i <= steps; i++) {
      const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
      sum += weight * Math.exp(-((-8 + i * h) ** 2) / 2);
    }
    return (sum * h) / 3 / Math.sqrt(2 * Math.PI);
  }

  it.each([-3, -2.326, -1.645, -1, -0.5, 0, 0.5, 1, 1.645, 2.326, 3])('share below %f', (z) => {
    // three standard errors of a share of a half
    shares.withinAbsolute(drawn.filter((value) => value < z).length / N, below(z), 0.0015);
  });

  it('moments', () => {
    const mean = (of: (value: number, i: number) => number) =>
      drawn.reduce((sum, value, i) => sum + of(value, i), 0) / N;
    const inErrors = (value: number, expected: number, variance: number) =>
      moments.withinAbsolute((value - expected) * Math.sqrt(N / variance), 0, 3, { unit: 'standard errors' });
    // variances of z, z^2, z^3, z^4 and of the product of two: 1, 2, 15, 96, 1
    inErrors(
      mean((z) => z),
      0,
      1,
    );
    inErrors(
      mean((z) => z ** 2),
      1,
      2,
    );
    inErrors(
      mean((z) => z ** 3),
      0,
      15,
    );
    inErrors(
      mean((z) => z ** 4),
      3,
      96,
    );
    inErrors(
      mean((z, i) => z * drawn[(i + 1) % N]!),
      0,
      1,
    );
  });
});

describe('a faint rise laid flat', () => {
  const pooled = against({
    relation: 'withoutFaintRise',
    source:
      "a statistics library's test of pooling neighbours: 3 7 5 9 8 7 10 become 3 6 6 8 8 8 10; read backwards",
    basis: 'independent-program',
    kind: 'value',
  });
  const closest = against({
    relation: 'withoutFaintRise',
    source: 'min-max formula of the closest falling curve, means of all stretches',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const threshold = against({
    relation: 'withoutFaintRise',
    source: 'two standard errors of a difference',
    basis: 'common-practice',
    kind: 'value',
  });

  it('as the library pools', () => {
    const flat = withoutFaintRise([10, 7, 8, 9, 5, 7, 3], () => 1e9);
    [10, 8, 8, 8, 6, 6, 3].forEach((value, i) => pooled.within(flat[i]!, value, 1e-15));
  });

  /** The closest falling curve at i is the least over a, up to i, of the largest over b, from i, of the mean of a to b. */
  it('as the min-max formula has it', () => {
    const next = normalDraws(31);
    for (let trial = 0; trial < 20; trial++) {
      const values = Array.from({ length: 12 }, (_, i) => 100 - i + 2 * next());
      const flat = withoutFaintRise(values, () => 1e9);
      const mean = (a: number, b: number) =>
        values.slice(a, b + 1).reduce((sum, value) => sum + value, 0) / (b + 1 - a);
      values.forEach((_, i) => {
        const upTo = Array.from({ length: i + 1 }, (__, a) =>
          Math.max(...Array.from({ length: values.length - i }, (___, k) => mean(a, i + k))),
        );
        closest.within(flat[i]!, Math.min(...upTo), 1e-13);
      });
    }
  });

  it('from two standard errors on a rise is real', () => {
    const isLaidFlat = (error: number) => withoutFaintRise([10, 10.2, 8], () => error)[0] !== 10;
    let [low, high] = [0.01, 1];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (isLaidFlat(middle)) high = middle;
      else low = middle;
    }
    threshold.within(0.2 / high, 2, 1e-12);
  });
});
