import type { PlanPoint } from '../geometry/space.ts';
import { hitOf } from './plan-hit.ts';
import type { Hit } from './plan-hit.ts';
import type { PlanTools } from './plan-tools.svelte.ts';
import { insertCorner } from './run-edits.ts';
import type { Scene } from './scene.svelte.ts';
import type { UnderlayTool } from './underlay-tool.svelte.ts';

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

/** Turns pointer events into what the tools do; those that move the paper are left to `PaperMoves`. */
export class PlanPointer {
  /** With the space bar held, the pointer moves the paper. */
  spaceHeld = $state(false);
  pressing = false;
  /** Where the fingers that are down came down; two of them move and zoom the paper. */
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

  /** Whether a finger moves the paper: one that began on it, or two. */
  private slides(event: PointerEvent): boolean {
    const from = this.fingers.get(event.pointerId);
    if (!from) return false;
    if (Math.hypot(event.clientX - from.x, event.clientY - from.y) > TWICE_PX) clearTimeout(this.longPress);
    return this.panning || this.fingers.size > 1;
  }

  /** Whether a press moves the paper rather than what lies on it. */
  movesPaper(event: MouseEvent | TouchEvent): boolean {
    const hit = hitOf(event.target);
    if (!hit) return false;
    if ('touches' in event) return event.touches.length > 1 || this.panning;
    return event.button === 1 || (event.button === 0 && this.spaceHeld);
  }

  private hold(event: PointerEvent): void {
    this.pressing = true;
    this.reach.element().setPointerCapture(event.pointerId);
  }

  move(event: PointerEvent): void {
    if (this.slides(event)) return;
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
}
