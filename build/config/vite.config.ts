import { svelte, vitePreprocess } from '@sveltejs/vite-plugin-svelte';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { noticesPlugin } from '../scripts/notices.mjs';
import type { Plugin } from 'vite';

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

const SOLVER = at('renderer/state/solver.worker.ts');

/**
 * `virtual:solver-worker` is the address of the solver's worker, as a chunk of the page's own build. Vite would bundle a
 * worker apart from the page, and what both use would be loaded twice: the page solves small shops by itself.
 */
function solverWorker(): Plugin {
  const name = 'virtual:solver-worker';
  return {
    name: 'solver-worker',
    apply: 'build',
    resolveId: (id) => (id === name ? `\0${name}` : null),
    load(id) {
      if (id !== `\0${name}`) return null;
      const chunk = this.emitFile({ type: 'chunk', id: SOLVER, name: 'solver.worker' });
      return `export default import.meta.ROLLUP_FILE_URL_${chunk};`;
    },
  };
}

// The page must work from any folder of any web server, from a file of the desktop program and offline: relative
// addresses only, nothing fetched from elsewhere.
export default defineConfig({
  root: at('renderer'),
  base: './',
  cacheDir: at('node_modules/.cache/vite'),
  plugins: [solverWorker(), svelte({ configFile: false, preprocess: vitePreprocess() }), noticesPlugin()],
  build: {
    outDir: at('dist/renderer'),
    emptyOutDir: true,
    target: 'es2022',
    // only the page's own first scripts are fetched ahead: what is loaded later is loaded by workers too, which have no
    // document that the helper could put a link into
    modulePreload: {
      polyfill: false,
      resolveDependencies: (_, scripts, { hostType }) => (hostType === 'html' ? scripts : []),
    },
    chunkSizeWarningLimit: 1200,
  },
});
