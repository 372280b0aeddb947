import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { branchCorrection, branchCorrectionSlope } from '../../../core/fittings/branch-correction.ts';
import { junctionLegPressures } from '../../../core/fittings/junction.ts';
import type { JunctionLeg } from '../../../core/fittings/junction.ts';
import { ImpossibleInput } from '../../../core/quantities/impossible-input.ts';

const SEED = 20240614;
const DENSITY = 1.2;

const areas = fc.double({ min: 0.001, max: 0.05, noNaN: true });
const direction = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
const flow = fc.integer({ min: -5000, max: 5000 }).map((x) => x / 1e4);
const role = fc.constantFrom('branch' as const, 'through' as const, undefined);
const leg: fc.Arbitrary<JunctionLeg> = fc
  .tuple(areas, direction, role)
  .map(([area_m2, direction_rad, part]) => ({ area_m2, direction_rad, ...(part ? { role: part } : {}) }));
const junction = fc
  .integer({ min: 2, max: 5 })
  .chain((n) =>
    fc.tuple(fc.array(leg, { minLength: n, maxLength: n }), fc.array(flow, { minLength: n, maxLength: n })),
  );

function evaluate(
  legs: readonly JunctionLeg[],
  flows: readonly number[],
): { e: Float64Array; jac: Float64Array } {
  const e = new Float64Array(legs.length);
  const jac = new Float64Array(legs.length ** 2);
  junctionLegPressures(legs, flows, DENSITY, e, jac);
  return { e, jac };
}

/** A pressure that belongs to the largest velocity around, to measure errors on. */
const scale = (legs: readonly JunctionLeg[], flows: readonly number[]): number =>
  Math.max(1e-9, ...legs.map((l, i) => (flows[i]! / l.area_m2) ** 2 / DENSITY));

const wye = (branchShare: number, mainGrowth = 0): JunctionLeg[] => [
  { area_m2: 0.02, direction_rad: Math.PI, role: 'through' },
  { area_m2: 0.02 * branchShare, direction_rad: (Math.PI * 5) / 4, role: 'branch' },
  { area_m2: 0.02 * (1 + mainGrowth * branchShare), direction_rad: 0, role: 'through' },
];

