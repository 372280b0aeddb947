import { CYCLONE_PROPORTIONS } from '../../catalogue/cyclones.ts';
import { FILTER_MEDIA } from '../../catalogue/filter-media.ts';
import { NOMINAL_BODY } from '../../document/anchors.ts';
import type { Basis } from '../../quantities/sourced.ts';
import { GRADE_MODELS } from '../../separator/efficiency.ts';
import { CYCLONE_LOSS_MODELS } from '../../separator/pressure-drop.ts';
import { kindWord, sentenceCase } from '../figures/charts/words.ts';
import type { SummaryFacts } from '../facts.ts';
import { htmlTable } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Markup } from '../markup.ts';

/** What a figure may rest on, in few words. */
const BASIS_MEANS: Readonly<Record<Basis, string>> = {
  published: 'the page was read',
  'from-memory': 'a known publication, page not seen',
  'common-practice': 'a fact of the trade without one source',
  assumed: 'no source, a planning figure to be replaced by yours',
  'measured-by-user': 'your own reading or figure',
};

interface Row {
  readonly what: string;
  readonly source: string;
  readonly basis: string;
  readonly where: Set<string>;
}

/** Where every coefficient, model and catalogue figure of this shop comes from. */
export function sourcesSection(facts: SummaryFacts): Markup {
  const rows = sourcesOf(facts);
  return join(
    el(
      'p',
      {},
      'Friction is Colebrook and White’s. Junctions are reckoned by the momentum of their legs. Air is by CIPM-2007 where the weather is given.',
    ),
    htmlTable(
      [{ head: 'figure' }, { head: 'source' }, { head: 'rests on' }, { head: 'used in' }],
      rows.map(({ what, source, basis, where }) => [
        what,
        source,
        el('span', { class: 'word' }, basis),
        placesText([...where]),
      ]),
    ),
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

/** Places named in a row; more are counted. */
const PLACES = 6;
const placesText = (places: readonly string[]): string =>
  places.length <= PLACES
    ? places.join(', ')
    : `${places.slice(0, PLACES).join(', ')} and ${places.length - PLACES} more`;

/** Every source of the Solution and of the catalogue rows that the document names, each once. */
export function sourcesOf({ document, solution, shop, benches }: SummaryFacts): Row[] {
  const rows = new Map<string, Row>();
  const add = (what: string, source: string, basis: string, where: string) => {
    const key = `${what}|${source}|${basis}`;
    const row = rows.get(key) ?? { what, source, basis, where: new Set<string>() };
    row.where.add(where);
    rows.set(key, row);
  };
  for (const setting of solution.settings) {
    for (const run of setting.runs) {
      for (const { id, kind, source, basis } of run.pieces) {
        if (source !== null) add(sentenceCase(kindWord(kind)), source, basis ?? 'assumed', id);
      }
    }
  }
  for (const { thing, built } of shop.devices) {
    if (built.kind === 'bin' || built.model === 'measured') {
      add(`Loss of a ${kindWord(built.kind)}`, built.source, built.basis, thing.id);
    }
    if (built.kind === 'cyclone' && thing.kind === 'cyclone') {
      const loss = CYCLONE_LOSS_MODELS;
      for (const row of Object.values(loss)) add(`Loss model, ${row.label}`, row.source, row.basis, thing.id);
      for (const row of Object.values(GRADE_MODELS)) {
        add(`Catch model, ${row.label}`, row.source, row.basis, thing.id);
      }
      if (Object.hasOwn(CYCLONE_PROPORTIONS, thing.proportions)) {
        const row = CYCLONE_PROPORTIONS[thing.proportions as keyof typeof CYCLONE_PROPORTIONS];
        add(`Proportions, ${row.label}`, row.source, row.basis, thing.id);
      }
    }
    if (thing.kind === 'filter') {
      for (const { medium } of thing.layers) {
        if (!Object.hasOwn(FILTER_MEDIA, medium)) continue;
        const row = FILTER_MEDIA[medium as keyof typeof FILTER_MEDIA];
        add(`Medium, ${row.label}`, row.source, row.basis, thing.id);
      }
    }
  }
  for (const { thing, design } of shop.fans) {
    if (design === null) {
      add('Fan curve', thing.curve.source ?? 'points of this document', 'measured-by-user', thing.id);
    }
  }
  for (const bench of benches()) {
    if (bench.curve) add(`Curve of ${bench.name}`, bench.curve.source, bench.curve.basis, bench.id);
    if (bench.motor) add(`Motor of ${bench.name}`, bench.motor.source, bench.motor.basis, bench.id);
    if (bench.rotor) add(`Rotor of ${bench.name}`, bench.rotor.source, bench.rotor.basis, bench.id);
  }
  const bodies = document.things.filter(
    ({ kind, at }) => at !== undefined && (kind === 'bin' || kind === 'filter' || kind === 'fan'),
  );
  for (const { id } of bodies) add('Size of bodies on the plan', NOMINAL_BODY.source, NOMINAL_BODY.basis, id);
  return [...rows.values()];
}
