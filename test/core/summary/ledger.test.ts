import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDocument } from '../../../core/document/read.ts';
import { settingNames } from '../../../core/network/apply-setting.ts';
import { solve } from '../../../core/network/solve.ts';
import type { Solution } from '../../../core/network/solution.ts';
import { systemCurve } from '../../../core/network/system-curve.ts';
import { curveText } from '../../../core/summary/curve-text.ts';
import { flowOrder } from '../../../core/summary/flow-order.ts';
import { ledgerText } from '../../../core/summary/ledger-text.ts';
import * as s from '../network/shop.ts';

const EXAMPLES = new URL('../../../core/examples/', import.meta.url);
const examples = readdirSync(EXAMPLES)
  .filter((name) => name.endsWith('.json'))
  .map((name) => {
    const read = readDocument(readFileSync(new URL(name, EXAMPLES), 'utf8'));
    if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
    return [name, read.document] as const;
  });
const solutionOf = (document: Parameters<typeof solve>[0]): Solution => {
  const solved = solve(document);
  if (!solved.ok) throw new Error(solved.problems.map((p) => p.message).join('\n'));
  return solved.solution;
};
const UNREADABLE = /NaN|Infinity|undefined|null|\[object|-0\.0*\b(?!\d)/;

describe.each(examples)('the ledger of %s', (_name, document) => {
  const solution = solutionOf(document);
  it.each(['si', 'us'] as const)('keeps to 110 characters and to plain figures in %s', (units) => {
    const text = ledgerText(solution, units);
    const curves = settingNames(document).map((name) => {
      const bench = s.benchOf(document);
      return curveText(systemCurve(bench, name, bench.shop.fans[0]!.thing.id, 9), units);
    });
    for (const line of [text, ...curves].join('\n').split('\n')) {
      expect(line.length, line).toBeLessThanOrEqual(110);
      expect(line).toBe(line.trimEnd());
    }
    expect(text).not.toMatch(UNREADABLE);
    expect(text).toContain('Local codes and licensed practice decide.');
  });
  it('names every run and device once in each setting', () => {
    const sections = ledgerText(solution, 'si')
      .split(/^SETTING /m)
      .slice(1);
    expect(sections).toHaveLength(solution.settings.length);
    solution.settings.forEach((setting, i) => {
      const section = sections[i]!.split(/^ALL SETTINGS|^CAUTIONS/m)[0]!;
      for (const { id } of setting.runs)
        expect(section.match(new RegExp(`^  ${id} .*\\(`, 'gm'))).toHaveLength(1);
      for (const { id } of setting.devices) expect(section.split(`  [${id}] `)).toHaveLength(2);
    });
  });
  it('prints in each system its own units only', () => {
    const si = ledgerText(solutionOf({ ...document, units: 'si' }), 'si');
    const us = ledgerText(solutionOf({ ...document, units: 'us' }), 'us');
    expect(si).not.toMatch(/\bfpm\b|in wg|\bcfm\b/);
    expect(us).not.toMatch(/m\/s\b|\bPa\b|\bm3\/h\b/);
  });
});

const branches = s.shopOf(
  [
    s.port('far'),
    s.port('near'),
    { id: 'W', kind: 'wye', angle: Math.PI / 6 },
    s.cyclone('sep'),
    s.STEADY_FAN,
    s.exhaust(),
  ],
  [
    s.run('X', 'fan', 'out', [s.straight(1)]),
    s.run('main', 'W', 'sep', [s.straight(1)]),
    s.run('B', 'near', 'W.branch', [s.straight(1), s.gate('G')], { name: 'Near the door' }),
    s.run('A', 'far', 'W.main', [s.straight(1)]),
    s.run('S', 'sep', 'fan'),
  ],
  {
    settings: [
      { name: 'both', gates: {} },
      { name: 'far alone', gates: { G: 0 } },
      { name: 'tight', gates: { G: 0.3 } },
    ],
  },
);

describe('the order of flow', () => {
  const idsOf = (document: Parameters<typeof solve>[0]) =>
    flowOrder(s.resultOf(document)).map((stop) =>
      stop.kind === 'run' ? stop.run.id : stop.kind === 'device' ? stop.device.id : stop.fan.id,
    );
  it('takes branches before the main that they enter, however they are drawn', () => {
    const order = idsOf(branches);
    expect(order).toHaveLength(7);
    for (const [before, after] of [
      ['A', 'main'],
      ['B', 'main'],
      ['main', 'sep'],
      ['sep', 'S'],
      ['S', 'fan'],
      ['fan', 'X'],
    ] as const) {
      expect(order.indexOf(before)).toBeLessThan(order.indexOf(after));
    }
  });
  it('follows the air where a run is drawn against it', () => {
    const shop = s.shopOf(
      [{ id: 'P', kind: 'pressure', pressure: 300 }, { id: 'J', kind: 'joint' }, s.exhaust()],
      [s.run('R1', 'J', 'P', [s.straight(1)]), s.run('R2', 'J', 'out', [s.straight(1)])],
    );
    expect(s.runOf(s.resultOf(shop), 'R1').massFlow_kgs).toBeLessThan(0);
    expect(idsOf(shop)).toEqual(['R1', 'R2']);
  });
  it('leaves out nothing in a ring, and names nothing twice', () => {
    const shop = s.shopOf(
      [s.port('a'), { id: 'J1', kind: 'joint' }, { id: 'J2', kind: 'joint' }, s.STEADY_FAN, s.exhaust()],
      [
        s.run('R1', 'a', 'J1'),
        s.run('N', 'J1', 'J2', [s.straight(2)]),
        s.run('S', 'J2', 'J1', [s.straight(2)]),
        s.run('R2', 'J2', 'fan'),
        s.run('R3', 'fan', 'out'),
      ],
    );
    expect([...idsOf(shop)].sort()).toEqual(['N', 'R1', 'R2', 'R3', 'S', 'fan']);
  });
  it('includes a blower that only turns air round', () => {
    const shop = s.shopOf(
      [
        s.port('a'),
        { id: 'J1', kind: 'joint' },
        { id: 'J2', kind: 'joint' },
        s.exhaust(),
        s.STEADY_FAN,
        { ...s.STEADY_FAN, id: 'stir' },
      ],
      [
        s.run('R1', 'a', 'fan'),
        s.run('R2', 'fan', 'J1'),
        s.run('R3', 'J1', 'J2', [s.straight(1)]),
        s.run('R4', 'J2', 'out', [s.straight(1)]),
        s.run('R5', 'J2', 'stir', [s.straight(1)]),
        s.run('R6', 'stir', 'J1', [s.straight(1)]),
      ],
    );
    expect([...idsOf(shop)].sort()).toEqual(['R1', 'R2', 'R3', 'R4', 'R5', 'R6', 'fan', 'stir']);
  });
});

describe('the text', () => {
  const text = ledgerText(solutionOf(branches), 'si');
  it('says what holds, what is shut, and what a branch loses where it joins', () => {
    expect(text).toContain('B Near the door  (near to W.branch)');
    expect(text).toContain('shut: no flow');
    expect(text).toMatch(/W\.branch +wye/);
  });
  it('sets the settings side by side', () => {
    const table = text.slice(text.indexOf('ALL SETTINGS'));
    expect(table).toMatch(/both +far alone +tight/);
    expect(table).toContain('fan flow m3/h');
  });
  it('breaks a table of many settings in two', () => {
    const settings = Array.from({ length: 12 }, (_, i) => ({ name: `with machine ${i + 1}`, gates: {} }));
    const many = s.shopOf(
      [s.port('a', { needs: { velocity: 18 } }), s.STEADY_FAN, s.exhaust()],
      [s.run('R1', 'a', 'fan'), s.run('R2', 'fan', 'out')],
      { settings },
    );
    const lines = ledgerText(solutionOf(many), 'si').split('\n');
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(110);
    const heads = lines.filter((line) => line.includes('velocity m/s'));
    expect(heads.length).toBeGreaterThan(1);
    for (const { name } of settings) expect(heads.join('  ')).toContain(name);
  });
  it('tells of a setting without a solution, with its remedy, and goes on', () => {
    const shop = s.shopOf(
      [s.port('a'), s.STEADY_FAN, s.exhaust()],
      [s.run('R1', 'a', 'fan', [s.gate('G')], { requiredVelocity: 10 }), s.run('R2', 'fan', 'out')],
      {
        settings: [
          { name: 'open', gates: {} },
          { name: 'shut', gates: { G: 0 } },
        ],
      },
    );
    const both = ledgerText(solutionOf(shop), 'us');
    expect(both).toMatch(/SETTING "shut"\n {2}no solution: no open path/);
    expect(both).toContain('remedy: open a gate');
    expect(both).toMatch(/R1 +\d+ holds +no solution/);
    expect(both).not.toMatch(UNREADABLE);
  });
  it('prints the operating points of a fan that has several', () => {
    const hump = [
      [0, 1000],
      [0.03, 700],
      [0.06, 850],
      [0.1, 1400],
      [0.13, 1300],
      [0.16, 600],
      [0.2, 0],
    ] as const;
    const shop = s.shopOf(
      [{ id: 'P', kind: 'pressure', pressure: -700 }, s.fan(hump), s.exhaust()],
      [s.run('R1', 'P', 'fan', [{ kind: 'given', coefficient: 3 }]), s.run('R2', 'fan', 'out')],
    );
    expect(ledgerText(solutionOf(shop), 'si')).toMatch(
      /could run at .*\(stable\), .*\(unstable\), .*\(stable\)/,
    );
  });
});

describe('the text of a system curve', () => {
  const bench = s.benchOf(branches);
  const curve = systemCurve(bench, 'both', 'fan', 9);
  it('has a row for each point, with its shares', () => {
    const text = curveText(curve, 'si');
    expect(text.split('\n').filter((line) => /^ +\d/.test(line))).toHaveLength(curve.points.length);
    expect(text).toMatch(/demand +fan total +hood +duct +hose +fittings +separator +filter +solids/);
    expect(text).toMatch(/runs at .* \(stable\)/);
    expect(text).not.toMatch(UNREADABLE);
  });
});
