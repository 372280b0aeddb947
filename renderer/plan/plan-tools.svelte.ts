import { snap, snapToGrid } from '../geometry/snap.ts';
import { apart, planPoint } from '../geometry/space.ts';
import type { PlanBox, PlanPoint } from '../geometry/space.ts';
import { DraftRun } from './draft-run.svelte.ts';
import type { Modifiers } from './draft-run.svelte.ts';
import { LegMove } from './leg-move.ts';
import { OnceAFrame } from './once-a-frame.ts';
import { freePlace, gateOnSelection, ghostAt, placeItem } from './placing.ts';
import type { Ghost } from './placing.ts';
import { toggleGate } from './run-edits.ts';
import type { Scene } from './scene.svelte.ts';
import type { Hit } from './plan-hit.ts';
import type { EndView } from '../../core/summary/figures/plan/thing-view.ts';
import type { TrayItem } from './tray-items.ts';

type Gesture =
  | {
      readonly kind: 'move';
      readonly ids: readonly string[];
      readonly start: PlanPoint;
      readonly origin: PlanPoint;
      doneX: number;
      doneY: number;
      open: boolean;
    }
  | LegMove
  | { readonly kind: 'corner'; readonly run: string; readonly corner: number; open: boolean }
  | { readonly kind: 'box'; readonly start: PlanPoint; readonly add: boolean };

/** A press that moves less than this is a click [px]. */
const CLICK_PX = 4;
/** How near a press must be to a free end to start a run there [px]. */
const END_REACH_PX = 16;

/** What the pointer and the keys do to the plan; one gesture is one step of undo. */
export class PlanTools {
  tool = $state.raw<{ kind: 'select' } | { kind: 'run' } | { kind: 'place'; item: TrayItem }>({
    kind: 'select',
  });
  draft = $state.raw<DraftRun | null>(null);
  /** Rectangle of a selection that is being drawn. */
  box = $state.raw<PlanBox | null>(null);
  pointer = $state.raw<PlanPoint | null>(null);
  /** Where the thing to be placed would go, and the run that a piece would go on. */
  ghost = $state.raw<Ghost | null>(null);
  dragging = $state(false);

  private gesture: Gesture | null = null;
  private readonly moves = new OnceAFrame();
  constructor(private readonly scene: Scene) {}

  /** Starts a gesture with the main button; `keep` adds to the selection. */
  press(hit: Hit, point: PlanPoint, keep: boolean): void {
    const { scene } = this;
    if (this.tool.kind === 'place') return this.placeAt(point);
    if (this.draft) return this.clickDraft();
    if (hit.kind === 'end' || this.tool.kind === 'run') return this.startRunAt(hit, point);
    if (hit.kind === 'corner') {
      this.gesture = { kind: 'corner', run: hit.run, corner: hit.corner, open: false };
      return;
    }
    if (hit.kind === 'leg') {
      this.gesture = LegMove.of(scene, hit.run, point, hit.leg);
      return;
    }
    if (hit.kind === 'mark') {
      if (hit.gate && !keep) toggleGate(scene, hit.id);
      scene.wb.select([hit.id], keep ? 'toggle' : 'set');
      return;
    }
    if (hit.kind === 'paper') {
      if (!keep) scene.wb.clearSelection();
      this.gesture = { kind: 'box', start: point, add: keep };
      return;
    }
    const selected = scene.wb.selection;
    if (keep) scene.wb.select([hit.id], 'toggle');
    else if (!selected.has(hit.id)) scene.wb.select([hit.id]);
    if (hit.kind === 'thing' && scene.wb.selection.has(hit.id)) this.startMove(hit.id, point);
    if (hit.kind === 'run' && selected.has(hit.id) && !keep) this.gesture = LegMove.of(scene, hit.id, point);
  }

