import { basename, isAbsolute } from 'node:path';
import type { RecentFile } from '../../core/document/shell.ts';
import type { Files, Opened } from './files.ts';
import { UNKNOWN_FILE } from './files.ts';
import type { KeptJson } from './kept-json.ts';

export const MOST_RECENT = 8;

export interface RecentPath {
  readonly path: string;
  readonly at: number;
}

export interface Recent {
  list(): readonly RecentFile[];
  /** Puts a file on top of the list. */
  add(path: string): Promise<void>;
  open(token: string): Promise<Opened>;
}

/** A usable list out of what the settings file holds. */
export function checkRecent(raw: unknown): readonly RecentPath[] | null {
  if (!Array.isArray(raw)) return null;
  return raw
    .filter(
      (row: Partial<RecentPath> | null): row is RecentPath =>
        typeof row?.path === 'string' && isAbsolute(row.path) && Number.isFinite(row.at) && row.at! >= 0,
    )
    .slice(0, MOST_RECENT)
    .map(({ path, at }) => ({ path, at }));
}

/** The files that the user opened or saved last; `changed` hears of every change, for the menu. */
export async function setupRecent(
  files: Files,
  kept: KeptJson<readonly RecentPath[]>,
  now: () => number,
  changed: () => void,
): Promise<Recent> {
  let rows = (await kept.read()) ?? [];
  const set = async (next: readonly RecentPath[]) => {
    rows = next.slice(0, MOST_RECENT);
    changed();
    await kept.keep(rows);
  };
  const without = (path: string) => rows.filter((row) => row.path !== path);
  return {
    list: () => rows.map(({ path, at }) => ({ token: files.grant(path).token, name: basename(path), at })),
    add: (path) => set([{ path, at: now() }, ...without(path)]),
    async open(token) {
      const path = files.pathOf(token);
      if (path === null || !rows.some((row) => row.path === path)) return UNKNOWN_FILE;
      const opened = await files.read(path);
      if (opened.ok) await set([{ path, at: now() }, ...without(path)]);
      else if (opened.reason === 'gone') await set(without(path));
      return opened;
    },
  };
}
