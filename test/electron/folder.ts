import { mkdtempSync, readdirSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';

/** A fresh folder for each call, removed after the test. */
export function freshFolders(): () => string {
  const made: string[] = [];
  afterEach(() => {
    for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
  });
  return () => {
    const folder = realpathSync(mkdtempSync(join(tmpdir(), 'chipdraft-')));
    made.push(folder);
    return folder;
  };
}

/** Temporary files that a save left in a folder. */
export const leftovers = (folder: string): string[] =>
  readdirSync(folder).filter((name) => name.startsWith('.chipdraft-save-'));
