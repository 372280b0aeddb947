import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { howLikely, LEAST_SAMPLES, MOST_SAMPLES } from './chance/holds.ts';
import { SEEDS } from './chance/random.ts';
import { benchFan } from './fan-bench/bench.ts';
import { compareFans } from './fan-bench/compare.ts';
import { settingNames } from './network/apply-setting.ts';
import type { DocumentProblem } from './document/problem.ts';
import { readDocument } from './document/read.ts';
import type { ShopDocument } from './document/schema.ts';
import { openShop, solve } from './network/solve.ts';
import { systemCurve } from './network/system-curve.ts';
import { chanceText } from './summary/chance-text.ts';
import { curveText } from './summary/curve-text.ts';
import { fanText } from './summary/fan-text.ts';
import { ledgerText } from './summary/ledger-text.ts';
import { testSheet } from './summary/test-sheet.ts';

const SOLVED = 0;
const USAGE = 1;
const BAD_DOCUMENT = 2;
const NO_SOLUTION = 3;

const HELP = `usage:
  book solve FILE [--setting NAME] [--units us|si] [--json]   flows, losses and whether chips will move
  book check FILE                                             read a document and say what is wrong with it
  book curve FILE --setting NAME [--fan ID] [--units us|si] [--json]   the system curve with its shares
  book chance FILE [--setting NAME] [--samples N] [--seed N] [--units us|si] [--json]   how likely every run holds
  book fan FILE [--fan ID] [--units us|si] [--json]           fans from their tests, with motor and rotor, side by side
  book fan FILE --fan ID --sheet [--units us|si]              a sheet to test that fan by, as a page to print
exit: 0 solved, 1 usage, 2 bad document, 3 no solution
`;

/** What a command leaves behind: text for either stream, and the exit code. */
export interface Outcome {
  readonly out: string;
  readonly err: string;
  readonly code: number;
}

const fail = (code: number, err: string, out = ''): Outcome => ({ out, err: `${err.trimEnd()}\n`, code });

interface Options {
  readonly setting: string | undefined;
  readonly fan: string | undefined;
  readonly json: boolean;
  /** A sheet to print in the place of results. */
  readonly sheet: boolean;
  /** Text of a whole number, not read yet. */
  readonly samples: string | undefined;
  readonly seed: string | undefined;
  /** Name of the file, for messages. */
  readonly file: string;
}

const COMMANDS: Readonly<Record<string, (document: ShopDocument, options: Options) => Outcome>> = {
  solve: (document, { setting, json, file }) => {
    const unknown = unknownSetting('solve', document, setting);
    if (unknown !== null) return unknown;
    const solved = solve(document, setting ?? null);
    if (!solved.ok) return badDocument(file, solved.problems);
    const { solution } = solved;
    const out = json ? `${JSON.stringify(solution, null, 2)}\n` : ledgerText(solution, document.units);
    const unsolved = solution.settings.filter((s) => !s.converged);
    if (unsolved.length === 0) return { out, err: '', code: SOLVED };
    const err = unsolved
      .map(
        (s) =>
          `${file}: no solution in setting "${s.name}": ${s.reasonText ?? ''}\n  remedy: ${s.findings[0]?.remedy ?? ''}`,
      )
      .join('\n');
    return fail(NO_SOLUTION, err, out);
  },
  fan: (document, { fan, json, sheet, file }) => {
    const ids = document.fans.map(({ id }) => id);
    if (ids.length === 0)
      return fail(NO_SOLUTION, `${file}: the document has no fans to test\n  remedy: add one to "fans"`);
    if (fan !== undefined && !ids.includes(fan))
      return fail(USAGE, `fan: no fan of the list is called "${fan}"; there are ${ids.join(', ')}`);
    const { units } = document;
    if (sheet) {
      if (fan === undefined) return fail(USAGE, 'fan: name the fan of the sheet with --fan ID');
      const paper = units === 'us' ? 'letter' : 'a4';
      return { out: testSheet(document, fan, { units, paper }), err: '', code: SOLVED };
    }
    const results = (fan === undefined ? ids : [fan]).map((id) => benchFan(document, id));
    const solvable = document.things.length > 0 && openShop(document).ok;
    const comparison = compareFans(document, settingNames(document)[0]!, solvable);
    const out = json
      ? `${JSON.stringify({ document: document.name, fans: results, comparison }, null, 2)}\n`
      : fanText(document.name, results, comparison, units);
    const without = results.filter(({ curve }) => curve === null);
    if (without.length === 0) return { out, err: '', code: SOLVED };
    const err = without.map(({ id, findings }) => {
      const why = findings.find(({ code }) => code === 'fan-no-curve');
      return `${file}: fan "${id}": ${why?.message ?? 'no curve'}\n  remedy: ${why?.remedy ?? 'correct its readings'}`;
    });
    return fail(NO_SOLUTION, err.join('\n'), out);
  },
  check: (document, { file }) => {
    const opened = openShop(document);
    if (!opened.ok) return badDocument(file, opened.problems);
    const names = settingNames(document).map((name) => `"${name}"`);
    const out = `"${document.name}" is in order: ${document.things.length} things, ${document.runs.length} runs, settings ${names.join(', ')}\n`;
    return { out, err: '', code: SOLVED };
  },
  curve: (document, { setting, fan, json, file }) => {
    if (setting === undefined) return fail(USAGE, 'curve: name a setting with --setting NAME');
    const unknown = unknownSetting('curve', document, setting);
    if (unknown !== null) return unknown;
    const opened = openShop(document);
    if (!opened.ok) return badDocument(file, opened.problems);
    const fans = opened.bench.shop.fans.map((f) => f.thing.id);
    if (fans.length === 0)
      return fail(NO_SOLUTION, `${file}: the shop has no fan to sweep\n  remedy: draw a fan`);
    if (fan !== undefined && !fans.includes(fan)) {
      return fail(USAGE, `curve: no fan is named "${fan}"; there are ${fans.join(', ')}`);
    }
    const curve = systemCurve(opened.bench, setting, fan ?? fans[0]!);
    const out = json ? `${JSON.stringify(curve, null, 2)}\n` : curveText(curve, document.units);
    if (curve.points.length === 0) {
      const err = `${file}: no system curve in setting "${setting}": ${curve.reason ?? ''}`;
      return fail(NO_SOLUTION, `${err}\n  remedy: open a gate on the way of the fan`, out);
    }
    return { out, err: '', code: SOLVED };
  },
  chance: (document, { setting, json, file, ...numbers }) => {
    const unknown = unknownSetting('chance', document, setting);
    if (unknown !== null) return unknown;
    const samples = wholeNumber('samples', numbers.samples, LEAST_SAMPLES, MOST_SAMPLES);
    const seed = wholeNumber('seed', numbers.seed, 0, SEEDS - 1);
    if (typeof samples === 'object') return samples;
    if (typeof seed === 'object') return seed;
    const opened = openShop(document);
    if (!opened.ok) return badDocument(file, opened.problems);
    const options = {
      ...(samples === undefined ? {} : { samples }),
      ...(seed === undefined ? {} : { seed }),
    };
    const names = setting === undefined ? settingNames(document) : [setting];
    const chances = names.map((name) => howLikely(opened.bench, { ...options, setting: name }));
    const out = json ? `${JSON.stringify(chances, null, 2)}\n` : chanceText(chances, document.units);
    const unsolved = chances.filter((chance) => !chance.converged);
    if (unsolved.length === 0) return { out, err: '', code: SOLVED };
    const err = unsolved
      .map((c) => `${file}: no solution in setting "${c.setting}": ${c.reasonText ?? ''}`)
      .join('\n');
    return fail(NO_SOLUTION, `${err}\n  remedy: see \`book solve\` for what would mend it`, out);
  },
};

