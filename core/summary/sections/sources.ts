import type { Basis } from '../../quantities/sourced.ts';
import { KIND_WORDS, weakestFirst } from '../../sources/about.ts';
import { KIND_ORDER } from '../../sources/source-list.ts';
import type { SourceRow } from '../../sources/source-row.ts';
import { sourcesOf } from '../../sources/sources-of.ts';
import { sentenceCase } from '../figures/charts/words.ts';
import type { SummaryFacts } from '../facts.ts';
import { htmlTable } from '../html-table.ts';
import type { PaperRow } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Markup } from '../markup.ts';
import { placesText } from '../sources-text.ts';

/** What a figure may rest on, in few words. */
const BASIS_MEANS: Readonly<Record<Basis, string>> = {
  published: 'read in the publication, or where a later work quotes it',
  'from-memory': 'a known publication, page not seen',
  'common-practice': 'a fact of the trade without one source',
  assumed: 'no source, a planning figure to be replaced by yours',
  'measured-by-user': 'your own reading or figure',
};

/** Places named in a row; more are counted. */
const PLACES = 4;

/** Where every relation, coefficient, property and default of this shop comes from. */
export function sourcesSection({ shop, solution, units }: SummaryFacts): Markup {
  const rows = sourcesOf({ shop, settings: solution.settings, units, hours: true });
  const body = KIND_ORDER.flatMap((kind): (PaperRow | Markup[])[] => {
    const lines = together(rows.filter((row) => row.kind === kind));
    if (lines.length === 0) return [];
    return [{ cells: [KIND_WORDS[kind]], group: true, about: kind }, ...lines.map(cellsOf)];
  });
  return join(
    el('p', {}, weakestFirst(rows)),
    htmlTable([{ head: 'figure' }, { head: 'source' }, { head: 'rests on' }, { head: 'used in' }], body, {
      class: 'flowing sources',
    }),
    el(
      'p',
      { class: 'small' },
      Object.entries(BASIS_MEANS).map(([word, says], i) => [
        i > 0 ? '; ' : null,
        el('b', {}, word),
        `: ${says}`,
      ]),
      '.',
    ),
  );
}

interface Line {
  readonly figures: string[];
  readonly source: string;
  readonly basis: Basis;
  readonly where: Set<string>;
}

/** Rows of one kind that rest on the same page, in one line. */
function together(rows: readonly SourceRow[]): Line[] {
  const lines = new Map<string, Line>();
  for (const { what, value, source, basis, where } of rows) {
    const key = `${source}|${basis}`;
    const line = lines.get(key) ?? { figures: [], source, basis, where: new Set<string>() };
    lines.set(key, line);
    line.figures.push(value === null ? what : `${what}: ${value}`);
    for (const place of where) line.where.add(place);
  }
  return [...lines.values()];
}

const cellsOf = ({ figures, source, basis, where }: Line): Markup[] => [
  el('span', {}, sentenceCase(figures.join('; '))),
  el('span', {}, source),
  el('span', { class: 'word' }, basis),
  el('span', {}, placesText([...where], PLACES)),
];
