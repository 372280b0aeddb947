import type { UpkeepPoint, UpkeepResult } from '../../core/upkeep/result.ts';
import type { BinHeap } from './bin-heaps.ts';

/** What the shop does at an hour, between two points of the march in a straight line. */
export interface HourRead {
  readonly time_h: number;
  readonly settings: readonly {
    readonly name: string;
    readonly flow_m3s: number;
    readonly suction_Pa: number;
    readonly tightest: { readonly run: string; readonly margin: number } | null;
  }[];
  readonly drops: readonly { readonly filter: string; readonly drop_Pa: number }[];
  readonly bins: readonly { readonly id: string; readonly filled: number }[];
}

/** The points on either side of an hour, and where between them it lies; after a cleaning that falls on it. */
export function around(
  timeline: readonly UpkeepPoint[],
  time_h: number,
): { readonly before: number; readonly after: number; readonly share: number } {
  let before = 0;
  while (before + 1 < timeline.length && timeline[before + 1]!.time_h <= time_h) before++;
  const after = Math.min(before + 1, timeline.length - 1);
  const [a, b] = [timeline[before]!.time_h, timeline[after]!.time_h];
  return { before, after, share: b > a ? Math.min(1, Math.max(0, (time_h - a) / (b - a))) : 0 };
}

export function readHour(
  { timeline }: UpkeepResult,
  heaps: readonly BinHeap[],
  full: number,
  time_h: number,
): HourRead {
  const { before, after, share } = around(timeline, time_h);
  const [a, b] = [timeline[before]!, timeline[after]!];
  const between = (from: number, to: number) => from + share * (to - from);
  return {
    time_h,
    settings: a.settings.map((one, i) => {
      const next = b.settings[i]!;
      const same = one.tightest && next.tightest?.run === one.tightest.run ? next.tightest : null;
      const nearer = share < 0.5 ? one.tightest : next.tightest;
      return {
        name: one.name,
        flow_m3s: between(one.flow_m3s, next.flow_m3s),
        suction_Pa: between(one.suction_Pa, next.suction_Pa),
        tightest:
          one.tightest && same
            ? { run: same.run, margin: between(one.tightest.margin, same.margin) }
            : nearer,
      };
    }),
    drops: a.drops.map(({ filter, drop_Pa }, i) => ({
      filter,
      drop_Pa: between(drop_Pa, b.drops[i]!.drop_Pa),
    })),
    bins: heaps.map(({ id, heap }) => {
      const now = between(heap[before]!, heap[after]!);
      return { id, filled: now - Math.floor(now / full + 1e-9) * full };
    }),
  };
}
