import { spawnSync } from 'node:child_process';

// From the call to the end of a solve, as a person who types it waits; beside it the engine alone, which nothing can beat.

const TIMES = 15;
const SOLVE = ['build/scripts/book.mjs', 'solve', 'core/examples/one-router.json'];

function median_ms(args: readonly string[]): number {
  const taken = Array.from({ length: TIMES + 2 }, () => {
    const before = performance.now();
    const { status } = spawnSync(process.execPath, [...args], { stdio: 'ignore' });
    if (status !== 0) throw new Error(`node ${args.join(' ')} ends with ${status}`);
    return performance.now() - before;
  });
  // the first makes the bundle, the second keeps what was compiled
  return taken.slice(2).sort((a, b) => a - b)[TIMES >> 1]!;
}

/** How long the command line takes over one small shop. */
export function startBench(): void {
  const alone = median_ms(['-e', '0']);
  const solve = median_ms(SOLVE);
  console.log('\ncommand line, one small shop solved and printed');
  console.log(
    `  median ${solve.toFixed(0)} ms, node alone ${alone.toFixed(0)} ms: ${(solve / alone).toFixed(1)} times that`,
  );
}
