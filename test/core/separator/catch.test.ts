import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lognormalCatch, penetratedMedian, seriesCatch } from '../../../core/separator/catch.ts';
import { GRADE_MODELS, barthGrade, theodoreDePaolaGrade } from '../../../core/separator/efficiency.ts';
import { SMALL_LAPPLE, SMALL_STAIRMAND, anySize, smallFlow } from './samples.ts';

const lapple = (cut_m: number) => (d: number) => theodoreDePaolaGrade(d, cut_m);
const anyDeviation = fc.double({ min: 1, max: 20, noNaN: true });

describe('catch of a lognormal feed', () => {
  it('keeps its regression vectors', () => {
    // worked out once by a separate integration; the closed forms in test/reference are the outside check
    expect(lognormalCatch(lapple(3.8e-6), { median_m: 50e-6, geometricDeviation: 3 })).toBeCloseTo(
      0.96472,
      5,
    );
    expect(lognormalCatch(lapple(3.8e-6), { median_m: 9e-6, geometricDeviation: 2 })).toBeCloseTo(0.78382, 5);
    expect(lognormalCatch(lapple(3.8e-6), { median_m: 200e-6, geometricDeviation: 3.5 })).toBeCloseTo(
      0.99412,
      5,
    );
    const steep = (d: number) => barthGrade(d, 4.82e-6);
    expect(lognormalCatch(steep, { median_m: 50e-6, geometricDeviation: 3 })).toBeCloseTo(0.98036, 5);
  });

  it('is the grade at the median for dust of one size', () => {
    expect(lognormalCatch(lapple(5e-6), { median_m: 10e-6, geometricDeviation: 1 })).toBeCloseTo(0.8, 12);
  });

  it('is one half where the median is at the cut size of a symmetrical curve', () => {
    fc.assert(
      fc.property(anySize, anyDeviation, (cut_m, geometricDeviation) => {
        expect(lognormalCatch(lapple(cut_m), { median_m: cut_m, geometricDeviation })).toBeCloseTo(0.5, 9);
      }),
      { seed: 31, numRuns: 50 },
    );
  });

  it('lies within 0 to 1 and grows with the median', () => {
    fc.assert(
      fc.property(anySize, anySize, anySize, anyDeviation, (cut_m, p, q, geometricDeviation) => {
        const fine = lognormalCatch(lapple(cut_m), { median_m: Math.min(p, q), geometricDeviation });
        const coarse = lognormalCatch(lapple(cut_m), { median_m: Math.max(p, q), geometricDeviation });
        expect(fine).toBeGreaterThanOrEqual(0);
        expect(coarse).toBeLessThanOrEqual(1);
        expect(coarse).toBeGreaterThanOrEqual(fine - 1e-12);
      }),
      { seed: 32, numRuns: 50 },
    );
  });

  it('refuses a deviation below 1 and a median of nothing', () => {
    const bad = (median_m: number, geometricDeviation: number) => () =>
      lognormalCatch(() => 1, { median_m, geometricDeviation });
    expect(bad(1e-5, 0.9)).toThrow(expect.objectContaining({ field: 'geometricDeviation' }));
    expect(bad(0, 2)).toThrow(expect.objectContaining({ field: 'median_m' }));
  });
});

describe('separators in series', () => {
  const size = { median_m: 50e-6, geometricDeviation: 3 };

  it('catch what one catches where there is one, and nothing where there is none', () => {
    expect(seriesCatch([lapple(3.8e-6)], size).caught).toBeCloseTo(lognormalCatch(lapple(3.8e-6), size), 12);
    expect(seriesCatch([], size)).toEqual({ caught: 0, byStage: [] });
  });

  it('never catch less than the better one, nor more than shares of mass multiplied would say', () => {
    fc.assert(
      fc.property(anySize, anySize, anySize, anyDeviation, (first, second, median_m, geometricDeviation) => {
        const feed = { median_m, geometricDeviation };
        const [a, b] = [lognormalCatch(lapple(first), feed), lognormalCatch(lapple(second), feed)];
        const { caught, byStage } = seriesCatch([lapple(first), lapple(second)], feed);
        expect(caught).toBeGreaterThanOrEqual(Math.max(a, b) - 1e-12);
        expect(caught).toBeLessThanOrEqual(1 - (1 - a) * (1 - b) + 1e-12);
        expect(byStage[0]! + byStage[1]!).toBeCloseTo(caught, 12);
      }),
      { seed: 33, numRuns: 50 },
    );
  });

  it('pass finer dust than they get', () => {
    for (const row of Object.values(GRADE_MODELS)) {
      const stages = [
        row.curve(SMALL_LAPPLE, smallFlow(0.075)),
        row.curve(SMALL_STAIRMAND, smallFlow(0.075)),
      ];
      const after = [0, 1, 2].map((count) => penetratedMedian(stages.slice(0, count), size)!);
      expect(after[0]).toBeCloseTo(50e-6, 11);
      expect(after[1]).toBeLessThan(after[0]!);
      expect(after[2]).toBeLessThan(after[1]!);
    }
  });

  it('pass a median in closed form where penetration is a power of size', () => {
    // lognormal times d^-k stays lognormal with its median times exp(-k sigma^2)
    const median = penetratedMedian([(d) => 1 - 1e-4 * (d / 1e-6) ** -0.5], size)!;
    expect(median / (50e-6 * Math.exp(-0.5 * Math.log(3) ** 2)) - 1).toBeCloseTo(0, 4);
  });

  it('pass nothing where everything is caught', () => {
    expect(penetratedMedian([() => 1], size)).toBeNull();
    expect(penetratedMedian([() => 0.5], { median_m: 7e-6, geometricDeviation: 1 })).toBeCloseTo(7e-6, 15);
  });
});
