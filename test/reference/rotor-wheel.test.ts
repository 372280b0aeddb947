import { describe, it } from 'vitest';
import { rotorResult } from '../../core/fan-bench/rotor-of.ts';
import { bladePull, bladeRootStress } from '../../core/fan/rotor/blade-pull.ts';
import { discInertia, spinEnergy } from '../../core/fan/rotor/energy.ts';
import { innerLoadFactor, rimLoadGrowth, rimLoadStress, rimTraction } from '../../core/fan/rotor/rim-load.ts';
import { discGrowth, maxAnnularDiscStress } from '../../core/fan/rotor/spinning-disc.ts';
import { bladePassFrequency } from '../../core/fan/rotor/turning.ts';
import { BLADED, NOTHING_KNOWN, rotorDesign } from '../core/fan-bench/rotors.ts';
import { solveDisc } from './disc-equilibrium.ts';
import { against } from './ledger.ts';

/** The disc's equilibrium with Hooke's law, integrated step by step: no closed formula in it. */
describe('discs against their equilibrium, solved step by step', () => {
  const spun = against({
    relation: ['maxAnnularDiscStress', 'discGrowth'],
    source: "equilibrium of a spinning disc with Hooke's law, integrated in steps",
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const pulled = against({
    relation: ['rimLoadStress', 'rimLoadGrowth'],
    source: "equilibrium of a disc pulled at its rim with Hooke's law, integrated in steps",
    basis: 'hand-calculation',
    kind: 'value',
  });
  const spread = against({
    relation: ['bladePull', 'rimTraction'],
    source: 'by hand: nine blades of 12 g at 110 mm over the rim of a disc of 5 mm',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const together = against({
    relation: ['maxAnnularDiscStress', 'rimLoadStress'],
    source: 'equilibrium of a spinning disc with blades at its rim, integrated in steps',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const inner = against({
    relation: 'innerLoadFactor',
    source: 'equilibrium of a disc pulled on a circle inside, integrated in steps',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const innerSolid = against({
    relation: 'innerLoadFactor',
    source: 'equilibrium of a disc with a pin hole pulled on a circle inside, integrated in steps',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const lessGrowth = against({
    relation: 'rimLoadGrowth',
    source: 'equilibrium of a disc pulled on a circle inside: the rim grows no more',
    basis: 'hand-calculation',
    kind: 'limit',
  });
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
    spun.within(maxAnnularDiscStress(spin).hoop_Pa, solved.boreHoop, 1e-9);
    spun.within(discGrowth(spin, E), solved.rimGrowth, 1e-9);
  });
  it('load on the rim', () => {
    const rim = { traction_Pa: 7e5, outerRadius_m: 0.11, innerRadius_m: 0.02 };
    const solved = solveDisc({ ...radii, rimTraction: 7e5 });
    pulled.within(rimLoadStress(rim, 0.02).hoop_Pa, solved.boreHoop, 1e-9);
    pulled.within(rimLoadStress(rim, 0.11).hoop_Pa, solved.rimHoop, 1e-9);
    pulled.within(rimLoadGrowth(rim, 0.38, E), solved.rimGrowth, 1e-9);
  });
  it('spin and blades together are their sum', () => {
    const pull_N = bladePull(0.012, 0.11, 8000);
    const q = rimTraction({ blades: 9, pull_N, outerRadius_m: 0.11, thickness_m: 0.005 });
    // the same pull by hand: 9 blades x 0.012 kg x 0.11 m x w^2, over 2 pi 0.11 m x 5 mm
    spread.within(q, (9 * 0.012 * w ** 2) / (2 * Math.PI * 0.005), 1e-12);
    const solved = solveDisc({ ...radii, massForce: 1270 * w ** 2, rimTraction: q });
    const rim = { traction_Pa: q, outerRadius_m: 0.11, innerRadius_m: 0.02 };
    const sum = maxAnnularDiscStress(spin).hoop_Pa + rimLoadStress(rim, 0.02).hoop_Pa;
    together.within(sum, solved.boreHoop, 1e-9);
  });
  it.each([0.04, 0.066, 0.09, 0.11])('the same pull on a circle of %f m', (loadRadius) => {
    const q = 7e5;
    const solved = solveDisc({ ...radii, ringLoad: { radius: loadRadius, perRimArea: q } });
    const atRim = rimLoadStress({ traction_Pa: q, outerRadius_m: 0.11, innerRadius_m: 0.02 }, 0.02).hoop_Pa;
    inner.within(innerLoadFactor(loadRadius, 0.11, 0.38) * atRim, solved.boreHoop, 1e-9);
    // and the rim itself grows no more than with the pull on it
    const atRimGrowth = rimLoadGrowth({ traction_Pa: q, outerRadius_m: 0.11, innerRadius_m: 0.02 }, 0.38, E);
    lessGrowth.holds(solved.rimGrowth <= atRimGrowth * (1 + 1e-9), 'no more than with the pull on the rim');
  });
  it('a disc without a hole feels a pull inside its rim by the same factor', () => {
    const pin = { ...radii, inner: 1e-5 };
    const solved = solveDisc({ ...pin, ringLoad: { radius: 0.06, perRimArea: 7e5 } });
    // twice the centre's stress stands at the edge of a pin hole
    innerSolid.within(2 * innerLoadFactor(0.06, 0.11, 0.38) * 7e5, solved.boreHoop, 1e-6);
  });
});

/** The bench's bladed wheel, 200 mm, bore 8 mm, 6 mm of PETG, with 8 blades of 10 g at 70 mm, against the same solution. */
describe('a bladed wheel of the bench against its equilibrium', () => {
  const stress = against({
    relation: ['core/fan-bench/rotor-of.ts#rotorResult', 'innerLoadFactor'],
    source: 'equilibrium of the spinning wheel with its blades on their circle, integrated in steps',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const growth = against({
    relation: 'core/fan-bench/rotor-of.ts#rotorResult',
    source: 'equilibrium of the spinning wheel with its blades at the rim, integrated in steps',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const byHand = against({
    relation: 'core/fan-bench/rotor-of.ts#rotorResult',
    source: 'by hand: stress at the root of a blade, energy of disc and blades, factor of safety',
    basis: 'hand-calculation',
    kind: 'value',
  });
  it.each([2000, 9000])('at %d rpm', (maxSpeed) => {
    const result = rotorResult(rotorDesign({ ...BLADED, maxSpeed }), NOTHING_KNOWN)!;
    const w = (maxSpeed * 2 * Math.PI) / 60;
    const wheel = { inner: 0.004, outer: 0.1, nu: 0.38, E: 2e9, massForce: 1270 * w ** 2 };
    const perRimArea = (8 * 0.01 * 0.07 * w ** 2) / (2 * Math.PI * 0.1 * 0.006);
    stress.within(
      result.stress_Pa,
      solveDisc({ ...wheel, ringLoad: { radius: 0.07, perRimArea } }).boreHoop,
      1e-9,
    );
    growth.within(result.growth_m, solveDisc({ ...wheel, rimTraction: perRimArea }).rimGrowth, 1e-9);
    byHand.within(result.rootStress_Pa!, (0.01 * 0.07 * w ** 2) / 120e-6, 1e-12);
    const inertia = (Math.PI / 2) * 1270 * 0.006 * (0.1 ** 4 - 0.004 ** 4) + 8 * 0.01 * 0.07 ** 2;
    byHand.within(result.energy_J!, (inertia * w ** 2) / 2, 1e-12);
    byHand.within(result.safetyFactor, 40e6 / result.stress_Pa, 1e-12);
  });
});

/** By hand: 10 g at 80 mm and 6000 rpm (w = 628.319 rad/s): 0.01 x 0.08 x 394784 = 315.827 N; over 60 mm2 5.2638 MPa. */
describe('blades by hand', () => {
  const pull = against({
    relation: 'bladePull',
    source: 'by hand: 10 g at 80 mm and 6000 rpm, 315.827 N',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const root = against({
    relation: 'bladeRootStress',
    source: 'by hand: 315.827 N over 60 mm2, 5.2638 MPa',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const tone = against({
    relation: 'bladePassFrequency',
    source: 'by hand: seven blades at 100 turns in a second',
    basis: 'hand-calculation',
    kind: 'value',
  });
  it('pull and root stress', () => {
    pull.withinAbsolute(bladePull(0.01, 0.08, 6000), 315.827, 5e-4, { unit: 'N' });
    root.withinAbsolute(bladeRootStress(315.827, 60e-6) / 1e6, 5.2638, 5e-5, { unit: 'MPa' });
  });
  it('seven blades at 6000 rpm pass 700 times in a second', () => {
    tone.within(bladePassFrequency(7, 6000), 700, 0);
  });
});

/** A disc is rings: energy summed over 20 000 of them, each of mass 2 pi r dr t rho and speed w r. */
describe('energy against a sum over rings', () => {
  const rings = against({
    relation: ['discInertia', 'spinEnergy'],
    source: 'energy of 20 000 rings summed, each with its mass and speed',
    basis: 'hand-calculation',
    kind: 'value',
  });
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
    rings.within(spinEnergy(inertia, 9000), sum, 1e-8);
  });
});
