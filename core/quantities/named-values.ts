import type { Dimension } from './dimensions.ts';
import { checkName, parseAnyQuantity, parseQuantity, type NamedValue, type NamedValues } from './parse.ts';
import { QuantityError } from './quantity-error.ts';
import { wordsOf } from './tokens.ts';

/** One row of the table of named values, as typed. */
export interface NamedValueRow {
  readonly name: string;
  readonly text: string;
  /** Kind that the value must have; found from the text where absent. */
  readonly dimension?: Dimension;
}

/** Values that resolved, by name, and one error for each row that did not; `field` of an error is the row's name. */
export interface ResolvedNames {
  readonly values: NamedValues;
  readonly errors: readonly QuantityError[];
  /** Place in the table of the row of each error. */
  readonly errorRows: readonly number[];
}

/**
 * Resolves a table of named values. A row may use rows before or after it; a row that needs itself, by whatever
 * way, gets an error that names the way round, and so does each row that leans on a refused one.
 *
 * @param rows - the table, in any order
 * @returns values by name, and errors in the order of the rows
 */
export function resolveNamedValues(rows: readonly NamedValueRow[]): ResolvedNames {
  const errors = new Map<NamedValueRow, QuantityError>();
  const good = refuseBadNames(rows, errors);
  const uses = new Map([...good].map(([name, row]) => [name, usedNames(row, good)]));
  const values = new Map<string, NamedValue>();

  const circling = new Set(uses.keys());
  for (const name of orderByUse(uses)) {
    circling.delete(name);
    resolveRow(good.get(name)!, uses.get(name)!, values, errors);
  }
  for (const name of circling) {
    const row = good.get(name)!;
    const about = `it goes round in a circle, ${shortWay(wayRound(name, uses, circling))}`;
    errors.set(row, new QuantityError(name, row.text, 'not-allowed', about, ''));
  }
  const errorRows = rows.flatMap((row, i) => (errors.has(row) ? [i] : []));
  return { values, errors: errorRows.map((i) => errors.get(rows[i]!)!), errorRows };
}

function refuseBadNames(
  rows: readonly NamedValueRow[],
  errors: Map<NamedValueRow, QuantityError>,
): Map<string, NamedValueRow> {
  const good = new Map<string, NamedValueRow>();
  for (const row of rows) {
    const bad = checkName(row.name);
    if (bad !== null) errors.set(row, bad);
    else if (!good.has(row.name)) good.set(row.name, row);
    else
      errors.set(row, new QuantityError(row.name, row.name, 'not-allowed', 'another row has this name', ''));
  }
  return good;
}

function usedNames(row: NamedValueRow, good: ReadonlyMap<string, NamedValueRow>): string[] {
  return [...new Set(wordsOf(row.text))].filter((word) => good.has(word));
}

/** Names such that each stands after all that it uses; names on a circle, or behind one, are left out. */
function orderByUse(uses: ReadonlyMap<string, readonly string[]>): string[] {
  const waiting = new Map([...uses].map(([name, used]) => [name, used.length]));
  const usedBy = new Map<string, string[]>([...uses.keys()].map((name) => [name, []]));
  for (const [name, used] of uses) for (const other of used) usedBy.get(other)!.push(name);
  const order = [...uses.keys()].filter((name) => waiting.get(name) === 0);
  for (const name of order) {
    for (const next of usedBy.get(name)!) {
      const left = waiting.get(next)! - 1;
      waiting.set(next, left);
      if (left === 0) order.push(next);
    }
  }
  return order;
}

function resolveRow(
  row: NamedValueRow,
  used: readonly string[],
  values: Map<string, NamedValue>,
  errors: Map<NamedValueRow, QuantityError>,
): void {
  const broken = used.find((name) => !values.has(name));
  if (broken !== undefined) {
    const about = `\`${broken}\`, which has an error of its own`;
    errors.set(row, new QuantityError(row.name, row.text, 'unknown-name', about, ''));
    return;
  }
  const context = { field: row.name, names: values };
  if (row.dimension === undefined) {
    const parsed = parseAnyQuantity(row.text, context);
    if (parsed.ok) values.set(row.name, parsed.value);
    else errors.set(row, parsed.error);
    return;
  }
  const parsed = parseQuantity(row.text, row.dimension, context);
  if (parsed.ok) values.set(row.name, { si: parsed.si, dimension: row.dimension });
  else errors.set(row, parsed.error);
}

/** Names of a circle that are told; of a longer one the first and the last. */
const TOLD = 8;

function shortWay(way: readonly string[]): string {
  const told = way.length <= TOLD ? way : [...way.slice(0, TOLD - 2), '…', ...way.slice(-2)];
  return told.join(' -> ');
}

/** The way from a name that could not be ordered to the circle that it is on or leans on, and once round. */
function wayRound(
  start: string,
  uses: ReadonlyMap<string, readonly string[]>,
  circling: ReadonlySet<string>,
): readonly string[] {
  const way = new Set<string>();
  let name = start;
  while (!way.has(name)) {
    way.add(name);
    // A name that could not be ordered uses at least one other of them.
    name = uses.get(name)!.find((other) => circling.has(other))!;
  }
  return [...way, name];
}
