import { NO_VALUE, printQuantity } from '../../quantities/print.ts';
import { BASIS_WORDS } from '../basis-words.ts';
import type { Basis } from '../../quantities/sourced.ts';
import { dueText } from '../../upkeep/sentences.ts';
import { leftOutOf, upkeepFigure } from '../figures/upkeep-figure.ts';
import type { SummaryFacts } from '../facts.ts';
import { htmlTable, pairs } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Child, Markup } from '../markup.ts';

/** Events that a page has room for. */
const EVENTS = 12;

/** What happens over running hours: flow, filter, bins, dust that goes through, electricity. */
export function upkeepSection({ document, upkeep, hours, units, width, nameOf }: SummaryFacts): Markup {
  const outcome = upkeep();
  if (!outcome.ok) {
    return join(
      el('p', {}, `Nothing can be said of ${hours} running hours:`),
      outcome.problems.map(({ message, remedy }) => el('p', {}, `${message}; ${remedy}.`)),
    );
  }
  const { result } = outcome;
  const { totals } = result;
  const mass = (kg: number) => printQuantity(kg, 'mass', units);
  const figure = upkeepFigure(result, { width, height: 340, units, nameOf });
  const left = leftOutOf(result);
  const money = document.parts?.money === undefined ? '' : ` ${document.parts.money}`;
  const rows: (readonly [string, Child])[] = [
    ['running hours', `${result.reached_h.toFixed(0)} h`],
    [
      'settings in use',
      result.duty.map(({ setting, share }) => `${setting} ${(100 * share).toFixed(0)} %`).join(', '),
    ],
    ['dust made', mass(totals.made_kg)],
    ...totals.caught.map(({ id, mass_kg }) => [`caught by ${nameOf(id)}`, mass(mass_kg)] as const),
    ...totals.filtered.map(({ id, mass_kg }) => [`held by ${nameOf(id)}`, mass(mass_kg)] as const),
    ['gone through', mass(totals.passed_kg)],
    [
      'electricity',
      totals.energy_J === null
        ? NO_VALUE
        : `${Number((totals.energy_J / 3.6e6).toPrecision(3))} kWh${totals.cost === null ? '' : `, ${totals.cost.toFixed(2)}${money}`}`,
    ],
  ];
  const shown = result.events.slice(0, EVENTS);
  return join(
    result.sentences.map((sentence) => el('p', {}, sentence)),
    figure === null
      ? null
      : el(
          'figure',
          {},
          figure,
          el(
            'figcaption',
            {},
            'Flow through the fan in each setting, and the largest drop of each filter; an upright line of dots is a cleaning.',
            left > 0 ? ` ${left} more are not drawn.` : null,
          ),
        ),
    pairs(rows),
    shown.length === 0
      ? null
      : el(
          'ul',
          {},
          shown.map((event) => el('li', {}, `${dueText(event)}.`)),
          result.events.length > EVENTS ? el('li', {}, `and ${result.events.length - EVENTS} more.`) : null,
        ),
    el('h3', {}, 'What this rests on'),
    htmlTable(
      [{ head: 'figure' }, { head: 'value', align: 'right' }, { head: 'where it comes from' }],
      result.assumptions.map(({ what, value, dimension, source, basis }) => [
        what,
        printQuantity(value, dimension, units),
        `${source} (${BASIS_WORDS[basis as Basis] ?? basis})`,
      ]),
    ),
  );
}
