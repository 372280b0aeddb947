import { MATERIALS } from '../catalogue/materials.ts';
import { anchorOf } from './anchors.ts';
import type { Anchor, Point3 } from './anchors.ts';
import { findEnd } from './ends.ts';
import type { Piece, Run } from './schema-pieces.ts';
import type { Corner, ElbowStyle, Route } from './schema-route.ts';
import type { Thing } from './schema-things.ts';

export { anchorOf } from './anchors.ts';
export type { Anchor, Point3 } from './anchors.ts';

/** Things by id. */
export type Things = ReadonlyMap<string, Thing>;
/** A run that was drawn. */
export type DrawnRun = Run & { readonly route: Route };

/** One leg of a drawn run, from point to point. */
export interface LegMeasure {
  readonly leg: number;
  readonly from: Point3;
  readonly to: Point3;
  /** Point to point [m]. */
  readonly length_m: number;
  /** Taken off by the bend before the leg and by the bend after it [m]. */
  readonly before_m: number;
  readonly after_m: number;
  /** What is left between the bends, as drawn [m]. */
  readonly drawn_m: number;
  /** Straight length in use: typed, or as drawn [m]. */
  readonly straight_m: number;
  /** Inside diameter at the start of the leg and at its end; null where none is given [m]. */
  readonly startDiameter_m: number | null;
  readonly endDiameter_m: number | null;
}

/** One bend of a drawn run. */
export interface BendMeasure {
  readonly corner: number;
  /** Leg that the bend follows, which gives its size and material. */
  readonly leg: number;
  /** Angle turned through, as drawn [rad]. */
  readonly drawn_rad: number;
  /** Angle in use: typed, or as drawn [rad]. */
  readonly angle_rad: number;
  /** How an elbow is built; hose turns smoothly. */
  readonly style: ElbowStyle;
  /** Centre-line radius that the run asks for and the one that its legs leave room for [m]. */
  readonly wanted_m: number;
  readonly radius_m: number;
  /** Taken off each leg beside the bend [m]. */
  readonly tangent_m: number;
  /** The legs leave no room for the radius wanted. */
  readonly tight: boolean;
}

/** A drawn run in numbers. */
export interface RouteMeasure {
  /** Start, corners, end. */
  readonly points: readonly Point3[];
  readonly legs: readonly LegMeasure[];
  readonly bends: readonly BendMeasure[];
  /** Straights in use and arcs together, along the centre line [m]. */
  readonly length_m: number;
}

/** Points closer than this are one [m]. */
const SAME_POINT_M = 1e-6;
/** A corner that turns by less is straight on [rad]. */
export const SMALLEST_BEND_RAD = (0.5 * Math.PI) / 180;
/** The tightest bend there is has its centre on the wall: half a diameter [-]. */
export const TIGHTEST_RATIO = 0.5;

const FLEXIBLE: ReadonlySet<string> = new Set(MATERIALS.filter((row) => row.flexible).map((row) => row.id));

/** Hose bends; duct gets elbows. */
export function isHose(material: string | undefined): boolean {
  return material !== undefined && FLEXIBLE.has(material);
}

export function isDrawn(run: Run): run is DrawnRun {
  return run.route !== undefined;
}

/** Anchors of a run's ends; null where the end names nothing or has no place on the plan. */
export function runAnchors(run: Run, things: Things): { from: Anchor | null; to: Anchor | null } {
  const anchor = (side: 'from' | 'to') => {
    const end = findEnd(things, run[side], side);
    return typeof end === 'string' ? null : anchorOf(end.thing, end.end);
  };
  return { from: anchor('from'), to: anchor('to') };
}

