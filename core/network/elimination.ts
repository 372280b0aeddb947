/**
 * Order in which the nodes of a graph are eliminated: leaves first, which leaves no fill on a tree, then least degree.
 * Linear on a tree.
 *
 * @param count - number of nodes
 * @param pairs - node pairs, flat: `a0, b0, a1, b1, ...`; a pair may repeat
 * @returns every node once, first to eliminate first
 */
export function eliminationOrder(count: number, pairs: Int32Array): Int32Array {
  const degree = new Int32Array(count);
  for (let i = 0; i < pairs.length; i += 2) {
    if (pairs[i] !== pairs[i + 1]) {
      degree[pairs[i]!]!++;
      degree[pairs[i + 1]!]!++;
    }
  }
  const start = new Int32Array(count + 1);
  for (let v = 0; v < count; v++) start[v + 1] = start[v]! + degree[v]!;
  const fill = start.slice();
  const neighbour = new Int32Array(start[count]!);
  for (let i = 0; i < pairs.length; i += 2) {
    const a = pairs[i]!;
    const b = pairs[i + 1]!;
    if (a === b) continue;
    neighbour[fill[a]!++] = b;
    neighbour[fill[b]!++] = a;
  }
  const order = new Int32Array(count);
  const gone = new Uint8Array(count);
  let head = 0;
  let tail = 0;
  for (let v = 0; v < count; v++) if (degree[v]! <= 1) order[tail++] = v;
  const queued = new Uint8Array(count);
  for (let i = 0; i < tail; i++) queued[order[i]!] = 1;
  while (head < tail) {
    const v = order[head++]!;
    gone[v] = 1;
    for (let i = start[v]!; i < start[v + 1]!; i++) {
      const w = neighbour[i]!;
      if (gone[w]) continue;
      degree[w]!--;
      if (degree[w]! <= 1 && !queued[w]) {
        queued[w] = 1;
        order[tail++] = w;
      }
    }
  }
  if (tail < count) orderCore(count, start, neighbour, gone, order, tail);
  return order;
}

/** Least-degree order of what remains once every leaf is gone: the loops. */
function orderCore(
  count: number,
  start: Int32Array,
  neighbour: Int32Array,
  gone: Uint8Array,
  order: Int32Array,
  tail: number,
): void {
  const sets = new Map<number, Set<number>>();
  const buckets: Set<number>[] = [];
  const place = (v: number, d: number) => {
    while (buckets.length <= d) buckets.push(new Set());
    buckets[d]!.add(v);
  };
  for (let v = 0; v < count; v++) {
    if (gone[v]) continue;
    const set = new Set<number>();
    for (let i = start[v]!; i < start[v + 1]!; i++) if (!gone[neighbour[i]!]) set.add(neighbour[i]!);
    sets.set(v, set);
    place(v, set.size);
  }
  let low = 0;
  while (tail < count) {
    while (buckets[low]!.size === 0) low++;
    const v: number = buckets[low]!.values().next().value!;
    buckets[low]!.delete(v);
    order[tail++] = v;
    const around = [...sets.get(v)!];
    sets.delete(v);
    for (const w of around) {
      const set = sets.get(w)!;
      buckets[set.size]!.delete(w);
      set.delete(v);
      for (const u of around) if (u !== w) set.add(u);
      place(w, set.size);
      if (set.size < low) low = set.size;
    }
    low = Math.max(0, low - 1);
  }
}
