import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/document/commands/apply.ts';
import { readValue } from '../../../core/document/read.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { EXAMPLES } from '../../../core/examples/index.ts';
import { partsList } from '../../../core/summary/parts/parts-list.ts';
import { partsTsv } from '../../../core/summary/parts/parts-csv.ts';
import { priceRows, stockRows, usedPrices } from '../../../renderer/sheets/part-tables.ts';

function shop(): ShopDocument {
  const read = readValue(EXAMPLES['one-router']);
  if (!read.ok) throw new Error('example');
  expect(read.document.parts).toBeUndefined();
  return read.document;
}
function put(document: ShopDocument, table: 'prices' | 'stock', rows: readonly unknown[]) {
  const applied = applyCommand(document, { kind: 'setRows', id: '', path: ['parts', table], rows });
  if (!applied.ok) throw new Error(applied.message);
  return applied.document;
}
const GATE = 'gate 100';
const priced = (document: ShopDocument, part: string, field: 'price' | 'weight', text: string | null) =>
  put(document, 'prices', priceRows(document, part, field, text));

describe('prices of parts', () => {
  it('start a table where there is none, keep what was typed, and count in the list', () => {
    const document = priced(shop(), GATE, 'price', '2 * 9.50');
    expect(document.parts!.prices![0]!.price).toMatchObject({ text: '2 * 9.50', si: 19 });
    expect(partsList(document).totalPrice).toBe(19);
  });

  it('stand beside the weight of the same part, one row for each', () => {
    let document = priced(shop(), GATE, 'price', '12');
    document = priced(document, GATE, 'weight', '400 g');
    document = priced(document, 'clamp 100', 'price', '3');
    expect(document.parts!.prices!.map(({ part }) => part)).toEqual([GATE, 'clamp 100']);
    const row = partsList(document).rows.find(({ key }) => key === GATE)!;
    expect([row.price, row.weight_kg]).toEqual([12, 0.4]);
    document = priced(document, GATE, 'price', null);
    expect(document.parts!.prices![0]).toMatchObject({ part: GATE, weight: { si: 0.4 } });
    document = priced(document, GATE, 'weight', null);
    expect(document.parts!.prices!.map(({ part }) => part)).toEqual(['clamp 100']);
  });

  it('with letters are refused with the words of the field, and nothing changes', () => {
    const document = shop();
    const rows = priceRows(document, GATE, 'price', 'a tenner');
    const applied = applyCommand(document, { kind: 'setRows', id: '', path: ['parts', 'prices'], rows });
    expect(applied).toMatchObject({ ok: false });
    expect(applied.ok ? '' : applied.message).toMatch(/parts\.prices\[0\]\.price/);
  });

  it('of parts that are not in the shop can be forgotten', () => {
    let document = priced(shop(), GATE, 'price', '12');
    document = priced(document, 'gate 63', 'price', '5');
    const { unusedPrices } = partsList(document);
    expect(unusedPrices).toEqual(['gate 63']);
    document = put(document, 'prices', usedPrices(document, unusedPrices));
    expect(document.parts!.prices!.map(({ part }) => part)).toEqual([GATE]);
  });
});

describe('lengths that duct is sold in', () => {
  it('change the cutting plan of their material alone', () => {
    const document = put(shop(), 'stock', stockRows(shop(), 'galvanised-spiral', '1 m'));
    const stocks = partsList(document).rows.flatMap(({ cutting }) => (cutting ? [cutting.stock_m] : []));
    expect(new Set(stocks)).toEqual(new Set([1]));
    const back = put(document, 'stock', stockRows(document, 'galvanised-spiral', null));
    expect(partsList(back).rows.find(({ cutting }) => cutting)!.cutting!.stock_m).toBe(3);
  });
});

describe('parts for the clipboard', () => {
  it('have one line for each and one tab between cells, and no cell that is a formula', () => {
    const list = partsList(shop());
    const odd = { ...list.rows[0]!, label: '=cmd()\t|x\n', where: ['R1'] };
    const lines = partsTsv({ ...list, rows: [odd, ...list.rows] }).split('\n');
    expect(lines).toHaveLength(list.rows.length + 2);
    const [head, first] = lines.map((line) => line.split('\t'));
    for (const line of lines) expect(line.split('\t')).toHaveLength(head!.length);
    expect(first![0]).toBe("'=cmd() |x ");
  });
});
