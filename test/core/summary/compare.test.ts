import { describe, expect, it } from 'vitest';
import { readValue } from '../../../core/document/read.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { EXAMPLES as FILES } from '../../../core/examples/index.ts';
import { solve } from '../../../core/network/solve.ts';
import { compareShops } from '../../../core/summary/compare.ts';
import type { ShopComparison } from '../../../core/summary/compare.ts';
import { compareText } from '../../../core/summary/compare-text.ts';
import { EXAMPLES, exampleDocument } from '../upkeep/examples.ts';

interface Raw {
  name: string;
  things: Record<string, unknown>[];
  runs: (Record<string, unknown> & { pieces: unknown[] })[];
  settings: { name: string; gates: Record<string, unknown> }[];
  values: { name: string; text: string }[];
}
/** One router with a change to its file. */
function changed(change: (raw: Raw) => void): ShopDocument {
  const raw = structuredClone(FILES['one-router']) as unknown as Raw;
  change(raw);
  const read = readValue(raw);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join());
  return read.document;
}
const before = exampleDocument('one-router');
function against(change: (raw: Raw) => void): ShopComparison {
  const compared = compareShops(before, changed(change), 'si');
  if (!compared.ok) throw new Error(compared.problems[0]?.message);
  return compared.comparison;
}

describe('a shop against itself', () => {
  it.each(EXAMPLES)('%s: nothing changed', (name) => {
    const document = exampleDocument(name);
    const compared = compareShops(document, exampleDocument(name), document.units);
    if (!compared.ok) throw new Error('not compared');
    const { changes, added, removed, parts, settings } = compared.comparison;
    expect({ changes, added, removed, parts }).toEqual({ changes: [], added: [], removed: [], parts: [] });
    for (const { runs, fans } of settings) {
      for (const { sides } of [...runs, ...fans]) expect(sides.before).toEqual(sides.after);
    }
    expect(compareText(compared.comparison, 'si')).toContain('nothing');
  });

  it('written another way is the same: 4 in and 101.6 mm', () => {
    const inches = changed((raw) => (raw.runs[1]!.diameter = '5 in'));
    const metric = changed((raw) => (raw.runs[1]!.diameter = '127 mm'));
    const compared = compareShops(inches, metric, 'si');
    expect(compared.ok && compared.comparison.changes).toEqual([]);
  });
});

describe('what changed', () => {
  it('is told by label with both values, and in what follows from it', () => {
    const { changes, parts, settings } = against((raw) => (raw.runs[1]!.diameter = '140 mm'));
    expect(changes).toContainEqual({
      kind: 'run',
      where: 'R2',
      label: 'Inside diameter',
      before: '125 mm',
      after: '140 mm',
    });
    // the elbow is larger, so that less is left straight
    expect(changes.some(({ where, label }) => where === 'R2.1' && label === 'Length')).toBe(true);
    const duct = (key: string) => parts.find((part) => part.key === key)?.row;
    expect(duct('duct galvanised-spiral 125')).toMatchObject({ after: null });
    expect(duct('duct galvanised-spiral 140')).toMatchObject({ before: null });
    expect(duct('gate 100')).toBeUndefined();
    const { sides } = settings[0]!.runs.find(({ id }) => id === 'R2')!;
    // area goes with the square of the diameter, and the flow hardly changes
    expect(sides.after!.velocity_ms! / sides.before!.velocity_ms!).toBeCloseTo((125 / 140) ** 2, 1);
  });

  it('is as the Solution of either has it', () => {
    const after = changed((raw) => (raw.runs[1]!.diameter = '140 mm'));
    const compared = compareShops(before, after, 'si');
    const solved = [solve(before), solve(after)] as const;
    if (!compared.ok || !solved[0].ok || !solved[1].ok) throw new Error('not solved');
    const [old, now] = [solved[0].solution.settings[0]!, solved[1].solution.settings[0]!];
    const [setting] = compared.comparison.settings;
    for (const { id, sides } of setting!.runs) {
      for (const [side, result] of [
        [sides.before!, old],
        [sides.after!, now],
      ] as const) {
        const run = result.runs.find((one) => one.id === id)!;
        expect(side).toMatchObject({
          velocity_ms: run.velocity_ms,
          loss_Pa: run.lossTotal_Pa,
          holds: run.holds,
        });
      }
    }
    for (const { sides } of setting!.fans) {
      expect(sides.before).toMatchObject({ flow_m3s: old.fans[0]!.flow_m3s, power_W: old.fans[0]!.power_W });
    }
  });

  it.each<[string, (raw: Raw) => void, string]>([
    ['a choice, by its words', (raw) => (raw.runs[0]!.material = 'pvc-pipe'), 'PVC'],
    ['a named value, where it is used', (raw) => (raw.values[1]!.text = '3.1 m'), '3.10 m'],
    ['a small change, in enough figures', (raw) => (raw.runs[1]!.diameter = '125.01 mm'), '125.01 mm'],
    ['a setting', (raw) => (raw.settings[0]!.gates.G1 = '40 %'), '40.0 %'],
    ['where a run leads', (raw) => (raw.things[1]!.bodyDiameter = '320 mm'), '320 mm'],
  ])('names %s', (_, change, shown) => {
    const { changes } = against(change);
    expect(changes.map(({ after }) => after).join('\n')).toContain(shown);
  });

  it('what has no field is told as changed, never passed over', () => {
    const { changes } = against((raw) => {
      const fan = raw.things[2] as { curve: { points: { pressure: string }[] } };
      fan.curve.points[3]!.pressure = '2700 Pa';
    });
    expect(changes.filter(({ where }) => where === 'fan')).toHaveLength(1);
  });

  it('things and pieces that are new or gone are listed', () => {
    const { added, removed, changes } = against((raw) =>
      raw.runs[0]!.pieces.push({ kind: 'gate', id: 'G2', along: { leg: 1, at: 0.8 } }),
    );
    expect(added).toContainEqual({ kind: 'piece', id: 'G2', name: 'gate of R1' });
    expect(removed).toEqual([]);
    // the straight that it stands on is two now, and nothing behind it changed
    expect(added.filter(({ kind }) => kind === 'piece')).toHaveLength(2);
    expect(changes.map(({ label }) => label)).toEqual(['Length']);
    const other = compareShops(before, exampleDocument('bench-line'), 'si');
    if (!other.ok) throw new Error('not compared');
    expect(other.comparison.added.some(({ id }) => id === 'hepa')).toBe(true);
    expect(other.comparison.removed.some(({ id }) => id === 'router')).toBe(true);
    expect(other.comparison.settings.map(({ name }) => name)).toEqual(['router', 'sander', 'rotary tool']);
    expect(compareText(other.comparison, 'si')).toContain('there is no such setting');
  });

  it('names the one that cannot be', () => {
    const broken = changed((raw) => (raw.runs[0]!.material = 'cheese'));
    expect(compareShops(before, broken, 'si')).toMatchObject({ ok: false, which: 'after' });
    expect(compareShops(broken, before, 'si')).toMatchObject({ ok: false, which: 'before' });
  });
});
