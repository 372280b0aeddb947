import type { Shell } from '../../core/document/shell.ts';
import { browserShell } from './browser-shell.ts';

declare global {
  interface Window {
    /** Put there by the desktop program's preload; absent in a browser. */
    readonly chipdraftShell?: Shell;
  }
}

/** The machine that the workbook runs on. */
export function findShell(): Shell {
  return window.chipdraftShell ?? browserShell();
}
