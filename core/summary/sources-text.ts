import { countByBasis, KIND_WORDS, weakestFirst } from '../sources/about.ts';
import { KIND_ORDER } from '../sources/source-list.ts';
import { WHOLE_SHOP } from '../sources/source-row.ts';
import type { SourceRow } from '../sources/source-row.ts';
import { BASIS_WORDS } from './basis-words.ts';
import { sentenceCase } from './figures/charts/words.ts';
import { textTable, wrapText } from './text-table.ts';
import type { Column } from './text-table.ts';
import { BASES } from '../quantities/sourced.ts';

const WIDTH = 110;
/** Places named in a row; more are counted. */
const PLACES = 6;
/** Widest cell of a source; longer ones go on below. */
const SOURCE_WIDTH = 62;
const WHAT_WIDTH = 50;

/** Places of a row in words. */
export function placesText(where: readonly string[], most = PLACES): string {
  const places = where.map((place) => (place === WHOLE_SHOP ? 'the whole shop' : place));
  return places.length <= most
    ? places.join(', ')
    : `${places.slice(0, most).join(', ')} and ${places.length - most} more`;
}

/** What results rest on, as a person reads it; `about` names what the rows are of, such as a run. */
export function sourcesText(rows: readonly SourceRow[], about: string): string {
  const counts = countByBasis(rows);
  const lines = [
    `${about}: what the results rest on`,
    ...wrapText(weakestFirst(rows), WIDTH),
    '',
    ...textTable(
      [
        { head: 'count', align: 'right' },
        { head: 'basis', align: 'left' },
        { head: 'which means', align: 'left' },
      ],
      BASES.map((basis) => [String(counts[basis]), basis, BASIS_WORDS[basis]]),
    ),
  ];
  for (const kind of KIND_ORDER) {
    const own = rows.filter((row) => row.kind === kind);
    if (own.length > 0) lines.push('', `${KIND_WORDS[kind]} (${own.length})`, ...table(own));
  }
  return `${lines.join('\n')}\n`;
}

const COLUMNS: readonly Column[] = [
  { head: 'figure', align: 'left' },
  { head: 'value', align: 'right' },
  { head: 'rests on', align: 'left' },
  { head: 'source', align: 'left' },
];

/** Rows of one kind; where they are used and hold stands below each. */
function table(rows: readonly SourceRow[]): string[] {
  const cells = rows.flatMap((row) => {
    const what = wrapText(sentenceCase(row.what), WHAT_WIDTH, '  ');
    const used = [
      `used in: ${placesText(row.where)}`,
      ...(row.range === null ? [] : [`holds: ${row.range}`]),
    ];
    const says = [row.source, ...used].flatMap((text) => wrapText(text, SOURCE_WIDTH, '  '));
    return Array.from({ length: Math.max(what.length, says.length) }, (_, i) => [
      what[i] ?? '',
      i === 0 ? (row.value ?? '') : '',
      i === 0 ? row.basis : '',
      says[i] ?? '',
    ]);
  });
  return textTable(COLUMNS, cells, '  ');
}
