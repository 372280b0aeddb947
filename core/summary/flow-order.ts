import type { DeviceResult, FanResult, RunResult, SettingResult } from '../network/solution.ts';

/** One stop on the way of the air. */
export type Stop =
  | { readonly kind: 'run'; readonly run: RunResult }
  | { readonly kind: 'device'; readonly device: DeviceResult }
  | { readonly kind: 'fan'; readonly fan: FanResult };

const thingOf = (end: string): string => end.split('.', 1)[0]!;

/** Runs, devices and fans in the order in which air passes them; branches stand before the main that they enter. */
export function flowOrder(result: SettingResult): Stop[] {
  const at = new Map<string, Stop>();
  for (const device of result.devices) at.set(device.id, { kind: 'device', device });
  for (const fan of result.fans) at.set(fan.id, { kind: 'fan', fan });
  const leaving = new Map<string, RunResult[]>();
  const arriving = new Map<string, number>();
  for (const run of result.runs) {
    const [from, to] = run.massFlow_kgs >= 0 ? [run.from, run.to] : [run.to, run.from];
    const list = leaving.get(thingOf(from));
    if (list) list.push(run);
    else leaving.set(thingOf(from), [run]);
    arriving.set(thingOf(to), (arriving.get(thingOf(to)) ?? 0) + 1);
  }
  const stops: Stop[] = [];
  const done = new Set<string>();
  // depth first from the openings, so that a line is followed to where it waits for another
  const pass = (start: string) => {
    const stack = [start];
    while (stack.length > 0) {
      const thing = stack.pop()!;
      if (done.has(thing)) continue;
      done.add(thing);
      const stop = at.get(thing);
      if (stop) stops.push(stop);
      for (const run of [...(leaving.get(thing) ?? [])].reverse()) {
        stops.push({ kind: 'run', run });
        const next = thingOf(run.massFlow_kgs >= 0 ? run.to : run.from);
        const left = arriving.get(next)! - 1;
        arriving.set(next, left);
        if (left <= 0) stack.push(next);
      }
    }
  };
  for (const thing of [...leaving.keys()]) if (!arriving.has(thing)) pass(thing);
  // what stands in a ring has no start; take it as drawn
  for (const thing of [...leaving.keys()]) pass(thing);
  return stops;
}
