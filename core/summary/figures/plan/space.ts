declare const PLAN: unique symbol;

/** Place on the plan [m]; x to the right, y down the paper. */
export interface PlanPoint {
  readonly x: number;
  readonly y: number;
  readonly [PLAN]?: true;
}

export const planPoint = (x: number, y: number): PlanPoint => ({ x, y });

export const apart = (a: PlanPoint, b: PlanPoint): number => Math.hypot(b.x - a.x, b.y - a.y);

/** A rectangle of the plan [m]. */
export interface PlanBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Smallest rectangle about some points; null where there is none. */
export function boxAround(points: Iterable<PlanPoint>): PlanBox | null {
  let left = Infinity;
  let top = Infinity;
  let right = -Infinity;
  let bottom = -Infinity;
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return left <= right && top <= bottom ? { left, top, right, bottom } : null;
}

/** Whether a point lies in a rectangle, its border included. */
export function inBox(box: PlanBox, point: PlanPoint): boolean {
  return point.x >= box.left && point.x <= box.right && point.y >= box.top && point.y <= box.bottom;
}
