import { nearestOnLine } from '../geometry/run-hit.ts';
import { roundTo, snapToGrid } from '../geometry/snap.ts';
import { apart, planPoint } from '../geometry/space.ts';
import type { PlanPoint } from '../geometry/space.ts';
import type { Scene } from './scene.svelte.ts';
import type { TrayItem } from './tray-items.ts';

/** Where what is taken from the tray would go, and the run that a piece would go on. */
export interface Ghost {
  readonly point: PlanPoint;
  readonly run: { readonly id: string; readonly leg: number; readonly at: number } | null;
}

/** How near a run must be for a piece to go on it [px]. */
const REACH_PX = 16;
/** Things are put this far from each other, where the program chooses the place [m]. */
const ROOM_M = 0.7;
const RING_M = 0.8;
const MOST_RINGS = 12;

export function ghostAt(scene: Scene, item: TrayItem, point: PlanPoint, free: boolean): Ghost {
  if (item.makes.kind === 'thing') {
    return { point: free ? point : snapToGrid(point, scene.grid.step_m), run: null };
  }
  let best: (Ghost & { distance_m: number }) | null = null;
  for (const { id, points } of scene.runs) {
    const hit = nearestOnLine(points, point);
    if (hit && (!best || hit.distance_m < best.distance_m)) {
      best = { point: hit.point, run: { id, leg: hit.leg, at: hit.at }, distance_m: hit.distance_m };
    }
  }
  return best && best.distance_m <= REACH_PX / scene.scale ? best : { point, run: null };
}

/** Places a thing, or puts a gate on the run that is near; whether it was done. */
export function placeItem(scene: Scene, item: TrayItem, point: PlanPoint): boolean {
  const { point: at, run } = ghostAt(scene, item, point, false);
  if (item.makes.kind === 'piece') {
    if (!run) scene.say('a gate goes on a run: click on one', true);
    return run !== null && addGate(scene, run.id, run.leg, run.at);
  }
  const { thing, preset } = item.makes;
  const made = scene.run({
    kind: 'place',
    thing,
    at: { x: at.x, y: at.y },
    ...(preset === undefined ? {} : { preset }),
  });
  if (made) scene.wb.select(made);
  return made !== null;
}

function addGate(scene: Scene, run: string, leg: number, at: number): boolean {
  const made = scene.run({ kind: 'addPiece', run, leg, at: roundTo(at, 1e-4), piece: { kind: 'gate' } });
  if (made && made.length > 0) scene.wb.select(made);
  return made !== null;
}

/** Puts a gate in the middle of the longest leg of the run that is selected. */
export function gateOnSelection(scene: Scene): void {
  const run = scene.runs.find((view) => scene.wb.selection.has(view.id));
  if (!run) {
    scene.say('select the run that the gate goes on first', true);
    return;
  }
  const lengths = run.points.slice(1).map((p, i) => apart(run.points[i]!, p));
  addGate(scene, run.id, Math.max(0, lengths.indexOf(Math.max(...lengths))), 0.5);
}

/** A place near the middle of the view on which nothing stands. */
export function freePlace(scene: Scene): PlanPoint {
  const middle = snapToGrid(scene.middle, scene.grid.step_m);
  const free = (p: PlanPoint) => scene.things.every((view) => apart(view, p) > ROOM_M);
  for (let ring = 0; ring < MOST_RINGS; ring++) {
    const count = Math.max(1, ring * 6);
    for (let i = 0; i < count; i++) {
      const angle = (i * 2 * Math.PI) / count;
      const p = planPoint(
        middle.x + RING_M * ring * Math.cos(angle),
        middle.y + RING_M * ring * Math.sin(angle),
      );
      if (free(p)) return snapToGrid(p, scene.grid.step_m);
    }
  }
  return middle;
}
