import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runCommand } from '../../core/cli.ts';
import type { FanBenchResult } from '../../core/fan-bench/result.ts';
import { EXAMPLES } from '../../core/examples/index.ts';
import { PLATES, SEALED } from './fan-bench/raised.ts';
import { design } from './fan-bench/synthetic.ts';
import type { Part } from './fan-bench/synthetic.ts';

const folder = mkdtempSync(join(tmpdir(), 'chipdraft-fans-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** The one-router shop with these fans in its list. */
function file(name: string, fans: readonly Part[] | undefined): string {
  const path = join(folder, `${name}.json`);
  const { fans: own, ...shop } = EXAMPLES['one-router'] as Part;
  writeFileSync(path, JSON.stringify({ ...shop, fans: fans ?? own }));
  return path;
}

const GOOD = design([SEALED, ...PLATES]);
const OTHER = { ...design([SEALED]), id: 'F2', name: 'lift alone' };

describe('book fan', () => {
  const both = file('both', [GOOD, OTHER]);

  it('shows readings, curve with its band, findings, and all fans in one table', () => {
    const { out, err, code } = runCommand(['fan', both]);
    expect({ err, code }).toEqual({ err: '', code: 0 });
    expect(out).toMatch(/FAN F1/);
    expect(out).toMatch(/hole plate/);
    expect(out).toMatch(/band in which it lies 9 times in 10/);
    expect(out.replace(/\s+/g, ' ')).toMatch(/shape usual for a radial wheel, blades leaning back, assumed/);
    const table = out.slice(out.indexOf('ALL FANS'));
    expect(table).toMatch(/^ {2}F1 .* of 3$/m);
    expect(table).toMatch(/^ {2}F2 .* of 3$/m);
    expect(out).toMatch(/certifies nothing/);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(140);
  });
  it('speaks the units asked for', () => {
    expect(runCommand(['fan', both, '--units', 'us']).out).toMatch(/cfm/);
    expect(runCommand(['fan', both, '--units', 'us']).out).not.toMatch(/ m3\/h/);
  });
  it('gives the whole result as JSON, of one fan if asked', () => {
    const { out, code } = runCommand(['fan', both, '--fan', 'F2', '--json']);
    const { fans, comparison } = JSON.parse(out) as {
      fans: FanBenchResult[];
      comparison: { fans: unknown[] };
    };
    expect(code).toBe(0);
    expect(fans.map(({ id }) => id)).toEqual(['F2']);
    expect(fans[0]!.curve!.samples.length).toBeGreaterThan(100);
    expect(comparison.fans).toHaveLength(2);
  });
  it('prints a sheet', () => {
    const { out, code } = runCommand(['fan', both, '--fan', 'F1', '--sheet']);
    expect(code).toBe(0);
    expect(out).toMatch(/^<!doctype html>/);
    expect(runCommand(['fan', both, '--sheet'])).toMatchObject({ out: '', code: 1 });
  });
  it('tells the row, the field and the remedy of a wrong reading, and goes on', () => {
    const wrong = { ...PLATES[0]!, id: 'X', hole: 0.06, box: 0.05 };
    const { out, code } = runCommand(['fan', file('wrong', [design([SEALED, ...PLATES, wrong])])]);
    expect(code).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toMatch(
      /reading 6, hole: the hole of 60\.0 mm is as large as the pipe in front of it.*remedy: check both/,
    );
  });
  it('fails with a word where a fan gives no curve, where there is none, or where the name is unknown', () => {
    const empty = runCommand(['fan', file('empty', [design([])])]);
    expect(empty.code).toBe(3);
    expect(empty.err).toMatch(/fan "F1": no curve.*\n {2}remedy: /);
    const none = runCommand(['fan', file('none', [])]);
    expect(none).toMatchObject({ out: '', code: 3 });
    expect(none.err).toMatch(/no fans to test\n {2}remedy: /);
    expect(runCommand(['fan', both, '--fan', 'F9'])).toMatchObject({ out: '', code: 1 });
  });
});

describe('the printed wheel of the one-router shop', () => {
  const { out } = runCommand(['fan', file('own', undefined), '--json']);
  const [fan] = (JSON.parse(out) as { fans: FanBenchResult[] }).fans;

  it('gives what the fan of the plan gives, within its own band (it was made to)', () => {
    const { points } = fan!.curve!;
    // points of the fan thing at 600 and 400 m3/h, brought to this speed by the affinity laws from 6750 rpm
    const ratio = fan!.curve!.speed_rpm! / 6750;
    for (const [flow_m3h, pressure_Pa] of [
      [400, 2960],
      [600, 2640],
    ] as const) {
      const flow = (flow_m3h / 3600) * ratio;
      const right = points.findIndex(({ flow_m3s }) => flow_m3s > flow);
      const [a, b] = [points[right - 1]!, points[right]!];
      const t = (flow - a.flow_m3s) / (b.flow_m3s - a.flow_m3s);
      const p = a.staticPressure_Pa + t * (b.staticPressure_Pa - a.staticPressure_Pa);
      expect(Math.abs(p / (pressure_Pa * ratio ** 2) - 1)).toBeLessThan(0.02);
      expect(a.low_Pa).toBeLessThan(pressure_Pa * ratio ** 2);
      expect(a.high_Pa).toBeGreaterThan(pressure_Pa * ratio ** 2);
    }
  });
  it('blocked, it turns faster and takes less current than open', () => {
    const { open, blocked } = fan!.motor!;
    expect(blocked!.speed_rpm).toBeGreaterThan(open!.speed_rpm);
    expect(blocked!.supplyCurrent_A).toBeLessThan(open!.supplyCurrent_A);
  });
  it('has no reading left out and none astray', () => {
    expect(fan!.readings.every(({ used, problems }) => used && problems.length === 0)).toBe(true);
    expect(fan!.findings.filter(({ severity }) => severity === 'danger' || severity === 'fault')).toEqual([]);
  });
});
