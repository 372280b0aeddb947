import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axis, textWidth } from '../../../../../core/summary/figures/charts/axes.ts';

describe('an axis', () => {
  it('ticks in the units shown', () => {
    const si = axis({ domain: [0, 2500], range: [200, 0], dimension: 'pressure', units: 'si', side: 'left' });
    expect(si.unit).toBe('Pa');
    expect(si.ticks.map((t) => t.text)).toEqual(['0', '500', '1000', '1500', '2000', '2500']);
    // 1 in wg is 249 Pa, so 2500 Pa is just over 10
    const us = axis({ domain: [0, 2500], range: [200, 0], dimension: 'pressure', units: 'us', side: 'left' });
    expect(us.unit).toBe('in wg');
    expect(us.ticks.map((t) => t.text)).toEqual(['0', '2', '4', '6', '8', '10']);
    expect(us.scale(0)).toBe(200);
    expect(us.scale(2500)).toBeCloseTo(0, 9);
    expect(us.ticks.at(-1)!.si).toBeCloseTo(2491, 0);
  });

  it('reads a place back', () => {
    const x = axis({ domain: [0, 0.5], range: [60, 700], dimension: 'flow', units: 'us', side: 'bottom' });
    expect(x.invert(x.scale(0.31))).toBeCloseTo(0.31, 12);
  });

  it('never lets the lettering of two ticks meet', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.double({ min: 1e-4, max: 1e5, noNaN: true }),
        fc.double({ min: 20, max: 1500, noNaN: true }),
        fc.constantFrom('bottom' as const, 'left' as const),
        fc.constantFrom('si' as const, 'us' as const),
        (low, span, length, side, units) => {
          const range = side === 'left' ? ([length, 0] as const) : ([0, length] as const);
          const { ticks } = axis({ domain: [low, low + span], range, dimension: 'pressure', units, side });
          for (let i = 1; i < ticks.length; i++) {
            const [a, b] = [ticks[i - 1]!, ticks[i]!];
            const need = side === 'left' ? 11 : (textWidth(a.text) + textWidth(b.text)) / 2;
            expect(Math.abs(a.at - b.at)).toBeGreaterThan(need);
            expect(a.text).not.toBe(b.text);
          }
        },
      ),
      { seed: 20, numRuns: 300 },
    );
  });

  it('stands with nothing to show', () => {
    const flat = axis({ domain: [0, 0], range: [100, 0], dimension: 'pressure', units: 'si', side: 'left' });
    expect(flat.ticks.every((t) => Number.isFinite(t.at))).toBe(true);
  });
});
