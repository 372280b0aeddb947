import { svelte, vitePreprocess } from '@sveltejs/vite-plugin-svelte';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

// The page must work from any folder of any web server, from a file of the desktop program and offline: relative
// addresses only, nothing fetched from elsewhere.
export default defineConfig({
  root: at('renderer'),
  base: './',
  cacheDir: at('node_modules/.cache/vite'),
  plugins: [svelte({ configFile: false, preprocess: vitePreprocess() })],
  worker: { format: 'es' },
  build: {
    outDir: at('dist/renderer'),
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1200,
  },
});
