import type { UpkeepResult } from '../../core/upkeep/result.ts';
import { UPKEEP_DEFAULTS } from '../../core/upkeep/usage.ts';

/** What has gone into a bin, over its volume, whatever was emptied: grows from point to point of the march. */
export interface BinHeap {
  readonly id: string;
  /** One for each point of the timeline. */
  readonly heap: readonly number[];
}

/** Share of its volume at which a bin is emptied, as the march took it. */
export const fullShare = ({ assumptions }: UpkeepResult): number =>
  assumptions.find(({ what }) => what === UPKEEP_DEFAULTS.binFull.what)?.value ??
  UPKEEP_DEFAULTS.binFull.value;

/**
 * Heaps of the bins that have a volume. A point says how full a bin is since it was last emptied; how often that was by
 * then follows from the mass, which grows with the heap.
 */
export function binHeaps(result: UpkeepResult): BinHeap[] {
  const { timeline, binsFull } = result;
  const full = fullShare(result);
  const last = timeline.at(-1);
  if (!last) return [];
  return last.bins.flatMap(({ id, filled, mass_kg }, b) => {
    if (filled === null) return [];
    const times = binsFull.find((bin) => bin.id === id)?.times ?? 0;
    const all = times * full + filled;
    const heap = timeline.map(({ bins }) => {
      const at = bins[b]!;
      const about = mass_kg > 0 ? (all * at.mass_kg) / mass_kg : 0;
      return Math.max(0, Math.round((about - at.filled!) / full)) * full + at.filled!;
    });
    return [{ id, heap }];
  });
}

/** How full a bin stands over the hours: up to the brim, emptied, up again. Places are hours and shares of its volume. */
export function binTeeth(
  hours: readonly number[],
  heap: readonly number[],
  full: number,
): (readonly [hours: number, filled: number])[] {
  const places: [number, number][] = [];
  for (let i = 0; i < hours.length; i++) {
    const before = i === 0 ? 0 : Math.floor(heap[i - 1]! / full + 1e-9);
    const now = Math.floor(heap[i]! / full + 1e-9);
    for (let k = before + 1; i > 0 && k <= now; k++) {
      const share = (k * full - heap[i - 1]!) / (heap[i]! - heap[i - 1]! || 1);
      const at = hours[i - 1]! + share * (hours[i]! - hours[i - 1]!);
      places.push([at, full], [at, 0]);
    }
    places.push([hours[i]!, heap[i]! - now * full]);
  }
  return places;
}
