import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdirSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { findElectron } from '../../../build/scripts/find-electron.mjs';
import { pageIsStale } from '../../../build/scripts/page-age.mjs';
import { freshFolders } from '../folder.ts';

const fresh = freshFolders();
const TOP = fileURLToPath(new URL('../../..', import.meta.url));

describe('looking for Electron', () => {
  const desk = { platform: 'linux', env: { DISPLAY: ':0' }, userId: 1000 };
  const withElectron = () => {
    const top = fresh();
    mkdirSync(join(top, 'node_modules/electron/dist'), { recursive: true });
    writeFileSync(join(top, 'node_modules/electron/path.txt'), 'electron');
    return top;
  };

  it('finds its program, or says how to get it', () => {
    const top = withElectron();
    expect(findElectron(top, desk)).toMatchObject({ program: null, why: /not downloaded.*install-electron/ });
    const program = join(top, 'node_modules/electron/dist/electron');
    writeFileSync(program, '');
    expect(findElectron(top, desk)).toEqual({ program, why: null });
    expect(findElectron(fresh(), desk)).toMatchObject({ program: null, why: /not downloaded/ });
  });

  it('says why its window cannot be opened on Linux: no screen, or root without a sandbox', () => {
    const top = withElectron();
    writeFileSync(join(top, 'node_modules/electron/dist/electron'), '');
    expect(findElectron(top, { ...desk, env: {} })).toMatchObject({ program: null, why: /no screen/ });
    expect(findElectron(top, { ...desk, env: { WAYLAND_DISPLAY: 'w' } }).program).not.toBeNull();
    expect(findElectron(top, { ...desk, userId: 0 })).toMatchObject({
      program: null,
      why: expect.stringContaining('as root') as string,
    });
    expect(findElectron(top, { platform: 'darwin', env: {}, userId: 501 }).program).not.toBeNull();
  });
});

describe('the age of the built page', () => {
  it('is too old when any source is newer, and when there is no page', () => {
    const top = fresh();
    for (const folder of ['core/air', 'renderer', 'build/config', 'dist/renderer'])
      mkdirSync(join(top, folder), { recursive: true });
    const files = [
      'core/air/a.ts',
      'renderer/main.ts',
      'build/config/vite.config.ts',
      'package.json',
      'package-lock.json',
    ];
    const set = (path: string, at: number) => utimesSync(join(top, path), at, at);
    for (const file of files) writeFileSync(join(top, file), '');
    expect(pageIsStale(top)).toBe(true);
    writeFileSync(join(top, 'dist/renderer/index.html'), '');
    const calm = () => [...files, 'core/air', 'core', 'renderer'].forEach((path) => set(path, 1000));
    calm();
    set('dist/renderer/index.html', 2000);
    expect(pageIsStale(top)).toBe(false);
    for (const file of [...files, 'core/air']) {
      calm();
      set(file, 3000);
      expect(pageIsStale(top), file).toBe(true);
    }
  });
});

describe('npm start where there is no desktop window', () => {
  /** The scripts in a folder of their own, with a page that was just built and the project's packages. */
  const begin = async (...words: string[]) => {
    const top = fresh();
    cpSync(join(TOP, 'build/scripts'), join(top, 'build/scripts'), { recursive: true });
    symlinkSync(join(TOP, 'node_modules'), join(top, 'node_modules'), 'junction');
    writeFileSync(join(top, 'package.json'), '{}');
    mkdirSync(join(top, 'dist/renderer'), { recursive: true });
    writeFileSync(join(top, 'dist/renderer/index.html'), '<p>built</p>');
    const child = spawn(process.execPath, ['build/scripts/start.mjs', '--no-open', ...words], { cwd: top });
    const said = { out: '', err: '' };
    child.stdout.setEncoding('utf8').on('data', (part: string) => (said.out += part));
    child.stderr.setEncoding('utf8').on('data', (part: string) => (said.err += part));
    return { child, said };
  };

  it('says so in two lines, serves the page, and stops on Ctrl+C', { timeout: 20_000 }, async () => {
    const { child, said } = await begin('--browser');
    while (!said.out.includes('Ctrl+C')) await once(child.stdout, 'data');
    const [why, instead, at] = said.out.split('\n');
    expect(why).toBe('The desktop window is not available here: the browser was asked for.');
    expect(instead).toMatch(/browser/);
    const answer = await fetch(/http:\S+/.exec(at!)![0]);
    expect([answer.status, await answer.text()]).toEqual([200, '<p>built</p>']);
    child.kill('SIGINT');
    expect(await once(child, 'exit')).toEqual([0, null]);
    expect(said.err).toBe('');
  });

  it('names a port that cannot be used, and ends with a fault', { timeout: 20_000 }, async () => {
    const { child, said } = await begin('--browser', '--port', 'x');
    expect(await once(child, 'exit')).toEqual([1, null]);
    expect(said.err).toContain('--port x is not a port');
  });
});
