import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/document/commands/index.ts';
import type { Command } from '../../../core/document/commands/index.ts';
import { readValue } from '../../../core/document/read.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { EXAMPLES } from '../../../core/examples/index.ts';
import { solve } from '../../../core/network/solve.ts';
import type { SettingResult } from '../../../core/network/solution.ts';
import { findingsList, gradeCounts } from '../../../renderer/findings/findings-list.ts';

function shop(...commands: readonly Command[]): ShopDocument {
  const read = readValue(EXAMPLES['one-router']);
  if (!read.ok) throw new Error('the example must be readable');
  return commands.reduce((document, command) => {
    const done = applyCommand(document, command);
    if (!done.ok) throw new Error(done.message);
    return done.document;
  }, read.document);
}

function solved(document: ShopDocument): SettingResult {
  const done = solve(document, document.settings[0]!.name);
  if (!done.ok) throw new Error(done.problems[0]?.message);
  return done.solution.settings[0]!;
}

const list = (document: ShopDocument) =>
  findingsList({ document, units: 'si', gaps: [], problems: [], result: solved(document) });
const byCode = (document: ShopDocument, code: string) =>
  list(document).find(({ key }) => key.startsWith(`${code} `));

describe('remedies', () => {
  it('mend a run that is too slow by a smaller size, which then holds', () => {
    const document = shop({ kind: 'setField', id: 'R1', path: ['diameter'], text: '150 mm' });
    const entry = byCode(document, 'velocity-low')!;
    expect(entry.title).toBe('Router to cyclone');
    expect(entry.remedy?.commands).toHaveLength(1);
    expect(entry.remedy?.note).toMatch(/first guess/);
    const mended = applyCommand(document, entry.remedy!.commands[0]!);
    if (!mended.ok) throw new Error(mended.message);
    expect(byCode(mended.document, 'velocity-low')).toBeUndefined();
  });

  it('clean a filter that is full', () => {
    const document = shop({ kind: 'setField', id: 'filter', path: ['layers', 0, 'load'], text: '3 kg/m2' });
    const { remedy } = byCode(document, 'filter-full')!;
    const mended = applyCommand(document, remedy!.commands[0]!);
    if (!mended.ok) throw new Error(mended.message);
    expect(byCode(mended.document, 'filter-full')).toBeUndefined();
  });

  it('open a gate as far as it was measured', () => {
    const document = shop({ kind: 'setGate', setting: 'router', gate: 'G1', text: '15 %' });
    const { remedy } = byCode(document, 'outside-range')!;
    expect(remedy?.label).toBe('Open it to 20 %');
    const mended = applyCommand(document, remedy!.commands[0]!);
    if (!mended.ok) throw new Error(mended.message);
    expect(byCode(mended.document, 'outside-range')).toBeUndefined();
  });

  it('are not offered where a person has to decide: a run of several sizes', () => {
    const document = shop(
      { kind: 'setField', id: 'R1', path: ['diameter'], text: '150 mm' },
      { kind: 'addPiece', run: 'R1', leg: 0, at: 1, piece: { kind: 'reducer', to: '140 mm' } },
    );
    expect(byCode(document, 'velocity-low')?.remedy).toBeNull();
  });
});

describe('the list', () => {
  it('says what is missing in place of findings, once each', () => {
    const document = shop({ kind: 'place', thing: 'port', at: { x: 1, y: 1 } });
    const gaps = [
      { path: 'things[5](port-1)', message: 'things[5](port-1): no run is joined to port-1', remedy: 'draw' },
    ];
    const entries = findingsList({ document, units: 'si', gaps, problems: [], result: null });
    expect(entries).toMatchObject([
      { grade: 'missing', where: 'port-1', message: 'no run is joined to port-1' },
    ]);
  });

  it('keeps cautions last and counts each grade', () => {
    const entries = list(shop());
    const grades = entries.map(({ grade }) => grade);
    expect(grades.indexOf('caution')).toBeGreaterThan(grades.lastIndexOf('advice'));
    const counts = gradeCounts(entries);
    expect(counts.reduce((sum, { count }) => sum + count, 0)).toBe(entries.length);
    expect(new Set(entries.map(({ key }) => key)).size).toBe(entries.length);
  });

  it('says once why nothing could be solved', () => {
    const document = shop({ kind: 'setGate', setting: 'router', gate: 'G1', text: '0 %' });
    expect(list(document).filter(({ message }) => message.includes('no open path'))).toHaveLength(1);
  });
});
