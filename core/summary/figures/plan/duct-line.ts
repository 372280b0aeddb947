import { apart, planPoint } from './space.ts';
import type { PlanPoint } from './space.ts';

/** One leg of a duct as the plan shows it. */
export interface LineLeg {
  /** Inside diameter at the start and at the end of the leg [m]. */
  readonly start_m: number;
  readonly end_m: number;
  readonly hose: boolean;
}

/** A duct as the plan shows it: points from start to end, the centre-line radius at each corner between. */
export interface DuctLine {
  readonly points: readonly PlanPoint[];
  /** One for each corner; 0 turns on the spot [m]. */
  readonly radii_m: readonly number[];
  /** One for each leg. */
  readonly legs: readonly LineLeg[];
}

/** A place on the centre line, with the way across it. */
export interface Station extends PlanPoint {
  /** Unit vector to the left of the flow, longer at a mitre so that the walls meet. */
  readonly across: PlanPoint;
  /** Way from the start [m]. */
  readonly along_m: number;
  readonly half_m: number;
  readonly hose: boolean;
}

/** Turn between two stations of an arc [rad]. */
const ARC_STEP_RAD = (6 * Math.PI) / 180;
/** A mitre sharper than this is cut off square, so that its point does not run away [-]. */
const LONGEST_MITRE = 3;
/** A tapered piece is drawn as long as this many times the change of diameter [-]. */
const TAPER = 2;
const SAME_POINT_M = 1e-6;

interface Leg extends LineLeg {
  readonly from: PlanPoint;
  readonly to: PlanPoint;
  readonly length: number;
  readonly direction: number;
  /** Radius at its end. */
  readonly radius: number;
}

/** Legs that have a length on the plan; risers and drops have none. */
function flatLegs(line: DuctLine): Leg[] {
  const legs: Leg[] = [];
  for (let i = 0; i + 1 < line.points.length; i++) {
    const from = line.points[i]!;
    const to = line.points[i + 1]!;
    const length = apart(from, to);
    if (length < SAME_POINT_M) continue;
    const direction = Math.atan2(to.y - from.y, to.x - from.x);
    legs.push({ ...line.legs[i]!, from, to, length, direction, radius: line.radii_m[i] ?? 0 });
  }
  return legs;
}

interface Bend {
  readonly turn: number;
  readonly tangent: number;
  readonly radius: number;
}

/** Bend between two legs; what does not fit in half of the shorter one is cut. */
function bendBetween(leg: Leg, next: Leg): Bend {
  let turn = next.direction - leg.direction;
  turn = Math.atan2(Math.sin(turn), Math.cos(turn));
  const half = Math.tan(Math.min(Math.abs(turn), Math.PI - 0.05) / 2);
  const tangent = Math.min(leg.radius * half, leg.length / 2, next.length / 2);
  if (Math.abs(turn) < 1e-4 || tangent < SAME_POINT_M) return { turn, tangent: 0, radius: 0 };
  return { turn, tangent, radius: tangent / half };
}

const left = (direction: number, scale = 1): PlanPoint =>
  planPoint(Math.sin(direction) * scale, -Math.cos(direction) * scale);

/** Centre line of a duct with its bends rounded, as stations from start to end; empty where it has no length. */
export function stationsOf(line: DuctLine): Station[] {
  const legs = flatLegs(line);
  const stations: Station[] = [];
  let along_m = 0;
  let width = legs[0]?.start_m ?? 0;
  const put = (x: number, y: number, across: PlanPoint, hose: boolean) => {
    const last = stations.at(-1);
    if (last) along_m += Math.hypot(x - last.x, y - last.y);
    stations.push({ x, y, across, along_m, half_m: width / 2, hose });
  };
  let before: Bend | null = null;
  legs.forEach((leg, i) => {
    const next = legs[i + 1];
    const bend = next ? bendBetween(leg, next) : null;
    const c = Math.cos(leg.direction);
    const s = Math.sin(leg.direction);
    const at = (distance: number, across = left(leg.direction)) =>
      put(leg.from.x + c * distance, leg.from.y + s * distance, across, leg.hose);
    const start = before?.tangent ?? 0;
    const end = leg.length - (bend?.tangent ?? 0);
    if (i === 0 || start > 0) at(start);
    else if (legs[i - 1]!.hose !== leg.hose || Math.abs(before?.turn ?? 0) < 1e-4) at(0);
    width = taper(width, leg.start_m, start, end, at, (w) => (width = w));
    // what changes within the leg changes in its middle
    if (Math.abs(leg.end_m - width) > 1e-9) {
      const middle = (start + end) / 2;
      at(middle);
      width = taper(width, leg.end_m, middle, end, at, (w) => (width = w));
    }
    if (!bend) at(end);
    else if (bend.radius > 0) {
      at(end);
      arc(leg, end, bend, put);
    } else {
      const scale = Math.min(1 / Math.max(Math.cos(bend.turn / 2), 1e-3), LONGEST_MITRE);
      at(end, left(leg.direction + bend.turn / 2, scale));
    }
    before = bend;
  });
  return stations;
}

function taper(
  from_m: number,
  to_m: number,
  start: number,
  end: number,
  at: (distance: number) => void,
  setWidth: (width: number) => void,
): number {
  if (Math.abs(to_m - from_m) < 1e-9) return from_m;
  setWidth(to_m);
  at(start + Math.min(TAPER * Math.abs(to_m - from_m), (end - start) / 2));
  return to_m;
}

function arc(
  leg: Leg,
  end: number,
  bend: Bend,
  put: (x: number, y: number, across: PlanPoint, hose: boolean) => void,
): void {
  const side = Math.sign(bend.turn);
  const normal = left(leg.direction);
  const x = leg.from.x + Math.cos(leg.direction) * end - normal.x * bend.radius * side;
  const y = leg.from.y + Math.sin(leg.direction) * end - normal.y * bend.radius * side;
  const count = Math.max(2, Math.ceil(Math.abs(bend.turn) / ARC_STEP_RAD));
  for (let k = 1; k <= count; k++) {
    const across = left(leg.direction + (bend.turn * k) / count);
    put(x + across.x * bend.radius * side, y + across.y * bend.radius * side, across, leg.hose);
  }
}

/** Place and direction at a way from the start; the nearest end where the line is shorter. */
export function stationAt(
  stations: readonly Station[],
  along_m: number,
): {
  readonly x: number;
  readonly y: number;
  readonly direction_rad: number;
  readonly half_m: number;
} | null {
  if (stations.length < 2) return null;
  let i = stations.findIndex((station) => station.along_m >= along_m);
  i = i < 0 ? stations.length - 1 : Math.max(i, 1);
  const a = stations[i - 1]!;
  const b = stations[i]!;
  const length = b.along_m - a.along_m;
  const share = length > 0 ? Math.min(Math.max((along_m - a.along_m) / length, 0), 1) : 0;
  return {
    x: a.x + (b.x - a.x) * share,
    y: a.y + (b.y - a.y) * share,
    direction_rad: Math.atan2(b.y - a.y, b.x - a.x),
    half_m: a.half_m + (b.half_m - a.half_m) * share,
  };
}
