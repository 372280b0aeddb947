import { ENDS } from '../ends.ts';
import { quantityOf } from '../quantity-of.ts';
import type { ShopDocument } from '../schema.ts';
import { RUN } from '../schema-pieces.ts';
import type { Run } from '../schema-pieces.ts';
import type { Route } from '../schema-route.ts';
import type { Thing, ThingKind } from '../schema-things.ts';
import { resolveWithin } from '../resolve.ts';
import type { AlongRef, EndRef, FreeRef, Handler, PointRef, Target } from './command.ts';
import { done, Refused } from './command.ts';
import { RUN_START, startThing } from './defaults.ts';
import { idMaker } from './ids.ts';
import { endText, joinedTo, needRun, replaceAt, thingsOf, titleOf } from './items.ts';
import { placeOf } from './place.ts';
import { splitRun } from './split-run.ts';

const isAlong = (target: Target): target is AlongRef => 'run' in target;
const isFree = (target: Target): target is FreeRef => 'free' in target;

/** Angle at which a run enters another where nothing says; common practice, no source [rad]. */
const ENTRY_ANGLE_RAD = Math.PI / 4;

const AIR_COMES_IN: ReadonlySet<string> = new Set<ThingKind>(['port', 'leak']);

/** Whether air can only leave here into a run (`out`), only arrive (`in`), or either. */
function airAt(target: Target, things: ReadonlyMap<string, Thing>): 'out' | 'in' | 'either' {
  if (isAlong(target)) return 'in';
  const kind = isFree(target) ? target.free : things.get(target.thing)?.kind;
  if (kind === undefined || kind === 'joint') return 'either';
  if (AIR_COMES_IN.has(kind)) return 'out';
  if (kind === 'exhaust') return 'in';
  const end = isFree(target) ? undefined : target.end;
  if (end === 'out') return 'out';
  return end === undefined || end === '' ? 'either' : 'in';
}

/** A run is drawn either way; it is kept the way of the air. */
function withTheAir(
  command: { from: Target; to: Target; corners: readonly PointRef[] },
  things: ReadonlyMap<string, Thing>,
): { from: Target; to: Target; corners: readonly PointRef[] } {
  const [start, end] = [airAt(command.from, things), airAt(command.to, things)];
  if (start === end && start !== 'either') {
    const what = start === 'out' ? 'air would come in at both ends' : 'air would have nowhere to come from';
    throw new Refused(
      `the run cannot be: ${what}`,
      'end it where air arrives, such as on a run, a fan or an exhaust',
    );
  }
  if (start !== 'in' && end !== 'out') return command;
  return { from: command.to, to: command.from, corners: command.corners.toReversed() };
}

/** The end that is asked for, or the first that fits and is free. */
function chooseEnd(document: ShopDocument, ref: EndRef, side: 'from' | 'to'): { thing: Thing; end: string } {
  const things = thingsOf(document);
  const thing = things.get(ref.thing);
  if (thing === undefined)
    throw new Refused(`nothing is named "${ref.thing.slice(0, 40)}"`, 'end it on a thing');
  const { all } = ENDS[thing.kind];
  if (ref.end !== undefined && !all.includes(ref.end)) {
    const choice = all.map((end) => endText({ thing, end })).join(', ');
    throw new Refused(`${titleOf(thing)} has no end "${ref.end}"`, `choose one of ${choice}`);
  }
  const used = new Set(joinedTo(document, thing.id, things).map(({ end }) => end));
  const fits =
    ref.end === undefined
      ? all.filter((end) => (end === 'out') === (side === 'from') || all.length === 1)
      : [ref.end];
  const many = thing.kind === 'joint' || thing.kind === 'pressure';
  const end = fits.find((one) => many || !used.has(one));
  if (end === undefined) {
    throw new Refused(
      `${titleOf(thing)} has a run there already`,
      'end on that run, which puts a wye in, or remove it first',
    );
  }
  return { thing, end };
}

function likeRun(document: ShopDocument, like: string | undefined, near: readonly string[]): Run | undefined {
  if (like !== undefined) return needRun(document, like).run;
  return document.runs.find((run) =>
    near.some((id) => [run.from, run.to].some((end) => end.split('.')[0] === id)),
  );
}

