import { isDrawn, isHose, measureRoute, pointAlong, runAnchors } from '../../../document/route.ts';
import type { DrawnRun, Point3, Things } from '../../../document/route.ts';
import type { Run } from '../../../document/schema-pieces.ts';
import { stationAt, stationsOf } from './duct-line.ts';
import type { DuctLine, LineLeg, Station } from './duct-line.ts';
import { ductOutline } from './duct-outline.ts';
import type { DuctOutline } from './duct-outline.ts';
import { apart, boxAround, planPoint } from './space.ts';
import type { PlanBox, PlanPoint } from './space.ts';

/** A gate or another piece placed by hand, where it lies on the plan. */
export interface MarkView extends PlanPoint {
  readonly id: string;
  readonly kind: string;
  readonly direction_rad: number;
  readonly diameter_m: number;
  /** Opening where a setting does not say [-]; gates only. */
  readonly opening: number;
  /** Of a piece on a riser or drop, which is drawn beside it: the place on the plan where it really is. */
  readonly riser?: PlanPoint;
}

/** A riser or drop. */
export interface VerticalView extends PlanPoint {
  readonly way: 'up' | 'down';
  readonly diameter_m: number;
  readonly from_m: number;
  readonly to_m: number;
}

/** A run as the plan shows it; kept as long as the run and its ends stay as they are. */
export interface RunView {
  readonly id: string;
  readonly run: Run;
  /** Its lengths are typed, not measured from the drawing. */
  readonly typed: boolean;
  /** A typed value stands in place of a drawn one somewhere. */
  readonly overridden: boolean;
  /** Start, corners, end. */
  readonly points: readonly Point3[];
  readonly line: readonly PlanPoint[];
  readonly diameter_m: number;
  readonly stations: readonly Station[];
  readonly outline: DuctOutline;
  readonly marks: readonly MarkView[];
  readonly verticals: readonly VerticalView[];
  /** Where a label may stand: middles of legs, longest first, with their directions. */
  readonly labelPlaces: readonly { readonly x: number; readonly y: number; readonly direction_rad: number }[];
  readonly box: PlanBox | null;
  /** Length along the centre line, as it counts [m]. */
  readonly length_m: number;
}

/** Diameter at which a run without any is drawn [m]. */
const UNKNOWN_DIAMETER_M = 0.1;
/** Legs shorter than this on the plan, with a rise beside them, are risers or drops [m]. */
const VERTICAL_WITHIN_M = 0.005;

const isVertical = (from: Point3, to: Point3): boolean =>
  Math.hypot(to.x - from.x, to.y - from.y) < VERTICAL_WITHIN_M && Math.abs(to.z - from.z) > VERTICAL_WITHIN_M;

const flat = ({ x, y }: Point3): PlanPoint => planPoint(x, y);

/** Makes views of runs, and hands out the same view while nothing it shows has changed. */
export class RunViews {
  private kept = new Map<string, { run: Run; key: string; view: RunView }>();

  of(runs: readonly Run[], things: Things): RunView[] {
    const next = new Map<string, { run: Run; key: string; view: RunView }>();
    const views: RunView[] = [];
    for (const run of runs) {
      const { from, to } = runAnchors(run, things);
      const key = [from, to].map((a) => (a ? `${a.x} ${a.y} ${a.z}` : '-')).join();
      const old = this.kept.get(run.id);
      const view = old && old.run === run && old.key === key ? old.view : makeRunView(run, things, from, to);
      next.set(run.id, { run, key, view });
      views.push(view);
    }
    this.kept = next;
    return views;
  }
}

