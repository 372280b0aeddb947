import type { Finding } from '../network/solution.ts';
import { printQuantity } from '../quantities/print.ts';
import type { Dimension, UnitSystem } from '../quantities/dimensions.ts';
import type { FindingCode, MessageRow } from './messages.ts';
import { MESSAGES } from './messages.ts';

/** Makes a finding of the table's words and the figures of one place. */
export function finding(code: FindingCode, where: string, ...figures: readonly string[]): Finding {
  const row: MessageRow = MESSAGES[code];
  let next = 0;
  const message = row.message.replace(/\{\}/g, () => figures[next++] ?? '');
  return { severity: row.severity, code, where, message, remedy: row.remedy };
}

/** Prints figures in the units of the document. */
export type Printer = (si: number, dimension: Dimension, digits?: number) => string;

export const printerFor =
  (units: UnitSystem): Printer =>
  (si, dimension, digits) =>
    printQuantity(si, dimension, units, digits === undefined ? {} : { digits });

/** More figures than these no reader tells apart. */
const MOST_DIGITS = 9;

/** A figure and the limit that it misses, in as many digits as it takes to tell one from the other. */
export function printApart(
  print: Printer,
  value_si: number,
  limit_si: number,
  dimension: Dimension,
): readonly [value: string, limit: string] {
  let pair = [print(value_si, dimension), print(limit_si, dimension)] as const;
  for (let digits = 4; pair[0] === pair[1] && value_si !== limit_si && digits <= MOST_DIGITS; digits++) {
    pair = [print(value_si, dimension, digits), print(limit_si, dimension, digits)];
  }
  return pair;
}
