import { readFileSync } from 'node:fs';
import { howLikely } from '../../core/chance/holds.ts';
import { readDocument } from '../../core/document/read.ts';
import { openShop, solveSetting } from '../../core/network/solve.ts';
import type { Workbench } from '../../core/network/solve.ts';
import { settingNames } from '../../core/network/apply-setting.ts';

const EXAMPLES = ['one-router', 'five-machines', 'bench-line'];
const SAMPLES = 1000;
/** Rounds that warm the compiler up, and rounds that count. */
const WARM_UP = 20;
const ROUNDS = 40;
/** What a thousand samples of the first may take [ms]. */
const MOST_ms = 100;

function benchOf(id: string): Workbench {
  const read = readDocument(readFileSync(`core/examples/${id}.json`, 'utf8'));
  if (!read.ok) throw new Error(`${id} cannot be read`);
  const opened = openShop(read.document);
  if (!opened.ok) throw new Error(`${id} cannot be opened`);
  return opened.bench;
}

/** Time of one round on the wall and on the processor: the second is what a loaded machine leaves comparable. */
function rounds(work: (round: number) => void) {
  const taken: number[] = [];
  const processor = process.cpuUsage();
  for (let i = 0; i < ROUNDS; i++) {
    const start = performance.now();
    work(i);
    taken.push(performance.now() - start);
  }
  const { user, system } = process.cpuUsage(processor);
  taken.sort((a, b) => a - b);
  return {
    median_ms: taken[ROUNDS >> 1]!,
    least_ms: taken[0]!,
    processor_ms: (user + system) / 1e3 / ROUNDS,
  };
}

/**
 * A thousand samples of each example's first setting from its bench, all told: draws, full solves, bands, shares; and
 * how many warm solves for the screen (`solveSetting`, with dust by every model, results and findings) take as long.
 */
export function chanceBench(): void {
  console.log(`\nhow likely it holds, ${SAMPLES} samples`);
  for (const id of EXAMPLES) {
    const bench = benchOf(id);
    const setting = settingNames(bench.shop.document)[0]!;
    const first = performance.now();
    howLikely(bench, { setting, samples: SAMPLES });
    const first_ms = performance.now() - first;
    for (let i = 0; i < WARM_UP; i++) howLikely(bench, { setting, samples: SAMPLES, seed: i });
    for (let i = 0; i < 300; i++) solveSetting(bench, setting);
    const all = rounds((i) => howLikely(bench, { setting, samples: SAMPLES, seed: i }));
    const solve = rounds(() => {
      for (let k = 0; k < 20; k++) solveSetting(bench, setting);
    });
    const { median_ms, least_ms: least, processor_ms } = all;
    console.log(
      `  ${id.padEnd(14)} median ${median_ms.toFixed(1)} ms, least ${least.toFixed(1)}, of the processor ${processor_ms.toFixed(1)}; ` +
        `the first time ${first_ms.toFixed(0)}; as ${((20 * processor_ms) / solve.processor_ms).toFixed(0)} solves for the screen`,
    );
    if (id === EXAMPLES[0] && least > MOST_ms)
      throw new Error(`${SAMPLES} samples took ${least.toFixed(0)} ms`);
  }
}
