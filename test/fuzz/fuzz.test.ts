import { rmSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { setGuard } from './guard.ts';
import { bundleChild, failureText, tryTarget } from './runner.ts';
import { targetsIn } from './targets.ts';

const SEED = 4711;

describe('hostile input', () => {
  let child = '';
  beforeAll(async () => {
    child = await bundleChild();
  });
  afterAll(() => rmSync(child, { force: true }));

  it.each(Object.entries(targetsIn('')).map(([name, target]) => [target.says, name, target.runs] as const))(
    '%s: refused in words or taken, at once, and nothing is changed that is not theirs',
    async (_, target, runs) => {
      const order = { target, seed: SEED, runs };
      const report = await tryTarget(child, order);
      expect(failureText(order, report)).toBe('');
      expect(report.cases).toBe(runs);
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
