import { describe, expect, it } from 'vitest';
import { marchSegment, newMarch } from '../../core/network/march.ts';
import { FRICTION, PASSIVE } from '../../core/network/net.ts';
import type { Segment } from '../../core/network/net.ts';
import { solveNet } from '../../core/network/newton.ts';
import { packNet } from '../../core/network/packed.ts';
import data from './data/09_isothermal_gas.json' with { type: 'json' };
import { against } from './ledger.ts';

// Isothermal flow of air in a duct with a given friction factor, between static pressures just inside its ends. Sources
// beside the numbers in the file: closed formula of an open library, confirmed there by integration of the momentum
// equation. Total pressure at an end is static plus half of `G^2 R T / p`, the velocity pressure at the density there.
interface Given {
  inlet_pressure_abs_Pa: number;
  outlet_pressure_abs_Pa: number;
  length_m: number;
  diameter_m: number;
  darcy_friction_factor: number;
  temperature_K: number;
  specific_gas_constant_J_kgK: number;
}

const ROOM_Pa = 101325;

function ductOf(given: Given) {
  const rt = given.specific_gas_constant_J_kgK * given.temperature_K;
  const area_m2 = (Math.PI / 4) * given.diameter_m ** 2;
  const ld = given.length_m / given.diameter_m;
  const segment: Segment = {
    type: FRICTION,
    area_m2,
    forward: ld,
    backward: ld,
    diameter_m: given.diameter_m,
    relativeRoughness: 0,
    fixedFriction: given.darcy_friction_factor,
  };
  const total_Pa = (static_Pa: number, flow_kgs: number) =>
    static_Pa + ((flow_kgs / area_m2) ** 2 * rt) / (2 * static_Pa) - ROOM_Pa;
  const between = (inlet_Pa: number, outlet_Pa: number) =>
    packNet({
      air: { density_kgm3: ROOM_Pa / rt, viscosity_Pas: 1.81e-5, roomPressure_Pa: ROOM_Pa },
      nodes: [
        { id: 'in', pressure_Pa: inlet_Pa, legs: null },
        { id: 'out', pressure_Pa: outlet_Pa, legs: null },
      ],
      elements: [{ id: 'duct', from: 0, to: 1, kind: PASSIVE, segments: [segment], fan: null }],
    });
  return { total_Pa, between };
}

describe('isothermal duct with fixed friction', () => {
  const marched = against({
    relation: 'core/network/march.ts#marchSegment',
    source: 'data 09: mass flow of the isothermal flow equation, confirmed by integration',
    basis: 'independent-program',
    kind: 'value',
  });
  const solver = against({
    relation: 'core/network/newton.ts#solveNet',
    source: 'data 09: mass flow of the isothermal flow equation, confirmed by integration',
    basis: 'independent-program',
    kind: 'value',
  });

  for (const { in: given, out } of data.cases) {
    const { inlet_pressure_abs_Pa: p1, outlet_pressure_abs_Pa: p2 } = given;
    const name = `${given.length_m} m of ${given.diameter_m * 1e3} mm, ${p1 - p2} Pa`;
    const { total_Pa, between } = ductOf(given);
    const inlet = total_Pa(p1, out.mass_flow_kg_s);
    const outlet = total_Pa(p2, out.mass_flow_kg_s);

    it(`${name}: mass flow of the march`, () => {
      const march = newMarch();
      march.total_Pa = inlet;
      marchSegment(between(inlet, outlet), 0, out.mass_flow_kg_s, false, march);
      expect(march.choked).toBe(false);
      // what is off in pressure, as mass flow by the march's own slope
      const off_kgs = (march.total_Pa - outlet) / march.byFlow;
      marched.within(out.mass_flow_kg_s + off_kgs, out.mass_flow_kg_s, 1e-6);
    });

    it(`${name}: mass flow of the solver`, () => {
      const solved = solveNet(between(inlet, outlet));
      if (!solved.converged) throw new Error(solved.reason);
      solver.within(solved.state.flow_kgs[0]!, out.mass_flow_kg_s, 1e-6);
    });
  }
});
