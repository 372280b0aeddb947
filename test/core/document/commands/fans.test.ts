import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../../core/document/commands/apply.ts';
import { copyParts, readClip, writeClip } from '../../../../core/document/commands/clip.ts';
import type { Command } from '../../../../core/document/commands/command.ts';
import { blankDocument } from '../../../../core/document/commands/defaults.ts';
import { fieldsOf } from '../../../../core/document/fields.ts';
import { READING_WORDS } from '../../../../core/document/reading-fields.ts';
import type { ReadingKind } from '../../../../core/document/schema-fans.ts';
import type { ShopDocument } from '../../../../core/document/schema.ts';
import { after, refusal, simpleShop, thing } from './helpers.ts';

const KINDS = Object.keys(READING_WORDS) as ReadingKind[];
const reading = (kind: ReadingKind, more: object = {}): Command => ({
  kind: 'addRow',
  id: 'design-1',
  path: ['readings'],
  row: { kind, ...more },
});
const set = (id: string, path: (string | number)[], text: string | null): Command => ({
  kind: 'setField',
  id,
  path,
  text,
});
const stand = (value: string | null, fan = 'fan-1'): Command => ({
  kind: 'setChoice',
  id: fan,
  path: ['design'],
  value,
});
const one = (shop: ShopDocument, id = 'design-1') => {
  const found = shop.fans.find((fan) => fan.id === id);
  if (!found) throw new Error(`no ${id}`);
  return found;
};

describe('fans of the list', () => {
  it('are added with a start of each type, in the units of the shop', () => {
    for (const type of ['radial', 'mixed', 'axial', 'staged-axial'] as const) {
      for (const units of ['si', 'us'] as const) {
        const result = applyCommand(blankDocument(units), { kind: 'addFan', type });
        if (!result.ok) throw new Error(result.message);
        expect(result).toMatchObject({ created: ['design-1'], label: 'Add Fan 1' });
        expect(one(result.document).wheelDiameter.text).toMatch(units === 'us' ? /in$/ : /mm$/);
        expect(one(result.document).readings).toEqual([]);
      }
    }
  });

  it('have names that are free, for people and for the file', () => {
    const shop = after(simpleShop(), { kind: 'addFan' }, { kind: 'addFan' });
    expect(shop.fans.map(({ id, name }) => [id, name])).toEqual([
      ['design-1', 'Fan 1'],
      ['design-2', 'Fan 2'],
    ]);
    expect(refusal(shop, set('design-2', ['id'], 'fan-1')).message).toContain('"fan-1" is taken');
  });

  it('are duplicated beside the first, sharing nothing that an edit could reach', () => {
    const shop = after(simpleShop(), { kind: 'addFan' }, reading('hole-plate'), {
      kind: 'duplicateFan',
      id: 'design-1',
    });
    expect(shop.fans.map(({ name }) => name)).toEqual(['Fan 1', 'Fan 1, copy 1']);
    const edited = after(shop, set('design-2', ['readings', 0, 'hole'], '40 mm'));
    expect(one(edited).readings[0]).toMatchObject({ hole: { text: '25 mm' } });
    expect(one(edited)).toBe(one(shop));
    expect(edited.things).toBe(shop.things);
  });

  it('stand in the shop by one choice, and leave it when they are removed', () => {
    const shop = after(simpleShop(), { kind: 'addFan' }, stand('design-1'));
    expect(thing(shop, 'fan-1')).toMatchObject({ design: 'design-1' });
    const bare = after(shop, { kind: 'removeFan', id: 'design-1' });
    expect(bare.fans).toEqual([]);
    expect(thing(bare, 'fan-1')).not.toHaveProperty('design');
    expect(thing(after(shop, stand(null)), 'fan-1')).not.toHaveProperty('design');
    expect(refusal(simpleShop(), stand('design-9')).message).toContain('design-9');
  });

  it('can be chosen in the fan of the plan by their names', () => {
    const shop = after(simpleShop(), { kind: 'addFan' }, set('design-1', ['name'], 'Shed blower'));
    const field = fieldsOf(shop, 'fan-1').find(({ path }) => path[0] === 'design');
    expect(field).toMatchObject({ kind: 'choice', optional: true });
    expect(field!.options).toEqual([{ value: 'design-1', label: 'Shed blower' }]);
  });

  it('take along what stands for them when they get another short name', () => {
    const shop = after(
      simpleShop(),
      { kind: 'addFan' },
      stand('design-1'),
      set('design-1', ['id'], 'shed-blower'),
    );
    expect(thing(shop, 'fan-1')).toMatchObject({ design: 'shed-blower' });
    expect(shop.fans[0]!.id).toBe('shed-blower');
  });

  it.each([
    [{ kind: 'removeFan', id: 'odd' } as const, /odd/],
    [{ kind: 'duplicateFan', id: 'fan-1' } as const, /fan-1/],
    [{ kind: 'addFan', type: 'odd' as 'axial' } as const, /odd/],
    [{ kind: 'addRow', id: 'design-1', path: ['readings'], row: { kind: 'odd' } } as const, /kind/],
    [{ kind: 'addRow', id: 'design-1', path: ['readings'] } as const, /kind/],
    [{ kind: 'setChoice', id: 'design-1', path: ['motor', 'kind'], value: 'odd' } as const, /odd/],
    [{ kind: 'setDocument', path: ['fans', 0, 'name'], value: 'x' } as const, /fans/],
  ])('refuse what cannot be: %j', (command, words) => {
    const said = refusal(after(simpleShop(), { kind: 'addFan' }), command);
    expect(said.message).toMatch(words);
    expect(said.remedy).not.toBe('');
  });
});

