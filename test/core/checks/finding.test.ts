import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printApart, printerFor } from '../../../core/checks/finding.ts';
import { percent, shown } from '../../../core/checks/range-text.ts';

describe('a figure beside the limit that it misses', () => {
  it('reads as usual where three figures tell them apart', () => {
    expect(printApart(printerFor('si'), 0.0214, 0.02, 'velocity')).toEqual(['0.0214 m/s', '0.0200 m/s']);
  });

  it('takes more digits where it takes them', () => {
    expect(printApart(printerFor('si'), 0.020004, 0.02, 'velocity')).toEqual([
      '0.020004 m/s',
      '0.020000 m/s',
    ]);
    expect(printApart(printerFor('si'), 0.02, 0.02, 'velocity')).toEqual(['0.0200 m/s', '0.0200 m/s']);
  });

  it('never reads like its limit a millionth away or more', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
        fc.double({ min: 1e-6, max: 0.5, noNaN: true }),
        fc.constantFrom('si', 'us'),
        (limit, over, units) => {
          const [value, text] = printApart(printerFor(units), limit * (1 + over), limit, 'pressure');
          expect(value).not.toBe(text);
        },
      ),
      { seed: 4 },
    );
  });

  it('holds for bounds of a range and for shares too', () => {
    const bounds = { low: 0.2, high: 1, unit: '-' };
    expect(shown(0.1, bounds)).toBe('0.1');
    expect(shown(0.19999, bounds)).toBe('0.19999');
    expect(shown(0.2, bounds)).toBe('0.2');
    expect([percent(0.0001), percent(0.0123), percent(0)]).toEqual(['under 0.1', '1.2', '0.0']);
  });
});
