import { tick } from 'svelte';
import { apart, planPoint } from '../geometry/space.ts';
import { acrossLeg, snappedShift } from './leg-move.ts';
import type { PlanTools } from './plan-tools.svelte.ts';
import { toggleGate } from './run-edits.ts';
import { SCALE_LIMITS } from './scene.svelte.ts';
import type { Scene } from './scene.svelte.ts';
import type { PlanView } from '../state/workbook.svelte.ts';
import { screenPoint, zoomAbout } from '../geometry/space.ts';

/** What the keys need beside the tools. */
export interface KeyReach {
  readonly scene: Scene;
  readonly tools: PlanTools;
  /** Opens the list of what a run can be joined to. */
  readonly openConnect: () => void;
}

const ARROWS: Readonly<Record<string, readonly [dx: number, dy: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
const PAN_PX = 60;
const ZOOM_STEP = 1.25;
const TURN_STEP_RAD = Math.PI / 12;

/** Lets menus and keys reach the view from outside the plan; gives back what takes the offer away. */
export function offerView(scene: Scene): () => void {
  const view: PlanView = {
    fit: () => scene.fit(),
    zoomIn: () => zoomBy(scene, ZOOM_STEP),
    zoomOut: () => zoomBy(scene, 1 / ZOOM_STEP),
  };
  scene.wb.planView = view;
  return () => {
    if (scene.wb.planView === view) scene.wb.planView = null;
  };
}

export function zoomBy(scene: Scene, factor: number): void {
  const about = screenPoint(scene.size.width_px / 2, scene.size.height_px / 2);
  scene.view = zoomAbout(scene.view, about, factor, SCALE_LIMITS);
}

/** Starts a run at the thing that is selected, at its free end from which air comes if there is one. */
export function startFromSelection({ scene, tools, openConnect }: KeyReach): void {
  const chosen = scene.ends.filter((end) => scene.wb.selection.has(end.thing) && end.free);
  const from = chosen.find((end) => end.air !== 'into') ?? chosen[0];
  if (from) {
    tools.startRun(from);
    openConnect();
    return;
  }
  const some = scene.things.some((view) => scene.wb.selection.has(view.id));
  tools.tool = { kind: 'run' };
  scene.say(
    some ? 'every end of this has its run already; start on a free end' : 'click a free end to start the run',
  );
}

/** A key that was pressed on the plan while a run is being drawn; whether it was taken. */
function draftKey(event: KeyboardEvent, { tools, openConnect }: KeyReach): boolean {
  const draft = tools.draft!;
  const times = event.shiftKey ? 10 : 1;
  const arrow = ARROWS[event.key];
  if (arrow) draft.step(arrow[0] * times, arrow[1] * times);
  else if (event.key === 'PageUp') draft.lift(times);
  else if (event.key === 'PageDown') draft.lift(-times);
  else if (event.key === 'Backspace') return draft.back();
  else if (event.key === 'Escape') {
    if (draft.typed === '') return tools.cancel();
    draft.typed = '';
  } else if (event.key === 'Enter') {
    if (draft.typed !== '') draft.setTyped();
    else if (draft.target) tools.finish();
    else if (apart(draft.last, draft.loose) < 1e-6 && draft.corners.length > 0) tools.finish(null);
    else draft.setCorner();
  } else if (draft.typed === '' && event.key.toLowerCase() === 'c') openConnect();
  else if (draft.typed === '' && event.key.toLowerCase() === 'a') draft.nextEntry();
  else if (event.key.length === 1 && (draft.typed !== '' || /[\d.(]/.test(event.key)))
    draft.typed += event.key;
  else return false;
  return true;
}

/** A key that was pressed with the focus on the plan; whether it was taken. */
export function planKey(event: KeyboardEvent, reach: KeyReach): boolean {
  const { scene, tools } = reach;
  if (event.ctrlKey || event.metaKey) return false;
  if (tools.draft) return draftKey(event, reach);
  if (event.altKey) return false;
  const target = (event.target as Element).closest<SVGGElement>(
    '[data-thing], [data-run], [data-mark], [data-corner], [data-leg]',
  );
  const times = event.shiftKey ? 10 : 1;
  const arrow = ARROWS[event.key];
  if (arrow) {
    if (target?.dataset.corner !== undefined)
      moveCornerBy(scene, target, arrow[0] * times, arrow[1] * times, 0);
    else if (target?.dataset.leg !== undefined)
      moveLegBy(reach, target, arrow[0] * times, arrow[1] * times, 0);
    else if (tools.movable().length > 0) tools.nudge(arrow[0] * times, arrow[1] * times);
    else {
      const { x, y, pixelsPerMetre } = scene.view;
      scene.view = { x: x - arrow[0] * PAN_PX, y: y - arrow[1] * PAN_PX, pixelsPerMetre };
    }
    return true;
  }
  if (event.key === 'PageUp' || event.key === 'PageDown') {
    const way = (event.key === 'PageUp' ? 1 : -1) * times;
    if (target?.dataset.corner !== undefined) moveCornerBy(scene, target, 0, 0, way);
    else if (target?.dataset.leg !== undefined) moveLegBy(reach, target, 0, 0, way);
    else tools.nudge(0, 0, way);
    return true;
  }
  if (event.key === 'Delete' && target?.dataset.corner !== undefined) {
    scene.run({ kind: 'removeCorner', run: target.dataset.of!, corner: Number(target.dataset.corner) });
    return true;
  }
  if ((event.key === 'Enter' || event.key === ' ') && target) {
    const id = target.dataset.thing ?? target.dataset.run ?? target.dataset.mark;
    if (target.dataset.gate !== undefined) toggleGate(scene, id!);
    // on what is selected already, Enter leads to its fields
    else if (event.key === 'Enter' && !event.shiftKey && id && isAlone(scene, id)) {
      scene.wb.goTo(id, ['name']);
      return true;
    }
    if (id) scene.wb.select([id], event.shiftKey ? 'toggle' : 'set');
    return true;
  }
  if (event.key === '[' || event.key === ']') return turnSelection(scene, event.key === ']' ? 1 : -1);
  return generalKey(event, reach);
}

/** Keys that the plan takes wherever the focus is, but in a text. */
export function generalKey(event: KeyboardEvent, reach: KeyReach): boolean {
  const { scene, tools } = reach;
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  if (tools.draft && draftKey(event, reach)) return true;
  const key = event.key.toLowerCase();
  if (key === 'r') startFromSelection(reach);
  else if (key === 'v') {
    tools.cancel();
    tools.tool = { kind: 'select' };
  } else if (key === 'f') scene.fit();
  else if (key === '+' || key === '=') zoomBy(scene, ZOOM_STEP);
  else if (key === '-') zoomBy(scene, 1 / ZOOM_STEP);
  else if (key === 'escape') return tools.cancel();
  else return false;
  return true;
}

const isAlone = (scene: Scene, id: string): boolean =>
  scene.wb.selection.size === 1 && scene.wb.selection.has(id);

function moveCornerBy(scene: Scene, handle: SVGGElement, dx: number, dy: number, dz: number): void {
  const run = handle.dataset.of!;
  const corner = Number(handle.dataset.corner);
  const point = scene.runById.get(run)?.points[corner + 1];
  if (!point) return;
  const { step_m } = scene.grid;
  const rise = scene.wb.units === 'si' ? 0.1 : 0.1524;
  const at = {
    x: point.x + dx * step_m,
    y: point.y + dy * step_m,
    ...(dz === 0 ? {} : { z: point.z + dz * rise }),
  };
  scene.run({ kind: 'moveCorner', run, corner, at });
}

/** Moves a leg by grid steps to the side that an arrow points to, or up and down. */
function moveLegBy({ scene, tools }: KeyReach, handle: SVGGElement, dx: number, dy: number, dz: number) {
  const run = handle.dataset.of!;
  const leg = Number(handle.dataset.leg);
  const points = scene.runById.get(run)?.points;
  const [from, to] = [points?.[leg], points?.[leg + 1]];
  const across = from && to ? acrossLeg(planPoint(from.x, from.y), planPoint(to.x, to.y)) : null;
  if (!points || !from || across === null) return;
  const { step_m } = scene.grid;
  const share = dx * across.x + dy * across.y;
  if (dz === 0 && Math.abs(share) < 0.5) {
    scene.say('the leg lies that way; the other arrow keys move it to its sides');
    return;
  }
  const start = planPoint(from.x, from.y);
  const by =
    dz === 0 ? snappedShift(start, across, Math.sign(share) * Math.hypot(dx, dy) * step_m, step_m) : 0;
  const rise = dz * (scene.wb.units === 'si' ? 0.1 : 0.1524);
  tools.beginKeys('Move leg');
  const shift = { dx: by * across.x, dy: by * across.y, ...(dz === 0 ? {} : { dz: rise }) };
  if (scene.run({ kind: 'moveLeg', run, leg, ...shift }) === null || leg > 0) return;
  // at a thing the run has gained a corner: the leg is the next one now, and keeps the focus
  const [root] = [handle.ownerSVGElement];
  void tick().then(() =>
    root?.querySelector<SVGGElement>(`[data-of="${run}"][data-leg="1"]`)?.focus({ preventScroll: true }),
  );
}

function turnSelection(scene: Scene, way: 1 | -1): boolean {
  const things = scene.things.filter((view) => scene.wb.selection.has(view.id));
  if (things.length === 0) return false;
  scene.wb.begin('Turn');
  for (const { id, thing } of things) {
    scene.run({ kind: 'turn', id, angle_rad: (thing.turn?.si ?? 0) + way * TURN_STEP_RAD });
  }
  scene.wb.end();
  return true;
}
