import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

// Source: Electron's documentation, "Security", the checklist of twenty points (the page was read). What each point's test
// shows is written in the test that its row names; here the rows are held against what there is.
const TOP = fileURLToPath(new URL('../..', import.meta.url));
const POINTS = 20;

interface Row {
  readonly point: string;
  readonly where: string;
  readonly shown: string;
}

function rowsOf(page: string): Row[] {
  return page
    .split('\n')
    .filter((line) => /^\| \d/.test(line))
    .map((line) => line.split('|').map((cell) => cell.trim()))
    .map(([, point, where, shown]) => ({ point: point!, where: where!, shown: shown! }));
}

const numbers = (rows: readonly Row[]): number[] =>
  rows.flatMap(({ point }) => [...point.matchAll(/\b(\d+)\b/g)].map(([, n]) => Number(n)));

const quoted = (text: string): string[] =>
  [...text.replace(/`npm run [^`]*`/g, '').matchAll(/`([^`]+)`/g)].map(([, name]) => name!);

function sources(folder: string): string[] {
  return readdirSync(join(TOP, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(ts|mjs)$/.test(entry.name))
    .map((entry) => readFileSync(join(entry.parentPath, entry.name), 'utf8'));
}

const page = readFileSync(join(TOP, 'electron/README.md'), 'utf8');
const rows = rowsOf(page);
const code = [...sources('electron'), ...sources('build/config')].join('\n');

describe("the table of Electron's checklist", () => {
  it('answers each point once', () => {
    expect(numbers(rows).sort((a, b) => a - b)).toEqual(Array.from({ length: POINTS }, (_, i) => i + 1));
  });

  it.each(rows)('names what there is: $point', ({ where, shown }) => {
    for (const name of quoted(where)) {
      if (/\.(ts|mjs|json)$/.test(name)) {
        expect(existsSync(join(TOP, 'electron', name)) || existsSync(join(TOP, name)), name).toBe(true);
      } else {
        // what is named as set to something stands in the code as it is written there
        expect(code, name).toContain(name);
      }
    }
    if (shown.startsWith('none')) return;
    for (const test of shown.split(',').map((word) => word.trim())) {
      const path = join(TOP, 'test/electron', `${test}.test.ts`);
      expect(existsSync(path), path).toBe(true);
      expect(readFileSync(path, 'utf8')).toMatch(/\bexpect\(/);
    }
  });

  it('can fail: a point left out, and one answered twice', () => {
    expect(numbers(rowsOf(page.replace(/^\| 5 .*$/m, '')))).not.toContain(5);
    expect(numbers(rowsOf(`${page}\n| 5 again | \`x\` | none |`)).filter((n) => n === 5)).toHaveLength(2);
  });
});
