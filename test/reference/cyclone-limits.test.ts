import { describe, it } from 'vitest';
import { CYCLONE_PROPORTIONS } from '../../core/catalogue/cyclones.ts';
import type { CycloneProportionsId } from '../../core/catalogue/cyclones.ts';
import { reEntrainmentRatio, saltationVelocityKalenZenz } from '../../core/separator/limits.ts';
import { findPoorShape, standardCyclone } from '../../core/separator/proportions.ts';
import { against } from './ledger.ts';

const FOOT_M = 0.3048;
const POUND_KG = 0.45359237;

describe('re-entrainment velocity', () => {
  const inFeet = against({
    relation: ['saltationVelocityKalenZenz', 'reEntrainmentRatio'],
    source: 'Kalen and Zenz 1974, their formula in feet, pounds and seconds',
    basis: 'from-memory',
    kind: 'second-route',
  });

  it.each([
    { diameter_m: 0.2, flow_m3s: 0.075, density: 1.2, particleDensity: 1000 },
    { diameter_m: 0.6, flow_m3s: 0.5, density: 1.1, particleDensity: 700 },
    { diameter_m: 1, flow_m3s: 2.5, density: 1.01, particleDensity: 1600 },
  ])('is the same by the formula in feet: $diameter_m m', (given) => {
    const { diameter_m: D, flow_m3s, density: rho, particleDensity: rhoP } = given;
    const cyclone = standardCyclone(CYCLONE_PROPORTIONS.lapple, D);
    const [mu, g] = [1.81e-5, 9.80665];
    const perCubicFoot = FOOT_M ** 3 / POUND_KG;
    const muFt = (mu * FOOT_M) / POUND_KG;
    const w = Math.cbrt((4 * (g / FOOT_M) * muFt * rhoP * perCubicFoot) / (3 * (rho * perCubicFoot) ** 2));
    const shape = 0.25 ** 0.4 / Math.cbrt(0.75);
    // the inlet is a half by a quarter of the body
    const viFt = flow_m3s / (0.125 * D * D) / FOOT_M;
    const vsFt = 2.055 * w * shape * (D / FOOT_M) ** 0.067 * viFt ** (2 / 3);
    const flow = {
      flow_m3s,
      density_kgm3: rho,
      viscosity_Pas: mu,
      temperature_K: 293.15,
      particleDensity_kgm3: rhoP,
    };
    inFeet.within(saltationVelocityKalenZenz(cyclone, flow), vsFt * FOOT_M, 1e-10);
    inFeet.within(reEntrainmentRatio(cyclone, flow), viFt / vsFt, 1e-10);
  });
});

describe('poor shapes', () => {
  const standard = against({
    relation: 'findPoorShape',
    source: 'published shapes: all have a plain inlet but the two high-throughput ones, which need a scroll',
    basis: 'from-memory',
    kind: 'value',
  });
  const jet = against({
    relation: 'findPoorShape',
    source: 'an inlet jet along the wall meets the pipe where it is wider than the gap (D - De)/2, by hand',
    basis: 'hand-calculation',
    kind: 'limit',
  });
  const SCROLLS: readonly CycloneProportionsId[] = ['stairmand-high-throughput', 'swift-high-throughput'];

  it.each(Object.keys(CYCLONE_PROPORTIONS) as CycloneProportionsId[])('%s', (id) => {
    const found = findPoorShape(standardCyclone(CYCLONE_PROPORTIONS[id], 0.3)).length;
    standard.holds(found === (SCROLLS.includes(id) ? 1 : 0), 'those two alone are found');
  });

  it('start where the jet meets the pipe, and where the pipe ends above the inlet', () => {
    // Lapple, 1 m: pipe of 0.5 m, so a gap of 0.25 m, and an inlet 0.5 m high
    const cyclone = standardCyclone(CYCLONE_PROPORTIONS.lapple, 1);
    const found = (change: Partial<typeof cyclone>) => findPoorShape({ ...cyclone, ...change }).length;
    jet.holds(found({ inletWidth_m: 0.2525 }) === 1, 'a hundredth wider is found');
    jet.holds(found({ inletWidth_m: 0.2475 }) === 0, 'a hundredth narrower passes');
    jet.holds(found({ outletDepth_m: 0.495 }) === 1, 'so is a pipe a hundredth above the lower edge');
    jet.holds(found({ outletDepth_m: 0.505 }) === 0, 'a hundredth below it passes');
  });
});
