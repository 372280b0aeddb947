import type { UnitSystem } from '../../core/quantities/dimensions.ts';
import { apart, planPoint } from './space.ts';
import type { PlanPoint } from './space.ts';

const INCH_M = 0.0254;
/** Grid steps to choose from, each with the number of steps between heavy lines. */
const STEPS: Readonly<Record<UnitSystem, readonly { step_m: number; heavy: number }[]>> = {
  si: [
    { step_m: 0.01, heavy: 10 },
    { step_m: 0.05, heavy: 10 },
    { step_m: 0.1, heavy: 10 },
    { step_m: 0.5, heavy: 2 },
    { step_m: 1, heavy: 5 },
  ],
  us: [
    { step_m: INCH_M / 2, heavy: 24 },
    { step_m: INCH_M, heavy: 12 },
    { step_m: 3 * INCH_M, heavy: 4 },
    { step_m: 6 * INCH_M, heavy: 2 },
    { step_m: 12 * INCH_M, heavy: 5 },
    { step_m: 36 * INCH_M, heavy: 5 },
  ],
};
/** Grid lines closer than this blur into a grey [px]. */
const LEAST_STEP_PX = 8;

/** Step of the grid at a scale: the finest that is still seen [m]. */
export function gridStep(pixelsPerMetre: number, units: UnitSystem): { step_m: number; heavy: number } {
  const steps = STEPS[units];
  return steps.find(({ step_m }) => step_m * pixelsPerMetre >= LEAST_STEP_PX) ?? steps.at(-1)!;
}

/** Rounds to a step, free of the dust that binary fractions leave. */
export function roundTo(value: number, step: number): number {
  return Math.round(Math.round(value / step) * step * 1e9) / 1e9 + 0;
}

export function snapToGrid(point: PlanPoint, step_m: number): PlanPoint {
  return planPoint(roundTo(point.x, step_m), roundTo(point.y, step_m));
}

const DEGREE = Math.PI / 180;
/** Turns that elbows are sold for, either way [rad]. */
export const TURNS_RAD: readonly number[] = [0, 15, 30, 45, 60, 90].map((degrees) => degrees * DEGREE);
/** Directions on the paper that a leg is drawn to [rad]. */
const PAPER_STEP_RAD = 15 * DEGREE;
/** How near a direction must be to be taken [rad]. */
const ANGLE_PULL_RAD = 4 * DEGREE;

/** Difference of two directions, from -pi to pi [rad]. */
export function turnBetween(from_rad: number, to_rad: number): number {
  const turn = (to_rad - from_rad) % (2 * Math.PI);
  if (turn > Math.PI) return turn - 2 * Math.PI;
  return turn < -Math.PI ? turn + 2 * Math.PI : turn;
}

/**
 * Direction that a leg is pulled to: a turn that elbows are sold for from the leg before, or a plain direction on the
 * paper; null where neither is near.
 */
export function pulledDirection(direction_rad: number, before_rad: number | null): number | null {
  const turns =
    before_rad === null ? [] : TURNS_RAD.flatMap((turn) => [before_rad + turn, before_rad - turn]);
  const candidates = [...turns, Math.round(direction_rad / PAPER_STEP_RAD) * PAPER_STEP_RAD];
  let best: number | null = null;
  let nearest = ANGLE_PULL_RAD;
  for (const candidate of candidates) {
    const off = Math.abs(turnBetween(candidate, direction_rad));
    if (off < nearest) {
      nearest = off;
      best = candidate;
    }
  }
  return best;
}

/** End of a leg in a direction: its length comes out even, or its coordinate where the leg lies along the paper. */
function alongDirection(start: PlanPoint, to: PlanPoint, direction_rad: number, step_m: number): PlanPoint {
  const c = Math.cos(direction_rad);
  const s = Math.sin(direction_rad);
  if (Math.abs(s) < 1e-9) return planPoint(roundTo(to.x, step_m), start.y);
  if (Math.abs(c) < 1e-9) return planPoint(start.x, roundTo(to.y, step_m));
  const length = roundTo((to.x - start.x) * c + (to.y - start.y) * s, step_m);
  return planPoint(start.x + length * c, start.y + length * s);
}

/** A place that catches the pointer. */
export interface SnapAnchor<T> extends PlanPoint {
  readonly target: T;
}

export interface SnapOptions<T> {
  readonly step_m: number;
  /** How near an anchor or a run must be [m]. */
  readonly reach_m: number;
  /** Corner before, and the direction of the leg that led to it [rad]. */
  readonly previous?: PlanPoint | null;
  readonly before_rad?: number | null;
  readonly anchors?: Iterable<SnapAnchor<T>>;
  /** Nearest place on a run, where a run may end on another. */
  readonly onRun?: (point: PlanPoint) => (SnapAnchor<T> & { readonly distance_m: number }) | null;
  /** Directions are left alone. */
  readonly anyAngle?: boolean;
  /** Nothing is snapped at all. */
  readonly suspended?: boolean;
}

export interface Snapped<T> {
  readonly point: PlanPoint;
  readonly by: 'nothing' | 'grid' | 'angle' | 'anchor' | 'run';
  readonly target: T | null;
}

/** Where a point is put: on an anchor, on a run, in a plain direction, on the grid, in that order. */
export function snap<T>(point: PlanPoint, options: SnapOptions<T>): Snapped<T> {
  if (options.suspended) return { point, by: 'nothing', target: null };
  let caught: SnapAnchor<T> | null = null;
  let nearest = options.reach_m;
  for (const anchor of options.anchors ?? []) {
    const distance = apart(anchor, point);
    if (distance <= nearest) {
      nearest = distance;
      caught = anchor;
    }
  }
  if (caught) return { point: planPoint(caught.x, caught.y), by: 'anchor', target: caught.target };
  const run = options.onRun?.(point) ?? null;
  if (run && run.distance_m <= options.reach_m) {
    return { point: planPoint(run.x, run.y), by: 'run', target: run.target };
  }
  const previous = options.previous ?? null;
  if (previous !== null && !options.anyAngle && apart(previous, point) > options.step_m / 2) {
    const drawn = Math.atan2(point.y - previous.y, point.x - previous.x);
    const pulled = pulledDirection(drawn, options.before_rad ?? null);
    if (pulled !== null) {
      return { point: alongDirection(previous, point, pulled, options.step_m), by: 'angle', target: null };
    }
  }
  return { point: snapToGrid(point, options.step_m), by: 'grid', target: null };
}

/** The point at a typed length from a corner, towards where the pointer is; the corner itself gives the direction x. */
export function atLength(corner: PlanPoint, towards: PlanPoint, length_m: number): PlanPoint {
  const distance = apart(corner, towards);
  if (distance < 1e-9) return planPoint(corner.x + length_m, corner.y);
  const share = length_m / distance;
  return planPoint(corner.x + (towards.x - corner.x) * share, corner.y + (towards.y - corner.y) * share);
}