function makeRunView(run: Run, things: Things, from: Point3 | null, to: Point3 | null): RunView {
  const drawn = isDrawn(run);
  const shape = drawn ? drawnShape(run, things) : typedShape(run, from, to);
  const stations = stationsOf(shape.line);
  const line = shape.line.points;
  const legs = shape.points.slice(1).map((to, i) => ({ from: shape.points[i]!, to }));
  const diameter_m =
    run.diameter?.si ?? shape.line.legs.find((leg) => leg.start_m > 0)?.start_m ?? UNKNOWN_DIAMETER_M;
  return {
    id: run.id,
    run,
    typed: !drawn,
    overridden: drawn && isOverridden(run),
    points: shape.points,
    line,
    diameter_m,
    stations,
    outline: ductOutline(stations),
    marks: drawn ? drawnMarks(run, shape.points, diameter_m) : typedMarks(run, stations, diameter_m),
    verticals: legs.flatMap(({ from, to }) =>
      isVertical(from, to)
        ? [
            {
              x: from.x,
              y: from.y,
              way: to.z > from.z ? 'up' : 'down',
              diameter_m,
              from_m: from.z,
              to_m: to.z,
            } as const,
          ]
        : [],
    ),
    labelPlaces: labelPlaces(line),
    box: boxAround(line),
    length_m: shape.length_m,
  };
}

interface Shape {
  readonly points: readonly Point3[];
  readonly line: DuctLine;
  readonly length_m: number;
}

function drawnShape(run: DrawnRun, things: Things): Shape {
  const measure = measureRoute(run, things);
  const bends = new Map(measure.bends.map((bend) => [bend.corner, bend]));
  const legs = measure.legs.map((leg): LineLeg => {
    const start_m = leg.startDiameter_m ?? UNKNOWN_DIAMETER_M;
    return {
      start_m,
      end_m: leg.endDiameter_m ?? start_m,
      hose: isHose(run.route.legs?.[leg.leg]?.material ?? run.material),
    };
  });
  const radii_m = run.route.corners.map((_, i) => {
    const bend = bends.get(i);
    return bend === undefined || bend.style === 'mitre' ? 0 : bend.radius_m;
  });
  return {
    points: measure.points,
    line: { points: measure.points.map(flat), radii_m, legs },
    length_m: measure.length_m,
  };
}

/** Straight from anchor to anchor; hose and duct share the way as they share the typed lengths. */
function typedShape(run: Run, from: Point3 | null, to: Point3 | null): Shape {
  const start = from ?? to;
  const end = to ?? from;
  if (!start || !end) return { points: [], line: { points: [], radii_m: [], legs: [] }, length_m: 0 };
  const parts = typedParts(run);
  const total = parts.reduce((sum, part) => sum + part.length_m, 0);
  const points: PlanPoint[] = [flat(start)];
  const legs: LineLeg[] = [];
  let done = 0;
  for (const part of parts) {
    done += part.length_m;
    const share = total > 0 ? done / total : 1;
    points.push(planPoint(start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share));
    legs.push({ start_m: part.diameter_m, end_m: part.diameter_m, hose: part.hose });
  }
  return {
    points: [start, end],
    line: { points, radii_m: points.slice(2).map(() => 0), legs },
    length_m: total,
  };
}

function typedParts(run: Run): { length_m: number; diameter_m: number; hose: boolean }[] {
  const parts: { length_m: number; diameter_m: number; hose: boolean }[] = [];
  let diameter_m = run.diameter?.si ?? UNKNOWN_DIAMETER_M;
  for (const piece of run.pieces) {
    diameter_m = piece.kind === 'reducer' ? piece.to.si : (piece.diameter?.si ?? diameter_m);
    const hose = isHose(('material' in piece ? piece.material : undefined) ?? run.material);
    const length_m =
      piece.kind === 'straight' || piece.kind === 'bare'
        ? piece.length.si
        : piece.kind === 'hose-bend'
          ? piece.radius.si * piece.angle.si
          : 0;
    const last = parts.at(-1);
    if (last && last.hose === hose && last.diameter_m === diameter_m) last.length_m += length_m;
    else if (length_m > 0) parts.push({ length_m, diameter_m, hose });
  }
  return parts.length > 0 ? parts : [{ length_m: 0, diameter_m, hose: isHose(run.material) }];
}

function isOverridden(run: DrawnRun): boolean {
  const typed = (value: object | undefined, ...names: string[]) =>
    value !== undefined && names.some((name) => (value as Record<string, unknown>)[name] !== undefined);
  return (
    run.route.corners.some((corner) => typed(corner, 'angle')) ||
    (run.route.legs ?? []).some((leg) => typed(leg, 'length'))
  );
}

