import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { BUILT_PAGE, findBrowser } from './browser.ts';

/** Builds the page once before the journeys, from the sources as they stand. */
export default async function buildPage(): Promise<void> {
  if (BUILT_PAGE !== undefined || findBrowser() === null) return;
  const configFile = fileURLToPath(new URL('../../build/config/vite.config.ts', import.meta.url));
  await build({ configFile, logLevel: 'error' });
}
