import { span } from '../checks/range-text.ts';
import type { Dimension, UnitSystem } from '../quantities/dimensions.ts';
import { printQuantity } from '../quantities/print.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { Sourced } from '../quantities/sourced.ts';
import type { Quantity } from '../document/quantity-field.ts';
import { RELATIONS } from './relations.ts';
import type { RelationId } from './relations.ts';
import type { Draft, Figure, SourceKind, SourceRow } from './source-row.ts';

/** What the user's own figures rest on. */
export const GIVEN: Sourced = { source: 'given in the document', basis: 'measured-by-user' };
/** Loss and flow that were read together. */
export const READ: Sourced = { source: 'reading in the document', basis: 'measured-by-user' };

type Places = readonly string[];

/** A field of the items themselves; empty where it stands elsewhere. */
const at = (field: string) => (field === '' ? {} : { field });

/** Rows under way: what is said twice becomes one row with the places of both. */
export class SourceList {
  private readonly rows = new Map<string, { row: Omit<SourceRow, 'where'>; where: Set<string> }>();

  constructor(private readonly units: UnitSystem) {}

  add(draft: Draft, where: Places): void {
    const { kind, what, source, basis } = draft;
    const value =
      draft.value === undefined
        ? null
        : typeof draft.value === 'string'
          ? draft.value
          : this.print(draft.value);
    const field = draft.field ?? null;
    const key = JSON.stringify([kind, what, value, source, basis, field]);
    let found = this.rows.get(key);
    if (found === undefined) {
      const range = draft.range === undefined ? null : rangeText(draft.range);
      found = { row: { kind, what, value, source, basis, range, field }, where: new Set() };
      this.rows.set(key, found);
    }
    for (const place of where) found.where.add(place);
  }

  /** Relations of the table, used at the same places. */
  use(where: Places, ...ids: readonly RelationId[]): void {
    for (const id of ids) this.add({ ...RELATIONS[id], kind: 'relation' }, where);
  }

  /** A figure that the document may give and that has a default or a catalogue row behind it. */
  either(
    given: Quantity | undefined,
    what: string,
    field: string,
    otherwise: Sourced & { readonly kind: SourceKind; readonly si: number; readonly dimension: Dimension },
    where: Places,
  ): void {
    if (given) this.given(given, what, field, where);
    else {
      const { kind, si, dimension, source, basis } = otherwise;
      this.add({ kind, what, value: { si, dimension }, source, basis, ...at(field) }, where);
    }
  }

  /** A figure of the user's own; nothing where there is none. */
  given(quantity: Quantity | undefined, what: string, field: string, where: Places): void {
    if (!quantity) return;
    const value = { si: quantity.si, dimension: quantity.dimension };
    this.add({ kind: 'reading', what, value, ...at(field), ...GIVEN }, where);
  }

  /** A figure in the units of the list. */
  print({ si, dimension }: Figure): string {
    return printQuantity(si, dimension, this.units);
  }

  /** By kind, then in the order in which they were met; places in the order of `order`. */
  all(order: ReadonlyMap<string, number>): SourceRow[] {
    const place = (id: string) => order.get(id) ?? order.get(id.slice(0, id.indexOf('.'))) ?? order.size;
    const rows = [...this.rows.values()].filter(({ where }) => where.size > 0);
    return KIND_ORDER.flatMap((kind) =>
      rows
        .filter(({ row }) => row.kind === kind)
        .map(({ row, where }) => ({ ...row, where: [...where].sort((a, b) => place(a) - place(b)) })),
    );
  }
}

/** Order in which kinds are shown. */
export const KIND_ORDER: readonly SourceKind[] = [
  'relation',
  'model',
  'coefficient',
  'catalogue',
  'default',
  'reading',
];

const rangeText = (range: ValidRange): string =>
  Object.entries(range)
    .map(([quantity, bounds]) => `${quantity} ${span(bounds)}`)
    .join('; ');
