import { describe, expect, it } from 'vitest';
import { rotorResult } from '../../core/fan-bench/rotor-of.ts';
import { BLADED, NOTHING_KNOWN, rotorDesign } from '../core/fan-bench/rotors.ts';
import { MINIMUM_FACTORS, ROTOR_MATERIALS, rotorMaterial } from '../../core/catalogue/rotor-materials.ts';
import { bladePull, bladeRootStress } from '../../core/fan/rotor/blade-pull.ts';
import { discInertia, spinEnergy } from '../../core/fan/rotor/energy.ts';
import { innerLoadFactor, rimLoadGrowth, rimLoadStress, rimTraction } from '../../core/fan/rotor/rim-load.ts';
import {
  annularDiscStress,
  discGrowth,
  maxAnnularDiscStress,
  maxSolidDiscStress,
  solidDiscStress,
} from '../../core/fan/rotor/spinning-disc.ts';
import { speedAtStrength } from '../../core/fan/rotor/strength-speed.ts';
import { thinRingGrowth, thinRingStress } from '../../core/fan/rotor/thin-ring.ts';
import { angularSpeed, bladePassFrequency, tipSpeed } from '../../core/fan/rotor/turning.ts';
import data from './data/12_rotating_disc.json' with { type: 'json' };
import { solveDisc } from './disc-equilibrium.ts';
import { expectRelative } from './relative.ts';

/**
 * Source: data/12_rotating_disc.json, closed formulas of Roark 7th ed. sec 16.8 and Timoshenko and Goodier sec 32 in an
 * independent program, which a collocation solution of the disc's equilibrium confirmed to 1.5e-13.
 */
describe('discs against an independent program', () => {
  it.each(data.cases.map((row, i) => [i, row.in.kind, row] as const))('case %i, %s', (_i, kind, row) => {
    const disc = {
      outerRadius_m: row.in.outer_radius_m,
      innerRadius_m: row.in.inner_radius_m,
      speed_rpm: row.in.speed_rpm,
      density_kgm3: row.in.density_kg_m3,
      poissonRatio: row.in.poisson_ratio,
    };
    const { out } = row;
    expectRelative(angularSpeed(disc.speed_rpm), out.angular_speed_rad_s, 1e-9);
    expectRelative(tipSpeed(2 * disc.outerRadius_m, disc.speed_rpm), out.tip_speed_m_s, 1e-9);
    expectRelative(discGrowth(disc, row.in.youngs_modulus_Pa), out.outer_radius_growth_m, 1e-9);
    const at = (kind === 'solid' ? solidDiscStress : annularDiscStress)(disc, row.in.query_radius_m);
    expectRelative(at.hoop_Pa, out.hoop_stress_at_query_Pa, 1e-9);
    expectRelative(at.radial_Pa, out.radial_stress_at_query_Pa, 1e-9);
    if (kind === 'solid') {
      expectRelative(maxSolidDiscStress(disc), out.max_hoop_stress_Pa, 1e-9);
      expectRelative(solidDiscStress(disc, 0).radial_Pa, out.max_radial_stress_Pa, 1e-9);
    } else {
      const most = maxAnnularDiscStress(disc);
      expectRelative(most.hoop_Pa, out.max_hoop_stress_Pa, 1e-9);
      expectRelative(most.radial_Pa, out.max_radial_stress_Pa, 1e-9);
      expectRelative(most.radialAt_m, out.radius_of_max_radial_stress_m, 1e-9);
    }
  });
  it('has both kinds', () => {
    expect(new Set(data.cases.map((row) => row.in.kind))).toEqual(new Set(['solid', 'annular']));
    expect(data.cases.length).toBeGreaterThanOrEqual(20);
  });
});

