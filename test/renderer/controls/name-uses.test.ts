import { describe, expect, it } from 'vitest';
import { readValue } from '../../../core/document/read.ts';
import { EXAMPLES } from '../../../core/examples/index.ts';
import { renamedText, usesOf } from '../../../renderer/controls/name-uses.ts';

describe('uses of a named value', () => {
  it('renames whole words alone', () => {
    expect(renamedText('bore + 2 * bore2 - bore', 'bore', 'main')).toBe('main + 2 * bore2 - main');
    expect(renamedText('my_bore', 'bore', 'main')).toBe('my_bore');
  });

  it('are found in every part of a shop, with paths from their items', () => {
    const read = readValue(EXAMPLES['one-router']);
    if (!read.ok) throw new Error('the example must be readable');
    const uses = usesOf(read.document, 'bore');
    expect(uses).toContainEqual({ id: 'fan', path: ['outletDiameter'], text: 'bore' });
    expect(uses).toContainEqual({ id: 'R1', path: ['diameter'], text: 'bore' });
    // as many as the file has such texts, but for the name itself
    const texts = JSON.stringify(EXAMPLES['one-router']).match(/:"bore"/g)!;
    expect(uses).toHaveLength(texts.length - 1);
    expect(usesOf(read.document, 'unused')).toEqual([]);
  });
});