/** Start, corners and end of a drawn run; an end without a place is left out of the way by standing on its neighbour. */
export function routePoints(run: DrawnRun, things: Things): Point3[] {
  const { from, to } = runAnchors(run, things);
  const at = (corner: Corner, z: number): Point3 => ({
    x: corner.x.si,
    y: corner.y.si,
    z: corner.z?.si ?? z,
  });
  let z = from?.z ?? to?.z ?? 0;
  const corners = run.route.corners.map((corner) => {
    const point = at(corner, z);
    z = point.z;
    return point;
  });
  const nowhere: Point3 = { x: 0, y: 0, z: 0 };
  const start = from ?? corners[0] ?? to ?? nowhere;
  const end = to ?? corners.at(-1) ?? start;
  return [start, ...corners, end].map((point) => ({ x: point.x, y: point.y, z: point.z }));
}

export const distance = (a: Point3, b: Point3): number => Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);

/** Angle between two directions, sure near 0 and near pi [rad]. */
export function angleBetween(a: Point3, b: Point3): number {
  const cross = Math.hypot(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
  return Math.atan2(cross, a.x * b.x + a.y * b.y + a.z * b.z);
}

const minus = (a: Point3, b: Point3): Point3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });

/** Pieces placed by hand on a leg, in the order of flow, with their place in the run's list. */
export function handPieces(run: DrawnRun, leg: number): { piece: Piece; index: number; at: number }[] {
  const last = run.route.corners.length;
  return run.pieces
    .map((piece, index) => ({ piece, index, at: piece.along?.at ?? 0 }))
    .filter(({ piece }) => Math.min(piece.along?.leg ?? 0, last) === leg)
    .sort((a, b) => a.at - b.at || a.index - b.index);
}

/** Inside diameter after a piece placed by hand [m]. */
export function diameterAfter(piece: Piece, before_m: number | null): number | null {
  return piece.kind === 'reducer' ? piece.to.si : (piece.diameter?.si ?? before_m);
}

function legDiameters(run: DrawnRun, count: number): { start: number | null; end: number | null }[] {
  let diameter = run.diameter?.si ?? null;
  return Array.from({ length: count }, (_, leg) => {
    diameter = run.route.legs?.[leg]?.diameter?.si ?? diameter;
    const start = diameter;
    for (const { piece } of handPieces(run, leg)) diameter = diameterAfter(piece, diameter);
    return { start, end: diameter };
  });
}

interface Bend {
  readonly corner: number;
  readonly leg: number;
  readonly next: number;
  readonly angle: number;
  readonly style: ElbowStyle;
  readonly wanted: number;
  tangent: number;
}

/** Bends between legs of some length; a corner that lies on another turns once, at the last of them. */
function findBends(
  run: DrawnRun,
  points: readonly Point3[],
  diameters: readonly { end: number | null }[],
): Bend[] {
  const bends: Bend[] = [];
  const { corners, bend } = run.route;
  let before: { leg: number; direction: Point3 } | null = null;
  for (let leg = 0; leg + 1 < points.length; leg++) {
    const direction = minus(points[leg + 1]!, points[leg]!);
    if (Math.hypot(direction.x, direction.y, direction.z) < SAME_POINT_M) continue;
    const corner = corners[leg - 1];
    if (before !== null && corner !== undefined) {
      const angle = angleBetween(before.direction, direction);
      if (angle >= SMALLEST_BEND_RAD) {
        const hose = isHose(run.route.legs?.[before.leg]?.material ?? run.material);
        const style = hose ? 'smooth' : (corner.style ?? bend.style);
        const ratio = corner.radiusRatio?.si ?? bend.radiusRatio.si;
        const wanted = ratio * (diameters[leg - 1]!.end ?? 0);
        const tangent = style === 'mitre' ? 0 : wanted * Math.tan(Math.min(angle, Math.PI - 1e-9) / 2);
        bends.push({ corner: leg - 1, leg: before.leg, next: leg, angle, style, wanted, tangent });
      }
    }
    before = { leg, direction };
  }
  return bends;
}

