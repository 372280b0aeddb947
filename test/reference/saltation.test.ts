import { describe, expect, it } from 'vitest';
import { SALTATION_MODELS, rizkSaltation } from '../../core/conveying/saltation.ts';
import type { SaltationModel } from '../../core/conveying/saltation.ts';
import data from './data/06_saltation.json';

// 06_saltation.json: correlations of an open library, solved a second way there; tolerance 1e-9 for the same formula.
const METHODS: Record<string, SaltationModel> = {
  Rizk: 'rizk',
  Matsumoto_1977: 'matsumoto',
  Schade: 'schade',
  Weber_1981: 'weber',
};
const cases = data.cases.flatMap(({ in: given, out }) => {
  const model = METHODS[given.method];
  return model === undefined ? [] : [{ model, given, wanted_ms: out.saltation_velocity_m_s }];
});

describe('saltation velocity', () => {
  it('has cases of each correlation to check', () => {
    const found = Object.keys(SALTATION_MODELS).map((model) => cases.filter((c) => c.model === model).length);
    expect(Math.min(...found)).toBeGreaterThanOrEqual(5);
  });

  it.each(cases)('$model gives $wanted_ms m/s', ({ model, given, wanted_ms }) => {
    const velocity = SALTATION_MODELS[model].velocity({
      solids_kgs: given.solids_mass_flow_kg_s,
      density_kgm3: given.gas_density_kg_m3,
      diameter_m: given.diameter_m,
      particleDiameter_m: given.particle_diameter_m!,
      particleDensity_kgm3: given.particle_density_kg_m3 ?? 1000, // not used by the correlations that lack it
      terminalVelocity_ms: given.terminal_velocity_m_s ?? 1,
    });
    expect(Math.abs(velocity / wanted_ms - 1)).toBeLessThan(1e-9);
  });

  it('gives the 9.88 m/s of Rhodes, ch. 8, and its design velocity of 14.82 m/s', () => {
    const sand = { solids_kgs: 0.25, density_kgm3: 1.2, diameter_m: 0.078, particleDiameter_m: 1e-4 };
    expect(rizkSaltation(sand)).toBeCloseTo(9.8833092829357, 9);
    expect(rizkSaltation(sand)).toBeCloseTo(9.88, 2);
    expect(1.5 * rizkSaltation(sand)).toBeCloseTo(14.82, 1);
  });
});
