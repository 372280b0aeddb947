import type { Activity } from './activity.ts';
import { eliminationOrder } from './elimination.ts';
import type { PackedNet } from './packed.ts';
import { SparseLu } from './sparse-lu.ts';

/** Where the derivatives of one element's equation by the flows of a junction's legs stand. */
export interface Coupling {
  readonly junction: number;
  readonly leg: number;
  /** Position in the factor values for each leg of the junction; -1 where the leg carries nothing. */
  readonly positions: Int32Array;
}

/**
 * Structure of the linear systems of one activity: unknowns are the mass flows of the active elements, then the
 * pressures of the active nodes; equations are the pressure balance along each element, then mass at each node.
 */
export interface Plan {
  readonly activity: Activity;
  readonly lu: SparseLu;
  /** Unknown number of an element's flow, -1 where it carries nothing. */
  readonly flowUnknown: Int32Array;
  /** Unknown number of a node's pressure, -1 where it is given or out of play. */
  readonly pressureUnknown: Int32Array;
  /** For each active element: positions of its own flow, and of either node's pressure and mass balance (or -1). */
  readonly own: Int32Array;
  readonly couplingFrom: readonly (Coupling | null)[];
  readonly couplingTo: readonly (Coupling | null)[];
}

/** Numbers the unknowns, orders them leaf-first and lays out the factors. */
export function makePlan(packed: PackedNet, activity: Activity): Plan {
  const { elements, nodes } = activity;
  const ne = elements.length;
  const size = ne + nodes.length;
  const flowUnknown = new Int32Array(packed.elementCount).fill(-1);
  const pressureUnknown = new Int32Array(packed.nodeCount).fill(-1);
  elements.forEach((e, i) => (flowUnknown[e] = i));
  nodes.forEach((v, i) => (pressureUnknown[v] = ne + i));

  const rows: number[] = [];
  const columns: number[] = [];
  const pairs: number[] = [];
  const touching: number[][] = Array.from(nodes, () => []);
  const legsOf = (j: number): readonly number[] =>
    j < 0 ? [] : packed.junctions[j]!.legs.map((leg) => flowUnknown[leg.element]!);
  elements.forEach((e, i) => {
    const f = pressureUnknown[packed.from[e]!]!;
    const t = pressureUnknown[packed.to[e]!]!;
    if (f >= 0 && t >= 0) pairs.push(f - ne, t - ne);
    for (const v of [f, t]) {
      if (v < 0) continue;
      touching[v - ne]!.push(i);
      rows.push(i);
      columns.push(v);
    }
    for (const j of [packed.junctionFrom[e]!, packed.junctionTo[e]!]) {
      for (const k of legsOf(j)) {
        if (k < 0 || k === i) continue;
        rows.push(i);
        columns.push(k);
      }
    }
  });

  const nodeOrder = eliminationOrder(nodes.length, Int32Array.from(pairs));
  const order = new Int32Array(size);
  const placed = new Uint8Array(ne);
  let at = 0;
  for (const v of nodeOrder) {
    for (const i of touching[v]!) {
      if (placed[i]) continue;
      placed[i] = 1;
      order[at++] = i;
    }
    order[at++] = ne + v;
  }
  for (let i = 0; i < ne; i++) if (!placed[i]) order[at++] = i;

  const lu = new SparseLu(size, order, Int32Array.from(rows), Int32Array.from(columns));
  const own = new Int32Array(5 * ne).fill(-1);
  const coupling = (i: number, j: number, leg: number): Coupling | null => {
    if (j < 0) return null;
    const positions = Int32Array.from(legsOf(j), (k) => (k < 0 ? -1 : lu.position(i, k)));
    return { junction: j, leg, positions };
  };
  const couplingFrom: (Coupling | null)[] = [];
  const couplingTo: (Coupling | null)[] = [];
  elements.forEach((e, i) => {
    const f = pressureUnknown[packed.from[e]!]!;
    const t = pressureUnknown[packed.to[e]!]!;
    own[5 * i] = lu.position(i, i);
    if (f >= 0) {
      own[5 * i + 1] = lu.position(i, f);
      own[5 * i + 3] = lu.position(f, i);
    }
    if (t >= 0) {
      own[5 * i + 2] = lu.position(i, t);
      own[5 * i + 4] = lu.position(t, i);
    }
    couplingFrom.push(coupling(i, packed.junctionFrom[e]!, packed.legFrom[e]!));
    couplingTo.push(coupling(i, packed.junctionTo[e]!, packed.legTo[e]!));
  });
  return { activity, lu, flowUnknown, pressureUnknown, own, couplingFrom, couplingTo };
}
