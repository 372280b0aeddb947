import { describe, expect, it } from 'vitest';
import { rotorMaterial } from '../../core/catalogue/rotor-materials.ts';
import { rimLoadStress } from '../../core/fan/rotor/rim-load.ts';
import {
  annularDiscStress,
  discGrowth,
  maxAnnularDiscStress,
  maxSolidDiscStress,
  solidDiscStress,
} from '../../core/fan/rotor/spinning-disc.ts';
import { speedAtStrength } from '../../core/fan/rotor/strength-speed.ts';
import { thinRingGrowth, thinRingStress } from '../../core/fan/rotor/thin-ring.ts';
import { angularSpeed, tipSpeed } from '../../core/fan/rotor/turning.ts';
import data from './data/12_rotating_disc.json' with { type: 'json' };
import { against } from './ledger.ts';

// Closed formulas of Roark 7th ed. sec 16.8 and Timoshenko and Goodier sec 32, confirmed by collocation to 1.5e-13.
describe('discs against an independent program', () => {
  const turning = against({
    relation: ['angularSpeed', 'tipSpeed'],
    source: 'data 12: angular and tip speeds of discs',
    basis: 'independent-program',
    kind: 'value',
  });
  const growth = against({
    relation: 'discGrowth',
    source: 'data 12: growth of discs by closed formulas',
    basis: 'independent-program',
    kind: 'value',
  });
  const solid = against({
    relation: ['solidDiscStress', 'maxSolidDiscStress'],
    source: 'data 12: stresses of solid discs by closed formulas',
    basis: 'independent-program',
    kind: 'value',
  });
  const annular = against({
    relation: ['annularDiscStress', 'maxAnnularDiscStress'],
    source: 'data 12: stresses of discs with a hole by closed formulas',
    basis: 'independent-program',
    kind: 'value',
  });

  it.each(data.cases.map((row, i) => [i, row.in.kind, row] as const))('case %i, %s', (_i, kind, row) => {
    const disc = {
      outerRadius_m: row.in.outer_radius_m,
      innerRadius_m: row.in.inner_radius_m,
      speed_rpm: row.in.speed_rpm,
      density_kgm3: row.in.density_kg_m3,
      poissonRatio: row.in.poisson_ratio,
    };
    const { out } = row;
    turning.within(angularSpeed(disc.speed_rpm), out.angular_speed_rad_s, 1e-9);
    turning.within(tipSpeed(2 * disc.outerRadius_m, disc.speed_rpm), out.tip_speed_m_s, 1e-9);
    growth.within(discGrowth(disc, row.in.youngs_modulus_Pa), out.outer_radius_growth_m, 1e-9);
    const at = (kind === 'solid' ? solidDiscStress : annularDiscStress)(disc, row.in.query_radius_m);
    const stress = kind === 'solid' ? solid : annular;
    stress.within(at.hoop_Pa, out.hoop_stress_at_query_Pa, 1e-9);
    stress.within(at.radial_Pa, out.radial_stress_at_query_Pa, 1e-9);
    if (kind === 'solid') {
      solid.within(maxSolidDiscStress(disc), out.max_hoop_stress_Pa, 1e-9);
      solid.within(solidDiscStress(disc, 0).radial_Pa, out.max_radial_stress_Pa, 1e-9);
    } else {
      const most = maxAnnularDiscStress(disc);
      annular.within(most.hoop_Pa, out.max_hoop_stress_Pa, 1e-9);
      annular.within(most.radial_Pa, out.max_radial_stress_Pa, 1e-9);
      annular.within(most.radialAt_m, out.radius_of_max_radial_stress_m, 1e-9);
    }
  });
  it('has both kinds', () => {
    expect(new Set(data.cases.map((row) => row.in.kind))).toEqual(new Set(['solid', 'annular']));
    expect(data.cases.length).toBeGreaterThanOrEqual(20);
  });
});

