import { describe, expect, it } from 'vitest';
import { closeGuard } from '../../../electron/main/close-guard.ts';
import type { LeaveAnswer } from '../../../electron/main/dialogs.ts';
import { bareName, setupDialogs } from '../../../electron/main/dialogs.ts';
import {
  SMALLEST_SIZE,
  USUAL_SIZE,
  checkWindowState,
  placeWindow,
} from '../../../electron/main/window-state.ts';
import { WEB_PREFERENCES, setupWindow, titleText } from '../../../electron/main/windows.ts';
import type { WindowState } from '../../../electron/main/window-state.ts';
import { FakeWindow, event, until } from '../fakes.ts';

const turn = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('what the page may do', () => {
  it('is written out, and is what a page of a stranger may do', () => {
    expect(WEB_PREFERENCES).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
    });
    expect(
      Object.keys(WEB_PREFERENCES).filter((name) => /enableBlinkFeatures|preload|csp/i.test(name)),
    ).toEqual([]);
  });
});

async function open(state: WindowState | null = null) {
  const kept: (WindowState | null)[] = [];
  const log: string[] = [];
  let [now, settled] = [0, 0];
  let answer: LeaveAnswer = 'keep-editing';
  const asked: string[] = [];
  const main = await setupWindow({
    BrowserWindow: FakeWindow as never,
    screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1040 } }] as never },
    preload: '/dist/preload.cjs',
    state: { read: () => Promise.resolve(state), keep: (value) => (kept.push(value), Promise.resolve()) },
    ask: (title) => (asked.push(title), Promise.resolve(answer)),
    settle: () => (settled++, Promise.resolve()),
    now: () => now,
    log: (line) => log.push(line),
  });
  const window = main.window as unknown as FakeWindow;
  const loaded = () => window.webContents.emit('did-finish-load');
  return {
    ...{ main, window, loaded, kept, log, asked, contents: window.webContents },
    ...{
      settled: () => settled,
      answer: (next: LeaveAnswer) => (answer = next),
      at: (ms: number) => (now = ms),
    },
  };
}

describe('the window', () => {
  it('is made with those preferences and the preload, and loads the page', async () => {
    const { main, window } = await open();
    expect(window.options['webPreferences']).toEqual({ ...WEB_PREFERENCES, preload: '/dist/preload.cjs' });
    await main.load();
    expect(window.address).toBe('app://chipdraft/index.html');
  });

  it('keeps messages until the page can hear them, also while it is loaded anew', async () => {
    const { main, contents, loaded } = await open();
    main.send('menu', 'one');
    expect(contents.sent).toEqual([]);
    loaded();
    main.send('menu', 'two');
    contents.emit('did-start-navigation', { isMainFrame: true, isSameDocument: false });
    main.send('menu', 'three');
    expect(contents.sent).toHaveLength(2);
    loaded();
    expect(contents.sent).toEqual(['one', 'two', 'three'].map((id) => ['shell:menu', id]));
  });

  it('shows the title with a mark for what is not saved, and lets no page title stand', async () => {
    const { main, window } = await open();
    main.setUnsaved(true, 'Tern Street');
    expect([window.title, window.edited]).toEqual(['• Tern Street - Chipdraft', true]);
    main.setUnsaved(false, 'Tern Street');
    expect([window.title, window.edited]).toEqual([titleText(false, 'Tern Street'), false]);
    const asked = event();
    window.emit('page-title-updated', asked);
    expect(asked.prevented).toBe(true);
  });

  it('keeps its place, and comes back maximised', async () => {
    const { window, kept } = await open({
      bounds: { x: 10, y: 20, width: 1300, height: 800 },
      maximized: true,
    });
    expect(window.options).toMatchObject({ x: 10, y: 20, width: 1300, height: 800 });
    window.emit('ready-to-show');
    expect(window.calls).toEqual(['maximize', 'show']);
    for (let i = 0; i < 50; i++) window.emit('resize');
    await until(() => kept.length > 0);
    expect(kept).toEqual([{ bounds: window.bounds, maximized: false }]);
  });

  it('starts the page again if its process ends, but not in a circle', async () => {
    const { contents, loaded, at, log } = await open();
    loaded();
    at(60_000);
    contents.emit('render-process-gone', event(), { reason: 'crashed' });
    expect(contents.reloads).toBe(1);
    loaded();
    at(61_000);
    contents.emit('render-process-gone', event(), { reason: 'crashed' });
    expect(contents.reloads).toBe(1);
    expect(log).toEqual(['the page ended: crashed', 'the page ended: crashed']);
  });

  it('does not let the page keep the window open by itself', async () => {
    const asked = event();
    (await open()).contents.emit('will-prevent-unload', asked);
    expect(asked.prevented).toBe(true);
  });
});

