import { CAUSE_LABELS } from '../../chance/sentence.ts';
import type { Band, Chance } from '../../chance/chance.ts';
import type { UsedRange } from '../../chance/ranges.ts';
import type { Dimension } from '../../quantities/dimensions.ts';
import { NO_VALUE, printQuantity } from '../../quantities/print.ts';
import type { SummaryFacts } from '../facts.ts';
import { htmlTable } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Markup } from '../markup.ts';

/** How likely each run holds, and on which ranges that rests. */
export function chanceSection(facts: SummaryFacts): Markup {
  const { governing, units } = facts;
  const chances = facts.chances();
  const shown = chances.find(({ setting }) => setting === governing?.name);
  return join(
    el(
      'ul',
      {},
      chances.map(({ setting, sentence }) => el('li', {}, el('b', {}, setting), `: ${sentence}`)),
    ),
    shown === undefined || shown.runs.every(({ probability }) => probability === null)
      ? null
      : [
          el('h3', {}, `Runs of “${shown.setting}” in ${shown.samples} cases`),
          runsTable(shown, (si, dimension) => printQuantity(si, dimension, units)),
        ],
    rangesTable(chances),
    el(
      'p',
      { class: 'small' },
      'A chance is no better than these ranges, and knows nothing of what they leave out: a blockage, a torn hose, an open door in the bin.',
    ),
  );
}

function runsTable({ runs }: Chance, print: (si: number | null, dimension: Dimension) => string): Markup {
  const band = (of: Band | null, dimension: Dimension) =>
    of === null ? NO_VALUE : `${print(of.low, dimension)} to ${print(of.high, dimension)}`;
  return htmlTable(
    [
      { head: 'run' },
      { head: 'holds in', align: 'right' },
      { head: 'velocity asked', align: 'right' },
      { head: 'in 90 of 100 cases', align: 'right' },
      { head: 'flow asked', align: 'right' },
      { head: 'in 90 of 100 cases', align: 'right' },
      { head: 'what matters most' },
    ],
    runs
      .filter(({ probability }) => probability !== null)
      .map((run) => ({
        about: run.id,
        cells: [
          run.id,
          `${(100 * run.probability!).toFixed(1)} %`,
          print(run.requiredVelocity_ms, 'velocity'),
          band(run.velocity_ms, 'velocity'),
          print(run.requiredFlow_m3s, 'flow'),
          band(run.flow_m3s, 'flow'),
          run.causes[0] === undefined
            ? NO_VALUE
            : `${run.causes[0].label}, ${(100 * run.causes[0].share).toFixed(0)} %`,
        ],
      })),
  );
}

function rangesTable(chances: readonly Chance[]): Markup | null {
  // ranges of one kind and width stand in one row, with the things that they are about
  const rows = new Map<string, { readonly range: UsedRange; readonly where: Set<string> }>();
  for (const range of chances.flatMap(({ ranges }) => ranges)) {
    const key = `${range.id} ${widthText(range)} ${range.given}`;
    const row = rows.get(key) ?? { range, where: new Set<string>() };
    if (range.where !== null) row.where.add(range.where);
    rows.set(key, row);
  }
  if (rows.size === 0) return null;
  return join(
    el('h3', {}, 'Ranges: what holds nineteen times in twenty'),
    htmlTable(
      [
        { head: 'figure' },
        { head: 'plus or minus', align: 'right' },
        { head: 'counted with' },
        { head: 'where it comes from' },
      ],
      [...rows.values()].map(({ range: { label, plusMinus, cause, given, source }, where }) => [
        where.size === 0 ? label : `${label} (${[...where].join(', ')})`,
        widthText({ plusMinus }),
        CAUSE_LABELS[cause],
        given ? 'given in this document' : source,
      ]),
    ),
  );
}

const widthText = ({ plusMinus }: Pick<UsedRange, 'plusMinus'>): string =>
  plusMinus === null ? 'by its tests' : `${(100 * plusMinus).toFixed(0)} %`;
