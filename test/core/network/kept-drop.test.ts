import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findActivity } from '../../../core/network/activity.ts';
import { Balance } from '../../../core/network/balance.ts';
import { forgetChanged, keepDrop } from '../../../core/network/kept-drop.ts';
import { marchElement, newMarch } from '../../../core/network/march.ts';
import { ductSegments, linearSegment, localSegment } from '../../../core/network/net.ts';
import { makePlan } from '../../../core/network/plan.ts';
import { STILL_AIR, onePath } from './one-path.ts';

const SCALES = { pressure_Pa: 1000, flow_kgs: 1, typical_kgs: Float64Array.of(1) };

const element = fc.record({
  length_m: fc.double({ min: 0.1, max: 30, noNaN: true }),
  diameter_m: fc.double({ min: 0.03, max: 0.5, noNaN: true }),
  roughness_m: fc.constantFrom(0, 1.5e-6, 1.5e-4, 3e-3),
  coefficient: fc.double({ min: 0, max: 20, noNaN: true }),
  filter: fc.double({ min: 0, max: 500, noNaN: true }),
  reverse: fc.double({ min: 0, max: 5, noNaN: true }),
  velocity_ms: fc.double({ min: 3, max: 60, noNaN: true }),
  reversed: fc.boolean(),
  change: fc.double({ min: -2.9e-3, max: 2.9e-3, noNaN: true }),
});

const pathOf = (made: typeof element extends fc.Arbitrary<infer T> ? T : never) => {
  const area_m2 = (Math.PI / 4) * made.diameter_m ** 2;
  const segments = [
    ...ductSegments(made),
    localSegment(area_m2, 0.3, made.reverse),
    linearSegment(made.filter),
  ];
  const flow_kgs = (made.reversed ? -1 : 1) * area_m2 * made.velocity_ms * STILL_AIR.density_kgm3;
  return { packed: onePath(STILL_AIR, segments, 0), flow_kgs };
};

describe('the drop that is kept for an element', () => {
  it('gives what a march gives near it, without one', () => {
    fc.assert(
      fc.property(element, (made) => {
        const { packed, flow_kgs } = pathOf(made);
        forgetChanged(packed);
        keepDrop(packed, 0, flow_kgs, newMarch());
        expect(packed.keptDrops.values[0]).toBe(1 / flow_kgs);
        packed.area_m2.fill(NaN); // a march would show
        const near = flow_kgs * (1 + made.change);
        const plan = makePlan(packed, findActivity(packed), false);
        const balance = new Balance(packed, plan, null, SCALES);
        balance.evaluate({ flow_kgs: Float64Array.of(near), pressure_Pa: new Float64Array(2) });

        const march = newMarch();
        marchElement(pathOf(made).packed, 0, near, 0, march);
        const drop = -Math.sign(flow_kgs) * march.total_Pa;
        expect(Math.abs(-balance.residual[0]! / drop - 1)).toBeLessThan(1e-13);
        expect(Math.abs(plan.work.byFlow[0]! / march.byFlow - 1)).toBeLessThan(1e-10);
      }),
      { seed: 5, numRuns: 400 },
    );
  });

  it('is forgotten where a coefficient or the dust changes', () => {
    const { packed } = pathOf({
      length_m: 3,
      diameter_m: 0.1,
      roughness_m: 0,
      coefficient: 1,
      filter: 0,
      reverse: 1,
      velocity_ms: 20,
      reversed: false,
      change: 0,
    });
    const kept = packed.keptDrops.values;
    expect(forgetChanged(packed)).toEqual([0]);
    keepDrop(packed, 0, 0.2, newMarch());
    expect(forgetChanged(packed)).toEqual([]);
    expect(kept[0]).toBe(5);
    for (const change of [
      () => (packed.forward[1] = 2),
      () => (packed.backward[1] = 2),
      () => (packed.solids_kgs[0] = 0.01),
    ]) {
      keepDrop(packed, 0, 0.2, newMarch());
      change();
      expect(forgetChanged(packed)).toEqual([0]);
      expect(kept[0]).toBe(0);
    }
    keepDrop(packed, 0, 0.2, newMarch());
    expect(kept[0]).toBe(0); // with dust on it nothing is kept
  });

  it('keeps nothing where friction is not wholly turbulent', () => {
    const { packed } = onePathAtReynolds(4005);
    keepDrop(packed, 0, flowAtReynolds(4005), newMarch());
    expect(packed.keptDrops.values[0]).toBe(0);
    keepDrop(packed, 0, flowAtReynolds(4100), newMarch());
    expect(packed.keptDrops.values[0]).toBeGreaterThan(0);
  });
});

const flowAtReynolds = (re: number) => (re * STILL_AIR.viscosity_Pas * Math.PI * 0.1) / 4;
const onePathAtReynolds = (re: number) => ({
  packed: onePath(
    STILL_AIR,
    ductSegments({ length_m: 2, diameter_m: 0.1, roughness_m: 1e-5, coefficient: 0 }),
    0,
  ),
  flow_kgs: flowAtReynolds(re),
});
