import { fanDesignRows } from '../document/fan-fields.ts';
import type { FieldRow } from '../document/field.ts';
import { effectivePieces } from '../document/effective-pieces.ts';
import type { EffectivePiece } from '../document/effective-pieces.ts';
import type { Quantity } from '../document/quantity-field.ts';
import { documentRows, PIECE_ROWS, runRows } from '../document/run-fields.ts';
import type { ShopDocument } from '../document/schema.ts';
import { thingRows } from '../document/thing-fields.ts';
import { NO_VALUE, printQuantity } from '../quantities/print.ts';
import type { UnitSystem } from '../quantities/dimensions.ts';
import { kindWord } from './figures/charts/words.ts';

export type ItemKind = 'shop' | 'thing' | 'run' | 'piece' | 'fan' | 'setting';

/** A value that is another one than before, in words. */
export interface ValueChange {
  readonly kind: ItemKind;
  /** Id of what it is a value of; `shop` for the whole. */
  readonly where: string;
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

/** Something that is in one document alone. */
export interface ItemChange {
  readonly kind: ItemKind;
  readonly id: string;
  readonly name: string;
}

export interface ValueComparison {
  readonly changes: readonly ValueChange[];
  readonly added: readonly ItemChange[];
  readonly removed: readonly ItemChange[];
}

interface Item extends ItemChange {
  readonly value: unknown;
  readonly rows: readonly FieldRow[];
  /** What has no field, in words by its label. */
  readonly more: readonly (readonly [label: string, text: string])[];
}

/** What differs between two documents: values by their labels, and what was added or taken away. */
export function compareValues(before: ShopDocument, after: ShopDocument, units: UnitSystem): ValueComparison {
  const [old, now] = [itemsOf(before), itemsOf(after)];
  const changes: ValueChange[] = [];
  for (const [key, a] of old) {
    const b = now.get(key);
    if (b !== undefined) changes.push(...itemChanges(a, b, units));
  }
  const alone = (of: ReadonlyMap<string, Item>, other: ReadonlyMap<string, Item>): ItemChange[] =>
    [...of].flatMap(([key, { kind, id, name }]) => (other.has(key) ? [] : [{ kind, id, name }]));
  return { changes, added: alone(now, old), removed: alone(old, now) };
}

function itemsOf(document: ShopDocument): Map<string, Item> {
  const items = new Map<string, Item>();
  const put = (item: Item, match = item.id) => items.set(`${item.kind} ${match}`, item);
  put({
    kind: 'shop',
    id: 'shop',
    name: document.name,
    value: document,
    rows: documentRows(document).filter(({ path }) => path[0] !== 'units' && path[0] !== 'underlay'),
    more: [],
  });
  const things = new Map(document.things.map((thing) => [thing.id, thing]));
  for (const thing of document.things) {
    put({
      kind: 'thing',
      id: thing.id,
      name: thing.name ?? kindWord(thing.kind),
      value: thing,
      rows: thingRows(thing, document),
      more: [['Kind', kindWord(thing.kind)]],
    });
  }
  for (const run of document.runs) {
    const more = [
      ['From', run.from],
      ['To', run.to],
    ] as const;
    put({ kind: 'run', id: run.id, name: run.name ?? run.id, value: run, rows: runRows(run), more });
    const pieces = effectivePieces(run, things);
    pieces.forEach((piece, i) => put(pieceItem(piece, run.id), pieceMatch(pieces, i, run.id)));
  }
  for (const fan of document.fans) {
    put({
      kind: 'fan',
      id: fan.id,
      name: fan.name ?? fan.id,
      value: fan,
      rows: fanDesignRows(fan),
      more: [['Readings', String(fan.readings.length)]],
    });
  }
  for (const setting of document.settings) {
    const gates = Object.entries(setting.gates).map(
      ([gate, opening]) => [`Gate ${gate}`, printQuantity(opening.si, 'fraction', 'si')] as const,
    );
    put({ kind: 'setting', id: setting.name, name: setting.name, value: setting, rows: [], more: gates });
  }
  return items;
}

/**
 * What makes a piece the same one in another document: its own id, the corner that it turns at, or its number among
 * those of its kind on its leg; its number in the run changes with whatever is put in before it.
 */
function pieceMatch(pieces: readonly EffectivePiece[], at: number, run: string): string {
  const { id, corner, leg, kind } = pieces[at]!;
  if (id !== undefined) return id;
  if (corner !== undefined) return `${run} corner ${corner}`;
  const before = pieces
    .slice(0, at)
    .filter((one) => one.id === undefined && one.leg === leg && one.kind === kind);
  return `${run} ${kind} ${before.length} of leg ${leg ?? 'none'}`;
}

const pieceItem = (piece: EffectivePiece, run: string): Item => ({
  kind: 'piece',
  id: piece.key,
  name: `${kindWord(piece.kind)} of ${run}`,
  value: piece,
  rows: PIECE_ROWS[piece.kind],
  more: [['Kind', kindWord(piece.kind)]],
});

function itemChanges(a: Item, b: Item, units: UnitSystem): ValueChange[] {
  const rows = new Map([...a.rows, ...b.rows].map((row) => [row.path.join('.'), row]));
  const { kind, id } = b;
  const found: ValueChange[] = [];
  for (const row of rows.values()) {
    const [old, now] = [valueAt(a.value, row), valueAt(b.value, row)];
    if (sameValue(old, now)) continue;
    const [before, after] = texts(old, now, row, units);
    found.push({ kind, where: id, label: row.label, before, after });
  }
  const labels = new Set([...a.more, ...b.more].map(([label]) => label));
  const wordOf = ({ more }: Item, label: string) => more.find(([name]) => name === label)?.[1] ?? NO_VALUE;
  for (const label of labels) {
    const [before, after] = [wordOf(a, label), wordOf(b, label)];
    if (before !== after) found.push({ kind, where: id, label, before, after });
  }
  if (found.length === 0 && (kind === 'thing' || kind === 'fan') && !sameValue(a.value, b.value)) {
    const label = 'Points, readings or rows';
    found.push({ kind, where: id, label, before: 'as before', after: 'changed' });
  }
  return found;
}

function valueAt(value: unknown, { path }: FieldRow): unknown {
  let at = value;
  for (const key of path) {
    if (typeof at !== 'object' || at === null) return undefined;
    at = (at as Readonly<Record<string | number, unknown>>)[key];
  }
  return at;
}

const isQuantity = (value: unknown): value is Quantity =>
  typeof value === 'object' && value !== null && 'si' in value && 'dimension' in value;

/** Shares closer than this come of another way of writing the same number [-]. */
const SAME = 1e-9;

/** Whether two values mean the same; what was typed for it does not count. */
function sameValue(a: unknown, b: unknown): boolean {
  if (isQuantity(a) && isQuantity(b)) {
    return a.si === b.si || Math.abs(a.si - b.si) <= SAME * Math.max(Math.abs(a.si), Math.abs(b.si));
  }
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  const of = (value: object, key: string) => (value as Readonly<Record<string, unknown>>)[key];
  return [...keys].every((key) => sameValue(of(a, key), of(b, key)));
}

/** Most figures that a change is told in; what differs by less is told as it is printed. */
const MOST_DIGITS = 8;

/** Both values in as many figures as tell them apart. */
function texts(a: unknown, b: unknown, row: FieldRow, units: UnitSystem): [string, string] {
  for (let digits = 3; digits <= MOST_DIGITS; digits++) {
    const [before, after] = [textOf(a, row, units, digits), textOf(b, row, units, digits)];
    if (before !== after || !isQuantity(a) || !isQuantity(b)) return [before, after];
  }
  return [textOf(a, row, units, MOST_DIGITS), textOf(b, row, units, MOST_DIGITS)];
}

function textOf(value: unknown, row: FieldRow, units: UnitSystem, digits: number): string {
  if (value === undefined || value === null) return row.kind === 'flag' ? 'no' : NO_VALUE;
  if (isQuantity(value)) return printQuantity(value.si, value.dimension, units, { digits });
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'object') return 'yes';
  const text = String(value);
  return row.options?.find((option) => option.value === text)?.label ?? text;
}
