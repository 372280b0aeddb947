import type { ShopDocument } from '../schema.ts';
import type { FanDesign } from '../schema-fans.ts';
import { isQuantity } from '../quantity-field.ts';
import { printQuantity } from '../../quantities/print.ts';
import { resolveAgain } from '../resolve.ts';
import { toJson } from '../write.ts';
import type { FieldPath, Handler } from './command.ts';
import { done, Refused } from './command.ts';
import { GROUP_STARTS, KIND_STARTS } from './defaults.ts';
import { editValue, valueAt } from './edit-value.ts';
import { isReadingKind, readingIds, startReading } from './fan-defaults.ts';
import { ownDimensions } from './free-cyclone.ts';
import { findDesign, findItem, itemTitle, needItem, titleOf } from './items.ts';
import { renamed } from './rename.ts';

const word = (path: FieldPath) => path.findLast((key) => typeof key === 'string') ?? 'value';

/** Path from the document's root, and what the item is called. */
function rootPath(document: ShopDocument, id: string, path: FieldPath): { full: FieldPath; title: string } {
  if (id === '') return { full: path, title: 'the shop' };
  const fan = findDesign(document, id);
  if (fan !== null) return { full: ['fans', fan.index, ...path], title: titleOf(fan.design) };
  const item = needItem(document, id);
  return { full: [...item.path, ...path], title: itemTitle(item) };
}

/** Fields that hold a whole number, which no unit stands behind. */
const COUNTS: ReadonlySet<unknown> = new Set(['holes', 'poles', 'blades']);

/** What a text stands for in the file: most fields keep it as it was typed. */
const written = (path: FieldPath, text: string): string | number =>
  COUNTS.has(path.at(-1)) && /^\s*\d{1,9}\s*$/.test(text) ? Number(text) : text;

/** Whether a path names a part that others point to; a reading is only known to its own fan. */
function renames(document: ShopDocument, full: FieldPath): string | null {
  const parts = full.length === 3 ? ['things', 'runs', 'fans'] : ['things', 'runs'];
  if (full.at(-1) !== 'id' || !parts.includes(String(full[0]))) return null;
  const old = valueAt(document, full);
  return typeof old === 'string' ? old : null;
}

export const setField: Handler<'setField'> = (document, { id, path, text }) => {
  const { full, title } = rootPath(document, id, path);
  const label = `Change ${word(path)} of ${title}`;
  const old = renames(document, full);
  if (old !== null && text !== null) return done(renamed(document, full, old, text), `Rename ${old}`, [text]);
  return done(editValue(document, full, text === null ? undefined : written(path, text)), label);
};

export const setChoice: Handler<'setChoice'> = (document, { id, path, value }) => {
  const { full, title } = rootPath(document, id, path);
  const label = `Change ${word(path)} of ${title}`;
  const group = path.join('.');
  if (typeof value === 'boolean' && Object.hasOwn(GROUP_STARTS, group)) {
    const there = valueAt(document, full) !== undefined;
    if (value === there) return done(document, label);
    return done(editValue(document, full, value ? GROUP_STARTS[group] : undefined), label);
  }
  const parent = full.at(-2);
  if (full.at(-1) === 'kind' && typeof parent === 'string' && Object.hasOwn(KIND_STARTS, parent)) {
    const kinds = KIND_STARTS[parent]!;
    if (typeof value !== 'string' || !Object.hasOwn(kinds, value)) {
      throw new Refused(
        `${word(path)}: "${String(value)}" is no choice`,
        `choose one of ${Object.keys(kinds).join(', ')}`,
      );
    }
    if (valueAt(document, full) === value) return done(document, label);
    return done(withAir(editValue(document, full.slice(0, -1), kinds[value]), parent, value), label);
  }
  const next = editValue(document, full, value ?? undefined);
  return done(
    group === 'proportions' && value === 'free' ? withOwnDimensions(document, next, id) : next,
    label,
  );
};

/** A cyclone of own dimensions starts with those that its proportions gave it. */
function withOwnDimensions(before: ShopDocument, next: ShopDocument, id: string): ShopDocument {
  const item = findItem(before, id);
  if (item?.kind !== 'thing' || item.thing.kind !== 'cyclone') return next;
  const dimensions = ownDimensions(item.thing, before.units);
  return dimensions === null ? next : editValue(next, [...item.path, 'dimensions'], dimensions);
}

/** Air that is given by its density stays as it is along the way. */
function withAir(document: ShopDocument, parent: string, kind: string): ShopDocument {
  if (parent !== 'air' || kind !== 'given') return document;
  return { ...document, options: { ...document.options, compressible: false } };
}

