// Starts the command line. The core is bundled once and kept under node_modules/.cache; a source that is newer than
// the bundle makes it anew, so that the program is always the checkout's own and still starts at once.
import { readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const bundle = join(root, 'node_modules', '.cache', 'chipdraft', 'book.mjs');

function newest(folder) {
  let latest = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    latest = Math.max(latest, entry.isDirectory() ? newest(path) : statSync(path).mtimeMs);
  }
  return latest;
}

const made = statSync(bundle, { throwIfNoEntry: false })?.mtimeMs ?? 0;
if (made < Math.max(newest(join(root, 'core')), statSync(join(root, 'package-lock.json')).mtimeMs)) {
  const { build } = await import('esbuild');
  await build({
    entryPoints: [join(root, 'core', 'cli.ts')],
    bundle: true,
    minify: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    outfile: bundle,
    logLevel: 'error',
  });
}
const { main } = await import(pathToFileURL(bundle).href);
main(process.argv.slice(2));