describe('readings', () => {
  it('of every kind start with nothing read, and go again', () => {
    const shop = after(simpleShop(), { kind: 'addFan' }, ...KINDS.map((kind) => reading(kind)));
    expect(one(shop).readings.map(({ kind }) => kind)).toEqual(KINDS);
    expect(one(shop).readings.map(({ id }) => id)).toEqual(KINDS.map((_, i) => `r${i + 1}`));
    const [lift, sealed, plate] = one(shop).readings;
    expect([lift, sealed, plate]).toMatchObject([
      { lift: { si: 0 } },
      { suction: { si: 0 } },
      { suction: { si: 0 } },
    ]);
    const fewer = after(shop, { kind: 'removeRow', id: 'design-1', path: ['readings'], index: 1 });
    expect(one(fewer).readings.map(({ kind }) => kind)).not.toContain('sealed-suction');
    // a name that went is not given to another reading while it could be mistaken
    const added = after(fewer, reading('point'));
    expect(new Set(one(added).readings.map(({ id }) => id)).size).toBe(KINDS.length);
  });

  it('take over the rig of the last of their kind, and nothing that was read', () => {
    const shop = after(
      simpleShop(),
      { kind: 'addFan' },
      reading('hole-plate', { hole: '40 mm', suction: '900 Pa', box: '100 mm', speed: '2900 rpm' }),
      set('design-1', ['readings', 0, 'errors', 'pressure'], '20 Pa'),
      reading('hole-plate'),
    );
    const next = one(shop).readings[1]!;
    expect(next).toMatchObject({
      id: 'r2',
      hole: { text: '40 mm' },
      box: { text: '100 mm' },
      suction: { si: 0 },
      errors: { pressure: { text: '20 Pa' } },
    });
    expect(next).not.toHaveProperty('speed');
  });

  it('let in any number, so that it is told at its row, but no other unit', () => {
    const shop = after(simpleShop(), { kind: 'addFan' }, reading('hole-plate'));
    for (const text of ['-200 Pa', '0 Pa', '9 kPa']) {
      expect(one(after(shop, set('design-1', ['readings', 0, 'suction'], text))).readings[0]).toMatchObject({
        suction: { text },
      });
    }
    expect(refusal(shop, set('design-1', ['readings', 0, 'suction'], '20 mm')).message).toContain('20 mm');
    expect(refusal(shop, set('design-1', ['readings', 0, 'holes'], 'some')).message).toContain('holes');
    const holes = after(shop, set('design-1', ['readings', 0, 'holes'], ' 4 '));
    expect(one(holes).readings[0]).toMatchObject({ holes: 4 });
  });

  it('are replaced together by a table, each with a name of its own', () => {
    const shop = after(simpleShop(), { kind: 'addFan' }, reading('sealed-lift'));
    const rows = [1, 2, 3].map((n) => ({ kind: 'point', flow: `${n}00 m3/h`, pressure: '1 kPa' }));
    const table = after(shop, { kind: 'setRows', id: 'design-1', path: ['readings'], rows });
    expect(new Set(one(table).readings.map(({ id }) => id)).size).toBe(3);
    expect(one(table).readings[2]).toMatchObject({ flow: { text: '300 m3/h' }, pressureKind: 'static' });
  });

  it('may be renamed without touching what else has that name', () => {
    const shop = after(simpleShop(), { kind: 'addFan' }, reading('point'));
    const renamed = after(shop, set('design-1', ['readings', 0, 'id'], 'fan-1'));
    expect(one(renamed).readings[0]!.id).toBe('fan-1');
    expect(renamed.runs).toBe(shop.runs);
  });
});