export const setDocument: Handler<'setDocument'> = (document, { path, value }) => {
  if (['things', 'runs', 'values', 'fans'].includes(String(path[0]))) {
    throw new Refused(`${path.join('.')} belongs to a part of the shop`, 'change the part itself');
  }
  return setChoice(document, { kind: 'setChoice', id: '', path, value });
};

/** Tables of the shop that are not there until their first row is. */
const EMPTY_AT_FIRST: ReadonlySet<string> = new Set(['parts.prices', 'parts.stock']);

function rowsAt(document: ShopDocument, id: string, path: FieldPath) {
  const { full, title } = rootPath(document, id, path);
  const rows = valueAt(document, full) ?? (EMPTY_AT_FIRST.has(full.join('.')) ? [] : undefined);
  if (!Array.isArray(rows)) throw new Refused(`${word(path)} of ${title} has no rows`, 'choose a table');
  return { full, title, rows: rows as unknown[] };
}

export const addRow: Handler<'addRow'> = (document, { id, path, row }) => {
  const design = path.length === 1 && path[0] === 'readings' ? findDesign(document, id)?.design : undefined;
  if (design !== undefined) {
    const rows = [...design.readings.map(toJson), newReadings(document, design, [row])[0]];
    const { full, title } = rootPath(document, id, path);
    return done(editValue(document, full, rows), `Add reading to ${title}`);
  }
  const { full, title, rows } = rowsAt(document, id, path);
  const last = rows.at(-1);
  if (row === undefined && last === undefined)
    throw new Refused('there is no row to repeat', 'give the new row');
  const isCurve = path.at(-1) === 'points' && path.at(-2) === 'curve';
  const next = row ?? (isCurve ? pointAfter(last, document.units) : toJson(last));
  return done(editValue(document, full, [...rows.map(toJson), next]), `Add row to ${word(path)} of ${title}`);
};

/** Rows of a table of readings as a file holds them; a row says its kind, the rest is filled in. */
function newReadings(document: ShopDocument, design: FanDesign, rows: readonly unknown[]): unknown[] {
  const known = rows.flatMap((row) => (hasId(row) ? [row] : []));
  const nextId = readingIds([...design.readings, ...known]);
  return rows.map((row) => {
    const given = typeof row === 'object' && row !== null ? (row as Record<string, unknown>) : {};
    const kind = given.kind ?? design.readings.at(-1)?.kind;
    if (!isReadingKind(kind))
      throw new Refused('it is not said what kind of reading this is', 'choose a kind');
    return hasId(row) ? row : startReading(design.readings, kind, given, nextId(), document.units);
  });
}

const hasId = (row: unknown): row is { id: string } =>
  typeof row === 'object' && row !== null && 'id' in row && typeof row.id === 'string';

/** The next point of a fan curve: a little more flow at the pressure of the last, as a start. */
function pointAfter(last: unknown, units: ShopDocument['units']): unknown {
  const flow = valueAt(last, ['flow']);
  const more = isQuantity(flow) ? flow.si * 1.1 + 0.01 : 0.01;
  return { ...(toJson(last) as object), flow: printQuantity(more, 'flow', units) };
}

export const removeRow: Handler<'removeRow'> = (document, { id, path, index }) => {
  const { full, title, rows } = rowsAt(document, id, path);
  if (rows[index] === undefined) throw new Refused(`there is no row ${index + 1}`, 'choose a row');
  const kept = rows.filter((_, i) => i !== index).map(toJson);
  return done(editValue(document, full, kept), `Remove row of ${word(path)} of ${title}`);
};

export const setRows: Handler<'setRows'> = (document, { id, path, rows }) => {
  const { full, title } = rowsAt(document, id, path);
  const design = path.length === 1 && path[0] === 'readings' ? findDesign(document, id)?.design : undefined;
  if (design) rows = newReadings(document, design, rows);
  return done(editValue(document, full, [...rows]), `Change ${word(path)} of ${title}`);
};

export const setValues: Handler<'setValues'> = (document, { rows }) => {
  const next = editValue(document, ['values'], rows);
  const again = resolveAgain(next);
  if (!again.ok) {
    const [first] = again.problems;
    throw new Refused(
      first!.message,
      first!.path.startsWith('values') ? first!.remedy : 'keep the value that is used',
    );
  }
  return done(again.document, 'Change named values');
};

export const setUnderlay: Handler<'setUnderlay'> = (document, { underlay }) =>
  done(
    editValue(document, ['underlay'], underlay ?? undefined),
    underlay === null ? 'Remove plan picture' : 'Change plan picture',
  );