function startRun(document: ShopDocument, id: string, like: Run | undefined): Run {
  const raw = {
    id,
    from: '',
    to: '',
    diameter: RUN_START.diameter(document.units),
    material: RUN_START.material,
    route: { corners: [], bend: RUN_START.bend },
    pieces: [],
  };
  const plain = resolveWithin(RUN.parse(raw), [], raw, new Map(), []) as Run;
  if (like === undefined) return plain;
  const { diameter, material, requiredVelocity, maxSuction } = like;
  const kept = { diameter, material, requiredVelocity, maxSuction };
  const given = Object.fromEntries(Object.entries(kept).filter(([, value]) => value !== undefined));
  const bend = like.route?.bend ?? plain.route!.bend;
  return { ...plain, ...given, route: { ...plain.route!, bend } };
}

/** A way without corners, with the bends of a shop that has none yet. */
export const startRoute = (document: ShopDocument): Route => startRun(document, 'R', undefined).route!;

export const drawRun: Handler<'drawRun'> = (document, command) => {
  if (command.corners.length > 500) throw new Refused('a run has at most 500 corners', 'end it at a joint');
  const known = thingsOf(document);
  for (const target of [command.from, command.to]) {
    if (!isAlong(target) && !isFree(target) && !known.has(target.thing)) {
      throw new Refused(`nothing is named "${target.thing.slice(0, 40)}"`, 'end the run on a thing or a run');
    }
  }
  const { from, to, corners } = withTheAir(command, known);
  const makeId = idMaker(document);
  const created: string[] = [];
  let next = document;
  const runId = makeId('run');
  /** Makes or finds the end that a target means. */
  const settle = (target: Target, side: 'from' | 'to'): { thing: Thing; end: string } => {
    if (isFree(target)) {
      const thing: Thing = {
        ...startThing(target.free, makeId(target.free), document.units),
        at: placeOf(target.at),
      };
      next = { ...next, things: [...next.things, thing] };
      created.push(thing.id);
      return { thing, end: '' };
    }
    if (!isAlong(target)) return chooseEnd(next, target, side);
    const angle_rad = command.angle_rad ?? ENTRY_ANGLE_RAD;
    if (!(angle_rad > 0 && angle_rad < Math.PI)) {
      throw new Refused(`entry angle: ${angle_rad} rad cannot be`, 'give an angle between 0 and 180 degrees');
    }
    const { run, index } = needRun(next, target.run);
    const [wyeId, otherId] = [makeId('wye'), makeId('run')];
    const { first, second, point, heading_rad } = splitRun(run, target, otherId, wyeId, thingsOf(next));
    const typed = command.angle_rad === undefined ? startThing('wye', wyeId, document.units) : null;
    const wye: Thing = {
      kind: 'wye',
      id: wyeId,
      angle: typed?.kind === 'wye' ? typed.angle : quantityOf('angle', angle_rad),
      turn: quantityOf('angle', heading_rad, 'any'),
      ...(point ? { at: placeOf(point) } : {}),
    };
    const runs = replaceAt(next.runs, index, first).toSpliced(index + 1, 0, second);
    next = { ...next, things: [...next.things, wye], runs };
    created.push(wyeId, otherId);
    return { thing: wye, end: 'branch' };
  };
  const start = settle(from, 'from');
  const end = settle(to, 'to');
  if (start.thing.id === end.thing.id && (start.end === end.end || ENDS[start.thing.kind].all.length === 1)) {
    throw new Refused(
      `the run would end where it starts, at ${titleOf(start.thing)}`,
      'end it somewhere else',
    );
  }
  const alongRun = isAlong(to) ? to.run : undefined;
  const like = likeRun(document, command.like ?? alongRun, [start.thing.id, end.thing.id]);
  const plain = startRun(document, runId, like);
  const run: Run = {
    ...plain,
    from: endText(start),
    to: endText(end),
    route: { ...plain.route!, corners: corners.map(placeOf) },
  };
  return done({ ...next, runs: [...next.runs, run] }, `Draw run ${runId}`, [runId, ...created]);
};
