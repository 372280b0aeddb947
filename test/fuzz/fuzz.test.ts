import { rmSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { setGuard } from './guard.ts';
import type { Report } from './job.ts';
import { bundleChild, failureText, tryTargets } from './runner.ts';
import { targetsIn } from './targets.ts';

const SEED = 4711;

describe('hostile input', () => {
  const orders = Object.entries(targetsIn('')).map(([target, { runs }]) => ({ target, runs, seed: SEED }));
  let reports: readonly Report[] = [];
  beforeAll(async () => {
    const child = await bundleChild();
    reports = await tryTargets(child, orders);
    rmSync(child);
  });

  it.each(Object.entries(targetsIn('')).map(([target, { says }], i) => [says, target, i] as const))(
    '%s: refused in words or taken, at once, and nothing is changed that is not theirs',
    (_, target, i) => {
      const report = reports[i]!;
      expect(failureText(orders[i]!, report)).toBe('');
      expect(report.cases).toBe(orders[i]!.runs);
      // all of one kind would mean that the cases never got past the door, or never met it
      expect(Object.keys(report.outcomes).length).toBeGreaterThan(target === 'answers' ? 0 : 1);
    },
  );
});

/** What a stranger might do, and how it is undone. */
const DEEDS: readonly (readonly [says: string, deed: () => void, undone: () => void])[] = [
  [
    'a field of every object',
    () => void Object.assign(Object.prototype, { odd: 1 }),
    () => void Reflect.deleteProperty(Object.prototype, 'odd'),
  ],
  ['the canary', () => void (globalThis.canary = 1), () => void (globalThis.canary = 'alive')],
  ['the exit code', () => void (process.exitCode = 9), () => void (process.exitCode = undefined)],
];

describe('the guard', () => {
  it.each(DEEDS)('sees %s', (_, deed, undone) => {
    const check = setGuard();
    check();
    deed();
    expect(check).toThrow();
    undone();
    check();
  });
});
