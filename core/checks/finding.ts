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
export type Printer = (si: number, dimension: Dimension) => string;

export const printerFor =
  (units: UnitSystem): Printer =>
  (si, dimension) =>
    printQuantity(si, dimension, units);
