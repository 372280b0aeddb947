import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  generatorFrom,
  generatorOf,
  latinHypercube,
  normalDraws,
  normalQuantile,
  uniform,
  whole,
} from '../../../core/quantities/random.ts';
import type { Generator } from '../../../core/quantities/random.ts';

const normal = (next: Generator) => normalQuantile(uniform(next));
/** Normal draws in a Latin hypercube. */
const normalHypercube = (next: Generator, count: number, dimensions: number) =>
  latinHypercube(next, count, dimensions).map((row) => row.map(normalQuantile));

/** The reference code of the generator, written out with unbounded whole numbers. */
function reference(state: readonly number[]) {
  const s = state.map(BigInt);
  const mask = (1n << 32n) - 1n;
  const rotl = (x: bigint, k: bigint) => ((x << k) | (x >> (32n - k))) & mask;
  return () => {
    const result = (rotl((s[1]! * 5n) & mask, 7n) * 9n) & mask;
    const t = (s[1]! << 9n) & mask;
    s[2]! ^= s[0]!;
    s[3]! ^= s[1]!;
    s[1]! ^= s[2]!;
    s[0]! ^= s[3]!;
    s[2]! ^= t;
    s[3] = rotl(s[3]!, 11n);
    return Number(result);
  };
}

/** Distribution function of the normal distribution by its own series, 1/2 + phi (x + x^3/3 + x^5/(3 5) + ...). */
function normalShare(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 3; Math.abs(term) > 1e-18 * Math.abs(sum); n += 2) {
    term *= (x * x) / n;
    sum += term;
  }
  return 0.5 + (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) * sum;
}

