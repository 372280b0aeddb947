import { describe, expect, it } from 'vitest';
import { readFiles } from './project-files.ts';
import { MARK } from '../reference/ledger/page.ts';
import { longFiles, readmeMisses } from './size-rules.ts';

const lines = (count: number) => 'x\n'.repeat(count);

describe('the size rule itself', () => {
  it('refuses a source file over 300 lines, not data', () => {
    expect(longFiles(new Map([['core/a.ts', lines(300)]]))).toEqual([]);
    expect(longFiles(new Map([['core/a.ts', lines(301)]]))).toHaveLength(1);
    expect(longFiles(new Map([['renderer/plan/Plan.svelte', lines(400)]]))).toHaveLength(1);
    expect(longFiles(new Map([['build/scripts/a.mjs', lines(400)]]))).toHaveLength(1);
    for (const path of ['core/catalogue/a.ts', 'test/fixtures/a.ts', 'test/reference/data/a.json']) {
      expect(longFiles(new Map([[path, lines(999)]]))).toEqual([]);
    }
  });

  it('asks a folder of more than a dozen sources for a short README', () => {
    const folder = (count: number) =>
      new Map(
        Array.from({ length: count }, (_, i) => [`core/catalogue/row-${i}.ts`, 'x'] as [string, string]),
      );
    expect(readmeMisses(folder(12))).toEqual([]);
    expect(readmeMisses(folder(13))).toHaveLength(1);
    expect(readmeMisses(folder(13).set('core/catalogue/README.md', lines(20)))).toEqual([]);
    expect(readmeMisses(folder(13).set('core/catalogue/README.md', lines(21)))).toHaveLength(1);
    expect(
      readmeMisses(folder(9).set('core/air/a.ts', 'x').set('core/duct/a.ts', 'x').set('core/fan/a.ts', 'x')),
    ).toEqual([]);
  });

  it('asks of the page that is made only that its head be short', () => {
    const page = (path: string, head: number) => new Map([[path, lines(head) + MARK + lines(99)]]);
    expect(readmeMisses(page('test/reference/README.md', 19))).toEqual([]);
    expect(readmeMisses(page('test/reference/README.md', 21))).toHaveLength(1);
    expect(readmeMisses(page('test/rules/README.md', 19))).toHaveLength(1);
  });
});

describe('the project', () => {
  const files = readFiles((path) => /^(core|electron|renderer|test|build)\//.test(path));

  it('is seen', () => {
    expect(files.size).toBeGreaterThan(20);
  });

  it('has no source file that is too long', () => {
    expect(longFiles(files)).toEqual([]);
  });

  it('has a short README in every large folder', () => {
    expect(readmeMisses(files)).toEqual([]);
  });
});
