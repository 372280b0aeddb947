import { effectivePieces } from '../document/effective-pieces.ts';
import { thingsOf } from '../document/commands/items.ts';
import type { ShopDocument } from '../document/schema.ts';
import { BASES } from '../quantities/sourced.ts';
import type { Basis } from '../quantities/sourced.ts';
import { WHOLE_SHOP } from './source-row.ts';
import type { SourceKind, SourceRow } from './source-row.ts';

/** Rows that the results of one thing, run or piece rest on. */
export interface RowsAbout {
  readonly own: readonly SourceRow[];
  /** What the whole shop rests on, such as its air. */
  readonly shop: readonly SourceRow[];
}

/** Rows about an id; a run's are those of its pieces and ends too. Null where the document has nothing of that name. */
export function rowsAbout(document: ShopDocument, rows: readonly SourceRow[], id: string): RowsAbout | null {
  const ids = idsOf(document, rows, id);
  if (ids === null) return null;
  const everywhere = (row: SourceRow) => row.where.includes(WHOLE_SHOP);
  const own = rows.filter((row) => !everywhere(row) && row.where.some((place) => ids.has(place)));
  return {
    // its own places stand first, since of many only the first are named
    own: own.map((row) => ({
      ...row,
      where: [...row.where].sort((a, b) => Number(ids.has(b)) - Number(ids.has(a))),
    })),
    shop: rows.filter(everywhere),
  };
}

function idsOf(document: ShopDocument, rows: readonly SourceRow[], id: string): ReadonlySet<string> | null {
  const run = document.runs.find((one) => one.id === id);
  if (run) {
    const keys = effectivePieces(run, thingsOf(document)).map(({ key }) => key);
    const ends = [run.from, run.to].map((end) => end.split('.')[0]!);
    const around = document.things.flatMap((thing) =>
      ends.includes(thing.id) && OPEN_ENDS.has(thing.kind) ? [thing.id] : [],
    );
    // steps between pieces are called after the piece that they stand before
    const steps = [`${id}.outlet`, ...keys.map((_, i) => `${id}.${i + 1}.step`)];
    return new Set([id, ...keys, ...steps, ...around]);
  }
  const known =
    id === WHOLE_SHOP ||
    document.things.some((thing) => thing.id === id) ||
    document.fans.some((fan) => fan.id === id) ||
    rows.some(({ where }) => where.includes(id));
  if (known) return new Set([id]);
  // `cyclone.in` is a place at the cyclone
  const owner = id.slice(0, Math.max(0, id.indexOf('.')));
  if (document.things.some((thing) => thing.id === owner)) return new Set([owner]);
  return null;
}

/** Things whose loss stands in the run that they end. */
const OPEN_ENDS: ReadonlySet<string> = new Set(['port', 'leak', 'exhaust', 'pressure']);

/** How many rows rest on each basis, all five. */
export function countByBasis(rows: readonly SourceRow[]): Record<Basis, number> {
  const counts = Object.fromEntries(BASES.map((basis) => [basis, 0])) as Record<Basis, number>;
  for (const { basis } of rows) counts[basis]++;
  return counts;
}

/** What a person should know of a list of rows before reading it. */
export function weakestFirst(rows: readonly SourceRow[]): string {
  const {
    published,
    'from-memory': memory,
    'common-practice': practice,
    assumed,
    'measured-by-user': own,
  } = countByBasis(rows);
  const parts = [
    `${published} stand in publications that were read`,
    `${memory} in publications quoted from memory`,
    `${practice} on what the trade does`,
    `${own} on figures of your own`,
  ];
  const guesses =
    assumed === 0
      ? 'none is assumed'
      : `${assumed} ${assumed === 1 ? 'is' : 'are'} assumed: measure or replace ${assumed === 1 ? 'that one' : 'those'} first`;
  return `Of ${rows.length} figures and relations ${parts.join(', ')}; ${guesses}.`;
}

/** Headings of the kinds. */
export const KIND_WORDS: Readonly<Record<SourceKind, string>> = {
  relation: 'Relations',
  model: 'Models chosen',
  coefficient: 'Loss coefficients and constants',
  catalogue: 'Properties from the catalogue',
  default: 'Defaults: the document says nothing',
  reading: 'Figures of your own',
};
