import { parseQuantity } from '../../quantities/parse.ts';
import type { NamedValues } from '../../quantities/parse.ts';
import { findEnd } from '../ends.ts';
import { isQuantity } from '../quantity-field.ts';
import { readDocument } from '../read.ts';
import { namesOf } from '../resolve.ts';
import { runAnchors } from '../route.ts';
import type { ShopDocument } from '../schema.ts';
import type { FanDesign } from '../schema-fans.ts';
import type { Run } from '../schema-pieces.ts';
import type { Thing } from '../schema-things.ts';
import { toJson, writeDocument } from '../write.ts';
import type { Clip, Handler, PointRef } from './command.ts';
import { done, Refused } from './command.ts';
import { endText, findItem, thingsOf } from './items.ts';
import { without } from './corners.ts';
import { idMaker } from './ids.ts';
import { move, placeOf } from './place.ts';
import { followNames } from './rename.ts';

/** How far a copy lies from what it was made of [m]. */
const COPY_OFFSET_M = 0.5;

/**
 * Parts of a shop as a small document: the things chosen, the runs chosen and those between chosen things. A run's end
 * at a thing that was not chosen becomes a joint.
 */
export function copyParts(document: ShopDocument, ids: readonly string[]): Clip {
  const things = thingsOf(document);
  const items = ids.map((id) => findItem(document, id));
  const chosen = new Set(items.flatMap((item) => (item?.kind === 'thing' ? [item.thing.id] : [])));
  const runIds = new Set(items.flatMap((item) => (item?.kind === 'run' ? [item.run.id] : [])));
  const makeId = idMaker(document);
  const joints: Thing[] = [];
  const runs = document.runs.flatMap((run): Run[] => {
    const [from, to] = [findEnd(things, run.from, 'from'), findEnd(things, run.to, 'to')];
    if (typeof from === 'string' || typeof to === 'string') return [];
    const inside = chosen.has(from.thing.id) && chosen.has(to.thing.id);
    if (!inside && !runIds.has(run.id)) return [];
    const anchors = runAnchors(run, things);
    const end = (one: typeof from, side: 'from' | 'to'): string => {
      if (chosen.has(one.thing.id)) return endText(one);
      const anchor = anchors[side];
      const joint: Thing = { kind: 'joint', id: makeId('joint'), ...(anchor ? { at: placeOf(anchor) } : {}) };
      joints.push(joint);
      return joint.id;
    };
    return [{ ...run, from: end(from, 'from'), to: end(to, 'to') }];
  });
  const gates = new Set(
    runs.flatMap((run) => run.pieces.flatMap((piece) => (piece.kind === 'gate' ? [piece.id] : []))),
  );
  const kept = document.things.filter((thing) => chosen.has(thing.id));
  const dusts = new Set(kept.map((thing) => (thing.kind === 'port' ? thing.dust : undefined)));
  const designs = new Set(kept.map((thing) => (thing.kind === 'fan' ? thing.design : undefined)));
  const rest = without(document, 'underlay');
  return {
    ...rest,
    things: [...kept, ...joints],
    runs,
    dusts: document.dusts.filter((dust) => dusts.has(dust.id)),
    fans: document.fans.filter((fan) => designs.has(fan.id)),
    settings: document.settings.map((setting) => ({
      ...setting,
      gates: Object.fromEntries(Object.entries(setting.gates).filter(([gate]) => gates.has(gate))),
    })),
  };
}

/** The text that goes on the clipboard, and back; null where the clipboard holds something else. */
export const writeClip = (clip: Clip): string => writeDocument(clip);
export function readClip(text: string): Clip | null {
  const read = readDocument(text, { allowIncomplete: true });
  return read.ok ? read.document : null;
}

/** Keeps a typed text only where it means the same here. */
function settled(value: unknown, names: NamedValues): unknown {
  if (isQuantity(value)) {
    if (value.text === null) return value;
    const parsed = parseQuantity(value.text, value.dimension, { field: '', names });
    return parsed.ok && parsed.si === value.si ? value : { ...value, text: null };
  }
  if (Array.isArray(value)) return value.map((item) => settled(item, names));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, settled(item, names)]));
}

