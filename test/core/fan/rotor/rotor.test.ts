import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bladePull, bladeRootStress } from '../../../../core/fan/rotor/blade-pull.ts';
import { discInertia, spinEnergy } from '../../../../core/fan/rotor/energy.ts';
import {
  innerLoadFactor,
  rimLoadGrowth,
  rimLoadStress,
  rimTraction,
} from '../../../../core/fan/rotor/rim-load.ts';
import {
  annularDiscStress,
  discGrowth,
  maxAnnularDiscStress,
  maxSolidDiscStress,
  solidDiscStress,
} from '../../../../core/fan/rotor/spinning-disc.ts';
import { speedAtStrength } from '../../../../core/fan/rotor/strength-speed.ts';
import { thinRingGrowth, thinRingStress } from '../../../../core/fan/rotor/thin-ring.ts';
import { angularSpeed, bladePassFrequency, tipSpeed } from '../../../../core/fan/rotor/turning.ts';
import { ImpossibleInput } from '../../../../core/quantities/impossible-input.ts';

const SEED = { seed: 20240417 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Discs with a hole, as a workshop may build them, and a place on each as a share of its width. */
const DISC = fc.record({
  outerRadius_m: between(0.02, 1),
  innerRadius_m: between(0.01, 0.99),
  speed_rpm: between(10, 50_000),
  density_kgm3: between(300, 9000),
  poissonRatio: between(0, 0.5),
});
const disc = DISC.map((d) => ({ ...d, innerRadius_m: d.innerRadius_m * d.outerRadius_m }));
const near = (value: number, wanted: number, tolerance = 1e-12) =>
  expect(Math.abs(value - wanted)).toBeLessThanOrEqual(tolerance * Math.abs(wanted));

describe('a spinning disc', () => {
  it('has stress and growth with the speed squared', () => {
    fc.assert(
      fc.property(disc, between(0.1, 10), (d, k) => {
        const faster = { ...d, speed_rpm: k * d.speed_rpm };
        near(maxAnnularDiscStress(faster).hoop_Pa, k ** 2 * maxAnnularDiscStress(d).hoop_Pa);
        near(maxSolidDiscStress(faster), k ** 2 * maxSolidDiscStress(d));
        near(discGrowth(faster, 1e9), k ** 2 * discGrowth(d, 1e9));
      }),
      SEED,
    );
  });
  it('has the same stress at any size, at the same tip speed and shape; growth goes with the size', () => {
    fc.assert(
      fc.property(disc, between(0.1, 10), (d, k) => {
        const larger = {
          ...d,
          outerRadius_m: k * d.outerRadius_m,
          innerRadius_m: k * d.innerRadius_m,
          speed_rpm: d.speed_rpm / k,
        };
        near(
          tipSpeed(2 * larger.outerRadius_m, larger.speed_rpm),
          tipSpeed(2 * d.outerRadius_m, d.speed_rpm),
        );
        near(maxAnnularDiscStress(larger).hoop_Pa, maxAnnularDiscStress(d).hoop_Pa);
        near(maxAnnularDiscStress(larger).radial_Pa, maxAnnularDiscStress(d).radial_Pa);
        near(discGrowth(larger, 1e9), k * discGrowth(d, 1e9));
      }),
      SEED,
    );
  });
  it('has hoop stress no less than radial, and neither above its greatest', () => {
    fc.assert(
      fc.property(disc, between(0, 1), (d, share) => {
        const r = Math.min(d.outerRadius_m, d.innerRadius_m + share * (d.outerRadius_m - d.innerRadius_m));
        const { hoop_Pa, radial_Pa } = annularDiscStress(d, r);
        const most = maxAnnularDiscStress(d);
        const rounding = 1e-12 * most.hoop_Pa;
        expect(hoop_Pa).toBeGreaterThanOrEqual(radial_Pa - rounding);
        expect(radial_Pa).toBeGreaterThanOrEqual(-rounding);
        expect(hoop_Pa).toBeLessThanOrEqual(most.hoop_Pa + rounding);
        expect(radial_Pa).toBeLessThanOrEqual(most.radial_Pa + rounding);
        const solid = solidDiscStress(d, r);
        expect(solid.hoop_Pa).toBeGreaterThanOrEqual(solid.radial_Pa - rounding);
        expect(solid.hoop_Pa).toBeLessThanOrEqual(maxSolidDiscStress(d) * (1 + 1e-12));
      }),
      SEED,
    );
  });
  it('has its greatest stresses where it says, and free edges', () => {
    fc.assert(
      fc.property(disc, (d) => {
        const most = maxAnnularDiscStress(d);
        near(annularDiscStress(d, d.innerRadius_m).hoop_Pa, most.hoop_Pa);
        const at = Math.min(Math.max(most.radialAt_m, d.innerRadius_m), d.outerRadius_m);
        expect(Math.abs(annularDiscStress(d, at).radial_Pa - most.radial_Pa)).toBeLessThan(
          1e-12 * most.hoop_Pa,
        );
        for (const edge of [d.innerRadius_m, d.outerRadius_m])
          expect(Math.abs(annularDiscStress(d, edge).radial_Pa)).toBeLessThan(1e-12 * most.hoop_Pa);
      }),
      SEED,
    );
  });
  it('is weaker and grows more the wider its bore', () => {
    fc.assert(
      fc.property(disc, between(0.1, 0.999), (d, k) => {
        const tighter = { ...d, innerRadius_m: k * d.innerRadius_m };
        expect(maxAnnularDiscStress(tighter).hoop_Pa).toBeLessThanOrEqual(maxAnnularDiscStress(d).hoop_Pa);
        expect(discGrowth(tighter, 1e9)).toBeLessThan(discGrowth(d, 1e9));
        expect(discGrowth({ ...d, innerRadius_m: 0 }, 1e9)).toBeGreaterThan(0);
      }),
      SEED,
    );
  });
  it('never bears more than a thin ring at the speed of its rim', () => {
    fc.assert(
      fc.property(disc, (d) => {
        const ring = thinRingStress(d.density_kgm3, tipSpeed(2 * d.outerRadius_m, d.speed_rpm));
        expect(maxAnnularDiscStress(d).hoop_Pa).toBeLessThanOrEqual(ring * (1 + 1e-12));
        const grown = thinRingGrowth(ring, d.outerRadius_m, 1e9);
        expect(discGrowth(d, 1e9)).toBeLessThanOrEqual(grown * (1 + 1e-12));
      }),
      SEED,
    );
  });
});

describe('the pull of blades', () => {
  const rim = fc.record({
    traction_Pa: between(1, 1e7),
    outerRadius_m: between(0.02, 1),
    hole: between(0, 0.99),
  });
  it('spreads by number, and over rim and thickness', () => {
    const four = { blades: 4, pull_N: 100, outerRadius_m: 0.1, thickness_m: 0.005 };
    near(rimTraction({ ...four, blades: 8 }), 2 * rimTraction(four));
    near(rimTraction({ ...four, thickness_m: 0.01 }), rimTraction(four) / 2);
    near(rimTraction(four) * 2 * Math.PI * 0.1 * 0.005, 400);
  });
  it('stresses the hole most, pulls with its traction at the rim, and leaves the hole free', () => {
    fc.assert(
      fc.property(rim, between(0, 1), ({ hole, ...rest }, share) => {
        const load = { ...rest, innerRadius_m: hole * rest.outerRadius_m };
        const { innerRadius_m: a, outerRadius_m: b } = load;
        const inside = rimLoadStress(load, a);
        const r = Math.min(b, a + share * (b - a));
        expect(rimLoadStress(load, r).hoop_Pa).toBeLessThanOrEqual(inside.hoop_Pa * (1 + 1e-12));
        expect(rimLoadStress(load, r).hoop_Pa).toBeGreaterThanOrEqual(rimLoadStress(load, r).radial_Pa);
        near(rimLoadStress(load, b).radial_Pa, load.traction_Pa, 1e-10);
        if (a > 0) expect(inside.radial_Pa).toBe(0);
        expect(rimLoadGrowth(load, 0.3, 1e9)).toBeGreaterThan(0);
      }),
      SEED,
    );
  });
  it('weighs the more the further it stands inside the rim', () => {
    fc.assert(
      fc.property(between(0.05, 1), between(0.05, 0.999), between(0, 0.5), (share, k, nu) => {
        expect(innerLoadFactor(share, 1, nu)).toBeGreaterThanOrEqual(1 - 1e-12);
        expect(innerLoadFactor(k * share, 1, nu)).toBeGreaterThan(innerLoadFactor(share, 1, nu) - 1e-12);
      }),
      SEED,
    );
    expect(innerLoadFactor(0.3, 0.3, 0.36)).toBeCloseTo(1, 15);
  });
});

describe('speed at strength', () => {
  it('is where the stress is the strength', () => {
    fc.assert(
      fc.property(disc, between(1e6, 5e8), (d, strength_Pa) => {
        const { hoop_Pa } = maxAnnularDiscStress(d);
        const speed_rpm = speedAtStrength(d.speed_rpm, hoop_Pa, strength_Pa);
        near(maxAnnularDiscStress({ ...d, speed_rpm }).hoop_Pa, strength_Pa);
      }),
      SEED,
    );
  });
});

describe('what cannot be', () => {
  const d = {
    outerRadius_m: 0.1,
    innerRadius_m: 0.02,
    speed_rpm: 3000,
    density_kgm3: 1240,
    poissonRatio: 0.36,
  };
  const rim = { traction_Pa: 1e6, outerRadius_m: 0.1, innerRadius_m: 0.02 };
  const blades = { blades: 4, pull_N: 100, outerRadius_m: 0.1, thickness_m: 0.005 };
  const flat = { outerRadius_m: 0.1, innerRadius_m: 0.02, thickness_m: 0.005, density_kgm3: 1240 };
  it.each<[string, () => unknown]>([
    ['speed_rpm', () => angularSpeed(0)],
    ['diameter_m', () => tipSpeed(-1, 100)],
    ['blades', () => bladePassFrequency(2.5, 100)],
    ['blades', () => rimTraction({ ...blades, blades: 0 })],
    ['thickness_m', () => rimTraction({ ...blades, thickness_m: 0 })],
    ['outerRadius_m', () => maxSolidDiscStress({ ...d, outerRadius_m: NaN })],
    ['density_kgm3', () => maxAnnularDiscStress({ ...d, density_kgm3: 0 })],
    ['poissonRatio', () => maxSolidDiscStress({ ...d, poissonRatio: 0.6 })],
    ['innerRadius_m', () => maxAnnularDiscStress({ ...d, innerRadius_m: 0.1 })],
    ['innerRadius_m', () => annularDiscStress({ ...d, innerRadius_m: 0 }, 0.05)],
    ['innerRadius_m', () => discGrowth({ ...d, innerRadius_m: -0.1 }, 1e9)],
    ['radius_m', () => annularDiscStress(d, 0.01)],
    ['radius_m', () => solidDiscStress(d, 0.11)],
    ['youngsModulus_Pa', () => discGrowth(d, 0)],
    ['rimSpeed_ms', () => thinRingStress(1000, Infinity)],
    ['radius_m', () => thinRingGrowth(1e6, 0, 1e9)],
    ['mass_kg', () => bladePull(0, 1, 1)],
    ['rootArea_m2', () => bladeRootStress(1, 0)],
    ['traction_Pa', () => rimLoadStress({ ...rim, traction_Pa: -1 }, 0.05)],
    ['innerRadius_m', () => rimLoadGrowth({ ...rim, innerRadius_m: 0.2 }, 0.3, 1e9)],
    ['radius_m', () => rimLoadStress(rim, 0.01)],
    ['loadRadius_m', () => innerLoadFactor(0.2, 0.1, 0.3)],
    ['stress_Pa', () => speedAtStrength(1000, 0, 1e6)],
    ['innerRadius_m', () => discInertia({ ...flat, innerRadius_m: 0.1 })],
    ['inertia_kgm2Inertia', () => spinEnergy(0, 100)],
  ])('%s', (field, call) => {
    expect(call).toThrow(ImpossibleInput);
    expect(call).toThrow(field);
  });
});
