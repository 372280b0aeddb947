import type { Balance, NetState } from '../network/balance.ts';
import type { CompiledRun, CompiledShop } from '../network/compile.ts';
import { densityAt, marchSegment, newMarch, staticAt } from '../network/march.ts';
import { LOCAL_DOWNSTREAM, LOCAL_UPSTREAM } from '../network/net.ts';
import type { PackedNet } from '../network/packed.ts';

/** Place in a run where the air's velocity counts. */
interface Spot {
  /** First segment of the piece and the one after its last, in the packed net. */
  readonly first: number;
  readonly after: number;
  readonly area_m2: number;
}

/** What of a run is read in every sample: the places where its velocity counts, as `runResult` has them. */
export interface RunReader {
  readonly element: number;
  readonly compiled: CompiledRun;
  readonly spots: readonly Spot[];
}

export function runReader(shop: CompiledShop, compiled: CompiledRun): RunReader {
  const { pieces, element } = compiled;
  let at = shop.packed.segmentStart[element]!;
  const spots: (Spot & { carries: boolean })[] = [];
  for (const { area_m2, carries, segments } of pieces) {
    if (area_m2 !== null) spots.push({ first: at, after: at + segments, area_m2, carries });
    at += segments;
  }
  const carrying = spots.filter((spot) => spot.carries);
  return { element, compiled, spots: pieces.some((piece) => piece.carries) ? carrying : spots };
}

const march = newMarch();

/** What a run does in one sample. */
export interface RunReading {
  /** Lowest velocity at its spots [m/s]; NaN where it has none. */
  velocity_ms: number;
  flow_m3s: number;
  /** True where the air comes too near to the speed of sound. */
  choked: boolean;
}

/**
 * Reads velocity and flow of a run off a balanced net into `out`, with the same steps as `runResult` and without its
 * pieces: a test holds the two together.
 */
export function readRun(
  packed: PackedNet,
  balance: Balance,
  state: NetState,
  { element: e, spots }: RunReader,
  out: RunReading,
): void {
  const signed = state.flow_kgs[e]!;
  const m = Math.abs(signed);
  const reversed = signed < 0;
  const inlet = balance.endPressure(state, e, !reversed);
  march.total_Pa = inlet;
  march.byFlow = 0;
  march.byInlet = 1;
  march.choked = false;
  let lowest = NaN;
  const see = (area_m2: number, total_Pa: number) => {
    const velocity = m / (densityAt(packed, staticAt(packed, total_Pa, m, area_m2)) * area_m2);
    if (!(lowest <= velocity)) lowest = velocity;
  };
  const first = packed.segmentStart[e]!;
  const last = packed.segmentStart[e + 1]!;
  if (!reversed) {
    let s = first;
    for (const spot of spots) {
      while (s < spot.first) marchSegment(packed, s++, m, false, march);
      const ownAfter = spot.after > spot.first && packed.type[spot.first] === LOCAL_DOWNSTREAM;
      if (!ownAfter) see(spot.area_m2, march.total_Pa);
      while (s < spot.after) marchSegment(packed, s++, m, false, march);
      if (ownAfter) see(spot.area_m2, march.total_Pa);
    }
    while (s < last) marchSegment(packed, s++, m, false, march);
  } else {
    let s = last - 1;
    for (let i = spots.length - 1; i >= 0; i--) {
      const spot = spots[i]!;
      while (s >= spot.after) marchSegment(packed, s--, m, true, march);
      const ownAfter = spot.after > spot.first && packed.type[spot.first] === LOCAL_UPSTREAM;
      if (!ownAfter) see(spot.area_m2, march.total_Pa);
      while (s >= spot.first) marchSegment(packed, s--, m, true, march);
      if (ownAfter) see(spot.area_m2, march.total_Pa);
    }
    while (s >= first) marchSegment(packed, s--, m, true, march);
  }
  out.velocity_ms = lowest;
  out.flow_m3s = signed / densityAt(packed, inlet);
  out.choked = march.choked;
}
