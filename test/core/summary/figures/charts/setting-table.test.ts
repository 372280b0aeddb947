import { describe, expect, it } from 'vitest';
import { settingNames } from '../../../../../core/network/apply-setting.ts';
import { solveSetting } from '../../../../../core/network/solve.ts';
import { settingTable } from '../../../../../core/summary/figures/charts/setting-table.ts';
import { benchOf, exampleDocument } from '../solved-example.ts';

const document = exampleDocument('five-machines');
const bench = benchOf(document);
const settings = settingNames(document);
const solutions = new Map(settings.map((name) => [name, solveSetting(bench, name)]));
const nameOf = (id: string) => id;

describe('table of all settings', () => {
  const table = settingTable({ settings, solutions, units: 'us', nameOf });
  const row = (id: string) => table.rows.find((r) => r.id === id)!;

  it('has a row for each run that something is asked of, and two for the fan', () => {
    const asked = new Set(
      [...solutions.values()].flatMap((s) =>
        s.runs.filter((r) => r.requiredVelocity_ms !== null || r.requiredFlow_m3s !== null).map((r) => r.id),
      ),
    );
    expect(new Set(table.rows.filter((r) => r.kind === 'run').map((r) => r.id))).toEqual(asked);
    expect(table.rows.filter((r) => r.kind === 'fan').map((r) => r.label)).toEqual([
      'flow, cfm',
      'static, in wg',
    ]);
    expect(table.rows.some((r) => r.id === 'S3')).toBe(false);
  });

  it('says shut, fast and too slow in the cells where they are', () => {
    const at = (id: string, setting: string) => row(id).cells[settings.indexOf(setting)]!;
    expect(at('R2', 'planer alone')).toEqual({ text: '', status: 'shut' });
    expect(at('R2', 'jointer alone').status).toBe('fast');
    expect(at('R1', 'all open').status).toBe('too slow');
  });

  it('names the least margin of each setting and its run', () => {
    table.columns.forEach((column) => {
      const runs = solutions
        .get(column.name)!
        .runs.filter((r) => r.massFlow_kgs !== 0 && r.requiredVelocity_ms);
      const least = Math.min(...runs.map((r) => r.velocity_ms! / r.requiredVelocity_ms! - 1));
      expect(column.margin!).toBeLessThanOrEqual(least);
      expect(column.state).toBe('solved');
    });
  });

  it('keeps the place of a setting that has no solution or is not there yet', () => {
    const two = new Map([
      [settings[0]!, solutions.get(settings[0]!)!],
      [
        settings[1]!,
        { ...solutions.get(settings[1]!)!, converged: false, reasonText: 'no open path', runs: [], fans: [] },
      ],
    ]);
    const part = settingTable({ settings, solutions: two, units: 'si', nameOf });
    expect(part.columns.slice(0, 3).map((c) => c.state)).toEqual(['solved', 'no solution', 'waiting']);
    expect(part.rows.every((r) => r.cells.length === settings.length && r.cells[1] === null)).toBe(true);
  });
});
