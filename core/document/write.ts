import { isQuantity, writeQuantity } from './quantity-field.ts';
import type { ShopDocument } from './schema.ts';

/** The document as plain JSON data: each quantity as it was typed beside its SI value. */
export function documentToJson(document: ShopDocument): unknown {
  return toJson(document);
}

/** As `documentToJson`, of any part of a document. */
export function toJson(value: unknown): unknown {
  if (isQuantity(value)) return writeQuantity(value);
  if (Array.isArray(value)) return value.map(toJson);
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(
      Object.entries(value)
        .filter(([, item]) => item !== undefined)
        .map(([key, item]) => [key, toJson(item)]),
    );
  }
  return value;
}

/** The text of a file. */
export function writeDocument(document: ShopDocument): string {
  return `${JSON.stringify(documentToJson(document), null, 2)}\n`;
}
