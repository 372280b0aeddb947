import { CANCELLED } from '../files/file-failure.ts';
import type { Files, Opened, Saved } from '../files/files.ts';
import type { Recent } from '../files/recent.ts';
import type { RecoveryKeeper } from '../files/recovery.ts';
import type { Dialogs } from './dialogs.ts';
import type { Handlers } from './ipc.ts';
import type { PaperPrinter } from './paper.ts';
import type { MainWindow } from './windows.ts';

export interface Parts {
  readonly files: Files;
  readonly recent: Recent;
  readonly recovery: RecoveryKeeper;
  readonly dialogs: Dialogs;
  readonly paper: PaperPrinter;
  readonly window: Pick<MainWindow, 'send' | 'setUnsaved' | 'saved'>;
  readonly log: (line: string) => void;
}

export interface ShellCalls {
  readonly handlers: Handlers;
  /** Opens a document that did not come by a call: dropped, from the menu or from outside. */
  openPath(path: string): Promise<void>;
  openRecent(token: string): Promise<void>;
}

/** What each call of the shell does, put together from the parts. */
export function setupShellCalls({ files, recent, recovery, dialogs, paper, window, log }: Parts): ShellCalls {
  // A list of recent files that cannot be kept is no reason to call an opened or saved document a failure.
  const remember = async (result: Opened | Saved) => {
    const path = result.ok ? files.pathOf(result.file.token) : null;
    if (path === null) return;
    await recent.add(path).catch((error: unknown) => log(`recent files were not kept: ${String(error)}`));
  };
  const deliver = async (opened: Opened) => {
    if (opened.ok) window.send('opened', opened.file, opened.text);
    else await dialogs.tell(opened);
  };
  return {
    handlers: {
      async open() {
        const path = await dialogs.chooseToOpen();
        if (path === null) return CANCELLED;
        const opened = await files.read(path);
        await remember(opened);
        return opened;
      },
      openRecent: (token) => recent.open(token),
      recent: () => recent.list(),
      async save(file, text, suggestedName) {
        const saved = await files.save(file, text, () => dialogs.chooseToSave(suggestedName));
        window.saved(saved.ok);
        await remember(saved);
        return saved;
      },
      async saveCopy(text, ending, suggestedName) {
        const path = await dialogs.chooseCopy(suggestedName, ending);
        return path === null ? CANCELLED : files.writeCopy(path, text);
      },
      async savePdf(html, size, suggestedName) {
        const path = await dialogs.chooseCopy(suggestedName, 'pdf');
        return path === null ? CANCELLED : files.writeCopy(path, await paper.pdf(html, size));
      },
      printPage: (html, size) => paper.print(html, size),
      changedOutside: (file) => files.changedOutside(file),
      keepRecovery: (kept) => recovery.keep(kept),
      recovery: () => recovery.get(),
      async setUnsaved(unsaved, title) {
        // Told to the window at once: of two calls the later one has to be what it goes by.
        window.setUnsaved(unsaved, title);
        if (!unsaved) await recovery.settle();
      },
    },
    async openPath(path) {
      const opened = await files.read(path);
      await remember(opened);
      await deliver(opened);
    },
    openRecent: async (token) => deliver(await recent.open(token)),
  };
}
