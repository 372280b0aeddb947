import { screenPoint, zoomAbout } from '../geometry/space.ts';
import type { PlanPoint } from '../geometry/space.ts';
import { hitOf } from './plan-hit.ts';
import type { Hit } from './plan-hit.ts';
import type { PlanTools } from './plan-tools.svelte.ts';
import { insertCorner } from './run-edits.ts';
import { SCALE_LIMITS } from './scene.svelte.ts';
import type { Scene } from './scene.svelte.ts';
import type { UnderlayTool } from './underlay-tool.svelte.ts';
import { isTouchpad, wheelFactor } from './wheel.ts';

interface Reach {
  readonly scene: Scene;
  readonly tools: PlanTools;
  readonly underlay: UnderlayTool;
  /** The window of the plan. */
  readonly element: () => HTMLElement;
  readonly onpress: () => void;
}

const TWICE_MS = 400;
/** A finger that rests for so long selects what it is on. */
const LONG_PRESS_MS = 550;
const TWICE_PX = 5;
/** A run that is dragged further than this from its end is set down where the pointer lets go [px]. */
const DRAWN_PX = 12;

const idOf = (hit: Hit): string => ('id' in hit ? hit.id : hit.kind);

/** Turns pointer and wheel events into what the tools do. */
export class PlanPointer {
  /** With the space bar held, the pointer moves the paper. */
  spaceHeld = $state(false);
  pressing = false;
  /** Fingers that are down; two of them move and zoom the paper. */
  private readonly fingers = new Map<number, { x: number; y: number }>();
  /** One finger moves the paper. */
  private panning = false;
  private longPress: ReturnType<typeof setTimeout> | undefined;
  private last: { x: number; y: number; time: number; id: string } | null = null;

  constructor(private readonly reach: Reach) {}

  /** Plan point under an event. */
  place(event: { clientX: number; clientY: number }): PlanPoint {
    const box = this.reach.element().getBoundingClientRect();
    return this.reach.scene.at(event.clientX - box.left, event.clientY - box.top);
  }

  private moved(event: PointerEvent): number {
    return this.last ? Math.hypot(event.clientX - this.last.x, event.clientY - this.last.y) : 0;
  }

  down(event: PointerEvent): void {
    const { tools, underlay } = this.reach;
    const hit = hitOf(event.target);
    if (event.pointerType === 'touch' && hit && this.finger(event, hit)) return;
    if (!hit || event.button !== 0 || this.spaceHeld) return;
    // one finger on the paper moves it
    this.panning = event.pointerType === 'touch' && hit.kind === 'paper' && tools.tool.kind === 'select';
    if (this.panning) return;
    this.reach.onpress();
    const point = this.place(event);
    if (underlay.press(point, hit.kind === 'paper')) return this.hold(event);
    const { last } = this;
    const twice =
      last !== null &&
      event.timeStamp - last.time < TWICE_MS &&
      this.moved(event) < TWICE_PX &&
      last.id === idOf(hit);
    this.last = { x: event.clientX, y: event.clientY, time: event.timeStamp, id: idOf(hit) };
    if (twice && hit.kind === 'run' && tools.tool.kind === 'select') {
      insertCorner(this.reach.scene, hit.id, point);
      return;
    }
    tools.draft?.pointTo(point, event);
    tools.press(hit, point, event.shiftKey || event.ctrlKey || event.metaKey);
    this.hold(event);
    // the keys go where the pointer was
    const focus = (event.target as Element).closest<SVGGElement>('[role=button]') ?? this.reach.element();
    focus.focus({ preventScroll: true });
    event.preventDefault();
  }

