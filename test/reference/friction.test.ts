import { describe, expect, it } from 'vitest';
import { colebrookFriction, frictionDrop, frictionFactor } from '../../core/duct/friction.ts';
import { darcyWeisbachDrop, velocityPressure } from '../../core/duct/straight.ts';
import factors from './data/01_friction_factor.json' with { type: 'json' };
import drops from './data/02_duct_pressure_drop.json' with { type: 'json' };
import { expectRelative } from './relative.ts';

// Source: exact Colebrook and 64/Re of a public library (01), tolerance stated there 1e-9.
describe('friction factor', () => {
  it.each(factors.cases)('$in', ({ in: given, out }) => {
    const { reynolds, relative_roughness: roughness } = given;
    if (out.regime === 'laminar')
      expectRelative(frictionFactor(reynolds, roughness), out.darcy_friction_factor, 1e-9);
    else expectRelative(colebrookFriction(reynolds, roughness), out.darcy_friction_factor, 1e-12);
    if (out.regime === 'turbulent') {
      expectRelative(frictionFactor(reynolds, roughness), out.darcy_friction_factor, 1e-12);
    }
  });

  it('leaves no residual in the Colebrook-White equation, from Re 2000 to 1e9 and up to 0.5 relative roughness', () => {
    for (let reynolds = 2000; reynolds < 1e9; reynolds *= 1.3) {
      for (const roughness of [0, 1e-7, 1e-5, 1e-3, 0.05, 0.5]) {
        const x = 1 / Math.sqrt(colebrookFriction(reynolds, roughness));
        expect(Math.abs(x + 2 * Math.log10(roughness / 3.7 + (2.51 * x) / reynolds))).toBeLessThan(1e-12);
      }
    }
  });

  // Loeffler's fit of the same law for galvanised duct (ACGIH table 5-5, from memory): Hf = 0.0307 V^0.533 / Q^0.612
  // velocity pressures for each foot; 400 cfm in 4 in. Agreement of 2 % is what the fit claims.
  it('agrees with the exhaust trade fit for galvanised duct within 2 %', () => {
    const velocity_fpm = 400 / (Math.PI / 36);
    const loeffler = (0.0307 * velocity_fpm ** 0.533) / 400 ** 0.612 / 3; // f = Hf D, D = 1/3 ft
    const reynolds = (velocity_fpm * 0.00508 * 0.1016) / 1.506e-5;
    expectRelative(frictionFactor(reynolds, 0.0005 * 3), loeffler, 0.02);
  });
});

// Source: exact Colebrook drops of a public library (02), tolerance stated there 1e-9.
describe('friction drop', () => {
  it.each(drops.cases)('$in', ({ in: given, out }) => {
    const { diameter_m, length_m, velocity_m_s: velocity_ms, density_kg_m3: density_kgm3 } = given;
    const reynolds = (density_kgm3 * velocity_ms * diameter_m) / given.dynamic_viscosity_Pa_s;
    const f = frictionFactor(reynolds, given.roughness_m / diameter_m);
    expectRelative(velocityPressure(density_kgm3, velocity_ms), out.velocity_pressure_Pa, 1e-9);
    const run = { frictionFactor: f, length_m, diameter_m, density_kgm3, velocity_ms };
    expectRelative(darcyWeisbachDrop(run), out.dp_Pa, 1e-9);
    const viscosity_Pas = given.dynamic_viscosity_Pa_s;
    const massFlow_kgs = out.flow_m3s * density_kgm3;
    const air = { density_kgm3, viscosity_Pas };
    const drop = frictionDrop({ massFlow_kgs, diameter_m, length_m, roughness_m: given.roughness_m, ...air });
    expectRelative(drop, out.dp_Pa, 1e-9);
  });
});
