import type { Point3 } from '../../core/document/route.ts';
import { resolveNamedValues } from '../../core/quantities/named-values.ts';
import { parseQuantity } from '../../core/quantities/parse.ts';
import { nearestOnLine } from '../geometry/run-hit.ts';
import { atLength, roundTo, snap } from '../geometry/snap.ts';
import type { Snapped } from '../geometry/snap.ts';
import { apart, planPoint } from '../geometry/space.ts';
import type { PlanPoint } from '../geometry/space.ts';
import { drawRun, ENTRY_ANGLES_RAD } from './edits.ts';
import type { RunEndPoint } from './edits.ts';
import type { Scene } from './scene.svelte.ts';
import type { EndView } from '../../core/summary/figures/plan/thing-view.ts';

/** How near the pointer must come to an end or a run to be caught [px]. */
const REACH_PX = 14;
/** Heights that differ by less are the same [m]. */
const SAME_HEIGHT_M = 0.005;

export type DraftTarget =
  | { readonly kind: 'end'; readonly end: EndView }
  | { readonly kind: 'run'; readonly run: string; readonly leg: number; readonly at: number };

/** How the pointer or the keys bend the rules of snapping. */
export interface Modifiers {
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

/** A run while it is being drawn: from an end, over corners, to where the loose end is. */
export class DraftRun {
  readonly from: EndView;
  corners = $state.raw<readonly Point3[]>([]);
  /** Where the loose end is, and what it would be joined to. */
  loose = $state.raw<PlanPoint>(planPoint(0, 0));
  target = $state.raw<DraftTarget | null>(null);
  /** Height of the next corner [m]. */
  z = $state(0);
  /** Angle at which it would enter another run [rad]. */
  entry_rad = $state(ENTRY_ANGLES_RAD[1]!);
  /** A length that is being typed. */
  typed = $state('');

  constructor(
    private readonly scene: Scene,
    from: EndView,
  ) {
    this.from = from;
    this.loose = planPoint(from.x, from.y);
    this.z = from.z;
  }

  points: readonly Point3[] = $derived.by(() => [
    { x: this.from.x, y: this.from.y, z: this.from.z },
    ...this.corners,
  ]);
  last: Point3 = $derived.by(() => this.points.at(-1)!);
  /** Length of the leg that is being drawn, with its rise [m]. */
  legLength_m = $derived.by(() => Math.hypot(apart(this.last, this.loose), this.z - this.last.z));

  /** Direction of the leg before the loose one [rad]; the heading of the end at first. */
  private get before_rad(): number {
    const points = this.points;
    for (let i = points.length - 1; i > 0; i--) {
      if (apart(points[i - 1]!, points[i]!) > SAME_HEIGHT_M) {
        return Math.atan2(points[i]!.y - points[i - 1]!.y, points[i]!.x - points[i - 1]!.x);
      }
    }
    return this.from.heading_rad;
  }

  /** Moves the loose end under the pointer. */
  pointTo(point: PlanPoint, { altKey, shiftKey }: Modifiers): void {
    const found = this.find(point, altKey, shiftKey);
    this.loose = found.point;
    this.target = found.target;
  }

  private find(point: PlanPoint, suspended: boolean, anyAngle: boolean): Snapped<DraftTarget> {
    const { scene } = this;
    return snap<DraftTarget>(point, {
      step_m: scene.grid.step_m,
      reach_m: REACH_PX / scene.scale,
      previous: this.last,
      before_rad: this.before_rad,
      anchors: scene.ends
        .filter((end) => end.free && end.thing !== this.from.thing)
        .map((end) => ({ x: end.x, y: end.y, target: { kind: 'end', end } })),
      onRun: (at) => this.onRun(at),
      anyAngle,
      suspended,
    });
  }

  private onRun(point: PlanPoint) {
    let best: (PlanPoint & { target: DraftTarget; distance_m: number }) | null = null;
    for (const { id, points } of this.scene.runs) {
      const hit = nearestOnLine(points, point);
      if (!hit || (best && hit.distance_m >= best.distance_m)) continue;
      const target: DraftTarget = { kind: 'run', run: id, leg: hit.leg, at: hit.at };
      best = { x: hit.point.x, y: hit.point.y, distance_m: hit.distance_m, target };
    }
    return best;
  }

