import { nearestOnLine } from '../geometry/run-hit.ts';
import { roundTo, snapToGrid } from '../geometry/snap.ts';
import { planPoint } from '../geometry/space.ts';
import type { PlanPoint } from '../geometry/space.ts';
import type { Scene } from './scene.svelte.ts';

/** A leg shorter than this on the plan is a riser or a drop, which has no side [m]. */
const SHORTEST_M = 0.02;
/** A direction whose share across is below this lies along the paper [-]. */
const SQUARE = 1e-9;

/** Direction across a leg on the plan; null for a riser or drop. */
export function acrossLeg(from: PlanPoint, to: PlanPoint): PlanPoint | null {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(x, y);
  return length < SHORTEST_M ? null : planPoint(-y / length, x / length);
}

/** How far a leg goes when it is pulled so far: legs along the paper come to stand on the grid [m]. */
export function snappedShift(from: PlanPoint, across: PlanPoint, wanted_m: number, step_m: number): number {
  if (Math.abs(across.x) < SQUARE) {
    const to = snapToGrid(planPoint(from.x, from.y + wanted_m * across.y), step_m);
    return (to.y - from.y) * across.y;
  }
  if (Math.abs(across.y) < SQUARE) {
    const to = snapToGrid(planPoint(from.x + wanted_m * across.x, from.y), step_m);
    return (to.x - from.x) * across.x;
  }
  return roundTo(wanted_m, step_m);
}

/** A leg of a drawn run that is pulled sideways; one step of undo. */
export class LegMove {
  readonly kind = 'leg';
  open = false;
  private done_m = 0;
  private leg: number;

  private constructor(
    private readonly scene: Scene,
    private readonly run: string,
    leg: number,
    private readonly start: PlanPoint,
    private readonly from: PlanPoint,
    private readonly across: PlanPoint,
    private readonly fixed: boolean,
  ) {
    this.leg = leg;
  }

  /** The leg of a run that was pressed, or the nearest; null where it has no side to go to. */
  static of(scene: Scene, run: string, start: PlanPoint, pressed?: number): LegMove | null {
    const view = scene.runById.get(run);
    const leg = pressed ?? nearestOnLine(view?.points ?? [], start)?.leg;
    const [from, to] = leg === undefined ? [] : [view?.points[leg], view?.points[leg + 1]];
    if (!view || view.typed || leg === undefined || !from || !to) return null;
    const across = acrossLeg(planPoint(from.x, from.y), planPoint(to.x, to.y));
    if (across === null) return null;
    return new LegMove(scene, run, leg, start, planPoint(from.x, from.y), across, leg === 0);
  }

  moveTo(point: PlanPoint, free: boolean): void {
    const { scene, across, start } = this;
    const pulled = (point.x - start.x) * across.x + (point.y - start.y) * across.y;
    const to_m = free ? pulled : snappedShift(this.from, across, pulled, scene.grid.step_m);
    const by = to_m - this.done_m;
    if (Math.abs(by) < 1e-9) return;
    if (!this.open) scene.wb.begin('Move leg');
    const dx = by * across.x;
    const dy = by * across.y;
    if (scene.run({ kind: 'moveLeg', run: this.run, leg: this.leg, dx, dy }) === null) return;
    // at a thing the run has gained a corner, and what was its first leg is the next
    if (!this.open && this.fixed) this.leg++;
    this.open = true;
    this.done_m = to_m;
  }

  /** Ends the step; a leg that is back where it was leaves none. */
  close(): void {
    if (Math.abs(this.done_m) < 1e-9) this.scene.wb.cancel();
    else this.scene.wb.end();
  }
}