/** Cuts tangents that do not fit on their leg, both by the same share, so that straights never come out negative. */
function fitTangents(bends: readonly Bend[], lengths: readonly number[]): void {
  const asked = bends.map(({ tangent }) => tangent);
  bends.forEach((bend, i) => {
    const room = (leg: number, neighbour: number | undefined) => {
      const sum = asked[i]! + (neighbour ?? 0);
      return sum > lengths[leg]! ? lengths[leg]! / sum : 1;
    };
    const earlier = bends[i - 1]?.next === bend.leg ? asked[i - 1] : undefined;
    const later = bends[i + 1]?.leg === bend.next ? asked[i + 1] : undefined;
    bend.tangent = asked[i]! * Math.min(room(bend.leg, earlier), room(bend.next, later));
  });
}

/**
 * Measures a drawn run: legs from point to point with rises and drops, bends with their tangents taken off, typed values
 * in place of drawn ones. Pure geometry; never throws.
 *
 * A radius that does not fit between the corners is cut to what fits and the bend marked `tight`; it is not cut below
 * half a diameter, as no tighter bend exists.
 */
export function measureRoute(run: DrawnRun, things: Things): RouteMeasure {
  const points = routePoints(run, things);
  const lengths = points.slice(1).map((point, i) => distance(points[i]!, point));
  const diameters = legDiameters(run, lengths.length);
  const bends = findBends(run, points, diameters);
  fitTangents(bends, lengths);

  const before = lengths.map(() => 0);
  const after = lengths.map(() => 0);
  const measured = bends.map((bend): BendMeasure => {
    after[bend.leg] = bend.tangent;
    before[bend.next] = bend.tangent;
    const half = Math.tan(Math.min(bend.angle, Math.PI - 1e-9) / 2);
    const fits = bend.style === 'mitre' ? bend.wanted : bend.tangent / half;
    const least = TIGHTEST_RATIO * (diameters[bend.leg]!.end ?? 0);
    const radius_m = Math.min(bend.wanted, Math.max(fits, least));
    return {
      corner: bend.corner,
      leg: bend.leg,
      drawn_rad: bend.angle,
      angle_rad: run.route.corners[bend.corner]!.angle?.si ?? bend.angle,
      style: bend.style,
      wanted_m: bend.wanted,
      radius_m,
      tangent_m: bend.tangent,
      tight: fits < bend.wanted * (1 - 1e-9),
    };
  });
  const legs = lengths.map((length_m, leg): LegMeasure => {
    const drawn_m = Math.max(0, length_m - before[leg]! - after[leg]!);
    return {
      leg,
      from: points[leg]!,
      to: points[leg + 1]!,
      length_m,
      before_m: before[leg]!,
      after_m: after[leg]!,
      drawn_m,
      straight_m: run.route.legs?.[leg]?.length?.si ?? drawn_m,
      startDiameter_m: diameters[leg]!.start,
      endDiameter_m: diameters[leg]!.end,
    };
  });
  const arcs = measured.reduce((sum, bend) => sum + arcLength(bend), 0);
  return { points, legs, bends: measured, length_m: legs.reduce((sum, leg) => sum + leg.straight_m, arcs) };
}

/** Length along the centre line of a bend; a mitre has none [m]. */
export function arcLength(bend: BendMeasure): number {
  return bend.style === 'mitre' ? 0 : bend.radius_m * bend.angle_rad;
}

/** Point of a leg at a share of it. */
export function pointAlong(leg: Pick<LegMeasure, 'from' | 'to'>, at: number): Point3 {
  const mix = (a: number, b: number) => a + (b - a) * at;
  return { x: mix(leg.from.x, leg.to.x), y: mix(leg.from.y, leg.to.y), z: mix(leg.from.z, leg.to.z) };
}

/** Material ids that a run is made of, with those typed for a leg or a piece. */
export function materialsOf(run: Run): string[] {
  const own = run.pieces.map((piece) => ('material' in piece ? piece.material : undefined));
  const laid = isDrawn(run) ? Array.from({ length: run.route.corners.length + 1 }, (_, i) => i) : null;
  const ids = laid
    ? [...laid.map((leg) => run.route?.legs?.[leg]?.material ?? run.material), ...own]
    : own.map((id) => id ?? run.material);
  if (ids.length === 0) ids.push(run.material);
  return [...new Set(ids.filter((id) => id !== undefined))];
}
