import { coordinate } from '../quantity-of.ts';
import { measureRoute, runAnchors } from '../route.ts';
import type { DrawnRun, Things } from '../route.ts';
import type { Corner, Leg } from '../schema-route.ts';
import type { Handler, PointRef } from './command.ts';
import { done, Refused } from './command.ts';
import { keptLegs, legsOf, needDrawn, replaced, without } from './corners.ts';
import { thingsOf, titleOf, withRun } from './items.ts';
import { placeOf } from './place.ts';

/** Shift of a leg [m]. */
interface Shift {
  readonly dx: number;
  readonly dy: number;
  readonly dz: number;
}

/** What a new leg takes from the one that it was cut from; a typed length stays with the old one. */
const cutFrom = (leg: Leg): Leg => without(leg, 'length');

/**
 * A run with one of its legs moved, both ends by the same way. An end that stands on a thing cannot move: the run gains
 * a corner there, and a short leg that joins the two.
 */
function legMoved(run: DrawnRun, leg: number, { dx, dy, dz }: Shift, things: Things): DrawnRun {
  const { points } = measureRoute(run, things);
  const last = points.length - 2;
  const { from, to } = runAnchors(run, things);
  const typed = legsOf(run);
  const corners = run.route.corners.map((corner, i): Corner => {
    const { z } = points[i + 1]!;
    if (i === leg - 1 || i === leg) {
      return { ...corner, ...placeOf(moved({ ...points[i + 1]! }, corner.z !== undefined || dz !== 0)) };
    }
    // a corner after the leg that follows its height stays where it is
    return i === leg + 1 && dz !== 0 && corner.z === undefined ? { ...corner, z: coordinate(z) } : corner;
  });

  function moved(point: Required<PointRef>, withHeight: boolean): PointRef {
    const plan = { x: point.x + dx, y: point.y + dy };
    return withHeight ? { ...plan, z: point.z + dz } : plan;
  }

  const legs = [...typed];
  let pieces = run.pieces;
  if (leg === last && to !== null) {
    corners.push(placeOf(moved(points[leg + 1]!, true)));
    legs.push(without(cutFrom(typed[leg]!), 'diameter'));
  }
  if (leg === 0 && from !== null) {
    corners.unshift(placeOf(moved(points[0]!, true)));
    legs.splice(0, 1, cutFrom(typed[0]!), without(typed[0]!, 'diameter'));
    pieces = replaced(pieces, (own, at) => ({ leg: own + 1, at }));
  }
  return { ...run, pieces, route: { ...without(run.route, 'legs'), corners, ...keptLegs(legs) } };
}

export const moveLeg: Handler<'moveLeg'> = (document, { run: id, leg, dx, dy, dz = 0 }) => {
  const { run, index } = needDrawn(document, id);
  if (!Number.isInteger(leg) || leg < 0 || leg > run.route.corners.length) {
    throw new Refused(`${titleOf(run)} has no leg ${leg}`, 'choose a leg of the run');
  }
  if (run.route.corners.length >= 499) {
    throw new Refused('a run has at most 500 corners', 'end the run at a joint');
  }
  const label = `Move leg of ${titleOf(run)}`;
  if (dx === 0 && dy === 0 && dz === 0) return done(document, label);
  return done(withRun(document, index, legMoved(run, leg, { dx, dy, dz }, thingsOf(document))), label);
};
