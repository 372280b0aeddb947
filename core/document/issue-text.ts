import type * as z from 'zod';
import { shorten } from '../quantities/quantity-error.ts';
import type { DocumentProblem } from './problem.ts';
import { nameOf, pathText } from './problem.ts';

type Issue = z.core.$ZodIssue;

/** A value of the file as a person would name it. */
export function shown(value: unknown): string {
  if (typeof value === 'string') return value === '' ? 'an empty text' : `"${shorten(value)}"`;
  if (Array.isArray(value)) return 'a list [ ]';
  if (typeof value === 'object' && value !== null) return 'a group of fields { }';
  return String(value);
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a finite number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'a group of fields { }',
  record: 'a group of fields { }',
  array: 'a list [ ]',
};

const COUNTED: Readonly<Record<string, string>> = { string: 'characters', array: 'entries' };

const listed = (values: readonly unknown[]) => values.map((value) => `"${String(value)}"`).join(', ');

/** What a value that is there breaks, and what would mend it. */
interface Fault {
  readonly what: string;
  readonly remedy: string;
}

const WORDS: { readonly [C in Issue['code']]?: (issue: Extract<Issue, { code: C }>) => Fault } = {
  invalid_type: (issue) => {
    const wanted = TYPE_WORDS[issue.expected] ?? 'something else';
    return { what: `${shown(issue.input)} stands where ${wanted} is meant`, remedy: `write ${wanted}` };
  },
  invalid_value: (issue) => ({
    what: `${shown(issue.input)} is not one of ${listed(issue.values)}`,
    remedy: 'choose one of these',
  }),
  too_big: (issue) => sized(issue.origin, issue.input, `at most ${String(issue.maximum)}`, issue.message),
  too_small: (issue) => sized(issue.origin, issue.input, `at least ${String(issue.minimum)}`, issue.message),
  invalid_format: (issue) => ({
    what: `${shown(issue.input)} cannot stand here: ${issue.message}`,
    remedy: 'choose another name',
  }),
  // a number, a text or both: the message says what fits
  invalid_union: (issue) => ({
    what: `${shown(issue.input)} is not understood; ${issue.message}`,
    remedy: 'write a number in SI units, or a text with its unit',
  }),
};

function sized(origin: string, input: unknown, bound: string, message: string): Fault {
  const unit = COUNTED[origin];
  // a message of the schema's own stands before the general one
  if (unit === undefined || !message.startsWith('Too '))
    return { what: message, remedy: 'correct the value' };
  const length = typeof input === 'string' || Array.isArray(input) ? input.length : 0;
  if (length === 0) return { what: 'is empty', remedy: `give ${bound} ${unit}` };
  const start = typeof input === 'string' ? `${shown(input)} has` : 'has';
  return { what: `${start} ${length} ${unit}, ${bound} can be read`, remedy: `give ${bound}` };
}

/** Turns what the schema refuses into a problem in plain words: where, what was typed, what would mend it. */
export function issueProblem(issue: Issue, raw: unknown): DocumentProblem {
  const path = pathText(raw, issue.path);
  const place = path === '' ? 'the document' : path;
  const say = ({ what, remedy }: Fault): DocumentProblem => ({ path, message: `${place}: ${what}`, remedy });

  if (issue.code === 'unrecognized_keys') {
    const keys = issue.keys.map((key) => `"${shorten(key)}"`).join(', ');
    return say({ what: `unknown field ${keys}`, remedy: 'remove it, or correct its spelling' });
  }
  if (issue.code === 'invalid_key') {
    const inner = issue.issues[0];
    if (inner) return { ...issueProblem({ ...inner, path: issue.path }, raw), path };
  }
  const kinds =
    issue.code === 'invalid_union' && 'options' in issue && Array.isArray(issue.options)
      ? issue.options
      : null;
  const given: unknown = kinds === null ? issue.input : valueAt(raw, issue.path);
  if (given === undefined) {
    const choice = kinds === null ? '' : `, one of ${listed(kinds)}`;
    return say({ what: 'is missing', remedy: `give ${nameOf(issue.path)}${choice}` });
  }
  if (kinds !== null) {
    return say({ what: `${shown(given)} is not one of ${listed(kinds)}`, remedy: 'choose one of these' });
  }
  const words = WORDS[issue.code] as ((issue: Issue) => Fault) | undefined;
  return say(words?.(issue) ?? { what: `${shown(given)} cannot be read`, remedy: 'correct the value' });
}

function valueAt(raw: unknown, path: readonly PropertyKey[]): unknown {
  let value = raw;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}
