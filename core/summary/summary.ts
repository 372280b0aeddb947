import type { DocumentProblem } from '../document/problem.ts';
import type { ShopDocument } from '../document/schema.ts';
import { openShop } from '../network/solve.ts';
import type { UnitSystem } from '../quantities/dimensions.ts';
import { marginText } from './figures/charts/status.ts';
import { leastMargin, summaryFacts } from './facts.ts';
import type { SummaryFacts } from './facts.ts';
import { el, join, Markup } from './markup.ts';
import { PAPERS, pageStyle } from './page-style.ts';
import type { Paper } from './page-style.ts';
import { STANDING } from './sections/findings.ts';
import { SECTIONS } from './sections/sections.ts';
import { SECTION_IDS } from './sections/titles.ts';
import type { SectionId } from './sections/titles.ts';

export type { Paper } from './page-style.ts';
export { SECTIONS } from './sections/sections.ts';
export { SECTION_IDS } from './sections/titles.ts';
export type { SectionId } from './sections/titles.ts';

export interface SummaryOptions {
  /** Names of sections; null or absent: all. */
  readonly sections?: readonly string[] | null;
  /** Printed as it is; nothing here reads a clock. */
  readonly date: string;
  /** Version of the program. */
  readonly version: string;
  readonly paper: Paper;
  readonly units: UnitSystem;
  /** Running hours of the section on upkeep. */
  readonly hours?: number;
}

/** A page, or why there is none; `html` is empty where a problem stands. */
export interface Summary {
  readonly html: string;
  readonly problems: readonly DocumentProblem[];
}

/** Running hours of the upkeep where nobody asks for others. */
export const USUAL_HOURS = 500;

/**
 * The shop on paper: one HTML page, whole in itself, that fetches nothing and runs nothing, black on white, and holds
 * the rules by which a browser prints it.
 */
export function summaryHtml(document: ShopDocument, options: SummaryOptions): Summary {
  const chosen = chosenSections(options.sections ?? null);
  if ('message' in chosen) return { html: '', problems: [chosen] };
  const { units, paper } = options;
  // findings are worded in the document's units
  const shown = document.units === units ? document : { ...document, units };
  const opened = openShop(shown);
  if (!opened.ok) return { html: '', problems: opened.problems };
  const facts = summaryFacts({
    document: shown,
    bench: opened.bench,
    units,
    width: PAPERS[paper].width,
    hours: options.hours ?? USUAL_HOURS,
  });
  const foot = [document.name, options.date].filter((text) => text !== '').join(', ');
  const body = el(
    'body',
    {},
    titleBlock(facts, options),
    chosen.ids.map((id) =>
      el('section', { id: `section-${id}` }, el('h2', {}, SECTIONS[id].title), SECTIONS[id].of(facts)),
    ),
    chosen.ids.includes('findings') ? null : el('p', { class: 'safety' }, STANDING),
  );
  const head = el(
    'head',
    {},
    el('meta', { charset: 'utf-8' }),
    el('meta', {
      'http-equiv': 'Content-Security-Policy',
      content: "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'",
    }),
    el('meta', { name: 'viewport', content: 'width=device-width' }),
    el('title', {}, document.name),
    // the style is ours but for the foot, which is escaped as a string of CSS and can hold no tag
    new Markup(`<style>${pageStyle(paper, foot)}</style>`),
  );
  return { html: `<!doctype html>\n${el('html', { lang: 'en' }, join(head, body)).text}\n`, problems: [] };
}

function chosenSections(asked: readonly string[] | null): { readonly ids: SectionId[] } | DocumentProblem {
  if (asked === null) return { ids: [...SECTION_IDS] };
  const known = (name: string): name is SectionId => Object.hasOwn(SECTIONS, name);
  const unknown = asked.filter((name) => !known(name));
  const remedy = `name some of ${SECTION_IDS.join(', ')}`;
  if (unknown.length > 0) {
    const names = unknown.map((name) => `"${name}"`).join(', ');
    return {
      path: 'sections',
      message: `no ${unknown.length > 1 ? 'sections are' : 'section is'} called ${names}`,
      remedy,
    };
  }
  if (asked.length === 0) return { path: 'sections', message: 'no section is named', remedy };
  return { ids: SECTION_IDS.filter((id) => asked.includes(id)) };
}

function titleBlock({ document, solution, governing }: SummaryFacts, options: SummaryOptions): Markup {
  const cell = (name: string, value: string) => [el('th', { scope: 'row' }, name), el('td', {}, value)];
  return el(
    'header',
    {},
    el('h1', {}, document.name),
    el(
      'table',
      { class: 'title' },
      el(
        'tbody',
        {},
        el(
          'tr',
          {},
          cell('document', document.name),
          cell('date', options.date === '' ? 'not given' : options.date),
        ),
        el(
          'tr',
          {},
          cell('made with', `Chipdraft ${options.version}`),
          cell('shop', `${document.things.length} things, ${document.runs.length} runs`),
        ),
        el('tr', {}, cell('drawn by', ''), cell('checked by', '')),
      ),
    ),
    el('p', { class: 'verdict' }, verdict(solution.settings, governing)),
  );
}

/** The answer first: does it hold. */
function verdict(
  settings: SummaryFacts['solution']['settings'],
  governing: SummaryFacts['governing'],
): string {
  const refused = settings.filter(({ converged }) => !converged).map(({ name }) => `“${name}”`);
  const none = refused.length > 0 ? ` No solution in ${refused.join(', ')}.` : '';
  if (governing === null) return `The shop has no solution.${none}`;
  const least = leastMargin(governing);
  if (least === null) return `Nothing is asked of any run, so that nothing can fail to hold.${none}`;
  const of = settings.length > 1 ? `, in setting “${governing.name}”` : '';
  const failing = settings.filter((setting) => setting.runs.some(({ holds }) => holds === false));
  if (failing.length === 0) {
    return `Every run holds. The least to spare has ${least.run}${of}: ${marginText(least.margin)}.${none}`;
  }
  const names = settings.length > 1 ? ` in ${failing.map(({ name }) => `“${name}”`).join(', ')}` : '';
  return `Not every run holds${names}. The worst is ${least.run}${of}: ${marginText(least.margin)}.${none}`;
}
