import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../../core/document/quantity-field.ts';
import { commonFields, sameValue, together, valueAt } from '../../../renderer/controls/values.ts';

const mm = (text: string | null, si: number): Quantity => ({
  dimension: 'length',
  rule: 'positive',
  text,
  si,
});

describe('values of several items', () => {
  it('are one where all read the same, and mixed where typed or meant otherwise', () => {
    expect(together(['a', 'a'])).toEqual({ value: 'a', mixed: false });
    expect(together(['a', 'b'])).toEqual({ value: undefined, mixed: true });
    expect(together([undefined, 'b']).mixed).toBe(true);
    expect(together([]).mixed).toBe(false);
    expect(sameValue(mm('100 mm', 0.1), mm('100 mm', 0.1))).toBe(true);
    expect(sameValue(mm('100 mm', 0.1), mm('10 cm', 0.1))).toBe(false);
    expect(sameValue(mm(null, 0.1), mm(null, 0.2))).toBe(false);
    expect(sameValue(mm(null, 0.1), undefined)).toBe(false);
  });

  it('are found by path, own properties alone', () => {
    expect(valueAt({ a: [{ b: 3 }] }, ['a', 0, 'b'])).toBe(3);
    expect(valueAt({ a: null }, ['a', 'b'])).toBeUndefined();
    expect(valueAt({}, ['constructor'])).toBeUndefined();
  });
});

describe('common fields', () => {
  const row = (path: string, label: string, kind: string, dimension?: string) => ({
    path,
    label,
    kind,
    group: 'Size',
    ...(dimension ? { dimension } : {}),
  });
  const name = row('name', 'Name', 'text');
  const size = row('diameter', 'Diameter', 'quantity', 'length');
  const angle = row('angle', 'Angle', 'quantity', 'angle');

  it('are those that every item has, each with its own place', () => {
    const other = { ...size, path: 'route.legs.1.diameter' };
    expect(
      commonFields([
        [name, size, angle],
        [angle, other],
      ]),
    ).toEqual([
      { field: size, places: [size, other] },
      { field: angle, places: [angle, angle] },
    ]);
    expect(commonFields([[name, size]]).map(({ field }) => field)).toEqual([name, size]);
  });

  it('are none where kinds differ', () => {
    expect(commonFields([[size], [{ ...size, dimension: 'area' }]])).toEqual([]);
    expect(commonFields([[size], [{ ...size, group: 'Outlet' }]])).toEqual([]);
    expect(commonFields([])).toEqual([]);
  });
});
