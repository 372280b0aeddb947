import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DUST_CLASSES } from '../../../core/catalogue/dusts.ts';
import { upkeep } from '../../../core/upkeep/upkeep.ts';
import { exampleDocument, EXAMPLES } from './examples.ts';
import { constantPressure, marched, steepFan, withCyclone } from './shops.ts';

describe('dust over running hours', () => {
  it.each(EXAMPLES)('of %s goes nowhere but into bins, filters and out', (name) => {
    const { totals } = marched(exampleDocument(name), 300);
    expect(totals.made_kg).toBeGreaterThan(0);
    expect(Math.abs(totals.imbalance)).toBeLessThan(1e-9);
  });

  it('is never lost, whatever the rate, the size of the filter and the hours', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 2e-3, noNaN: true }),
        fc.double({ min: 0.2, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (dustRate, area, hours) => {
          const shop = withCyclone();
          const things = shop.things.map((thing) =>
            thing.kind === 'port'
              ? { ...thing, dustRate: { ...thing.dustRate!, si: dustRate } }
              : thing.kind === 'filter'
                ? { ...thing, layers: thing.layers.map((l) => ({ ...l, area: { ...l.area, si: area } })) }
                : thing,
          );
          const { totals, timeline, reached_h } = marched({ ...shop, things }, hours);
          expect(Math.abs(totals.imbalance)).toBeLessThan(1e-9);
          expect(totals.made_kg).toBeCloseTo(dustRate * 0.5 * reached_h * 3600, 6);
          for (const point of timeline) {
            expect(point.settings.every((s) => Number.isFinite(s.flow_m3s) && s.flow_m3s > 0)).toBe(true);
            expect(point.cake.every((c) => c.load_kgm2 >= 0)).toBe(true);
          }
        },
      ),
      { seed: 51, numRuns: 25 },
    );
  });

  it('slows the air between cleanings, and the cyclone catches less of it', () => {
    const { timeline, events, totals } = marched(withCyclone(), 60);
    const first = events[0]?.time_h ?? Infinity;
    const flows = timeline
      .filter(({ time_h }) => time_h < first)
      .map(({ settings }) => settings[0]!.flow_m3s);
    expect(flows.length).toBeGreaterThan(3);
    for (let i = 1; i < flows.length; i++) expect(flows[i]!).toBeLessThan(flows[i - 1]!);
    expect(totals.cost).toBeNull(); // the fan has no power
  });

  it('goes through two filters in turn: the second gets what the first lets through', () => {
    const { totals } = marched(exampleDocument('bench-line'), 500);
    const [first, second] = totals.filtered;
    // 0.1 % of the pleats and 0.03 % of HEPA
    expect(second!.mass_kg / (first!.mass_kg + second!.mass_kg)).toBeCloseTo(1e-3, 5);
    expect(totals.passed_kg / (second!.mass_kg + totals.passed_kg)).toBeCloseTo(3e-4, 6);
  });
});

describe('what comes due', () => {
  it('a bin fills by the bulk density of what is caught', () => {
    const shop = withCyclone();
    const { binsFull, totals } = marched(shop, 200);
    // all of it is one dust, so the heap is caught mass over bulk density; 80 % of 60 l is full
    const rate = totals.caught[0]!.mass_kg / 200;
    const heap = 0.8 * 0.06 * DUST_CLASSES['sanding-dust'].bulkDensity_kgm3;
    expect(binsFull).toHaveLength(1);
    expect(binsFull[0]!.times).toBe(Math.floor(totals.caught[0]!.mass_kg / heap));
    expect(binsFull[0]!.first_h).toBeCloseTo(heap / rate, 1);
  });

  it('a filter that cleaning does not mend is told once, and the march goes on', () => {
    const { events, reached_h } = marched(
      steepFan({ upkeep: { cuttingShare: 1, cleaningRestores: 0 } }),
      300,
    );
    expect(events.map(({ kind }) => kind)).toEqual(['filter-limit']);
    expect(reached_h).toBe(300);
  });

  it('nothing, where nothing makes dust', () => {
    const shop = constantPressure(500);
    const things = shop.things.map((thing) =>
      thing.kind === 'port' ? { ...thing, dustRate: { ...thing.dustRate!, si: 0 } } : thing,
    );
    const { totals, events, sentences } = marched({ ...shop, things }, 1000);
    expect([totals.made_kg, totals.passed_kg, events.length]).toEqual([0, 0, 0]);
    expect(sentences.join(' ')).toContain('No port is given any dust');
  });

  it('at the same hour, whatever the length of the steps on the way', () => {
    // the longest step is a share of all the hours
    const [short, long] = [60, 1200].map((hours) => marched(withCyclone(), hours).firstClean!);
    expect(short).toMatchObject({ kind: 'filter-limit' });
    expect(Math.abs(long!.time_h / short!.time_h - 1)).toBeLessThan(1e-3);
  });
});

describe('what cannot be', () => {
  it.each([0, -5, NaN, Infinity, 1e9])('%s hours', (hours) => {
    const outcome = upkeep(withCyclone(), hours);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(outcome.problems[0]).toMatchObject({ path: 'hours' });
  });

  it('shares of hours that sum to nothing', () => {
    const settings = [{ name: 'idle', gates: {}, hours: 0 }];
    const outcome = upkeep(withCyclone({ settings }), 10);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(outcome.problems[0]!.message).toMatch(/settings\[0\].*hours/);
  });

  it('settings go by their share of the hours', () => {
    const settings = [
      { name: 'a', gates: {}, hours: 0.2 },
      { name: 'b', gates: {}, hours: 0.6 },
      { name: 'c', gates: {} },
    ];
    const { duty } = marched(withCyclone({ settings }), 1);
    expect(duty.map(({ setting, share }) => [setting, share.toFixed(3)])).toEqual([
      ['a', '0.250'],
      ['b', '0.750'],
    ]);
  });
});
