import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { missingForPackaging, PACKAGER, packagerWords } from '../../../build/scripts/package.mjs';
import { freshFolders } from '../folder.ts';

const fresh = freshFolders();
const TOP = fileURLToPath(new URL('../../..', import.meta.url));
const NO_ENV = {};

function write(top: string, files: Record<string, string>): void {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(top, path)), { recursive: true });
    writeFileSync(join(top, path), text);
  }
}

const packagerOf = (version: string) => ({
  [`node_modules/${PACKAGER.name}/package.json`]: JSON.stringify({ version }),
});
const ELECTRON = { 'node_modules/electron/path.txt': 'electron', 'node_modules/electron/dist/electron': '' };

describe('what packaging lacks', () => {
  it('is said of each thing, with how to get it', () => {
    const top = fresh();
    const [packager, electron, ...more] = missingForPackaging(top, NO_ENV);
    expect(packager).toContain(`npm install --no-save --ignore-scripts ${PACKAGER.name}@${PACKAGER.version}`);
    expect(electron).toContain('npx install-electron');
    expect(more).toEqual([]);
    write(top, packagerOf(PACKAGER.version));
    expect(missingForPackaging(top, NO_ENV)).toEqual([electron]);
    write(top, ELECTRON);
    expect(missingForPackaging(top, NO_ENV)).toEqual([]);
  });

  it('is the right packager where there is another', () => {
    const top = fresh();
    write(top, { ...packagerOf('1.0.0'), ...ELECTRON });
    expect(missingForPackaging(top, NO_ENV)).toEqual([expect.stringContaining('is 1.0.0 where')]);
  });

  it('is nothing where Electron lies in a folder that the environment names', () => {
    const [top, elsewhere] = [fresh(), fresh()];
    write(top, { ...packagerOf(PACKAGER.version), 'node_modules/electron/path.txt': 'electron' });
    write(elsewhere, { electron: '' });
    const env = { ELECTRON_OVERRIDE_DIST_PATH: elsewhere };
    expect(missingForPackaging(top, NO_ENV)).toHaveLength(1);
    expect(missingForPackaging(top, env)).toEqual([]);
    expect(packagerWords(top, false, env)).toContain(`-c.electronDist=${elsewhere}`);
  });
});

describe('npm run package', () => {
  /** The scripts in a folder of their own, with bundlers and a packager that only note what they were asked. */
  const place = (files: Record<string, string> = {}) => {
    const top = fresh();
    cpSync(join(TOP, 'build'), join(top, 'build'), { recursive: true });
    const noting = (text: string) =>
      `import { appendFileSync } from 'node:fs';\nconst note = (said) => appendFileSync('said', said + '\\n');\n${text}`;
    write(top, {
      'package.json': '{"type":"module"}',
      'dist/electron/.keep': '',
      'node_modules/vite/package.json': '{"type":"module","exports":"./index.js"}',
      'node_modules/vite/index.js': noting(
        `export const build = async ({ configFile }) => note('page ' + configFile);`,
      ),
      'node_modules/esbuild/package.json': '{"type":"module","exports":"./index.js"}',
      'node_modules/esbuild/index.js': noting(
        `export const build = async () => (note('desktop'), { metafile: { inputs: {}, outputs: {} } });`,
      ),
      [`node_modules/${PACKAGER.name}/cli.js`]:
        `require('node:fs').appendFileSync('said', process.argv.slice(2).join(' ') + '\\n');\n` +
        `process.exit(process.argv.includes('--dir') ? 3 : 0);\n`,
      ...files,
    });
    return top;
  };
  const run = (top: string, ...words: string[]) => {
    const env = { ...process.env };
    delete env['ELECTRON_OVERRIDE_DIST_PATH'];
    return spawnSync(process.execPath, ['build/scripts/package.mjs', ...words], {
      cwd: top,
      env,
      encoding: 'utf8',
    });
  };

  it('says what is missing and how to get it, builds nothing, and ends with a fault', () => {
    const top = place();
    const { status, stdout, stderr } = run(top);
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toContain('No installer was made');
    for (const line of missingForPackaging(top, NO_ENV)) expect(stderr).toContain(`- ${line}\n`);
    expect(stderr).toContain('npm run build');
    expect(() => readFileSync(join(top, 'said'))).toThrow('ENOENT');
  });

  const whole = { ...packagerOf(PACKAGER.version), ...ELECTRON };

  it('builds both bundles, then hands them to the packager with our settings, and uploads nothing', () => {
    const top = place(whole);
    const { status, stderr } = run(top);
    expect([status, stderr]).toEqual([0, '']);
    expect(readFileSync(join(top, 'said'), 'utf8').trimEnd().split('\n')).toEqual([
      `page ${join(top, 'build/config/vite.config.ts')}`,
      'desktop',
      `--config build/config/packager.mjs --publish never -c.electronDist=${join(top, 'node_modules/electron/dist')}`,
    ]);
  });

  it('ends with a fault when the packager does, and says what it may have wanted', () => {
    const { status, stderr } = run(place(whole), '--dir');
    expect(status).toBe(1);
    expect(stderr).toMatch(/packager failed[^]*online/);
  });

  it('refuses words that it does not know', () => {
    const { status, stderr } = run(place(whole), '--upload');
    expect(status).toBe(1);
    expect(stderr).toContain('--upload');
  });
});
