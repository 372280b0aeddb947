import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIMENSION_NAMES } from '../../../core/quantities/dimensions.ts';
import type { NamedValues } from '../../../core/quantities/parse.ts';
import { parseQuantity } from '../../../core/quantities/parse.ts';
import { equivalents, fieldText, shortText, understand } from '../../../renderer/controls/understood.ts';

const NAMES: NamedValues = new Map([['bore', { si: 0.1, dimension: 'length' }]]);
const length = (text: string) => understand(text, 'length', 'positive', NAMES);

describe('what a field understood', () => {
  it('reads any unit, sums and named values', () => {
    // 1 in is 25.4 mm exactly
    expect(length('4 in')).toEqual({ ok: true, si: expect.closeTo(0.1016, 12) });
    expect(length('2 ft + 3 in')).toEqual({ ok: true, si: expect.closeTo(0.6858, 12) });
    expect(length(' bore + 10 mm ')).toEqual({ ok: true, si: expect.closeTo(0.11, 12) });
  });

  it('says what is wrong and what would fit, without a field name in front', () => {
    const letters = length('abc');
    expect(letters.ok).toBe(false);
    expect(letters.ok ? '' : letters.message).toMatch(/^`abc` has a name that is not known: .*a length fits/);
    const unit = length('4 Pa');
    expect(unit.ok ? '' : unit.message).toMatch(/^`4 Pa` is .*a length fits/);
    const none = length('4');
    expect(none.ok ? '' : none.message).toMatch(/has no unit/);
  });

  it('holds to the rule of the field', () => {
    expect(length('0 mm')).toEqual({ ok: false, message: '`0 mm` must be above zero' });
    expect(understand('0 mm', 'length', 'any', NAMES).ok).toBe(true);
    expect(understand('120 %', 'fraction', 'share', NAMES).ok).toBe(false);
    expect(understand('-1 Pa', 'pressure', 'not-negative', NAMES).ok).toBe(false);
  });
});

describe('equivalents', () => {
  it('shows both systems for a named value, and leaves out what already stands there', () => {
    expect(equivalents(0.1016, 'length', 'si', 'bore')).toBe('101.6 mm, 4 in');
    expect(equivalents(0.1016, 'length', 'us', 'bore')).toBe('4 in, 101.6 mm');
    expect(equivalents(0.1016, 'length', 'si', '4 in')).toBe('101.6 mm');
    expect(equivalents(0.1016, 'length', 'si', '4in')).toBe('101.6 mm');
    expect(equivalents(0.1, 'length', 'si', '100 mm')).toBe('3.937 in');
  });

  it('has nothing to add where both systems read alike', () => {
    expect(equivalents(0.5, 'fraction', 'si', '50 %')).toBe('');
    expect(equivalents(Math.PI / 4, 'angle', 'si', '45 deg')).toBe('');
  });
});

describe('text of a field', () => {
  it('is what was typed, else the value without idle zeros', () => {
    expect(fieldText({ dimension: 'length', rule: 'any', text: '2 ft', si: 0.6096 }, 'si')).toBe('2 ft');
    expect(fieldText({ dimension: 'length', rule: 'any', text: null, si: 0.1 }, 'si')).toBe('100 mm');
    expect(fieldText(undefined, 'si')).toBe('');
    expect(shortText(1.5, 'length', 'si')).toBe('1.5 m');
    expect(shortText(1200, 'length', 'si')).toBe('1200 m');
    expect(shortText(0, 'pressure', 'si')).toBe('0 Pa');
    expect(shortText(293.15, 'temperature', 'si')).toBe('20 °C');
  });

  it('can be typed back in either system to a thousandth', () => {
    const kinds = DIMENSION_NAMES.filter((name) => name !== 'temperature' && name !== 'angle');
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
        fc.constantFrom('si' as const, 'us' as const),
        (dimension, si, units) => {
          const back = parseQuantity(shortText(si, dimension, units), dimension, { field: 'x' });
          expect(back.ok && Math.abs(back.si / si - 1)).toBeLessThan(1e-3);
        },
      ),
      { seed: 20261 },
    );
  });
});
