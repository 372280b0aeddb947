import type { ShopDocument } from '../../core/document/schema.ts';
import { toJson } from '../../core/document/write.ts';

type Row = Readonly<Record<string, unknown>>;

const rowsOf = (rows: readonly unknown[] | undefined): Row[] => (rows ?? []).map((row) => toJson(row) as Row);

/** Rows with one value of the row that a key names changed; a row that says nothing any more goes. */
function changed(
  rows: readonly Row[],
  key: readonly [name: string, value: string],
  field: string,
  text: string | null,
): Row[] {
  const at = rows.findLastIndex((row) => row[key[0]] === key[1]);
  const old: Row = at < 0 ? { [key[0]]: key[1] } : rows[at]!;
  const others = Object.fromEntries(Object.entries(old).filter(([name]) => name !== field));
  const next: Row = text === null ? others : { ...others, [field]: text };
  const kept = Object.keys(next).length > 1 ? [next] : [];
  return at < 0 ? [...rows, ...kept] : [...rows.slice(0, at), ...kept, ...rows.slice(at + 1)];
}

/** Prices of the document as a file holds them, with the price or weight of one part as it was typed. */
export const priceRows = (
  { parts }: ShopDocument,
  part: string,
  field: 'price' | 'weight',
  text: string | null,
): Row[] => changed(rowsOf(parts?.prices), ['part', part], field, text);

/** Lengths in which duct is sold, with that of one material as it was typed. */
export const stockRows = ({ parts }: ShopDocument, material: string, text: string | null): Row[] =>
  changed(rowsOf(parts?.stock), ['material', material], 'length', text);

/** Prices without those of parts that the shop does not have. */
export const usedPrices = ({ parts }: ShopDocument, unused: readonly string[]): Row[] =>
  rowsOf(parts?.prices).filter(({ part }) => !unused.includes(String(part)));
