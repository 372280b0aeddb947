import { join } from 'node:path';
import type * as electronMain from 'electron/main';
import { isDocumentPath, setupFiles } from '../files/files.ts';
import type { Disk } from '../files/atomic-write.ts';
import { refusal } from '../files/file-failure.ts';
import { keptJson } from '../files/kept-json.ts';
import { checkRecent, setupRecent } from '../files/recent.ts';
import { checkRecovery, setupRecovery } from '../files/recovery.ts';
import { setupDialogs } from './dialogs.ts';
import { setupIpc } from './ipc.ts';
import { setupMenu } from './menu.ts';
import { setupPaper } from './paper.ts';
import { setupNavigation, setupPermissions } from './navigation.ts';
import { setupOpenRequests } from './open-requests.ts';
import type { OpenRequests } from './open-requests.ts';
import { registerScheme, setupProtocol } from './protocol.ts';
import { setupShellCalls } from './shell-calls.ts';
import { checkWindowState } from './window-state.ts';
import { setupWindow } from './windows.ts';
import type { MainWindow } from './windows.ts';

/** The pieces of Electron that the program is made of. */
export type ElectronPieces = Pick<
  typeof electronMain,
  'app' | 'BrowserWindow' | 'dialog' | 'ipcMain' | 'Menu' | 'protocol' | 'screen' | 'session'
>;

/** What the program is told about the machine. */
export interface Machine {
  readonly electron: ElectronPieces;
  readonly disk: Disk;
  /** Folder of the built preload; the page lies beside it in `renderer`. */
  readonly folder: string;
  readonly argv: readonly string[];
  readonly workingFolder: string;
  readonly platform: NodeJS.Platform;
  readonly now: () => number;
  readonly log: (line: string) => void;
}

/** Starts the program, or hands its documents to the one that is running. Resolves when the page is there. */
export async function startProgram(machine: Machine): Promise<MainWindow | null> {
  const { app, protocol } = machine.electron;
  app.setName('Chipdraft');
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return null;
  }
  app.enableSandbox();
  registerScheme(protocol);
  const requests = setupOpenRequests(app, machine.argv, machine.workingFolder);
  app.on('window-all-closed', () => app.quit());
  await app.whenReady();
  return onReady(machine, requests);
}

async function onReady(machine: Machine, requests: OpenRequests): Promise<MainWindow> {
  const { electron, disk, folder, now, log } = machine;
  const { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session } = electron;
  const kept = <T>(name: string, check: (raw: unknown) => T | null) =>
    keptJson(disk, join(app.getPath('userData'), name), check);
  let showMenu: () => void = () => undefined;

  setupPermissions(session.defaultSession);
  setupNavigation(app);
  const prints = new Map<string, string>();
  setupProtocol(protocol, join(folder, '..', 'renderer'), prints);
  const files = setupFiles(disk, now);
  const recovery = await setupRecovery(files, kept('recovery.json', checkRecovery));
  const recent = await setupRecent(files, kept('recent.json', checkRecent), now, () => showMenu());
  const dialogs = setupDialogs(dialog, () => window.window);
  const window: MainWindow = await setupWindow({
    BrowserWindow,
    screen,
    preload: join(folder, 'preload.cjs'),
    state: kept('window.json', checkWindowState),
    ask: dialogs.askBeforeLeaving,
    settle: recovery.settle,
    now,
    log,
  });
  const calls = setupShellCalls({
    files,
    recent,
    recovery,
    dialogs,
    paper: setupPaper(BrowserWindow, prints),
    window,
    log,
  });
  const quietly = (done: Promise<void>) => void done.catch((error: unknown) => log(String(error)));
  showMenu = setupMenu(Menu, machine.platform, recent.list, {
    command: (id) => window.send('menu', id),
    openRecent: (token) => quietly(calls.openRecent(token)),
  });
  setupIpc(ipcMain, {
    handlers: calls.handlers,
    dropped: (path) => (isDocumentPath(path) ? calls.openPath(path) : dialogs.tell(NOT_A_SHOP)),
    isOwnWindow: window.isOwn,
    log,
  });
  requests.deliverTo((path) => quietly(calls.openPath(path)), window.show);
  await window.load();
  return window;
}

const NOT_A_SHOP = refusal(
  'unreadable',
  'that is not a shop document',
  'drop a Chipdraft shop document (.json)',
);
