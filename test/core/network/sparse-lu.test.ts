import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eliminationOrder } from '../../../core/network/elimination.ts';
import { SparseLu } from '../../../core/network/sparse-lu.ts';
import { seeded } from './seeded.ts';

/** Solves a dense system by elimination with row exchange. */
function denseSolve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const a = matrix.map((row, i) => [...row, right[i]!]);
  for (let k = 0; k < n; k++) {
    let top = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i]![k]!) > Math.abs(a[top]![k]!)) top = i;
    [a[k], a[top]] = [a[top]!, a[k]!];
    for (let i = k + 1; i < n; i++) {
      const factor = a[i]![k]! / a[k]![k]!;
      for (let j = k; j <= n; j++) a[i]![j]! -= factor * a[k]![j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    let rest = a[i]![n]!;
    for (let j = i + 1; j < n; j++) rest -= a[i]![j]! * x[j]!;
    x[i] = rest / a[i]![i]!;
  }
  return x;
}

/** Node pairs of a random tree, and of extra links that close loops. */
function randomPairs(random: () => number, count: number, loops: number): Int32Array {
  const pairs: number[] = [];
  for (let v = 1; v < count; v++) pairs.push(v, Math.floor(random() * v));
  for (let i = 0; i < loops; i++) pairs.push(Math.floor(random() * count), Math.floor(random() * count));
  return Int32Array.from(pairs);
}

const split = (pairs: Int32Array) => ({
  rows: pairs.filter((_, i) => i % 2 === 0),
  columns: pairs.filter((_, i) => i % 2 === 1),
});

describe('sparse factors', () => {
  it('solve as dense elimination does', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 0, max: 40 }),
        (seed, n, loops) => {
          const random = seeded(seed);
          const pairs = randomPairs(random, n, loops);
          const { rows, columns } = split(pairs);
          const lu = new SparseLu(n, eliminationOrder(n, pairs), rows, columns);
          const matrix = Array.from({ length: n }, () => new Array<number>(n).fill(0));
          const put = (i: number, j: number, value: number) => {
            matrix[i]![j] = value;
            lu.values[lu.position(i, j)] = value;
          };
          for (let k = 0; k < rows.length; k++) {
            if (rows[k] === columns[k]) continue;
            put(rows[k]!, columns[k]!, 2 * random() - 1);
            put(columns[k]!, rows[k]!, 2 * random() - 1);
          }
          for (let i = 0; i < n; i++)
            put(
              i,
              i,
              matrix[i]!.reduce((sum, v) => sum + Math.abs(v), 0.1 + random()),
            );
          const right = Float64Array.from({ length: n }, () => 2 * random() - 1);
          const expected = denseSolve(matrix, Array.from(right));
          expect(lu.factorise()).toBe(0);
          lu.solve(right);
          expected.forEach((x, i) => expect(Math.abs(right[i]! - x)).toBeLessThan(1e-9 * (1 + Math.abs(x))));
        },
      ),
      { seed: 41, numRuns: 200 },
    );
  });

  it('stay finite, and say so, where a pivot vanishes', () => {
    const lu = new SparseLu(2, Int32Array.from([0, 1]), Int32Array.from([0]), Int32Array.from([1]));
    lu.values[lu.position(0, 1)] = 1;
    lu.values[lu.position(1, 0)] = 1;
    expect(lu.factorise()).toBeGreaterThan(0);
    const right = Float64Array.from([1, 1]);
    lu.solve(right);
    for (const x of right) expect(Number.isFinite(x)).toBe(true);
  });
});

describe('order of elimination', () => {
  it('holds every node once', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.integer({ min: 1, max: 80 }),
        fc.integer({ min: 0, max: 60 }),
        (seed, n, loops) => {
          const order = eliminationOrder(n, randomPairs(seeded(seed), n, loops));
          expect(Array.from(order).sort((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, i) => i));
        },
      ),
      { seed: 42, numRuns: 100 },
    );
  });

  it('leaves no fill on a tree, whatever its shape', () => {
    for (const [shape, parent] of [
      ['random', (v: number, r: number) => Math.floor(r * v)],
      ['chain', (v: number) => v - 1],
      ['star', () => 0],
      ['comb', (v: number) => (v % 2 ? v - 1 : Math.max(0, v - 2))],
    ] as const) {
      const random = seeded(7);
      const n = 3000;
      const pairs = new Int32Array(2 * (n - 1));
      for (let v = 1; v < n; v++) pairs.set([v, parent(v, random())], 2 * (v - 1));
      const { rows, columns } = split(pairs);
      const lu = new SparseLu(n, eliminationOrder(n, pairs), rows, columns);
      // diagonals, and each link once above and once below
      expect(lu.values.length, shape).toBe(n + 2 * (n - 1));
    }
  });

  it('fills a ring by no more than one link for each node', () => {
    const n = 500;
    const pairs = Int32Array.from({ length: 2 * n }, (_, i) => (i % 2 ? ((i - 1) / 2 + 1) % n : i / 2));
    const { rows, columns } = split(pairs);
    const lu = new SparseLu(n, eliminationOrder(n, pairs), rows, columns);
    expect(lu.values.length).toBeLessThanOrEqual(n + 2 * (2 * n - 3));
  });
});
