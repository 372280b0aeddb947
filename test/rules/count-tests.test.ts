import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { ROOT } from './project-files.ts';

const folders: string[] = [];
afterAll(() => folders.forEach((folder) => rmSync(folder, { recursive: true })));

/** Counts made-up result files: for each file of tests, its status and the states of its tests. */
function count(...runs: { status: string; tests: string[] }[][]) {
  const folder = mkdtempSync(join(tmpdir(), 'results-'));
  folders.push(folder);
  runs.forEach((run, i) => {
    const testResults = run.map(({ status, tests }) => ({
      name: 'made-up.test.ts',
      status,
      message: '',
      assertionResults: tests.map((state) => ({ status: state })),
    }));
    writeFileSync(join(folder, `run-${i}.json`), JSON.stringify({ testResults }));
  });
  const { stdout, status } = spawnSync('node', ['build/scripts/count-tests.mjs', folder], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  return { last: stdout.trimEnd().split('\n').at(-1), all: stdout, status };
}

describe('the count of tests', () => {
  it('adds up files and runs', () => {
    const first = [
      { status: 'passed', tests: ['passed', 'passed'] },
      { status: 'passed', tests: ['passed'] },
    ];
    expect(count(first, [{ status: 'passed', tests: ['passed'] }])).toMatchObject({
      last: '4 passed, 0 failed',
      status: 0,
    });
  });

  it('fails on a failed test, on a file that did not load, and on nothing at all', () => {
    expect(count([{ status: 'failed', tests: ['passed', 'failed'] }])).toMatchObject({
      last: '1 passed, 1 failed',
      status: 1,
    });
    const unloaded = [
      { status: 'failed', tests: [] },
      { status: 'passed', tests: ['passed'] },
    ];
    expect(count(unloaded)).toMatchObject({ last: '1 passed, 1 failed', status: 1 });
    expect(count()).toMatchObject({ last: '0 passed, 0 failed', status: 1 });
    expect(count([{ status: 'passed', tests: [] }])).toMatchObject({ last: '0 passed, 0 failed', status: 1 });
  });

  it('does not count a skipped test as passed', () => {
    const { last, all, status } = count([
      { status: 'passed', tests: ['passed', 'skipped', 'todo', 'pending'] },
    ]);
    expect({ last, status }).toEqual({ last: '1 passed, 0 failed', status: 0 });
    expect(all).toContain('3 skipped');
    expect(count([{ status: 'passed', tests: ['skipped'] }]).status).toBe(1);
  });
});
