import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textTable, wrapText } from '../../../core/summary/text-table.ts';

describe('textTable', () => {
  const columns = [
    { head: 'piece', align: 'left' },
    { head: 'loss', align: 'right' },
  ] as const;
  it('makes each column as wide as its widest cell and leaves nothing at the end of a line', () => {
    expect(
      textTable(
        columns,
        [
          ['a', '1'],
          ['hose-1', '12345'],
        ],
        '  ',
      ),
    ).toEqual(['  piece    loss', '  a           1', '  hose-1  12345']);
  });
  it('gives units a line of their own where a column has one', () => {
    const withUnit = [columns[0], { ...columns[1], unit: 'in wg' }];
    expect(textTable(withUnit, [['a', '1']])).toEqual(['piece   loss', '       in wg', 'a          1']);
  });
  it('prints its heads where there are no rows', () => {
    expect(textTable(columns, [])).toEqual(['piece  loss']);
  });
});

describe('wrapText', () => {
  it('keeps leading spaces on the first line and hangs the others', () => {
    expect(wrapText('  one two three', 9, '    ')).toEqual(['  one two', '    three']);
  });
  it('leaves a word that is too long on a line of its own', () => {
    expect(wrapText('a longerthanwidth b', 6)).toEqual(['a', 'longerthanwidth', 'b']);
  });
  it('loses and adds no word, and keeps the width, for any text', () => {
    const word = fc.stringMatching(/^[a-z]{1,9}$/);
    fc.assert(
      fc.property(fc.array(word, { minLength: 1 }), fc.integer({ min: 12, max: 60 }), (words, width) => {
        const lines = wrapText(`  ${words.join(' ')}`, width, '   ');
        expect(lines.flatMap((line) => line.trim().split(' '))).toEqual(words);
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
        expect(lines[0]!.startsWith('  ')).toBe(true);
      }),
      { seed: 71 },
    );
  });
});
