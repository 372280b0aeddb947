import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import * as disk from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Shell } from '../../../core/document/shell.ts';
import { startProgram } from '../../../electron/main/main.ts';
import { makeShell } from '../../../electron/preload/bridge.ts';
import { fakeElectron, from, until } from '../fakes.ts';
import { freshFolders } from '../folder.ts';

const fresh = freshFolders();

/** The whole program on a false Electron and a real folder, with the page's end of the bridge joined to it. */
async function start({ settings = fresh(), argv = ['chipdraft'] as string[] } = {}) {
  const fake = fakeElectron(settings);
  const log: string[] = [];
  const machine = { folder: '/dist/electron', argv, workingFolder: settings, platform: 'linux' as const };
  await startProgram({
    electron: fake.electron,
    disk,
    ...machine,
    now: Date.now,
    log: (line) => log.push(line),
  });
  const window = fake.windows[0]!;
  const { webContents } = window;
  const listeners = new Map<string, (event: unknown, ...carried: unknown[]) => void>();
  const shell: Shell = makeShell({
    invoke: (channel: string, ...given: unknown[]) =>
      fake.ipcMain.invoke(channel, from(webContents), ...given),
    on: (channel: string, listener: never) => void listeners.set(channel, listener),
  } as never);
  webContents.send = (channel: unknown, ...carried: unknown[]) =>
    void listeners.get(channel as string)!({}, ...structuredClone(carried));
  webContents.emit('did-finish-load');
  return { ...fake, shell, window, webContents, log, settings };
}

describe('the program', () => {
  it('guards its session, its scheme and its sandbox before the window is made', async () => {
    const { order, guards, served, windows } = await start();
    expect(order).toEqual(['name Chipdraft', 'lock', 'sandbox', 'scheme', 'ready', 'window']);
    expect(Object.keys(guards).sort()).toEqual(['check', 'device', 'network', 'request']);
    expect(Object.keys(served)).toEqual(['app']);
    expect(windows[0]!.options['webPreferences']).toMatchObject({ preload: '/dist/electron/preload.cjs' });
    expect(windows[0]!.address).toBe('app://chipdraft/index.html');
    expect(windows[0]!.webContents.opener({ url: 'https://example.org/' })).toEqual({ action: 'deny' });
  });

  it('grants no permission, no device and no request to the network', async () => {
    const { guards } = await start();
    const ask = (name: string, ...given: unknown[]) => guards[name]!(...(given as never[]));
    for (const permission of [
      'media',
      'geolocation',
      'notifications',
      'fileSystem',
      'clipboard-read',
      'openExternal',
    ]) {
      const granted: boolean[] = [];
      ask('request', {}, permission, (yes: boolean) => granted.push(yes));
      expect([granted, ask('check', {}, permission)]).toEqual([[false], false]);
    }
    expect(ask('device', { deviceType: 'serial' })).toBe(false);
    const replies: unknown[] = [];
    for (const url of ['app://chipdraft/a.js', 'https://example.org/'])
      ask('network', { url }, (r: unknown) => replies.push(r));
    expect(replies).toEqual([{ cancel: false }, { cancel: true }]);
  });

  it('started a second time ends at once and touches nothing', async () => {
    const fake = fakeElectron(fresh(), { locked: true });
    const machine = { disk, folder: '/d', argv: [], workingFolder: '/', platform: 'linux' as const };
    const made = await startProgram({
      electron: fake.electron,
      ...machine,
      now: Date.now,
      log: () => undefined,
    });
    expect([made, fake.app.quits, fake.windows.length, fake.ipcMain.handlers.size]).toEqual([null, 1, 0, 0]);
  });

  it('ends when its window is closed', async () => {
    const { app } = await start();
    app.emit('window-all-closed');
    expect(app.quits).toBe(1);
  });
});

