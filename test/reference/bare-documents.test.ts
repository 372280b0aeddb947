import { describe, expect, it } from 'vitest';
import { readDocument } from '../../core/document/read.ts';
import type { ShopFile } from '../../core/document/schema.ts';
import { solve } from '../../core/network/solve.ts';
import data from './data/11_networks.json' with { type: 'json' };
import { against } from './ledger.ts';

// The networks of networks.test.ts again, this time typed as documents: runs of one bare piece between given pressures
// and joints, air by density and viscosity. Source: an independent Newton solution with exact Colebrook-White friction
// (numbers and method stand in the data file), whose own tolerance is 1e-6; 1e-5 is asked of the whole way here.
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
      ducts: Record<string, { flow_m3s: number; dp_Pa: number }>;
    };
  };
}

function typed({ name, nodes, ducts, air }: Case['in']): ShopFile {
  return {
    format: 'chipdraft-shop',
    version: 2,
    name,
    options: { compressible: false },
    air: {
      kind: 'given',
      density: `${air.density_kg_m3} kg/m3`,
      viscosity: air.kinematic_viscosity_m2_s * air.density_kg_m3,
    },
    things: nodes.map(({ id, pressure_Pa }) =>
      pressure_Pa === undefined
        ? { id, kind: 'joint' }
        : { id, kind: 'pressure', pressure: `${pressure_Pa} Pa` },
    ),
    runs: ducts.map((duct) => ({
      id: duct.id,
      from: duct.from,
      to: duct.to,
      pieces: [
        {
          kind: 'bare',
          length: `${duct.length_m} m`,
          diameter: `${1000 * duct.diameter_m} mm`,
          roughness: `${1e6 * duct.roughness_m} um`,
          coefficient: duct.K_minor,
        },
      ],
    })),
  };
}

describe('bare networks typed as documents', () => {
  const flows = against({
    relation: 'core/network/solve.ts#solve',
    source: 'data 11: flows of an independent Newton solution, the networks typed as documents',
    basis: 'independent-program',
    kind: 'value',
  });
  const pressures = against({
    relation: 'core/network/solve.ts#solve',
    source:
      'data 11: losses and pressures of an independent Newton solution, the networks typed as documents',
    basis: 'independent-program',
    kind: 'value',
  });

  const cases = data.cases as unknown as Case[];

  it('are all there', () => expect(cases).toHaveLength(4));

  for (const { in: given, out } of cases) {
    it(given.name, () => {
      const read = readDocument(JSON.stringify(typed(given)));
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      const solved = solve(read.document);
      if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
      const setting = solved.solution.settings[0]!;
      expect(setting.reasonText).toBeNull();
      expect(setting.massResidual).toBeLessThan(1e-9);
      const exact = out.reference_exact_colebrook;
      for (const run of setting.runs) {
        const expected = exact.ducts[run.id]!;
        flows.within(run.flow_m3s, expected.flow_m3s, 1e-5);
        pressures.withinAbsolute(run.lossTotal_Pa, expected.dp_Pa, 1e-2, { unit: 'Pa' });
      }
      for (const node of setting.nodes) {
        const expected = exact.node_pressure_Pa[node.id]!;
        pressures.withinAbsolute(node.totalPressure_Pa!, expected, 1e-2, { unit: 'Pa' });
      }
    });
  }
});
