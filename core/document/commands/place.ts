import { coordinate, quantityOf } from '../quantity-of.ts';
import type { Place } from '../schema-common.ts';
import type { Corner } from '../schema-route.ts';
import type { Thing } from '../schema-things.ts';
import type { Edge, Handler, PointRef } from './command.ts';
import { done, Refused } from './command.ts';
import { PRESETS, startThing } from './defaults.ts';
import { idFor } from './ids.ts';
import { findItem, itemTitle, needItem, replaceAt, thingsOf, titleOf } from './items.ts';
import { ENDS, findEnd } from '../ends.ts';

/** A point of the document from a point of a command; refuses what is no number. */
export function placeOf(at: PointRef): Place {
  for (const value of [at.x, at.y, at.z ?? 0]) {
    if (!Number.isFinite(value) || Math.abs(value) > 1e6) {
      throw new Refused(`${value} m is no place on the plan`, 'give a place within the shop');
    }
  }
  const plan = { x: coordinate(at.x), y: coordinate(at.y) };
  return at.z === undefined ? plan : { ...plan, z: coordinate(at.z) };
}

export const place: Handler<'place'> = (document, { thing: kind, at, preset }) => {
  if (preset !== undefined && !PRESETS.some((row) => row.id === preset && row.kind === kind)) {
    throw new Refused(`there is no ready ${kind} "${preset}"`, 'choose one of the list');
  }
  if (!Object.hasOwn(ENDS, kind))
    throw new Refused(`there is no thing of kind "${kind}"`, 'choose one of the list');
  const id = idFor(document, kind);
  const thing: Thing = { ...startThing(kind, id, document.units, preset), at: placeOf(at) };
  return done({ ...document, things: [...document.things, thing] }, `Place ${titleOf(thing)}`, [id]);
};

/** Shifts a point; what does not move keeps its typed text. */
function shifted<P extends Place | Corner>(point: P, dx: number, dy: number, dz: number): P {
  const { x, y, z } = placeOf({ x: point.x.si + dx, y: point.y.si + dy, z: (point.z?.si ?? 0) + dz });
  return {
    ...point,
    x: dx === 0 ? point.x : x,
    y: dy === 0 ? point.y : y,
    ...(dz === 0 ? {} : { z }),
  };
}

export const move: Handler<'move'> = (document, { ids, dx, dy, dz = 0 }) => {
  const items = ids.map((id) => needItem(document, id));
  const moving = new Set(items.flatMap((item) => (item.kind === 'thing' ? [item.thing.id] : [])));
  const chosen = new Set(items.flatMap((item) => (item.kind === 'run' ? [item.run.id] : [])));
  if (moving.size + chosen.size === 0)
    throw new Refused('nothing of this can be moved', 'select a thing or a run');
  if (dx === 0 && dy === 0 && dz === 0) return done(document, `Move ${itemTitle(items[0]!)}`);
  const byId = thingsOf(document);
  const origin = placeOf({ x: 0, y: 0 });
  const things = document.things.map((thing) =>
    moving.has(thing.id) ? { ...thing, at: shifted(thing.at ?? origin, dx, dy, dz) } : thing,
  );
  const runs = document.runs.map((run) => {
    if (run.route === undefined || run.route.corners.length === 0) return run;
    const both = (['from', 'to'] as const).every((side) => {
      const end = findEnd(byId, run[side], side);
      return typeof end !== 'string' && moving.has(end.thing.id);
    });
    if (!both && !chosen.has(run.id)) return run;
    // a corner without a height follows the point before it
    const corners = run.route.corners.map((corner) =>
      shifted(corner, dx, dy, corner.z === undefined ? 0 : dz),
    );
    return { ...run, route: { ...run.route, corners } };
  });
  const label = items.length === 1 ? itemTitle(items[0]!) : `${items.length} parts`;
  const moved = { ...document, things: moving.size > 0 ? things : document.things };
  return done(
    { ...moved, runs: runs.some((run, i) => run !== document.runs[i]) ? runs : document.runs },
    `Move ${label}`,
  );
};

export const turn: Handler<'turn'> = (document, { id, angle_rad }) => {
  const item = needItem(document, id);
  if (item.kind !== 'thing') throw new Refused(`${id} cannot be turned`, 'select a thing');
  if (!Number.isFinite(angle_rad)) throw new Refused(`turn: ${angle_rad} is no angle`, 'give an angle');
  const angle = angle_rad % (2 * Math.PI);
  const thing = { ...item.thing, turn: quantityOf('angle', angle, 'any') };
  return done(
    { ...document, things: replaceAt(document.things, item.index, thing) },
    `Turn ${titleOf(thing)}`,
  );
};

const EDGES: Readonly<Record<Edge, { axis: 'x' | 'y'; pick: (values: number[]) => number }>> = {
  left: { axis: 'x', pick: (values) => Math.min(...values) },
  right: { axis: 'x', pick: (values) => Math.max(...values) },
  top: { axis: 'y', pick: (values) => Math.min(...values) },
  bottom: { axis: 'y', pick: (values) => Math.max(...values) },
  'centre-x': { axis: 'x', pick: (values) => (Math.min(...values) + Math.max(...values)) / 2 },
  'centre-y': { axis: 'y', pick: (values) => (Math.min(...values) + Math.max(...values)) / 2 },
};

export const align: Handler<'align'> = (document, { ids, edge }) => {
  const placed = new Set(
    ids.flatMap((id) => {
      const item = findItem(document, id);
      return item?.kind === 'thing' && item.thing.at !== undefined ? [item.thing.id] : [];
    }),
  );
  if (placed.size < 2) throw new Refused('fewer than two things are selected', 'select two things or more');
  if (!Object.hasOwn(EDGES, edge)) throw new Refused(`"${edge}" is no edge to align to`, 'choose an edge');
  const { axis, pick } = EDGES[edge];
  const values = document.things.flatMap((thing) => (placed.has(thing.id) ? [thing.at![axis].si] : []));
  const target = coordinate(pick(values));
  const things = document.things.map((thing) =>
    placed.has(thing.id) && Math.abs(thing.at![axis].si - target.si) > 1e-9
      ? { ...thing, at: { ...thing.at!, [axis]: target } }
      : thing,
  );
  return done({ ...document, things }, `Align ${placed.size} things`);
};
