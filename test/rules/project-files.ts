import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** The project's top folder. */
export const ROOT = new URL('../..', import.meta.url).pathname.replace(/\/$/, '');

/** Files by path relative to the top folder, with `/` between folders. */
export type FileSet = ReadonlyMap<string, string>;

/** The lines of .gitignore, without comments. */
export function ignoredPatterns(): string[] {
  const lines = readFileSync(join(ROOT, '.gitignore'), 'utf8').split('\n');
  return lines.map((line) => line.trim()).filter((line) => line !== '' && !line.startsWith('#'));
}

/** Whether a bare name matches one of the patterns (`name`, `name/`, `*.ending`). */
export function isIgnored(name: string, patterns: readonly string[]): boolean {
  return patterns.some((pattern) => {
    const bare = pattern.replace(/^\//, '').replace(/\/$/, '');
    return bare.startsWith('*') ? name.endsWith(bare.slice(1)) : name === bare;
  });
}

/** Paths of all files of the project below `folder` that git keeps. */
export function projectFiles(folder = ''): string[] {
  const patterns = ignoredPatterns();
  const found: string[] = [];
  const walk = (path: string) => {
    for (const entry of readdirSync(join(ROOT, path), { withFileTypes: true })) {
      if (entry.name === '.git' || isIgnored(entry.name, patterns)) continue;
      const inside = path === '' ? entry.name : `${path}/${entry.name}`;
      if (entry.isDirectory()) walk(inside);
      else if (entry.isFile()) found.push(inside);
    }
  };
  walk(folder);
  return found.sort();
}

/** Text of the files that `wanted` lets through. */
export function readFiles(wanted: (path: string) => boolean): FileSet {
  const paths = projectFiles().filter(wanted);
  return new Map(paths.map((path) => [path, readFileSync(join(ROOT, path), 'utf8')]));
}
