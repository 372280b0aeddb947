import { isAbsolute } from 'node:path';
import type { Recovery } from '../../core/document/shell.ts';
import { readMessage, RECOVERY } from '../../core/document/shell-messages.ts';
import type { Files } from './files.ts';
import type { KeptJson } from './kept-json.ts';

/** A recovery as it lies on the disk: with the file's path, as tokens do not outlive the program. */
export interface KeptRecovery {
  readonly text: string;
  readonly name: string;
  readonly at: number;
  readonly path: string | null;
  /** What the file at the path held when it was last read or saved; absent in what older versions kept. */
  readonly hash?: string | null;
}

export interface RecoveryKeeper {
  /** The newest edit that was not saved, or null. */
  get(): Recovery | null;
  /** Keeps an edit in place of the one before; null forgets. */
  keep(recovery: Recovery | null): Promise<void>;
  /** The work since the program started was saved or given up: forgets it, but not what an earlier crash left behind. */
  settle(): Promise<void>;
}

/** A usable recovery out of what the file holds. */
export function checkRecovery(raw: unknown): KeptRecovery | null {
  if (typeof raw !== 'object' || raw === null) return null;
  const { path, hash, ...rest } = raw as Partial<KeptRecovery>;
  const read = readMessage(RECOVERY, { ...rest, file: null });
  if (read === null || (path !== null && (typeof path !== 'string' || !isAbsolute(path)))) return null;
  const { text, name, at } = read.data;
  return { text, name, at, path, hash: typeof hash === 'string' ? hash : null };
}

/** Autosave: calls come in the order of the edits, so the last one is the newest, whatever the clock says. */
export async function setupRecovery(files: Files, kept: KeptJson<KeptRecovery>): Promise<RecoveryKeeper> {
  let current = await kept.read();
  let ours = false;
  const set = (next: KeptRecovery | null) => {
    current = next;
    return kept.keep(next);
  };
  return {
    get() {
      if (current === null) return null;
      const { text, name, at, path, hash } = current;
      return { text, name, at, file: path === null ? null : files.grant(path, hash) };
    },
    keep(recovery) {
      ours = recovery !== null;
      if (recovery === null) return set(null);
      const { text, name, at, file } = recovery;
      const path = file === null ? null : files.pathOf(file.token);
      return set({ text, name, at, path, hash: file === null ? null : files.hashOf(file.token) });
    },
    async settle() {
      if (!ours) return;
      ours = false;
      await set(null);
    },
  };
}
