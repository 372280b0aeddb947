import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { _electron } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { buildElectron } from '../../build/scripts/build-electron.mjs';
import { findElectron } from '../../build/scripts/find-electron.mjs';
import { pageIsStale } from '../../build/scripts/page-age.mjs';

const TOP = fileURLToPath(new URL('../..', import.meta.url));
const { program, why } = findElectron(TOP);
const missing = why ?? (pageIsStale(TOP) ? 'the page is not built; run `npm run build`' : null);

/** The page's side, as far as this journey looks at it. */
interface PageSide {
  chipdraftShell: { kind: string; save(file: null, text: string, name: string): Promise<{ ok: boolean }> };
  require?: unknown;
  process?: unknown;
  open(address: string): unknown;
}
declare const globalThis: PageSide;

// Skipped, and therefore not counted as passed, wherever the real window cannot be opened.
describe.skipIf(missing !== null)(
  `the real desktop window${missing === null ? '' : ` - NOT RUN: ${missing}`}`,
  () => {
    it(
      'opens the page in its sandbox, saves through the bridge, and opens nothing else',
      { timeout: 60_000 },
      async () => {
        await buildElectron();
        const folder = mkdtempSync(join(tmpdir(), 'chipdraft-smoke-'));
        const app = await _electron.launch({
          executablePath: program!,
          args: [join(TOP, 'dist/electron/main.cjs'), `--user-data-dir=${join(folder, 'settings')}`],
        });
        try {
          const page = await app.firstWindow();
          await page.waitForLoadState('load');
          expect(page.url()).toBe('app://chipdraft/index.html');
          const seen = await page.evaluate(() => ({
            kind: globalThis.chipdraftShell.kind,
            node: typeof globalThis.require + typeof globalThis.process,
            window: globalThis.open('https://example.org/') === null,
          }));
          expect(seen).toEqual({ kind: 'desktop', node: 'undefinedundefined', window: true });
          expect(app.windows()).toHaveLength(1);
          const path = join(folder, 'shop ü.json');
          writeFileSync(path, 'old');
          await app.evaluate(({ dialog }, filePath) => {
            dialog.showSaveDialog = () => Promise.resolve({ canceled: false, filePath });
          }, path);
          expect(
            await page.evaluate(() => globalThis.chipdraftShell.save(null, 'new', 'shop')),
          ).toMatchObject({ ok: true });
          expect(readFileSync(path, 'utf8')).toBe('new');
        } finally {
          await app.close();
          rmSync(folder, { recursive: true, force: true });
        }
      },
    );
  },
);
