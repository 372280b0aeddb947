import { describe, expect, it } from 'vitest';
import { countByBasis, rowsAbout, weakestFirst } from '../../../core/sources/about.ts';
import { WHOLE_SHOP } from '../../../core/sources/source-row.ts';
import { exampleDocument } from '../upkeep/examples.ts';
import { rowsOf } from './shops.ts';

const document = exampleDocument('five-machines');
const { settings, rows } = rowsOf(document);

describe('rows about one item', () => {
  it('of a run are those of its pieces, its hood and its junction', () => {
    const run = settings[0]!.runs.find(({ id }) => id === 'R3')!;
    const { own } = rowsAbout(document, rows, 'R3')!;
    for (const { id } of run.pieces.filter(({ kind }) => kind !== 'wye')) {
      const about = rowsAbout(document, rows, id)!.own;
      expect(about.length, id).toBeGreaterThan(0);
      const whats = own.map(({ what, value }) => `${what} ${value}`);
      for (const { what, value } of about) expect(whats, id).toContain(`${what} ${value}`);
    }
    expect(own.some(({ what }) => what.includes('junction'))).toBe(true);
    // the first place of each row is the run's own
    for (const { where, what } of own) expect(where[0], what).toMatch(/^R3|^bandsaw$|^G-bandsaw$/);
  });

  it('of nothing but what it is: another run is not in it', () => {
    const own = rowsAbout(document, rows, 'S1')!.own;
    expect(own.some(({ what }) => /gate|hose|hood|junction/.test(what))).toBe(false);
    expect(own.some(({ what }) => what.includes('friction factor'))).toBe(true);
  });

  it('carry the air of the room beside them, once', () => {
    const { own, shop } = rowsAbout(document, rows, 'fan')!;
    expect(shop.map(({ what }) => what)).toContain('density of moist air');
    expect(own.filter((row) => shop.includes(row))).toEqual([]);
    expect(rowsAbout(document, rows, WHOLE_SHOP)).toEqual({ own: [], shop });
  });

  it('are found by the end of a thing, and by the name that the ledger has', () => {
    expect(rowsAbout(document, rows, 'cyclone.in')!.own).toEqual(rowsAbout(document, rows, 'cyclone')!.own);
    expect(rowsAbout(document, rows, 'W1.branch')!.own.length).toBeGreaterThan(0);
    expect(rowsAbout(document, rows, 'nothing')).toBeNull();
  });
});

describe('the count', () => {
  it('adds up, and says how many are assumed', () => {
    const counts = countByBasis(rows);
    expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBe(rows.length);
    expect(weakestFirst(rows)).toContain(`Of ${rows.length} figures`);
    expect(weakestFirst(rows)).toContain(`${counts.assumed} are assumed`);
    expect(weakestFirst(rows.filter(({ basis }) => basis !== 'assumed'))).toContain('none is assumed');
    const one = rows.filter(({ basis }) => basis === 'assumed').slice(0, 1);
    expect(weakestFirst(one)).toContain('1 is assumed');
  });
});