/** Worked by hand, figures of the handbook sheet: PLA 1240 kg/m3, nu 0.36, radius 75 mm, 12 000 rpm. */
describe('the worked wheel', () => {
  const disc = { outerRadius_m: 0.075, speed_rpm: 12000, density_kgm3: 1240, poissonRatio: 0.36 };
  it('solid 4.626 MPa, with a bore of 8 mm 9.257 MPa, tip 94.2 m/s', () => {
    expect(maxSolidDiscStress(disc) / 1e6).toBeCloseTo(4.626, 3);
    expect(maxAnnularDiscStress({ ...disc, innerRadius_m: 0.004 }).hoop_Pa / 1e6).toBeCloseTo(9.257, 3);
    expect(tipSpeed(0.15, 12000)).toBeCloseTo(94.2, 1);
  });
  it.each([
    // Tip speeds at an allowed stress, solid and bored, worked by hand: sqrt(8 s/((3 + nu) rho)) and half its square.
    ['pla-in-plane', 10e6, 139, 98],
    ['petg-in-plane', 8e6, 122, 86],
    ['abs-in-plane', 6e6, 117, 83],
    ['aluminium-6061-t6', 90e6, 283, 200],
  ] as const)('%s: tip speed at %d Pa is %d m/s solid, %d bored', (id, allowed_Pa, solid_ms, bored_ms) => {
    const { density_kgm3, poissonRatio } = rotorMaterial(id)!;
    const one = { outerRadius_m: 0.1, speed_rpm: 1000, density_kgm3, poissonRatio };
    const tip = (stress_Pa: number) => tipSpeed(0.2, speedAtStrength(1000, stress_Pa, allowed_Pa));
    expect(Math.abs(tip(maxSolidDiscStress(one)) - solid_ms)).toBeLessThan(0.51);
    const bored = maxAnnularDiscStress({ ...one, innerRadius_m: 1e-6 }).hoop_Pa;
    expect(Math.abs(tip(bored) - bored_ms)).toBeLessThan(0.51);
  });
});

/** Limits that the textbooks name: a pin hole doubles the stress, and the narrow ring is the disc with a wide hole. */
describe('limits', () => {
  const base = { outerRadius_m: 0.1, speed_rpm: 9000, density_kgm3: 1240, poissonRatio: 0.36 };
  const ringStress = thinRingStress(1240, tipSpeed(0.2, 9000));
  it('a hole of no size doubles the stress of spin and of rim load', () => {
    const pin = maxAnnularDiscStress({ ...base, innerRadius_m: 1e-9 }).hoop_Pa;
    expectRelative(pin, 2 * maxSolidDiscStress(base), 1e-12);
    const load = { traction_Pa: 1e6, outerRadius_m: 0.1 };
    const solid = rimLoadStress({ ...load, innerRadius_m: 0 }, 0).hoop_Pa;
    expect(solid).toBe(1e6);
    expectRelative(rimLoadStress({ ...load, innerRadius_m: 1e-9 }, 1e-9).hoop_Pa, 2 * solid, 1e-12);
  });
  it('a hole nearly as wide as the disc gives the thin ring', () => {
    const narrow = { ...base, innerRadius_m: 0.1 * (1 - 1e-9) };
    expectRelative(maxAnnularDiscStress(narrow).hoop_Pa, ringStress, 1e-8);
    expectRelative(discGrowth(narrow, 3e9), thinRingGrowth(ringStress, 0.1, 3e9), 1e-8);
  });
  it('the thin ring is what half a ring needs: pull of half the ring over its two cut faces', () => {
    // mass of a half ring rho A pi r, centre of mass at 2 r/pi: F = rho A pi r * 2 r/pi * w^2 = 2 A s
    const w = angularSpeed(9000);
    expectRelative((1240 * Math.PI * 0.1 * ((2 * 0.1) / Math.PI) * w ** 2) / 2, ringStress, 1e-12);
  });
});

/**
 * Source: Lingaiah, Machine Design Data Handbook, 2nd ed. 2001, thin solid disc that spins under a pressure p outside:
 * s_r = -p + (3 + nu)/8 rho w^2 (b^2 - r^2), u(b) = b/E (1 - nu) [-p + rho w^2 b^2/4] (as printed in an extract on the web,
 * where the bracket of u is garbled; here from s_h and s_r at the rim). With p = -q it is the loaded rim.
 */
describe('a solid disc with a loaded rim against a handbook', () => {
  const disc = { outerRadius_m: 0.12, speed_rpm: 7000, density_kgm3: 1270, poissonRatio: 0.38 };
  const q = 8e5;
  const force = 1270 * ((7000 * 2 * Math.PI) / 60) ** 2;
  it.each([0, 0.03, 0.09, 0.12])('radial stress at %f m', (r) => {
    const printed = q + (force * (3 + 0.38) * (0.12 ** 2 - r ** 2)) / 8;
    const load = rimLoadStress({ traction_Pa: q, outerRadius_m: 0.12, innerRadius_m: 0 }, r);
    expectRelative(solidDiscStress(disc, r).radial_Pa + load.radial_Pa, printed, 1e-12);
  });
});

