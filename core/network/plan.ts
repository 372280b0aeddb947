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

/** An element at a mixing junction: its flow stays an unknown of the linear system. */
export interface CoupledElement {
  /** Number among the active elements. */
  readonly element: number;
  readonly from: Coupling | null;
  readonly to: Coupling | null;
}

/**
 * Structure of the linear systems of one activity. The equations are the pressure balance along each active element,
 * then mass at each active node; the unknowns are their flows and pressures. The equation of an element holds its own
 * flow alone, unless it meets a mixing junction, so most flows are put in terms of the pressures at either end before
 * anything is factorised: what is factorised are the coupled flows, then the pressures.
 */
export interface Plan {
  readonly activity: Activity;
  readonly lu: SparseLu;
  /** For each active element the number of its start (end) among the active nodes, -1 where pressure is given. */
  readonly startNode: Int32Array;
  readonly endNode: Int32Array;
  readonly coupled: readonly CoupledElement[];
  /** For each active element its unknown where its flow is one, else -1. */
  readonly flowUnknown: Int32Array;
  /**
   * For each active element five positions in the factor values, -1 where there is none. Flow put away: (from, from),
   * (from, to), (to, from), (to, to). Coupled: (flow, flow), (flow, from), (flow, to), (from, flow), (to, flow).
   */
  readonly own: Int32Array;
  /** Typical flow of each active element [kg/s] at the last solve; null before the first. */
  readonly last: { typical_kgs: Float64Array | null };
}

/** Numbers the unknowns, orders them leaf-first and lays out the factors. */
export function makePlan(packed: PackedNet, activity: Activity): Plan {
  const { elements, nodes } = activity;
  const ne = elements.length;
  const nn = nodes.length;
  const nodeNumber = new Int32Array(packed.nodeCount).fill(-1);
  for (let i = 0; i < nn; i++) nodeNumber[nodes[i]!] = i;
  const startNode = new Int32Array(ne);
  const endNode = new Int32Array(ne);
  const flowUnknown = new Int32Array(ne).fill(-1);
  const unknownOf = new Map<number, number>();
  for (let i = 0; i < ne; i++) {
    const e = elements[i]!;
    startNode[i] = nodeNumber[packed.from[e]!]!;
    endNode[i] = nodeNumber[packed.to[e]!]!;
    if (packed.junctionFrom[e]! < 0 && packed.junctionTo[e]! < 0) continue;
    flowUnknown[i] = unknownOf.size;
    unknownOf.set(e, unknownOf.size);
  }
  const nc = unknownOf.size;
  const legsOf = (j: number): number[] =>
    j < 0 ? [] : packed.junctions[j]!.legs.map((leg) => unknownOf.get(leg.element) ?? -1);

  const pairs = new Int32Array(2 * ne);
  let pairCount = 0;
  const rows: number[] = [];
  const columns: number[] = [];
  const coupledAt: number[][] = nc > 0 ? Array.from(nodes, () => []) : [];
  for (let i = 0; i < ne; i++) {
    const f = startNode[i]!;
    const t = endNode[i]!;
    const own = flowUnknown[i]!;
    if (f >= 0 && t >= 0) {
      pairs[pairCount++] = f;
      pairs[pairCount++] = t;
    }
    if (own < 0) {
      if (f < 0 || t < 0) continue;
      rows.push(nc + f);
      columns.push(nc + t);
      continue;
    }
    for (const v of [f, t]) {
      if (v < 0) continue;
      coupledAt[v]!.push(own);
      rows.push(own);
      columns.push(nc + v);
    }
    const e = elements[i]!;
    for (const other of [...legsOf(packed.junctionFrom[e]!), ...legsOf(packed.junctionTo[e]!)]) {
      if (other < 0 || other === own) continue;
      rows.push(own);
      columns.push(other);
    }
  }
  const nodeOrder = eliminationOrder(nn, pairs.subarray(0, pairCount));
  const order = orderUnknowns(nodeOrder, nc, coupledAt);
  const lu = new SparseLu(nc + nn, order, Int32Array.from(rows), Int32Array.from(columns));

  const own = new Int32Array(5 * ne).fill(-1);
  const coupled: CoupledElement[] = [];
  const coupling = (i: number, junction: number, leg: number): Coupling | null => {
    if (junction < 0) return null;
    const row = flowUnknown[i]!;
    const positions = Int32Array.from(legsOf(junction), (k) => (k < 0 ? -1 : lu.position(row, k)));
    return { junction, leg, positions };
  };
  for (let i = 0; i < ne; i++) {
    const f = startNode[i]! < 0 ? -1 : nc + startNode[i]!;
    const t = endNode[i]! < 0 ? -1 : nc + endNode[i]!;
    const flow = flowUnknown[i]!;
    const spots: readonly (readonly [number, number])[] =
      flow < 0
        ? [
            [f, f],
            [f, t],
            [t, f],
            [t, t],
          ]
        : [
            [flow, flow],
            [flow, f],
            [flow, t],
            [f, flow],
            [t, flow],
          ];
    for (let k = 0; k < spots.length; k++) {
      const [row, column] = spots[k]!;
      if (row >= 0 && column >= 0) own[5 * i + k] = lu.position(row, column);
    }
    if (flow < 0) continue;
    const e = elements[i]!;
    const from = coupling(i, packed.junctionFrom[e]!, packed.legFrom[e]!);
    coupled.push({ element: i, from, to: coupling(i, packed.junctionTo[e]!, packed.legTo[e]!) });
  }
  return { activity, lu, startNode, endNode, coupled, flowUnknown, own, last: { typical_kgs: null } };
}

/** Nodes in their order, each after the coupled flows that meet it first. */
function orderUnknowns(nodeOrder: Int32Array, nc: number, coupledAt: readonly number[][]): Int32Array {
  const order = new Int32Array(nc + nodeOrder.length);
  const placed = new Uint8Array(nc);
  let at = 0;
  for (const v of nodeOrder) {
    if (nc > 0) {
      for (const k of coupledAt[v]!) {
        if (placed[k]) continue;
        placed[k] = 1;
        order[at++] = k;
      }
    }
    order[at++] = nc + v;
  }
  for (let k = 0; k < nc; k++) if (!placed[k]) order[at++] = k;
  return order;
}
