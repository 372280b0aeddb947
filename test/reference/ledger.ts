/**
 * The ledger of checks. README.md beside this file is made from what the tests measured: `npm run checks` writes it, and each
 * run of a whole test file compares. How to write a check, or to turn an `expectRelative` into one:
 *
 *     const printed = against({
 *       relation: 'elbowCoefficient',                  // or ['a', 'b'], or 'core/network/solve.ts#name' outside physics
 *       source: 'table 3 of so-and-so, 2012',          // what is outside our code; a data file: 'data 03a: ...'
 *       basis: 'from-memory',                          // published only if read there, or where a later work quotes it
 *       kind: 'value',                                 // 'second-route', or 'limit' where no figure is known
 *     });
 *     it('...', () => printed.within(elbowCoefficient(elbow).k, 0.15, 0.02));
 *
 * - Declarations stand at the top of the file or of a `describe`, never in a test, and hold literal text only: the rule that
 *   every relation has a check reads them without running.
 * - One source, one kind, one tolerance: one declaration. Where the tolerance depends on the case it is put in words:
 *   `.within(value, reference, 0.2 + 0.05 / reference, { stated: 'a fifth and 0.05' })`.
 * - `.withinAbsolute(value, reference, tolerance, { unit: 'Pa' })` where a relative deviation means nothing.
 * - `.holds(condition, 'rises with flow')` for limits, signs, orders and spans. The words are the same for all cases.
 * - Name only what the figure really tests. A relation that is merely called on the way is not checked by it.
 * - Tolerances stay as they were. What a frozen number of our own says is no check: it belongs in `test/core`.
 * - Then take the relation out of NOT_YET in `test/rules/not-yet.ts` and run `npm run checks -- elbow` (all: no name).
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { afterAll, type RunnerTestCase, type RunnerTestSuite } from 'vitest';
import { Check, type Claim } from './ledger/check.ts';
import { differences } from './ledger/rows.ts';

const PAGE = new URL('README.md', import.meta.url);
/** Set by `npm run checks`: the folder into which every test file writes what it measured. */
const COLLECT = process.env['CHECKS_INTO'];

/** Of this test file: every test file loads this module anew. */
const checks: Check[] = [];

/** Declares a check of a relation against something outside our code. */
export function against(claim: Claim): Check {
  const check = new Check(claim);
  checks.push(check);
  return check;
}

afterAll(({}, suite) => {
  if (!ranWhole(suite.file)) {
    if (COLLECT) throw new Error('the page cannot be made from a file of which only a part ran or passed');
    return;
  }
  const test = basename(suite.file.name, '.test.ts');
  const records = checks.map((check) => check.record());
  if (COLLECT) {
    mkdirSync(COLLECT, { recursive: true });
    writeFileSync(join(COLLECT, `${test}.json`), JSON.stringify(records));
    return;
  }
  const found = differences(test, records, readFileSync(PAGE, 'utf8'));
  if (found.length > 0) {
    throw new Error(`test/reference/README.md differs, run \`npm run checks\`:\n${found.join('\n')}`);
  }
});

/** Whether every test below ran and passed: not so under `-t`, `.only` or `.skip`, or after a failure. */
function ranWhole(task: RunnerTestSuite | RunnerTestCase): boolean {
  if (task.type === 'test') return task.result?.state === 'pass';
  return task.tasks.every(ranWhole);
}
