import { readFileSync } from 'node:fs';
import { builtinModules, createRequire } from 'node:module';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildElectron } from '../../../build/scripts/build-electron.mjs';
import { SHELL_MESSAGES } from '../../../core/document/shell-messages.ts';
import { fakeElectron, until } from '../fakes.ts';
import { freshFolders } from '../folder.ts';

const fresh = freshFolders();
const built: Record<string, string> = {};

beforeAll(async () => {
  for (const { path } of await buildElectron())
    built[path.split(/[/\\]/).at(-1)!] = readFileSync(path, 'utf8');
});

const required = (code: string) => [
  ...new Set([...code.matchAll(/\brequire\("([^"]+)"\)/g)].map((found) => found[1]!)),
];

/** Runs a bundle as Electron would, with a false Electron; what else it requires is Node's own. */
function run(code: string, electron: unknown, more: Record<string, unknown> = {}) {
  const real = createRequire(import.meta.url);
  const require = (id: string): unknown => (id === 'electron' ? electron : real(id));
  const names = ['require', 'module', 'exports', '__dirname', ...Object.keys(more)];
  const module = { exports: {} };
  new Function(...names, code)(require, module, module.exports, '/dist/electron', ...Object.values(more));
}

describe('the built desktop program', () => {
  it('is two files that need Electron and Node alone; the preload, being sandboxed, Electron alone', () => {
    expect(Object.keys(built).sort()).toEqual(['main.cjs', 'preload.cjs']);
    expect(required(built['preload.cjs']!)).toEqual(['electron']);
    const others = required(built['main.cjs']!).filter((id) => id !== 'electron');
    expect(others.filter((id) => !builtinModules.includes(id.replace('node:', '')))).toEqual([]);
    for (const code of Object.values(built)) expect(code).not.toMatch(/sendSync|openExternal|child_process/);
  });

  it('the preload gives the page one object with the calls of the shell, and nothing of Electron', () => {
    const exposed: [string, Record<string, unknown>][] = [];
    const heard: string[] = [];
    run(
      built['preload.cjs']!,
      {
        contextBridge: {
          exposeInMainWorld: (key: string, api: Record<string, unknown>) => exposed.push([key, api]),
        },
        ipcRenderer: { invoke: () => Promise.resolve(), on: () => undefined },
        webUtils: { getPathForFile: () => '' },
      },
      { window: { addEventListener: (type: string) => heard.push(type) } },
    );
    expect(exposed).toHaveLength(1);
    expect(exposed[0]![0]).toBe('chipdraftShell');
    const wanted = [...Object.keys(SHELL_MESSAGES), 'kind', 'onMenu', 'onOpened'].sort();
    expect(Object.keys(exposed[0]![1]).sort()).toEqual(wanted);
    expect(heard).toEqual(['dragover', 'drop']);
  });

  it('the main bundle starts, opens its window and loads the page', async () => {
    const fake = fakeElectron(join(fresh(), 'settings'));
    run(built['main.cjs']!, fake.electron, {
      process: { ...process, argv: ['chipdraft'], cwd: () => '/', platform: 'linux' },
    });
    await until(() => fake.windows[0]?.address === 'app://chipdraft/index.html');
    expect(fake.ipcMain.handlers.size).toBe(Object.keys(SHELL_MESSAGES).length + 1);
  });
});