  /** Moves the loose end by keys. */
  step(dx: number, dy: number): void {
    const { step_m } = this.scene.grid;
    const to = planPoint(this.loose.x + dx * step_m, this.loose.y + dy * step_m);
    // the axis along which nothing moves keeps its coordinate, so that a leg stays square to the end it started from
    this.loose = planPoint(dx === 0 ? to.x : roundTo(to.x, step_m), dy === 0 ? to.y : roundTo(to.y, step_m));
    const near = this.find(this.loose, false, true);
    this.target = near.by === 'anchor' || near.by === 'run' ? near.target : null;
    if (this.target) this.loose = near.point;
    this.scene.reveal(this.loose);
  }

  /** Takes the next of the angles at which a branch can enter a run. */
  nextEntry(): void {
    const at = ENTRY_ANGLES_RAD.indexOf(this.entry_rad);
    this.entry_rad = ENTRY_ANGLES_RAD[(at + 1) % ENTRY_ANGLES_RAD.length]!;
  }

  /** Raises or lowers the next corner. */
  lift(steps: number): void {
    const step = this.scene.wb.units === 'si' ? 0.1 : 0.1524;
    this.z = roundTo(this.z + steps * step, step / 10);
  }

  /** Sets a corner at the loose end; a change of height first goes straight up or down. */
  setCorner(): void {
    const { last, loose, z } = this;
    const rises = Math.abs(z - last.z) > SAME_HEIGHT_M;
    const moves = apart(last, loose) > SAME_HEIGHT_M;
    if (!rises && !moves) return;
    const added: Point3[] = [];
    if (rises) added.push({ x: last.x, y: last.y, z });
    if (moves) added.push({ x: loose.x, y: loose.y, z });
    this.corners = [...this.corners, ...added];
    this.typed = '';
  }

  /** Fixes the leg at the length typed, towards the loose end; says what is wrong with it otherwise. */
  setTyped(): void {
    const names = resolveNamedValues(this.scene.wb.document.values).values;
    const plain = /^[\d.,]+$/.test(this.typed.trim());
    const text = plain ? `${this.typed} ${this.scene.wb.units === 'si' ? 'm' : 'ft'}` : this.typed;
    const parsed = parseQuantity(text, 'length', { field: 'length of the leg', names });
    if (!parsed.ok) return this.scene.say(parsed.error.message, true);
    if (parsed.si <= 0) return this.scene.say('the length of a leg must be above zero', true);
    this.loose = atLength(this.last, this.loose, parsed.si);
    this.target = null;
    this.setCorner();
  }

  /** Takes back the last corner; false where there is none. */
  back(): boolean {
    if (this.typed !== '') {
      this.typed = this.typed.slice(0, -1);
      return true;
    }
    if (this.corners.length === 0) return false;
    this.corners = this.corners.slice(0, -1);
    this.z = this.last.z;
    return true;
  }

  /** Ends the run and puts it into the shop; the ids made, or null where it was refused. */
  finish(target: DraftTarget | null): readonly string[] | null {
    const { from, loose, z, last } = this;
    const corners = [...this.corners];
    // a run that ends in free space ends at its last corner
    if (target === null && corners.length > 0 && apart(last, loose) <= SAME_HEIGHT_M) corners.pop();
    const liftedEnd = target?.kind === 'end' ? target.end : null;
    const lifted = Math.abs(z - from.z) > SAME_HEIGHT_M;
    if (Math.abs(z - last.z) > SAME_HEIGHT_M) corners.push({ x: last.x, y: last.y, z });
    // a run that was raised comes down straight over the end that it is joined to
    if (liftedEnd && lifted && Math.abs(liftedEnd.z - z) > SAME_HEIGHT_M && apart(last, liftedEnd) > 0.05) {
      corners.push({ x: liftedEnd.x, y: liftedEnd.y, z });
    }
    const start: RunEndPoint = { kind: 'end', thing: from.thing, end: from.end, air: from.air };
    const end: RunEndPoint =
      target === null
        ? { kind: 'free', at: { x: loose.x, y: loose.y, z } }
        : target.kind === 'end'
          ? { kind: 'end', thing: target.end.thing, end: target.end.end, air: target.end.air }
          : target;
    const made = drawRun(start, end, corners, this.entry_rad);
    if (!made.ok) {
      this.scene.say(made.message, true);
      return null;
    }
    return this.scene.run(made.command);
  }
}
