import { describe, expect, it } from 'vitest';
import { testSheet } from '../../../core/summary/test-sheet.ts';
import { plate, PLATES, SEALED } from '../fan-bench/raised.ts';
import { design, shopWith } from '../fan-bench/synthetic.ts';

const A4 = { units: 'si', paper: 'a4' } as const;
const sheet = (
  readings: Parameters<typeof design>[0],
  more = {},
  options: Parameters<typeof testSheet>[2] = A4,
) => testSheet(shopWith([design(readings, more)]), 'F1', options);

describe('the test sheet', () => {
  it('is one page whole in itself: no script, no address, nothing told by colour', () => {
    const html = sheet([]);
    expect(html).not.toMatch(/<script|https?:|url\(|@import|<img|<link/);
    expect([...html.matchAll(/#[0-9a-f]{3,6}\b/g)].map(([colour]) => colour).sort()).toEqual([
      '#000',
      '#000',
      '#000',
      '#fff',
    ]);
    expect(html).toContain('size: A4');
    expect(sheet([], {}, { units: 'us', paper: 'letter' })).toContain('size: letter');
  });
  it('escapes every name', () => {
    const html = sheet([], { name: '<b>"fan" & \'co\'</b>' });
    expect(html).not.toContain('<b>');
    expect(html).toContain('&lt;b&gt;&quot;fan&quot; &amp; &#39;co&#39;&lt;/b&gt;');
  });
  it.each(['guard', 'stand clear', 'never reach in', 'hot', 'tied down', 'mains', 'fine dust', 'licensed'])(
    'says: %s',
    (word) => expect(sheet([]).toLowerCase()).toContain(word),
  );
  it('asks for plates by the kind of fan before tests, and by the tests after', () => {
    const before = sheet([]);
    const after = sheet([SEALED, ...PLATES, plate('P9', 0.095)]);
    expect(before).toContain('nothing was measured yet');
    expect(after).toContain('its tests so far');
    const holes = (html: string) =>
      [...html.matchAll(/plate \d, ([\d.]+) mm/g)].map((match) => Number(match[1]));
    for (const list of [holes(before), holes(after)]) {
      expect(list).toHaveLength(5);
      list.slice(1).forEach((hole, i) => expect(hole).toBeGreaterThan(list[i]!));
      expect(list.every((hole) => hole > 20 && hole < 150)).toBe(true);
    }
  });
  it('gives the places of a traverse in the duct', () => {
    // 100 mm, log-linear with 6 points: 3.21, 13.5, 32.1 mm by the printed shares
    const html = sheet([]);
    for (const place of ['3.21 mm', '13.5 mm', '32.1 mm', '67.9 mm', '86.5 mm', '96.8 mm'])
      expect(html).toContain(place);
  });
  it('has a line for each reading in the units asked for', () => {
    expect(sheet([])).toContain('suction Pa');
    expect(sheet([], {}, { units: 'us', paper: 'letter' })).toContain('suction in wg');
  });
});
