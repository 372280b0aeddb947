import { describe, expect, it } from 'vitest';
import { curveBand } from '../../../../core/fan/reduce/band.ts';
import { estimateCurve } from '../../../../core/fan/reduce/estimate.ts';

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
