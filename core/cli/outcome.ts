import { settingNames } from '../network/apply-setting.ts';
import type { DocumentProblem } from '../document/problem.ts';
import type { ShopDocument } from '../document/schema.ts';

export const SOLVED = 0;
export const USAGE = 1;
export const BAD_DOCUMENT = 2;
export const NO_SOLUTION = 3;

/** What a command leaves behind: text for either stream, and the exit code. */
export interface Outcome {
  readonly out: string;
  readonly err: string;
  readonly code: number;
}

/** Options as they were typed; texts of numbers are not read yet. */
export interface Options {
  readonly setting: string | undefined;
  readonly fan: string | undefined;
  /** Thing, run or piece that is asked about. */
  readonly id: string | undefined;
  readonly json: boolean;
  readonly csv: boolean;
  /** A sheet to print in the place of results. */
  readonly sheet: boolean;
  readonly samples: string | undefined;
  readonly seed: string | undefined;
  readonly hours: string | undefined;
  readonly out: string | undefined;
  readonly sections: string | undefined;
  readonly paper: string | undefined;
  readonly date: string | undefined;
  /** Name of the first file, for messages. */
  readonly file: string;
}

export type Command = (document: ShopDocument, options: Options) => Outcome;

export const done = (out: string): Outcome => ({ out, err: '', code: SOLVED });

export const fail = (code: number, err: string, out = ''): Outcome => ({
  out,
  err: `${err.trimEnd()}\n`,
  code,
});

export const badDocument = (file: string, problems: readonly DocumentProblem[]): Outcome =>
  fail(BAD_DOCUMENT, `${file}:\n${problemText(problems)}`);

/** Most problems that are listed one by one. */
const MOST_PROBLEMS = 20;

function problemText(problems: readonly DocumentProblem[]): string {
  const shown = problems.slice(0, MOST_PROBLEMS).map((p) => `${p.message}\n  remedy: ${p.remedy}`);
  const left = problems.length - MOST_PROBLEMS;
  return [...shown, ...(left > 0 ? [`and ${left} more`] : [])].join('\n');
}

/** An outcome where a setting is asked for that the document does not have. */
export function unknownSetting(
  command: string,
  document: ShopDocument,
  setting: string | undefined,
): Outcome | null {
  const names = settingNames(document);
  if (setting === undefined || names.includes(setting)) return null;
  const choice = names.map((name) => `"${name}"`).join(', ');
  return fail(USAGE, `${command}: no setting is named "${setting}"\n  remedy: name one of ${choice}`);
}

/** A whole number of an option; undefined where it is not given, an outcome where it is none. */
export function wholeNumber(
  option: string,
  text: string | undefined,
  least: number,
  most: number,
): number | undefined | Outcome {
  if (text === undefined) return undefined;
  const value = /^\d+$/.test(text) ? Number(text) : NaN;
  if (value >= least && value <= most) return value;
  return fail(USAGE, `--${option} is a whole number from ${least} to ${most}, not "${text}"`);
}
