import { describe, expect, it } from 'vitest';
import type { ShellCall } from '../../../core/document/shell-messages.ts';
import { CALLS, DROP_CHANNEL } from '../../../electron/channels.ts';
import { setupIpc } from '../../../electron/main/ipc.ts';
import type { Handlers, IpcOptions } from '../../../electron/main/ipc.ts';
import { FakeIpcMain, from } from '../fakes.ts';

const PAGE = { page: true };
const HANDLE = { token: 't', name: 'shop.json' };
const RECOVERY = { text: 'x', name: 'shop', at: 1, file: null };

/** Arguments that each call takes. */
const GOOD: Readonly<Record<ShellCall, readonly unknown[]>> = {
  open: [],
  openRecent: ['t'],
  recent: [],
  save: [HANDLE, 'text', 'shop'],
  saveCopy: ['a,b', 'csv', 'parts'],
  savePdf: ['<p>', 'a4', 'summary'],
  printPage: ['<p>', 'letter'],
  changedOutside: [HANDLE],
  keepRecovery: [RECOVERY],
  recovery: [],
  setUnsaved: [true, 'shop'],
};

function begin(handlers: Partial<Handlers> = {}) {
  const ipcMain = new FakeIpcMain();
  const seen: [ShellCall, unknown[]][] = [];
  const log: string[] = [];
  const dropped: string[] = [];
  const usual: Record<ShellCall, unknown> = {
    open: { ok: true, file: HANDLE, text: 'x' },
    openRecent: { ok: false, reason: 'gone', message: 'm', remedy: 'r' },
    recent: [{ ...HANDLE, at: 1 }],
    save: { ok: true, file: HANDLE },
    saveCopy: { ok: true, name: 'parts.csv' },
    savePdf: { ok: true, name: 'summary.pdf' },
    printPage: { ok: true },
    changedOutside: true,
    keepRecovery: undefined,
    recovery: null,
    setUnsaved: undefined,
  };
  const all = Object.fromEntries(
    (Object.keys(CALLS) as ShellCall[]).map((call) => [
      call,
      (...given: unknown[]) => (seen.push([call, given]), usual[call]),
    ]),
  );
  const options: IpcOptions = {
    handlers: { ...(all as unknown as Handlers), ...handlers },
    dropped: (path) => (dropped.push(path), Promise.resolve()),
    isOwnWindow: (sender) => (sender as unknown) === PAGE,
    log: (line) => log.push(line),
  };
  setupIpc(ipcMain as never, options);
  const invoke = (channel: string, ...given: unknown[]) => ipcMain.invoke(channel, from(PAGE), ...given);
  return { ipcMain, seen, log, dropped, invoke, usual };
}

const calls = Object.keys(CALLS) as ShellCall[];

describe('a message of the page', () => {
  it.each(calls)('%s reaches its handler with its arguments, and its result comes back', async (call) => {
    const { invoke, seen, usual } = begin();
    expect(await invoke(CALLS[call].channel, ...GOOD[call])).toEqual(usual[call]);
    expect(seen).toEqual([[call, [...GOOD[call]]]]);
  });

  it('is answered on the channels of the table and on no other', async () => {
    const { ipcMain, invoke } = begin();
    expect([...ipcMain.handlers.keys()].sort()).toEqual(
      [...calls.map((call) => CALLS[call].channel), DROP_CHANNEL.channel].sort(),
    );
    for (const channel of ['shell:kind', 'shell:onMenu', 'shell:delete', 'open', '__proto__']) {
      await expect(invoke(channel)).rejects.toThrow('No handler');
    }
  });
});

