import { createStore, get, set } from 'idb-keyval';
import { changedElsewhere } from '../../core/document/shell-messages.ts';
import type { FileHandle, RecentFile, Shell, ShellFailure } from '../../core/document/shell.ts';
import { browserRecovery } from './browser-recovery.ts';

const RECENT = 'recent';
const RECENT_KEPT = 8;

/** The part of the File System Access interface that is used; not every browser has it. */
interface DiskHandle {
  readonly name: string;
  getFile(): Promise<File>;
  createWritable(): Promise<{
    write(text: string): Promise<void>;
    close(): Promise<void>;
    abort?(): Promise<void>;
  }>;
  queryPermission?(mode: { mode: 'read' | 'readwrite' }): Promise<string>;
  requestPermission?(mode: { mode: 'read' | 'readwrite' }): Promise<string>;
}
interface DiskWindow {
  showOpenFilePicker?(options: object): Promise<DiskHandle[]>;
  showSaveFilePicker?(options: object): Promise<DiskHandle>;
}

const COPIES = {
  html: { says: 'Web page', mime: 'text/html' },
  csv: { says: 'Comma-separated values', mime: 'text/csv' },
} as const;

const TYPES = [{ description: 'Chipdraft shop', accept: { 'application/json': ['.json'] } }];

interface KeptFile {
  readonly token: string;
  readonly name: string;
  readonly at: number;
  readonly handle: DiskHandle | null;
}

/** The workbook in a plain browser: files through its pickers or by download, recovery in IndexedDB. */
export function browserShell(): Shell {
  const disk = window as unknown as DiskWindow;
  const store = createStore('chipdraft', 'keep');
  const handles = new Map<string, DiskHandle>();
  const stamps = new Map<string, string>();
  /** Stamps of copies by somebody else of which the user was told. */
  const told = new Map<string, string>();
  const kept = browserRecovery(store);
  let unsaved = false;
  let counter = 0;

  window.addEventListener('beforeunload', (event) => {
    if (unsaved) event.preventDefault();
  });

  const adopt = async (handle: DiskHandle | null, name: string, token = `${Date.now()}-${counter++}`) => {
    if (handle) {
      handles.set(token, handle);
      stamps.set(token, await stampOf(handle));
      told.delete(token);
    }
    await remember({ token, name, at: Date.now(), handle });
    return { token, name } satisfies FileHandle;
  };
  const remember = async (file: KeptFile) => {
    if (!file.handle) return;
    const before = ((await get(RECENT, store)) as KeptFile[] | undefined) ?? [];
    const others = before.filter((kept) => kept.token !== file.token && kept.name !== file.name);
    await set(RECENT, [file, ...others].slice(0, RECENT_KEPT), store).catch(() => undefined);
  };

  /** Whether somebody else wrote a file since, other than what the user was told of. */
  const isNews = async (token: string, handle: DiskHandle): Promise<boolean> => {
    const stamp = stamps.get(token);
    if (stamp === undefined) return false;
    const now = await stampOf(handle).catch(() => GONE);
    return now !== stamp && now !== told.get(token);
  };

  return {
    kind: 'browser',
    async open() {
      try {
        if (disk.showOpenFilePicker) {
          const [handle] = await disk.showOpenFilePicker({ types: TYPES });
          if (!handle) return cancelled;
          const text = await (await handle.getFile()).text();
          return { ok: true, file: await adopt(handle, handle.name), text };
        }
        const chosen = await chooseByInput();
        if (!chosen) return cancelled;
        return { ok: true, file: await adopt(null, chosen.name), text: await chosen.text() };
      } catch (cause) {
        return failure(cause, 'the file');
      }
    },
    async openRecent(token) {
      const kept = (((await get(RECENT, store)) as KeptFile[] | undefined) ?? []).find(
        (f) => f.token === token,
      );
      if (!kept?.handle) return { ...cancelled, reason: 'gone', message: 'that file is not known any more' };
      try {
        if ((await kept.handle.requestPermission?.({ mode: 'read' })) === 'denied') return cancelled;
        const text = await (await kept.handle.getFile()).text();
        return { ok: true, file: await adopt(kept.handle, kept.name, token), text };
      } catch (cause) {
        return failure(cause, kept.name);
      }
    },
    async recent() {
      const kept = ((await get(RECENT, store).catch(() => [])) as KeptFile[] | undefined) ?? [];
      return kept.map(({ token, name, at }): RecentFile => ({ token, name, at }));
    },
    async save(file, text, suggestedName) {
      try {
        let handle = file ? (handles.get(file.token) ?? null) : null;
        if (!handle && disk.showSaveFilePicker) {
          handle = await disk.showSaveFilePicker({ suggestedName, types: TYPES });
        }
        if (!handle) {
          download(text, file?.name ?? suggestedName);
          return { ok: true, file: file ?? { token: `download-${counter++}`, name: suggestedName } };
        }
        if (file && (await isNews(file.token, handle))) return changedElsewhere(handle.name);
        // the browser writes to a file of its own and swaps it in on close
        const writable = await handle.createWritable();
        try {
          await writable.write(text);
          await writable.close();
        } catch (cause) {
          await writable.abort?.().catch(() => undefined);
          throw cause;
        }
        return { ok: true, file: await adopt(handle, handle.name, file?.token) };
      } catch (cause) {
        return failure(cause, file?.name ?? suggestedName);
      }
    },
    async saveCopy(text, ending, suggestedName) {
      try {
        if (!disk.showSaveFilePicker) {
          download(text, suggestedName, COPIES[ending].mime);
          return { ok: true, name: suggestedName };
        }
        const { says, mime } = COPIES[ending];
        const types = [{ description: says, accept: { [mime]: [`.${ending}`] } }];
        const handle = await disk.showSaveFilePicker({ suggestedName, types });
        const writable = await handle.createWritable();
        await writable.write(text);
        await writable.close();
        return { ok: true, name: handle.name };
      } catch (cause) {
        return failure(cause, suggestedName);
      }
    },
    // the page prints its own preview, and the browser's print makes PDF files
    savePdf: () => Promise.resolve(notHere),
    printPage: () => Promise.resolve(notHere),
    async changedOutside(file) {
      const handle = handles.get(file.token);
      if (!handle || !stamps.has(file.token)) return false;
      const now = await stampOf(handle).catch(() => GONE);
      if (now === stamps.get(file.token)) return false;
      told.set(file.token, now);
      return true;
    },
    keepRecovery: kept.keep,
    recovery: kept.leftBehind,
    setUnsaved(value, title) {
      unsaved = value;
      document.title = `${value ? '• ' : ''}${title} - Chipdraft`;
    },
    onMenu: () => () => undefined,
    onOpened: () => () => undefined,
  };
}

