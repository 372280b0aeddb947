import { planPoint } from './space.ts';
import type { PlanPoint } from './space.ts';

/** Where on a line of legs a point lies nearest. */
export interface RunHit {
  readonly leg: number;
  /** Share of the leg, 0 at its start. */
  readonly at: number;
  readonly point: PlanPoint;
  readonly distance_m: number;
}

/** Nearest leg of a line and the share of it; null for a line of fewer than two points. */
export function nearestOnLine(line: readonly PlanPoint[], point: PlanPoint): RunHit | null {
  let best: RunHit | null = null;
  for (let leg = 0; leg + 1 < line.length; leg++) {
    const a = line[leg]!;
    const b = line[leg + 1]!;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const squared = dx * dx + dy * dy;
    const share = squared === 0 ? 0 : ((point.x - a.x) * dx + (point.y - a.y) * dy) / squared;
    const at = Math.min(Math.max(share, 0), 1);
    const near = planPoint(a.x + dx * at, a.y + dy * at);
    const distance_m = Math.hypot(point.x - near.x, point.y - near.y);
    if (best === null || distance_m < best.distance_m) best = { leg, at, point: near, distance_m };
  }
  return best;
}

/** Whether a line touches a rectangle. */
export function lineMeetsBox(
  line: readonly PlanPoint[],
  box: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number },
): boolean {
  for (let i = 0; i + 1 < line.length; i++) if (segmentMeetsBox(line[i]!, line[i + 1]!, box)) return true;
  return false;
}

function segmentMeetsBox(a: PlanPoint, b: PlanPoint, box: Parameters<typeof lineMeetsBox>[1]): boolean {
  let low = 0;
  let high = 1;
  const cuts: readonly (readonly [number, number])[] = [
    [a.x - b.x, a.x - box.left],
    [b.x - a.x, box.right - a.x],
    [a.y - b.y, a.y - box.top],
    [b.y - a.y, box.bottom - a.y],
  ];
  for (const [slope, room] of cuts) {
    if (slope === 0) {
      if (room < 0) return false;
    } else if (slope < 0) low = Math.max(low, room / slope);
    else high = Math.min(high, room / slope);
  }
  return low <= high;
}
