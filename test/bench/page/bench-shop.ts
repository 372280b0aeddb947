import { applyCommand } from '../../../core/document/commands/apply.ts';
import type { Command } from '../../../core/document/commands/command.ts';
import { blankDocument } from '../../../core/document/commands/defaults.ts';
import { effectivePieces } from '../../../core/document/effective-pieces.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { writeDocument } from '../../../core/document/write.ts';

/** Distance between branches along the main [m]. */
const STEP_M = 1.2;

/** Pieces that the runs of a shop consist of, as they are drawn. */
export function countPieces(shop: ShopDocument): number {
  const things = new Map(shop.things.map((thing) => [thing.id, thing]));
  return shop.runs.reduce((sum, run) => sum + effectivePieces(run, things).length, 0);
}

/**
 * A drawn shop with about so many pieces: a main to a cyclone and a fan, and gated branches that end on it, each drawn
 * as a person would, by the commands of the window. Every gate is open.
 */
export function benchShop(pieces: number): { text: string; pieces: number; branches: number } {
  let shop = blankDocument('si');
  const act = (command: Command): readonly string[] => {
    const done = applyCommand(shop, command);
    if (!done.ok) throw new Error(`${command.kind}: ${done.message}`);
    shop = done.document;
    return done.created ?? [];
  };
  const branches = Math.max(2, Math.round(pieces / 6));
  const end = STEP_M * (branches + 2);
  act({ kind: 'place', thing: 'port', at: { x: 0, y: 0 } });
  act({ kind: 'place', thing: 'cyclone', at: { x: end, y: 0 } });
  act({ kind: 'place', thing: 'fan', at: { x: end + 2, y: 2 } });
  act({ kind: 'place', thing: 'filter', at: { x: end + 4, y: 2 } });
  act({ kind: 'place', thing: 'exhaust', at: { x: end + 6, y: 2 } });
  const draw = (from: string, to: string) =>
    act({ kind: 'drawRun', from: { thing: from }, to: { thing: to }, corners: [] });
  const set = (id: string, path: (string | number)[], text: string) =>
    act({ kind: 'setField', id, path, text });
  // main, devices and fan are as large as the branches together ask for
  const main_mm = Math.round(100 * Math.sqrt(branches));
  const fan = shop.things.find((thing) => thing.kind === 'fan')!;
  // the last first: flows have to rise all along
  fan.curve.points
    .map(({ flow }, i) => [i, flow.si * 3600 * branches] as const)
    .reverse()
    .forEach(([i, flow_m3h]) => set(fan.id, ['curve', 'points', i, 'flow'], `${flow_m3h} m3/h`));
  set(fan.id, ['outletDiameter'], `${main_mm} mm`);
  set('cyclone-1', ['bodyDiameter'], `${3 * main_mm} mm`);
  set('filter-1', ['layers', 0, 'area'], `${10 * branches} m2`);
  draw('port-1', 'cyclone-1');
  act({
    kind: 'drawRun',
    from: { thing: 'cyclone-1', end: 'out' },
    to: { thing: 'fan-1', end: 'in' },
    corners: [],
  });
  act({
    kind: 'drawRun',
    from: { thing: 'fan-1', end: 'out' },
    to: { thing: 'filter-1', end: 'in' },
    corners: [],
  });
  act({ kind: 'drawRun', from: { thing: 'filter-1', end: 'out' }, to: { thing: 'exhaust-1' }, corners: [] });
  for (const { id } of shop.runs) set(id, ['diameter'], `${main_mm} mm`);
  for (let i = 1; i <= branches && countPieces(shop) < pieces; i++) {
    const x = STEP_M * i;
    const [port] = act({ kind: 'place', thing: 'port', at: { x: x - 1.5, y: 3 } });
    const main = shop.runs.find((run) => run.to.startsWith('cyclone-1'))!;
    const made = act({
      kind: 'drawRun',
      from: { thing: port! },
      to: { run: main.id, leg: 0, at: STEP_M / (end - x + STEP_M) },
      corners: [{ x: x - 0.6, y: 3 }],
    });
    const branch = made.find((id) => shop.runs.some((run) => run.id === id && run.from.startsWith(port!)));
    set(branch!, ['diameter'], '100 mm');
    act({ kind: 'addPiece', run: branch!, leg: 0, at: 0.5, piece: { kind: 'gate' } });
  }
  return { text: writeDocument(shop), pieces: countPieces(shop), branches: shop.things.length - 5 };
}
