import { isQuantity } from '../../core/document/quantity-field.ts';
import type { ShopDocument } from '../../core/document/schema.ts';

/** A typed text that uses a named value: the id of its item (empty for the document) and its path there. */
export interface NameUse {
  readonly id: string;
  readonly path: readonly (string | number)[];
  readonly text: string;
}

const wordOf = (name: string) => new RegExp(`(?<![A-Za-z0-9_])${name}(?![A-Za-z0-9_])`, 'g');

/** A text with every use of a name replaced by another. */
export const renamedText = (text: string, from: string, to: string): string => text.replace(wordOf(from), to);

/** Lists whose rows are called by id; and the table of names itself. */
const ITEM_LISTS = new Set(['things', 'runs', 'fans', 'values']);

/** Every field of a document whose text uses a name. */
export function usesOf(document: ShopDocument, name: string): NameUse[] {
  const word = wordOf(name);
  const uses: NameUse[] = [];
  const walk = (id: string, value: unknown, path: readonly (string | number)[]): void => {
    if (isQuantity(value)) {
      if (value.text !== null && value.text.search(word) >= 0) uses.push({ id, path, text: value.text });
      return;
    }
    if (typeof value !== 'object' || value === null) return;
    for (const [key, item] of Object.entries(value)) {
      walk(id, item, [...path, Array.isArray(value) ? Number(key) : key]);
    }
  };
  const { things, runs, fans } = document;
  for (const item of [...things, ...runs, ...fans]) walk(item.id, item, []);
  for (const [key, value] of Object.entries(document)) {
    if (!ITEM_LISTS.has(key)) walk('', value, [key]);
  }
  return uses;
}
