import type { Activity } from './activity.ts';
import type { PackedNet } from './packed.ts';

/**
 * Elements in which air can move but nothing moves it: no fan in their part of the network, and one and the same given
 * pressure at all its open ends. Two open hoods that join before a shut gate are such a part. The solver leaves rounding
 * there instead of zero.
 */
export function stillElements(packed: PackedNet, activity: Activity): number[] {
  const { given_Pa, from, to } = packed;
  const parent = Int32Array.from({ length: packed.nodeCount }, (_, v) => v);
  const rootOf = (v: number): number => {
    let root = v;
    while (parent[root] !== root) root = parent[root]!;
    for (let at = v; at !== root;) {
      const next = parent[at]!;
      parent[at] = root;
      at = next;
    }
    return root;
  };
  const isGiven = (v: number) => !Number.isNaN(given_Pa[v]!);
  // given pressures part the network: what happens behind one says nothing of the other side
  for (const e of activity.elements) {
    if (!isGiven(from[e]!) && !isGiven(to[e]!)) parent[rootOf(from[e]!)] = rootOf(to[e]!);
  }
  const fans = new Set(packed.fans);
  const first = new Map<number, number>();
  const driven = new Set<number>();
  const partOf = (e: number) =>
    isGiven(from[e]!) ? (isGiven(to[e]!) ? -1 - e : rootOf(to[e]!)) : rootOf(from[e]!);
  for (const e of activity.elements) {
    const part = partOf(e);
    if (fans.has(e)) driven.add(part);
    for (const v of [from[e]!, to[e]!]) {
      if (!isGiven(v)) continue;
      const pressure = first.get(part) ?? given_Pa[v]!;
      first.set(part, pressure);
      if (pressure !== given_Pa[v]) driven.add(part);
    }
  }
  return [...activity.elements].filter((e) => !driven.has(partOf(e)));
}
