import { EventEmitter } from 'node:events';
import type { ElectronPieces } from '../../electron/main/main.ts';

/** An event as Electron hands it on, with a note of whether it was prevented. */
export function event() {
  const made = { prevented: false, preventDefault: () => (made.prevented = true) };
  return made;
}

export class FakeContents extends EventEmitter {
  readonly sent: unknown[][] = [];
  reloads = 0;
  opener: (details: { url: string }) => { action: string } = () => ({ action: 'allow' });
  send(...message: unknown[]) {
    this.sent.push(message);
  }
  reload() {
    this.reloads++;
  }
  /** How printing ends. */
  printed: [done: boolean, reason: string] = [true, ''];
  readonly printing: unknown[] = [];
  printToPDF(options: unknown) {
    this.printing.push(options);
    return Promise.resolve(new TextEncoder().encode('%PDF-'));
  }
  print(options: unknown, told: (done: boolean, reason: string) => void) {
    this.printing.push(options);
    told(...this.printed);
  }
  setWindowOpenHandler(handler: typeof this.opener) {
    this.opener = handler;
  }
}

export class FakeWindow extends EventEmitter {
  readonly webContents = new FakeContents();
  readonly calls: string[] = [];
  title = '';
  edited = false;
  closed = false;
  bounds = { x: 0, y: 0, width: 1200, height: 800 };
  address = '';
  constructor(readonly options: Record<string, unknown>) {
    super();
  }
  setTitle(title: string) {
    this.title = title;
  }
  setDocumentEdited(edited: boolean) {
    this.edited = edited;
  }
  /** As in Electron: asks by an event, and closes unless that is prevented. */
  close() {
    const asked = event();
    this.emit('close', asked);
    if (!asked.prevented) {
      this.closed = true;
      this.emit('closed');
    }
  }
  destroy() {
    this.closed = true;
  }
  loadURL(address: string) {
    this.address = address;
    return Promise.resolve();
  }
  show = () => void this.calls.push('show');
  focus = () => void this.calls.push('focus');
  restore = () => void this.calls.push('restore');
  maximize = () => void this.calls.push('maximize');
  isMinimized = () => false;
  isFullScreen = () => false;
  isDestroyed = () => this.closed;
  isMaximized = () => false;
  getNormalBounds = () => this.bounds;
}

type Answerer = (event: unknown, ...given: unknown[]) => unknown;

/** Answers as Electron does: a channel without a handler is refused. */
export class FakeIpcMain {
  readonly handlers = new Map<string, Answerer>();
  handle(channel: string, handler: Answerer) {
    if (this.handlers.has(channel)) throw new Error(`second handler for ${channel}`);
    this.handlers.set(channel, handler);
  }
  async invoke(channel: string, from: unknown, ...given: unknown[]): Promise<unknown> {
    const handler = this.handlers.get(channel);
    if (!handler) throw new Error(`No handler registered for '${channel}'`);
    // Messages are copied between the processes; what cannot be copied cannot be sent.
    return structuredClone(await handler(from, ...structuredClone(given)));
  }
}

export interface Answers {
  open?: string | null;
  save?: string | null;
  box?: number;
}

/** All pieces of Electron that the program is made of. */
export function fakeElectron(userData: string, { locked = false } = {}) {
  const windows: FakeWindow[] = [];
  const order: string[] = [];
  const answers: Answers = {};
  const boxes: Record<string, unknown>[] = [];
  const saveOptions: Record<string, unknown>[] = [];
  const menus: unknown[] = [];
  const guards: Record<string, (...given: never[]) => unknown> = {};
  const served: Record<string, (request: { method: string; url: string }) => Promise<Response>> = {};
  const ipcMain = new FakeIpcMain();
  const app = Object.assign(new EventEmitter(), {
    quits: 0,
    setName: (name: string) => void order.push(`name ${name}`),
    requestSingleInstanceLock: () => (order.push('lock'), !locked),
    enableSandbox: () => void order.push('sandbox'),
    whenReady: () => (order.push('ready'), Promise.resolve()),
    getPath: () => userData,
    quit: () => void app.quits++,
  });
  class Window extends FakeWindow {
    constructor(options: Record<string, unknown>) {
      super(options);
      order.push('window');
      windows.push(this);
      app.emit('web-contents-created', event(), this.webContents);
    }
  }
  const keep = (name: string) => (handler: (...given: never[]) => unknown) => void (guards[name] = handler);
  const pieces = {
    app,
    BrowserWindow: Window,
    ipcMain,
    dialog: {
      showOpenDialog: () =>
        Promise.resolve(
          answers.open ? { canceled: false, filePaths: [answers.open] } : { canceled: true, filePaths: [] },
        ),
      showSaveDialog: (_window: unknown, options: Record<string, unknown>) => {
        saveOptions.push(options);
        return Promise.resolve(
          answers.save ? { canceled: false, filePath: answers.save } : { canceled: true, filePath: '' },
        );
      },
      showMessageBox: (_window: unknown, options: Record<string, unknown>) => {
        boxes.push(options);
        return Promise.resolve({ response: answers.box ?? 0 });
      },
    },
    Menu: {
      buildFromTemplate: (template: unknown) => template,
      setApplicationMenu: (menu: unknown) => void menus.push(menu),
    },
    protocol: {
      registerSchemesAsPrivileged: () => void order.push('scheme'),
      handle: (scheme: string, handler: (typeof served)[string]) => void (served[scheme] = handler),
    },
    screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1040 } }] },
    session: {
      defaultSession: {
        setPermissionRequestHandler: keep('request'),
        setPermissionCheckHandler: keep('check'),
        setDevicePermissionHandler: keep('device'),
        webRequest: { onBeforeRequest: keep('network') },
      },
    },
  };
  const electron = pieces as unknown as ElectronPieces;
  return {
    electron,
    pieces,
    app,
    ipcMain,
    windows,
    order,
    answers,
    boxes,
    saveOptions,
    menus,
    guards,
    served,
  };
}

/** A message's sender: the window's own page, unless something else is said. */
export const from = (
  sender: unknown,
  frame: unknown = { url: 'app://chipdraft/index.html', parent: null },
) => ({
  sender,
  senderFrame: frame,
});

/** Lets everything that waits for the disk or another promise get on. */
export async function until(done: () => boolean): Promise<void> {
  for (let i = 0; i < 400 && !done(); i++) await new Promise((resolve) => setTimeout(resolve, 5));
  if (!done()) throw new Error('waited for something that did not come');
}