/** Stands for the stamp of a file that is not there. */
const GONE = 'gone';

/** Which copy of a file is there, as far as a browser tells. */
async function stampOf(handle: DiskHandle): Promise<string> {
  const { lastModified, size } = await handle.getFile();
  return `${lastModified} ${size}`;
}

const cancelled: ShellFailure = { ok: false, reason: 'cancelled', message: '', remedy: '' };

const notHere: ShellFailure = {
  ok: false,
  reason: 'not-possible-here',
  message: 'a browser prints by itself',
  remedy: 'use its print, which saves PDF too',
};

function failure(cause: unknown, name: string): ShellFailure {
  const kind = cause instanceof Error ? cause.name : '';
  if (kind === 'AbortError') return cancelled;
  if (kind === 'QuotaExceededError') {
    return {
      ok: false,
      reason: 'disk-full',
      message: `${name}: the disk is full`,
      remedy: 'free some space, or save elsewhere',
    };
  }
  if (kind === 'NotAllowedError' || kind === 'NoModificationAllowedError') {
    return {
      ok: false,
      reason: 'read-only',
      message: `${name}: writing is not allowed there`,
      remedy: 'save under another name',
    };
  }
  if (kind === 'NotFoundError') {
    return {
      ok: false,
      reason: 'gone',
      message: `${name}: the file is not there any more`,
      remedy: 'save it anew',
    };
  }
  const why = cause instanceof Error ? cause.message : String(cause);
  return {
    ok: false,
    reason: 'unreadable',
    message: `${name}: ${why}`,
    remedy: 'try again, or choose another file',
  };
}

function chooseByInput(): Promise<File | null> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
    input.addEventListener('change', () => resolve(input.files?.[0] ?? null));
    input.addEventListener('cancel', () => resolve(null));
    input.click();
  });
}

function download(text: string, name: string, type = 'application/json'): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
