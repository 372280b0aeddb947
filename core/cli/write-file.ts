import { createHash, randomBytes } from 'node:crypto';
import {
  chmodSync,
  existsSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { temporaryName, writerOf } from '../document/temporary-name.ts';
import { fail, USAGE } from './outcome.ts';
import type { Outcome } from './outcome.ts';

/** Why a file could not be written and what would mend it, by the code of the system. */
const REASONS: Readonly<Record<string, readonly [why: string, remedy: string]>> = {
  ENOENT: ['its folder is not there', 'make the folder, or name another'],
  ENOTDIR: ['its folder is not a folder', 'name a folder that is one'],
  EISDIR: ['it is a folder', 'name a file in it'],
  EACCES: ['you may not write there', 'choose a folder of your own, or ask for the right to write'],
  EPERM: ['you may not write there', 'choose a folder of your own, or ask for the right to write'],
  EROFS: ['that disk can only be read', 'choose a folder on another disk'],
  ENOSPC: ['the disk is full', 'make room, or choose another disk'],
  ENAMETOOLONG: ['its name is too long', 'choose a shorter name'],
};

const codeOf = (cause: unknown): string =>
  cause instanceof Error && 'code' in cause ? String(cause.code) : 'unknown reason';

/** An outcome that says why a file could not be written. */
export function cannotWrite(path: string, cause: unknown): Outcome {
  const code = codeOf(cause);
  const [why, remedy] = REASONS[code] ?? [code, `see whether ${dirname(path)} can be written`];
  return fail(USAGE, `${path}: cannot be written: ${why}\n  remedy: ${remedy}`);
}

/** This process, as its temporary files name it. */
const writer = {
  host: createHash('sha256').update(hostname()).digest('hex').slice(0, 8),
  pid: process.pid,
};

/** Removes what killed commands left in a folder; whoever still runs keeps its own. */
function removeLeftBehind(folder: string): void {
  let names: string[] = [];
  try {
    names = readdirSync(folder);
  } catch {
    // a folder that may be written to and not be read
  }
  for (const name of names) {
    const left = writerOf(name);
    if (left === null || left === 'unknown' || left.host !== writer.host || runs(left.pid)) continue;
    removeQuietly(join(folder, name));
  }
}

function runs(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (cause) {
    return codeOf(cause) !== 'ESRCH';
  }
}

/** The failure that led here is the one to be told; a second one while tidying would hide it. */
function removeQuietly(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // it was never there
  }
}

/** Where a name leads through links, and the rights of the file there; null for a new one. */
function placeOf(path: string): { readonly target: string; readonly mode: number | null } {
  if (!existsSync(path)) return { target: path, mode: null };
  const target = realpathSync(path);
  const { mode } = statSync(target);
  if ((mode & ANY_WRITE) === 0) throw Object.assign(new Error('write-protected'), { code: 'EACCES' });
  return { target, mode: mode & 0o7777 };
}

const ANY_WRITE = 0o222;

/** Writes a file whole or leaves the old one as it was, link and rights too; an outcome where it cannot. */
export function writeWhole(path: string, content: string | Uint8Array): Outcome | null {
  let temporary: string | null = null;
  try {
    const { target, mode } = placeOf(path);
    const name = temporaryName(writer, randomBytes(8).toString('hex'));
    temporary = join(dirname(target), name);
    writeFileSync(temporary, content, { flush: true, flag: 'wx' });
    if (mode !== null) chmodSync(temporary, mode);
    renameSync(temporary, target);
    removeLeftBehind(dirname(target));
    return null;
  } catch (cause) {
    if (temporary !== null) removeQuietly(temporary);
    return cannotWrite(path, cause);
  }
}
