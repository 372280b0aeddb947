import { describe, expect, it } from 'vitest';
import { DRAG_LAWS, terminalVelocity, terminalVelocityBy } from '../../core/conveying/terminal-velocity.ts';
import data from './data/08_terminal_velocity.json';
import { against } from './ledger.ts';

// 08_terminal_velocity.json: public drag laws solved by an open library and again by a second solver; tolerance stated
// there: same law 1e-6, other laws about 5 %.
const cases = data.cases.map(({ in: given, out }) => ({
  particle: {
    particleDiameter_m: given.particle_diameter_m,
    particleDensity_kgm3: given.particle_density_kg_m3,
    density_kgm3: given.air_density_kg_m3,
    viscosity_Pas: given.dynamic_viscosity_Pa_s,
  },
  out,
  laws: out.terminal_velocity_other_drag_laws_m_s,
}));

describe('terminal velocity of a sphere', () => {
  const namedLaws = against({
    relation: 'terminalVelocityBy',
    source: 'data 08: laws of Cheng, Haider and Levenspiel, Clift and Gauvin, each by another solver',
    basis: 'independent-program',
    kind: 'value',
  });
  const fourthLaw = against({
    relation: 'terminalVelocity',
    source: 'data 08: a fourth drag law',
    basis: 'independent-program',
    kind: 'value',
  });
  const stokes = against({
    relation: 'terminalVelocity',
    source: 'data 08: Stokes below a Reynolds number of 0.001',
    basis: 'independent-program',
    kind: 'limit',
  });
  const balance = against({
    relation: 'terminalVelocity',
    source: 'weight against drag, by the law of Cheng',
    basis: 'hand-calculation',
    kind: 'second-route',
  });

  it('has cases to check', () => expect(cases.length).toBe(30));

  it.each(cases)('is that of the file by each named law: $particle', ({ particle, laws }) => {
    const { Cheng_2009: cheng, Haider_Levenspiel_1989: haider, Clift_Gauvin_1970: clift } = laws;
    namedLaws.within(terminalVelocityBy('cheng', particle), cheng, 5e-10);
    namedLaws.within(terminalVelocityBy('haider-levenspiel', particle), haider, 5e-10);
    namedLaws.within(terminalVelocityBy('clift-gauvin', particle), clift, 5e-10);
  });

  it.each(cases)('is within 5 % of the file’s own law, which is a fourth: $particle', ({ particle, out }) => {
    fourthLaw.within(terminalVelocity(particle), out.terminal_velocity_m_s, 0.05);
  });

  it('is that of Stokes for fine dust', () => {
    for (const { particle, out } of cases.filter((c) => c.out.reynolds < 1e-3)) {
      stokes.within(terminalVelocity(particle), out.stokes_velocity_m_s, 1e-3);
    }
  });

  it('balances weight against drag', () => {
    for (const { particle: p } of cases) {
      const v = terminalVelocity(p);
      const Re = (p.density_kgm3 * v * p.particleDiameter_m) / p.viscosity_Pas;
      const drag = (DRAG_LAWS.cheng.drag(Re) * p.density_kgm3 * v * v) / 2 / 4;
      const weight = ((p.particleDensity_kgm3 - p.density_kgm3) * 9.80665 * p.particleDiameter_m) / 6;
      balance.within(drag, weight, 5e-11);
    }
  });
});
