// Adds up the test results that the runners left as JSON and ends with one plain line: "N passed, N failed".
// Exits 1 if anything failed or nothing ran. Usage: node build/scripts/count-tests.mjs <folder of result files>
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

const folder = process.argv[2];
if (!folder) throw new Error('name the folder that holds the result files');

const files = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.json')) : [];
let [passed, failed, skipped] = [0, 0, 0];
for (const name of files) {
  const results = JSON.parse(readFileSync(join(folder, name), 'utf8'));
  for (const file of results.testResults) {
    const states = file.assertionResults.map((test) => test.status);
    passed += states.filter((state) => state === 'passed').length;
    failed += states.filter((state) => state === 'failed').length;
    skipped += states.filter((state) => state !== 'passed' && state !== 'failed').length;
    // A file that stops before its first test has no test to count, and is a failure all the same.
    if (file.status === 'failed' && !states.includes('failed')) {
      failed += 1;
      console.log(`did not run: ${file.name}\n${file.message}`);
    }
  }
}
if (files.length === 0) console.log(`no test results in ${folder}: the run stopped before any test`);
if (skipped > 0) console.log(`${skipped} skipped`);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
