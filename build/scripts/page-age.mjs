// Whether the built page is older than what it is made of.
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const MADE_OF = ['core', 'renderer', 'build/config/vite.config.ts', 'package.json', 'package-lock.json'];

/** @param {string} top - the project's folder */
export function pageIsStale(top) {
  const built = statSync(join(top, 'dist/renderer/index.html'), { throwIfNoEntry: false });
  if (built === undefined) return true;
  return MADE_OF.some((path) => newest(join(top, path)) > built.mtimeMs);
}

/** Time of the last change at or below a path; a folder's own time tells of files that were taken away. */
function newest(path) {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) return 0;
  if (!found.isDirectory()) return found.mtimeMs;
  return readdirSync(path).reduce(
    (latest, name) => Math.max(latest, newest(join(path, name))),
    found.mtimeMs,
  );
}
