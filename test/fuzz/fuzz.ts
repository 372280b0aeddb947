import { rmSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { killSaves } from '../electron/killed-saves.ts';
import { bundleChild, failureText, tryTarget } from './runner.ts';
import { targetsIn } from './targets.ts';

// Long run of all doors, or of one: npm run fuzz [-- --minutes N --seed S --only TARGET]. Prints counts by target and by
// outcome; ends with 1 where anything failed. With --kills N it kills a program that saves instead.

const { values } = parseArgs({
  options: {
    minutes: { type: 'string', default: '2' },
    seed: { type: 'string' },
    only: { type: 'string' },
    kills: { type: 'string' },
  },
});

/** Time that one target is tried at a stretch [ms]. */
const STRETCH_ms = 8000;
const MOST_FAILURES = 20;

const say = (line: string): void => void process.stdout.write(`${line}\n`);

interface Tally {
  cases: number;
  slowest_ms: number;
  readonly outcomes: Map<string, number>;
}

async function run(minutes: number, seed: number, names: readonly string[]): Promise<boolean> {
  const child = await bundleChild();
  const tallies = new Map<string, Tally>(
    names.map((name) => [name, { cases: 0, slowest_ms: 0, outcomes: new Map() }]),
  );
  const until = Date.now() + minutes * 60_000;
  let failures = 0;
  say(`seed ${seed}, ${minutes} minutes, ${names.length} targets`);
  try {
    for (let round = 0; Date.now() < until && failures < MOST_FAILURES; round++) {
      for (const target of names) {
        if (Date.now() >= until) break;
        const order = { target, seed: (seed + round) | 0, runs: 1_000_000, time_ms: STRETCH_ms };
        const report = await tryTarget(child, order);
        const tally = tallies.get(target)!;
        tally.cases += report.cases;
        tally.slowest_ms = Math.max(tally.slowest_ms, report.slowest_ms);
        for (const [outcome, count] of Object.entries(report.outcomes))
          tally.outcomes.set(outcome, (tally.outcomes.get(outcome) ?? 0) + count);
        if (report.failure === null) continue;
        failures++;
        say(failureText(order, report));
      }
    }
  } finally {
    rmSync(child, { force: true });
  }
  for (const [name, { cases, slowest_ms, outcomes }] of tallies) {
    const counts = [...outcomes].sort((a, b) => b[1] - a[1]).map(([outcome, count]) => `${outcome} ${count}`);
    say(
      `${name.padEnd(16)} ${String(cases).padStart(8)} cases, slowest ${slowest_ms} ms: ${counts.join(', ')}`,
    );
  }
  const cases = [...tallies.values()].reduce((sum, tally) => sum + tally.cases, 0);
  say(`${cases} cases, ${failures} failures`);
  return failures === 0;
}

/** Kills a program that saves, so many times. */
async function kill(count: number, seed: number): Promise<boolean> {
  say(`seed ${seed}, ${count} kills`);
  const { withinWrites, edits, faults } = await killSaves(count, seed);
  faults.forEach(say);
  say(`${count} kills over ${edits} edits, ${withinWrites} within a write, ${faults.length} failures`);
  return faults.length === 0;
}

const all = Object.keys(targetsIn(''));
const names = values.only === undefined ? all : all.filter((name) => name === values.only);
if (names.length === 0) throw new Error(`--only is one of ${all.join(', ')}`);
const seed = values.seed === undefined ? Math.floor(Math.random() * 2 ** 31) : Number(values.seed);
const good =
  values.kills === undefined
    ? await run(Number(values.minutes), seed, names)
    : await kill(Number(values.kills), seed);
process.exitCode = good ? 0 : 1;
