import { findItem, titleOf } from '../../core/document/commands/items.ts';
import type { Item } from '../../core/document/commands/items.ts';
import { fieldsOf } from '../../core/document/fields.ts';
import type { Field } from '../../core/document/fields.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import { commonFields } from '../controls/values.ts';
import type { Shared } from '../controls/values.ts';

/** Something that is selected, and the id by which commands call it. */
export interface Chosen {
  readonly id: string;
  readonly item: Item;
}

/** What a thing or run is called; an empty id is the shop. */
export function titleOfId(document: ShopDocument, id: string): string {
  const part = [...document.things, ...document.runs, ...document.fans].find((one) => one.id === id);
  return part ? titleOf(part) : id === '' ? 'the shop' : id;
}

/** What of a selection still exists. */
export function chosenOf(document: ShopDocument, ids: Iterable<string>): Chosen[] {
  return [...ids].flatMap((id) => {
    const item = findItem(document, id);
    return item ? [{ id, item }] : [];
  });
}

/** The curve of a fan has a table of its own. */
const hasTable = ({ path }: Field) => path[0] === 'curve' && path[1] === 'points';
/** No two items share these. */
const isOwn = ({ path }: Field) => path.length === 1 && path[0] === 'id';

/** Fields of the selection by group, those of several items where all of them have it. */
export function groupsOf(
  document: ShopDocument,
  chosen: readonly Chosen[],
): [group: string, fields: Shared<Field>[]][] {
  const lists = chosen.map(({ id }) =>
    fieldsOf(document, id).filter((field) => !hasTable(field) && !(chosen.length > 1 && isOwn(field))),
  );
  const groups = new Map<string, Shared<Field>[]>();
  for (const shared of commonFields(lists)) {
    groups.set(shared.field.group, [...(groups.get(shared.field.group) ?? []), shared]);
  }
  return [...groups];
}

/** Path of a field from the document's root: of its item, or of the run that its piece follows from. */
export function rootPath({ id, item }: Chosen, field: Field): readonly (string | number)[] {
  return [...(field.id === id ? item.path : ['runs', item.index]), ...field.path];
}

/** What an empty field means, where its hint says so. */
export function emptyMeans(field: Field): string | undefined {
  return field.hint?.startsWith('empty: ') ? field.hint.slice('empty: '.length) : undefined;
}
