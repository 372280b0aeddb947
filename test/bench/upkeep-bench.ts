import { readFileSync } from 'node:fs';
import { readDocument } from '../../core/document/read.ts';
import { openShop, solveSetting } from '../../core/network/solve.ts';
import { settingNames } from '../../core/network/apply-setting.ts';
import { upkeep } from '../../core/upkeep/upkeep.ts';

const HOURS = 2000;
/** Rounds that warm the compiler up, and rounds that count. */
const WARM_UP = 3;
const ROUNDS = 7;
/** What the hours of the five machines may take [ms]. */
const MOST_ms = 1000;

/** Two thousand hours of the five machines, cleanings and all; and how many solves of all settings take as long. */
export function upkeepBench(): void {
  const read = readDocument(readFileSync('core/examples/five-machines.json', 'utf8'));
  if (!read.ok) throw new Error('five-machines cannot be read');
  const { document } = read;
  const taken: number[] = [];
  let solves = 0;
  for (let i = 0; i < WARM_UP + ROUNDS; i++) {
    const start = performance.now();
    const outcome = upkeep(document, HOURS);
    if (!outcome.ok) throw new Error('five-machines has no upkeep');
    ({ solves } = outcome.result);
    taken.push(performance.now() - start);
  }
  const opened = openShop(document);
  if (!opened.ok) throw new Error('five-machines cannot be opened');
  const names = settingNames(document);
  const all = () => names.forEach((name) => solveSetting(opened.bench, name));
  for (let i = 0; i < 50; i++) all();
  const start = performance.now();
  for (let i = 0; i < 50; i++) all();
  const each_ms = (performance.now() - start) / 50;
  const counted = taken.slice(WARM_UP).sort((a, b) => a - b);
  const median = counted[ROUNDS >> 1]!;
  console.log(`\n${HOURS} running hours of five machines: ${solves} solves of a setting`);
  console.log(
    `  median ${median.toFixed(0)} ms, least ${counted[0]!.toFixed(0)}, first ${taken[0]!.toFixed(0)}; ` +
      `as long as ${(median / each_ms).toFixed(0)} solves of all settings for the screen`,
  );
  if (!(counted[0]! < MOST_ms)) throw new Error(`the hours took more than ${MOST_ms} ms`);
}
