import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/document/commands/apply.ts';
import type { Command } from '../../../core/document/commands/command.ts';
import { readValue } from '../../../core/document/read.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { EXAMPLES } from '../../../core/examples/index.ts';
import { compileShop } from '../../../core/network/compile.ts';
import { openShop, solveSetting } from '../../../core/network/solve.ts';

function example(): ShopDocument {
  const read = readValue(EXAMPLES['five-machines']);
  if (!read.ok) throw new Error('the example cannot be read');
  return read.document;
}

function compiled(document: ShopDocument) {
  const result = compileShop(document);
  if (!result.ok) throw new Error(result.problems[0]?.message);
  return result.shop;
}

const shop = example();
const port = shop.things.find(({ kind }) => kind === 'port')!;
const own = shop.runs.find(({ from }) => from === port.id)!;
const EDITS: readonly Command[] = [
  { kind: 'move', ids: [port.id], dx: 0.37, dy: -0.21 },
  { kind: 'setField', id: own.id, path: ['diameter'], text: '90 mm' },
];

describe('what is kept of runs from one document to the next', () => {
  it.each(EDITS.map((command) => [command.kind, command] as const))(
    'gives what a shop without a past gives: %s',
    (_, command) => {
      compiled(shop);
      const done = applyCommand(shop, command);
      if (!done.ok) throw new Error(done.message);
      const warm = compiled(done.document);
      // a copy shares no object with anything that was built before
      const cold = compiled(structuredClone(done.document));
      expect(warm.runs).toEqual(cold.runs);
      expect(warm.packed).toEqual(cold.packed);
      const solve = (document: ShopDocument) => {
        const opened = openShop(document);
        if (!opened.ok) throw new Error(opened.problems[0]?.message);
        return solveSetting(opened.bench, document.settings[0]!.name);
      };
      expect(solve(done.document)).toEqual(solve(structuredClone(done.document)));
    },
  );

  it('builds the run at a thing that moved, and no other', () => {
    const before = compiled(shop);
    const done = applyCommand(shop, EDITS[0]!);
    if (!done.ok) throw new Error(done.message);
    const after = compiled(done.document);
    const built = after.runs.filter((run, i) => run.segments !== before.runs[i]!.segments);
    expect(built.map(({ run }) => run.id)).toEqual([own.id]);
  });
});
