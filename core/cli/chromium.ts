import { spawnSync } from 'node:child_process';
import { accessSync, constants, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** What finding a browser depends on; tests give their own. */
export interface Machine {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly isProgram: (path: string) => boolean;
}

/** Variables that name a browser, in the order in which they are asked. */
export const BROWSER_VARIABLES = ['CHIPDRAFT_CHROMIUM', 'CHROME_PATH'] as const;
const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];
const PLACES = [
  '/usr/bin/chromium',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];
const GET_ONE = `install Chromium (Debian: apt install chromium), or name one in ${BROWSER_VARIABLES.join(' or ')}; or write .html and print that from any browser`;

export type FoundBrowser =
  { readonly program: string } | { readonly program: null; readonly why: string; readonly remedy: string };

/** A Chromium on this machine: named in a variable, on the path, or where it usually lies. */
export function findBrowser(machine: Machine = thisMachine()): FoundBrowser {
  for (const variable of BROWSER_VARIABLES) {
    const named = machine.env[variable];
    if (!named) continue;
    if (machine.isProgram(named)) return { program: named };
    return {
      program: null,
      why: `${variable} names "${named}", which is no program`,
      remedy: `correct ${variable}, or leave it out`,
    };
  }
  const folders = (machine.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const tried = [...folders.flatMap((folder) => NAMES.map((name) => join(folder, name))), ...PLACES];
  const program = tried.find((path) => machine.isProgram(path));
  if (program !== undefined) return { program };
  return { program: null, why: 'there is no Chromium on this machine to make a PDF with', remedy: GET_ONE };
}

function thisMachine(): Machine {
  return {
    env: process.env,
    isProgram: (path) => {
      try {
        accessSync(path, constants.X_OK);
        return statSync(path).isFile();
      } catch {
        // not there, or not ours to run: it is no program for us, and the next place is tried
        return false;
      }
    },
  };
}

export type Printed =
  | { readonly ok: true; readonly pdf: Uint8Array }
  | { readonly ok: false; readonly why: string; readonly remedy: string };

/** Longest that a browser may take [ms]. */
const PATIENCE_ms = 120_000;

/** Prints a page that is whole in itself; everything that the browser writes lies in a folder that goes again. */
export function printToPdf(html: string, program: string): Printed {
  const folder = mkdtempSync(join(tmpdir(), 'chipdraft-print-'));
  try {
    const page = join(folder, 'page.html');
    const pdf = join(folder, 'page.pdf');
    writeFileSync(page, html);
    const { status, error, stderr } = spawnSync(
      program,
      [
        '--headless',
        '--disable-gpu',
        '--disable-extensions',
        '--disable-background-networking',
        '--no-first-run',
        '--no-pdf-header-footer',
        `--user-data-dir=${join(folder, 'profile')}`,
        // a browser refuses to start as root with its sandbox on
        ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
        `--print-to-pdf=${pdf}`,
        pathToFileURL(page).href,
      ],
      { timeout: PATIENCE_ms, encoding: 'utf8' },
    );
    const bytes = readIfThere(pdf);
    if (bytes !== null && Buffer.from(bytes.subarray(0, 5)).toString('latin1') === '%PDF-') {
      return { ok: true, pdf: bytes };
    }
    const last = stderr?.trim().split('\n').at(-1)?.slice(0, 200) ?? '';
    const why = error
      ? error.message
      : `it ended with ${status ?? 'a signal'}${last === '' ? '' : `: ${last}`}`;
    return {
      ok: false,
      why: `${program} made no PDF (${why})`,
      remedy: 'write .html and print that from a browser',
    };
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
  }
}

function readIfThere(path: string): Uint8Array | null {
  try {
    return readFileSync(path);
  } catch (cause) {
    if (cause instanceof Error && 'code' in cause && cause.code === 'ENOENT') return null;
    throw cause;
  }
}
