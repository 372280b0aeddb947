import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect } from 'vitest';
import { runCommand } from '../../core/cli.ts';
import * as s from './network/shop.ts';

/** Folder of the test's own files, gone when its file of tests is done. */
export const folder = mkdtempSync(join(tmpdir(), 'chipdraft-cli-'));
afterAll(() => rmSync(folder, { recursive: true }));

export type Raw = Record<string, unknown> & { things: s.Part[]; runs: s.Part[] };
/** A shop that is in order: a port with a gate, a fan, an exhaust. */
export const good = (): Raw => ({
  format: 'chipdraft-shop',
  version: 2,
  name: 'Bench shop',
  units: 'si',
  options: { compressible: false },
  air: s.HAND_AIR,
  things: [s.port('saw'), s.STEADY_FAN, s.exhaust()],
  runs: [
    s.run('R1', 'saw', 'fan', [s.straight(2, { id: 'duct' }), s.gate('G1')]),
    s.run('R2', 'fan', 'out', [s.straight(1)]),
  ],
  settings: [
    { name: 'open', gates: {} },
    { name: 'half', gates: { G1: '50 %' } },
  ],
});
export function file(content: unknown, name = 'shop.json'): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}
export const changed = (change: (raw: Raw) => void): string => {
  const raw = good();
  change(raw);
  return file(raw);
};

/** Runs a command and checks what holds for all: no stack trace, file untouched, errors on their own stream. */
export function book(args: readonly string[], path?: string) {
  const before = path === undefined ? null : { bytes: readFileSync(path), time: statSync(path).mtimeMs };
  const listing = readdirSync(folder);
  const outcome = runCommand(args);
  if (path !== undefined) {
    expect(readFileSync(path).equals(before!.bytes)).toBe(true);
    expect(statSync(path).mtimeMs).toBe(before!.time);
  }
  expect(readdirSync(folder)).toEqual(listing);
  expect(outcome.out + outcome.err).not.toMatch(/\n\s+at .*:\d+:\d+|node:internal/);
  expect(outcome.out + outcome.err).not.toMatch(/\bNaN\b|Infinity|undefined|\[object/);
  if (outcome.code !== 0) expect(outcome.err.length).toBeGreaterThan(10);
  else expect(outcome.err).toBe('');
  return outcome;
}
