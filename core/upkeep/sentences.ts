import type { UpkeepEvent, UpkeepResult } from './result.ts';

const hours = (h: number): string => (h < 10 ? h.toFixed(1) : h.toFixed(0));

/** When something comes due, in words. */
export function dueText(event: UpkeepEvent): string {
  const when = event.time_h === 0 ? 'now' : `after ${hours(event.time_h)} running hours`;
  const setting = event.setting === null ? '' : ` in "${event.setting}"`;
  switch (event.kind) {
    case 'run-lost':
      return `${when} run ${event.where} loses what it needs${setting}`;
    case 'filter-limit':
      return `${when} ${event.where} reaches the drop at which it is cleaned${setting}`;
    case 'cleaned':
      return `${when} ${event.where} is cleaned`;
  }
}

const capital = (text: string) => `${text[0]!.toUpperCase()}${text.slice(1)}.`;

/** What a person takes home from the march. */
export function upkeepSentences(result: Omit<UpkeepResult, 'sentences'>): string[] {
  const { firstClean, binsFull, totals, stopped, reached_h } = result;
  const said: string[] = [];
  if (firstClean !== null) {
    const times = new Set(result.events.filter(({ kind }) => kind === 'cleaned').map(({ time_h }) => time_h))
      .size;
    said.push(
      `${capital(dueText(firstClean))} Clean the filter by then; ${timesText(times)} in these hours.`,
    );
  } else if (totals.filtered.length > 0) {
    said.push(`The filter need not be cleaned within ${hours(reached_h)} running hours.`);
  }
  for (const { id, first_h, times } of binsFull) {
    said.push(
      `The bin of ${id} is full after ${hours(first_h)} running hours, ${timesText(times)} in these hours.`,
    );
  }
  if (totals.made_kg > 0) {
    const share = totals.passed_kg / totals.made_kg;
    said.push(
      `Of ${totals.made_kg.toPrecision(3)} kg of dust, ${(totals.passed_kg * 1000).toPrecision(2)} g (${(100 * share).toPrecision(2)} %) goes through; the finest does the most harm.`,
    );
  } else said.push('No port is given any dust: give a cut or a dust rate, and it is followed.');
  if (stopped !== null) said.push(`Stopped after ${hours(reached_h)} hours: ${stopped.message}.`);
  return said;
}

const timesText = (times: number) => (times === 1 ? 'once' : times === 2 ? 'twice' : `${times} times`);
