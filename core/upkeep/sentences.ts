import type { UnitSystem } from '../quantities/dimensions.ts';
import { printQuantity } from '../quantities/print.ts';
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

/** A share that is small beyond use is said to be so. */
const percent = (share: number) =>
  share < 1e-6 ? 'less than 0.0001 %' : `${Number((100 * share).toPrecision(2))} %`;

/** What a person takes home from the march, masses in the units asked for. */
export function upkeepSentences(result: Omit<UpkeepResult, 'sentences'>, units: UnitSystem): string[] {
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
    const mass = (kg: number) => printQuantity(kg, 'mass', units);
    said.push(
      `Of ${mass(totals.made_kg)} of dust, ${mass(totals.passed_kg)} (${percent(totals.passed_kg / totals.made_kg)}) goes through; the finest does the most harm.`,
    );
  } else said.push('No port is given any dust: give a cut or a dust rate, and it is followed.');
  if (stopped !== null) said.push(`Stopped after ${hours(reached_h)} hours: ${stopped.message}.`);
  return said;
}

const timesText = (times: number) => (times === 1 ? 'once' : times === 2 ? 'twice' : `${times} times`);
