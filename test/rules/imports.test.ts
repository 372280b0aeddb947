import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { forbiddenImports, importCycles, importsOf, strayNames } from './import-rules.ts';
import { ROOT, ignoredPatterns, isIgnored, readFiles } from './project-files.ts';

/** A made-up project: file contents by path. */
const made = (files: Record<string, string>) => new Map(Object.entries(files));

describe('the import rule itself', () => {
  const forbidden: [string, string, string][] = [
    ['core/air/a.ts', `import { x } from '../../renderer/x.ts';`, 'core imports core'],
    ['core/air/a.ts', `import type { x } from '../../electron/x.ts';`, 'core imports core'],
    ['core/air/a.ts', `import { app } from 'electron';`, 'core imports core'],
    ['core/air/a.ts', `import fs from 'node:fs';`, 'may use Node'],
    ['core/air/a.ts', `import fs from 'fs';`, 'may use Node'],
    ['core/air/a.ts', `const fs = await import('node:fs');`, 'may use Node'],
    ['core/air/a.ts', `export * from 'node:path';`, 'may use Node'],
    ['core/air/a.ts', `import { run } from '../cli.ts';`, 'may use Node'],
    ['core/quantities/a.ts', `import { x } from '../air/x.ts';`, 'quantities'],
    ['core/fan/a.ts', `import { x } from '../network/x.ts';`, 'physics'],
    ['core/fan/a.ts', `import type { x } from '../document/x.ts';`, 'physics'],
    ['core/duct/a.ts', `import { x } from '../summary/x.ts';`, 'physics'],
    ['core/filter/a.ts', `import { x } from '../checks/x.ts';`, 'physics'],
    ['core/cli.ts', `import { x } from '../renderer/x.ts';`, 'core imports core'],
    ['electron/main/a.ts', `import { x } from '../../core/air/x.ts';`, 'electron'],
    ['electron/main/a.ts', `import { x } from '../../renderer/x.ts';`, 'electron'],
    ['electron/main/a.ts', `import { x } from 'mathjs';`, 'electron'],
    ['renderer/state/a.ts', `import { x } from '../../electron/x.ts';`, 'renderer'],
    ['renderer/state/a.ts', `import { x } from 'electron';`, 'renderer'],
    [
      'renderer/plan/A.svelte',
      `<script lang="ts">\nimport fs from 'node:fs';\n</script>\n<p>hi</p>`,
      'renderer',
    ],
    ['renderer/plan/a.ts', `import { x } from '../ledger/x.ts';`, 'screen'],
    ['build/scripts/a.mjs', `import { x } from '../../core/air/x.ts';`, 'build'],
    ['build/config/a.mjs', `import { x } from '../../core/document/x.ts';`, 'build'],
  ];
  it.each(forbidden)('refuses in %s: %s', (path, text, says) => {
    const found = forbiddenImports(made({ [path]: text }));
    expect(found.length).toBeGreaterThanOrEqual(1);
    expect(found.join('\n')).toContain(says);
  });

  const allowed: [string, string][] = [
    ['core/fan/a.ts', `import { x } from '../quantities/x.ts'; import { y } from '../air/y.ts';`],
    ['core/quantities/a.ts', `import { x } from './x.ts'; import { create } from 'mathjs';`],
    ['core/network/a.ts', `import { x } from '../fan/x.ts'; import type { D } from '../document/d.ts';`],
    ['core/cli.ts', `import fs from 'node:fs'; import { x } from './summary/x.ts';`],
    ['core/cli/print.ts', `import fs from 'node:fs';`],
    [
      'electron/main/a.ts',
      `import { app } from 'electron'; import fs from 'node:fs'; import { S } from '../../core/document/shell.ts';`,
    ],
    [
      'renderer/plan/a.ts',
      `import { x } from '../state/x.ts'; import { y } from './y.ts'; import { z } from '../../core/fan/z.ts';`,
    ],
    ['build/scripts/a.mts', `import { x } from '../../core/document/x.ts'; import fs from 'node:fs';`],
    ['test/core/a.test.ts', `import { x } from '../../core/x.ts'; import fs from 'node:fs';`],
    ['core/air/a.ts', `// import { x } from '../network/x.ts';\nconst s = "import fs from 'node:fs'";`],
  ];
  it.each(allowed)('allows in %s: %s', (path, text) => {
    expect(forbiddenImports(made({ [path]: text }))).toEqual([]);
  });

  it('finds a cycle of two files, of three, through types, and of a file with itself', () => {
    expect(
      importCycles(made({ 'core/a.ts': `import './b.ts'`, 'core/b.ts': `import './a.ts'` })),
    ).toHaveLength(1);
    const three = {
      'core/a.ts': `import './b.ts'`,
      'core/b.ts': `export * from './c.ts'`,
      'core/c.ts': `import type { A } from './a.ts'`,
    };
    expect(importCycles(made(three))).toEqual(['core/a.ts -> core/b.ts -> core/c.ts -> core/a.ts']);
    expect(importCycles(made({ 'core/a.ts': `import './a.ts'` }))).toHaveLength(1);
    const diamond = {
      'core/a.ts': `import './b.ts'; import './c.ts'`,
      'core/b.ts': `import './d.ts'`,
      'core/c.ts': `import './d.ts'`,
      'core/d.ts': '',
    };
    expect(importCycles(made(diamond))).toEqual([]);
  });

  it('knows what the top level holds', () => {
    expect(strayNames(['core', 'README.md', '.gitignore', '.ci', 'LICENSE'])).toEqual([]);
    expect(strayNames(['core', 'notes.txt', 'src', 'vite.config.ts'])).toEqual([
      'notes.txt',
      'src',
      'vite.config.ts',
    ]);
    expect(isIgnored('node_modules', ['node_modules/'])).toBe(true);
    expect(isIgnored('x.log', ['*.log'])).toBe(true);
    expect(isIgnored('notes.txt', ['node_modules/', '*.log'])).toBe(false);
  });
});

describe('the project', () => {
  const files = readFiles((path) => /^(core|electron|renderer|test|build)\//.test(path));

  it('is seen: its imports are found', () => {
    expect(importsOf(files).filter(({ to }) => to !== null).length).toBeGreaterThan(50);
    expect([...files.keys()]).toContain('core/quantities/range.ts');
  });

  it('keeps the import table', () => {
    expect(forbiddenImports(files)).toEqual([]);
  });

  it('has no import cycles', () => {
    expect(importCycles(files)).toEqual([]);
  });

  it('imports only files that exist', () => {
    const missing = importsOf(files).filter(
      ({ to }) => to !== null && to !== 'package.json' && !files.has(to),
    );
    expect(missing.map(({ from, specifier }) => `${from} imports ${specifier}`)).toEqual([]);
  });

  it('holds on its top level only what belongs there', () => {
    const patterns = ignoredPatterns();
    expect(strayNames(readdirSync(ROOT).filter((name) => !isIgnored(name, patterns)))).toEqual([]);
  });
});
