import { describe, expect, it } from 'vitest';
import { blankDocument } from '../../../core/document/commands/index.ts';
import { READING_WORDS } from '../../../core/document/reading-fields.ts';
import type { ReadingKind } from '../../../core/document/schema-fans.ts';
import { factorText } from '../../../renderer/fan-bench/factor-text.ts';
import { estimateText, tablesOf } from '../../../renderer/fan-bench/reading-view.ts';
import { after } from '../../core/document/commands/helpers.ts';

const KINDS = Object.keys(READING_WORDS) as ReadingKind[];
const fan = (...rows: object[]) =>
  after(
    blankDocument('si'),
    { kind: 'addFan' },
    ...rows.map((row) => ({ kind: 'addRow' as const, id: 'design-1', path: ['readings'], row })),
  ).fans[0]!;

describe('tables of readings', () => {
  it('hold every reading once, by its kind, with its place in the list', () => {
    const design = fan({ kind: 'point' }, { kind: 'hole-plate' }, { kind: 'point' });
    const tables = tablesOf(design, false);
    expect(tables.map(({ kind }) => kind)).toEqual(['hole-plate', 'point']);
    expect(tables.map(({ rows }) => rows.map(({ index }) => index))).toEqual([[1], [0, 2]]);
  });

  it('show every field of a kind, in a column or in the details', () => {
    const design = fan(...KINDS.map((kind) => ({ kind })));
    for (const drive of [false, true]) {
      for (const { kind, columns, rest } of tablesOf(design, drive)) {
        const fields = [...columns, ...rest].map(({ path }) => path.join('.'));
        expect(new Set(fields).size, kind).toBe(fields.length);
        expect(fields, kind).toContain('voltage');
        expect(
          columns.every((row) => row.kind === 'quantity'),
          kind,
        ).toBe(true);
      }
    }
  });

  it('have a column for a reading of the drive where one is given', () => {
    const columns = (row: object) => tablesOf(fan(row), false)[0]!.columns.map(({ path }) => path[0]);
    expect(columns({ kind: 'hole-plate' })).not.toContain('current');
    expect(columns({ kind: 'hole-plate', current: '4 A' })).toContain('current');
  });
});

describe('figures', () => {
  it('come with plus or minus as errors are typed: twice the standard error', () => {
    expect(estimateText({ value: 2000, error: 15 }, 'pressure', 'si')).toEqual({ value: '2000', off: '±30' });
    expect(estimateText({ value: 0, error: 0 }, 'flow', 'si')).toEqual({ value: '0', off: '' });
    expect(estimateText(null, 'flow', 'si').value).toBe('–');
  });

  it.each([
    [0.866, '0.86'],
    [2.9999, '2.9'],
    [3, '3.0'],
    [0.3, '0.30'],
    [14.9, '14'],
  ])('never show a safety factor of %s as more', (factor, text) => {
    expect(factorText(factor)).toBe(text);
  });
});
