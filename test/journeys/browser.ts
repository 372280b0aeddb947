/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { servePage } from '../../build/scripts/serve-page.mjs';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** A Chromium of this machine: CHIPDRAFT_CHROMIUM, or where Debian puts it; null where there is none. */
export function findBrowser(): string | null {
  const named = process.env['CHIPDRAFT_CHROMIUM'];
  return [...(named ? [named] : []), ...PLACES].find((path) => existsSync(path)) ?? null;
}

/** Name of a group of journeys; without a browser it says that they are not run, and how to get one. */
export const NOT_RUN =
  'NOT RUN: no Chromium here; install Debian package chromium, or name one in CHIPDRAFT_CHROMIUM';

/** Whether the journeys must be left out: never on the build machine, where a missing browser is a failure. */
export function browserMissing(): boolean {
  if (findBrowser() !== null) return false;
  if (process.env['CI']) throw new Error(NOT_RUN);
  return true;
}

/** A folder with a page that is built already; without it the journeys build dist/renderer first. */
export const BUILT_PAGE = process.env['CHIPDRAFT_PAGE'];

/** Leaves files to downloads and the file chooser, as in a browser without File System Access. */
function withoutPickers(): void {
  for (const name of ['showOpenFilePicker', 'showSaveFilePicker']) {
    Object.defineProperty(window, name, { value: undefined, configurable: true, writable: true });
  }
}

/** Errors of a page, from now on. */
export function listen(page: Page): string[] {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  return errors;
}

/** A browser on the built page. */
export interface Stage {
  readonly browser: Browser;
  readonly address: string;
  /** A page in a profile of its own, as a new user would meet it; files go by download and file chooser. */
  page(
    options?: Parameters<Browser['newContext']>[0],
  ): Promise<{ page: Page; context: BrowserContext; errors: string[] }>;
  close(): Promise<void>;
}

export async function openStage(): Promise<Stage> {
  const folder = BUILT_PAGE ?? fileURLToPath(new URL('../../dist/renderer', import.meta.url));
  const server = await servePage(folder);
  const browser = await chromium.launch({
    executablePath: findBrowser()!,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
  return {
    browser,
    address: server.url,
    async page(options = {}) {
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
      await context.addInitScript(withoutPickers);
      const page = await context.newPage();
      const errors = listen(page);
      await page.goto(server.url);
      return { page, context, errors };
    },
    async close() {
      await browser.close();
      await server.close();
    },
  };
}
