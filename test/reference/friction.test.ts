import { describe, it } from 'vitest';
import { colebrookFriction, turbulentGroup } from '../../core/duct/colebrook.ts';
import {
  frictionDrop,
  frictionDropWithSlope,
  frictionFactor,
  frictionFactorWithSlope,
  frictionGroup,
} from '../../core/duct/friction.ts';
import { darcyWeisbachDrop, velocityPressure } from '../../core/duct/straight.ts';
import factors from './data/01_friction_factor.json' with { type: 'json' };
import drops from './data/02_duct_pressure_drop.json' with { type: 'json' };
import { against } from './ledger.ts';

/** A value and its slope. */
const pair = new Float64Array(2);

// Tolerance stated in the file: 1e-9. As it holds the exact Colebrook too, rounding is all that may be between.
describe('friction factor', () => {
  const laminar = against({
    relation: ['frictionFactor', 'frictionFactorWithSlope', 'frictionGroup'],
    source: 'data 01: 64/Re in laminar flow',
    basis: 'independent-program',
    kind: 'value',
  });
  const turbulent = against({
    relation: ['frictionFactor', 'frictionFactorWithSlope', 'frictionGroup'],
    source: 'data 01: exact Colebrook in turbulent flow',
    basis: 'independent-program',
    kind: 'value',
  });
  const colebrook = against({
    relation: ['colebrookFriction', 'turbulentGroup'],
    source: 'data 01: exact Colebrook, transition included',
    basis: 'independent-program',
    kind: 'value',
  });
  const residual = against({
    relation: 'colebrookFriction',
    source: 'the Colebrook-White equation itself, its residual',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const loeffler = against({
    relation: 'frictionFactor',
    source: "Loeffler's fit for galvanised duct, ACGIH table 5-5",
    basis: 'from-memory',
    kind: 'value',
  });

  it.each(factors.cases)('$in', ({ in: given, out }) => {
    const { reynolds, relative_roughness: roughness } = given;
    const outside = out.darcy_friction_factor;
    const square = reynolds * reynolds;
    frictionFactorWithSlope(reynolds, roughness, pair);
    const overAll = [frictionFactor(reynolds, roughness), pair[0]!];
    frictionGroup(reynolds, roughness, pair);
    overAll.push(pair[0]! / square);
    if (out.regime === 'laminar') overAll.forEach((f) => laminar.within(f, outside, 1e-9));
    else {
      colebrook.within(colebrookFriction(reynolds, roughness), outside, 1e-12);
      turbulentGroup(reynolds, roughness, pair);
      colebrook.within(pair[0]! / square, outside, 1e-12);
    }
    if (out.regime === 'turbulent') overAll.forEach((f) => turbulent.within(f, outside, 1e-12));
  });

  it('leaves no residual in the Colebrook-White equation, from Re 2000 to 1e9 and up to 0.5 relative roughness', () => {
    for (let reynolds = 2000; reynolds < 1e9; reynolds *= 1.3) {
      for (const roughness of [0, 1e-7, 1e-5, 1e-3, 0.05, 0.5]) {
        const x = 1 / Math.sqrt(colebrookFriction(reynolds, roughness));
        residual.withinAbsolute(x, -2 * Math.log10(roughness / 3.7 + (2.51 * x) / reynolds), 1e-12);
      }
    }
  });

  // Loeffler's fit of the same law: Hf = 0.0307 V^0.533 / Q^0.612 velocity pressures for each foot; 400 cfm in 4 in. Agreement of 2 % is what the fit claims.
  it('agrees with the exhaust trade fit for galvanised duct within 2 %', () => {
    const velocity_fpm = 400 / (Math.PI / 36);
    const fitted = (0.0307 * velocity_fpm ** 0.533) / 400 ** 0.612 / 3; // f = Hf D, D = 1/3 ft
    const reynolds = (velocity_fpm * 0.00508 * 0.1016) / 1.506e-5;
    loeffler.within(frictionFactor(reynolds, 0.0005 * 3), fitted, 0.02);
  });
});

// Tolerance stated in the file: 1e-9.
describe('friction drop', () => {
  const pressure = against({
    relation: 'velocityPressure',
    source: 'data 02: velocity pressures of the drops',
    basis: 'independent-program',
    kind: 'value',
  });
  const drop = against({
    relation: ['frictionDrop', 'frictionDropWithSlope', 'darcyWeisbachDrop'],
    source: 'data 02: drops by exact Colebrook',
    basis: 'independent-program',
    kind: 'value',
  });

  it.each(drops.cases)('$in', ({ in: given, out }) => {
    const { diameter_m, length_m, velocity_m_s: velocity_ms, density_kg_m3: density_kgm3 } = given;
    const reynolds = (density_kgm3 * velocity_ms * diameter_m) / given.dynamic_viscosity_Pa_s;
    const f = frictionFactor(reynolds, given.roughness_m / diameter_m);
    pressure.within(velocityPressure(density_kgm3, velocity_ms), out.velocity_pressure_Pa, 1e-9);
    const run = { frictionFactor: f, length_m, diameter_m, density_kgm3, velocity_ms };
    drop.within(darcyWeisbachDrop(run), out.dp_Pa, 1e-9);
    const viscosity_Pas = given.dynamic_viscosity_Pa_s;
    const massFlow_kgs = out.flow_m3s * density_kgm3;
    const air = { density_kgm3, viscosity_Pas };
    const duct = { massFlow_kgs, diameter_m, length_m, roughness_m: given.roughness_m, ...air };
    drop.within(frictionDrop(duct), out.dp_Pa, 1e-9);
    frictionDropWithSlope(duct, pair);
    drop.within(pair[0]!, out.dp_Pa, 1e-9);
  });
});
