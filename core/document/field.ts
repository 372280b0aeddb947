import type { Dimension } from '../quantities/dimensions.ts';
import type { Basis } from '../quantities/sourced.ts';
import type { QuantityRule } from './quantity-field.ts';

/** One choice of a list, with where its figures come from. */
export interface FieldOption {
  readonly value: string;
  readonly label: string;
  readonly source?: string;
  readonly basis?: Basis;
}

/** A value of the document that a person may look at and change. */
export interface Field {
  /** Item that the path starts at, for the commands that change it; empty for the document itself. */
  readonly id: string;
  readonly path: readonly (string | number)[];
  readonly label: string;
  /** A count is a whole number without a unit. */
  readonly kind: 'quantity' | 'choice' | 'text' | 'flag' | 'count';
  readonly dimension?: Dimension;
  readonly rule?: QuantityRule;
  readonly optional: boolean;
  readonly options?: readonly FieldOption[];
  readonly hint?: string;
  readonly group: string;
}

/** A field before it is known whose it is. */
export type FieldRow = Omit<Field, 'id'>;

type More = { readonly optional?: true; readonly hint?: string; readonly rule?: QuantityRule };
const keys = (path: string) => path.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key));

/** Shorthands for the tables of fields; a path is written with points. */
export function quantityRow(
  group: string,
  path: string,
  label: string,
  dimension: Dimension,
  { optional = undefined, hint, rule = 'positive' }: More = {},
): FieldRow {
  const common = { path: keys(path), label, group, optional: optional === true, ...(hint ? { hint } : {}) };
  return { ...common, kind: 'quantity', dimension, rule };
}

export function choiceRow(
  group: string,
  path: string,
  label: string,
  options: readonly FieldOption[],
  { optional, hint }: More = {},
): FieldRow {
  return {
    path: keys(path),
    label,
    group,
    kind: 'choice',
    options,
    optional: optional === true,
    ...(hint ? { hint } : {}),
  };
}

export function textRow(group: string, path: string, label: string, { optional, hint }: More = {}): FieldRow {
  return {
    path: keys(path),
    label,
    group,
    kind: 'text',
    optional: optional === true,
    ...(hint ? { hint } : {}),
  };
}

export const countRow = (group: string, path: string, label: string, more: More = {}): FieldRow => ({
  ...textRow(group, path, label, more),
  kind: 'count',
});

/** A flag is a value true or false, or a group of fields that is there or not. */
export function flagRow(group: string, path: string, label: string, { optional, hint }: More = {}): FieldRow {
  return {
    path: keys(path),
    label,
    group,
    kind: 'flag',
    optional: optional === true,
    ...(hint ? { hint } : {}),
  };
}
