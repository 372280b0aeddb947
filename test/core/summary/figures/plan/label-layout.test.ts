import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeLabels } from '../../../../../core/summary/figures/plan/label-layout.ts';
import type { LabelWish } from '../../../../../core/summary/figures/plan/label-layout.ts';

const SIZE = { width_px: 60, height_px: 16 };
const at = (id: string, ...places: (readonly [number, number])[]): LabelWish => ({
  id,
  sizes: [{ ...SIZE, places: places.map(([x, y]) => ({ x, y })) }],
});

describe('labels', () => {
  it('take their first place where it is free, the next where it is not', () => {
    const placed = placeLabels([at('a', [0, 0]), at('b', [10, 5], [0, 40])], []);
    expect(placed.get('a')).toEqual({ x: 0, y: 0, size: 0 });
    expect(placed.get('b')).toEqual({ x: 0, y: 40, size: 0 });
  });

  it('say less where there is little room, and nothing where there is none', () => {
    const places = [{ x: 50, y: 0 }];
    const narrow = {
      id: 'b',
      sizes: [
        { ...SIZE, places },
        { width_px: 20, height_px: 16, places },
      ],
    };
    const placed = placeLabels([at('a', [0, 0]), narrow, at('c', [0, 0])], []);
    expect(placed.get('b')).toEqual({ x: 50, y: 0, size: 1 });
    expect(placed.has('c')).toBe(false);
  });

  it('keep clear of symbols', () => {
    const symbol = { x: 0, y: 0, width_px: 100, height_px: 100 };
    expect(placeLabels([at('a', [0, 0], [0, 62])], [symbol]).get('a')).toEqual({ x: 0, y: 62, size: 0 });
  });

  it('avoid ducts where they can, and lie on them sooner than be left out', () => {
    const duct = { x: 0, y: 0, width_px: 400, height_px: 20 };
    expect(placeLabels([at('a', [0, 0], [0, 40])], [], [duct]).get('a')).toMatchObject({ y: 40 });
    expect(placeLabels([at('a', [0, 0])], [], [duct]).get('a')).toMatchObject({ y: 0 });
  });

  it('never lie on each other', () => {
    const place = fc.record({
      x: fc.integer({ min: -300, max: 300 }),
      y: fc.integer({ min: -300, max: 300 }),
    });
    fc.assert(
      fc.property(fc.array(fc.array(place, { minLength: 1, maxLength: 4 }), { maxLength: 40 }), (wishes) => {
        const placed = placeLabels(
          wishes.map((places, i) => ({ id: String(i), sizes: [{ ...SIZE, places }] })),
          [],
        );
        const list = [...placed.values()];
        list.forEach((a, i) =>
          list.slice(i + 1).forEach((b) => {
            const apart = Math.abs(a.x - b.x) >= SIZE.width_px || Math.abs(a.y - b.y) >= SIZE.height_px;
            expect(apart).toBe(true);
          }),
        );
      }),
      { seed: 45 },
    );
  });
});
