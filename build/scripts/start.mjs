// `npm start`: builds the page if it is stale, then opens the desktop window; where that is not possible, says why and
// serves the page to the browser. Usage: node build/scripts/start.mjs [--no-open] [--browser] [--port N] [FILE.json]
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { buildElectron } from './build-electron.mjs';
import { findElectron } from './find-electron.mjs';
import { pageIsStale } from './page-age.mjs';
import { servePage } from './serve-page.mjs';

const TOP = fileURLToPath(new URL('../..', import.meta.url));
const PAGE = join(TOP, 'dist/renderer');
const OPENERS = { darwin: ['open'], win32: ['cmd', '/c', 'start', ''] };

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    'no-open': { type: 'boolean', default: false },
    browser: { type: 'boolean', default: false },
    port: { type: 'string', default: '0' },
  },
});

async function buildPage() {
  if (!pageIsStale(TOP)) return;
  console.log('building the page ...');
  const { build } = await import('vite');
  await build({ configFile: join(TOP, 'build/config/vite.config.ts'), logLevel: 'warn' });
}

async function openWindow(program) {
  await buildElectron();
  const child = spawn(program, [join(TOP, 'dist/electron/main.cjs'), ...positionals], { stdio: 'inherit' });
  child.on('error', (error) => {
    console.error(`the desktop window could not be opened: ${error.message}`);
    process.exitCode = 1;
  });
  child.on('exit', (code) => (process.exitCode = code ?? 1));
}

async function openBrowser(why) {
  console.log(`The desktop window is not available here: ${why}.`);
  console.log('The same workbook runs in your browser instead, with its pickers or downloads for files.');
  const port = Number(values.port);
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    throw new Error(`--port ${values.port} is not a port`);
  const page = await servePage(PAGE, { port });
  console.log(`Chipdraft is at ${page.url} - Ctrl+C stops it`);
  if (!values['no-open']) showInBrowser(page.url);
  const stop = () => void page.close().then(() => process.exit(0));
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
}

/** Opens the user's browser; without one the address on the terminal has to do. */
function showInBrowser(url) {
  const [command, ...words] = OPENERS[process.platform] ?? ['xdg-open'];
  const child = spawn(command, [...words, url], { stdio: 'ignore', detached: true });
  child.on('error', () => console.log(`no browser was opened; open ${url} yourself`));
  child.unref();
}

try {
  await buildPage();
  const { program, why } = values.browser
    ? { program: null, why: 'the browser was asked for' }
    : findElectron(TOP);
  if (program === null) await openBrowser(why);
  else await openWindow(program);
} catch (error) {
  console.error(`Chipdraft could not start: ${error.message}`);
  process.exitCode = 1;
}
