import type { FileSet } from './project-files.ts';

/** Joined from halves, so that this file does not contain what it looks for. */
const joined = (...parts: string[]) => parts.join('');

/** What no file may contain, in lower case: paths of one machine, package hosts, words of how the project was made. */
export const UNWANTED: readonly string[] = [
  joined('/wo', 'rk/'),
  joined('/fa', 'rm/'),
  joined('/ro', 'ot/'),
  joined('/ho', 'me/'),
  joined('registry.npm', 'js.org'),
  joined('registry.yarn', 'pkg.com'),
  joined('npm.pkg.', 'github.com'),
  joined('registry.npm', 'mirror.com'),
  joined('trans', 'cript'),
  joined('seed ', 'document'),
];

const EXEMPT = /^(package-lock\.json$|node_modules\/|dist\/)/;
const BINARY = /\.(png|ico|icns|woff2?|pdf|zip)$/;

/** Whether the rule reads this file. */
export const isRead = (path: string) => !EXEMPT.test(path) && !BINARY.test(path);

/** Unwanted words in paths and contents, one line each with the place. */
export function unwantedWords(files: FileSet): string[] {
  const found: string[] = [];
  for (const [path, text] of files) {
    if (!isRead(path)) continue;
    [`/${path}`, ...text.split('\n')].forEach((line, i) => {
      for (const word of UNWANTED) {
        if (line.toLowerCase().includes(word)) found.push(`${path}:${i} contains "${word}"`);
      }
    });
  }
  return found;
}
