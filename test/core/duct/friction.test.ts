import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  colebrookFriction,
  frictionDropWithSlope,
  frictionFactor,
  frictionFactorWithSlope,
  frictionGroup,
} from '../../../core/duct/friction.ts';
import { turbulentGroup } from '../../../core/duct/colebrook.ts';
import { ImpossibleInput } from '../../../core/quantities/impossible-input.ts';

const SEED = 20240611;
const reynolds = fc.double({ min: Math.log(1e-3), max: Math.log(1e8), noNaN: true }).map(Math.exp);
const transition = fc.double({ min: 1900, max: 4100, noNaN: true });
const roughness = fc.double({ min: 0, max: 0.5, noNaN: true });

const group = (re: number, eD: number): readonly [number, number] => {
  const out = new Float64Array(2);
  frictionGroup(re, eD, out);
  return [out[0]!, out[1]!];
};

describe('friction over all regimes', () => {
  it('drop rises strictly with flow, for any roughness', () => {
    const step = fc.double({ min: 1e-9, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.oneof(reynolds, transition), step, roughness, (re, more, eD) => {
        const [low] = group(re, eD);
        const [high, slope] = group(re * (1 + more), eD);
        expect(high).toBeGreaterThan(low);
        expect(slope).toBeGreaterThan(0);
      }),
      { seed: SEED, numRuns: 3000 },
    );
  });

  it('has the slope that finite differences have', () => {
    fc.assert(
      fc.property(fc.oneof(reynolds, transition), roughness, (re, eD) => {
        const h = re * 1e-5;
        fc.pre(Math.abs(re - 2000) > 2 * h && Math.abs(re - 4000) > 2 * h);
        const numeric = (group(re + h, eD)[0] - group(re - h, eD)[0]) / (2 * h);
        expect(Math.abs(group(re, eD)[1] / numeric - 1)).toBeLessThan(1e-5);
        const out = new Float64Array(2);
        frictionFactorWithSlope(re, eD, out);
        const slope = (frictionFactor(re + h, eD) - frictionFactor(re - h, eD)) / (2 * h);
        // Where f levels off its slope is nothing beside f/Re, so the error is measured on that.
        expect(Math.abs(out[1]! - slope)).toBeLessThan(1e-5 * (out[0]! / re));
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  it('value and slope meet at Re 2000 and 4000', () => {
    for (const eD of [0, 1e-5, 1e-3, 0.05, 0.2]) {
      for (const edge of [2000, 4000]) {
        const below = group(edge * (1 - 1e-12), eD);
        const above = group(edge * (1 + 1e-12), eD);
        expect(Math.abs(below[0] / above[0] - 1)).toBeLessThan(1e-9);
        expect(Math.abs(below[1] / above[1] - 1)).toBeLessThan(1e-6);
      }
    }
  });

  it('is odd in the flow and finite through zero', () => {
    const run = { diameter_m: 0.1, length_m: 2, roughness_m: 1e-4, density_kgm3: 1.2, viscosity_Pas: 1.8e-5 };
    const forward = new Float64Array(2);
    const back = new Float64Array(2);
    for (const massFlow_kgs of [0, 1e-300, 1e-9, 0.002, 0.2]) {
      frictionDropWithSlope({ ...run, massFlow_kgs }, forward);
      frictionDropWithSlope({ ...run, massFlow_kgs: -massFlow_kgs }, back);
      expect(forward[0]! + back[0]!).toBe(0);
      expect(forward[1]).toBe(back[1]);
      expect(Number.isFinite(forward[0]) && forward[1]! > 0).toBe(true);
    }
    expect(forward[0]).toBeGreaterThan(0);
  });

  it('turbulent alone: the value that Colebrook-White has, with the slope of finite differences', () => {
    const turbulent = (re: number, eD: number): readonly [number, number] => {
      const out = new Float64Array(2);
      turbulentGroup(re, eD, out);
      return [out[0]!, out[1]!];
    };
    const rough = fc.double({ min: Math.log(4000), max: Math.log(1e8), noNaN: true }).map(Math.exp);
    fc.assert(
      fc.property(rough, roughness, (re, eD) => {
        const [value, slope] = turbulent(re, eD);
        expect(Math.abs(value / (colebrookFriction(re, eD) * re * re) - 1)).toBeLessThan(1e-12);
        const h = re * 1e-5;
        const numeric = (turbulent(re + h, eD)[0] - turbulent(re - h, eD)[0]) / (2 * h);
        expect(Math.abs(slope / numeric - 1)).toBeLessThan(1e-6);
      }),
      { seed: SEED },
    );
  });

  it('refuses what no flow can have', () => {
    expect(() => frictionFactor(0, 0)).toThrow(ImpossibleInput);
    expect(() => colebrookFriction(1e5, -1e-9)).toThrow(ImpossibleInput);
    expect(() => group(Number.NaN, 0)).toThrow(ImpossibleInput);
  });
});
