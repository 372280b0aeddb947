import { describe, expect, it } from 'vitest';
import { drawnPart, meetsBox } from '../../../renderer/geometry/drawn-part.ts';

const window = (left: number, top: number, width: number, height: number) => ({
  left,
  top,
  right: left + width,
  bottom: top + height,
});

describe('the part of the plan that is drawn', () => {
  const first = drawnPart(null, window(0, 0, 10, 6), 100);

  it('is the window with half of it on every side', () => {
    expect(first.box).toEqual({ left: -5, top: -3, right: 15, bottom: 9 });
  });

  it('stays while the window moves inside it', () => {
    expect(drawnPart(first, window(4.9, -2.9, 10, 6), 100)).toBe(first);
  });

  it('is chosen afresh where the window leaves it', () => {
    expect(drawnPart(first, window(5.1, 0, 10, 6), 100).box.left).toBeCloseTo(0.1, 9);
  });

  it('is chosen afresh at quite another scale, so that no more is drawn than is seen', () => {
    expect(drawnPart(first, window(4, 2, 2, 1.2), 500)).not.toBe(first);
  });
});

describe('rectangles', () => {
  const box = window(0, 0, 2, 2);
  it('meet where they touch, or come as near as asked', () => {
    expect(meetsBox(box, window(2, 2, 1, 1))).toBe(true);
    expect(meetsBox(box, window(2.1, 0, 1, 1))).toBe(false);
    expect(meetsBox(box, window(2.1, 0, 1, 1), 0.2)).toBe(true);
    expect(meetsBox(box, window(-5, -5, 20, 20))).toBe(true);
  });
});
