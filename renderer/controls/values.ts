import { isQuantity } from '../../core/document/quantity-field.ts';

/** The value at a path, undefined where there is none. */
export function valueAt(value: unknown, path: readonly (string | number)[]): unknown {
  let at = value;
  for (const key of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return undefined;
    at = (at as Record<string | number, unknown>)[key];
  }
  return at;
}

/** Whether two values of a field read the same to a person: typed alike and meaning the same. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (isQuantity(a) && isQuantity(b)) return a.text === b.text && a.si === b.si;
  return Object.is(a, b);
}

/** One value for several items: theirs where all agree, else none and `mixed`. */
export function together(values: readonly unknown[]): { readonly value: unknown; readonly mixed: boolean } {
  const [first, ...others] = values;
  const mixed = others.some((value) => !sameValue(first, value));
  return { value: mixed ? undefined : first, mixed };
}

interface FieldLike {
  readonly label: string;
  readonly group: string;
  readonly kind: string;
  readonly dimension?: unknown;
}

/** One field that several items have, each at its own place. */
export interface Shared<F> {
  readonly field: F;
  readonly places: readonly F[];
}

const signature = ({ group, label, kind, dimension }: FieldLike) =>
  `${group}/${label}/${kind}/${typeof dimension === 'string' ? dimension : ''}`;

/** Fields that every one of several items has, in the order of the first; told apart by what a person reads. */
export function commonFields<F extends FieldLike>(lists: readonly (readonly F[])[]): Shared<F>[] {
  const [first = [], ...others] = lists;
  const tables = others.map((list) => new Map(list.map((field) => [signature(field), field])));
  return first.flatMap((field) => {
    const found = tables.map((table) => table.get(signature(field)));
    return found.every((other) => other !== undefined) ? [{ field, places: [field, ...found] }] : [];
  });
}
