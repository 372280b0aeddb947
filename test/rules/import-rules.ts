import { builtinModules } from 'node:module';
import { posix } from 'node:path';
import ts from 'typescript';
import type { FileSet } from './project-files.ts';

/** One import that is written in a file. */
export interface Import {
  readonly from: string;
  /** As written. */
  readonly specifier: string;
  /** Path inside the project, for a relative import; null for a package. */
  readonly to: string | null;
}

/** Folders of core that hold physics: they never import the network, the document or what is made of it. */
export const PHYSICS = ['air', 'duct', 'fittings', 'separator', 'filter', 'conveying', 'fan'];
const ABOVE_PHYSICS = [
  'network',
  'document',
  'summary',
  'checks',
  'fan-bench',
  'chance',
  'upkeep',
  'sources',
];
const SCREENS = ['plan', 'ledger', 'curve', 'fan-bench', 'upkeep', 'sheets'];
const SOURCE = /\.(ts|mts|js|mjs|svelte)$/;

/** Names allowed on the top level beside dotfiles. */
const TOP_LEVEL = new Set([
  ...['package.json', 'package-lock.json', 'tsconfig.json', 'README.md', 'DEVELOPERS.md', 'LICENSE'],
  ...['core', 'electron', 'renderer', 'test', 'build'],
]);

/** Every import, export-from and dynamic import of the source files. */
export function importsOf(files: FileSet): Import[] {
  const found: Import[] = [];
  for (const [from, text] of files) {
    if (!SOURCE.test(from)) continue;
    const scripts = from.endsWith('.svelte')
      ? [...text.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map((match) => match[1]!)
      : [text];
    for (const script of scripts) {
      for (const { fileName } of ts.preProcessFile(script, true, true).importedFiles) {
        found.push({ from, specifier: fileName, to: target(from, fileName, files) });
      }
    }
  }
  return found;
}

function target(from: string, specifier: string, files: FileSet): string | null {
  if (!specifier.startsWith('.')) return null;
  const path = posix.normalize(posix.join(posix.dirname(from), specifier.replace(/\?.*$/, '')));
  return [path, `${path}.ts`, `${path}/index.ts`].find((candidate) => files.has(candidate)) ?? path;
}

const isNode = (specifier: string) => specifier.startsWith('node:') || builtinModules.includes(specifier);
const isElectron = (specifier: string) => specifier === 'electron' || specifier.startsWith('electron/');
const isCommandLine = (path: string) => path === 'core/cli.ts' || path.startsWith('core/cli/');
const within = (path: string | null, folder: string) => path !== null && path.startsWith(`${folder}/`);

/** One row of the import table: which files it is about, and which of their imports break it. */
interface ImportRule {
  readonly says: string;
  readonly about: (path: string) => boolean;
  readonly broken: (imported: Import) => boolean;
}

const folderOf = (path: string) => path.split('/')[1] ?? '';

export const IMPORT_RULES: readonly ImportRule[] = [
  {
    says: 'core imports core and general libraries only',
    about: (path) => within(path, 'core'),
    broken: ({ to, specifier }) => isElectron(specifier) || (to !== null && !within(to, 'core')),
  },
  {
    says: 'only the command line of core may use Node',
    about: (path) => within(path, 'core') && !isCommandLine(path),
    broken: ({ specifier, to }) => isNode(specifier) || (to !== null && isCommandLine(to)),
  },
  {
    says: 'quantities imports no sibling',
    about: (path) => within(path, 'core/quantities'),
    broken: ({ to }) => within(to, 'core') && !within(to, 'core/quantities'),
  },
  {
    says: 'physics never imports network, document or what is made of them',
    about: (path) => PHYSICS.some((folder) => within(path, `core/${folder}`)),
    broken: ({ to }) => ABOVE_PHYSICS.some((folder) => within(to, `core/${folder}`)),
  },
  {
    says: 'electron imports core/document, Electron and Node only',
    about: (path) => within(path, 'electron'),
    broken: ({ to, specifier }) =>
      to === null
        ? !isElectron(specifier) && !isNode(specifier)
        : !within(to, 'electron') && !within(to, 'core/document'),
  },
  {
    says: 'renderer imports core and libraries, never Electron or Node',
    about: (path) => within(path, 'renderer'),
    broken: ({ to, specifier }) =>
      to === null
        ? isElectron(specifier) || isNode(specifier)
        : !within(to, 'renderer') && (!within(to, 'core') || isCommandLine(to)),
  },
  {
    says: 'a screen never imports another screen',
    about: (path) => within(path, 'renderer') && SCREENS.includes(folderOf(path)),
    broken: ({ from, to }) =>
      within(to, 'renderer') && SCREENS.includes(folderOf(to!)) && folderOf(to!) !== folderOf(from),
  },
  {
    says: 'build imports nothing of the project but build; a script may write out what core/document holds',
    about: (path) => within(path, 'build'),
    broken: ({ from, to }) =>
      to !== null &&
      !within(to, 'build') &&
      to !== 'package.json' &&
      !(within(from, 'build/scripts') && within(to, 'core/document')),
  },
];

/** Imports that the table forbids, one line each. */
export function forbiddenImports(files: FileSet): string[] {
  const lines: string[] = [];
  for (const imported of importsOf(files)) {
    for (const rule of IMPORT_RULES) {
      if (rule.about(imported.from) && rule.broken(imported)) {
        lines.push(`${imported.from} imports ${imported.specifier}: ${rule.says}`);
      }
    }
  }
  return lines;
}

/** Cycles among files, type imports included, one line for each file by which one is closed. */
export function importCycles(files: FileSet): string[] {
  const next = new Map<string, string[]>();
  for (const { from, to } of importsOf(files)) {
    if (to !== null && files.has(to)) next.set(from, [...(next.get(from) ?? []), to]);
  }
  const lines: string[] = [];
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (file: string) => {
    const open = path.indexOf(file);
    if (open >= 0) {
      lines.push([...path.slice(open), file].join(' -> '));
      return;
    }
    if (done.has(file)) return;
    path.push(file);
    for (const to of next.get(file) ?? []) visit(to);
    path.pop();
    done.add(file);
  };
  for (const file of next.keys()) visit(file);
  return lines;
}

/** Names on the top level that do not belong there. */
export function strayNames(names: readonly string[]): string[] {
  return names.filter((name) => !name.startsWith('.') && !TOP_LEVEL.has(name));
}
