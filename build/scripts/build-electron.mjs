// Bundles the desktop program: dist/electron/main.cjs for Electron's own process, and dist/electron/preload.cjs, one
// CommonJS file, as a sandboxed preload can load no other. Usage: node build/scripts/build-electron.mjs
import { build } from 'esbuild';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { NOTICES_FILE, noticesText, packagesOf } from './notices.mjs';

const TOP = fileURLToPath(new URL('../..', import.meta.url));
const ENTRIES = { main: 'electron/main/entry.ts', preload: 'electron/preload/preload.ts' };

/** Electron and what Node brings are there at run time; everything else goes into the bundle. */
export async function buildElectron(folder = join(TOP, 'dist/electron')) {
  const made = await build({
    absWorkingDir: TOP,
    entryPoints: Object.entries(ENTRIES).map(([out, entry]) => ({ in: entry, out })),
    outdir: folder,
    outExtension: { '.js': '.cjs' },
    bundle: true,
    format: 'cjs',
    platform: 'node',
    target: 'node22',
    external: ['electron', 'electron/*'],
    alias: { 'electron/main': 'electron', 'electron/renderer': 'electron' },
    legalComments: 'none',
    logLevel: 'warning',
    metafile: true,
  });
  const modules = Object.keys(made.metafile.inputs).map((path) => join(TOP, path));
  writeFileSync(join(folder, NOTICES_FILE), noticesText(packagesOf(modules)));
  return Object.entries(made.metafile.outputs).map(([path, { bytes }]) => ({ path: join(TOP, path), bytes }));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const { path, bytes } of await buildElectron()) console.log(`${path} ${(bytes / 1000).toFixed(0)} kB`);
}
