import { describe, expect, it } from 'vitest';
import { curveBand, normalDraws } from '../../../../core/fan/reduce/band.ts';
import { estimateCurve } from '../../../../core/fan/reduce/estimate.ts';

describe('normalDraws', () => {
  it('has mean 0, deviation 1, and the tails of a normal distribution', () => {
    const next = normalDraws(3);
    const draws = Array.from({ length: 100_000 }, () => next());
    const mean = draws.reduce((a, b) => a + b, 0) / draws.length;
    const square = draws.reduce((a, b) => a + b * b, 0) / draws.length;
    expect(Math.abs(mean)).toBeLessThan(0.01);
    expect(Math.abs(square - 1)).toBeLessThan(0.02);
    // 5 % beyond 1.96 (any table of the normal distribution)
    const beyond = draws.filter((z) => Math.abs(z) > 1.96).length / draws.length;
    expect(Math.abs(beyond - 0.05)).toBeLessThan(0.003);
  });
  it('is the same for the same seed and another for another', () => {
    const three = (seed: number) => {
      const next = normalDraws(seed);
      return [next(), next(), next()];
    };
    expect(three(8)).toEqual(three(8));
    expect(three(8)).not.toEqual(three(9));
  });
});

describe('curveBand', () => {
  const level = {
    unknowns: 1,
    evaluate: (_x: number, u: ArrayLike<number>, out: Float64Array) => {
      out[1] = 1;
      return u[0]!;
    },
  };
  it('holds nine draws in ten: 1.645 deviations each way', () => {
    const band = curveBand(estimateCurve(level, []), [0, 1], 40_000, 2);
    expect(Math.abs(band.high[0]! - 1.645)).toBeLessThan(0.03);
    expect(Math.abs(band.low[1]! + 1.645)).toBeLessThan(0.03);
    expect(band.samples).toHaveLength(40_000);
    expect(band.samples[0]).toHaveLength(2);
  });
  it('closes where a point without error fixes the curve', () => {
    const point = { flow: 0, value: 0.5, own: [], common: [] };
    const band = curveBand(estimateCurve(level, [point]), [0], 100, 2);
    expect(band.high[0]! - band.low[0]!).toBeLessThan(1e-5);
  });
});
