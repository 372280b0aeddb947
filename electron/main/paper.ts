import type { BrowserWindow, BrowserWindowConstructorOptions } from 'electron';
import { randomBytes } from 'node:crypto';
import type { PrintPaper, ShellResult } from '../../core/document/shell.ts';
import { CANCELLED, refusal } from '../files/file-failure.ts';
import { HOST, PRINT_FOLDER, SCHEME } from './protocol.ts';
import { WEB_PREFERENCES } from './windows.ts';

export interface PaperPrinter {
  /** The page as a PDF file's bytes. */
  pdf(html: string, paper: PrintPaper): Promise<Uint8Array>;
  /** Lets the user print the page. */
  print(html: string, paper: PrintPaper): Promise<ShellResult<object>>;
}

const SIZES = { a4: 'A4', letter: 'Letter' } as const satisfies Record<PrintPaper, string>;
/** What Electron says where the user put the question aside. */
const PUT_ASIDE = /cancel/i;

/** Prints pages from a window that nobody sees, in which no script runs; `prints` is where the protocol finds them. */
export function setupPaper(
  BrowserWindow: new (options: BrowserWindowConstructorOptions) => BrowserWindow,
  prints: Map<string, string>,
): PaperPrinter {
  const withPage = async <T>(html: string, act: (contents: BrowserWindow['webContents']) => Promise<T>) => {
    const address = `${SCHEME}://${HOST}${PRINT_FOLDER}${randomBytes(16).toString('hex')}.html`;
    const window = new BrowserWindow({
      show: false,
      webPreferences: { ...WEB_PREFERENCES, javascript: false },
    });
    try {
      prints.set(address, html);
      await window.loadURL(address);
      return await act(window.webContents);
    } finally {
      prints.delete(address);
      window.destroy();
    }
  };
  return {
    pdf: (html, paper) =>
      withPage(html, (contents) =>
        contents.printToPDF({ pageSize: SIZES[paper], preferCSSPageSize: true, printBackground: true }),
      ),
    print: (html, paper) =>
      withPage(
        html,
        (contents) =>
          new Promise<ShellResult<object>>((resolve) =>
            contents.print({ pageSize: SIZES[paper], printBackground: true }, (done, reason) => {
              if (done) resolve({ ok: true });
              else if (PUT_ASIDE.test(reason)) resolve(CANCELLED);
              else {
                resolve(
                  refusal(
                    'not-possible-here',
                    `the page could not be printed: ${reason}`,
                    'look whether a printer is there, or save it as PDF',
                  ),
                );
              }
            }),
          ),
      ),
  };
}
