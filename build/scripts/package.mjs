// `npm run package`: builds, then has the packager make the installers of this machine's system in dist/installers.
// Where the packager or Electron's program is missing it says how to get them and makes nothing.
// Usage: node build/scripts/package.mjs [--dir]; with --dir the program's folder alone, without an installer
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { electronProgram, GET_IT } from './find-electron.mjs';

/** The packager that the settings are checked against. It brings some 280 packages, so it is not among ours. */
export const PACKAGER = { name: 'electron-builder', version: '26.17.0' };

const TOP = fileURLToPath(new URL('../..', import.meta.url));

/** What packaging lacks in this folder, one line each with how to get it; looks at files alone. */
export function missingForPackaging(top, env = process.env) {
  const { name, version } = PACKAGER;
  const get = `run \`npm install --no-save --ignore-scripts ${name}@${version}\``;
  const found = packagerVersion(top);
  const missing = [];
  if (found === null) missing.push(`the packager is not installed; ${get}`);
  else if (found !== version) missing.push(`the packager is ${found} where ${version} is needed; ${get}`);
  if (electronProgram(top, env) === null) {
    missing.push(`Electron's program is not downloaded; ${GET_IT}`);
  }
  return missing;
}

function packagerVersion(top) {
  const at = join(top, 'node_modules', PACKAGER.name, 'package.json');
  return existsSync(at) ? JSON.parse(readFileSync(at, 'utf8')).version : null;
}

/** The packager's command line: Electron as it lies here, and nothing uploaded. */
export function packagerWords(top, dir, env = process.env) {
  return [
    join(top, 'node_modules', PACKAGER.name, 'cli.js'),
    ...['--config', 'build/config/packager.mjs', '--publish', 'never'],
    `-c.electronDist=${electronFolder(top, env)}`,
    ...(dir ? ['--dir'] : []),
  ];
}

/** The folder that holds all of Electron; on a Mac the program lies deep inside it. */
function electronFolder(top, env) {
  return env.ELECTRON_OVERRIDE_DIST_PATH ?? join(top, 'node_modules', 'electron', 'dist');
}

async function main() {
  const { values } = parseArgs({ options: { dir: { type: 'boolean', default: false } } });
  const missing = missingForPackaging(TOP);
  if (missing.length > 0) {
    console.error('No installer was made. On a machine that is online:');
    for (const line of missing) console.error(`- ${line}`);
    console.error(
      'Then run `npm run package` again. The page for a web server needs neither: `npm run build`.',
    );
    return 1;
  }
  const { build } = await import('vite');
  await build({ configFile: join(TOP, 'build/config/vite.config.ts'), logLevel: 'warn' });
  const { buildElectron } = await import('./build-electron.mjs');
  await buildElectron();
  const { status, error } = spawnSync(process.execPath, packagerWords(TOP, values.dir), {
    cwd: TOP,
    stdio: 'inherit',
  });
  if (status === 0) return 0;
  console.error(`The packager failed${error ? `: ${error.message}` : ''}; what it said stands above.`);
  console.error(
    'It downloads its own tools when it first makes a kind of installer, so it must be online then.',
  );
  return 1;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await main();
