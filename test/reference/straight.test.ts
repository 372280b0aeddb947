import { describe, expect, it } from 'vitest';
import {
  darcyWeisbachDrop,
  equivalentRoundDiameter,
  hydraulicDiameter,
  isothermalChokingFlow,
  isothermalOutletPressure,
  velocityPressure,
} from '../../core/duct/straight.ts';
import { ImpossibleInput } from '../../core/quantities/impossible-input.ts';
import isothermal from './data/09_isothermal_gas.json' with { type: 'json' };
import { against } from './ledger.ts';

// Source: the isothermal flow equation of a public library, checked there by integration (09), tolerance 1e-6.
describe('isothermal run', () => {
  const program = against({
    relation: 'isothermalOutletPressure',
    source: 'data 09: isothermal flow equation, confirmed by integration; the drop, not the pressure',
    basis: 'independent-program',
    kind: 'value',
  });
  const scan = against({
    relation: 'isothermalChokingFlow',
    source: 'maximum of the flow equation, found by a scan',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const sonic = against({
    relation: ['isothermalChokingFlow', 'isothermalOutletPressure'],
    source: 'velocity of isothermal sound at the outlet, sqrt(R T)',
    basis: 'hand-calculation',
    kind: 'limit',
  });
  const smallFlow = against({
    relation: 'isothermalOutletPressure',
    source: 'Darcy-Weisbach at small flow',
    basis: 'hand-calculation',
    kind: 'limit',
  });

  it.each(isothermal.cases)('$in', ({ in: given, out }) => {
    const run = {
      inletPressure_Pa: given.inlet_pressure_abs_Pa,
      area_m2: (Math.PI * given.diameter_m ** 2) / 4,
      temperature_K: given.temperature_K,
      fLoverD: (given.darcy_friction_factor * given.length_m) / given.diameter_m,
      gasConstant_JkgK: given.specific_gas_constant_J_kgK,
    };
    const outlet = isothermalOutletPressure({ ...run, massFlow_kgs: out.mass_flow_kg_s });
    // The drop, not the absolute pressure, is what a designer reads, so the tolerance is taken on the drop.
    program.within(run.inletPressure_Pa - outlet, run.inletPressure_Pa - given.outlet_pressure_abs_Pa, 1e-6);
  });

  it('chokes where a scan of the flow equation has its maximum (second route)', () => {
    const run = {
      inletPressure_Pa: 1e5,
      area_m2: 0.002,
      temperature_K: 293.15,
      fLoverD: 4,
      gasConstant_JkgK: 287.05,
    };
    let most = 0;
    for (let r = 0.01; r < 1; r += 1e-5) {
      const flow =
        (run.area_m2 * 1e5 * Math.sqrt(1 - r * r)) / Math.sqrt(287.05 * 293.15 * (4 - 2 * Math.log(r)));
      most = Math.max(most, flow);
    }
    scan.within(isothermalChokingFlow(run), most, 1e-8);
    expect(() => isothermalOutletPressure({ ...run, massFlow_kgs: most * 1.001 })).toThrow(ImpossibleInput);
    const outlet = isothermalOutletPressure({ ...run, massFlow_kgs: isothermalChokingFlow(run) });
    const outletVelocity = (most * 287.05 * 293.15) / (outlet * run.area_m2);
    sonic.within(outletVelocity, Math.sqrt(287.05 * 293.15), 1e-5);
  });

  it('tends to Darcy-Weisbach at small flow (limit)', () => {
    const run = {
      inletPressure_Pa: 1e5,
      area_m2: 0.01,
      temperature_K: 293.15,
      fLoverD: 5,
      gasConstant_JkgK: 287.05,
    };
    const density_kgm3 = 1e5 / (287.05 * 293.15);
    const drop = 1e5 - isothermalOutletPressure({ ...run, massFlow_kgs: density_kgm3 * 0.01 * 2 });
    const plain = { frictionFactor: 5, length_m: 1, diameter_m: 1, density_kgm3, velocity_ms: 2 };
    smallFlow.within(drop, darcyWeisbachDrop(plain), 1e-3);
  });
});

describe('definitions', () => {
  const tradeConstant = against({
    relation: 'velocityPressure',
    source: 'exhaust trade: one inch of water at 20 C is 4005 ft/min in 0.075 lb/ft3 air',
    basis: 'from-memory',
    kind: 'value',
  });
  const byHand = against({
    relation: 'hydraulicDiameter',
    source: 'diameter of a round and side of a square duct',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const equalDrop = against({
    relation: 'equivalentRoundDiameter',
    source: 'round duct of equal drop at equal flow, friction as Re^-0.18 on the hydraulic diameter',
    basis: 'hand-calculation',
    kind: 'second-route',
  });

  // Exhaust trade constant: one inch of water at 20 C is the velocity pressure of 4005 ft/min in 0.075 lb/ft3 air.
  it('gives one inch of water at 4005 ft/min', () => {
    tradeConstant.within(
      velocityPressure(0.075 * 16.01846, 4005 * 0.00508),
      998.207 * 9.80665 * 0.0254,
      2e-4,
    );
  });

  it('gives the diameter of a round and the side of a square duct', () => {
    byHand.within(hydraulicDiameter((Math.PI * 0.04) / 4, Math.PI * 0.2), 0.2, 1e-12);
    byHand.within(hydraulicDiameter(0.04, 0.8), 0.2, 1e-12);
  });

  // Second route: equal drop at equal flow, friction factor taken as Re^-0.18 on the hydraulic diameter, so that
  // De^(5-0.18) pi^(..) follows; the fit of Huebscher is within 2 % of it up to 4 to 1.
  it('matches a round duct of equal friction drop within 2 %', () => {
    for (const [a, b] of [
      [0.2, 0.2],
      [0.3, 0.2],
      [0.4, 0.1],
    ] as const) {
      const Dh = (2 * a * b) / (a + b);
      // drop ~ (V Dh)^-0.18 V^2 / Dh with V = Q/A; solve for the round duct of area pi D^2/4.
      const rectangular = (a * b) ** -1.82 * Dh ** -1.18;
      const round = (rectangular / (Math.PI / 4) ** -1.82) ** (-1 / 4.82);
      equalDrop.within(equivalentRoundDiameter(a, b), round, 0.02);
    }
  });
});
