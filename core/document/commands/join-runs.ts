import { DRAWN_REDUCER_RAD } from '../effective-pieces.ts';
import type { Quantity } from '../quantity-field.ts';
import { coordinate, quantityOf } from '../quantity-of.ts';
import { angleBetween, diameterAfter, isDrawn, measureRoute, SMALLEST_BEND_RAD } from '../route.ts';
import type { DrawnRun, Point3, Things } from '../route.ts';
import type { Piece, Run } from '../schema-pieces.ts';
import type { Corner, Leg } from '../schema-route.ts';
import { cornerRemoved, keptLegs, legsOf, replaced, without } from './corners.ts';
import { endOf, endText } from './items.ts';

/** Inside diameter at the end of a run [m]. */
export function endDiameter(run: Run, things: Things): number | null {
  if (isDrawn(run)) return measureRoute(run, things).legs.at(-1)!.endDiameter_m;
  return run.pieces.reduce<number | null>((d, piece) => diameterAfter(piece, d), run.diameter?.si ?? null);
}

/**
 * Makes one run of two that met at a thing which goes: the first keeps its name, a change of size becomes a reducer.
 * Null where one of them is drawn and the other is not, or the place of the thing is not known.
 */
export function joinRuns(first: Run, second: Run, at: Point3 | null, things: Things): Run | null {
  const limits = lower(first, second, 'maxSuction');
  const common = {
    from: endText(endOf(first, 'from', things)),
    to: endText(endOf(second, 'to', things)),
    ...(limits ? { maxSuction: limits } : {}),
  };
  const before = endDiameter(first, things);
  const size = second.diameter && before !== second.diameter.si ? second.diameter : undefined;
  if (isDrawn(first) && isDrawn(second)) {
    return at === null ? null : { ...joinDrawn(first, second, at, size, things, common) };
  }
  if (isDrawn(first) || isDrawn(second)) return null;
  const step: Piece[] =
    size && before !== null
      ? [{ kind: 'reducer', to: size, angle: quantityOf('angle', DRAWN_REDUCER_RAD) }]
      : [];
  const other = second.material !== first.material ? second.material : undefined;
  const pieces = second.pieces.map((piece): Piece =>
    other !== undefined && (piece.kind === 'straight' || piece.kind === 'hose-bend')
      ? { ...piece, material: piece.material ?? other }
      : piece,
  );
  const start = first.diameter ?? second.diameter;
  return {
    ...first,
    ...common,
    ...(start ? { diameter: start } : {}),
    pieces: [...first.pieces, ...step, ...pieces],
  };
}

function joinDrawn(
  first: DrawnRun,
  second: DrawnRun,
  at: Point3,
  size: Quantity | undefined,
  things: Things,
  common: Partial<Run>,
): Run {
  const middle = first.route.corners.length;
  const corner: Corner = { x: coordinate(at.x), y: coordinate(at.y), z: coordinate(at.z) };
  const { bend } = second.route;
  const sameBend =
    bend.style === first.route.bend.style && bend.radiusRatio.si === first.route.bend.radiusRatio.si;
  const corners = second.route.corners.map((own) =>
    sameBend ? own : { style: bend.style, radiusRatio: bend.radiusRatio, ...own },
  );
  const other = second.material !== first.material ? second.material : undefined;
  const legs = legsOf(second).map((leg): Leg => (other === undefined ? leg : { material: other, ...leg }));
  if (size && legs[0]!.diameter === undefined) legs[0] = { ...legs[0], diameter: size };
  const route = without(first.route, 'legs');
  const joined: DrawnRun = {
    ...first,
    ...common,
    route: {
      ...route,
      corners: [...route.corners, corner, ...corners],
      ...keptLegs([...legsOf(first), ...legs]),
    },
    pieces: [
      ...first.pieces,
      ...replaced(second.pieces, (leg, share) => ({ leg: leg + middle + 1, at: share })),
    ],
  };
  // where the two were one line, they are one leg again
  const measure = measureRoute(joined, things);
  const [a, b, c] = measure.points.slice(middle, middle + 3) as [Point3, Point3, Point3];
  const way = (p: Point3, q: Point3): Point3 => ({ x: q.x - p.x, y: q.y - p.y, z: q.z - p.z });
  const straight = angleBetween(way(a, b), way(b, c)) < SMALLEST_BEND_RAD;
  const [one, two] = [joined.route.legs?.[middle], joined.route.legs?.[middle + 1]];
  const same =
    two?.diameter === undefined &&
    one?.material === two?.material &&
    one?.compression?.si === two?.compression?.si &&
    (one?.length === undefined) === (two?.length === undefined);
  return straight && same ? cornerRemoved(joined, middle, things) : joined;
}

function lower(a: Run, b: Run, key: 'maxSuction'): Quantity | undefined {
  const [one, two] = [a[key], b[key]];
  return one && two ? (one.si <= two.si ? one : two) : (one ?? two);
}
