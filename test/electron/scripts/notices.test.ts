import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import type { Rollup } from 'vite';
import { describe, expect, it } from 'vitest';
import { buildElectron } from '../../../build/scripts/build-electron.mjs';
import { NOTICES_FILE, noticeOf, noticesText, packagesOf } from '../../../build/scripts/notices.mjs';
import { freshFolders } from '../folder.ts';

const fresh = freshFolders();
const TOP = fileURLToPath(new URL('../../..', import.meta.url));

/** A package of its own making. */
function packed(about: object, files: Record<string, string> = {}): string {
  const folder = join(fresh(), 'node_modules', 'made-up');
  mkdirSync(folder, { recursive: true });
  writeFileSync(
    join(folder, 'package.json'),
    JSON.stringify({ name: 'made-up', version: '1.2.3', ...about }),
  );
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

describe('the packages of modules', () => {
  it('are told from paths: scoped, nested, of Windows, once each, and none for what is ours or made by the bundler', () => {
    const modules = [
      '/p/node_modules/zod/v4/core.js',
      '/p/node_modules/zod/index.js',
      '/p/node_modules/@a/b/dist/style.css?inline',
      '/p/node_modules/a/node_modules/@b/c/d.js',
      'C:\\p\\node_modules\\d3-array\\src\\index.js',
      '/p/core/air/air.ts',
      '\0/p/node_modules/vite/helper.js',
    ];
    expect(packagesOf(modules)).toEqual([
      '/p/node_modules/@a/b',
      '/p/node_modules/a/node_modules/@b/c',
      '/p/node_modules/zod',
      'C:\\p\\node_modules\\d3-array',
    ]);
  });
});

describe('the notice of a package', () => {
  it('holds its licence in name and text, with every file that speaks of it', () => {
    const folder = packed(
      { license: 'Apache-2.0', author: { name: 'Somebody' }, homepage: 'https://example.org/' },
      { 'LICENSE.md': 'the terms\n', NOTICE: 'the notice\n', 'licenses.js': 'code', 'README.md': 'else' },
    );
    expect(noticeOf(folder)).toEqual({
      name: 'made-up',
      version: '1.2.3',
      licence: 'Apache-2.0',
      by: 'Somebody',
      homepage: 'https://example.org/',
      texts: ['the terms', 'the notice'],
    });
    expect(noticesText([folder])).toMatch(
      /made-up 1\.2\.3\nLicence: Apache-2\.0\nBy: Somebody\n[^]*the terms/,
    );
  });

  it('says so where the package brings no text', () => {
    expect(noticesText([packed({ license: 'MIT' })])).toContain('holds no text of its licence');
  });

  it.each([{}, { license: '' }, { license: 'UNLICENSED' }, { license: ['MIT'] }])(
    'is refused, and with it the build, for a package that says %j',
    (about) => {
      const folder = packed(about, { LICENSE: 'terms' });
      expect(() => noticesText([folder])).toThrow('made-up 1.2.3 names no licence');
    },
  );
});

/** Each package of the folders stands in the notices with its licence and the text of that. */
function expectNamed(notices: string, folders: readonly string[]): void {
  expect(folders.length).toBeGreaterThan(0);
  for (const folder of folders) {
    const { name, version, licence, texts } = noticeOf(folder);
    expect(notices).toContain(`\n${name} ${version}\nLicence: ${licence}\n`);
    for (const text of texts) expect(notices, name).toContain(text);
  }
}

describe('the notices of what is built', () => {
  // What is in a bundle is read from the bundle here: from its source map, or the paths that it was put together from.
  it('name every package whose code is in the page', async () => {
    const made = (await build({
      configFile: join(TOP, 'build/config/vite.config.ts'),
      logLevel: 'error',
      build: { write: false, sourcemap: true, minify: false },
    })) as Rollup.RollupOutput;
    const maps = made.output.flatMap((part) => (part.type === 'chunk' && part.map ? [part.map] : []));
    const sources = maps.flatMap(({ sources }) =>
      sources.map((source) => join(TOP, 'dist/renderer/assets', source)),
    );
    const notices = made.output.find(({ fileName }) => fileName === NOTICES_FILE);
    const folders = packagesOf(sources);
    const names = folders.map((folder) => relative(join(TOP, 'node_modules'), folder));
    expect(names).toEqual(expect.arrayContaining(['d3-array', 'd3-zoom', 'mathjs', 'svelte', 'zod']));
    expectNamed(String((notices as Rollup.OutputAsset).source), folders);
  });

  it("name every package whose code is in the desktop program's two files", async () => {
    const folder = fresh();
    const bundles = await buildElectron(folder);
    const code = bundles.map(({ path }) => readFileSync(join(folder, path.split(/[/\\]/).at(-1)!), 'utf8'));
    const sources = [...code.join('\n').matchAll(/^\s*\/\/ (node_modules\/\S+)$/gm)].map(([, path]) =>
      join(TOP, path!),
    );
    expect(sources.length).toBeGreaterThan(0);
    expectNamed(readFileSync(join(folder, NOTICES_FILE), 'utf8'), packagesOf(sources));
  });
});
