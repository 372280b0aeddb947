import { csvFormatRow } from 'd3-dsv';
import type { PartsList } from './result.ts';

/** Cells that a spreadsheet would take for a formula. */
const FORMULA = /^[=+\-@\t\r]/;

/** A text that no spreadsheet runs: an apostrophe stands before what would start a formula. */
export const safeCell = (text: string): string => (FORMULA.test(text) ? `'${text}` : text);

const number = (value: number | null, digits: number): string =>
  value === null ? '' : String(Number(value.toFixed(digits)));

const HEAD = [
  'part',
  'diameter mm',
  'second diameter mm',
  'angle deg',
  'radius over diameter',
  'count',
  'length m',
  'buy',
  'unit',
  'unit price',
  'price',
  'unit weight kg',
  'weight kg',
  'where',
  'key',
] as const;

/** Heads and rows of the parts list, lengths in SI; no cell is a formula. */
function cellsOf(list: PartsList): string[][] {
  const rows = list.rows.map((row) => [
    row.label,
    number(row.diameter_m === null ? null : row.diameter_m * 1000, 1),
    number(row.toDiameter_m === null ? null : row.toDiameter_m * 1000, 1),
    number(row.angle_rad === null ? null : (row.angle_rad * 180) / Math.PI, 1),
    number(row.radiusRatio, 3),
    String(row.count),
    number(row.length_m, 3),
    number(row.buy, 1),
    row.unit === 'length' ? `${number(row.cutting?.stock_m ?? null, 3)} m` : row.unit,
    number(row.unitPrice, 2),
    number(row.price, 2),
    number(row.unitWeight_kg, 3),
    number(row.weight_kg, 3),
    row.where.join(' '),
    row.key,
  ]);
  return [HEAD, ...rows].map((cells) => cells.map(safeCell));
}

/** The parts list as comma-separated values by RFC 4180 (CRLF, quoted where need be). */
export const partsCsv = (list: PartsList): string =>
  cellsOf(list)
    .map((cells) => `${csvFormatRow(cells)}\r\n`)
    .join('');

/** The parts list for the clipboard: tabs between cells, which no cell itself holds. */
export const partsTsv = (list: PartsList): string =>
  cellsOf(list)
    .map((cells) => cells.map((cell) => cell.replace(/[\t\r\n]+/g, ' ')).join('\t'))
    .join('\n');
