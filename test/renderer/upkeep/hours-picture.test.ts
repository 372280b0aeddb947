import { describe, expect, it } from 'vitest';
import { EXAMPLES } from '../../../core/examples/index.ts';
import { readValue } from '../../../core/document/read.ts';
import { upkeep } from '../../../core/upkeep/upkeep.ts';
import { binHeaps, fullShare } from '../../../renderer/upkeep/bin-heaps.ts';
import { layHours } from '../../../renderer/upkeep/hours-picture.ts';
import { readHours } from '../../../renderer/upkeep/read-hours.ts';
import { dueList, shareText } from '../../../renderer/upkeep/words.ts';

function result(id: keyof typeof EXAMPLES, hours: number) {
  const read = readValue(EXAMPLES[id]);
  if (!read.ok) throw new Error(id);
  const outcome = upkeep(read.document, hours);
  if (!outcome.ok) throw new Error(outcome.problems[0]!.message);
  return outcome.result;
}
const lay = (one: ReturnType<typeof result>, width = 700) =>
  layHours(one, { width, height: 400, units: 'si', heaps: binHeaps(one), full: fullShare(one) });

describe('the picture of the hours', () => {
  it('has panels one under the other, each with its unit, over the same hours', () => {
    const picture = lay(result('bench-line', 300));
    expect(picture.panels.map(({ kind }) => kind)).toEqual(['flow', 'drop', 'bin']);
    picture.panels.forEach(({ plot, yTitle }, i) => {
      expect(plot.bottom).toBeGreaterThan(plot.top);
      if (i > 0) expect(plot.top).toBeGreaterThan(picture.panels[i - 1]!.plot.bottom);
      expect(plot.left).toBe(picture.panels[0]!.plot.left);
      expect(yTitle).toMatch(/\[.+\]/);
    });
    expect(picture.panels[0]!.lines.map(({ id }) => id)).toEqual(['sander', 'rotary tool']);
    expect(picture.panels[1]!.lines).toHaveLength(2);
  });

  it('draws no line outside its panel', () => {
    for (const { plot, lines } of lay(result('five-machines', 500)).panels) {
      for (const { path } of lines) {
        expect(path).not.toMatch(/NaN|Infinity/);
        for (const [, x, y] of path.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)) {
          expect(Number(x)).toBeGreaterThanOrEqual(plot.left - 0.1);
          expect(Number(x)).toBeLessThanOrEqual(plot.right + 0.1);
          expect(Number(y)).toBeGreaterThanOrEqual(plot.top - 0.1);
          expect(Number(y)).toBeLessThanOrEqual(plot.bottom + 0.1);
        }
      }
    }
  });

  it('leaves out a bin whose teeth would be a blot, and says so', () => {
    const often = result('five-machines', 500);
    expect(lay(often).tooOften).toEqual(['cyclone']);
    expect(lay(often).panels.map(({ kind }) => kind)).toEqual(['flow', 'drop']);
    expect(lay(result('five-machines', 20)).tooOften).toEqual([]);
  });

  it('marks each cleaning, with the word where there is room', () => {
    const picture = lay(result('five-machines', 500));
    expect(picture.cleanings).toHaveLength(2);
    expect(picture.cleanings.every(({ word }) => word)).toBe(true);
    const many = lay(result('five-machines', 6000));
    expect(many.cleanings.length).toBeGreaterThan(20);
    const words = many.cleanings.filter(({ word }) => word).map(({ at }) => at);
    words.slice(1).forEach((at, i) => expect(at - words[i]!).toBeGreaterThanOrEqual(52));
  });
});

describe('words of the hours', () => {
  it('list what comes due, the first first', () => {
    const due = dueList(result('five-machines', 500), (id) => id);
    expect(due.map(({ id }) => id)).toEqual(['bin cyclone', 'clean']);
    expect(due[1]!.why).toMatch(/R7 .*"saw and sander"; then about every 179 h/);
    expect(dueList(result('one-router', 100), (id) => id).at(-1)!.time_h).toBeNull();
  });

  it.each([
    ['500', 500],
    [' 12,5 h ', 12.5],
    ['3 hours', 3],
    ['0', null],
    ['-4', null],
    ['a week', null],
    ['1e9', null],
    ['100001', null],
    ['', null],
  ] as const)('read %j as %j hours', (text, hours) => {
    expect(readHours(text)).toBe(hours);
  });

  it('write tiny shares without powers of ten', () => {
    expect([0, 3.6e-9, 0.0000037, 0.2, 0.99628, 1].map(shareText)).toEqual([
      '0 %',
      '< 0.0001 %',
      '0.00037 %',
      '20 %',
      '99.63 %',
      '100 %',
    ]);
  });
});