describe('the sender of a message', () => {
  const own = { url: 'app://chipdraft/index.html', parent: null };
  const strangers: [string, unknown, unknown][] = [
    ['another site', PAGE, { ...own, url: 'https://example.org/' }],
    ['another host of the scheme', PAGE, { ...own, url: 'app://other/index.html' }],
    ['a file', PAGE, { ...own, url: 'file:///index.html' }],
    ['a frame inside the page', PAGE, { ...own, parent: own }],
    ['a frame that is gone', PAGE, null],
    ['another window', { page: 'another' }, own],
  ];
  it.each(strangers)('is refused when it is %s, on every channel', async (_who, sender, frame) => {
    const { ipcMain, seen, dropped, log } = begin();
    for (const call of calls) {
      await expect(ipcMain.invoke(CALLS[call].channel, from(sender, frame), ...GOOD[call])).rejects.toThrow(
        'sender',
      );
    }
    await expect(ipcMain.invoke(DROP_CHANNEL.channel, from(sender, frame), '/a.json')).rejects.toThrow(
      'sender',
    );
    expect([seen, dropped]).toEqual([[], []]);
    expect(log).toHaveLength(calls.length + 1);
  });
});

describe('the arguments of a message', () => {
  const bad: [ShellCall, unknown[]][] = [
    ['open', ['extra']],
    ['openRecent', []],
    ['openRecent', [3]],
    ['openRecent', ['']],
    ['openRecent', ['t'.repeat(129)]],
    ['openRecent', ['t', 'extra']],
    ['save', [HANDLE, 'text']],
    ['save', [undefined, 'text', 'n']],
    ['save', [{ ...HANDLE, path: '/etc/passwd' }, 'text', 'n']],
    ['save', ['/etc/passwd', 'text', 'n']],
    ['save', [HANDLE, { toString: 'x' }, 'n']],
    ['save', [HANDLE, 'text', 'n'.repeat(2000)]],
    ['changedOutside', [null]],
    ['changedOutside', [{ token: 't' }]],
    ['keepRecovery', [{ ...RECOVERY, at: NaN }]],
    ['keepRecovery', [{ ...RECOVERY, file: { token: 1, name: '' } }]],
    ['keepRecovery', [undefined]],
    ['recovery', [null]],
    ['setUnsaved', ['yes', 'shop']],
    ['setUnsaved', [true]],
  ];
  it.each(bad)('%s refuses %j', async (call, given) => {
    const { invoke, seen, log } = begin();
    await expect(invoke(CALLS[call].channel, ...given)).rejects.toThrow('arguments');
    expect(seen).toEqual([]);
    expect(log).toHaveLength(1);
  });

  it.each([[[]], [['']], [[3]], [['/a.json', 'more']], [['x'.repeat(40_000)]]])(
    'a drop refuses %j',
    async (given) => {
      const { invoke, dropped } = begin();
      await expect(invoke(DROP_CHANNEL.channel, ...given)).rejects.toThrow('arguments');
      expect(dropped).toEqual([]);
    },
  );

  it('a drop hands on its path', async () => {
    const { invoke, dropped } = begin();
    await invoke(DROP_CHANNEL.channel, '/a/ü b.json');
    expect(dropped).toEqual(['/a/ü b.json']);
  });
});

describe('the result of a message', () => {
  it('that holds more than the table names, such as a path, does not leave', async () => {
    const leaky = { ok: true as const, file: { ...HANDLE, path: '/a/secret/shop.json' }, text: 'x' };
    const { invoke, log } = begin({ open: () => leaky });
    const result = await invoke(CALLS.open.channel);
    expect(result).toMatchObject({ ok: false, reason: 'not-possible-here' });
    expect(JSON.stringify(result)).not.toContain('secret');
    expect(log).toHaveLength(1);
  });

  it.each(['open', 'openRecent', 'save'] as const)(
    '%s tells a fault as a failure, without its inner words',
    async (call) => {
      const { invoke, log } = begin({ [call]: () => Promise.reject(new Error('at /a/secret/path')) });
      const result = await invoke(CALLS[call].channel, ...GOOD[call]);
      expect(result).toMatchObject({ ok: false, reason: 'not-possible-here' });
      expect(JSON.stringify(result)).not.toContain('secret');
      expect(log[0]).toContain('secret');
    },
  );

  it('a call without a failure value is rejected on a fault', async () => {
    const { invoke } = begin({ keepRecovery: () => Promise.reject(new Error('disk')) });
    await expect(invoke(CALLS.keepRecovery.channel, null)).rejects.toThrow('shell:keepRecovery failed');
  });
});
