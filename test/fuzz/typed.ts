import { DIMENSION_NAMES } from '../../core/quantities/dimensions.ts';
import { resolveNamedValues } from '../../core/quantities/named-values.ts';
import { checkName, parseAnyQuantity, parseQuantity } from '../../core/quantities/parse.ts';
import type { NamedValues } from '../../core/quantities/parse.ts';
import { QuantityError } from '../../core/quantities/quantity-error.ts';
import { readMakerTable } from '../../renderer/fan-bench/maker-table.ts';
import { must, mustRead } from './target.ts';

const NAMES: NamedValues = new Map([
  ['reach', { si: 2.4, dimension: 'length' }],
  ['n0', { si: 1e300, dimension: 'flow' }],
  ['n1', { si: 0, dimension: 'coefficient' }],
  ['n2', { si: 293.15, dimension: 'temperature' }],
]);

/** Reads a text as a quantity of every kind: a finite value, or an error of the one type, in words. */
export function typeQuantity(text: string): string {
  let fits = 0;
  for (const dimension of DIMENSION_NAMES) {
    const parsed = parseQuantity(text, dimension, { field: 'Length', names: NAMES });
    if (parsed.ok) {
      must(Number.isFinite(parsed.si), `${dimension} is ${parsed.si}`);
      fits++;
    } else mustRefuse(parsed.error);
  }
  const any = parseAnyQuantity(text, { field: 'Value', names: NAMES });
  if (any.ok) must(Number.isFinite(any.value.si), `the value is ${any.value.si}`);
  else mustRefuse(any.error);
  const bad = checkName(text);
  if (bad !== null) mustRefuse(bad);
  return fits > 0 ? 'understood' : 'refused';
}

function mustRefuse(error: unknown): void {
  if (!(error instanceof QuantityError)) throw new Error(`no error of a quantity: ${String(error)}`);
  mustRead(error.message, 'as it says');
  must(error.message.length < 800, `a message of ${error.message.length} characters`);
}

/** Resolves a table of named values: each row has a finite value or an error that is its own. */
export function resolveTable(rows: readonly { readonly name: string; readonly text: string }[]): string {
  const { values, errors, errorRows } = resolveNamedValues(rows);
  must(errors.length === errorRows.length, 'errors without rows');
  must(
    values.size + errors.length === rows.length,
    `${values.size} values and ${errors.length} errors of ${rows.length} rows`,
  );
  for (const { si } of values.values()) must(Number.isFinite(si), `a value is ${si}`);
  errors.forEach(mustRefuse);
  return errors.length === 0 ? 'all resolved' : values.size === 0 ? 'all refused' : 'some refused';
}

/** Reads a pasted table: rows that are points, and words about the others. */
export function pasteTable(text: string): string {
  const { points, problems } = readMakerTable(text, 'si');
  for (const problem of problems) mustRead(problem, 'as it says');
  for (const point of points) must(point.flow !== undefined && point.pressure !== undefined, 'half a point');
  return points.length > 0 ? 'points' : 'none';
}
