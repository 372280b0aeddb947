import { DEVICE_KINDS, MIXING_KINDS } from '../ends.ts';
import type { ShopDocument } from '../schema.ts';
import { isDrawn } from '../route.ts';
import type { Thing } from '../schema-things.ts';
import type { Handler } from './command.ts';
import { done, Refused } from './command.ts';
import { cornerRemoved } from './corners.ts';
import { idMaker } from './ids.ts';
import {
  dropLostGates,
  findItem,
  itemTitle,
  joinedTo,
  needItem,
  thingsOf,
  titleOf,
  withRun,
} from './items.ts';
import type { Item, Joined } from './items.ts';
import { joinRuns } from './join-runs.ts';

const pointOf = (thing: Thing) =>
  thing.at === undefined ? null : { x: thing.at.x.si, y: thing.at.y.si, z: thing.at.z?.si ?? 0 };

const withoutThing = (document: ShopDocument, id: string): ShopDocument => ({
  ...document,
  things: document.things.filter((thing) => thing.id !== id),
});

/** Makes one run of two at a thing, which goes; null where they cannot be one. */
function joinAt(document: ShopDocument, thing: Thing, into: Joined, on: Joined): ShopDocument | null {
  if (into.run.id === on.run.id) return null;
  const joined = joinRuns(into.run, on.run, pointOf(thing), thingsOf(document));
  if (joined === null) return null;
  const runs = document.runs
    .filter((run) => run.id !== on.run.id)
    .map((run) => (run.id === into.run.id ? joined : run));
  return { ...document, runs };
}

/** Gives the loose ends of runs a joint where the thing was. */
function looseEnds(document: ShopDocument, thing: Thing, ends: readonly Joined[]): ShopDocument {
  if (ends.length === 0) return document;
  const id = idMaker(document)('joint');
  const joint: Thing = { kind: 'joint', id, ...(thing.at === undefined ? {} : { at: thing.at }) };
  const loose = new Map<string, Joined[]>();
  for (const end of ends) loose.set(end.run.id, [...(loose.get(end.run.id) ?? []), end]);
  const runs = document.runs.map((run) =>
    (loose.get(run.id) ?? []).reduce((next, { side }) => ({ ...next, [side]: id }), run),
  );
  return { ...document, things: [...document.things, joint], runs };
}

/** The pair of ends that one run can go through once the thing is gone. */
function through(thing: Thing, ends: readonly Joined[]): [Joined, Joined] | null {
  const into = ends.filter(({ side }) => side === 'to');
  const on = ends.filter(({ side }) => side === 'from');
  if (MIXING_KINDS.has(thing.kind)) {
    const main = into.find(({ end }) => end === 'main' || end === 'left') ?? into[0];
    return main && on[0] ? [main, on[0]] : null;
  }
  const paired = DEVICE_KINDS.has(thing.kind) || thing.kind === 'joint';
  return paired && into.length === 1 && on.length === 1 ? [into[0]!, on[0]!] : null;
}

function removeThing(document: ShopDocument, thing: Thing): ShopDocument {
  const ends = joinedTo(document, thing.id, thingsOf(document));
  const pair = through(thing, ends);
  const joined = pair === null ? null : joinAt(document, thing, ...pair);
  if (thing.kind === 'joint' && joined === null && ends.length > 0) {
    if (ends.length > 1) {
      const names = [...new Set(ends.map(({ run }) => titleOf(run)))].join(', ');
      throw new Refused(`${titleOf(thing)} holds ${names} together`, 'remove one of these runs too');
    }
    const stub = ends[0]!.run;
    const runs = document.runs.filter((run) => run.id !== stub.id);
    return heal(withoutThing({ ...document, runs }, thing.id), [stub.from, stub.to]);
  }
  const next = joined ?? document;
  const rest = joined === null ? ends : ends.filter((end) => end !== pair![0] && end !== pair![1]);
  return withoutThing(looseEnds(next, thing, rest), thing.id);
}

/** A wye that lost a leg goes, and what is left of it becomes one run; joints that nothing is joined to go too. */
function heal(document: ShopDocument, ends: readonly string[]): ShopDocument {
  let next = document;
  for (const id of new Set(ends.map((end) => end.split('.')[0]!))) {
    const thing = next.things.find((one) => one.id === id);
    if (thing === undefined || !(MIXING_KINDS.has(thing.kind) || thing.kind === 'joint')) continue;
    const left = joinedTo(next, id, thingsOf(next));
    if (left.length === 0) next = withoutThing(next, id);
    else if (left.length === 2 && MIXING_KINDS.has(thing.kind)) {
      const pair = through(thing, left);
      const joined = pair && joinAt(next, thing, ...pair);
      if (joined) next = withoutThing(joined, id);
    }
  }
  return next;
}

/** Takes a piece off its run; a bend of the drawing goes with its corner. */
export function withoutPiece(document: ShopDocument, item: Item & { kind: 'piece' }): ShopDocument {
  const { index, run, piece } = item;
  if (piece.source !== undefined) {
    const pieces = run.pieces.filter((_, i) => i !== piece.source);
    return dropLostGates(withRun(document, index, { ...run, pieces }));
  }
  if (piece.corner !== undefined && isDrawn(run)) {
    return withRun(document, index, cornerRemoved(run, piece.corner, thingsOf(document)));
  }
  throw new Refused(
    `${itemTitle(item)} follows from the drawing`,
    `move a corner of ${titleOf(run)}, or remove the run`,
  );
}

export const remove: Handler<'remove'> = (document, { ids }) => {
  const items = [...new Set(ids)].map((id) => needItem(document, id));
  if (items.length === 0) throw new Refused('nothing is selected', 'select what is to go');
  let next = document;
  // numbered pieces shift once one of them is gone, so the last goes first
  const pieces = items.flatMap((item) => (item.kind === 'piece' ? [item] : []));
  const place = ({ piece }: { piece: { source?: number; corner?: number } }) =>
    piece.source ?? piece.corner ?? 0;
  for (const { piece, run } of pieces.toSorted((a, b) => place(b) - place(a))) {
    const now = findItem(next, piece.key);
    const index = next.runs.findIndex(({ id }) => id === run.id);
    const current = next.runs[index]!;
    const same = now?.kind === 'piece' && now.piece.source === piece.source && now.run.id === run.id;
    if (same) next = withoutPiece(next, now);
    else next = withoutPiece(next, { kind: 'piece', index, run: current, piece, path: [] });
  }
  const gone = new Set(items.flatMap((item) => (item.kind === 'run' ? [item.run.id] : [])));
  const freed = next.runs.filter((run) => gone.has(run.id)).flatMap((run) => [run.from, run.to]);
  if (gone.size > 0) next = { ...next, runs: next.runs.filter((run) => !gone.has(run.id)) };
  const things = items.flatMap((item) => (item.kind === 'thing' ? [item.thing.id] : []));
  // joints last, as other things may leave them free
  const rank = (id: string) => Number(next.things.find((thing) => thing.id === id)?.kind === 'joint');
  for (const id of things.toSorted((a, b) => rank(a) - rank(b))) {
    const thing = next.things.find((one) => one.id === id);
    if (thing !== undefined) next = removeThing(next, thing);
  }
  next = heal(next, freed);
  const label = items.length === 1 ? itemTitle(items[0]!) : `${items.length} parts`;
  return done(dropLostGates(next), `Remove ${label}`);
};
