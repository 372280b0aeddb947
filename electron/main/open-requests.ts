import type { App } from 'electron';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isDocumentPath } from '../files/files.ts';

/** The documents that a command line names, in its order. */
export function documentsIn(argv: readonly string[], folder: string): string[] {
  return argv
    .slice(1)
    .filter((word) => !word.startsWith('-'))
    .map((word) => (word.startsWith('file:') ? pathOfAddress(word) : resolve(folder, word)))
    .filter((path): path is string => path !== null && isDocumentPath(path));
}

function pathOfAddress(address: string): string | null {
  try {
    return fileURLToPath(address);
  } catch {
    return null;
  }
}

export interface OpenRequests {
  /** From now on each request goes to `open`, also those that came before there was a window. */
  deliverTo(open: (path: string) => void, show: () => void): void;
}

/**
 * Documents opened from outside: by the command line, by a second start of the program, by the system's file list.
 * Set up before the program is ready, as macOS tells about a file early.
 */
export function setupOpenRequests(
  app: Pick<App, 'on'>,
  argv: readonly string[],
  folder: string,
): OpenRequests {
  // One window shows one document: of several the last one is opened.
  let early = documentsIn(argv, folder).at(-1) ?? null;
  let deliver: ((path: string) => void) | null = null;
  let front: () => void = () => undefined;
  const take = (path: string) => {
    if (deliver) deliver(path);
    else early = path;
  };
  app.on('open-file', (event, path) => {
    event.preventDefault();
    if (isDocumentPath(path)) take(path);
  });
  app.on('second-instance', (_event, otherArgv, otherFolder) => {
    front();
    const path = documentsIn(otherArgv, otherFolder).at(-1);
    if (path !== undefined) take(path);
  });
  return {
    deliverTo(open, show) {
      deliver = open;
      front = show;
      if (early !== null) open(early);
      early = null;
    },
  };
}
