import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import type { Job, Report } from './job.ts';

/** A case that goes on longer than this hangs, however busy the machine is [ms]. */
const HANGS_ms = 30_000;
/** How long it may take until the first case is tried, however busy the machine is [ms]. */
const STARTS_ms = 180_000;
const LOOK_ms = 250;
/** Memory of a child [MB]: who asks for more is ended, which is a failure. */
const MEMORY_MB = 2048;

const CACHE = fileURLToPath(new URL('../../node_modules/.cache/chipdraft/', import.meta.url));
/** How much of a case is shown at once [characters]. */
const SHOWN = 600;

/** Bundles the child that tries the cases; gives where it lies. */
export async function bundleChild(): Promise<string> {
  mkdirSync(CACHE, { recursive: true });
  const outfile = join(CACHE, `fuzz-${process.pid}.mjs`);
  await build({
    entryPoints: [fileURLToPath(new URL('child.ts', import.meta.url))],
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    sourcemap: 'inline',
    sourcesContent: false,
    outfile,
    logLevel: 'error',
  });
  return outfile;
}

export interface Order {
  readonly target: string;
  readonly seed: number;
  readonly runs: number;
  readonly time_ms?: number;
}

const NOT_RUN: Report = { cases: 0, outcomes: {}, slowest_ms: 0, failure: null };

export async function tryTarget(child: string, order: Order): Promise<Report> {
  const [report] = await tryTargets(child, [order]);
  return report ?? NOT_RUN;
}

/** Tries cases in a process of their own, which is killed where it hangs; that too is a report, and ends the run. */
export async function tryTargets(child: string, orders: readonly Order[]): Promise<readonly Report[]> {
  const [{ seed, time_ms = 120_000 }] = orders as [Order];
  const folder = mkdtempSync(join(tmpdir(), 'chipdraft-fuzz-'));
  const work = join(folder, 'here');
  mkdirSync(work);
  const beat = join(folder, 'beat');
  const job: Job = { orders, seed, time_ms, folder: work, beat, show: null, longest: 30_000_000 };
  try {
    const running = spawn(process.execPath, argumentsOf(child, job), { stdio: ['ignore', 'pipe', 'pipe'] });
    let [out, err, hung] = ['', '', false];
    running.stdout.on('data', (bytes: Buffer) => (out += bytes.toString()));
    running.stderr.on('data', (bytes: Buffer) => (err = (err + bytes.toString()).slice(-4000)));
    let [last, since] = ['', Date.now()];
    const watch = setInterval(() => {
      const now = beatOf(beat);
      if (now !== last) [last, since] = [now, Date.now()];
      else if (Date.now() - since > (now === '' ? STARTS_ms : HANGS_ms)) hung = running.kill('SIGKILL');
    }, LOOK_ms);
    const [code, signal] = (await once(running, 'close')) as [number | null, string | null];
    clearInterval(watch);
    if (code === 0) return JSON.parse(out) as Report[];
    const [place = 0, number = 0] = beatOf(beat).trim().split(/ +/).map(Number);
    const how = hung
      ? `hung for ${HANGS_ms} ms and was killed`
      : `ended with ${String(code ?? signal)}: ${err}`;
    const show: Job = { ...job, orders: orders.slice(place), show: Math.max(1, number) };
    const shown = spawnSync(process.execPath, argumentsOf(child, show), {
      encoding: 'utf8',
      maxBuffer: 64_000_000,
    });
    const failure = { message: `case ${number} ${how}`, path: String(number - 1), given: shown.stdout };
    return orders.map((_, i) =>
      i === place ? { cases: number, outcomes: {}, slowest_ms: HANGS_ms, failure } : NOT_RUN,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const argumentsOf = (child: string, job: Job): string[] => [
  `--max-old-space-size=${MEMORY_MB}`,
  '--enable-source-maps',
  child,
  JSON.stringify(job),
];

function beatOf(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
}

/** A failure with all that is needed to meet it again. */
export function failureText({ target, seed }: Order, { failure }: Report): string {
  if (failure === null) return '';
  const whole = join(CACHE, `fuzz-${target}-${seed}.txt`);
  writeFileSync(whole, failure.given);
  return [
    `${target}: ${failure.message}`,
    `  given: ${failure.given.slice(0, SHOWN)}`,
    `  whole: ${whole}`,
    `  again: npm run fuzz -- --only ${target} --seed ${seed}`,
  ].join('\n');
}