/** Worked by hand, figures of the handbook sheet: PLA 1240 kg/m3, nu 0.36, radius 75 mm, 12 000 rpm. */
describe('the worked wheel', () => {
  const stresses = against({
    relation: ['maxSolidDiscStress', 'maxAnnularDiscStress'],
    source: 'by hand: PLA, 150 mm at 12 000 rpm, 4.626 MPa, with a bore of 8 mm 9.257 MPa',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const tip = against({
    relation: 'tipSpeed',
    source: 'by hand: 150 mm at 12 000 rpm, 94.2 m/s',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const squareLaw = against({
    relation: 'speedAtStrength',
    source: 'by hand: four times the stress is reached at twice the speed',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const atStrength = against({
    relation: ['speedAtStrength', 'maxSolidDiscStress', 'maxAnnularDiscStress'],
    source: 'by hand: tip speeds of four materials at an allowed stress, solid and bored',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const disc = { outerRadius_m: 0.075, speed_rpm: 12000, density_kgm3: 1240, poissonRatio: 0.36 };
  it('solid 4.626 MPa, with a bore of 8 mm 9.257 MPa, tip 94.2 m/s', () => {
    const bored_Pa = maxAnnularDiscStress({ ...disc, innerRadius_m: 0.004 }).hoop_Pa;
    stresses.withinAbsolute(maxSolidDiscStress(disc) / 1e6, 4.626, 5e-4, { unit: 'MPa' });
    stresses.withinAbsolute(bored_Pa / 1e6, 9.257, 5e-4, { unit: 'MPa' });
    tip.withinAbsolute(tipSpeed(0.15, 12000), 94.2, 0.05, { unit: 'm/s' });
    squareLaw.within(speedAtStrength(12_000, 9e6, 36e6), 24_000, 1e-14);
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
    const tipAt = (stress_Pa: number) => tipSpeed(0.2, speedAtStrength(1000, stress_Pa, allowed_Pa));
    atStrength.withinAbsolute(tipAt(maxSolidDiscStress(one)), solid_ms, 0.51, { unit: 'm/s' });
    const bored = maxAnnularDiscStress({ ...one, innerRadius_m: 1e-6 }).hoop_Pa;
    atStrength.withinAbsolute(tipAt(bored), bored_ms, 0.51, { unit: 'm/s' });
  });
});

/** Limits that the textbooks name: a pin hole doubles the stress, and the narrow ring is the disc with a wide hole. */
describe('limits', () => {
  const pinHole = against({
    relation: ['maxAnnularDiscStress', 'rimLoadStress'],
    source: 'textbooks: a hole of no size doubles the stress',
    basis: 'from-memory',
    kind: 'limit',
  });
  const narrowRing = against({
    relation: ['maxAnnularDiscStress', 'thinRingStress', 'discGrowth', 'thinRingGrowth'],
    source: 'a disc whose hole leaves a billionth of its radius is the thin ring',
    basis: 'hand-calculation',
    kind: 'limit',
  });
  const halfRing = against({
    relation: 'thinRingStress',
    source: 'by hand: pull of half a ring over its two cut faces',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const stretched = against({
    relation: 'thinRingGrowth',
    source: "by hand: Hooke's law round the ring, the growth of its length over 2 pi",
    basis: 'hand-calculation',
    kind: 'value',
  });
  const base = { outerRadius_m: 0.1, speed_rpm: 9000, density_kgm3: 1240, poissonRatio: 0.36 };
  const ringStress = thinRingStress(1240, tipSpeed(0.2, 9000));
  it('a hole of no size doubles the stress of spin and of rim load', () => {
    const pin = maxAnnularDiscStress({ ...base, innerRadius_m: 1e-9 }).hoop_Pa;
    pinHole.within(pin, 2 * maxSolidDiscStress(base), 1e-12);
    const load = { traction_Pa: 1e6, outerRadius_m: 0.1 };
    const solid = rimLoadStress({ ...load, innerRadius_m: 0 }, 0).hoop_Pa;
    pinHole.within(solid, 1e6, 1e-12);
    pinHole.holds(solid === 1e6, 'a pulled disc without a hole is stressed as pulled');
    pinHole.within(rimLoadStress({ ...load, innerRadius_m: 1e-9 }, 1e-9).hoop_Pa, 2 * solid, 1e-12);
  });
  it('a hole nearly as wide as the disc gives the thin ring', () => {
    const narrow = { ...base, innerRadius_m: 0.1 * (1 - 1e-9) };
    narrowRing.within(maxAnnularDiscStress(narrow).hoop_Pa, ringStress, 1e-8);
    narrowRing.within(discGrowth(narrow, 3e9), thinRingGrowth(ringStress, 0.1, 3e9), 1e-8);
  });
  it('the thin ring is what half a ring needs: pull of half the ring over its two cut faces', () => {
    // mass of a half ring rho A pi r, centre of mass at 2 r/pi: F = rho A pi r * 2 r/pi * w^2 = 2 A s
    const w = angularSpeed(9000);
    halfRing.within(ringStress, (1240 * Math.PI * 0.1 * ((2 * 0.1) / Math.PI) * w ** 2) / 2, 1e-12);
    const longer_m = (2e7 / 3.5e9) * 2 * Math.PI * 0.1;
    stretched.within(thinRingGrowth(2e7, 0.1, 3.5e9), longer_m / (2 * Math.PI), 1e-14);
  });
});

/**
 * Lingaiah, Machine Design Data Handbook, 2nd ed. 2001, thin solid disc that spins under a pressure p outside:
 * s_r = -p + (3 + nu)/8 rho w^2 (b^2 - r^2), u(b) = b/E (1 - nu) [-p + rho w^2 b^2/4] (as printed in an extract on the web,
 * where the bracket of u is garbled; here from s_h and s_r at the rim). With p = -q it is the loaded rim.
 */
describe('a solid disc with a loaded rim against a handbook', () => {
  const handbook = against({
    relation: ['solidDiscStress', 'rimLoadStress'],
    source:
      'Lingaiah, Machine Design Data Handbook, 2001, radial stress of a disc under outer pressure, an extract on the web',
    basis: 'published',
    kind: 'value',
  });
  const disc = { outerRadius_m: 0.12, speed_rpm: 7000, density_kgm3: 1270, poissonRatio: 0.38 };
  const q = 8e5;
  const force = 1270 * ((7000 * 2 * Math.PI) / 60) ** 2;
  it.each([0, 0.03, 0.09, 0.12])('radial stress at %f m', (r) => {
    const printed = q + (force * (3 + 0.38) * (0.12 ** 2 - r ** 2)) / 8;
    const load = rimLoadStress({ traction_Pa: q, outerRadius_m: 0.12, innerRadius_m: 0 }, r);
    handbook.within(solidDiscStress(disc, r).radial_Pa + load.radial_Pa, printed, 1e-12);
  });
});
