import type { Dimension, UnitSystem } from '../../core/quantities/dimensions.ts';
import { displayUnit } from '../../core/quantities/print.ts';

/** Columns of a fan curve, in the order in which a pasted table is read. */
export const FAN_COLUMNS = ['flow', 'pressure', 'power', 'current'] as const;
export type FanColumn = (typeof FAN_COLUMNS)[number];
export type FanRow = Partial<Record<FanColumn, string>>;

export const COLUMN_DIMENSION: Readonly<Record<FanColumn, Dimension>> = {
  flow: 'flow',
  pressure: 'pressure',
  power: 'power',
  current: 'current',
};

const NUMBER = /^[-+]?\d+(\.\d+)?(e[-+]?\d+)?$/i;
/** A comma as the decimal point; with three digits after it, it may stand between thousands, and the cell is left to be mended. */
const DECIMAL_COMMA = /^[-+]?\d+,(\d{1,2}|\d{4,})$/;

/** Units of the columns where cells have none: the last words of a heading, such as `flow (m3/h)` or `Pa`. */
function headingUnit(cell: string): string {
  const inner = /[([]\s*([^)\]]+?)\s*[)\]]/.exec(cell)?.[1];
  return inner ?? '';
}

/**
 * Reads rows copied from a spreadsheet: cells divided by tabs, or by semicolons. A first row without numbers is a
 * heading and may name units in brackets; a cell without a unit gets that of its heading, else the unit on screen.
 * What cannot be read is kept as it is, so that its field can say what is wrong.
 */
export function readFanTable(text: string, units: UnitSystem): FanRow[] {
  const lines = text
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '')
    .map((line) => line.split(line.includes('\t') ? '\t' : ';').map((cell) => cell.trim()));
  const heading = lines[0]?.some((cell) => /^[-+.\d]/.test(cell)) === false ? lines.shift()! : [];
  const unitOf = (column: FanColumn, i: number) =>
    headingUnit(heading[i] ?? '') || displayUnit(COLUMN_DIMENSION[column], units);
  return lines.map((cells) => {
    const row: FanRow = {};
    FAN_COLUMNS.forEach((column, i) => {
      const cell = cells[i] ?? '';
      if (cell === '') return;
      const written = DECIMAL_COMMA.test(cell) ? cell.replace(',', '.') : cell;
      row[column] = NUMBER.test(written) ? `${written} ${unitOf(column, i)}` : written;
    });
    return row;
  });
}

/** Whether pasted text is a table rather than one value. */
export const isTable = (text: string): boolean => /[\t;]|\n\s*\S/.test(text.trim());