describe('junction of any legs', () => {
  it('has the slopes that finite differences have', () => {
    fc.assert(
      fc.property(junction, ([legs, flows]) => {
        const total = Math.max(...flows.map(Math.abs));
        const h = 1e-7 * total;
        // Not astride a leg that turns, nor where so little flows in or out that the shares of the legs swing within h.
        fc.pre(flows.every((m) => Math.abs(m) > 1e-3 * total) && total > 1e-3);
        const inflow = flows.reduce((sum, m) => sum + Math.max(0, m), 0);
        // Nor astride the kink of the branch correction at q = 1 - 0.55/0.9.
        fc.pre(flows.every((m) => Math.abs(m / inflow - (1 - 0.55 / 0.9)) > 1e-4));
        const { jac } = evaluate(legs, flows);
        const n = legs.length;
        for (let k = 0; k < n; k++) {
          const up = evaluate(
            legs,
            flows.map((m, i) => (i === k ? m + h : m)),
          );
          const down = evaluate(
            legs,
            flows.map((m, i) => (i === k ? m - h : m)),
          );
          for (let i = 0; i < n; i++) {
            const numeric = (up.e[i]! - down.e[i]!) / (2 * h);
            const error = Math.abs(numeric - jac[i * n + k]!) * total;
            expect(error / scale(legs, flows)).toBeLessThan(1e-5);
          }
        }
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  it('has the slope of the branch correction that finite differences have, off its kink', () => {
    const h = 1e-6;
    for (const q of [0.01, 0.1, 0.2, 0.35, 0.45, 0.7, 0.99]) {
      for (const weight of [0, 0.3, 1]) {
        const numeric = (branchCorrection(q + h, weight) - branchCorrection(q - h, weight)) / (2 * h);
        expect(branchCorrectionSlope(q, weight)).toBeCloseTo(numeric, 6);
      }
    }
  });

  it('has no step where a leg turns', () => {
    fc.assert(
      fc.property(junction, fc.nat(), ([legs, flows], pick) => {
        const k = pick % legs.length;
        const others = flows.filter((_, i) => i !== k);
        // With no inflow but this leg's the shares start from nothing; that needs no leg to lead out, which cannot last.
        fc.pre(others.some((m) => m > 0.01));
        const before = evaluate(
          legs,
          flows.map((m, i) => (i === k ? -1e-10 : m)),
        );
        const at = evaluate(
          legs,
          flows.map((m, i) => (i === k ? 0 : m)),
        );
        const after = evaluate(
          legs,
          flows.map((m, i) => (i === k ? 1e-10 : m)),
        );
        const size =
          scale(legs, [...flows]) +
          scale(
            legs,
            flows.map((m, i) => (i === k ? 0 : m)),
          );
        for (let i = 0; i < legs.length; i++) {
          expect(Math.abs(before.e[i]! - after.e[i]!) / size).toBeLessThan(1e-6);
          expect(Math.abs(at.e[i]! - after.e[i]!) / size).toBeLessThan(1e-6);
        }
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  it('is never NaN, dead legs and all', () => {
    const anyFlow = fc.oneof(flow, fc.constantFrom(0, -0, 1e-300, -1e-300, 5e-324));
    const any = fc.array(fc.tuple(leg, anyFlow), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(any, (given) => {
        const { e, jac } = evaluate(
          given.map(([l]) => l),
          given.map(([, m]) => m),
        );
        expect([...e, ...jac].every(Number.isFinite)).toBe(true);
      }),
      { seed: SEED, numRuns: 3000 },
    );
  });

  it('grows with the square of flow', () => {
    fc.assert(
      fc.property(junction, fc.double({ min: 0.1, max: 10, noNaN: true }), ([legs, flows], factor) => {
        const one = evaluate(legs, flows);
        const many = evaluate(
          legs,
          flows.map((m) => m * factor),
        );
        for (let i = 0; i < legs.length; i++) {
          const off = Math.abs(many.e[i]! / factor ** 2 - one.e[i]!);
          expect(off / scale(legs, flows)).toBeLessThan(1e-9);
        }
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('never makes power in a plain wye or tee: what goes in is at least what comes out', () => {
    const share = fc.double({ min: 0.05, max: 1, noNaN: true });
    const q = fc.double({ min: -0.99, max: 1.5, noNaN: true });
    const turn = fc.double({ min: 0.1, max: Math.PI / 2, noNaN: true });
    fc.assert(
      fc.property(share, share, q, turn, (branchShare, growth, part, angle) => {
        const legs = wye(branchShare, growth).map(({ area_m2, direction_rad }, i) => ({
          area_m2,
          direction_rad: i === 1 ? Math.PI + angle : direction_rad,
        }));
        const flows = [0.3 * (1 - part), 0.3 * part, -0.3];
        const { e } = evaluate(legs, flows);
        const power = flows.reduce((sum, m, i) => sum + m * e[i]!, 0);
        expect(power).toBeGreaterThanOrEqual(-1e-9 * scale(legs, flows));
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  it('a weak branch is dragged along by a fast main: its loss is negative', () => {
    const { e } = evaluate(wye(0.3), [0.28, 0.02, -0.3]);
    expect(e[1]! - e[2]!).toBeLessThan(0);
  });

  it('at rest is at rest, and refuses an area of nothing', () => {
    const { e, jac } = evaluate(wye(0.5), [0, 0, 0]);
    expect([...e, ...jac].every((value) => Math.abs(value) === 0)).toBe(true);
    expect(() => evaluate([{ area_m2: 0, direction_rad: 0 }], [1])).toThrow(ImpossibleInput);
  });
});
