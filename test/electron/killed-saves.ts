import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import * as disk from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { writerOf } from '../../core/document/temporary-name.ts';
import { setupFiles } from '../../electron/files/files.ts';
import { keptJson } from '../../electron/files/kept-json.ts';
import { checkRecovery, setupRecovery } from '../../electron/files/recovery.ts';

// A program that edits, keeps each edit against a crash and saves, over and over, and is killed at any moment.

const leftovers = (folder: string): string[] => readdirSync(folder).filter((name) => writerOf(name) !== null);

/** Texts of different lengths, each recognised by its number; large enough for a write to be cut in two. */
const textOf = (i: number): string => `${i} ${'x'.repeat(400_000 + (i % 10) * 1000)}`;

const SAVER = `
import * as disk from 'node:fs/promises';
import { join } from 'node:path';
import { writeSync } from 'node:fs';
import { setupFiles } from './files/files.ts';
import { keptJson } from './files/kept-json.ts';
import { checkRecovery, setupRecovery } from './files/recovery.ts';
const textOf = ${textOf.toString()};
const [path, settings, start] = process.argv.slice(2);
const files = setupFiles(disk, Date.now);
const recovery = await setupRecovery(files, keptJson(disk, join(settings, 'recovery.json'), checkRecovery));
const opened = await files.read(path);
if (!opened.ok) throw new Error(opened.message);
const say = (word, i) => writeSync(1, word + ' ' + i + '\\n');
say('begun', 0);
for (let i = Number(start) + 1; ; i++) {
  await recovery.keep({ text: textOf(i), name: 'shop', at: i, file: opened.file });
  say('kept', i);
  const saved = await files.save(opened.file, textOf(i), () => Promise.resolve(null));
  if (!saved.ok) throw new Error(saved.message);
  say('saved', i);
}
`;

export interface Kills {
  readonly kills: number;
  /** Kills that struck within a write, so that a temporary file was there. */
  readonly withinWrites: number;
  readonly edits: number;
  /** What was not as it must be, one line each. */
  readonly faults: readonly string[];
}

/** Random moments by a seed: a small generator is enough to choose them. */
function momentsOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Kills the program so many times within `within_ms` of its first save, and looks at what is there after each. */
export async function killSaves(count: number, seed: number, within_ms = 60): Promise<Kills> {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'chipdraft-kills-')));
  const script = join(folder, 'saver.mjs');
  const work = join(folder, 'work');
  const settings = join(folder, 'settings');
  const path = join(work, 'shop.json');
  const next = momentsOf(seed);
  const faults: string[] = [];
  let [last, lastSaved, withinWrites] = [0, 0, 0];
  try {
    await build({
      stdin: {
        contents: SAVER,
        resolveDir: fileURLToPath(new URL('../../electron', import.meta.url)),
        loader: 'ts',
      },
      outfile: script,
      bundle: true,
      format: 'esm',
      platform: 'node',
      logLevel: 'error',
    });
    mkdirSync(work);
    mkdirSync(settings);
    writeFileSync(path, textOf(0));
    for (let round = 0; round < count; round++) {
      const fault = (says: string) => faults.push(`kill ${round}: ${says}`);
      const said = await runAndKill([script, path, settings, String(last)], next() * within_ms);
      const kept = Math.max(last, ...numbersOf(said, 'kept'));
      const saved = Math.max(lastSaved, ...numbersOf(said, 'saved'));

      const text = readFileSync(path, 'utf8');
      const number = Number(/^\d+/.exec(text)?.[0] ?? NaN);
      if (text !== textOf(number)) fault(`the file is not whole: ${text.length} characters`);
      // the edit that was being saved may have got there, though nobody heard of it
      if (number !== saved && number !== kept) fault(`the file holds ${number}, saved was ${saved}`);
      if (leftovers(work).length + leftovers(settings).length > 0) withinWrites++;
      if (leftovers(work).length > 1) fault(`files pile up: ${leftovers(work).join(' ')}`);

      const again = keptJson(disk, join(settings, 'recovery.json'), checkRecovery);
      const offered = (await setupRecovery(setupFiles(disk, Date.now), again)).get();
      if (kept > 0 && (offered === null || offered.at < kept))
        fault(`offered ${String(offered?.at)}, kept was ${kept}`);
      if (offered !== null && offered.text !== textOf(offered.at)) fault('what is offered is not whole');
      if (leftovers(settings).length > 0) fault('the start left files of the program that was killed');
      lastSaved = number;
      last = Math.max(number, offered?.at ?? 0);
    }
    const files = setupFiles(disk, Date.now);
    await files.write(path, textOf(last));
    if (leftovers(work).length > 0) faults.push(`the last save left ${leftovers(work).join(' ')}`);
    return { kills: count, withinWrites, edits: last, faults };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Starts the program, kills it some time after it began, and gives what it said. */
async function runAndKill(words: readonly string[], after_ms: number): Promise<string> {
  const child = spawn(process.execPath, words, { stdio: ['ignore', 'pipe', 'pipe'] });
  let [said, wrong] = ['', ''];
  child.stderr.on('data', (bytes: Buffer) => (wrong += bytes.toString()));
  const begun = new Promise<void>((resolve) => {
    child.stdout.on('data', (bytes: Buffer) => {
      said += bytes.toString();
      resolve();
    });
    child.on('exit', () => resolve());
  });
  await begun;
  await new Promise((resolve) => setTimeout(resolve, after_ms));
  const closed = once(child, 'close');
  child.kill('SIGKILL');
  const [, signal] = (await closed) as [number | null, string | null];
  if (signal !== 'SIGKILL') throw new Error(`it ended by itself: ${wrong}`);
  return said;
}

const numbersOf = (said: string, word: string): number[] =>
  [...said.matchAll(new RegExp(`^${word} (\\d+)$`, 'gm'))].map(([, number]) => Number(number));
