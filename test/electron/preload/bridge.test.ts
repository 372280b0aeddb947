import { describe, expect, it } from 'vitest';
import { SHELL_MESSAGES } from '../../../core/document/shell-messages.ts';
import { makeShell } from '../../../electron/preload/bridge.ts';
import { listenForDrops } from '../../../electron/preload/drop.ts';
import type { Drag } from '../../../electron/preload/drop.ts';

function begin(reply: unknown = undefined) {
  const invoked: unknown[][] = [];
  const listeners = new Map<string, (event: unknown, ...carried: unknown[]) => void>();
  const shell = makeShell({
    invoke: (...given: unknown[]) => (invoked.push(given), Promise.resolve(reply)),
    on: (channel: string, listener: never) => void listeners.set(channel, listener),
  } as never);
  const tell = (channel: string, ...carried: unknown[]) =>
    listeners.get(channel)!({ sender: 'secret' }, ...carried);
  return { shell, invoked, listeners, tell };
}
const FILE = { token: 't', name: 'shop.json' };

describe('the bridge', () => {
  it('has a function for each call, and nothing that leads further', () => {
    const { shell, listeners } = begin();
    expect(Object.keys(shell).sort()).toEqual(
      [...Object.keys(SHELL_MESSAGES), 'kind', 'onMenu', 'onOpened'].sort(),
    );
    expect(shell.kind).toBe('desktop');
    expect([...listeners.keys()]).toEqual(['shell:menu', 'shell:opened']);
  });

  it('sends a call on its channel with its arguments', async () => {
    const { shell, invoked } = begin({ ok: true, file: FILE });
    await shell.save(null, 'text', 'name');
    expect(invoked).toEqual([['shell:save', null, 'text', 'name']]);
  });

  it('does not pass on an answer of another shape', async () => {
    await expect(begin({ ok: true, file: FILE }).shell.open()).rejects.toThrow();
    await expect(begin('yes').shell.changedOutside(FILE)).rejects.toThrow();
  });

  it('waits for nothing when it tells of unsaved work', () => {
    const { shell, invoked } = begin();
    expect(shell.setUnsaved(true, 'shop')).toBeUndefined();
    expect(invoked).toEqual([['shell:setUnsaved', true, 'shop']]);
  });

  it('hands messages to every listener without the event behind them, until it stops listening', () => {
    const { shell, tell } = begin();
    const [a, b]: unknown[][][] = [[], []];
    const stop = shell.onMenu((...given) => a!.push(given));
    shell.onMenu((...given) => b!.push(given));
    tell('shell:menu', 'save');
    stop();
    tell('shell:menu', 'undo');
    expect([a, b]).toEqual([[['save']], [['save'], ['undo']]]);
  });

  it('keeps a document that comes before anybody listens', () => {
    const { shell, tell } = begin();
    tell('shell:opened', FILE, 'early');
    const heard: unknown[] = [];
    shell.onOpened((file, text) => heard.push([file, text]));
    shell.onOpened(() => heard.push('second'));
    expect(heard).toEqual([[FILE, 'early']]);
  });

  it.each([[[3]], [[]], [['save', 'more']]])('drops a message of another shape: %j', (carried) => {
    const { shell, tell } = begin();
    const heard: unknown[] = [];
    shell.onMenu((...given) => heard.push(given));
    tell('shell:menu', ...carried);
    expect(heard).toEqual([]);
  });
});

describe('a file dropped on the window', () => {
  type Made = { path: string };
  const drop = (files: Made[], isTrusted = true) => {
    const listeners = new Map<string, (event: Drag<Made>) => void>();
    const sent: unknown[][] = [];
    listenForDrops<Made>(
      { addEventListener: (type: string, listener: never) => void listeners.set(type, listener) },
      { invoke: (...given: unknown[]) => (sent.push(given), Promise.resolve()) },
      ({ path }) => path,
    );
    let prevented = 0;
    const event = {
      isTrusted,
      dataTransfer: { types: ['Files'], files, dropEffect: 'none' },
      preventDefault: () => prevented++,
    };
    listeners.get('dragover')!(event);
    listeners.get('drop')!(event);
    return { sent, prevented, effect: event.dataTransfer.dropEffect };
  };

  it('is sent by its path, the first of several', () => {
    expect(drop([{ path: '/a.json' }, { path: '/b.json' }])).toEqual({
      sent: [['shell:dropped', '/a.json']],
      prevented: 2,
      effect: 'copy',
    });
  });
  it('is not sent when a script made the file or the drop', () => {
    expect(drop([{ path: '' }]).sent).toEqual([]);
    expect(drop([{ path: '/a.json' }], false).sent).toEqual([]);
  });
  it('is left alone when something else is dragged', () => {
    expect(drop([]).prevented).toBe(1);
  });
});
