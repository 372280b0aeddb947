import { findDesign, findItem } from './commands/items.ts';
import { fanDesignRows } from './fan-fields.ts';
import type { Field } from './field.ts';
import { documentRows, pieceRows, runRows } from './run-fields.ts';
import type { ShopDocument } from './schema.ts';
import { thingRows } from './thing-fields.ts';

export type { Field, FieldOption } from './field.ts';

/**
 * What a person may change of a thing, a run, a piece, a fan of the list or, with an empty id, of the shop. Each field names the item that
 * `setField` and `setChoice` change; for a piece that follows from the drawing that is its run. Empty where the id
 * names nothing.
 */
export function fieldsOf(document: ShopDocument, id: string): Field[] {
  if (id === '') return documentRows(document).map((row) => ({ ...row, id }));
  const fan = findDesign(document, id);
  if (fan !== null) return fanDesignRows(fan.design).map((row) => ({ ...row, id }));
  const item = findItem(document, id);
  if (item === null) return [];
  if (item.kind === 'thing') return thingRows(item.thing, document).map((row) => ({ ...row, id }));
  if (item.kind === 'run') return runRows(item.run).map((row) => ({ ...row, id }));
  const owner = item.piece.source === undefined ? item.run.id : id;
  return pieceRows(item.run, item.piece).map((row) => ({ ...row, id: owner }));
}
