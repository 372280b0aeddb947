/**
 * Makes README.md of the checks from what the test files wrote. Run by `npm run checks`.
 * Usage: tsx test/reference/ledger/write-page.ts <folder of what was measured>
 */
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { coreFiles, relationsIn } from '../../rules/relations.ts';
import type { CheckRecord } from './check.ts';
import { MARK, checksPage } from './page.ts';
import { rowsOnPage } from './rows.ts';

const folder = process.argv[2];
if (!folder) throw new Error('name the folder that holds what was measured');
const PAGE = new URL('../README.md', import.meta.url);

const measured = new Map<string, readonly CheckRecord[]>();
for (const name of readdirSync(folder).sort()) {
  measured.set(
    basename(name, '.json'),
    JSON.parse(readFileSync(join(folder, name), 'utf8')) as CheckRecord[],
  );
}
const before = readFileSync(PAGE, 'utf8');
for (const { test } of rowsOnPage(before)) {
  if (!measured.has(test) && existsSync(new URL(`../${test}.test.ts`, import.meta.url)))
    throw new Error(`nothing measured of ${test} lies in ${folder}: run \`npm run checks\` for all`);
}
const [head] = before.split(MARK);
writeFileSync(PAGE, checksPage(head!, measured, relationsIn(coreFiles())));
