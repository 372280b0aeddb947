import { MATERIALS } from '../catalogue/materials.ts';
import type { MaterialRow } from '../catalogue/materials.ts';
import { materialsOf } from '../document/route.ts';
import type { Run } from '../document/schema-pieces.ts';
import type { CompiledShop } from '../network/compile.ts';
import { driveRise } from '../network/fan-drive.ts';

const rated = new WeakMap<Run, number | null>();

/** Suction that a run stands, or what was found of the same run before [Pa]. */
export function keptRating(run: Run): number | null {
  const old = rated.get(run);
  if (old !== undefined) return old;
  const rating = ratingOf(run);
  rated.set(run, rating);
  return rating;
}

/** Suction that a run stands [Pa]: what its maker says as typed, else the weakest material that has a figure. */
export function ratingOf(run: Run, materials: readonly MaterialRow[] = MATERIALS): number | null {
  if (run.maxSuction !== undefined) return run.maxSuction.si;
  const used = new Set(materialsOf(run));
  const ratings = materials.flatMap((row) =>
    used.has(row.id) && row.maxSuction_Pa !== undefined ? [row.maxSuction_Pa] : [],
  );
  return ratings.length > 0 ? Math.min(...ratings) : null;
}

/**
 * Suction that the fans can put on each element if the way in is blocked [Pa], by element: the sum of the shut-off
 * pressures of the fans that it leads to. Parts on the pushing side get none.
 */
export function suctionAtShutOff(shop: CompiledShop): Float64Array {
  const { packed } = shop;
  const suction = new Float64Array(packed.elementCount);
  const touching: number[][] = Array.from({ length: packed.nodeCount }, () => []);
  for (let e = 0; e < packed.elementCount; e++) {
    touching[packed.from[e]!]!.push(e);
    touching[packed.to[e]!]!.push(e);
  }
  const fanAt = new Set(packed.fans);
  const out = new Float64Array(3);
  for (const fan of packed.fans) {
    driveRise(packed.net.elements[fan]!.fan!, 0, shop.air.density_kgm3, out);
    const pull = Math.max(0, out[0]!);
    // from the fan's inlet backwards, as far as a place whose pressure is given; through a fan only against its blow
    const seen = new Set<number>([packed.from[fan]!]);
    const passed = new Set<number>();
    const queue = [...seen];
    for (let v = queue.pop(); v !== undefined; v = queue.pop()) {
      for (const e of touching[v]!) {
        if (e === fan || passed.has(e) || (fanAt.has(e) && packed.to[e] !== v)) continue;
        passed.add(e);
        const w = packed.from[e] === v ? packed.to[e]! : packed.from[e]!;
        if (seen.has(w) || !Number.isNaN(packed.given_Pa[w]!)) continue;
        seen.add(w);
        queue.push(w);
      }
    }
    for (const e of passed) suction[e]! += pull;
  }
  return suction;
}