describe('motor and rotor', () => {
  const shop = after(simpleShop(), { kind: 'addFan' });

  it('are switched on with a start of each kind, and off', () => {
    const on = after(
      shop,
      { kind: 'setChoice', id: 'design-1', path: ['motor'], value: true },
      { kind: 'setChoice', id: 'design-1', path: ['rotor'], value: true },
    );
    expect(one(on)).toMatchObject({ motor: { kind: 'brushless' }, rotor: { form: 'disc' } });
    const kinds = (['series', 'induction'] as const).map((value) =>
      after(on, { kind: 'setChoice', id: 'design-1', path: ['motor', 'kind'], value }),
    );
    expect(kinds.map((one) => one.fans[0]!.motor!.kind)).toEqual(['series', 'induction']);
    const poles = after(kinds[1]!, set('design-1', ['motor', 'poles'], '4'));
    expect(one(poles).motor).toMatchObject({ poles: 4 });
    const points = after(kinds[0]!, { kind: 'addRow', id: 'design-1', path: ['motor', 'points'] });
    expect(one(points).motor).toMatchObject({ points: [{}, {}, { torque: { text: '0.3 N m' } }] });
    const off = after(on, { kind: 'setChoice', id: 'design-1', path: ['rotor'], value: false });
    expect(one(off)).not.toHaveProperty('rotor');
  });
});

describe('the clipboard', () => {
  const shop = after(
    simpleShop(),
    { kind: 'setValues', rows: [{ name: 'wheel', text: '280 mm' }] },
    { kind: 'addFan' },
    set('design-1', ['wheelDiameter'], 'wheel'),
    { kind: 'addFan' },
    stand('design-1'),
  );

  it('brings a fan of the list into another shop under a free name, with its figures', () => {
    const clip = readClip(writeClip(copyParts(shop, ['fan-1'])));
    expect(clip!.fans.map(({ id }) => id)).toEqual(['design-1']);
    const other = after(blankDocument(), { kind: 'addFan', type: 'axial' });
    const pasted = after(other, { kind: 'paste', clip: clip! });
    expect(thing(pasted, 'fan-1')).toMatchObject({ design: 'design-2' });
    expect(one(pasted, 'design-2')).toMatchObject({
      type: 'radial',
      wheelDiameter: { text: null, si: 0.28 },
    });
    expect(one(pasted)).toBe(one(other));
  });

  it('keeps to the one fan where the very same is there', () => {
    const copied = after(shop, { kind: 'duplicate', ids: ['fan-1'] });
    expect(copied.fans).toBe(shop.fans);
    expect(thing(copied, 'fan-2')).toMatchObject({ design: 'design-1' });
  });
});
