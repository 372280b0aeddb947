import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/document/commands/apply.ts';
import type { Command } from '../../../core/document/commands/command.ts';
import { readValue } from '../../../core/document/read.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { EXAMPLES } from '../../../core/examples/index.ts';
import { patched, patchOf } from '../../../renderer/state/document-patch.ts';

function example(): ShopDocument {
  const read = readValue(EXAMPLES['five-machines']);
  if (!read.ok) throw new Error('the example cannot be read');
  return read.document;
}

function edit(document: ShopDocument, command: Command): ShopDocument {
  const done = applyCommand(document, command);
  if (!done.ok) throw new Error(done.message);
  return done.document;
}

/** As a worker gets it. */
const sent = (before: ShopDocument | null, after: ShopDocument) => structuredClone(patchOf(before, after));

describe('what is sent of an edit', () => {
  const shop = example();
  const port = shop.things.find(({ kind }) => kind === 'port')!;

  it('is the whole document where nothing was sent before', () => {
    expect(patched(null, sent(null, shop))).toEqual(shop);
  });

  it('is nothing where nothing changed', () => {
    const patch = patchOf(shop, shop);
    expect(patch).toEqual({ fields: {}, gone: [], items: [] });
  });

  it('is one thing where one was moved', () => {
    const moved = edit(shop, { kind: 'move', ids: [port.id], dx: 0.1, dy: 0 });
    const patch = patchOf(shop, moved);
    expect(patch.items.map(({ field }) => field)).toEqual(['things']);
    expect(patch.fields).toEqual({});
  });

  it('leaves all else the same objects at the other end', () => {
    const far = patched(null, sent(null, shop));
    const moved = edit(shop, { kind: 'move', ids: [port.id], dx: 0.1, dy: 0 });
    const next = patched(far, sent(shop, moved));
    expect(next).toEqual(moved);
    expect(next.runs).toBe(far.runs);
    next.things.forEach((thing, i) => expect(thing === far.things[i]).toBe(thing.id !== port.id));
    expect(far).toEqual(shop);
  });

  it('carries lists that grew, and fields that went', () => {
    const grown = edit(shop, { kind: 'place', thing: 'port', at: { x: 0, y: 0 } });
    expect(patched(shop, sent(shop, grown))).toEqual(grown);
    expect(patched(grown, sent(grown, shop))).toEqual(shop);
    const noted = { ...shop, notes: 'dry' } as ShopDocument;
    const without = Object.fromEntries(
      Object.entries(noted).filter(([field]) => field !== 'notes'),
    ) as unknown as ShopDocument;
    const back = patched(noted, sent(noted, without));
    expect(back).toEqual(without);
    expect('notes' in back).toBe(false);
  });
});