/** The disc's equilibrium with Hooke's law, integrated step by step: no closed formula in it. */
describe('discs against their equilibrium, solved step by step', () => {
  const E = 2e9;
  const spin = {
    outerRadius_m: 0.11,
    innerRadius_m: 0.02,
    speed_rpm: 8000,
    density_kgm3: 1270,
    poissonRatio: 0.38,
  };
  const radii = { inner: 0.02, outer: 0.11, nu: 0.38, E };
  const w = (8000 * 2 * Math.PI) / 60;

  it('spin alone', () => {
    const solved = solveDisc({ ...radii, massForce: 1270 * w ** 2 });
    expectRelative(maxAnnularDiscStress(spin).hoop_Pa, solved.boreHoop, 1e-9);
    expectRelative(discGrowth(spin, E), solved.rimGrowth, 1e-9);
  });
  it('load on the rim', () => {
    const rim = { traction_Pa: 7e5, outerRadius_m: 0.11, innerRadius_m: 0.02 };
    const solved = solveDisc({ ...radii, rimTraction: 7e5 });
    expectRelative(rimLoadStress(rim, 0.02).hoop_Pa, solved.boreHoop, 1e-9);
    expectRelative(rimLoadStress(rim, 0.11).hoop_Pa, solved.rimHoop, 1e-9);
    expectRelative(rimLoadGrowth(rim, 0.38, E), solved.rimGrowth, 1e-9);
  });
  it('spin and blades together are their sum', () => {
    const pull_N = bladePull(0.012, 0.11, 8000);
    const q = rimTraction({ blades: 9, pull_N, outerRadius_m: 0.11, thickness_m: 0.005 });
    // the same pull by hand: 9 blades x 0.012 kg x 0.11 m x w^2, over 2 pi 0.11 m x 5 mm
    expectRelative(q, (9 * 0.012 * w ** 2) / (2 * Math.PI * 0.005), 1e-12);
    const solved = solveDisc({ ...radii, massForce: 1270 * w ** 2, rimTraction: q });
    const rim = { traction_Pa: q, outerRadius_m: 0.11, innerRadius_m: 0.02 };
    const sum = maxAnnularDiscStress(spin).hoop_Pa + rimLoadStress(rim, 0.02).hoop_Pa;
    expectRelative(sum, solved.boreHoop, 1e-9);
  });
  it.each([0.04, 0.066, 0.09, 0.11])('the same pull on a circle of %f m', (loadRadius) => {
    const q = 7e5;
    const solved = solveDisc({ ...radii, ringLoad: { radius: loadRadius, perRimArea: q } });
    const atRim = rimLoadStress({ traction_Pa: q, outerRadius_m: 0.11, innerRadius_m: 0.02 }, 0.02).hoop_Pa;
    expectRelative(innerLoadFactor(loadRadius, 0.11, 0.38) * atRim, solved.boreHoop, 1e-9);
    // and the rim itself grows no more than with the pull on it
    const atRimGrowth = rimLoadGrowth({ traction_Pa: q, outerRadius_m: 0.11, innerRadius_m: 0.02 }, 0.38, E);
    expect(solved.rimGrowth).toBeLessThanOrEqual(atRimGrowth * (1 + 1e-9));
  });
  it('a disc without a hole feels a pull inside its rim by the same factor', () => {
    const pin = { ...radii, inner: 1e-5 };
    const solved = solveDisc({ ...pin, ringLoad: { radius: 0.06, perRimArea: 7e5 } });
    // twice the centre's stress stands at the edge of a pin hole
    expectRelative(2 * innerLoadFactor(0.06, 0.11, 0.38) * 7e5, solved.boreHoop, 1e-6);
  });
});

/** The bench's bladed wheel, 200 mm, bore 8 mm, 6 mm of PETG, with 8 blades of 10 g at 70 mm, against the same solution. */
describe('a bladed wheel of the bench against its equilibrium', () => {
  it.each([2000, 9000])('at %d rpm', (maxSpeed) => {
    const result = rotorResult(rotorDesign({ ...BLADED, maxSpeed }), NOTHING_KNOWN)!;
    const w = (maxSpeed * 2 * Math.PI) / 60;
    const wheel = { inner: 0.004, outer: 0.1, nu: 0.38, E: 2e9, massForce: 1270 * w ** 2 };
    const perRimArea = (8 * 0.01 * 0.07 * w ** 2) / (2 * Math.PI * 0.1 * 0.006);
    expectRelative(
      result.stress_Pa,
      solveDisc({ ...wheel, ringLoad: { radius: 0.07, perRimArea } }).boreHoop,
      1e-9,
    );
    expectRelative(result.growth_m, solveDisc({ ...wheel, rimTraction: perRimArea }).rimGrowth, 1e-9);
    expectRelative(result.rootStress_Pa!, (0.01 * 0.07 * w ** 2) / 120e-6, 1e-12);
    const inertia = (Math.PI / 2) * 1270 * 0.006 * (0.1 ** 4 - 0.004 ** 4) + 8 * 0.01 * 0.07 ** 2;
    expectRelative(result.energy_J!, (inertia * w ** 2) / 2, 1e-12);
    expectRelative(result.safetyFactor, 40e6 / result.stress_Pa, 1e-12);
  });
});

