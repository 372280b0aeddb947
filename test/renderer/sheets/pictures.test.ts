import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cuttingPlan } from '../../../core/summary/parts/cutting-plan.ts';
import { SECTION_TITLES } from '../../../core/summary/sections/titles.ts';
import { SECTIONS } from '../../../core/summary/sections/sections.ts';
import { layBar } from '../../../renderer/sheets/bar-picture.ts';
import { dayText, fileName } from '../../../renderer/sheets/file-name.ts';
import { paperOf } from '../../../renderer/sheets/paper-of.ts';
import { statesOf } from '../../../renderer/sheets/states.ts';

describe('a bar of the cutting plan', () => {
  it('is to scale: cuts one after the other, the kerf between, the rest at the end', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.05, max: 2.9, noNaN: true }), { minLength: 1, maxLength: 8 }),
        (pieces) => {
          const plan = cuttingPlan(pieces, 3, 0.002);
          for (const bar of plan.bars) {
            const { cuts, rest } = layBar(bar, { stock_m: 3, width: 600, text: String });
            expect(cuts.map(({ wide }) => wide / 200)).toEqual(
              bar.cuts_m.map((cut) => expect.closeTo(cut, 9) as number),
            );
            cuts.slice(1).forEach(({ x }, i) => {
              const gap_m = (x - cuts[i]!.x - cuts[i]!.wide) / 200;
              // the last cut of a full bar may have no room for the whole kerf
              expect(gap_m).toBeGreaterThanOrEqual(-1e-9);
              expect(gap_m).toBeLessThanOrEqual(0.0021);
            });
            expect(rest.x + rest.wide).toBeCloseTo(600, 6);
            expect(rest.x).toBeGreaterThanOrEqual(cuts.at(-1)!.x + cuts.at(-1)!.wide - 1e-6);
          }
        },
      ),
      { seed: 7 },
    );
  });

  it('letters only what has room for it', () => {
    const bar = { cuts_m: [2.5, 0.05], rest_m: 0.448 };
    const { cuts } = layBar(bar, { stock_m: 3, width: 300, text: (m) => `${m.toFixed(2)} m` });
    expect(cuts.map(({ text }) => text)).toEqual(['2.50 m', '']);
  });
});

describe('names', () => {
  it.each([
    ['Tern Street: one router', 'Tern Street- one router, parts.csv'],
    ['../../etc/passwd', '-..-etc-passwd, parts.csv'],
    ['<script>', '-script-, parts.csv'],
    ['', 'shop, parts.csv'],
    ['...', 'shop, parts.csv'],
  ])('of files hold nothing that a disk refuses: %s', (shop, name) => {
    expect(fileName(shop, 'parts', 'csv')).toBe(name);
  });

  it('of days are as a calendar writes them', () => {
    expect(dayText(new Date(2026, 2, 7))).toBe('2026-03-07');
  });

  it('of sections at the side are those of the summary', () => {
    expect(Object.entries(SECTIONS).map(([id, { title }]) => [id, title])).toEqual(
      Object.entries(SECTION_TITLES),
    );
  });

  it('of papers go with the units until one is chosen', () => {
    expect([
      paperOf({ paper: '' }, 'us'),
      paperOf({ paper: '' }, 'si'),
      paperOf({ paper: 'a4' }, 'us'),
    ]).toEqual(['letter', 'a4', 'a4']);
  });
});

describe('states to compare with', () => {
  it('are the saved one and those before each step, the newest first', () => {
    const made = (name: string) => ({ name }) as never;
    const steps = Array.from({ length: 50 }, (_, i) => ({ label: `step ${i}`, before: made(`${i}`) }));
    const states = statesOf(made('now'), made('saved'), steps);
    expect(states).toHaveLength(41);
    expect(states.slice(0, 2).map(({ id, label }) => [id, label])).toEqual([
      ['saved', 'as last saved'],
      ['step-49', '50. before: step 49'],
    ]);
    expect(new Set(states.map(({ id }) => id)).size).toBe(41);
    expect(statesOf(made('now'), null, [])).toEqual([]);
  });
});