type Piece = Run['pieces'][number];
const markOf = (piece: Piece, i: number, run: Run) => ({
  id: piece.id ?? `${run.id}.${i + 1}`,
  kind: piece.kind,
  opening: piece.kind === 'gate' ? (piece.opening?.si ?? 1) : 1,
});

function drawnMarks(run: DrawnRun, points: readonly Point3[], diameter_m: number): MarkView[] {
  return run.pieces.map((piece, i) => {
    const leg = Math.min(piece.along?.leg ?? 0, points.length - 2);
    const [from, to] = [points[leg]!, points[leg + 1]!];
    const at = piece.along?.at ?? 0;
    const { x, y } = pointAlong({ from, to }, at);
    const size =
      ('diameter' in piece ? piece.diameter?.si : undefined) ?? run.route.legs?.[leg]?.diameter?.si;
    const mark = { ...markOf(piece, i, run), diameter_m: size ?? diameter_m };
    if (isVertical(from, to)) return { ...mark, ...besideRiser(points, leg, at, mark.diameter_m) };
    const direction_rad = Math.atan2(to.y - from.y, to.x - from.x);
    return { ...mark, x, y, direction_rad };
  });
}

/** How far from the middle of a riser a piece on it is drawn, over its diameter [-]. */
const BESIDE = 1.5;

/** A place beside a riser, away from the legs before and after it; pieces further along it stand a little further off. */
function besideRiser(
  points: readonly Point3[],
  leg: number,
  at: number,
  diameter_m: number,
): Pick<MarkView, 'x' | 'y' | 'direction_rad' | 'riser'> {
  const here = points[leg]!;
  const ways = [points[leg - 1], points[leg + 2]].flatMap((other) => {
    const way = other && Math.atan2(other.y - here.y, other.x - here.x);
    return way === undefined || isVertical(here, other!) ? [] : [way];
  });
  const off = (a: number, b: number) => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
  const room = (angle: number) => Math.min(Math.PI, ...ways.map((way) => off(angle, way)));
  // up the paper and to the right first, where lettering seldom is
  const angles = Array.from({ length: 8 }, (_, i) => -Math.PI / 4 + (i * Math.PI) / 4);
  const direction_rad = angles.reduce((best, angle) => (room(angle) > room(best) + 1e-9 ? angle : best));
  const reach = diameter_m * (BESIDE + at * 0.6);
  return {
    x: here.x + reach * Math.cos(direction_rad),
    y: here.y + reach * Math.sin(direction_rad),
    direction_rad,
    riser: planPoint(here.x, here.y),
  };
}

function typedMarks(run: Run, stations: readonly Station[], diameter_m: number): MarkView[] {
  const way = stations.at(-1)?.along_m ?? 0;
  const lengths = run.pieces.map((piece) =>
    'length' in piece ? piece.length.si : piece.kind === 'hose-bend' ? piece.radius.si * piece.angle.si : 0,
  );
  const total = lengths.reduce((sum, length) => sum + length, 0);
  let done = 0;
  return run.pieces.flatMap((piece, i) => {
    done += lengths[i]!;
    if (piece.kind !== 'gate') return [];
    const place = stationAt(stations, total > 0 ? (way * done) / total : way / 2);
    return place ? [{ ...markOf(piece, i, run), ...place, diameter_m }] : [];
  });
}

function labelPlaces(line: readonly PlanPoint[]): RunView['labelPlaces'] {
  const legs = line.slice(1).map((to, i) => ({ from: line[i]!, to, length: apart(line[i]!, to) }));
  return legs
    .filter(({ length }) => length > 1e-6)
    .sort((a, b) => b.length - a.length)
    .slice(0, 4)
    .flatMap(({ from, to }) =>
      [0.5, 0.3, 0.7].map((share) => ({
        x: from.x + (to.x - from.x) * share,
        y: from.y + (to.y - from.y) * share,
        direction_rad: Math.atan2(to.y - from.y, to.x - from.x),
      })),
    );
}
