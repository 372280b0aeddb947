import { describe, expect, it } from 'vitest';
import { countText, grouped, pathOf, rowsOf } from '../../../renderer/sources/rows-of.ts';
import { rowsOf as coreRows } from '../../core/sources/shops.ts';
import { exampleDocument } from '../../core/upkeep/examples.ts';

const document = exampleDocument('one-router');
const { rows, settings } = coreRows(document);
const shown = {
  document,
  solutions: new Map(settings.map((setting) => [setting.name, setting])),
  units: document.units,
};

describe('rows on screen', () => {
  it('are those of the core, in the units of the screen', () => {
    const { own, shop } = rowsOf(shown, 'router')!;
    const places = new Set(rows.filter(({ where }) => where.includes('router')).map(({ what }) => what));
    expect(new Set(own.map(({ what }) => what))).toEqual(places);
    expect(shop).toEqual(rows.filter(({ where }) => where.includes('shop')));
    const us = rowsOf({ ...shown, units: 'us' }, 'R1')!.own.map(({ value }) => value);
    expect(us.some((value) => value?.endsWith('fpm'))).toBe(true);
  });

  it('follow an edit', () => {
    const hose = { ...document, options: { ...document.options, solidsLoss: false } };
    const whats = (of: typeof document) =>
      rowsOf({ ...shown, document: of }, 'R1')!.own.map(({ what }) => what);
    expect(whats(document)).toContain('loss added by the dust carried');
    expect(whats(hose)).not.toContain('loss added by the dust carried');
  });

  it('are none for a name that is not there', () => expect(rowsOf(shown, 'nothing')).toBeNull());

  it('stand by kind, what is assumed first', () => {
    const groups = grouped(rows);
    expect(groups.flatMap((group) => group.rows)).toHaveLength(rows.length);
    for (const group of groups) {
      const weak = group.rows.map(({ basis }) => basis === 'assumed');
      expect(weak).toEqual([...weak].sort((a, b) => Number(b) - Number(a)));
    }
  });

  it('are counted with the weakest first', () => {
    const some = rows.filter(({ basis }) => basis === 'assumed' || basis === 'published');
    const assumed = rows.filter(({ basis }) => basis === 'assumed').length;
    expect(countText(some)).toBe(`${assumed} assumed, ${some.length - assumed} published`);
    expect(countText([])).toBe('');
  });
});

describe('the path of a field', () => {
  it.each([
    ['material', ['material']],
    ['layers.0.drag', ['layers', 0, 'drag']],
    ['hood.throat', ['hood', 'throat']],
  ])('of %s', (field, path) => expect(pathOf(field)).toEqual(path));
});