const sameFan = (a: FanDesign, b: FanDesign): boolean =>
  JSON.stringify(toJson(a)) === JSON.stringify(toJson(b));

const pastedFans = (
  fans: readonly FanDesign[],
  names: ReadonlyMap<string, string>,
  values: NamedValues,
): FanDesign[] => fans.map((fan) => settled({ ...fan, id: names.get(fan.id)! }, values) as FanDesign);

/** Upper left corner of what has a place. */
function cornerOf(clip: Clip): PointRef | null {
  const places = [
    ...clip.things.flatMap((thing) => (thing.at ? [thing.at] : [])),
    ...clip.runs.flatMap((run) => run.route?.corners ?? []),
  ];
  if (places.length === 0) return null;
  const least = (values: number[]) => values.reduce((a, b) => Math.min(a, b));
  return { x: least(places.map(({ x }) => x.si)), y: least(places.map(({ y }) => y.si)) };
}

export const paste: Handler<'paste'> = (document, { clip, at }) => {
  if (clip.things.length + clip.runs.length === 0)
    throw new Refused('nothing was copied', 'select parts and copy them');
  const makeId = idMaker(document);
  const names = new Map<string, string>();
  for (const thing of clip.things) names.set(thing.id, makeId(thing.kind));
  for (const run of clip.runs) {
    names.set(run.id, makeId('run'));
    for (const piece of run.pieces) {
      if (piece.id !== undefined) names.set(piece.id, makeId(piece.kind === 'gate' ? 'gate' : 'run'));
    }
  }
  // a fan of the list comes along, unless the very same is there
  const fans = clip.fans.filter((fan) => !document.fans.some((other) => sameFan(fan, other)));
  for (const fan of fans) names.set(fan.id, makeId('design'));
  const values = namesOf(document, []);
  const things = clip.things.map((thing) => ({ ...thing, id: names.get(thing.id)! }));
  const runs = clip.runs.map((run) => ({
    ...run,
    id: names.get(run.id)!,
    pieces: run.pieces.map((piece) =>
      piece.id === undefined ? piece : { ...piece, id: names.get(piece.id)! },
    ),
  }));
  const own = followNames({ ...clip, things, runs }, names);
  const parts = {
    things: settled(own.things, values) as Thing[],
    runs: settled(own.runs, values) as Run[],
  };
  const openings = new Map(own.settings.map((setting) => [setting.name, setting.gates]));
  const settings = document.settings.map((setting) => {
    const more = openings.get(setting.name) ?? {};
    if (Object.keys(more).length === 0) return setting;
    return { ...setting, gates: { ...setting.gates, ...(settled(more, values) as typeof more) } };
  });
  const known = new Set(document.dusts.map((dust) => dust.id));
  const dusts = clip.dusts.filter((dust) => !known.has(dust.id));
  const pasted: ShopDocument = {
    ...document,
    things: [...document.things, ...parts.things],
    runs: [...document.runs, ...parts.runs],
    settings,
    ...(fans.length > 0 ? { fans: [...document.fans, ...pastedFans(fans, names, values)] } : {}),
    ...(dusts.length > 0 ? { dusts: [...document.dusts, ...(settled(dusts, values) as typeof dusts)] } : {}),
  };
  const created = [...parts.things, ...parts.runs].map(({ id }) => id);
  const corner = cornerOf(clip);
  const dx = at && corner ? at.x - corner.x : COPY_OFFSET_M;
  const dy = at && corner ? at.y - corner.y : COPY_OFFSET_M;
  const placed = parts.things.filter((thing) => thing.at !== undefined).map(({ id }) => id);
  const ids = [...placed, ...parts.runs.map(({ id }) => id)];
  const moved = ids.length > 0 ? move(pasted, { kind: 'move', ids, dx, dy }) : done(pasted, '');
  return moved.ok ? done(moved.document, `Paste ${created.length} parts`, created) : moved;
};

export const duplicate: Handler<'duplicate'> = (document, { ids }) => {
  const result = paste(document, { kind: 'paste', clip: copyParts(document, ids) });
  return result.ok ? { ...result, label: `Duplicate ${ids.length} parts` } : result;
};