describe('the shell, from the page to the disk and back', () => {
  it('opens, saves, saves anew, notices a change outside, and lists the file as recent', async () => {
    const { shell, answers, saveOptions, settings, menus } = await start();
    const path = join(settings, 'Tern Street "ü".json');
    writeFileSync(path, '{"a":1}');
    expect(await shell.open()).toMatchObject({ ok: false, reason: 'cancelled' });
    answers.open = path;
    const opened = await shell.open();
    if (!opened.ok) throw new Error(opened.message);
    expect([opened.text, opened.file.name]).toEqual(['{"a":1}', 'Tern Street "ü".json']);
    expect(JSON.stringify(opened)).not.toContain(settings);
    expect(await shell.save(opened.file, '{"a":2}', 'shop')).toEqual({ ok: true, file: opened.file });
    expect(readFileSync(path, 'utf8')).toBe('{"a":2}');
    expect(await shell.changedOutside(opened.file)).toBe(false);
    writeFileSync(path, '{"a":3}');
    expect(await shell.changedOutside(opened.file)).toBe(true);
    answers.save = join(settings, 'other.json');
    expect(await shell.save(null, '{"b":1}', '../other')).toMatchObject({
      ok: true,
      file: { name: 'other.json' },
    });
    expect(saveOptions[0]!['defaultPath']).toBe('other.json');
    const recent = await shell.recent();
    expect(recent.map(({ name }) => name)).toEqual(['other.json', 'Tern Street "ü".json']);
    expect(await shell.openRecent(recent[1]!.token)).toMatchObject({
      ok: true,
      text: '{"a":3}',
      file: opened.file,
    });
    expect(JSON.stringify(menus.at(-1))).toContain('other.json');
  });

  it('lets the page write to no file that the user did not choose', async () => {
    const { shell, settings } = await start();
    const path = join(settings, 'mine.json');
    writeFileSync(path, 'mine');
    expect(await shell.save({ token: path, name: 'mine.json' }, 'theirs', 'x')).toMatchObject({
      ok: false,
      reason: 'gone',
    });
    expect(await shell.openRecent(path)).toMatchObject({ ok: false, reason: 'gone' });
    expect(readFileSync(path, 'utf8')).toBe('mine');
  });

  it('hands on a dropped document, and says no to a file of another kind', async () => {
    const { ipcMain, webContents, shell, settings, boxes } = await start();
    const heard: string[] = [];
    shell.onOpened((file, text) => heard.push(file.name, text));
    writeFileSync(join(settings, 'drop.json'), 'dropped');
    await ipcMain.invoke('shell:dropped', from(webContents), join(settings, 'drop.json'));
    await ipcMain.invoke('shell:dropped', from(webContents), '/etc/passwd');
    await ipcMain.invoke('shell:dropped', from(webContents), join(settings, 'none.json'));
    expect(heard).toEqual(['drop.json', 'dropped']);
    expect(boxes.map((box) => box['message'])).toEqual([
      'that is not a shop document',
      'none.json could not be read: the file or its folder is not there any more',
    ]);
  });

  it('opens the document of the command line and of a second start', async () => {
    const settings = fresh();
    writeFileSync(join(settings, 'first.json'), '1');
    writeFileSync(join(settings, 'second.json'), '2');
    const { shell, app, window } = await start({ settings, argv: ['chipdraft', 'first.json'] });
    const heard: string[] = [];
    shell.onOpened((_file, text) => heard.push(text));
    await until(() => heard.length === 1);
    app.emit('second-instance', {}, ['chipdraft', 'second.json'], settings);
    await until(() => heard.length === 2);
    expect([heard, window.calls]).toEqual([
      ['1', '2'],
      ['show', 'focus'],
    ]);
  });
});

describe('after a crash', () => {
  const edit = (text: string) => ({ text, name: 'shop', at: 1, file: null });

  it('the newest edit is offered, until the work is saved or refused', async () => {
    const settings = fresh();
    const first = await start({ settings });
    await first.shell.keepRecovery(edit('one'));
    await first.shell.keepRecovery(edit('two'));
    const second = await start({ settings });
    second.shell.setUnsaved(false, 'shop');
    expect(await second.shell.recovery()).toEqual(edit('two'));
    await second.shell.keepRecovery(null);
    expect(await (await start({ settings })).shell.recovery()).toBeNull();
  });

  it('a clean end offers nothing: saved, or discarded on closing', async () => {
    const settings = fresh();
    const saved = await start({ settings });
    saved.shell.setUnsaved(true, 'shop');
    await saved.shell.keepRecovery(edit('one'));
    saved.shell.setUnsaved(false, 'shop');
    await until(() => !existsSync(join(settings, 'recovery.json')));
    expect(await saved.shell.recovery()).toBeNull();

    const given = await start({ settings });
    given.shell.setUnsaved(true, 'shop');
    await given.shell.keepRecovery(edit('two'));
    given.answers.box = 1;
    given.window.close();
    await until(() => given.window.closed);
    expect(await (await start({ settings })).shell.recovery()).toBeNull();
  });

  it('broken settings files do not keep the program from starting', async () => {
    const settings = fresh();
    for (const name of ['recovery.json', 'recent.json', 'window.json'])
      writeFileSync(join(settings, name), '{"half');
    const { shell } = await start({ settings });
    expect([await shell.recovery(), await shell.recent()]).toEqual([null, []]);
  });

  it('a settings folder that cannot be used is told of, and the document is opened all the same', async () => {
    const settings = fresh();
    const { shell, answers, log } = await start({ settings });
    mkdirSync(join(settings, 'recent.json'));
    writeFileSync(join(settings, 'shop.json'), 'x');
    answers.open = join(settings, 'shop.json');
    expect(await shell.open()).toMatchObject({ ok: true, text: 'x' });
    expect(log[0]).toContain('recent files were not kept');
  });
});

describe('leaving with Save', () => {
  it('saves through the page and closes', async () => {
    const { shell, window, answers, settings } = await start();
    answers.save = join(settings, 'left.json');
    shell.onMenu((command) => {
      if (command !== 'save') return;
      void shell.save(null, 'work', 'left').then((saved) => saved.ok && shell.setUnsaved(false, 'left'));
    });
    shell.setUnsaved(true, 'left');
    await until(() => window.edited);
    window.close();
    expect(window.closed).toBe(false);
    await until(() => window.closed);
    expect(readFileSync(answers.save, 'utf8')).toBe('work');
  });
});
