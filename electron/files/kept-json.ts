import { atomicWrite, removeLeftBehind } from './atomic-write.ts';
import type { Disk } from './atomic-write.ts';
import { codeOf } from './file-failure.ts';
import { dirname } from 'node:path';

/** A small JSON file of the program's own, in the user's settings folder. */
export interface KeptJson<T> {
  /** What was kept; null if there is nothing, or nothing that can be used. */
  read(): Promise<T | null>;
  /** Keeps a value, or with null forgets it. Of several calls the last one stays. */
  keep(value: T | null): Promise<void>;
}

/** Keeps JSON at `path`; `check` gives back a usable value or null, as the file may be old or broken. */
export function keptJson<T>(
  disk: Disk,
  path: string,
  check: (raw: unknown) => T | null,
  now: () => number = Date.now,
): KeptJson<T> {
  let working: Promise<void> | null = null;
  let next: { value: T | null } | null = null;

  const writeOne = async (value: T | null) => {
    if (value === null) {
      await disk.unlink(path).catch((error: unknown) => {
        if (codeOf(error) !== 'ENOENT') throw error;
      });
      return;
    }
    await disk.mkdir(dirname(path), { recursive: true });
    await tidy();
    await atomicWrite(disk, path, JSON.stringify(value));
  };
  // one process alone writes here; who was killed at it left its temporary file
  const tidy = () => removeLeftBehind(disk, dirname(path), now());
  const work = async () => {
    while (next !== null) {
      const { value } = next;
      next = null;
      await writeOne(value);
    }
  };

  return {
    async read() {
      await tidy();
      try {
        const file = await disk.open(path, 'r');
        try {
          return check(JSON.parse(await file.readFile('utf8')));
        } finally {
          await file.close();
        }
      } catch {
        // Never kept, broken or not to be read: the program starts without it rather than not at all.
        return null;
      }
    },
    keep(value) {
      // Edits come faster than disks: a waiting value is replaced by a newer one.
      next = { value };
      working ??= work().finally(() => (working = null));
      return working;
    },
  };
}
