import { readFile, writeFile } from 'node:fs/promises';
import * as disk from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { setupFiles } from '../../../electron/files/files.ts';
import { setupDialogs } from '../../../electron/main/dialogs.ts';
import { setupPaper } from '../../../electron/main/paper.ts';
import { PRINT_POLICY, setupProtocol } from '../../../electron/main/protocol.ts';
import { fakeElectron } from '../fakes.ts';
import type { FakeWindow } from '../fakes.ts';
import { freshFolders } from '../folder.ts';

const fresh = freshFolders();

function begin() {
  const { pieces, windows, served, answers, saveOptions } = fakeElectron('');
  const prints = new Map<string, string>();
  setupProtocol(pieces.protocol as never, '/nowhere', prints);
  const paper = setupPaper(pieces.BrowserWindow as never, prints);
  return { pieces, windows, served, prints, paper, answers, saveOptions };
}

/** What the protocol gives for the address that a window was sent to, at the moment when it prints. */
function seenBy(window: FakeWindow, served: ReturnType<typeof begin>['served']) {
  return served['app']!({ method: 'GET', url: window.address });
}

describe('a page that is printed', () => {
  it('is made a PDF in a window that nobody sees and in which nothing runs, and leaves none behind', async () => {
    const { paper, windows, served, prints } = begin();
    const bytes = await paper.pdf('<p>sheet</p>', 'letter');
    expect(new TextDecoder().decode(bytes)).toBe('%PDF-');
    const [window] = windows;
    expect(window!.options).toMatchObject({
      show: false,
      webPreferences: { javascript: false, sandbox: true, nodeIntegration: false, contextIsolation: true },
    });
    expect(window!.options['webPreferences']).not.toHaveProperty('preload');
    expect(window!.webContents.printing).toEqual([
      { pageSize: 'Letter', preferCSSPageSize: true, printBackground: true },
    ]);
    expect(window!.closed).toBe(true);
    expect(prints.size).toBe(0);
    expect((await seenBy(window!, served)).status).toBe(404);
  });

  it('is served from memory while it is printed, and may fetch and run nothing', async () => {
    const { paper, pieces, served } = begin();
    let seen: Response | null = null;
    const { prototype } = pieces.BrowserWindow;
    const load = prototype.loadURL;
    prototype.loadURL = async function (this: FakeWindow, address: string) {
      await load.call(this, address);
      seen = await seenBy(this, served);
    };
    await paper.pdf('<p>ß sheet</p>', 'a4');
    expect(await seen!.text()).toBe('<p>ß sheet</p>');
    expect(seen!.headers.get('Content-Security-Policy')).toBe(PRINT_POLICY);
    expect(PRINT_POLICY).not.toContain('script-src');
    expect(PRINT_POLICY).toMatch(/^default-src 'none'/);
  });

  it('tells whether it was printed, put aside or not possible', async () => {
    const { paper, pieces, windows } = begin();
    expect(await paper.print('<p>', 'a4')).toEqual({ ok: true });
    const { prototype } = pieces.BrowserWindow;
    const load = prototype.loadURL;
    const endsWith = (reason: string) => {
      prototype.loadURL = function (this: FakeWindow, address: string) {
        this.webContents.printed = [false, reason];
        return load.call(this, address);
      };
    };
    endsWith('Print job canceled');
    expect(await paper.print('<p>', 'a4')).toMatchObject({ ok: false, reason: 'cancelled' });
    endsWith('Invalid printer settings');
    expect(await paper.print('<p>', 'a4')).toMatchObject({ ok: false, reason: 'not-possible-here' });
    expect(windows.every(({ closed }) => closed)).toBe(true);
  });
});

describe('a copy for other programs', () => {
  it('goes where the user says, with its own ending and under a bare name', async () => {
    const { pieces, answers, saveOptions } = begin();
    const dialogs = setupDialogs(
      pieces.dialog as never,
      () => null as never,
      () => Promise.resolve(false),
    );
    answers.save = '/x/parts';
    expect(await dialogs.chooseCopy('../a/Tern: Street, parts.csv', 'csv')).toBe('/x/parts.csv');
    expect(saveOptions[0]).toMatchObject({ defaultPath: 'Tern- Street, parts.csv' });
    answers.save = '/x/shop.json';
    expect(await dialogs.chooseCopy('shop.csv', 'csv')).toBe('/x/shop.json.csv');
    answers.save = null;
    expect(await dialogs.chooseCopy('shop.pdf', 'pdf')).toBeNull();
  });

  it('is not written over a file that nobody was asked about', async () => {
    const { pieces, answers } = begin();
    const dialogs = setupDialogs(
      pieces.dialog as never,
      () => null as never,
      () => Promise.resolve(true),
    );
    answers.save = '/x/parts';
    expect(await dialogs.chooseCopy('parts.csv', 'csv')).toBeNull();
  });

  it('is written whole, bytes too, and a folder that cannot be written is told', async () => {
    const folder = fresh();
    const files = setupFiles(disk, () => 0);
    const path = join(folder, 'summary.pdf');
    const bytes = new Uint8Array([0x25, 0x50, 0x44, 0x46, 0, 255, 13, 10]);
    expect(await files.writeCopy(path, bytes)).toEqual({ ok: true, name: 'summary.pdf' });
    expect(new Uint8Array(await readFile(path))).toEqual(bytes);
    await writeFile(join(folder, 'file'), '');
    expect(await files.writeCopy(join(folder, 'file', 'x.csv'), 'a')).toMatchObject({
      ok: false,
      reason: 'gone',
      message: expect.stringContaining('x.csv could not be saved') as string,
    });
  });
});
