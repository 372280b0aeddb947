import type { Activity } from './activity.ts';
import { eliminationOrder } from './elimination.ts';
import type { PackedNet } from './packed.ts';
import { SparseLu } from './sparse-lu.ts';
import { treeOf } from './tree-step.ts';
import type { Tree } from './tree-step.ts';

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

/** Sizes by which a network's equations are scaled, all from the network alone. */
export interface Sizes {
  /** Largest pressure that drives air [Pa]. */
  readonly pressure_Pa: number;
  /** Largest of the typical flows [kg/s]. */
  readonly flow_kgs: number;
  /** For each active element the flow that the whole pressure would drive through it alone [kg/s]. */
  readonly typical_kgs: Float64Array;
}

/**
 * Structure of the linear systems of one activity. The equations are the pressure balance along each active element,
 * then mass at each active node; the unknowns are their flows and pressures. The equation of an element holds its own
 * flow alone, unless it meets a mixing junction, so most flows are put in terms of the pressures at either end before
 * anything is factorised: what is factorised are the coupled flows, then the pressures.
 */
export interface Plan {
  /** What can flow; its nodes stand in the order of their elimination. */
  readonly activity: Activity;
  /** True where an element drops pressure by its flow alone: constant density, nothing that mixes, nothing held. */
  readonly plain: boolean;
  /** A tree where the elements are plain ducts, pressures alone are unknown and their nodes form one. */
  readonly system: Tree | SparseSystem;
  /** For each active element the number of its start (end) among the active nodes, -1 where pressure is given. */
  readonly startNode: Int32Array;
  readonly endNode: Int32Array;
  readonly work: Work;
  /** Sizes at the last solve, and the network that they are of. */
  last: { readonly packed: PackedNet; readonly sizes: Sizes } | null;
}

/** Arrays that every solve with a plan writes anew; kept here, as making them would cost as much as a step. */
export interface Work {
  /** Elements, then nodes. */
  readonly residual: Float64Array;
  readonly step: Float64Array;
  readonly before: Float64Array;
  /** Elements. */
  readonly byFlow: Float64Array;
  readonly byStart: Float64Array;
  readonly byEnd: Float64Array;
  readonly damped_byFlow: Float64Array;
  /** Active elements, by number, that the last evaluation marched along; kept drops served for the rest. */
  readonly marched: Int32Array;
}

/** Where the entries of a linear system stand that has rings, fans or mixing junctions. */
export interface SparseSystem {
  readonly kind: 'sparse';
  readonly lu: SparseLu;
  readonly coupled: readonly CoupledElement[];
  /** For each active element its unknown where its flow is one, else -1. */
  readonly flowUnknown: Int32Array;
  /**
   * For each active element five positions in the factor values, -1 where there is none. Flow put away: (from, from),
   * (from, to), (to, from), (to, to). Coupled: (flow, flow), (flow, from), (flow, to), (from, flow), (to, flow).
   */
  readonly own: Int32Array;
}

/** Numbers the unknowns, orders them leaf-first and lays out the factors. */
export function makePlan(packed: PackedNet, found: Activity, held: boolean): Plan {
  const activity = { ...found, nodes: eliminated(packed, found) };
  const { elements, nodes } = activity;
  const ne = elements.length;
  const nn = nodes.length;
  const { startNode, endNode } = ends(packed, activity);
  const plain = packed.net.air.roomPressure_Pa === null && packed.junctions.length === 0 && !held;
  const fans = elements.some((e) => packed.isFan[e] === 1);
  const tree = plain && !fans ? treeOf(nn, startNode, endNode) : null;
  const system = tree ?? sparseSystem(packed, activity, startNode, endNode);
  return { activity, plain, system, startNode, endNode, work: newWork(ne, nn), last: null };
}

function newWork(elements: number, nodes: number): Work {
  return {
    residual: new Float64Array(elements + nodes),
    step: new Float64Array(elements + nodes),
    before: new Float64Array(elements + nodes),
    byFlow: new Float64Array(elements),
    byStart: new Float64Array(elements),
    byEnd: new Float64Array(elements),
    damped_byFlow: new Float64Array(elements),
    marched: new Int32Array(elements),
  };
}

/** Number of the active node at the start and at the end of each active element, -1 where pressure is given. */
function ends(packed: PackedNet, { elements, nodes }: Activity) {
  const nodeNumber = new Int32Array(packed.nodeCount).fill(-1);
  for (let i = 0; i < nodes.length; i++) nodeNumber[nodes[i]!] = i;
  const startNode = new Int32Array(elements.length);
  const endNode = new Int32Array(elements.length);
  for (let i = 0; i < elements.length; i++) {
    startNode[i] = nodeNumber[packed.from[elements[i]!]!]!;
    endNode[i] = nodeNumber[packed.to[elements[i]!]!]!;
  }
  return { startNode, endNode };
}

/** The active nodes in the order of their elimination. */
function eliminated(packed: PackedNet, activity: Activity): Int32Array {
  const { startNode, endNode } = ends(packed, activity);
  const pairs = new Int32Array(2 * startNode.length);
  let count = 0;
  for (let i = 0; i < startNode.length; i++) {
    if (startNode[i]! < 0 || endNode[i]! < 0) continue;
    pairs[count++] = startNode[i]!;
    pairs[count++] = endNode[i]!;
  }
  const order = eliminationOrder(activity.nodes.length, pairs.subarray(0, count));
  return order.map((v) => activity.nodes[v]!);
}

function sparseSystem(
  packed: PackedNet,
  { elements, nodes }: Activity,
  startNode: Int32Array,
  endNode: Int32Array,
): SparseSystem {
  const ne = elements.length;
  const nn = nodes.length;
  const flowUnknown = new Int32Array(ne).fill(-1);
  const unknownOf = new Map<number, number>();
  for (let i = 0; i < ne; i++) {
    const e = elements[i]!;
    if (packed.junctionFrom[e]! < 0 && packed.junctionTo[e]! < 0) continue;
    flowUnknown[i] = unknownOf.size;
    unknownOf.set(e, unknownOf.size);
  }
  const nc = unknownOf.size;
  const legsOf = (j: number): number[] =>
    j < 0 ? [] : packed.junctions[j]!.legs.map((leg) => unknownOf.get(leg.element) ?? -1);

  const rows: number[] = [];
  const columns: number[] = [];
  const coupledAt: number[][] = nc > 0 ? Array.from(nodes, () => []) : [];
  for (let i = 0; i < ne; i++) {
    const f = startNode[i]!;
    const t = endNode[i]!;
    const own = flowUnknown[i]!;
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
  const order = orderUnknowns(nn, nc, coupledAt);
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
  return { kind: 'sparse', lu, coupled, flowUnknown, own };
}

/** Nodes as they are numbered, each after the coupled flows that meet it first. */
function orderUnknowns(nn: number, nc: number, coupledAt: readonly number[][]): Int32Array {
  const order = new Int32Array(nc + nn);
  const placed = new Uint8Array(nc);
  let at = 0;
  for (let v = 0; v < nn; v++) {
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