  private startMove(id: string, start: PlanPoint): void {
    const view = this.scene.thingById.get(id);
    if (!view) return;
    const ids = this.movable();
    this.gesture = {
      kind: 'move',
      ids,
      start,
      origin: planPoint(view.x, view.y),
      doneX: 0,
      doneY: 0,
      open: false,
    };
  }

  /** Things and runs of the selection. */
  movable(): string[] {
    const { thingById, runById, wb } = this.scene;
    return [...wb.selection].filter((id) => thingById.has(id) || runById.has(id));
  }

  move(point: PlanPoint, moved_px: number, keys: Modifiers): void {
    this.pointer = point;
    if (this.tool.kind === 'place') {
      this.ghost = ghostAt(this.scene, this.tool.item, point, keys.altKey);
      return;
    }
    if (this.draft) return this.draft.pointTo(point, keys);
    const gesture = this.gesture;
    if (!gesture || (moved_px < CLICK_PX && !this.dragging)) return;
    this.dragging = true;
    if (gesture.kind === 'box') {
      const { start } = gesture;
      this.box = {
        left: Math.min(start.x, point.x),
        right: Math.max(start.x, point.x),
        top: Math.min(start.y, point.y),
        bottom: Math.max(start.y, point.y),
      };
      return;
    }
    this.moves.ask(() => {
      if (gesture.kind === 'leg') gesture.moveTo(point, keys.altKey);
      else if (gesture.kind === 'move') this.moveThings(gesture, point, keys);
      else this.moveCorner(gesture, point, keys);
    });
  }

  private moveThings(gesture: Extract<Gesture, { kind: 'move' }>, point: PlanPoint, keys: Modifiers): void {
    const { scene } = this;
    const wanted = planPoint(
      gesture.origin.x + point.x - gesture.start.x,
      gesture.origin.y + point.y - gesture.start.y,
    );
    const put = keys.altKey ? wanted : snapToGrid(wanted, scene.grid.step_m);
    const toX = put.x - gesture.origin.x;
    const toY = put.y - gesture.origin.y;
    const dx = toX - gesture.doneX;
    const dy = toY - gesture.doneY;
    if (Math.abs(dx) < 1e-9 && Math.abs(dy) < 1e-9) return;
    if (!gesture.open) scene.wb.begin('Move');
    gesture.open = true;
    if (scene.run({ kind: 'move', ids: [...gesture.ids], dx, dy }) === null) return;
    gesture.doneX = toX;
    gesture.doneY = toY;
  }

  private moveCorner(gesture: Extract<Gesture, { kind: 'corner' }>, point: PlanPoint, keys: Modifiers): void {
    const { scene } = this;
    const points = scene.runById.get(gesture.run)?.points;
    if (!points) return;
    const before = points[gesture.corner - 1];
    const previous = points[gesture.corner];
    const before_rad = before && previous ? Math.atan2(previous.y - before.y, previous.x - before.x) : null;
    const put = snap(point, {
      step_m: scene.grid.step_m,
      reach_m: 0,
      previous: previous ?? null,
      before_rad,
      anyAngle: keys.shiftKey,
      suspended: keys.altKey,
    }).point;
    if (!gesture.open) scene.wb.begin('Move corner');
    gesture.open = true;
    scene.run({ kind: 'moveCorner', run: gesture.run, corner: gesture.corner, at: { x: put.x, y: put.y } });
  }

  release(): void {
    this.moves.flush();
    const { gesture } = this;
    this.gesture = null;
    this.dragging = false;
    if (!gesture) return;
    if (gesture.kind !== 'box') {
      if (gesture.open && gesture.kind === 'leg') gesture.close();
      else if (gesture.open) this.scene.wb.end();
      return;
    }
    const box = this.box;
    this.box = null;
    if (!box) return;
    this.scene.wb.select(this.scene.within(box), gesture.add ? 'add' : 'set');
  }

