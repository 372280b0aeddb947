import { quantityOf } from '../quantity-of.ts';
import { diameterAfter, isDrawn, measureRoute } from '../route.ts';
import type { Things } from '../route.ts';
import type { Piece, Run } from '../schema-pieces.ts';
import type { Leg } from '../schema-route.ts';
import type { Handler } from './command.ts';
import { done } from './command.ts';
import { keptLegs, legsOf, replaced, without } from './corners.ts';
import { endOf, endText, needRun, thingsOf, titleOf, withRun } from './items.ts';
import { endDiameter } from './join-runs.ts';

/** The same run with the air going the other way. */
export function reversedRun(run: Run, things: Things): Run {
  const end = endDiameter(run, things);
  const turned = {
    ...run,
    from: endText(endOf(run, 'to', things)),
    to: endText(endOf(run, 'from', things)),
    ...(end !== null && end !== run.diameter?.si ? { diameter: quantityOf('length', end) } : {}),
  };
  if (!isDrawn(run)) return { ...turned, pieces: reversedPieces(run.pieces, run.diameter?.si ?? null) };
  const measure = measureRoute(run, things);
  const last = measure.legs.length - 1;
  const typed = legsOf(run);
  const legs = measure.legs.toReversed().map((leg, i): Leg => {
    const own = without(typed[leg.leg]!, 'diameter');
    // the size that this leg now starts with, where it is not that of the leg before it
    const before = i === 0 ? end : measure.legs[leg.leg + 1]!.startDiameter_m;
    const size = leg.endDiameter_m;
    return size !== null && size !== before ? { ...own, diameter: quantityOf('length', size) } : own;
  });
  const route = without(run.route, 'legs');
  // heights that followed the point before are written out, as another point is before them now
  const corners = route.corners
    .map((corner, i) =>
      corner.z ? corner : { ...corner, z: quantityOf('length', measure.points[i + 1]!.z, 'any') },
    )
    .toReversed();
  const sizes = new Map(measure.legs.map((leg) => [leg.leg, leg.startDiameter_m]));
  const order = run.pieces.toSorted(
    (a, b) => (a.along?.leg ?? 0) - (b.along?.leg ?? 0) || (a.along?.at ?? 0) - (b.along?.at ?? 0),
  );
  const byLeg = measure.legs.toReversed().flatMap((leg) => {
    const own = order.filter((piece) => (piece.along?.leg ?? 0) === leg.leg);
    return reversedPieces(own, sizes.get(leg.leg) ?? null);
  });
  return {
    ...turned,
    route: { ...route, corners, ...keptLegs(legs) },
    pieces: replaced(byLeg, (leg, at) => ({ leg: last - leg, at: 1 - at })),
  };
}

/** Pieces back to front; a reducer then ends at the size that it started from. */
function reversedPieces(pieces: readonly Piece[], start_m: number | null): Piece[] {
  let size = start_m;
  return pieces
    .map((piece): Piece => {
      const before = size;
      size = diameterAfter(piece, size);
      if (piece.kind === 'reducer') {
        return before === null ? piece : { ...piece, to: quantityOf('length', before) };
      }
      return piece;
    })
    .toReversed();
}

export const reverse: Handler<'reverse'> = (document, { run: id }) => {
  const { run, index } = needRun(document, id);
  const turned = reversedRun(run, thingsOf(document));
  return done(withRun(document, index, turned), `Turn round ${titleOf(run)}`);
};
