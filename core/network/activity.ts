import type { PackedNet } from './packed.ts';

/** Which part of a network can move air, for one set of shut elements. */
export interface Activity {
  /** Elements that can carry a flow. */
  readonly elements: Int32Array;
  /** Nodes whose pressure the solver must find. */
  readonly nodes: Int32Array;
  /**
   * Dead ends in the order in which they were cut off: element `i` hangs node `hangs[i]` on the rest. Read backwards
   * they hand pressures out from the solved part.
   */
  readonly deadEnds: readonly { readonly element: number; readonly hangs: number }[];
  /** 1 for a node that no given pressure reaches: its pressure means nothing. */
  readonly afloat: Uint8Array;
  /** True where a fan stands in a ring that no given pressure reaches. */
  readonly sealedRing: boolean;
}

/** What tells the activities of one network apart: which elements are shut, and whether any is held. */
export function activityKey(packed: PackedNet, held: Float64Array | null): string {
  let key = held ? 'held' : '';
  const { shut } = packed;
  for (let e = 0; e < shut.length; e++) if (shut[e]) key += `,${e}`;
  return key;
}

/** Finds what can flow: drops shut elements, parts that no given pressure reaches, and dead ends. */
export function findActivity(packed: PackedNet): Activity {
  const { elementCount, nodeCount, from, to, shut, given_Pa } = packed;
  const alive = new Uint8Array(elementCount);
  const degree = new Int32Array(nodeCount);
  for (let e = 0; e < elementCount; e++) {
    if (shut[e] || from[e] === to[e]) continue;
    alive[e] = 1;
    degree[from[e]!]!++;
    degree[to[e]!]!++;
  }
  const start = new Int32Array(nodeCount + 1);
  for (let v = 0; v < nodeCount; v++) start[v + 1] = start[v]! + degree[v]!;
  const cursor = start.slice();
  const around = new Int32Array(start[nodeCount]!);
  for (let e = 0; e < elementCount; e++) {
    if (!alive[e]) continue;
    around[cursor[from[e]!]!++] = e;
    around[cursor[to[e]!]!++] = e;
  }

  // reach from the given pressures
  const reached = new Uint8Array(nodeCount);
  const queue = new Int32Array(nodeCount);
  let tail = 0;
  for (let v = 0; v < nodeCount; v++) {
    if (!Number.isNaN(given_Pa[v]!)) {
      reached[v] = 1;
      queue[tail++] = v;
    }
  }
  for (let head = 0; head < tail; head++) {
    const v = queue[head]!;
    for (let i = start[v]!; i < start[v + 1]!; i++) {
      const e = around[i]!;
      const w = from[e] === v ? to[e]! : from[e]!;
      if (!reached[w]) {
        reached[w] = 1;
        queue[tail++] = w;
      }
    }
  }
  const afloat = new Uint8Array(nodeCount);
  for (let v = 0; v < nodeCount; v++) afloat[v] = reached[v] ? 0 : 1;

  // cut dead ends off, leaf by leaf; afloat parts too, so that a ring of them shows
  const deadEnds: { element: number; hangs: number }[] = [];
  tail = 0;
  for (let v = 0; v < nodeCount; v++) if (degree[v] === 1 && Number.isNaN(given_Pa[v]!)) queue[tail++] = v;
  for (let head = 0; head < tail; head++) {
    const v = queue[head]!;
    if (degree[v] !== 1) continue;
    for (let i = start[v]!; i < start[v + 1]!; i++) {
      const e = around[i]!;
      if (!alive[e]) continue;
      alive[e] = 0;
      if (!afloat[v]) deadEnds.push({ element: e, hangs: v });
      degree[v] = 0;
      const w = from[e] === v ? to[e]! : from[e]!;
      degree[w]!--;
      if (degree[w] === 1 && Number.isNaN(given_Pa[w]!)) queue[tail++] = w;
      break;
    }
  }
  let sealedRing = false;
  for (const e of packed.fans) if (alive[e] && afloat[from[e]!]) sealedRing = true;

  const elements: number[] = [];
  for (let e = 0; e < elementCount; e++) if (alive[e] && !afloat[from[e]!]) elements.push(e);
  const nodes: number[] = [];
  for (let v = 0; v < nodeCount; v++) {
    if (degree[v]! > 0 && reached[v] && Number.isNaN(given_Pa[v]!)) nodes.push(v);
  }
  return {
    elements: Int32Array.from(elements),
    nodes: Int32Array.from(nodes),
    deadEnds,
    afloat,
    sealedRing,
  };
}
