import { openSync, writeSync } from 'node:fs';
import fc from 'fast-check';
import { setGuard } from './guard.ts';
import type { Job, Report } from './job.ts';
import { prepareWorker } from './messages.ts';
import type { Target } from './target.ts';
import { targetsIn } from './targets.ts';

/** Longest that one case may take [ms of this process's own work]: other programs on the machine do not count. */
const LONGEST_ms = 1000;

/** Longer texts are longer work: what a million characters more may take [ms]. */
const PER_MILLION_ms = 1000;

const sizeOf = (given: unknown): number => (typeof given === 'string' ? given.length : 0);

const job = JSON.parse(process.argv[2]!) as Job;
const targets = targetsIn(job.folder);

if (job.show === null) await knockAll();
else {
  const [last] = fc
    .sample(targets[job.orders[0]!.target]!.trial, { seed: job.seed, numRuns: job.show })
    .slice(-1);
  process.stdout.write(fc.stringify(last!.given).slice(0, job.longest));
}

async function knockAll(): Promise<void> {
  await prepareWorker();
  const beat = openSync(job.beat, 'w');
  const reports: Report[] = [];
  for (const [place, { target, runs }] of job.orders.entries()) {
    const note = (cases: number) => writeSync(beat, `${place} ${String(cases).padStart(12)}`, 0);
    reports.push(await knock(targets[target]!, runs, note));
  }
  process.stdout.write(JSON.stringify(reports));
}

/** Tries cases one after the other; each is noted before, so that one that hangs is known. */
async function knock(target: Target, runs: number, note: (cases: number) => void): Promise<Report> {
  const check = setGuard();
  const outcomes: Record<string, number> = {};
  let [cases, slowest_ms] = [0, 0];
  const property = fc.asyncProperty(target.trial, async ({ given, run }) => {
    note(++cases);
    const before = process.cpuUsage();
    const outcome = await run();
    const { user, system } = process.cpuUsage(before);
    const took_ms = (user + system) / 1000;
    check();
    slowest_ms = Math.max(slowest_ms, took_ms);
    const allowed_ms = (target.longest_ms ?? LONGEST_ms) + PER_MILLION_ms * (sizeOf(given) / 1e6);
    if (took_ms > allowed_ms) throw new Error(`a case took ${Math.round(took_ms)} ms (${outcome})`);
    outcomes[outcome] = (outcomes[outcome] ?? 0) + 1;
  });
  const details = await fc.check(property, {
    seed: job.seed,
    numRuns: runs,
    interruptAfterTimeLimit: job.time_ms,
    // a failure is made small for a while only
    endOnFailure: false,
  });
  const failure = details.failed
    ? {
        message:
          details.errorInstance instanceof Error
            ? (details.errorInstance.stack ?? '')
            : String(details.errorInstance),
        path: details.counterexamplePath ?? '',
        given: fc.stringify(details.counterexample?.[0].given).slice(0, job.longest),
      }
    : null;
  return { cases, outcomes, slowest_ms: Math.round(slowest_ms), failure };
}
