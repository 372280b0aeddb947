// Runs the tests of test/reference and writes what they measured to its README.md. Nothing is written if one fails.
// Usage: npm run checks                measures all
//        npm run checks -- elbow air   measures these test files anew and keeps what was measured of the others
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const into = fileURLToPath(new URL('../../node_modules/.cache/checks', import.meta.url));
const only = process.argv.slice(2).map((name) => `test/reference/${name}.test.ts`);
if (only.length === 0) rmSync(into, { recursive: true, force: true });

/** Runs Node and ends with its exit code if that is not 0. */
function run(args, env) {
  const { status } = spawnSync(process.execPath, args, {
    cwd: root,
    env: { ...process.env, ...env },
    stdio: 'inherit',
  });
  if (status !== 0) process.exit(status ?? 1);
}

const vitest = ['node_modules/vitest/vitest.mjs', 'run', '--config', 'build/config/vitest.config.ts'];
run([...vitest, ...(only.length > 0 ? only : ['test/reference'])], { CHECKS_INTO: into });
run(['--import', 'tsx', 'test/reference/ledger/write-page.ts', into], {});
console.log('wrote test/reference/README.md');
