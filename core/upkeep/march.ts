import { Watch } from './conditions.ts';
import type { Condition } from './conditions.ts';
import type { StateLayout } from './layout.ts';
import { NoFlow } from './rates.ts';
import type { Moment, Rates } from './rates.ts';
import type { UpkeepEvent } from './result.ts';
import { bogackiShampine, insideStep } from './step.ts';
import type { Usage } from './usage.ts';

/** A state that was reached, with what the shop does at it. */
export interface Reached {
  readonly time_s: number;
  readonly state: Float64Array;
  readonly moment: Moment;
}

export interface Marched {
  readonly points: readonly Reached[];
  readonly events: readonly UpkeepEvent[];
  readonly stopped: { readonly message: string; readonly remedy: string } | null;
  readonly watch: Watch;
}

export const HOUR_s = 3600;
/** Error of a step over the size of what it adds up, at most [-]. */
const TOLERANCE = 1e-4;
/** Longest step over all the hours, so that the chart shows a curve and no event hides behind another [-]. */
const LONGEST_STEP = 1 / 24;
/** A step shorter than this that still has no solution ends the march [s]. */
const SHORTEST_STEP_s = 1;
/** How near an event is found: in time, and of the step that it lies in [s, -]. */
const EVENT_s = 30;
const EVENT_SHARE = 1e-3;
/** Share of the time to the first cleaning within which a second one means that cleaning does not help. */
const USELESS_SHARE = 0.02;
/** More events than this and the shop is not used but mended. */
const MOST_EVENTS = 2000;
/** So many cleanings within so many seconds are not done by anybody either. */
const OFTEN = 40;
const OFTEN_s = 2 * HOUR_s;

/**
 * Marches a shop through its running hours: steps whose length follows from their error, stopped where something comes
 * due, which is then cleaned.
 */
export function marchHours(
  hours: number,
  start: Float64Array,
  parts: { readonly rates: Rates; readonly layout: StateLayout; readonly usage: Usage },
): Marched {
  const { rates, layout, usage } = parts;
  const end_s = hours * HOUR_s;
  let now: Reached = { time_s: 0, state: start, moment: rates.at(start) };
  const watch = new Watch(layout, now.moment);
  const points: Reached[] = [now];
  const events: UpkeepEvent[] = [];
  const cleanings_s: number[] = [];
  let lastCleaned_h: number | null = null;
  let firstDue_h: number | null = null;
  let stopped: Marched['stopped'] = null;
  let step_s = end_s * LONGEST_STEP;

  /** Cleans; what cleaning does not mend is no longer watched. */
  const clean = (due: Condition): void => {
    const time_h = now.time_s / HOUR_s;
    events.push({ kind: due.kind, time_h, where: due.where, setting: due.setting });
    const since = lastCleaned_h === null ? Infinity : time_h - lastCleaned_h;
    firstDue_h ??= time_h;
    if (layout.layers.length === 0 || usage.cleaningRestores === 0 || since < USELESS_SHARE * firstDue_h) {
      watch.drop(due);
      return;
    }
    lastCleaned_h = time_h;
    cleanings_s.push(now.time_s);
    const state = now.state.slice();
    for (const { cake } of layout.layers) state[cake] = state[cake]! * (1 - usage.cleaningRestores);
    for (const { device } of layout.filters) {
      events.push({ kind: 'cleaned', time_h, where: device.thing.id, setting: null });
    }
    now = { time_s: now.time_s, state, moment: rates.at(state) };
    points.push(now);
    // what is due straight after cleaning is not mended by it
    for (
      let still = watch.next(now.moment);
      still !== null && still.margin < 0;
      still = watch.next(now.moment)
    ) {
      watch.drop(still);
    }
  };

  while (now.time_s < end_s * (1 - 1e-12)) {
    const due = watch.next(now.moment);
    if (due !== null && due.margin < 0) {
      const tooOften = now.time_s - (cleanings_s.at(-OFTEN) ?? -Infinity) < OFTEN_s;
      if (tooOften || events.length >= MOST_EVENTS) {
        stopped = {
          message: 'the filter asks to be cleaned more often than anybody would',
          remedy: 'give it more area, or a separator that catches more',
        };
        break;
      }
      clean(due);
      continue;
    }
    const h = Math.min(step_s, end_s - now.time_s);
    const tried = tryStep(now, h, rates);
    if ('failed' in tried) {
      step_s = h / 4;
      if (step_s > SHORTEST_STEP_s) continue;
      stopped = { message: tried.failed.message, remedy: tried.failed.remedy };
      break;
    }
    const size = errorSize(tried.error, tried.after.state, start);
    if (size > 1) {
      step_s = h * Math.max(0.2, 0.9 * size ** (-1 / 3));
      continue;
    }
    step_s = Math.min(end_s * LONGEST_STEP, h * Math.min(5, 0.9 * Math.max(size, 1e-9) ** (-1 / 3)));
    const next = watch.next(tried.after.moment);
    now = next !== null && next.margin < 0 ? findDue(now, tried.after, watch, rates) : tried.after;
    points.push(now);
  }
  return { points, events, stopped, watch };
}

/** One step, with what the shop does at its end; or why it has no solution on the way. */
function tryStep(
  now: Reached,
  h: number,
  rates: Rates,
): { readonly after: Reached; readonly error: Float64Array } | { readonly failed: NoFlow } {
  let moment = now.moment;
  try {
    const { state, error } = bogackiShampine(now.state, now.moment.rates, h, (at, isEnd) => {
      moment = rates.at(at, isEnd);
      return moment.rates;
    });
    return { after: { time_s: now.time_s + h, state, moment }, error };
  } catch (error) {
    if (error instanceof NoFlow) return { failed: error };
    throw error;
  }
}

/** Largest error over what is allowed; each number is measured against how far it has come. */
function errorSize(error: Float64Array, state: Float64Array, start: Float64Array): number {
  let size = 0;
  error.forEach((e, i) => {
    const scale = Math.abs(state[i]!) + Math.abs(start[i]!);
    if (scale > 0) size = Math.max(size, Math.abs(e) / (TOLERANCE * scale));
  });
  return size;
}

/** The moment inside a step at which something comes due, just past it, by halving and false position in turn. */
function findDue(before: Reached, after: Reached, watch: Watch, rates: Rates): Reached {
  const h = after.time_s - before.time_s;
  const ends = [before, after].map(({ state, moment }) => ({ state, rates: moment.rates }));
  const marginOf = ({ moment }: Reached) => watch.next(moment)?.margin ?? Infinity;
  let low = 0;
  let lowMargin = marginOf(before);
  let high = 1;
  let highMargin = marginOf(after);
  let found = after;
  const near = Math.min(EVENT_s / h, EVENT_SHARE);
  for (let i = 0; high - low > near && i < 60; i++) {
    const secant = low + ((high - low) * lowMargin) / (lowMargin - highMargin);
    // a little to either side of the secant in turn, so that both ends close in
    const nudge = (i % 2 === 0 ? 0.4 : -0.4) * near;
    const s = i % 4 === 3 ? (low + high) / 2 : Math.min(high, Math.max(low, secant + nudge));
    const state = insideStep(ends[0]!, ends[1]!, h, s);
    const at = { time_s: before.time_s + s * h, state, moment: rates.at(state) };
    const margin = marginOf(at);
    if (margin < 0) {
      high = s;
      highMargin = margin;
      found = at;
    } else {
      low = s;
      lowMargin = margin;
    }
  }
  return found;
}
