import type { DeviceResult, FanResult, RunResult, SettingResult } from '../../../network/solution.ts';
import { marginOf } from './status.ts';

export type PathStop =
  | { readonly kind: 'run'; readonly run: RunResult }
  | { readonly kind: 'device'; readonly device: DeviceResult }
  | { readonly kind: 'fan'; readonly fan: FanResult };

/** One way of the air, from an opening through separator, fan and filter to where it leaves. */
export interface AirPath {
  /** Thing at which it starts. */
  readonly from: string;
  readonly stops: readonly PathStop[];
  /** Smallest margin of its runs; null where nothing is asked of any. */
  readonly margin: number | null;
  /** Run with that margin. */
  readonly worstRun: string | null;
}

const thingOf = (end: string): string => end.split('.', 1)[0]!;

/**
 * Every way of the air through a setting, the one furthest from holding first. All of them lose the same pressure from
 * the room to the fan, for the air shares itself out until they do; so what tells them apart is how well they hold.
 */
export function airPaths(result: SettingResult): AirPath[] {
  const leaving = new Map<string, RunResult>();
  const reached = new Set<string>();
  for (const run of result.runs) {
    if (run.massFlow_kgs === 0) continue;
    const [from, to] = run.massFlow_kgs > 0 ? [run.from, run.to] : [run.to, run.from];
    reached.add(thingOf(to));
    const other = leaving.get(thingOf(from));
    // where a stream parts, the larger part is followed
    if (!other || Math.abs(other.massFlow_kgs) < Math.abs(run.massFlow_kgs)) leaving.set(thingOf(from), run);
  }
  const devices = new Map(result.devices.map((device) => [device.id, device]));
  const fans = new Map(result.fans.map((fan) => [fan.id, fan]));
  const paths = [...leaving.keys()]
    .filter((thing) => !reached.has(thing))
    .map((from): AirPath => {
      const stops: PathStop[] = [];
      const done = new Set<string>();
      let thing: string | null = from;
      while (thing !== null && !done.has(thing)) {
        done.add(thing);
        const device = devices.get(thing);
        const fan = fans.get(thing);
        if (device) stops.push({ kind: 'device', device });
        if (fan) stops.push({ kind: 'fan', fan });
        const run = leaving.get(thing);
        if (run) stops.push({ kind: 'run', run });
        thing = run ? thingOf(run.massFlow_kgs > 0 ? run.to : run.from) : null;
      }
      let margin: number | null = null;
      let worstRun: string | null = null;
      for (const stop of stops) {
        const own = stop.kind === 'run' ? marginOf(stop.run) : null;
        if (own === null || (margin !== null && own >= margin)) continue;
        margin = own;
        worstRun = (stop as { run: RunResult }).run.id;
      }
      return { from, stops, margin, worstRun };
    });
  const first = (path: AirPath): RunResult | null => {
    const stop = path.stops.find((s) => s.kind === 'run');
    return stop?.kind === 'run' ? stop.run : null;
  };
  const order = (path: AirPath) => path.margin ?? Infinity;
  return paths.sort((a, b) => {
    if (order(a) !== order(b)) return order(a) - order(b);
    // a shared main is as bad for all; then each one's own first run tells
    const own = (path: AirPath) => marginOf(first(path)!) ?? Infinity;
    if (own(a) !== own(b)) return own(a) - own(b);
    return Math.abs(first(b)!.massFlow_kgs) - Math.abs(first(a)!.massFlow_kgs);
  });
}