  /** Counts a finger that came down; whether it is one of two, which take the press over. */
  private finger(event: PointerEvent, hit: Hit): boolean {
    clearTimeout(this.longPress);
    this.fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (this.fingers.size > 1) {
      this.pressing = false;
      this.reach.underlay.release();
      this.reach.tools.dropGesture();
      return true;
    }
    if ('id' in hit) {
      const { wb } = this.reach.scene;
      // what has been pressed for long is added to the selection, so that a finger can choose several
      const before = [...wb.selection];
      this.longPress = setTimeout(() => wb.select([...before, hit.id]), LONG_PRESS_MS);
    }
    return false;
  }

  /** Moves the paper by a finger, and zooms it too by two; whether that is what this one does. */
  private pinch(event: PointerEvent): boolean {
    const old = this.fingers.get(event.pointerId);
    if (!old) return false;
    const now = { x: event.clientX, y: event.clientY };
    if (Math.hypot(now.x - old.x, now.y - old.y) > TWICE_PX) clearTimeout(this.longPress);
    if (this.fingers.size === 1 && this.panning) {
      this.fingers.set(event.pointerId, now);
      const { scene } = this.reach;
      const { x, y, pixelsPerMetre } = scene.view;
      scene.setView({ x: x + now.x - old.x, y: y + now.y - old.y, pixelsPerMetre });
      return true;
    }
    if (this.fingers.size !== 2) return false;
    const other = [...this.fingers].find(([id]) => id !== event.pointerId)![1];
    this.fingers.set(event.pointerId, now);
    const apart = (p: { x: number; y: number }) => Math.max(Math.hypot(p.x - other.x, p.y - other.y), 1);
    const box = this.reach.element().getBoundingClientRect();
    const { scene } = this.reach;
    const { x, y, pixelsPerMetre } = scene.view;
    // the middle between the fingers stays on the same place of the plan
    const shifted = { x: x + (now.x - old.x) / 2, y: y + (now.y - old.y) / 2, pixelsPerMetre };
    const about = screenPoint((now.x + other.x) / 2 - box.left, (now.y + other.y) / 2 - box.top);
    scene.setView(zoomAbout(shifted, about, apart(now) / apart(old), SCALE_LIMITS));
    return true;
  }

  private hold(event: PointerEvent): void {
    this.pressing = true;
    this.reach.element().setPointerCapture(event.pointerId);
  }

  move(event: PointerEvent): void {
    if (this.pinch(event)) return;
    const point = this.place(event);
    if (this.reach.underlay.move(point)) return;
    this.reach.tools.move(point, this.pressing ? this.moved(event) : 0, event);
  }

  up(event: PointerEvent): void {
    this.lift(event);
    if (!this.pressing) return;
    const { tools } = this.reach;
    const drawn = tools.draft !== null && this.moved(event) > DRAWN_PX;
    this.cancel();
    if (!drawn || !tools.draft) return;
    tools.draft.pointTo(this.place(event), event);
    if (tools.draft.target) tools.finish();
    else tools.draft.setCorner();
  }

  /** A finger left the plan. */
  lift(event: PointerEvent): void {
    clearTimeout(this.longPress);
    this.fingers.delete(event.pointerId);
  }

  /** Ends whatever the press had started. */
  cancel(): void {
    this.pressing = false;
    this.reach.underlay.release();
    this.reach.tools.release();
  }

  wheel(event: WheelEvent): void {
    if (!(event.target as Element).closest('.flow')) return;
    event.preventDefault();
    event.stopPropagation();
    const { scene } = this.reach;
    const { x, y, pixelsPerMetre } = scene.view;
    if (!event.ctrlKey && (isTouchpad(event) || event.shiftKey)) {
      const sideways = event.shiftKey && event.deltaX === 0;
      const [dx, dy] = sideways ? [event.deltaY, 0] : [event.deltaX, event.deltaY];
      scene.setView({ x: x - dx, y: y - dy, pixelsPerMetre });
      return;
    }
    const box = this.reach.element().getBoundingClientRect();
    const about = screenPoint(event.clientX - box.left, event.clientY - box.top);
    scene.setView(zoomAbout(scene.view, about, wheelFactor(event), SCALE_LIMITS));
  }
}
