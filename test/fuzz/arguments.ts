import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { runCommand } from '../../core/cli.ts';
import { EXAMPLES } from '../../core/examples/index.ts';
import { keys, strings } from './hostile.ts';
import { brokenExamples, brokenTexts, otherFigures } from './mutations.ts';
import { must } from './target.ts';

const COMMANDS = [
  'solve',
  'check',
  'curve',
  'chance',
  'fan',
  'parts',
  'upkeep',
  'compare',
  'summary',
] as const;

/** Stands for the folder that the run writes to. */
const HERE = '<here>';
const FILES = [
  ...Object.keys(EXAMPLES).map((id) => `${HERE}/${id}.json`),
  `${HERE}/given.json`,
  `${HERE}/empty.json`,
  `${HERE}/none.json`,
  `${HERE}`,
  `${HERE}/latin1.json`,
  '/dev/null',
  '/dev/zero',
  '/dev/full',
  '\0',
  '-',
  '--',
];
const OUTS = [
  `${HERE}/out.html`,
  `${HERE}/out.csv`,
  `${HERE}/out.pdf`,
  `${HERE}/none/out.html`,
  `${HERE}/a b'c"d\n木工房 план 🪵.html`,
  `${HERE}/${'n'.repeat(240)}.html`,
  `${HERE}/${'n'.repeat(300)}.html`,
  `${HERE}/folder.html`,
  `${HERE}/one-router.json`,
  '/dev/full',
  '\0.html',
];

const files = fc.oneof(
  { weight: 8, arbitrary: fc.constantFrom(...FILES) },
  { weight: 1, arbitrary: strings.filter((text) => !text.startsWith('/')) },
);
const odd = fc.oneof(strings, keys);
const option = fc.oneof(
  fc.tuple(fc.constant('--setting'), fc.oneof(fc.constantFrom('open', 'all'), odd)),
  fc.tuple(fc.constant('--units'), fc.oneof(fc.constantFrom('si', 'us'), odd)),
  fc.tuple(fc.constant('--fan'), fc.oneof(fc.constantFrom('F1', 'fan'), odd)),
  fc.tuple(fc.constant('--samples'), fc.oneof(fc.constantFrom('10', '20', '1e3', '0', '-5'), odd)),
  fc.tuple(fc.constant('--seed'), fc.oneof(fc.constantFrom('1', '1e99'), odd)),
  fc.tuple(fc.constant('--hours'), fc.oneof(fc.constantFrom('1', '8.5', '1e9', '-1', 'NaN'), odd)),
  fc.tuple(fc.constant('--out'), fc.constantFrom(...OUTS)),
  fc.tuple(fc.constant('--sections'), fc.oneof(fc.constantFrom('parts', 'job,plan', ',,'), odd)),
  fc.tuple(fc.constant('--paper'), fc.oneof(fc.constantFrom('a4', 'letter'), odd)),
  fc.tuple(fc.constant('--date'), fc.oneof(fc.constantFrom('2024-02-30', '2024-05-01', '9999-99-99'), odd)),
  fc.constantFrom(
    ['--json'],
    ['--csv'],
    ['--sheet'],
    ['--help'],
    ['--__proto__'],
    ['--toString=1'],
    ['--no-json'],
  ),
  fc.tuple(odd),
);

export interface Line {
  readonly words: readonly string[];
  /** What lies in the file `given.json`. */
  readonly text: string;
}

export const lines: fc.Arbitrary<Line> = fc.record({
  words: fc
    .tuple(
      fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...COMMANDS) }, { weight: 1, arbitrary: odd }),
      fc.array(files, { minLength: 0, maxLength: 2 }),
      fc.array(option, { maxLength: 4 }),
    )
    .map(([command, names, options]) => [command, ...names, ...options.flat()]),
  text: fc.oneof(otherFigures, brokenExamples, brokenTexts),
});

/** Folder of the process's own, with the files that lines name. */
function fill(folder: string): void {
  mkdirSync(join(folder, 'folder.html'), { recursive: true });
  for (const [id, file] of Object.entries(EXAMPLES))
    writeFileSync(join(folder, `${id}.json`), JSON.stringify(file));
  writeFileSync(join(folder, 'empty.json'), '');
  writeFileSync(join(folder, 'latin1.json'), Buffer.from([0x7b, 0xe9, 0xff, 0x7d]));
}

/** What a terminal would take for an order: control characters but ends of lines and tabs. */
const ORDERS = /[\0-\x08\x0b-\x1f\x7f-\x9f]/;

/** Runs lines of the command line in a folder: each ends with a code and words, and writes the file of --out alone. */
export function commandRunner(folder: string): (line: Line) => string {
  // so that no browser is started for every other line
  process.env['CHIPDRAFT_CHROMIUM'] = join(folder, 'no-browser');
  return ({ words, text }) => {
    fill(folder);
    writeFileSync(join(folder, 'given.json'), text);
    const outcome = runCommand(words.map((word) => word.replaceAll(HERE, folder)));
    must([0, 1, 2, 3].includes(outcome.code), `code ${outcome.code}`);
    must(
      outcome.code === 0 ? outcome.err === '' : outcome.err.trim() !== '',
      `code ${outcome.code}: ${outcome.err}`,
    );
    must(!/\n\s+at .*:\d+:\d+|node:internal/.test(outcome.err), 'a stack trace');
    const shown =
      outcome.code === 0 && words.includes('--csv') ? outcome.out.replaceAll('\r\n', '\n') : outcome.out;
    must(!ORDERS.test(shown + outcome.err), 'a terminal would take the text for an order');
    const strays = readdirSync(folder).filter((name) => name.includes('.tmp'));
    must(strays.length === 0, `left behind: ${strays.join(' ')}`);
    return `exit ${outcome.code}`;
  };
}
