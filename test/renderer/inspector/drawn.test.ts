import { describe, expect, it } from 'vitest';
import { applyCommand, blankDocument } from '../../../core/document/commands/index.ts';
import type { Command } from '../../../core/document/commands/index.ts';
import { findItem } from '../../../core/document/commands/items.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { chosenOf, groupsOf, rootPath } from '../../../renderer/inspector/describe.ts';
import { standingOf } from '../../../renderer/inspector/drawn.ts';
import { valueAt } from '../../../renderer/controls/values.ts';

function drawn(...more: readonly Command[]): ShopDocument {
  const commands: Command[] = [
    { kind: 'place', thing: 'port', at: { x: 0, y: 0 } },
    { kind: 'place', thing: 'cyclone', at: { x: 6, y: 4 } },
    {
      kind: 'drawRun',
      from: { thing: 'port-1' },
      to: { thing: 'cyclone-1', end: 'in' },
      corners: [{ x: 3, y: 0 }],
    },
    ...more,
  ];
  return commands.reduce((document, command) => {
    const done = applyCommand(document, command);
    if (!done.ok) throw new Error(done.message);
    return done.document;
  }, blankDocument('si'));
}

const standing = (document: ShopDocument, id: string, ...path: (string | number)[]) =>
  standingOf(document, findItem(document, id)!, path, null);

describe('what stands in an empty field', () => {
  it('is the length drawn, also while a typed one stands before it', () => {
    const document = drawn();
    const length = standing(document, 'R1.1', 'route', 'legs', 0, 'length')!;
    expect(length.says).toBe('drawn');
    expect(length.si).toBeGreaterThan(2);
    expect(length.si).toBeLessThan(3);
    const typed = drawn({ kind: 'setField', id: 'R1', path: ['route', 'legs', 0, 'length'], text: '9 m' });
    expect(standing(typed, 'R1.1', 'route', 'legs', 0, 'length')?.si).toBe(length.si);
  });

  it('is what the dust needs, and the standard size of a cyclone', () => {
    const document = drawn();
    // dry sawdust 18 m/s; Stairmand high efficiency has an inlet of 0.5 D by 0.2 D, here with D = 300 mm
    expect(standing(document, 'port-1', 'needs', 'velocity')).toEqual({ si: 18, says: 'from the dust' });
    expect(standing(document, 'cyclone-1', 'dimensions', 'inletHeight')?.si).toBeCloseTo(0.15, 12);
    expect(standing(document, 'cyclone-1', 'dimensions', 'inletWidth')?.si).toBeCloseTo(0.06, 12);
    expect(standing(document, 'port-1', 'name')).toBeNull();
  });
});

describe('fields of a selection', () => {
  it('lead to the values in the document, of drawn pieces through their run', () => {
    const document = drawn({ kind: 'setField', id: 'R1', path: ['route', 'legs', 1, 'length'], text: '2 m' });
    const chosen = chosenOf(document, ['R1.1', 'R1.3', 'gone']);
    expect(chosen).toHaveLength(2);
    const shared = groupsOf(document, chosen)
      .flatMap(([, fields]) => fields)
      .find(({ field }) => field.path.at(-1) === 'length')!;
    const values = chosen.map((one, i) => valueAt(document, rootPath(one, shared.places[i]!)));
    expect(values).toMatchObject([undefined, { text: '2 m', si: 2 }]);
  });

  it('leave out what no two items share', () => {
    const document = drawn();
    const paths = (ids: string[]) =>
      groupsOf(document, chosenOf(document, ids)).flatMap(([, fields]) =>
        fields.map(({ field }) => field.path.join('.')),
      );
    expect(paths(['port-1'])).toContain('id');
    expect(paths(['port-1', 'cyclone-1'])).not.toContain('id');
    expect(paths(['port-1', 'cyclone-1'])).toContain('at.z');
  });
});
