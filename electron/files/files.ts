import { createHash, randomBytes } from 'node:crypto';
import { basename, dirname, extname, isAbsolute, resolve } from 'node:path';
import { changedElsewhere } from '../../core/document/shell-messages.ts';
import type { FileHandle, ShellFailure, ShellResult } from '../../core/document/shell.ts';
import { atomicWrite, removeLeftBehind, stampOf } from './atomic-write.ts';
import type { Disk, Stamp } from './atomic-write.ts';
import { CANCELLED, fileFailure, refusal } from './file-failure.ts';

/** Ending of a shop document. */
export const DOCUMENT_ENDING = '.json';
/** Largest file that is read [bytes]; a shop of 5000 runs is about 5 MB. */
export const MOST_BYTES = 50_000_000;

interface Granted {
  readonly path: string;
  stamp: Stamp | null;
  hash: string | null;
  /** Of the text of a save that failed: it may have got there. */
  tried?: string;
  /** Of a copy by somebody else of which the user was told: null where the file was gone; undefined: not told. */
  told?: string | null | undefined;
}

export type Opened = ShellResult<{ readonly file: FileHandle; readonly text: string }>;
export type Saved = ShellResult<{ readonly file: FileHandle }>;

/** The files that the user chose, and nothing else. The page knows tokens; only this knows paths. */
export interface Files {
  /** Takes note of a path that the user chose, and of the text that it held then; the same path keeps its token. */
  grant(path: string, hash?: string | null): FileHandle;
  /** What is known of a token's file, for a later run of the program: a word for its text; null where nothing is. */
  hashOf(token: string): string | null;
  /** The path behind a token, null for one that was never given out. */
  pathOf(token: string): string | null;
  read(path: string): Promise<Opened>;
  write(path: string, text: string): Promise<Saved>;
  /** Writes a copy for other programs, of which no note is taken. */
  writeCopy(path: string, content: string | Uint8Array): Promise<ShellResult<{ readonly name: string }>>;
  /** Saves to a token's file, or to one that `choose` asks the user for. */
  save(file: FileHandle | null, text: string, choose: () => Promise<string | null>): Promise<Saved>;
  changedOutside(file: FileHandle): Promise<boolean>;
}

const hashOf = (bytes: Uint8Array | string) => createHash('sha256').update(bytes).digest('hex');

/** Whether a path that came from outside is one that may be opened as a document. */
export const isDocumentPath = (path: string): boolean =>
  isAbsolute(path) && !path.includes('\0') && extname(path).toLowerCase() === DOCUMENT_ENDING;

export const UNKNOWN_FILE: ShellFailure = refusal(
  'gone',
  'that file was not chosen since the program started',
  'open it anew, or use Save as',
);

