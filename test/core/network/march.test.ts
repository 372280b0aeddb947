import { describe, expect, it } from 'vitest';
import { frictionFactorWithSlope } from '../../../core/duct/friction.ts';
import { KEPT, keptFriction } from '../../../core/network/kept-friction.ts';
import { marchElement, marchSegment, newMarch, staticAt } from '../../../core/network/march.ts';
import { ductSegments, linearSegment, localSegment } from '../../../core/network/net.ts';
import type { Segment } from '../../../core/network/net.ts';
import { onePath, ROOM_AIR, STILL_AIR } from './one-path.ts';

const [friction, local] = ductSegments({
  length_m: 8,
  diameter_m: 0.05,
  roughness_m: 1e-4,
  coefficient: 3,
}) as [Segment, Segment];
const SEGMENTS: Readonly<Record<string, Segment>> = {
  friction,
  'fixed friction': { ...friction, fixedFriction: 0.02 },
  'loss before': { ...local, backward: 1.5 },
  'loss after': localSegment(0.002, 2, 1, 'downstream'),
  linear: linearSegment(3000),
};
const FLOWS = [1e-5, 5e-4, 0.01, 0.05, 0.1, 0.3, 2];
const INLETS = [5000, 0, -20000, -60000];

/** Steps of the difference, in flow (share) and inlet pressure [Pa]. */
const FLOW_STEP = 1e-4;
const INLET_STEP_Pa = 0.5;

/** Checks a slope against a difference over `2 step`, which pressures of about an atmosphere leave so uncertain. */
function near(found: number, difference: number, step: number, what: string): void {
  const rounding = (4 * Number.EPSILON * 1e5) / step;
  const limit = 1e-6 * Math.abs(difference) + rounding;
  expect(Math.abs(found - difference), `${what}: ${found} for ${difference}`).toBeLessThan(limit);
}

describe('slopes of the march against central differences', () => {
  for (const [name, segment] of Object.entries(SEGMENTS)) {
    for (const air of [STILL_AIR, ROOM_AIR]) {
      for (const reversed of [false, true]) {
        it(`${name}, ${air === ROOM_AIR ? 'compressible' : 'constant density'}${reversed ? ', reversed' : ''}`, () => {
          const packed = onePath(air, [segment]);
          const total = (m: number, inlet_Pa: number) => {
            const march = newMarch();
            march.total_Pa = inlet_Pa;
            marchSegment(packed, 0, m, reversed, march);
            return march;
          };
          for (const m of FLOWS) {
            for (const inlet of INLETS) {
              const march = total(m, inlet);
              const h = m * FLOW_STEP;
              const byFlow = (total(m + h, inlet).total_Pa - total(m - h, inlet).total_Pa) / (2 * h);
              near(march.byFlow, byFlow, h, `by flow at ${m} kg/s, ${inlet} Pa`);
              const above = total(m, inlet + INLET_STEP_Pa).total_Pa;
              const below = total(m, inlet - INLET_STEP_Pa).total_Pa;
              near(
                march.byInlet,
                (above - below) / (2 * INLET_STEP_Pa),
                INLET_STEP_Pa,
                `by inlet at ${m} kg/s, ${inlet} Pa`,
              );
            }
          }
        });
      }
    }
  }

  it('whole element, with and without dust, both ways', () => {
    for (const air of [STILL_AIR, ROOM_AIR]) {
      const packed = onePath(air, Object.values(SEGMENTS));
      for (const solids of [0, 0.004]) {
        packed.solids_kgs[0] = solids;
        const total = (m: number, inlet_Pa: number) => {
          const march = newMarch();
          marchElement(packed, 0, m, inlet_Pa, march);
          return march;
        };
        for (const m of [0.0005, 0.005, 0.02, -0.005, -0.02]) {
          const h = Math.abs(m) * FLOW_STEP;
          // the slope is against the size of the flow
          const byFlow = ((total(m + h, 0).total_Pa - total(m - h, 0).total_Pa) / (2 * h)) * Math.sign(m);
          near(total(m, 0).byFlow, byFlow, h, `${m} kg/s, ${solids} kg/s of dust`);
          const above = total(m, INLET_STEP_Pa).total_Pa;
          const below = total(m, -INLET_STEP_Pa).total_Pa;
          near(total(m, 0).byInlet, (above - below) / (2 * INLET_STEP_Pa), INLET_STEP_Pa, `inlet, ${m} kg/s`);
        }
      }
    }
  });
});

describe('the march', () => {
  it('costs more the more flows, through choking and on, and never gives a number that is none', () => {
    for (const segment of Object.values(SEGMENTS)) {
      for (const air of [STILL_AIR, ROOM_AIR]) {
        const packed = onePath(air, [segment]);
        for (const inlet of [0, -30000, -90000, -200000]) {
          let before = Infinity;
          for (let m = 1e-6; m < 1e4; m *= 1.1) {
            const march = newMarch();
            marchElement(packed, 0, m, inlet, march);
            expect(march.total_Pa).toBeLessThan(before);
            expect(Number.isFinite(march.byFlow) && Number.isFinite(march.byInlet)).toBe(true);
            before = march.total_Pa;
          }
        }
      }
    }
  });

  it('multiplies every loss by one plus the loading', () => {
    const packed = onePath(STILL_AIR, [local]);
    const clean = newMarch();
    marchElement(packed, 0, 0.02, 0, clean);
    packed.solids_kgs[0] = 0.005;
    const dusty = newMarch();
    marchElement(packed, 0, 0.02, 0, dusty);
    expect(dusty.total_Pa / clean.total_Pa).toBeCloseTo(1.25, 12);
  });

  it('takes velocity pressure off for the static pressure', () => {
    // 0.024 kg/s of air of 1.2 kg/m3 through 0.001 m2 is 20 m/s: 240 Pa
    expect(staticAt(onePath(STILL_AIR, []), -500, 0.024, 0.001)).toBeCloseTo(-740, 9);
  });
});

describe('friction that is kept between calls', () => {
  it('gives the digits of a full solution near it', () => {
    const kept = new Float64Array(KEPT);
    const out = new Float64Array(2);
    const full = new Float64Array(2);
    for (const rough of [0, 1e-5, 1e-3, 0.05]) {
      for (let re = 4100; re < 1e8; re *= 3) {
        keptFriction(kept, 0, re, rough, out);
        for (const change of [1e-9, -1e-5, 1.5e-4, -1.9e-4, 2.9e-3, -2.9e-3]) {
          keptFriction(kept, 0, re * (1 + change), rough, out);
          expect(kept[0]).toBe(re);
          frictionFactorWithSlope(re * (1 + change), rough, full);
          expect(Math.abs(out[0]! / full[0]! - 1)).toBeLessThan(1e-13);
          // the slope only steers the solver; it is good to the square of the change
          expect(Math.abs(out[1]! / full[1]! - 1)).toBeLessThan(2e-4 ** 2);
        }
      }
    }
  });
});
