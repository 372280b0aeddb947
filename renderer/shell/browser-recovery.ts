import { delMany, entries, set } from 'idb-keyval';
import type { UseStore } from 'idb-keyval';
import { readMessage, RECOVERY } from '../../core/document/shell-messages.ts';
import type { Recovery } from '../../core/document/shell.ts';

/** Key of before each window had one of its own. */
const OLD_KEY = 'recovery';
const PREFIX = 'recovery-';

export interface BrowserRecovery {
  keep(recovery: Recovery | null): Promise<void>;
  /** The newest edit left behind by a window that is not there any more. */
  leftBehind(): Promise<Recovery | null>;
}

/**
 * Keeps the newest edit of each window under a key of its own, so that two windows do not write over each other. A
 * window holds a lock while it lives; what is kept under a key without its lock was left behind.
 */
export function browserRecovery(store: UseStore): BrowserRecovery {
  const own = `${PREFIX}${crypto.getRandomValues(new Uint32Array(4)).join('-')}`;
  /** What was offered: forgotten once the user has decided. */
  let offered: string | null = null;
  // absent where the page did not come by a safe address; then every key counts as left behind
  const locks = navigator.locks as LockManager | undefined;
  // never given back: the browser takes it from a window that is closed or killed
  void locks?.request(own, () => new Promise<void>(() => undefined)).catch(() => undefined);

  const alive = async (): Promise<ReadonlySet<string>> => {
    const state = await locks?.query().catch(() => undefined);
    return new Set((state?.held ?? []).flatMap(({ name }) => name ?? []));
  };

  return {
    async keep(recovery) {
      const decided = offered === null ? [] : [offered];
      offered = null;
      if (recovery !== null) await set(own, recovery, store);
      const gone = recovery === null ? [own, ...decided] : decided;
      if (gone.length > 0) await delMany(gone, store);
    },
    async leftBehind() {
      const [all, living] = await Promise.all([entries(store).catch(() => []), alive()]);
      let newest: Recovery | null = null;
      for (const [key, value] of all) {
        const name = String(key);
        const isOne = name === OLD_KEY || (name.startsWith(PREFIX) && name !== own && !living.has(name));
        const read = isOne ? readMessage(RECOVERY, value) : null;
        if (read === null || (newest !== null && newest.at >= read.data.at)) continue;
        newest = read.data;
        offered = name;
      }
      return newest;
    },
  };
}
