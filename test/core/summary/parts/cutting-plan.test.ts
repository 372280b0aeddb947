import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cuttingPlan, firstFitDecreasing } from '../../../../core/summary/parts/cutting-plan.ts';

/** Fewest bars, by trying every way to put the pieces into bars. */
function bruteForce(pieces: readonly number[], stock: number, kerf: number): number {
  let best = pieces.length;
  const bars: number[] = [];
  const place = (i: number): void => {
    if (bars.length >= best && i < pieces.length) return;
    if (i === pieces.length) {
      best = Math.min(best, bars.length);
      return;
    }
    const need = pieces[i]! + kerf;
    for (let b = 0; b < bars.length; b++) {
      if (bars[b]! + 1e-9 < need) continue;
      bars[b]! -= need;
      place(i + 1);
      bars[b]! += need;
    }
    bars.push(stock + kerf - need);
    place(i + 1);
    bars.pop();
  };
  place(0);
  return best;
}

const lengths = (max: number, count: number) =>
  fc.array(
    fc.integer({ min: 50, max }).map((mm) => mm / 1000),
    { minLength: 1, maxLength: count },
  );

describe('cutting from stock', () => {
  it('is never worse than first-fit decreasing, and cuts every piece once', () => {
    fc.assert(
      fc.property(lengths(3000, 40), fc.constantFrom(0, 0.002, 0.004), (pieces, kerf) => {
        const { bars, extraJoints } = cuttingPlan(pieces, 3, kerf);
        expect(bars.length).toBeLessThanOrEqual(firstFitDecreasing(pieces, 3, kerf).length);
        expect(extraJoints).toBe(0);
        const cut = bars.flatMap(({ cuts_m }) => cuts_m).sort((a, b) => a - b);
        expect(cut).toEqual([...pieces].sort((a, b) => a - b));
        for (const { cuts_m, rest_m } of bars) {
          const used = cuts_m.reduce((sum, c) => sum + c, 0) + kerf * (cuts_m.length - 1);
          expect(used).toBeLessThanOrEqual(3 + 1e-9);
          expect(rest_m).toBeCloseTo(3 - used, 9);
        }
      }),
      { seed: 71, numRuns: 200 },
    );
  });

  it('needs as few lengths as any plan, on small cases', () => {
    fc.assert(
      fc.property(lengths(2400, 8), fc.constantFrom(0, 0.003), (pieces, kerf) => {
        const plan = cuttingPlan(pieces, 3, kerf);
        expect(plan.shortest).toBe(true);
        expect(plan.bars.length).toBe(bruteForce(pieces, 3, kerf));
      }),
      { seed: 72, numRuns: 150 },
    );
  });

  it('beats first-fit decreasing where that wastes a length', () => {
    // 44 + 24 + 22 and 30 + 30 + 30 fill two bars of 90 to the end; first-fit decreasing puts 44 with 30
    const pieces = [44, 30, 30, 30, 24, 22];
    expect(firstFitDecreasing(pieces, 90)).toHaveLength(3);
    expect(cuttingPlan(pieces, 90)).toMatchObject({ shortest: true, bars: { length: 2 } });
  });

  it('makes a piece longer than the stock of whole lengths and a rest', () => {
    const plan = cuttingPlan([7.4, 1.6], 3);
    expect(plan.extraJoints).toBe(2);
    expect(plan.bars.map(({ cuts_m }) => cuts_m.map((c) => Number(c.toFixed(6))))).toEqual([
      [3],
      [3],
      [1.6, 1.4],
    ]);
    expect(cuttingPlan([6], 3)).toMatchObject({ extraJoints: 1, bars: { length: 2 } });
  });

  it.each([
    [[0], 3, 0, /pieces_m\[0\]/],
    [[1, -1], 3, 0, /pieces_m\[1\]/],
    [[1], 0, 0, /stock_m/],
    [[1], 3, -1, /kerf_m/],
    [[NaN], 3, 0, /pieces_m\[0\]/],
  ])('refuses %j of %s with a cut of %s', (pieces, stock, kerf, words) => {
    expect(() => cuttingPlan(pieces, stock, kerf)).toThrow(words);
  });
});