  /** Takes a drag back; false where none was. */
  dropGesture(): boolean {
    if (!this.gesture) return false;
    if (this.gesture.kind !== 'box' && this.gesture.open) this.scene.wb.cancel();
    this.gesture = null;
    this.moves.drop();
    this.dragging = false;
    this.box = null;
    return true;
  }

  /** Gives up whatever is going on; false where nothing was. */
  cancel(): boolean {
    if (this.draft) {
      this.draft = null;
      return true;
    }
    if (this.dropGesture()) return true;
    if (this.tool.kind === 'select') return false;
    this.tool = { kind: 'select' };
    this.ghost = null;
    return true;
  }

  /** Starts to draw a run at an end. */
  startRun(from: EndView): void {
    this.tool = { kind: 'run' };
    this.scene.message = null;
    this.draft = new DraftRun(this.scene, from);
  }

  private startRunAt(hit: Hit, point: PlanPoint): void {
    const { ends, scale } = this.scene;
    const pressed = hit.kind === 'end' ? ends.filter((e) => e.thing === hit.thing && e.end === hit.end) : [];
    const reach = END_REACH_PX / scale;
    const near = ends.filter((end) => apart(end, point) <= reach);
    const own = hit.kind === 'thing' ? ends.filter((end) => end.thing === hit.id) : [];
    const from = [...pressed, ...near, ...own].find((end) => end.free);
    if (from) this.startRun(from);
    else this.scene.say('start a run on a free end: a ring marks each', true);
  }

  private clickDraft(): void {
    const draft = this.draft!;
    if (draft.target) this.finish();
    // a second click on the last corner ends the run there
    else if (draft.corners.length > 0 && apart(draft.last, draft.loose) < 1e-6) this.finish(null);
    else draft.setCorner();
  }

  /** Ends the run where its loose end is. */
  finish(target = this.draft?.target ?? null): void {
    const made = this.draft?.finish(target);
    if (!made) return;
    this.draft = null;
    this.tool = { kind: 'select' };
    // of all that was made, the run itself is what the user drew
    const run = made.find((id) => this.scene.runById.has(id));
    if (run) this.scene.wb.select([run]);
  }

  take(item: TrayItem): void {
    this.draft = null;
    this.tool = { kind: 'place', item };
    this.ghost = null;
  }

  /** Puts what was taken from the tray at a place; the tool goes back to selecting. */
  placeAt(point: PlanPoint): void {
    if (this.tool.kind !== 'place' || !placeItem(this.scene, this.tool.item, point)) return;
    this.tool = { kind: 'select' };
    this.ghost = null;
  }

  /** Puts a thing in the middle of the view, or a gate on the run that is selected, for those who use keys. */
  placeByKey(item: TrayItem): void {
    this.cancel();
    this.tool = { kind: 'select' };
    if (item.makes.kind === 'piece') gateOnSelection(this.scene);
    else placeItem(this.scene, item, freePlace(this.scene));
  }

  private keysOpen = false;
  /** Moves the selection by grid steps; presses in a row are one step of undo until `endKeys`. */
  nudge(dx: number, dy: number, dz = 0): void {
    const { scene } = this;
    const ids = this.movable();
    if (ids.length === 0) return;
    const { step_m } = scene.grid;
    this.beginKeys('Move');
    const rise = scene.wb.units === 'si' ? 0.1 : 0.1524;
    scene.run({
      kind: 'move',
      ids,
      dx: dx * step_m,
      dy: dy * step_m,
      ...(dz === 0 ? {} : { dz: dz * rise }),
    });
    const first = scene.thingById.get(ids[0]!);
    if (first) scene.reveal(first);
  }

  /** Presses of a key from here on are one step until `endKeys`. */
  beginKeys(label: string): void {
    if (!this.keysOpen) this.scene.wb.begin(label);
    this.keysOpen = true;
  }

  endKeys(): void {
    if (!this.keysOpen) return;
    this.keysOpen = false;
    this.scene.wb.end();
  }
}