describe('the generator', () => {
  it('gives the sequence that its public implementations test for, from the state 1, 2, 3, 4', () => {
    // test vector of the rand_xoshiro crate, from the authors' C code
    const next = generatorFrom([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, next)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });

  it('agrees with the reference code in unbounded whole numbers', () => {
    const state = [0xdeadbeef, 0x12345678, 0x9abcdef0, 0x0badf00d] as const;
    const next = generatorFrom(state);
    const slow = reference(state);
    for (let i = 0; i < 5000; i++) expect(next()).toBe(slow());
  });

  it('repeats a seed, and parts from its neighbour at once', () => {
    const some = (seed: number) => Array.from({ length: 20 }, generatorOf(seed));
    expect(some(7)).toEqual(some(7));
    expect(some(7)[0]).not.toBe(some(8)[0]);
  });

  it.each([-1, 2 ** 32, NaN, Infinity])('refuses the seed %s by name', (seed) => {
    expect(() => generatorOf(seed)).toThrow(/seed/);
  });

  it('fills 100 bins evenly: chi squared below its 99.9 % point at each of ten seeds', () => {
    for (let seed = 0; seed < 10; seed++) {
      const next = generatorOf(seed);
      const bins = new Float64Array(100);
      for (let i = 0; i < 1e5; i++) bins[whole(next, 100)]!++;
      const chi = bins.reduce((sum, n) => sum + (n - 1000) ** 2 / 1000, 0);
      // 99 degrees of freedom: 0.1 % of fair ones lie above 148.2 (tables of the distribution)
      expect(chi).toBeLessThan(148.2);
    }
  });

  it('never gives 0 or 1', () => {
    expect(uniform(() => 0)).toBeGreaterThan(0);
    expect(uniform(() => 2 ** 32 - 1)).toBeLessThan(1);
  });
});

describe('normal draws', () => {
  it.each([
    // printed quantiles of the normal distribution
    [0.5, 0],
    [0.75, 0.6744897501960817],
    [0.95, 1.6448536269514722],
    [0.975, 1.959963984540054],
    [0.995, 2.5758293035489004],
    [0.999, 3.090232306167813],
    [1e-10, -6.361340902404056],
  ])('have the printed quantile at %s', (share, quantile) => {
    expect(Math.abs(normalQuantile(share) - quantile)).toBeLessThanOrEqual(
      2e-15 * Math.max(1, Math.abs(quantile)),
    );
  });

  it('undo the distribution function, on all three ranges', () => {
    fc.assert(
      fc.property(fc.double({ min: -5.5, max: 3, noNaN: true }), (x) => {
        // the series loses digits in the tails, where the share itself is small
        const share = normalShare(x);
        const slope = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
        expect(Math.abs(normalQuantile(share) - x)).toBeLessThanOrEqual(1e-13 + 1e-15 / slope);
      }),
      { seed: 241 },
    );
  });

  it('are antisymmetric', () => {
    for (const share of [0.001, 0.03125, 0.25])
      expect(normalQuantile(1 - share)).toBeCloseTo(-normalQuantile(share), 12);
  });

  it('pass Kolmogorov and Smirnov at each of ten seeds', () => {
    const n = 4000;
    for (let seed = 1; seed <= 10; seed++) {
      const next = generatorOf(seed);
      const drawn = Array.from({ length: n }, () => normal(next)).sort((a, b) => a - b);
      let distance = 0;
      drawn.forEach((x, i) => {
        const share = Math.abs(x) < 6 ? normalShare(x) : x > 0 ? 1 : 0;
        distance = Math.max(distance, share - i / n, (i + 1) / n - share);
      });
      // 1.949 over root n is passed by 0.1 % of fair samples (asymptotic table)
      expect(distance * Math.sqrt(n)).toBeLessThan(1.949);
    }
  });

  it('have the moments 0, 1, 0, 3 within four standard errors', () => {
    const n = 2e5;
    const next = generatorOf(42);
    const sums = [0, 0, 0, 0];
    for (let i = 0; i < n; i++) {
      const z = normal(next);
      for (let k = 0; k < 4; k++) sums[k]! += z ** (k + 1) / n;
    }
    // variances of the powers of a normal number: 1, 2, 15, 96
    [
      [0, 1],
      [1, 2],
      [0, 15],
      [3, 96],
    ].forEach(([moment, variance], k) => {
      expect(Math.abs(sums[k]! - moment!)).toBeLessThan(4 * Math.sqrt(variance! / n));
    });
  });
});

describe('the Latin hypercube', () => {
  it('has one number in every part of each dimension', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.integer({ min: 0, max: 2 ** 32 - 1 }),
        (count, seed) => {
          for (const row of latinHypercube(generatorOf(seed), count, 3)) {
            const parts = [...row].map((u) => Math.floor(u * count)).sort((a, b) => a - b);
            expect(parts).toEqual(Array.from({ length: count }, (_, i) => i));
          }
        },
      ),
      { seed: 79, numRuns: 50 },
    );
  });

  it('pairs its dimensions at random', () => {
    // correlations of independent rows of n scatter by 1/root n
    const n = 1000;
    const rows = normalHypercube(generatorOf(3), n, 12);
    let most = 0;
    rows.forEach((a, i) =>
      rows.slice(0, i).forEach((b) => {
        most = Math.max(most, Math.abs(a.reduce((sum, x, k) => sum + x * b[k]!, 0) / n));
      }),
    );
    expect(most * Math.sqrt(n)).toBeLessThan(4);
    expect(most * Math.sqrt(n)).toBeGreaterThan(1);
  });

  it('makes the mean of a sum far steadier than plain draws do', () => {
    const scatter = (mean: (seed: number) => number) => {
      const means = Array.from({ length: 40 }, (_, seed) => mean(seed));
      return Math.sqrt(means.reduce((sum, m) => sum + m * m, 0) / means.length);
    };
    const n = 200;
    const inHypercube = scatter((seed) => {
      const [a, b] = normalHypercube(generatorOf(seed), n, 2);
      return a!.reduce((sum, x, i) => sum + x + b![i]!, 0) / n;
    });
    const plain = scatter((seed) => {
      const next = generatorOf(seed);
      return Array.from({ length: n }, () => normal(next) + normal(next)).reduce((sum, x) => sum + x, 0) / n;
    });
    expect(plain).toBeGreaterThan(0.5 * Math.sqrt(2 / n));
    expect(inHypercube).toBeLessThan(plain / 10);
  });
});

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
