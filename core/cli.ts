import { parseArgs } from 'node:util';
import { chanceCommand } from './cli/chance.ts';
import { compareCommand } from './cli/compare.ts';
import { curveCommand } from './cli/curve.ts';
import { fanCommand } from './cli/fan.ts';
import { badDocument, done, fail, NO_SOLUTION, USAGE } from './cli/outcome.ts';
import type { Command, Options, Outcome } from './cli/outcome.ts';
import { printable } from './cli/printable.ts';
import { partsCommand } from './cli/parts.ts';
import { readText } from './cli/read-file.ts';
import { checkCommand, solveCommand } from './cli/solve.ts';
import { sourcesCommand } from './cli/sources.ts';
import { summaryCommand } from './cli/summary.ts';
import { upkeepCommand } from './cli/upkeep.ts';
import { readDocument } from './document/read.ts';
import type { ShopDocument } from './document/schema.ts';

export type { Outcome } from './cli/outcome.ts';

const HELP = `usage:
  book solve FILE [--setting NAME] [--units us|si] [--json]   flows, losses and whether chips will move
  book check FILE                                             read a document and say what is wrong with it
  book curve FILE --setting NAME [--fan ID] [--units us|si] [--json]   the system curve with its shares
  book chance FILE [--setting NAME] [--samples N] [--seed N] [--units us|si] [--json]   how likely every run holds
  book fan FILE [--fan ID] [--units us|si] [--json]           fans from their tests, with motor and rotor, side by side
  book fan FILE --fan ID --sheet [--units us|si]              a sheet to test that fan by, as a page to print
  book parts FILE [--units us|si] [--csv|--json]              what to buy, and how to cut it
  book upkeep FILE --hours N [--units us|si] [--json]         filter, bins, flow and electricity over running hours
  book sources FILE [--id ID] [--units us|si] [--json]        what every figure rests on; of one thing, run or piece
  book compare FILE FILE [--units us|si] [--json]             two documents side by side
  book summary FILE --out NAME.html|.pdf|.csv [--sections A,B] [--paper a4|letter] [--date YYYY-MM-DD]
               [--hours N] [--units us|si]                    the shop on paper; .csv is its parts list
exit: 0 solved, 1 usage, 2 bad document, 3 no solution
`;

const COMMANDS: Readonly<Record<string, Command>> = {
  solve: solveCommand,
  check: checkCommand,
  curve: curveCommand,
  chance: chanceCommand,
  fan: fanCommand,
  parts: partsCommand,
  upkeep: upkeepCommand,
  sources: sourcesCommand,
  summary: summaryCommand,
};
/** The one command of two files. */
const COMPARE = 'compare';

/** Runs one command; reads the files that it names and nothing else, and writes to the file of --out alone. */
export function runCommand(args: readonly string[]): Outcome {
  const { out, err, code } = carryOut(args);
  const written =
    /^[[{]/.test(out) && args.includes('--json') ? 'json' : args.includes('--csv') ? 'csv' : 'words';
  return { out: printable(out, written), err: printable(err), code };
}

function carryOut(args: readonly string[]): Outcome {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        setting: { type: 'string' },
        units: { type: 'string' },
        fan: { type: 'string' },
        id: { type: 'string' },
        samples: { type: 'string' },
        seed: { type: 'string' },
        hours: { type: 'string' },
        out: { type: 'string' },
        sections: { type: 'string' },
        paper: { type: 'string' },
        date: { type: 'string' },
        json: { type: 'boolean' },
        csv: { type: 'boolean' },
        sheet: { type: 'boolean' },
        help: { type: 'boolean' },
      },
    });
  } catch (cause) {
    return fail(USAGE, `${cause instanceof Error ? cause.message : String(cause)}\n${HELP}`);
  }
  const { values, positionals } = parsed;
  if (values.help) return done(HELP);
  const [name, file, ...rest] = positionals;
  const command = name !== undefined && Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (command === undefined && name !== COMPARE)
    return fail(USAGE, `${name === undefined ? 'name a command' : `no command is named "${name}"`}\n${HELP}`);
  if (file === undefined) return fail(USAGE, `${name!}: name a shop document\n${HELP}`);
  const [other, ...more] = command === undefined ? rest : [undefined, ...rest];
  if (command === undefined && other === undefined)
    return fail(USAGE, `${name!}: name a second shop document\n${HELP}`);
  if (more.length > 0) {
    const limit = command === undefined ? 'two files' : 'one file';
    return fail(USAGE, `${name!}: ${limit} at a time, "${more[0]!}" is too many\n${HELP}`);
  }
  const { units } = values;
  if (units !== undefined && units !== 'si' && units !== 'us') {
    return fail(USAGE, `--units is si or us, not "${units}"`);
  }
  const read = readShop(file, units);
  if ('code' in read) return read;
  const options: Options = {
    setting: values.setting,
    fan: values.fan,
    id: values.id,
    json: values.json ?? false,
    csv: values.csv ?? false,
    sheet: values.sheet ?? false,
    samples: values.samples,
    seed: values.seed,
    hours: values.hours,
    out: values.out,
    sections: values.sections,
    paper: values.paper,
    date: values.date,
    file,
  };
  if (command !== undefined) return command(read, options);
  const second = readShop(other!, units);
  return 'code' in second ? second : compareCommand(read, second, options, other!);
}

/** The document of a file, in the units asked for; an outcome where it cannot be read. */
function readShop(file: string, units: 'si' | 'us' | undefined): ShopDocument | Outcome {
  const text = readText(file);
  if (typeof text !== 'string') return text;
  const read = readDocument(text);
  if (!read.ok) return badDocument(file, read.problems);
  // findings are worded in the document's units, so the units asked for become those
  return { ...read.document, units: units ?? read.document.units };
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
