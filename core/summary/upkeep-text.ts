import type { UnitSystem } from '../quantities/dimensions.ts';
import { displayUnit, NO_VALUE, printQuantity } from '../quantities/print.ts';
import { dueText } from '../upkeep/sentences.ts';
import type { UpkeepPoint, UpkeepResult } from '../upkeep/result.ts';
import { figure } from './figures/charts/columns.ts';
import { marginText } from './figures/charts/status.ts';
import { textTable, wrapText } from './text-table.ts';
import type { Column } from './text-table.ts';

const WIDTH = 100;
/** Rows of the table; enough to see how it goes. */
const ROWS = 11;
/** Events that a page has room for. */
const EVENTS = 12;

/** What happens over running hours, as a person reads it. */
export function upkeepText(result: UpkeepResult, units: UnitSystem, money: string | null): string {
  const lines = [
    `${result.document}: ${hoursText(result.reached_h)} running hours`,
    '',
    ...result.sentences.flatMap((sentence) => wrapText(sentence, WIDTH)),
    '',
    ...tableLines(result, units),
    '',
    ...eventLines(result),
    ...totalLines(result, units, money),
    '',
    'THIS RESTS ON',
    ...result.assumptions.flatMap(({ what, value, dimension, source, basis }) =>
      wrapText(`  ${what} ${printQuantity(value, dimension, units)}: ${source} (${basis})`, WIDTH, '    '),
    ),
  ];
  return `${lines.join('\n').trimEnd()}\n`;
}

const hoursText = (h: number): string => (Number.isInteger(h) ? String(h) : h.toFixed(1));

/** Points that tell the most: the ends, and some between at about even times. */
function shownPoints(timeline: readonly UpkeepPoint[]): UpkeepPoint[] {
  const end = timeline.at(-1)?.time_h ?? 0;
  const shown = new Set<UpkeepPoint>();
  for (let i = 0; i < ROWS; i++) {
    const wanted = (end * i) / (ROWS - 1);
    let best = timeline[0];
    for (const point of timeline) {
      if (Math.abs(point.time_h - wanted) < Math.abs(best!.time_h - wanted)) best = point;
    }
    if (best) shown.add(best);
  }
  return timeline.filter((point) => shown.has(point));
}

function tableLines({ timeline, duty }: UpkeepResult, units: UnitSystem): string[] {
  const right = (head: string, unit: string): Column => ({ head, unit, align: 'right' });
  const filters = timeline[0]?.drops ?? [];
  const columns = [
    right('hours', 'h'),
    ...duty.map(({ setting }) => right(setting, displayUnit('flow', units))),
    right('least margin', ''),
    ...filters.map(({ filter }) => right(filter, displayUnit('pressure', units))),
  ];
  const rows = shownPoints(timeline).map((point) => {
    const margins = point.settings.flatMap(({ tightest }) => (tightest === null ? [] : [tightest]));
    const least = margins.reduce<(typeof margins)[number] | null>(
      (a, b) => (a === null || b.margin < a.margin ? b : a),
      null,
    );
    return [
      point.time_h.toFixed(1),
      ...duty.map(({ setting }) =>
        figure(point.settings.find(({ name }) => name === setting)?.flow_m3s ?? null, 'flow', units),
      ),
      least === null ? NO_VALUE : `${marginText(least.margin)} ${least.run}`,
      ...filters.map(({ filter }) =>
        figure(point.drops.find((drop) => drop.filter === filter)?.drop_Pa ?? null, 'pressure', units),
      ),
    ];
  });
  return ['FLOW THROUGH THE FAN, AND WHAT THE FILTERS DROP', ...textTable(columns, rows, '  ')];
}

function eventLines({ events }: UpkeepResult): string[] {
  if (events.length === 0) return [];
  const more = events.length - EVENTS;
  return [
    'WHAT COMES DUE',
    ...events.slice(0, EVENTS).flatMap((event) => wrapText(`  ${dueText(event)}`, WIDTH, '    ')),
    ...(more > 0 ? [`  and ${more} more`] : []),
    '',
  ];
}

function totalLines({ totals, binsFull }: UpkeepResult, units: UnitSystem, money: string | null): string[] {
  const mass = (kg: number) => printQuantity(kg, 'mass', units);
  const bins = new Map(binsFull.map((bin) => [bin.id, bin]));
  const energy =
    totals.energy_J === null ? NO_VALUE : `${Number((totals.energy_J / 3.6e6).toPrecision(3))} kWh`;
  const cost = totals.cost === null ? '' : `, ${totals.cost.toFixed(2)}${money === null ? '' : ` ${money}`}`;
  return [
    'IN ALL',
    `  dust made ${mass(totals.made_kg)}`,
    ...totals.caught.map(({ id, mass_kg }) => {
      const bin = bins.get(id);
      const full = bin === undefined ? '' : `; its bin is full after ${bin.first_h.toFixed(1)} h`;
      return `  caught by ${id} ${mass(mass_kg)}${full}`;
    }),
    ...totals.filtered.map(({ id, mass_kg }) => `  held by ${id} ${mass(mass_kg)}`),
    `  gone through ${mass(totals.passed_kg)}`,
    `  electricity ${energy}${cost}`,
  ];
}
