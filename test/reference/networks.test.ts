import { describe, expect, it } from 'vitest';
import { ductSegments, PASSIVE } from '../../core/network/net.ts';
import { solveNet } from '../../core/network/newton.ts';
import { packNet } from '../../core/network/packed.ts';
import data from './data/11_networks.json' with { type: 'json' };
import { against } from './ledger.ts';

// Four branched networks of ducts with constant local coefficients, incompressible. Sources, beside the numbers in the
// file: an independent Newton solution with exact Colebrook-White friction, and a public water-network engine with
// Swamee-Jain friction. The file asks 1e-6 against the first and 0.5 % against the second.
interface Case {
  in: {
    name: string;
    nodes: { id: string; pressure_Pa?: number }[];
    ducts: {
      id: string;
      from: string;
      to: string;
      length_m: number;
      diameter_m: number;
      roughness_m: number;
      K_minor: number;
    }[];
    air: { density_kg_m3: number; kinematic_viscosity_m2_s: number };
  };
  out: {
    reference_exact_colebrook: {
      node_pressure_Pa: Record<string, number>;
      ducts: Record<string, { flow_m3s: number }>;
    };
    public_engine_swamee_jain: { ducts: Record<string, { flow_m3s: number }> };
  };
}

describe('bare networks against two independent solvers', () => {
  const flows = against({
    relation: 'core/network/newton.ts#solveNet',
    source: 'data 11: flows of an independent Newton solution, exact Colebrook',
    basis: 'independent-program',
    kind: 'value',
  });
  const engine = against({
    relation: 'core/network/newton.ts#solveNet',
    source: 'data 11: flows of a public water-network engine, Swamee-Jain friction',
    basis: 'independent-program',
    kind: 'value',
  });
  const pressures = against({
    relation: 'core/network/newton.ts#solveNet',
    source: 'data 11: pressures of an independent Newton solution, exact Colebrook',
    basis: 'independent-program',
    kind: 'value',
  });

  for (const { in: given, out } of data.cases as unknown as Case[]) {
    it(given.name, () => {
      const index = new Map(given.nodes.map((node, i) => [node.id, i]));
      const density_kgm3 = given.air.density_kg_m3;
      const packed = packNet({
        air: {
          density_kgm3,
          viscosity_Pas: given.air.kinematic_viscosity_m2_s * density_kgm3,
          roomPressure_Pa: null,
        },
        nodes: given.nodes.map(({ id, pressure_Pa }) => ({
          id,
          pressure_Pa: pressure_Pa ?? null,
          legs: null,
        })),
        elements: given.ducts.map((duct) => ({
          id: duct.id,
          from: index.get(duct.from)!,
          to: index.get(duct.to)!,
          kind: PASSIVE,
          segments: ductSegments({ ...duct, coefficient: duct.K_minor }),
          fan: null,
        })),
      });
      const solved = solveNet(packed);
      if (!solved.converged) throw new Error(solved.reason);
      expect(solved.massResidual).toBeLessThan(1e-9);
      given.ducts.forEach((duct, e) => {
        const flow = solved.state.flow_kgs[e]! / density_kgm3;
        flows.within(flow, out.reference_exact_colebrook.ducts[duct.id]!.flow_m3s, 1e-6);
        engine.within(flow, out.public_engine_swamee_jain.ducts[duct.id]!.flow_m3s, 5e-3);
      });
      given.nodes.forEach(({ id }, v) => {
        const expected = out.reference_exact_colebrook.node_pressure_Pa[id]!;
        pressures.withinAbsolute(solved.state.pressure_Pa[v]!, expected, 1e-3, { unit: 'Pa' });
      });
    });
  }
});
