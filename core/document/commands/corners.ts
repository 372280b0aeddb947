import { quantityOf } from '../quantity-of.ts';
import { distance, isDrawn, measureRoute, pointAlong } from '../route.ts';
import type { DrawnRun, Things } from '../route.ts';
import type { Piece } from '../schema-pieces.ts';
import type { Leg } from '../schema-route.ts';
import type { Handler, PointRef } from './command.ts';
import { done, Refused } from './command.ts';
import { needRun, replaceAt, thingsOf, titleOf, withRun } from './items.ts';
import { placeOf } from './place.ts';
import type { ShopDocument } from '../schema.ts';

/** A run that was drawn, by id. */
export function needDrawn(document: ShopDocument, id: string): { run: DrawnRun; index: number } {
  const { run, index } = needRun(document, id);
  if (!isDrawn(run)) {
    throw new Refused(`${titleOf(run)} was typed piece by piece and is not drawn`, 'remove it and draw it');
  }
  return { run, index };
}

/** Typed values of each leg, one entry for each. */
export function legsOf(run: DrawnRun): Leg[] {
  return Array.from({ length: run.route.corners.length + 1 }, (_, i) => run.route.legs?.[i] ?? {});
}

/** The legs as a document keeps them: left out where nothing is typed. */
export const keptLegs = (legs: Leg[]): { legs?: Leg[] } =>
  legs.some((leg) => Object.keys(leg).length > 0) ? { legs } : {};

/** Puts each piece elsewhere along its run. */
export function replaced(
  pieces: readonly Piece[],
  where: (leg: number, at: number) => { leg: number; at: number },
): Piece[] {
  return pieces.map((piece): Piece => {
    const { leg, at } = where(piece.along?.leg ?? 0, piece.along?.at ?? 0);
    return { ...piece, along: { leg, at: Math.min(Math.max(at, 0), 1) } };
  });
}

function needCorner(run: DrawnRun, corner: number): void {
  if (run.route.corners[corner] === undefined) {
    throw new Refused(`${titleOf(run)} has no corner ${corner}`, 'choose a corner of the run');
  }
}

export const moveCorner: Handler<'moveCorner'> = (document, { run: id, corner, at }) => {
  const { run, index } = needDrawn(document, id);
  needCorner(run, corner);
  const moved = { ...run.route.corners[corner]!, ...placeOf(at) };
  const corners = replaceAt(run.route.corners, corner, moved);
  return done(
    withRun(document, index, { ...run, route: { ...run.route, corners } }),
    `Move corner of ${titleOf(run)}`,
  );
};

/** Shares a typed length between the two halves of a leg. */
export function splitLeg(leg: Leg, share: number): [Leg, Leg] {
  const part = (factor: number): Leg =>
    leg.length === undefined
      ? leg
      : { ...leg, length: quantityOf('length', leg.length.si * factor, 'not-negative') };
  return [part(share), part(1 - share)];
}

export const insertCorner: Handler<'insertCorner'> = (document, { run: id, leg, at }) => {
  const { run, index } = needDrawn(document, id);
  if (run.route.corners.length >= 500)
    throw new Refused('a run has at most 500 corners', 'end the run at a joint');
  const { points } = measureRoute(run, thingsOf(document));
  const [from, to] = [points[leg], points[leg + 1]];
  if (from === undefined || to === undefined) {
    throw new Refused(`${titleOf(run)} has no leg ${leg}`, 'choose a leg of the run');
  }
  const corner = placeOf(at);
  const point = { x: at.x, y: at.y, z: at.z ?? from.z };
  const whole = distance(from, point) + distance(point, to);
  const share = whole > 0 ? distance(from, point) / whole : 0.5;
  const corners = run.route.corners.toSpliced(leg, 0, corner);
  const legs = legsOf(run);
  legs.splice(leg, 1, ...splitLeg(legs[leg]!, share));
  // the second half takes its size from the first
  if (legs[leg + 1]!.diameter) legs[leg + 1] = without(legs[leg + 1]!, 'diameter');
  const pieces = replaced(run.pieces, (pieceLeg, pieceAt) => {
    if (pieceLeg < leg) return { leg: pieceLeg, at: pieceAt };
    if (pieceLeg > leg) return { leg: pieceLeg + 1, at: pieceAt };
    return pieceAt <= share
      ? { leg, at: share > 0 ? pieceAt / share : 0 }
      : { leg: leg + 1, at: (pieceAt - share) / (1 - share) };
  });
  const route = without(run.route, 'legs');
  return done(
    withRun(document, index, { ...run, pieces, route: { ...route, corners, ...keptLegs(legs) } }),
    `Add corner to ${titleOf(run)}`,
  );
};

/** A copy of a group without one of its fields. */
export function without<T extends object, K extends keyof T>(value: T, key: K): Omit<T, K> {
  return Object.fromEntries(Object.entries(value).filter(([name]) => name !== key)) as Omit<T, K>;
}

/** A run without one of its corners; the legs beside it become one, and pieces keep their place along it. */
export function cornerRemoved(run: DrawnRun, corner: number, things: Things): DrawnRun {
  const measure = measureRoute(run, things);
  const before = measure.legs[corner]!;
  const after = measure.legs[corner + 1]!;
  const whole = before.length_m + after.length_m;
  const share = whole > 0 ? before.length_m / whole : 0.5;
  const legs = legsOf(run);
  const [one, two] = [legs[corner]!, legs[corner + 1]!];
  const typed = one.length !== undefined && two.length !== undefined;
  const merged: Leg = { ...without(two, 'diameter'), ...without(one, 'length') };
  if (typed) merged.length = quantityOf('length', one.length!.si + two.length!.si, 'not-negative');
  else delete merged.length;
  legs.splice(corner, 2, merged);
  const pieces = replaced(run.pieces, (leg, at) => {
    if (leg === corner) return { leg, at: at * share };
    if (leg === corner + 1) return { leg: corner, at: share + at * (1 - share) };
    return { leg: leg > corner ? leg - 1 : leg, at };
  });
  const route = without(run.route, 'legs');
  const corners = route.corners.filter((_corner, i) => i !== corner);
  return { ...run, pieces, route: { ...route, corners, ...keptLegs(legs) } };
}

export const removeCorner: Handler<'removeCorner'> = (document, { run: id, corner }) => {
  const { run, index } = needDrawn(document, id);
  needCorner(run, corner);
  const next = cornerRemoved(run, corner, thingsOf(document));
  return done(withRun(document, index, next), `Remove corner of ${titleOf(run)}`);
};

/** Point and heading at a share of a leg. */
export function placeAlong(run: DrawnRun, leg: number, at: number, things: Things): PointRef & { z: number } {
  return pointAlong(measureRoute(run, things).legs[leg]!, at);
}
