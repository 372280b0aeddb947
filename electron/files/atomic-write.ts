import { createHash, randomBytes } from 'node:crypto';
import type * as promises from 'node:fs/promises';
import { hostname } from 'node:os';
import { basename, dirname, join, resolve } from 'node:path';
import { temporaryName, writerOf } from '../../core/document/temporary-name.ts';
import type { Writer } from '../../core/document/temporary-name.ts';
import { codeOf } from './file-failure.ts';

/** The calls of the file system that saving needs; tests let each of them fail in turn. */
export type Disk = Pick<
  typeof promises,
  'open' | 'rename' | 'unlink' | 'stat' | 'readlink' | 'readdir' | 'mkdir'
>;

/** Which copy of a file is on the disk: a write or a replacement by anybody changes at least one part. */
export interface Stamp {
  readonly size: bigint;
  readonly ino: bigint;
  readonly mtimeNs: bigint;
  readonly ctimeNs: bigint;
}

/** This process, as its temporary files name it. */
const SELF: Writer = {
  host: createHash('sha256').update(hostname()).digest('hex').slice(0, 8),
  pid: process.pid,
};
/** Names of temporary files that are being written now. */
const writing = new Set<string>();
/** Age after which a temporary file of another machine is known to be left behind by a program that was killed. */
const LEFT_BEHIND_MS = 10 * 60 * 1000;
const MOST_LINKS = 40;
const ANY_WRITE = 0o222;
/** Codes by which some disks say that a folder cannot be flushed; the file itself was flushed. */
const FOLDER_NOT_FLUSHED = new Set(['EINVAL', 'ENOTSUP', 'ENOSYS', 'EISDIR', 'EPERM', 'EACCES', 'EBADF']);

/** Where a path leads through symbolic links, also when the last one leads to a file that is not there yet. */
export async function linkTarget(disk: Pick<Disk, 'readlink'>, path: string): Promise<string> {
  let target = path;
  for (let i = 0; i < MOST_LINKS; i++) {
    try {
      target = resolve(dirname(target), await disk.readlink(target));
    } catch (error) {
      const code = codeOf(error);
      // EINVAL: not a link (UNKNOWN on some Windows disks); ENOENT: to be made.
      if (code === 'EINVAL' || code === 'ENOENT' || code === 'UNKNOWN') return target;
      throw error;
    }
  }
  throw Object.assign(new Error('links that lead in a circle'), { code: 'ELOOP' });
}

/**
 * Writes a file whole or not at all: a temporary file in the same folder, flushed, takes the old one's name in one
 * step. On failure the old file is untouched and the temporary one is removed. A symbolic link stays a link; the
 * permissions of an existing file stay.
 *
 * @returns the stamp of what was written; null if somebody else replaced it in the same moment
 */
export async function atomicWrite(
  disk: Disk,
  path: string,
  text: string | Uint8Array,
): Promise<Stamp | null> {
  const target = await linkTarget(disk, path);
  const folder = dirname(target);
  const mode = await existingMode(disk, target);
  const temporary = join(folder, temporaryName(SELF, randomBytes(8).toString('hex')));
  writing.add(basename(temporary));
  let inode: bigint;
  try {
    inode = await writeTemporary(disk, temporary, text, mode);
    await disk.rename(temporary, target);
  } catch (error) {
    await removeQuietly(disk, temporary);
    throw error;
  } finally {
    writing.delete(basename(temporary));
  }
  await flushFolder(disk, folder);
  const now = await disk.stat(target, { bigint: true });
  return now.ino === inode ? stampOf(now) : null;
}

export const stampOf = ({ size, ino, mtimeNs, ctimeNs }: Stamp): Stamp => ({ size, ino, mtimeNs, ctimeNs });

/**
 * Removes temporary files that killed programs left in the folder: of this machine at once, as it knows who runs; of
 * others, which may be writing, once they are old. Failing to do so harms nothing.
 */
export async function removeLeftBehind(disk: Disk, folder: string, now_ms: number): Promise<void> {
  const names = await disk.readdir(folder).catch(() => [] as string[]);
  for (const name of names) {
    const path = join(folder, name);
    const writer = writerOf(name);
    if (writer === null || writing.has(name)) continue;
    const found = await disk.stat(path).catch(() => null);
    if (!found?.isFile()) continue;
    if (isGone(writer) || now_ms - found.mtimeMs > LEFT_BEHIND_MS) await removeQuietly(disk, path);
  }
}

/** Whether who wrote a temporary file is known to write it no more. */
function isGone(writer: Writer | 'unknown'): boolean {
  if (writer === 'unknown' || writer.host !== SELF.host) return false;
  if (writer.pid === SELF.pid) return true;
  try {
    process.kill(writer.pid, 0);
    return false;
  } catch (error) {
    return codeOf(error) === 'ESRCH';
  }
}

async function existingMode(disk: Disk, target: string): Promise<number | null> {
  try {
    const found = await disk.stat(target);
    if (!found.isFile()) throw Object.assign(new Error('not a file'), { code: 'EISDIR' });
    // Renaming would replace a write-protected file without asking.
    if ((found.mode & ANY_WRITE) === 0) throw Object.assign(new Error('write-protected'), { code: 'EACCES' });
    return found.mode & 0o7777;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}

async function writeTemporary(
  disk: Disk,
  path: string,
  text: string | Uint8Array,
  mode: number | null,
): Promise<bigint> {
  const file = await disk.open(path, 'wx', mode ?? 0o666);
  let inode: bigint;
  try {
    try {
      await file.writeFile(text, 'utf8');
      if (mode !== null) await file.chmod(mode);
      await file.sync();
      inode = (await file.stat({ bigint: true })).ino;
    } finally {
      await file.close();
    }
  } catch (error) {
    await removeQuietly(disk, path);
    throw error;
  }
  return inode;
}

async function flushFolder(disk: Disk, folder: string): Promise<void> {
  try {
    const handle = await disk.open(folder, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (!FOLDER_NOT_FLUSHED.has(codeOf(error) ?? '')) throw error;
  }
}

/** The failure that led here is the one to be told; a second one while tidying would hide it. */
async function removeQuietly(disk: Disk, path: string): Promise<void> {
  await disk.unlink(path).catch(() => undefined);
}
