// Starts the command line. The core is bundled once and kept under node_modules/.cache, with what the engine compiled of
// it; a source that is newer than the bundle makes both anew, so that the program is always the checkout's own and still
// starts at once.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Script } from 'node:vm';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const cache = join(root, 'node_modules', '.cache', 'chipdraft');
const bundle = join(cache, 'book.cjs');
const compiled = join(cache, 'book.compiled');

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
    format: 'cjs',
    target: 'node20',
    outfile: bundle,
    logLevel: 'error',
  });
}

const source = readFileSync(bundle);
// the engine itself tells bundles apart by their length alone
const digest = createHash('sha256').update(source).digest();

/** What the engine compiled of this very bundle. */
function kept() {
  try {
    const file = readFileSync(compiled);
    return file.subarray(0, digest.length).equals(digest) ? file.subarray(digest.length) : undefined;
  } catch {
    return undefined;
  }
}

const cachedData = kept();
const wrapped = `(function (exports, require, module) {${source.toString('utf8')}\n})`;
const script = new Script(wrapped, { filename: bundle, cachedData });
const module = { exports: {} };
script.runInThisContext()(module.exports, createRequire(bundle), module);
module.exports.main(process.argv.slice(2));
if (cachedData === undefined || script.cachedDataRejected) {
  const fresh = `${compiled}.${process.pid}`;
  try {
    // whole or not at all: another program may be reading it
    writeFileSync(fresh, Buffer.concat([digest, script.createCachedData()]));
    renameSync(fresh, compiled);
  } catch {
    // it only starts more slowly the next time
  }
}
