import { effectivePieces } from '../effective-pieces.ts';
import type { EffectivePiece } from '../effective-pieces.ts';
import { findEnd } from '../ends.ts';
import type { RunEnd } from '../ends.ts';
import type { Things } from '../route.ts';
import type { ShopDocument } from '../schema.ts';
import type { FanDesign } from '../schema-fans.ts';
import type { Run } from '../schema-pieces.ts';
import type { Thing } from '../schema-things.ts';
import type { FieldPath } from './command.ts';
import { Refused } from './command.ts';

/** Something that has an id, and where it stands in the document. */
export type Item =
  | { readonly kind: 'thing'; readonly index: number; readonly thing: Thing; readonly path: FieldPath }
  | { readonly kind: 'run'; readonly index: number; readonly run: Run; readonly path: FieldPath }
  | {
      readonly kind: 'piece';
      readonly index: number;
      readonly run: Run;
      readonly piece: EffectivePiece;
      readonly path: FieldPath;
    };

export function thingsOf(document: ShopDocument): Map<string, Thing> {
  return new Map(document.things.map((thing) => [thing.id, thing]));
}

/** Finds a thing, a run or a piece; a piece also by its number, such as `R3.2`. */
export function findItem(document: ShopDocument, id: string): Item | null {
  const t = document.things.findIndex((thing) => thing.id === id);
  if (t >= 0) return { kind: 'thing', index: t, thing: document.things[t]!, path: ['things', t] };
  const r = document.runs.findIndex((run) => run.id === id);
  if (r >= 0) return { kind: 'run', index: r, run: document.runs[r]!, path: ['runs', r] };
  const owner = id.includes('.') ? id.slice(0, id.indexOf('.')) : null;
  let things: Things | null = null;
  for (const [index, run] of document.runs.entries()) {
    if (owner === null ? !run.pieces.some((piece) => piece.id === id) : run.id !== owner) continue;
    things ??= thingsOf(document);
    const piece = effectivePieces(run, things).find(({ key }) => key === id);
    if (piece) return { kind: 'piece', index, run, piece, path: piecePath(index, piece) };
  }
  return null;
}

/** A fan of the list of fans; none of them stands on the plan, so that they are no items. */
export function findDesign(
  document: ShopDocument,
  id: string,
): { readonly design: FanDesign; readonly index: number } | null {
  const index = document.fans.findIndex((fan) => fan.id === id);
  return index < 0 ? null : { design: document.fans[index]!, index };
}

/** Where the values of a piece stand: in the list of its run, or in the drawing that it follows from. */
export function piecePath(run: number, piece: EffectivePiece): FieldPath {
  if (piece.source !== undefined) return ['runs', run, 'pieces', piece.source];
  if (piece.corner !== undefined) return ['runs', run, 'route', 'corners', piece.corner];
  return ['runs', run, 'route', 'legs', piece.leg ?? 0];
}

export function needItem(document: ShopDocument, id: string): Item {
  const item = findItem(document, id);
  if (item === null)
    throw new Refused(`nothing is named "${id.slice(0, 40)}"`, 'select something of this shop');
  return item;
}

export function needRun(document: ShopDocument, id: string): { run: Run; index: number } {
  const item = needItem(document, id);
  if (item.kind !== 'run') throw new Refused(`${id} is not a run`, 'select a run');
  return item;
}

export const titleOf = (item: { readonly id: string; readonly name?: string | undefined }): string =>
  item.name ?? item.id;

export function itemTitle(item: Item): string {
  if (item.kind === 'thing') return titleOf(item.thing);
  return item.kind === 'run' ? titleOf(item.run) : `${item.piece.kind} ${item.piece.key}`;
}

export function replaceAt<T>(list: T[], index: number, value: T): T[] {
  return list.map((old, i) => (i === index ? value : old));
}

export const withRun = (document: ShopDocument, index: number, run: Run): ShopDocument => ({
  ...document,
  runs: replaceAt(document.runs, index, run),
});

/** A run's end by thing and end, both written out. */
export function endOf(run: Run, side: 'from' | 'to', things: Things): RunEnd {
  const end = findEnd(things, run[side], side);
  if (typeof end === 'string') throw new Refused(`${run.id}.${side}: ${end}`, 'draw the run again');
  return end;
}

export const endText = ({ thing, end }: { thing: { id: string }; end: string }): string =>
  end === '' ? thing.id : `${thing.id}.${end}`;

/** A run that meets a thing. */
export interface Joined {
  readonly run: Run;
  readonly side: 'from' | 'to';
  readonly end: string;
}

/** Runs that meet a thing, by the end that they meet. */
export function joinedTo(document: ShopDocument, id: string, things: Things): Joined[] {
  return document.runs.flatMap((run) =>
    (['from', 'to'] as const).flatMap((side) => {
      const text = run[side];
      if (text !== id && !text.startsWith(`${id}.`)) return [];
      const end = findEnd(things, text, side);
      return typeof end === 'string' ? [] : [{ run, side, end: end.end }];
    }),
  );
}

/** Drops openings of gates that no run has any more; settings that keep theirs keep their identity. */
export function dropLostGates(document: ShopDocument): ShopDocument {
  const gates = new Set(
    document.runs.flatMap((run) => run.pieces.flatMap((piece) => (piece.kind === 'gate' ? [piece.id] : []))),
  );
  let changed = false;
  const settings = document.settings.map((setting) => {
    const kept = Object.entries(setting.gates).filter(([gate]) => gates.has(gate));
    if (kept.length === Object.keys(setting.gates).length) return setting;
    changed = true;
    return { ...setting, gates: Object.fromEntries(kept) };
  });
  return changed ? { ...document, settings } : document;
}
