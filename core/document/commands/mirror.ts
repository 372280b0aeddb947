import { coordinate } from '../quantity-of.ts';
import { isDrawn } from '../route.ts';
import type { Run } from '../schema-pieces.ts';
import type { Corner } from '../schema-route.ts';
import type { Thing } from '../schema-things.ts';
import type { Handler } from './command.ts';
import { done, Refused } from './command.ts';
import { joinedTo, needItem, replaceAt, thingsOf, titleOf } from './items.ts';

type Wye = Extract<Thing, { kind: 'wye' }>;

/** A point on the other side of the line of a wye's main [m]. */
function acrossMain(corner: Corner, wye: Wye): Corner {
  if (wye.at === undefined) return corner;
  const turn = wye.turn?.si ?? 0;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const x = corner.x.si - wye.at.x.si;
  const y = corner.y.si - wye.at.y.si;
  const off = y * c - x * s;
  return {
    ...corner,
    x: coordinate(wye.at.x.si + x + 2 * off * s),
    y: coordinate(wye.at.y.si + y - 2 * off * c),
  };
}

/** The corner of a branch that is nearest to its wye goes to the other side with it; the rest of the run stays. */
function followed(run: Run, side: 'from' | 'to', wye: Wye): Run {
  if (!isDrawn(run) || run.route.corners.length === 0) return run;
  const near = side === 'to' ? run.route.corners.length - 1 : 0;
  const corners = replaceAt(run.route.corners, near, acrossMain(run.route.corners[near]!, wye));
  return { ...run, route: { ...run.route, corners } };
}

/** Puts the branch of a wye on the other side of its main. */
export const mirror: Handler<'mirror'> = (document, { id }) => {
  const item = needItem(document, id);
  if (item.kind !== 'thing' || item.thing.kind !== 'wye') {
    throw new Refused(`${id} has no branch to put on the other side`, 'select a wye');
  }
  const wye = item.thing;
  const branches = joinedTo(document, id, thingsOf(document)).filter(({ end }) => end === 'branch');
  const { mirrored, ...plain } = wye;
  const thing: Wye = mirrored === true ? plain : { ...plain, mirrored: true };
  const runs = document.runs.map((run) => {
    const branch = branches.find((joined) => joined.run === run);
    return branch ? followed(run, branch.side, wye) : run;
  });
  return done(
    { ...document, things: replaceAt(document.things, item.index, thing), runs },
    `Mirror ${titleOf(wye)}`,
  );
};
