import type { UpkeepResult } from '../../core/upkeep/result.ts';
import { NO_VALUE } from '../../core/quantities/print.ts';

/** Running hours as a person reads them. */
export const hoursText = (time_h: number): string =>
  `${time_h < 10 ? time_h.toFixed(1) : time_h.toFixed(0)} h`;

/** Something to do, with when it is due for the first time. */
export interface Due {
  readonly id: string;
  readonly time_h: number | null;
  readonly what: string;
  readonly why: string;
}

/** Running hours from one cleaning to the next; null where there are not two. */
function cleaningPeriod({ events }: UpkeepResult): number | null {
  const hours = [...new Set(events.filter(({ kind }) => kind === 'cleaned').map(({ time_h }) => time_h))];
  return hours.length < 2 ? null : (hours.at(-1)! - hours[0]!) / (hours.length - 1);
}

/** What comes due, the first before the others. */
export function dueList(result: UpkeepResult, nameOf: (id: string) => string): Due[] {
  const { firstClean, binsFull, totals, reached_h } = result;
  const due: Due[] = binsFull.map(({ id, first_h, times }) => ({
    id: `bin ${id}`,
    time_h: first_h,
    what: `empty the bin of ${nameOf(id)}`,
    why: times === 1 ? 'full once in these hours' : `then again and again, ${times} times in these hours`,
  }));
  if (firstClean !== null) {
    const setting = firstClean.setting === null ? '' : ` in "${firstClean.setting}"`;
    const period = cleaningPeriod(result);
    due.push({
      id: 'clean',
      time_h: firstClean.time_h,
      what: 'clean the filter',
      why:
        (firstClean.kind === 'run-lost'
          ? `run ${nameOf(firstClean.where)} loses what it needs${setting}`
          : `${nameOf(firstClean.where)} reaches the drop at which it is cleaned${setting}`) +
        (period === null ? '' : `; then about every ${hoursText(period)}`),
    });
  } else if (totals.filtered.length > 0) {
    const why = `every run keeps what it needs for ${hoursText(reached_h)}`;
    due.push({ id: 'clean', time_h: null, what: 'the filter need not be cleaned', why });
  }
  return due.sort((a, b) => (a.time_h ?? Infinity) - (b.time_h ?? Infinity));
}

/** A share as a person reads it: tiny ones are not written as powers of ten. */
export function shareText(share: number): string {
  if (!Number.isFinite(share)) return NO_VALUE;
  if (share === 0) return '0 %';
  if (share < 1e-6) return '< 0.0001 %';
  return `${Number((100 * share).toPrecision(share > 0.99 && share < 1 ? 4 : 3))} %`;
}

/** Settings in which runs lack what they need from the start, which no cleaning mends. */
export const lackingFromStart = ({ timeline }: UpkeepResult): string[] =>
  (timeline[0]?.settings ?? []).flatMap(({ name, held, asked }) =>
    held < asked ? [`${asked - held} of ${asked} in "${name}"`] : [],
  );