/** A whole number of an option; undefined where it is not given, an outcome where it is none. */
function wholeNumber(
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

const badDocument = (file: string, problems: readonly DocumentProblem[]): Outcome =>
  fail(BAD_DOCUMENT, `${file}:\n${problemText(problems)}`);

function unknownSetting(
  command: string,
  document: ShopDocument,
  setting: string | undefined,
): Outcome | null {
  const names = settingNames(document);
  if (setting === undefined || names.includes(setting)) return null;
  const choice = names.map((name) => `"${name}"`).join(', ');
  return fail(USAGE, `${command}: no setting is named "${setting}"\n  remedy: name one of ${choice}`);
}

function problemText(problems: readonly DocumentProblem[]): string {
  const shown = problems.slice(0, 20).map((p) => `${p.message}\n  remedy: ${p.remedy}`);
  const more = problems.length > 20 ? [`and ${problems.length - 20} more`] : [];
  return [...shown, ...more].join('\n');
}

/** Runs one command; reads the file that it names and nothing else, and writes nowhere. */
export function runCommand(args: readonly string[]): Outcome {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        setting: { type: 'string' },
        units: { type: 'string' },
        fan: { type: 'string' },
        samples: { type: 'string' },
        seed: { type: 'string' },
        json: { type: 'boolean' },
        sheet: { type: 'boolean' },
        help: { type: 'boolean' },
      },
    });
  } catch (cause) {
    return fail(USAGE, `${cause instanceof Error ? cause.message : String(cause)}\n${HELP}`);
  }
  const { values, positionals } = parsed;
  if (values.help) return { out: HELP, err: '', code: SOLVED };
  const [name, file, ...rest] = positionals;
  const command = name !== undefined && Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (command === undefined)
    return fail(USAGE, `${name === undefined ? 'name a command' : `no command is named "${name}"`}\n${HELP}`);
  if (file === undefined) return fail(USAGE, `${name}: name a shop document\n${HELP}`);
  if (rest.length > 0) return fail(USAGE, `${name}: one file at a time, "${rest[0]!}" is too many\n${HELP}`);
  const { units } = values;
  if (units !== undefined && units !== 'si' && units !== 'us') {
    return fail(USAGE, `--units is si or us, not "${units}"`);
  }
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch (cause) {
    const code = cause instanceof Error && 'code' in cause ? String(cause.code) : 'unknown reason';
    return fail(
      BAD_DOCUMENT,
      `${file}: cannot be read (${code})\n  remedy: check the name and that you may read it`,
    );
  }
  const read = readDocument(text);
  if (!read.ok) return badDocument(file, read.problems);
  // findings are worded in the document's units, so the units asked for become those
  const document = { ...read.document, units: units ?? read.document.units };
  return command(document, {
    setting: values.setting,
    fan: values.fan,
    json: values.json ?? false,
    sheet: values.sheet ?? false,
    samples: values.samples,
    seed: values.seed,
    file,
  });
}

/** The program: prints what a command leaves, and never a stack trace. */
export function main(args: readonly string[]): void {
  let outcome: Outcome;
  try {
    outcome = runCommand(args);
  } catch (cause) {
    const what = cause instanceof Error ? cause.message : String(cause);
    outcome = fail(
      NO_SOLUTION,
      `Chipdraft met a fault of its own: ${what}\n  remedy: please report it with the document`,
    );
  }
  // the code is set rather than forced, so that a long output reaches a pipe whole
  process.stdout.on('error', () => process.exit(outcome.code));
  process.stdout.write(outcome.out);
  process.stderr.write(outcome.err);
  process.exitCode = outcome.code;
}
