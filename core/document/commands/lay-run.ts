import { quantityOf } from '../quantity-of.ts';
import { isDrawn, pointAlong, runAnchors } from '../route.ts';
import type { Piece } from '../schema-pieces.ts';
import type { Corner, Leg } from '../schema-route.ts';
import type { Handler } from './command.ts';
import { done, Refused } from './command.ts';
import { keptLegs } from './corners.ts';
import { startRoute } from './draw-run.ts';
import { needRun, thingsOf, titleOf, withRun } from './items.ts';
import { placeOf } from './place.ts';

type Straight = Extract<Piece, { kind: 'straight' }>;

/** A leg to be: its straights, and the pieces before and after each of them. */
interface Stretch {
  readonly straights: Straight[];
  readonly pieces: { readonly piece: Piece; readonly after_m: number }[];
  length_m: number;
}

/** Straights that can be one leg: of one material and one stretch, and of no size of their own. */
function goesOn(stretch: Stretch, next: Straight): boolean {
  const [first] = stretch.straights;
  return (
    first === undefined ||
    (first.material === next.material &&
      first.compression?.si === next.compression?.si &&
      next.diameter === undefined)
  );
}

function stretches(pieces: readonly Piece[]): Stretch[] {
  const made: Stretch[] = [{ straights: [], pieces: [], length_m: 0 }];
  for (const piece of pieces) {
    let last = made.at(-1)!;
    if (piece.kind !== 'straight') {
      last.pieces.push({ piece, after_m: last.length_m });
      continue;
    }
    // a size that a straight brings begins a leg, as legs carry sizes
    const late = piece.diameter !== undefined && last.pieces.length > 0;
    if (late || !goesOn(last, piece)) {
      last = { straights: [], pieces: [], length_m: 0 };
      made.push(last);
    }
    last.straights.push(piece);
    last.length_m += piece.length.si;
  }
  return made;
}

function legOf({ straights, length_m }: Stretch): Leg {
  const [first] = straights;
  if (first === undefined) return { length: quantityOf('length', 0, 'not-negative') };
  const { diameter, material, compression } = first;
  return {
    length: straights.length === 1 ? first.length : quantityOf('length', length_m, 'not-negative'),
    ...(diameter === undefined ? {} : { diameter }),
    ...(material === undefined ? {} : { material }),
    ...(compression === undefined ? {} : { compression }),
  };
}

const counted = (n: number, word: string): string => `${n} ${word}${n === 1 ? '' : 's'}`;

/**
 * Draws a run that was typed piece by piece: straight from thing to thing. Lengths that were typed stand as those of its
 * legs and every other piece stays where it was between them, so that the air finds the same duct.
 */
export const layRun: Handler<'layRun'> = (document, { run: id }) => {
  const { run, index } = needRun(document, id);
  const title = titleOf(run);
  if (isDrawn(run)) throw new Refused(`${title} is drawn already`, 'move its corners and legs');
  if (run.pieces.some(({ kind }) => kind === 'bare')) {
    throw new Refused(
      `${title} gives all its losses in one number, which has no way on the plan`,
      'remove it and draw it',
    );
  }
  const { from, to } = runAnchors(run, thingsOf(document));
  if (from === null || to === null) {
    throw new Refused(`an end of ${title} has no place on the plan`, 'give both things a place');
  }
  const parts = stretches(run.pieces);
  if (parts.length > 500) throw new Refused('a run has at most 500 corners', 'end the run at a joint');
  const whole = parts.reduce((sum, { length_m }) => sum + length_m, 0);
  const corners: Corner[] = [];
  let done_m = 0;
  parts.slice(0, -1).forEach(({ length_m }, i) => {
    done_m += length_m;
    const share = whole > 0 ? done_m / whole : (i + 1) / parts.length;
    corners.push(placeOf(pointAlong({ from, to }, share)));
  });
  const pieces = parts.flatMap((part, leg) =>
    part.pieces.map(({ piece, after_m }): Piece => {
      const at = part.length_m > 0 ? Math.min(after_m / part.length_m, 1) : 0;
      return { ...piece, along: { leg, at } };
    }),
  );
  const bend = document.runs.find((other) => other.route)?.route?.bend ?? startRoute(document).bend;
  const route = { corners, bend, ...keptLegs(parts.map(legOf)) };
  const says = [
    counted(parts.length, 'straight leg'),
    'lengths as typed',
    ...(pieces.length > 0 ? [`${counted(pieces.length, 'piece')} kept`] : []),
  ];
  return done(withRun(document, index, { ...run, route, pieces }), `Draw ${title}: ${says.join(', ')}`);
};
