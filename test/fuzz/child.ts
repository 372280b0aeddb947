import { openSync, writeSync } from 'node:fs';
import fc from 'fast-check';
import { setGuard } from './guard.ts';
import type { Job, Report } from './job.ts';
import { prepareWorker } from './messages.ts';
import { targetsIn } from './targets.ts';

/** Longest that one case may take [ms of this process's own work]: other programs on the machine do not count. */
const LONGEST_ms = 1000;

/** Longer texts are longer work: what a million characters more may take [ms]. */
const PER_MILLION_ms = 1000;

const sizeOf = (given: unknown): number => (typeof given === 'string' ? given.length : 0);

const job = JSON.parse(process.argv[2]!) as Job;
const target = targetsIn(job.folder)[job.target]!;

if (job.show === null) await knock();
else {
  const [last] = fc.sample(target.trial, { seed: job.seed, numRuns: job.show }).slice(-1);
  process.stdout.write(fc.stringify(last!.given).slice(0, job.longest));
}

/** Tries cases one after the other; the number of the case stands in a file, so that one that hangs is known. */
async function knock(): Promise<void> {
  await prepareWorker();
  const beat = openSync(job.beat, 'w');
  const check = setGuard();
  const outcomes: Record<string, number> = {};
  let [cases, slowest_ms] = [0, 0];
  const property = fc.asyncProperty(target.trial, async ({ given, run }) => {
    writeSync(beat, String(++cases).padStart(12), 0);
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
    numRuns: job.runs,
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
  const report: Report = { cases, outcomes, slowest_ms: Math.round(slowest_ms), failure };
  process.stdout.write(JSON.stringify(report));
}
