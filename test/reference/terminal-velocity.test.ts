import { describe, expect, it } from 'vitest';
import { DRAG_LAWS, terminalVelocity, terminalVelocityBy } from '../../core/conveying/terminal-velocity.ts';
import data from './data/08_terminal_velocity.json';

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
  it('has cases to check', () => expect(cases.length).toBe(30));

  it.each(cases)('is that of the file by each named law: $particle', ({ particle, laws }) => {
    expect(terminalVelocityBy('cheng', particle) / laws.Cheng_2009 - 1).toBeCloseTo(0, 9);
    expect(terminalVelocityBy('haider-levenspiel', particle) / laws.Haider_Levenspiel_1989 - 1).toBeCloseTo(
      0,
      9,
    );
    expect(terminalVelocityBy('clift-gauvin', particle) / laws.Clift_Gauvin_1970 - 1).toBeCloseTo(0, 9);
  });

  it.each(cases)('is within 5 % of the file’s own law, which is a fourth: $particle', ({ particle, out }) => {
    expect(Math.abs(terminalVelocity(particle) / out.terminal_velocity_m_s - 1)).toBeLessThan(0.05);
  });

  it('is that of Stokes for fine dust', () => {
    for (const { particle, out } of cases.filter((c) => c.out.reynolds < 1e-3)) {
      expect(Math.abs(terminalVelocity(particle) / out.stokes_velocity_m_s - 1)).toBeLessThan(1e-3);
    }
  });

  it('balances weight against drag', () => {
    for (const { particle: p } of cases) {
      const v = terminalVelocity(p);
      const Re = (p.density_kgm3 * v * p.particleDiameter_m) / p.viscosity_Pas;
      const drag = (DRAG_LAWS.cheng.drag(Re) * p.density_kgm3 * v * v) / 2 / 4;
      const weight = ((p.particleDensity_kgm3 - p.density_kgm3) * 9.80665 * p.particleDiameter_m) / 6;
      expect(drag / weight - 1).toBeCloseTo(0, 10);
    }
  });
});
