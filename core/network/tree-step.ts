/** Conductance of a node below which rounding has left nothing of it [kg/(s Pa)]. */
const LEAST_PIVOT = 1e-290;

/** Linear system of plain elements whose nodes hang on one another as on a tree. */
export interface Tree {
  readonly kind: 'tree';
  /** For each node the one that it hangs on, a later one; -1 for a root. */
  readonly parent: Int32Array;
  /** Work space: conductance to all around a node, and to its parent; that of each element [kg/(s Pa)]. */
  readonly around: Float64Array;
  readonly up: Float64Array;
  readonly conductance: Float64Array;
}

/**
 * The tree of nodes that are numbered in the order of their elimination; null where they form rings.
 *
 * @param count - number of nodes
 * @param startNode - node at the start of each element, -1 where pressure is given
 * @param endNode - node at its end
 */
export function treeOf(count: number, startNode: Int32Array, endNode: Int32Array): Tree | null {
  const parent = new Int32Array(count).fill(-1);
  for (let i = 0; i < startNode.length; i++) {
    const f = startNode[i]!;
    const t = endNode[i]!;
    if (f < 0 || t < 0) continue;
    const child = f < t ? f : t;
    const other = f < t ? t : f;
    if (parent[child]! >= 0 && parent[child] !== other) return null;
    parent[child] = other;
  }
  const conductance = new Float64Array(startNode.length);
  return { kind: 'tree', parent, around: new Float64Array(count), up: new Float64Array(count), conductance };
}

/**
 * Solves what `linearStep` solves where the pressures at the ends of each element count whole (slopes 1 and -1) and the
 * slope by flow is negative: one pass from the leaves to the roots, one back. With `g = -1 / byFlow` an element carries
 * `g (p(start) - p(end) - right)`, so every node stands against all around it by a positive conductance.
 *
 * @param tree - of the nodes
 * @param startNode - node at the start of each element, -1 where pressure is given
 * @param endNode - node at its end
 * @param byFlow - slope of each element [Pa s/kg]
 * @param right - right-hand sides, elements then nodes; receives flows, then pressures
 */
export function treeStep(
  tree: Tree,
  startNode: Int32Array,
  endNode: Int32Array,
  byFlow: Float64Array,
  right: Float64Array,
): void {
  const { parent, around, up, conductance } = tree;
  const ne = startNode.length;
  const nn = parent.length;
  around.fill(0);
  up.fill(0);
  for (let v = ne; v < ne + nn; v++) right[v] = -right[v]!;
  for (let i = 0; i < ne; i++) {
    const f = startNode[i]!;
    const t = endNode[i]!;
    const g = -1 / byFlow[i]!;
    conductance[i] = g;
    const m = g * right[i]!;
    if (f >= 0) {
      around[f]! += g;
      right[ne + f]! += m;
      if (t >= 0) up[f < t ? f : t]! += g;
    }
    if (t >= 0) {
      around[t]! += g;
      right[ne + t]! -= m;
    }
  }
  for (let v = 0; v < nn; v++) {
    // what hangs below has been taken off; rounding may leave nothing where the rest is thinner by far
    const pivot = around[v]!;
    const p = parent[v]!;
    const inverse = 1 / (pivot > LEAST_PIVOT ? pivot : LEAST_PIVOT);
    around[v] = inverse;
    if (p < 0) continue;
    const share = up[v]! * inverse;
    around[p]! -= share * up[v]!;
    right[ne + p]! += share * right[ne + v]!;
  }
  for (let v = nn - 1; v >= 0; v--) {
    const p = parent[v]!;
    const above = p < 0 ? 0 : up[v]! * right[ne + p]!;
    right[ne + v] = (right[ne + v]! + above) * around[v]!;
  }
  for (let i = 0; i < ne; i++) {
    const f = startNode[i]!;
    const t = endNode[i]!;
    let drop = -right[i]!;
    if (f >= 0) drop += right[ne + f]!;
    if (t >= 0) drop -= right[ne + t]!;
    right[i] = drop * conductance[i]!;
  }
}
