import type { SourceContext } from './context.ts';
import { dustOf } from '../network/port-dust.ts';
import type { Dust } from '../network/port-dust.ts';

/** Where one dust comes from and goes, by ids of ports, runs and devices. */
export interface DustPath {
  readonly dust: Dust;
  /** Whether a port names it; else it stands for a dust that nobody named. */
  readonly named: boolean;
  readonly ports: Set<string>;
  /** Runs that carry it as it was cut. */
  readonly raw: Set<string>;
  /** Runs that carry what a separator let through. */
  readonly fine: Set<string>;
  /** Separators that it reaches. */
  readonly separators: Set<string>;
}

/** Dust that is taken where a port asks for a velocity and names no dust. */
export const UNNAMED_DUST = 'very-light-dust';

type Side = { readonly run: string; readonly to: string };

/** Follows each dust with the air of every setting, and along the runs as drawn where nothing is known of them. */
export function dustPaths({ shop, flows: byRun }: SourceContext): DustPath[] {
  const leaving = new Map<string, Side[]>();
  const add = (from: string, side: Side) => {
    const known = leaving.get(from);
    if (known) known.push(side);
    else leaving.set(from, [side]);
  };
  for (const { run, from, to } of shop.runs) {
    const flows = byRun.get(run.id) ?? [];
    if (flows.length === 0 || flows.some((flow) => flow > 0))
      add(from.thing.id, { run: run.id, to: to.thing.id });
    if (flows.some((flow) => flow < 0)) add(to.thing.id, { run: run.id, to: from.thing.id });
  }
  const paths = new Map<string, DustPath>();
  for (const port of shop.things.values()) {
    if (port.kind !== 'port' || (port.dust === undefined && !port.needs?.velocity)) continue;
    const id = port.dust ?? UNNAMED_DUST;
    const key = `${id}|${port.dust === undefined}`;
    const path = paths.get(key) ?? {
      dust: dustOf(shop.document, id),
      named: port.dust !== undefined,
      ports: new Set<string>(),
      raw: new Set<string>(),
      fine: new Set<string>(),
      separators: new Set<string>(),
    };
    paths.set(key, path);
    path.ports.add(port.id);
    follow(shop.things, leaving, port.id, path);
  }
  return [...paths.values()];
}

function follow(
  things: SourceContext['shop']['things'],
  leaving: ReadonlyMap<string, readonly Side[]>,
  start: string,
  path: DustPath,
): void {
  const seen = new Set<string>();
  const queue: { at: string; fine: boolean }[] = [{ at: start, fine: false }];
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    for (const { run, to } of leaving.get(next.at) ?? []) {
      const key = `${run} ${next.fine}`;
      if (seen.has(key)) continue;
      seen.add(key);
      (next.fine ? path.fine : path.raw).add(run);
      const kind = things.get(to)?.kind;
      const separates = kind === 'cyclone' || kind === 'bin';
      if (separates) path.separators.add(to);
      // what a filter lets through asks for nothing more
      if (kind !== 'filter') queue.push({ at: to, fine: next.fine || separates });
    }
  }
}
