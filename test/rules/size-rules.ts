import { MARK } from '../reference/ledger/page.ts';
import type { FileSet } from './project-files.ts';

const MOST_LINES = 300;
const MOST_README_LINES = 20;
const DOZEN = 12;
const SOURCE = /\.(ts|mts|js|mjs|cjs|svelte|css|html|sh)$/;

/** Sources are code; fixtures, reference data and the catalogue are data, which may be as long as it is. */
const isData = (path: string) => /^(test\/fixtures|test\/reference\/data|core\/catalogue)\//.test(path);

/** A page that is made from figures may be long; what is written by hand before them may not. */
const MADE_PAGE = 'test/reference/README.md';
const writtenPart = (path: string, text: string) => (path === MADE_PAGE ? text.split(MARK)[0]! : text);

const linesOf = (text: string) => text.replace(/\n$/, '').split('\n').length;

/** Source files that are too long, one line each. */
export function longFiles(files: FileSet): string[] {
  return [...files]
    .filter(([path]) => SOURCE.test(path) && !isData(path))
    .map(([path, text]) => [path, linesOf(text)] as const)
    .filter(([, lines]) => lines > MOST_LINES)
    .map(([path, lines]) => `${path} has ${lines} lines, more than ${MOST_LINES}`);
}

/** Folders with more than a dozen source files of their own and no README, and READMEs that are too long. */
export function readmeMisses(files: FileSet): string[] {
  const count = new Map<string, number>();
  const misses: string[] = [];
  for (const [path, text] of files) {
    const folder = path.slice(0, path.lastIndexOf('/'));
    if (SOURCE.test(path)) count.set(folder, (count.get(folder) ?? 0) + 1);
    const lines = linesOf(writtenPart(path, text));
    if (path.endsWith('/README.md') && lines > MOST_README_LINES) {
      misses.push(`${path} has ${lines} lines, more than ${MOST_README_LINES}`);
    }
  }
  for (const [folder, sources] of count) {
    if (sources > DOZEN && !files.has(`${folder}/README.md`))
      misses.push(`${folder} has ${sources} sources and no README.md`);
  }
  return misses;
}
