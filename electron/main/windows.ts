import type { BrowserWindow, BrowserWindowConstructorOptions, Screen, WebContents } from 'electron';
import { EVENTS } from '../channels.ts';
import type { Carries, ShellEvent } from '../channels.ts';
import type { KeptJson } from '../files/kept-json.ts';
import { closeGuard } from './close-guard.ts';
import type { LeaveAnswer } from './dialogs.ts';
import { START_PAGE } from './protocol.ts';
import { SMALLEST_SIZE, placeWindow } from './window-state.ts';
import type { WindowState } from './window-state.ts';

/** What the page may do, written out rather than left to defaults. */
export const WEB_PREFERENCES = {
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
  safeDialogs: true,
  spellcheck: false,
} as const satisfies BrowserWindowConstructorOptions['webPreferences'];

const NAME = 'Chipdraft';
const STATE_DELAY_ms = 400;
/** A page that ends sooner than this after its start would end again. */
const RESTART_AFTER_ms = 10_000;

export interface WindowOptions {
  readonly BrowserWindow: new (options: BrowserWindowConstructorOptions) => BrowserWindow;
  readonly screen: Pick<Screen, 'getAllDisplays'>;
  readonly preload: string;
  readonly state: KeptJson<WindowState>;
  readonly ask: (title: string) => Promise<LeaveAnswer>;
  readonly settle: () => Promise<void>;
  readonly now: () => number;
  readonly log: (line: string) => void;
}

/** The program's one window. */
export interface MainWindow {
  readonly window: BrowserWindow;
  /** Sends an event to the page, once it can hear. */
  send<Name extends ShellEvent>(name: Name, ...carried: Carries[Name]): void;
  setUnsaved(unsaved: boolean, title: string): void;
  /** A save came to its end. */
  saved(ok: boolean): void;
  isOwn(contents: WebContents): boolean;
  /** Brings the window to the front. */
  show(): void;
  load(): Promise<void>;
}

export const titleText = (unsaved: boolean, title: string): string =>
  `${unsaved ? '• ' : ''}${title} - ${NAME}`;

export async function setupWindow(options: WindowOptions): Promise<MainWindow> {
  const state = await options.state.read();
  const areas = options.screen.getAllDisplays().map(({ workArea }) => workArea);
  const window = new options.BrowserWindow({
    ...placeWindow(state, areas),
    minWidth: Math.min(SMALLEST_SIZE.width, ...areas.map(({ width }) => width)),
    minHeight: Math.min(SMALLEST_SIZE.height, ...areas.map(({ height }) => height)),
    show: false,
    title: NAME,
    webPreferences: { ...WEB_PREFERENCES, preload: options.preload },
  });
  const contents = window.webContents;
  let title = NAME;
  let waiting: (() => void)[] | null = [];
  const send: MainWindow['send'] = (name, ...carried) => {
    const deliver = () => contents.send(EVENTS[name].channel, ...carried);
    if (waiting) waiting.push(deliver);
    else deliver();
  };
  const guard = closeGuard({
    ask: () => options.ask(title),
    requestSave: () => send('menu', 'save'),
    settle: options.settle,
    close: () => window.close(),
  });

  window.on('close', (event) => guard.onClose(event));
  window.on('page-title-updated', (event) => event.preventDefault());
  // The page's own question on leaving is for browsers; here the window asks.
  contents.on('will-prevent-unload', (event) => event.preventDefault());
  contents.on('did-start-navigation', ({ isMainFrame, isSameDocument }) => {
    if (isMainFrame && !isSameDocument) waiting ??= [];
  });
  contents.on('did-finish-load', () => {
    const queue = waiting ?? [];
    waiting = null;
    for (const deliver of queue) deliver();
  });
  window.once('ready-to-show', () => {
    if (state?.maximized) window.maximize();
    window.show();
  });
  keepState(window, options);
  restartPage(contents, options);

  return {
    window,
    send,
    setUnsaved(unsaved, of) {
      title = of;
      window.setTitle(titleText(unsaved, of));
      window.setDocumentEdited(unsaved);
      guard.setUnsaved(unsaved);
    },
    saved: guard.saved,
    isOwn: (sender) => sender === contents,
    show() {
      if (window.isMinimized()) window.restore();
      window.show();
      window.focus();
    },
    load: () => window.loadURL(START_PAGE),
  };
}

function keepState(window: BrowserWindow, { state, log }: WindowOptions): void {
  let timer: NodeJS.Timeout | undefined;
  const later = () => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      if (window.isDestroyed() || window.isMinimized() || window.isFullScreen()) return;
      const now = { bounds: window.getNormalBounds(), maximized: window.isMaximized() };
      state.keep(now).catch((error: unknown) => log(`the window's place was not kept: ${String(error)}`));
    }, STATE_DELAY_ms);
  };
  window.on('resize', later);
  window.on('move', later);
  window.on('maximize', later);
  window.on('unmaximize', later);
  window.on('closed', () => clearTimeout(timer));
}

/** If the page's process ends by itself it is started again, and offers what autosave kept. */
function restartPage(contents: WebContents, { now, log }: WindowOptions): void {
  let started_ms = now();
  contents.on('did-finish-load', () => (started_ms = now()));
  contents.on('render-process-gone', (_event, { reason }) => {
    log(`the page ended: ${reason}`);
    if (reason !== 'clean-exit' && now() - started_ms > RESTART_AFTER_ms) contents.reload();
  });
}
