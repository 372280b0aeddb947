import { MOST_HOURS } from '../upkeep/hours.ts';
import { upkeep } from '../upkeep/upkeep.ts';
import { upkeepText } from '../summary/upkeep-text.ts';
import { badDocument, done, fail, NO_SOLUTION, USAGE } from './outcome.ts';
import type { Command, Outcome } from './outcome.ts';

/** Hours of an option; an outcome where it is no such number. */
export function hoursOf(command: string, text: string | undefined): number | undefined | Outcome {
  if (text === undefined) return undefined;
  const value = /^\d+(\.\d+)?$/.test(text) ? Number(text) : NaN;
  if (value > 0 && value <= MOST_HOURS) return value;
  return fail(USAGE, `${command}: --hours is a number above 0 and up to ${MOST_HOURS}, not "${text}"`);
}

/** What happens over running hours. */
export const upkeepCommand: Command = (document, { hours: text, json, file }) => {
  const hours = hoursOf('upkeep', text);
  if (typeof hours === 'object') return hours;
  if (hours === undefined) return fail(USAGE, 'upkeep: say how many running hours with --hours N');
  const outcome = upkeep(document, hours);
  if (!outcome.ok) return badDocument(file, outcome.problems);
  const { result } = outcome;
  const money = document.parts?.money ?? null;
  const out = json ? `${JSON.stringify(result, null, 2)}\n` : upkeepText(result, document.units, money);
  const { stopped } = result;
  if (stopped === null) return done(out);
  return fail(NO_SOLUTION, `${file}: ${stopped.message}\n  remedy: ${stopped.remedy}`, out);
};