/** File access on `disk`; `now` is the clock [ms]. */
export function setupFiles(disk: Disk, now: () => number): Files {
  const byToken = new Map<string, Granted>();
  const byPath = new Map<string, string>();

  const grant = (given: string, hash: string | null = null): FileHandle => {
    const path = resolve(given);
    const token = byPath.get(path) ?? randomBytes(16).toString('hex');
    byPath.set(path, token);
    const known = byToken.get(token);
    if (known === undefined) byToken.set(token, { path, stamp: null, hash });
    else known.hash ??= hash;
    return { token, name: basename(path) };
  };
  const remember = (file: FileHandle, stamp: Stamp | null, hash: string) =>
    Object.assign(byToken.get(file.token)!, { stamp, hash, told: undefined });

  const read = async (path: string): Promise<Opened> => {
    const name = basename(path);
    try {
      const found = await readBytes(disk, path);
      if (found === null) {
        return refusal(
          'unreadable',
          `${name} is larger than any shop document`,
          'open a Chipdraft shop document',
        );
      }
      const text = decode(found.bytes);
      if (text === null) {
        return refusal('unreadable', `${name} is not text in UTF-8`, 'open a Chipdraft shop document');
      }
      const file = grant(path);
      remember(file, found.stamp, hashOf(found.bytes));
      return { ok: true, file, text };
    } catch (error) {
      return fileFailure(name, 'read', error);
    }
  };

  // One write after the other, so that the last call is what stays.
  let writing: Promise<unknown> = Promise.resolve();
  const inTurn = (work: () => Promise<Saved>): Promise<Saved> => {
    const saved = writing.then(work);
    writing = saved;
    return saved;
  };
  const write = (path: string, text: string): Promise<Saved> => inTurn(() => writeNow(path, text));
  const writeNow = async (path: string, text: string): Promise<Saved> => {
    try {
      // before, so that a program that is killed at every save leaves one file behind and not one for each
      await removeLeftBehind(disk, dirname(path), now());
      const stamp = await atomicWrite(disk, path, text);
      const file = grant(path);
      remember(file, stamp, hashOf(text));
      return { ok: true, file };
    } catch (error) {
      // it may have failed at the last step, with the new text in place: that is no change by somebody else
      const known = byToken.get(byPath.get(resolve(path)) ?? '');
      if (known !== undefined) known.tried = hashOf(text);
      return fileFailure(basename(path), 'saved', error);
    }
  };

  /** What a file holds now; null where it cannot be read. */
  const textThere = async (path: string): Promise<{ stamp: Stamp; hash: string } | null> => {
    const found = await readBytes(disk, path).catch(() => null);
    return found === null ? null : { stamp: found.stamp, hash: hashOf(found.bytes) };
  };
  /** What somebody else made of a known file since; undefined where it is as it was, null where it cannot be read. */
  const changeOf = async (known: Granted): Promise<string | null | undefined> => {
    if (known.hash === null) return undefined;
    const there = await disk.stat(known.path, { bigint: true }).catch(() => null);
    if (there !== null && known.stamp !== null && same(stampOf(there), known.stamp)) return undefined;
    const found = await textThere(known.path);
    if (found === null || (found.hash !== known.hash && found.hash !== known.tried))
      return found?.hash ?? null;
    // Touched, or replaced by an equal copy: not changed, and no need to read it again.
    Object.assign(known, found);
    return undefined;
  };
  const saveKnown = async (known: Granted, text: string): Promise<Saved> => {
    const change = await changeOf(known);
    if (change !== undefined && change !== known.told) return changedElsewhere(basename(known.path));
    return writeNow(known.path, text);
  };

  return {
    grant,
    hashOf: (token) => byToken.get(token)?.hash ?? null,
    pathOf: (token) => byToken.get(token)?.path ?? null,
    read,
    write,
    async writeCopy(path, content) {
      try {
        await atomicWrite(disk, path, content);
        return { ok: true, name: basename(path) };
      } catch (error) {
        return fileFailure(basename(path), 'saved', error);
      }
    },
    async save(file, text, choose) {
      if (file === null) {
        const chosen = await choose();
        return chosen === null ? CANCELLED : write(chosen, text);
      }
      const known = byToken.get(file.token);
      return known === undefined ? UNKNOWN_FILE : inTurn(() => saveKnown(known, text));
    },
    async changedOutside(file) {
      const known = byToken.get(file.token);
      if (known === undefined) return false;
      const change = await changeOf(known);
      known.told = change;
      return change !== undefined;
    },
  };
}

const same = (a: Stamp, b: Stamp) =>
  a.size === b.size && a.ino === b.ino && a.mtimeNs === b.mtimeNs && a.ctimeNs === b.ctimeNs;

/** Bytes and the stamp from before they were read, so that a change while reading shows later; null: too large. */
async function readBytes(disk: Disk, path: string): Promise<{ bytes: Uint8Array; stamp: Stamp } | null> {
  // Asked by name first: opening a pipe would wait for its other end.
  if (!(await disk.stat(path)).isFile()) throw Object.assign(new Error('not a file'), { code: 'EISDIR' });
  const file = await disk.open(path, 'r');
  try {
    const found = await file.stat({ bigint: true });
    if (found.size > BigInt(MOST_BYTES)) return null;
    const bytes = await file.readFile();
    return bytes.length > MOST_BYTES ? null : { bytes, stamp: stampOf(found) };
  } finally {
    await file.close();
  }
}

/** UTF-8 text without its byte-order mark; null for bytes that are not UTF-8. */
function decode(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (error instanceof TypeError) return null;
    throw error;
  }
}
