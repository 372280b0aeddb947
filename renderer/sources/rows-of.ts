import type { ShopDocument } from '../../core/document/schema.ts';
import { compileShop } from '../../core/network/compile.ts';
import type { SettingResult } from '../../core/network/solution.ts';
import type { UnitSystem } from '../../core/quantities/dimensions.ts';
import { BASES } from '../../core/quantities/sourced.ts';
import type { Basis } from '../../core/quantities/sourced.ts';
import { countByBasis, KIND_WORDS, rowsAbout } from '../../core/sources/about.ts';
import type { RowsAbout } from '../../core/sources/about.ts';
import { KIND_ORDER } from '../../core/sources/source-list.ts';
import type { SourceRow } from '../../core/sources/source-row.ts';
import { sourcesOf } from '../../core/sources/sources-of.ts';

/** What the rows of a shop follow from. */
export interface Shown {
  readonly document: ShopDocument;
  readonly solutions: ReadonlyMap<string, SettingResult>;
  readonly units: UnitSystem;
}

let last: (Shown & { readonly rows: readonly SourceRow[] | null }) | null = null;

/** All rows of the shop on screen, kept while it stays as it is; null where it cannot be solved. */
function allRows(shown: Shown): readonly SourceRow[] | null {
  const { document, solutions, units } = shown;
  const same = last?.document === document && last.solutions === solutions && last.units === units;
  if (!same) {
    const compiled = compileShop(document);
    const settings = [...solutions.values()];
    const rows = compiled.ok ? sourcesOf({ shop: compiled.shop, settings, units, hours: true }) : null;
    last = { ...shown, rows };
  }
  return last!.rows;
}

/** Rows about one id; null where there are none to be had. */
export function rowsOf(shown: Shown, id: string): RowsAbout | null {
  const rows = allRows(shown);
  return rows === null ? null : rowsAbout(shown.document, rows, id);
}

/** Rows under the heading of their kind, what is assumed first. */
export function grouped(rows: readonly SourceRow[]): { title: string; rows: SourceRow[] }[] {
  return KIND_ORDER.flatMap((kind) => {
    const own = rows.filter((row) => row.kind === kind);
    const assumed = own.filter(({ basis }) => basis === 'assumed');
    const others = own.filter(({ basis }) => basis !== 'assumed');
    return own.length === 0 ? [] : [{ title: KIND_WORDS[kind], rows: [...assumed, ...others] }];
  });
}

/** A basis in two words. */
export const SHORT_BASIS: Readonly<Record<Basis, string>> = {
  published: 'published',
  'from-memory': 'from memory',
  'common-practice': 'common practice',
  assumed: 'assumed',
  'measured-by-user': 'your own',
};

/** `3 assumed, 12 from memory`: the weakest first. */
export function countText(rows: readonly SourceRow[]): string {
  const counts = countByBasis(rows);
  return [...BASES]
    .sort((a, b) => WEAKEST.indexOf(a) - WEAKEST.indexOf(b))
    .flatMap((basis) => (counts[basis] > 0 ? [`${counts[basis]} ${SHORT_BASIS[basis]}`] : []))
    .join(', ');
}

const WEAKEST: readonly Basis[] = [
  'assumed',
  'common-practice',
  'from-memory',
  'published',
  'measured-by-user',
];

/** Path of a field as the screens take it: numbers are places in a list. */
export const pathOf = (field: string): (string | number)[] =>
  field.split('.').map((part) => (/^\d+$/.test(part) ? Number(part) : part));
