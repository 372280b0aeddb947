import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DUCT_SIZES, largerSize, smallerSize } from '../../../renderer/findings/first-guess.ts';

describe('first guess of a size', () => {
  it('finds the largest smaller size that would hold with a tenth in hand, by hand calculation', () => {
    // 125 mm at 14 m/s: 100 mm gives 14 (125/100)^2 = 21.9 m/s, enough for 18 x 1.1 = 19.8
    expect(smallerSize({ diameter_m: 0.125, velocity_ms: 14, required_ms: 18 }, 'si')?.text).toBe('100 mm');
    // at 12 m/s: 100 mm gives 18.75, too little; 80 mm gives 29.3
    expect(smallerSize({ diameter_m: 0.125, velocity_ms: 12, required_ms: 18 }, 'si')?.text).toBe('80 mm');
    // 6 in at 2800 fpm (14.22 m/s): 5 in gives 4032 fpm, enough for 3500 x 1.1 = 3850
    const us = { diameter_m: 0.1524, velocity_ms: 14.22, required_ms: 17.78 };
    expect(smallerSize(us, 'us')?.text).toBe('5 in');
  });

  it('offers a larger size only where it would still hold', () => {
    // 100 mm at 32 m/s: 125 mm gives 32 (100/125)^2 = 20.5 m/s, enough for 18 x 1.1
    expect(largerSize({ diameter_m: 0.1, velocity_ms: 32, required_ms: 18 }, 'si')?.text).toBe('125 mm');
    // at 30 m/s: 19.2 m/s, too little
    expect(largerSize({ diameter_m: 0.1, velocity_ms: 30, required_ms: 18 }, 'si')).toBeNull();
    expect(largerSize({ diameter_m: 0.5, velocity_ms: 90, required_ms: 18 }, 'si')).toBeNull();
  });

  it('says nothing where no size on sale would do', () => {
    expect(smallerSize({ diameter_m: 0.025, velocity_ms: 5, required_ms: 18 }, 'si')).toBeNull();
    expect(smallerSize({ diameter_m: 0.125, velocity_ms: 0.001, required_ms: 18 }, 'si')).toBeNull();
  });

  it('never goes the wrong way', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.03, max: 0.5, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.constantFrom('si' as const, 'us' as const),
        (diameter_m, velocity_ms, units) => {
          const run = { diameter_m, velocity_ms, required_ms: 18 };
          expect(smallerSize(run, units)?.diameter_m ?? 0).toBeLessThan(diameter_m);
          expect(largerSize(run, units)?.diameter_m ?? 1).toBeGreaterThan(diameter_m);
        },
      ),
      { seed: 20262 },
    );
  });

  it('lists sizes in order', () => {
    for (const sizes of Object.values(DUCT_SIZES)) {
      const all = sizes.map(({ diameter_m }) => diameter_m);
      expect(all).toEqual([...all].sort((a, b) => a - b));
    }
  });
});
