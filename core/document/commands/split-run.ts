import { anchorOf } from '../anchors.ts';
import { quantityOf } from '../quantity-of.ts';
import type { Quantity } from '../quantity-field.ts';
import { diameterAfter, handPieces, isDrawn, measureRoute, pointAlong } from '../route.ts';
import type { DrawnRun, Point3, Things } from '../route.ts';
import type { Piece, Run } from '../schema-pieces.ts';
import type { AlongRef } from './command.ts';
import { Refused } from './command.ts';
import { keptLegs, legsOf, replaced, splitLeg, without } from './corners.ts';
import { endOf, endText, titleOf } from './items.ts';

/** A run cut in two. */
export interface Halves {
  readonly first: Run;
  readonly second: Run;
  /** Where it was cut; null where nothing says. */
  readonly point: Point3 | null;
  /** Direction of the air there on the plan [rad]. */
  readonly heading_rad: number;
}

/** The size of a duct as the document gives it, or as a number where it comes from a piece in between. */
const sizeFor = (run: Run, diameter_m: number | null): Quantity | undefined => {
  if (diameter_m === null) return run.diameter;
  return run.diameter?.si === diameter_m ? run.diameter : quantityOf('length', diameter_m);
};

/**
 * Cuts a run at a share of one of its legs. Corners, typed values, pieces and gates stay on their own side, and the
 * straights of both halves add up to those of the whole.
 */
export function splitRun(
  run: Run,
  { leg, at }: AlongRef,
  newId: string,
  middle: string,
  things: Things,
): Halves {
  if (!Number.isFinite(at) || at < 0 || at > 1)
    throw new Refused(`at: ${at} is no share of a leg`, 'give 0 to 1');
  const ends = { from: endText(endOf(run, 'from', things)), to: endText(endOf(run, 'to', things)) };
  const cut = isDrawn(run) ? cutDrawn(run, leg, at, things) : cutTyped(run, leg, at, things);
  const second = { ...cut.second, id: newId, from: `${middle}.out`, to: ends.to };
  if (run.name !== undefined) delete second.name;
  return { ...cut, first: { ...cut.first, from: ends.from, to: `${middle}.main` }, second };
}

function cutDrawn(run: DrawnRun, leg: number, at: number, things: Things): Halves {
  const measured = measureRoute(run, things).legs[leg];
  if (measured === undefined)
    throw new Refused(`${titleOf(run)} has no leg ${leg}`, 'choose a leg of the run');
  const { length_m, before_m, after_m, drawn_m, from, to } = measured;
  // not within a bend
  const along = Math.min(Math.max(at * length_m, before_m), Math.max(before_m, length_m - after_m));
  const share = length_m > 0 ? along / length_m : 0.5;
  const straight = drawn_m > 0 ? (along - before_m) / drawn_m : share;
  const legs = legsOf(run);
  const [one, two] = splitLeg(legs[leg]!, Math.min(Math.max(straight, 0), 1));
  let diameter = measured.startDiameter_m;
  for (const placed of handPieces(run, leg)) {
    if (placed.at <= share) diameter = diameterAfter(placed.piece, diameter);
  }
  const isFirst = (piece: Piece) => {
    const [pieceLeg, pieceAt] = [piece.along?.leg ?? 0, piece.along?.at ?? 0];
    return pieceLeg < leg || (pieceLeg === leg && pieceAt <= share);
  };
  const route = without(run.route, 'legs');
  const first: DrawnRun = {
    ...run,
    route: { ...route, corners: route.corners.slice(0, leg), ...keptLegs([...legs.slice(0, leg), one]) },
    pieces: replaced(run.pieces.filter(isFirst), (pieceLeg, pieceAt) => ({
      leg: pieceLeg,
      at: pieceLeg === leg && share > 0 ? pieceAt / share : pieceAt,
    })),
  };
  const size = sizeFor(run, diameter);
  const rest: DrawnRun = {
    ...without(run, 'diameter'),
    ...(size ? { diameter: size } : {}),
    route: {
      ...route,
      corners: route.corners.slice(leg),
      ...keptLegs([without(two, 'diameter'), ...legs.slice(leg + 1)]),
    },
    pieces: replaced(
      run.pieces.filter((piece) => !isFirst(piece)),
      (pieceLeg, pieceAt) => ({
        leg: pieceLeg - leg,
        at: pieceLeg === leg ? (pieceAt - share) / (1 - share) : pieceAt,
      }),
    ),
  };
  return {
    first,
    second: rest,
    point: pointAlong({ from, to }, share),
    heading_rad: Math.atan2(to.y - from.y, to.x - from.x),
  };
}

function cutTyped(run: Run, leg: number, at: number, things: Things): Halves {
  const before = run.pieces.slice(0, leg);
  const after = run.pieces.slice(leg + 1);
  const piece = run.pieces[leg];
  if (piece === undefined && run.pieces.length > 0) {
    throw new Refused(`${titleOf(run)} has no piece ${leg}`, 'choose a piece of the run');
  }
  if (piece?.kind === 'straight') {
    const part = (share: number): Piece => ({
      ...piece,
      length: quantityOf('length', piece.length.si * share, 'not-negative'),
    });
    before.push(part(at));
    // a name stays with the first half
    after.unshift(without(part(1 - at), 'id') as Piece);
  } else if (piece !== undefined) (at < 0.5 ? after : before)[at < 0.5 ? 'unshift' : 'push'](piece);
  let diameter = run.diameter?.si ?? null;
  for (const one of before) diameter = diameterAfter(one, diameter);
  const [from, to] = [endOf(run, 'from', things), endOf(run, 'to', things)];
  const [a, b] = [anchorOf(from.thing, from.end), anchorOf(to.thing, to.end)];
  const share = run.pieces.length > 0 ? (leg + at) / run.pieces.length : at;
  const size = sizeFor(run, diameter);
  return {
    first: { ...run, pieces: before },
    second: { ...without(run, 'diameter'), ...(size ? { diameter: size } : {}), pieces: after },
    point: a && b ? pointAlong({ from: a, to: b }, share) : null,
    heading_rad: a && b ? Math.atan2(b.y - a.y, b.x - a.x) : 0,
  };
}
