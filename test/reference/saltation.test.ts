import { describe, expect, it } from 'vitest';
import {
  SALTATION_MODELS,
  matsumotoSaltation,
  rizkSaltation,
  schadeSaltation,
  weberSaltation,
} from '../../core/conveying/saltation.ts';
import type { SaltationModel } from '../../core/conveying/saltation.ts';
import data from './data/06_saltation.json';
import { against } from './ledger.ts';

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
  const MODEL_CHECKS = {
    rizk: against({
      relation: 'rizkSaltation',
      source: 'data 06: correlation of Rizk',
      basis: 'independent-program',
      kind: 'value',
    }),
    matsumoto: against({
      relation: 'matsumotoSaltation',
      source: 'data 06: correlation of Matsumoto, 1977',
      basis: 'independent-program',
      kind: 'value',
    }),
    schade: against({
      relation: 'schadeSaltation',
      source: 'data 06: correlation of Schade',
      basis: 'independent-program',
      kind: 'value',
    }),
    weber: against({
      relation: 'weberSaltation',
      source: 'data 06: correlation of Weber, 1981',
      basis: 'independent-program',
      kind: 'value',
    }),
  };
  const anotherProgram = against({
    relation: 'rizkSaltation',
    source: 'the open library of data 06 on the example of Rhodes, ch. 8, with our g: 9.8833092829357 m/s',
    basis: 'independent-program',
    kind: 'value',
  });
  const rhodes = against({
    relation: 'rizkSaltation',
    source: 'Rhodes, ch. 8, as quoted by that library: 9.88 m/s',
    basis: 'published',
    kind: 'value',
  });
  const design = against({
    relation: 'rizkSaltation',
    source: 'Rhodes, ch. 8, as quoted by that library: 14.82 m/s at one and a half times saltation',
    basis: 'published',
    kind: 'value',
  });

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
    MODEL_CHECKS[model].within(velocity, wanted_ms, 1e-9);
  });

  it('gives the 9.88 m/s of Rhodes, ch. 8, and its design velocity of 14.82 m/s', () => {
    const sand = { solids_kgs: 0.25, density_kgm3: 1.2, diameter_m: 0.078, particleDiameter_m: 1e-4 };
    anotherProgram.withinAbsolute(rizkSaltation(sand), 9.8833092829357, 5e-10, { unit: 'm/s' });
    rhodes.withinAbsolute(rizkSaltation(sand), 9.88, 0.005, { unit: 'm/s' });
    design.withinAbsolute(1.5 * rizkSaltation(sand), 14.82, 0.05, { unit: 'm/s' });
  });
});

// The printed equations with the answer put back in: both sides must agree. Loading = Mp/(rho U A), Fr = U/sqrt(g D).
describe('each answer in its own equation', () => {
  const residual = against({
    relation: ['matsumotoSaltation', 'schadeSaltation', 'weberSaltation'],
    source: 'both sides of its own printed equation, the answer put back in',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const dust = {
    ...{ solids_kgs: 0.02, density_kgm3: 1.2, diameter_m: 0.1, particleDensity_kgm3: 700 },
    ...{ particleDiameter_m: 5e-4, terminalVelocity_ms: 2 },
  };
  const coarse = { ...dust, particleDiameter_m: 3e-3, terminalVelocity_ms: 7 };
  const sides = (U: number) => ({
    loading: 0.02 / (1.2 * U * Math.PI * 0.05 ** 2),
    Fr: U / Math.sqrt(9.80665 * 0.1),
  });

  it('Matsumoto, fine and coarse grains', () => {
    const fine = sides(matsumotoSaltation(dust));
    residual.withinAbsolute(fine.loading, 5560 * 0.005 ** 1.43 * (fine.Fr / 10) ** 4, 5e-10);
    const { loading, Fr } = sides(matsumotoSaltation(coarse));
    const Frp = 7 / Math.sqrt(9.80665 * 3e-3);
    const right = 0.373 * (700 / 1.2) ** 1.06 * (Frp / 10) ** -3.7 * (Fr / 10) ** 3.61;
    residual.withinAbsolute(loading, right, 5e-10);
  });

  it('Schade', () => {
    const { loading, Fr } = sides(schadeSaltation(dust));
    residual.withinAbsolute(Fr, loading ** 0.11 * 200 ** 0.025 * (700 / 1.2) ** 0.34, 5e-10);
  });

  it('Weber, below and above a terminal velocity of 3 m/s', () => {
    const slow = sides(weberSaltation(dust));
    residual.withinAbsolute(slow.Fr, (7 + (8 / 3) * 2) * slow.loading ** 0.25 * 0.005 ** 0.1, 5e-10);
    const fast = sides(weberSaltation(coarse));
    residual.withinAbsolute(fast.Fr, 15 * fast.loading ** 0.25 * 0.03 ** 0.1, 5e-10);
  });
});
