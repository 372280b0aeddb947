import { nearestOnLine } from '../geometry/run-hit.ts';
import { snapToGrid } from '../geometry/snap.ts';
import type { PlanPoint } from '../geometry/space.ts';
import { isShut } from './gate-openings.ts';
import type { Scene } from './scene.svelte.ts';

/** Puts a corner into the leg of a run that is nearest to a point. */
export function insertCorner(scene: Scene, run: string, point: PlanPoint): void {
  const view = scene.runById.get(run);
  if (!view) return;
  if (view.typed) {
    scene.say('the lengths of this run are typed; remove it and draw it to give it corners', true);
    return;
  }
  const hit = nearestOnLine(view.points, point);
  if (!hit) return;
  const at = snapToGrid(hit.point, scene.grid.step_m);
  scene.run({ kind: 'insertCorner', run, leg: hit.leg, at: { x: at.x, y: at.y } });
}

/** Opens a gate that is shut and shuts one that is open, in the setting on screen; as drawn where there is none. */
export function toggleGate(scene: Scene, id: string): void {
  const mark = scene.marks.find((m) => m.id === id);
  const text = isShut(scene.openings.get(id) ?? mark?.opening ?? 1) ? '100 %' : '0 %';
  const { setting, document } = scene.wb;
  if (document.settings.length === 0) scene.run({ kind: 'setField', id, path: ['opening'], text });
  else scene.run({ kind: 'setGate', setting, gate: id, text });
}
