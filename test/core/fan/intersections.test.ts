import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curveIntersections } from '../../../core/fan/intersections.ts';
import { brentRoot, leastBetween } from '../../../core/fan/root.ts';

/** Fan less system is a polynomial with known roots, so every answer is known beforehand. */
const withRoots = (roots: number[], sign: number) => ({
  fan: (q: number) => 1000 + sign * 1000 * roots.reduce((product, root) => product * (q - root), 1),
  system: () => 1000,
});

describe('curve intersections', () => {
  it('finds every crossing, stability alternating', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: 19 }), { minLength: 1, maxLength: 5 }),
        fc.constantFrom(-1, 1),
        (places, sign) => {
          const roots = places.map((place) => place / 20 + 0.0011).sort((a, b) => a - b);
          const found = curveIntersections({ ...withRoots(roots, sign), low: 0, high: 1.05, samples: 101 });
          expect(found.length).toBe(roots.length);
          found.forEach((crossing, i) => {
            expect(crossing.flow_m3s).toBeCloseTo(roots[i]!, 8);
            const rightOf = roots.length - 1 - i;
            expect(crossing.stable).toBe(sign * (-1) ** rightOf < 0);
            expect(crossing.touch).toBe(false);
          });
        },
      ),
      { seed: 17 },
    );
  });

  it('finds a pair of crossings that lies between two samples', () => {
    const found = curveIntersections({ ...withRoots([0.5012, 0.5023], 1), low: 0, high: 1, samples: 20 });
    expect(found.map((crossing) => crossing.stable)).toEqual([true, false]);
    expect(found[0]!.flow_m3s).toBeCloseTo(0.5012, 9);
    expect(found[1]!.flow_m3s).toBeCloseTo(0.5023, 9);
  });

  it('says touch where the curves only touch, on a sample or between samples', () => {
    for (const place of [0.5, 0.4321]) {
      const found = curveIntersections({ ...withRoots([place, place], 1), low: 0, high: 1, samples: 20 });
      expect(found.length).toBe(1);
      expect(found[0]!.flow_m3s).toBeCloseTo(place, 6);
      expect(found[0]).toMatchObject({ touch: true, stable: false });
    }
  });

  it('reports a crossing on a sample, at an end, and a shared stretch once', () => {
    const line = { fan: (q: number) => 2 - q, system: (q: number) => q };
    expect(curveIntersections({ ...line, low: 0, high: 2, samples: 4 })).toHaveLength(1);
    expect(curveIntersections({ ...line, low: 1, high: 2, samples: 4 })).toMatchObject([
      { flow_m3s: 1, stable: true },
    ]);
    expect(curveIntersections({ ...line, low: 0, high: 1, samples: 4 })).toMatchObject([
      { flow_m3s: 1, stable: true },
    ]);
    const shared = { fan: (q: number) => Math.min(1, 2 - q), system: () => 1 };
    expect(curveIntersections({ ...shared, low: 0, high: 2, samples: 8 })).toMatchObject([
      { flow_m3s: 0, touch: true },
    ]);
  });

  it('finds nothing where the curves stay apart', () => {
    expect(curveIntersections({ fan: () => 1, system: (q) => 2 + q, low: 0, high: 1, samples: 50 })).toEqual(
      [],
    );
  });

  it('names impossible input', () => {
    const line = { fan: (q: number) => 2 - q, system: (q: number) => q, low: 0, high: 2, samples: 4 };
    expect(() => curveIntersections({ ...line, high: 0 })).toThrow('high');
    expect(() => curveIntersections({ ...line, low: NaN })).toThrow('low');
    expect(() => curveIntersections({ ...line, samples: 1.5 })).toThrow('samples');
    expect(() => curveIntersections({ ...line, fan: () => NaN })).toThrow('fan(0)');
  });
});

describe('root and least value', () => {
  it('places roots to rounding, steep or flat, in few evaluations', () => {
    const cases: [(x: number) => number, number, number, number][] = [
      [(x) => x ** 3 - 2, 0, 5, Math.cbrt(2)],
      [(x) => Math.exp(x) - 1e3, -5, 50, Math.log(1e3)],
      [(x) => Math.atan(1e6 * (x - 0.3)), -1, 2, 0.3],
      [(x) => (x < 0.25 ? -1 : 1), 0, 1, 0.25],
    ];
    for (const [f, left, right, root] of cases) {
      let calls = 0;
      const found = brentRoot((x) => (calls++, f(x)), left, right);
      expect(Math.abs(found - root)).toBeLessThan(1e-14 * Math.abs(root) + 1e-15);
      expect(calls).toBeLessThan(120);
    }
    expect(() => brentRoot((x) => x * x + 1, -1, 1)).toThrow('right');
  });

  it('is faster than halving on a smooth function', () => {
    let calls = 0;
    brentRoot((x) => (calls++, x ** 3 - 2), 0, 5);
    expect(calls).toBeLessThan(20);
  });

  it('finds a sharp dip to rounding', () => {
    expect(leastBetween((x) => Math.abs(x - 0.123456789), 0, 1)).toBeCloseTo(0.123456789, 14);
  });
});