describe('closing the window', () => {
  it('asks nothing where everything is saved', async () => {
    const { window, asked } = await open();
    window.close();
    expect([window.closed, asked]).toEqual([true, []]);
  });

  it('Keep editing keeps it open, and asks again next time', async () => {
    const { main, window, asked, settled } = await open();
    main.setUnsaved(true, 'shop');
    window.close();
    window.close();
    await turn();
    expect([window.closed, asked, settled()]).toEqual([false, ['shop'], 0]);
    window.close();
    await turn();
    expect(asked).toEqual(['shop', 'shop']);
  });

  it('Discard forgets the recovery and closes', async () => {
    const { main, window, answer, settled } = await open();
    main.setUnsaved(true, 'shop');
    answer('discard');
    window.close();
    await turn();
    expect([window.closed, settled()]).toEqual([true, 1]);
  });

  it('Save tells the page to save, and closes once it has', async () => {
    const { main, window, contents, loaded, answer } = await open();
    loaded();
    main.setUnsaved(true, 'shop');
    answer('save');
    window.close();
    await turn();
    expect([contents.sent, window.closed]).toEqual([[['shell:menu', 'save']], false]);
    main.saved(true);
    expect(window.closed).toBe(false);
    main.setUnsaved(false, 'shop');
    await until(() => window.closed);
  });

  it('a save that fails or is cancelled keeps it open, also when a later one succeeds', async () => {
    const { main, window, answer } = await open();
    main.setUnsaved(true, 'shop');
    answer('save');
    window.close();
    await turn();
    main.saved(false);
    main.saved(true);
    main.setUnsaved(false, 'shop');
    await turn();
    expect(window.closed).toBe(false);
  });

  it('an edit after the save keeps it open', async () => {
    const { main, window, answer } = await open();
    main.setUnsaved(true, 'shop');
    answer('save');
    window.close();
    await turn();
    main.saved(true);
    main.setUnsaved(true, 'shop');
    main.setUnsaved(false, 'shop');
    await turn();
    expect(window.closed).toBe(false);
  });

  it('stays open if the question cannot be asked', async () => {
    let closed = false;
    const guard = closeGuard({
      ask: () => Promise.reject(new Error('no screen')),
      requestSave: () => undefined,
      settle: () => Promise.resolve(),
      close: () => (closed = true),
    });
    guard.setUnsaved(true);
    const asked = event();
    guard.onClose(asked);
    await turn();
    expect([asked.prevented, closed]).toEqual([true, false]);
  });
});

describe('where the window stands', () => {
  const screen = [{ x: 0, y: 0, width: 1920, height: 1040 }];
  const state = (x: number, y: number, width = 1300, height = 800) => ({
    bounds: { x, y, width, height },
    maximized: false,
  });
  it('is where it was, if a screen still shows that place', () => {
    expect(placeWindow(state(100, 50), screen)).toEqual({ x: 100, y: 50, width: 1300, height: 800 });
    expect(placeWindow(state(-1200, 50), screen)).toMatchObject({ x: -1200 });
    for (const gone of [state(5000, 50), state(-1290, 50), state(100, -500), state(100, 1030)]) {
      expect(placeWindow(gone, screen)).toEqual(USUAL_SIZE);
    }
  });
  it('is never smaller than the page needs, nor larger than the screen', () => {
    expect(placeWindow(state(0, 0, 300, 200), screen)).toMatchObject(SMALLEST_SIZE);
    expect(placeWindow(null, [{ x: 0, y: 0, width: 1000, height: 600 }])).toEqual({
      width: 1000,
      height: 600,
    });
  });
  it.each([
    null,
    [],
    {},
    { bounds: {}, maximized: true },
    { bounds: { x: 0, y: 0, width: 0, height: 5 }, maximized: true },
    { bounds: { x: 0.5, y: 0, width: 9, height: 9 }, maximized: true },
  ])('is not read from %j', (raw) => expect(checkWindowState(raw)).toBeNull());
});

describe('the questions', () => {
  it.each([
    ['Tern Street', 'Tern Street.json'],
    ['shop.json', 'shop.json'],
    ['../../etc/passwd', 'passwd.json'],
    ['C:\\x\\shop', 'shop.json'],
    ['a<b>:"|?*\u0000', 'a-b-------.json'],
    ['...', 'shop.json'],
    ['', 'shop.json'],
    ['Überblick 木工', 'Überblick 木工.json'],
  ])('suggest for %j the bare name %j', (given, name) => expect(bareName(given)).toBe(name));

  const withDialog = (filePath: string, exists: boolean) =>
    setupDialogs(
      { showSaveDialog: () => Promise.resolve({ canceled: false, filePath }) } as never,
      () => ({}) as never,
      () => Promise.resolve(exists),
    );
  it('add the ending only where no file is replaced that nobody was asked about', async () => {
    expect(await withDialog('/a/shop', false).chooseToSave('shop')).toBe('/a/shop.json');
    expect(await withDialog('/a/shop', true).chooseToSave('shop')).toBe('/a/shop');
    expect(await withDialog('/a/shop.txt', false).chooseToSave('shop')).toBe('/a/shop.txt');
  });

  it.each([
    [0, 'save'],
    [1, 'discard'],
    [2, 'keep-editing'],
    [7, 'keep-editing'],
  ])('take button %i for %s; Escape keeps editing', async (response, answer) => {
    const shown: { buttons: string[]; cancelId: number }[] = [];
    const dialogs = setupDialogs(
      {
        showMessageBox: (_: unknown, box: never) => (shown.push(box), Promise.resolve({ response })),
      } as never,
      () => ({}) as never,
    );
    expect(await dialogs.askBeforeLeaving('shop')).toBe(answer);
    expect(shown[0]!.buttons).toEqual(['Save', 'Discard', 'Keep editing']);
    expect(shown[0]!.buttons[shown[0]!.cancelId]).toBe('Keep editing');
  });
});
