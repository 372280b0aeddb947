import { dsvFormat } from 'd3-dsv';
import type { Dimension, UnitSystem } from '../../core/quantities/dimensions.ts';
import { displayUnit } from '../../core/quantities/print.ts';
import { NO_NAMES } from '../controls/no-names.ts';
import { understand } from '../controls/understood.ts';

/** Columns of a maker's table, in the order in which they are read where no heading names them. */
const COLUMNS = ['flow', 'pressure', 'power', 'speed', 'current', 'voltage'] as const;
type Column = (typeof COLUMNS)[number];
const DIMENSION: Readonly<Record<Column, Dimension>> = {
  flow: 'flow',
  pressure: 'pressure',
  power: 'power',
  speed: 'speed',
  current: 'current',
  voltage: 'voltage',
};
const HEADINGS: readonly (readonly [RegExp, Column])[] = [
  [/flow|volume|airflow|cfm|m3\/h|m³\/h|\bq\b/i, 'flow'],
  [/press|\bp(?:f|s|t)?\b|static|total|head|suction|lift/i, 'pressure'],
  [/power|watt|\bw\b|\bkw\b|\bhp\b/i, 'power'],
  [/speed|rpm|rev/i, 'speed'],
  [/current|amp|\ba\b/i, 'current'],
  [/volt|\bv\b/i, 'voltage'],
];

/** A reading that a row of the table stands for, as a file holds it. */
export type PointRow = { readonly kind: 'point' } & Readonly<Partial<Record<Column, string>>>;

export interface MakerTable {
  readonly points: readonly PointRow[];
  /** Rows that were left out, and why; counted as a person counts, headings too. */
  readonly problems: readonly string[];
}

/** Longest table that is read [characters], most rows, and longest cell that may hold something. */
const LONGEST_TABLE = 200_000;
const MOST_ROWS = 500;
const LONGEST_CELL = 200;

const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i;
const DECIMAL_COMMA = /^[-+]?\d+,\d+$/;

/** Tabs come from a spreadsheet, semicolons from files with decimal commas. */
function delimiterOf(text: string): string {
  for (const sign of ['\t', ';', ',']) if (text.includes(sign)) return sign;
  return '\t';
}

/** Unit in the brackets of a heading, or the heading's last word where that is one. */
function headingUnit(cell: string, dimension: Dimension): string | null {
  const inner =
    /[([]\s*([^)\]]+?)\s*[)\]]/.exec(cell)?.[1] ??
    cell
      .trim()
      .split(/[\s,]+/)
      .at(-1) ??
    '';
  const unit = inner.replace('³', '3').replace('²', '2');
  return unit !== '' && understand(`1 ${unit}`, dimension, 'any', NO_NAMES).ok ? unit : null;
}

interface Place {
  readonly column: Column;
  readonly unit: string;
}

/** Which column stands where, from a heading; without one by the order of COLUMNS. */
function placesOf(heading: readonly string[] | null, units: UnitSystem): (Place | null)[] {
  const own = (column: Column) => displayUnit(DIMENSION[column], units);
  if (heading === null) return COLUMNS.map((column) => ({ column, unit: own(column) }));
  const taken = new Set<Column>();
  return heading.map((cell) => {
    const column = HEADINGS.find(([words, one]) => words.test(cell) && !taken.has(one))?.[1];
    if (column === undefined) return null;
    taken.add(column);
    return { column, unit: headingUnit(cell, DIMENSION[column]) ?? own(column) };
  });
}

/**
 * Reads a maker's table of points: cells divided by tabs, semicolons or commas, quoted or not. A first row without
 * numbers is a heading; it names the columns and may name units. A cell without a unit has that of its heading, else the
 * one on screen. A row that cannot be read is told and left out.
 */
export function readMakerTable(text: string, units: UnitSystem): MakerTable {
  if (text.length > LONGEST_TABLE) {
    const message = `the text has ${text.length} characters, at most ${LONGEST_TABLE} are read: paste the table alone`;
    return { points: [], problems: [message] };
  }
  const delimiter = delimiterOf(text);
  const rows = dsvFormat(delimiter)
    .parseRows(text.trim())
    .map((row) => row.map((cell) => cell.trim()));
  if (rows.length > MOST_ROWS) {
    const message = `the table has ${rows.length} rows, at most ${MOST_ROWS} are read: leave some out`;
    return { points: [], problems: [message] };
  }
  const long = rows.findIndex((row) => row.some((cell) => cell.length > LONGEST_CELL));
  if (long >= 0) {
    const message = `row ${long + 1}: a cell has more than ${LONGEST_CELL} characters: paste the table alone`;
    return { points: [], problems: [message] };
  }
  const isHeading = rows[0]?.every((cell) => !/^[-+.]?\d/.test(cell)) === true && rows.length > 0;
  const places = placesOf(isHeading ? rows[0]! : null, units);
  const points: PointRow[] = [];
  const problems: string[] = [];
  rows.forEach((cells, i) => {
    if ((isHeading && i === 0) || cells.every((cell) => cell === '')) return;
    const row: { kind: 'point' } & Partial<Record<Column, string>> = { kind: 'point' };
    let wrong: string | null = null;
    places.forEach((place, c) => {
      const cell = cells[c] ?? '';
      if (place === null || cell === '') return;
      const plain = delimiter !== ',' && DECIMAL_COMMA.test(cell) ? cell.replace(',', '.') : cell;
      const typed = NUMBER.test(plain) ? `${plain} ${place.unit}` : plain;
      const read = understand(typed, DIMENSION[place.column], 'any', NO_NAMES);
      if (read.ok) row[place.column] = typed;
      else wrong ??= `${place.column}: ${read.message}`;
    });
    if (row.flow === undefined || row.pressure === undefined) wrong ??= 'it needs a flow and a pressure';
    if (wrong === null) points.push(row);
    else problems.push(`row ${i + 1}: ${wrong as string}`);
  });
  return { points, problems };
}