/** By hand: 10 g at 80 mm and 6000 rpm (w = 628.319 rad/s): 0.01 x 0.08 x 394784 = 315.827 N; over 60 mm2 5.2638 MPa. */
describe('blades by hand', () => {
  it('pull and root stress', () => {
    expect(bladePull(0.01, 0.08, 6000)).toBeCloseTo(315.827, 3);
    expect(bladeRootStress(315.827, 60e-6) / 1e6).toBeCloseTo(5.2638, 4);
  });
  it('seven blades at 6000 rpm pass 700 times in a second', () => {
    expect(bladePassFrequency(7, 6000)).toBe(700);
  });
});

/** A disc is rings: energy summed over 20 000 of them, each of mass 2 pi r dr t rho and speed w r. */
describe('energy against a sum over rings', () => {
  it.each([0, 0.03])('hole of radius %f m', (a) => {
    const b = 0.1;
    const w = (9000 * 2 * Math.PI) / 60;
    const n = 20_000;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const r = a + ((i + 0.5) * (b - a)) / n;
      sum += ((2 * Math.PI * r * ((b - a) / n) * 0.006 * 1240) / 2) * (w * r) ** 2;
    }
    const inertia = discInertia({
      outerRadius_m: b,
      innerRadius_m: a,
      thickness_m: 0.006,
      density_kgm3: 1240,
    });
    expectRelative(spinEnergy(inertia, 9000), sum, 1e-8);
  });
});

/**
 * Spans of handbooks and papers (see each row's source): a strength at the low end of its span or below, 4 to 6 for
 * prints and 4 for wood (common practice), a modulus, density and Poisson's ratio that such a material can have.
 */
describe('rotor materials against published spans', () => {
  const SPANS = {
    print: { density: [1000, 1450], E: [1.5e9, 6e9], strength: [5e6, 65e6] },
    wood: { density: [600, 850], E: [2e9, 12e9], strength: [8e6, 50e6] },
    metal: { density: [2650, 7900], E: [65e9, 215e9], strength: [200e6, 300e6] },
  } as const;
  it.each(ROTOR_MATERIALS.map((row) => [row.id, row] as const))('%s', (_id, row) => {
    const span = SPANS[row.kind];
    const within = (value: number, [low, high]: readonly [number, number]) => {
      expect(value).toBeGreaterThanOrEqual(low);
      expect(value).toBeLessThanOrEqual(high);
    };
    within(row.density_kgm3, span.density);
    within(row.youngsModulus_Pa, span.E);
    within(row.strength_Pa, span.strength);
    within(row.poissonRatio, [0.25, 0.4]);
    if (row.kind === 'print') {
      within(row.minimumFactor, [4, 6]);
      within(row.softening_K!, [273.15 + 50, 273.15 + 110]);
    } else expect(row.softening_K).toBeNull();
  });
  it('every print is weaker across its layers than within them', () => {
    for (const name of ['pla', 'petg', 'abs', 'glass-nylon']) {
      const within = rotorMaterial(`${name}-in-plane`)!;
      const across = rotorMaterial(`${name}-across-layers`)!;
      expect(across.strength_Pa / within.strength_Pa).toBeLessThanOrEqual(0.7);
      expect(across.minimumFactor).toBeGreaterThan(within.minimumFactor);
    }
  });
  it('6061-T6 as two suppliers print it', () => {
    expect(rotorMaterial('aluminium-6061-t6')).toMatchObject({
      density_kgm3: 2700,
      youngsModulus_Pa: 68.9e9,
      poissonRatio: 0.33,
      strength_Pa: 276e6,
    });
  });
  it('wood by practice has a factor of 4, and no id stands twice', () => {
    expect(MINIMUM_FACTORS.wood.factor).toBe(4);
    expect(new Set(ROTOR_MATERIALS.map(({ id }) => id)).size).toBe(ROTOR_MATERIALS.length);
  });
});
