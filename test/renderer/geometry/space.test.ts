import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boxAround,
  inBox,
  planPoint,
  screenPoint,
  toPlan,
  toScreen,
  viewOf,
  zoomAbout,
} from '../../../renderer/geometry/space.ts';

const LIMITS = { least: 4, most: 2500 };
const coordinate = fc.double({ min: -200, max: 200, noNaN: true });
const view = fc.record({
  x: coordinate,
  y: coordinate,
  pixelsPerMetre: fc.double({ min: 4, max: 2500, noNaN: true }),
});

describe('plan and screen', () => {
  it('come back to the same point', () => {
    fc.assert(
      fc.property(view, coordinate, coordinate, (v, x, y) => {
        const back = toPlan(v, toScreen(v, planPoint(x, y)));
        expect(back.x).toBeCloseTo(x, 6);
        expect(back.y).toBeCloseTo(y, 6);
      }),
      { seed: 41 },
    );
  });

  it('show a metre as so many pixels', () => {
    const v = { x: 30, y: 20, pixelsPerMetre: 50 };
    expect(toScreen(v, planPoint(2, 1))).toEqual({ x: 130, y: 70 });
  });

  it('keep the point under the pointer while zooming, within the limits', () => {
    fc.assert(
      fc.property(
        view,
        coordinate,
        coordinate,
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (v, x, y, factor) => {
          const about = screenPoint(x, y);
          const before = toPlan(v, about);
          const zoomed = zoomAbout(v, about, factor, LIMITS);
          const after = toPlan(zoomed, about);
          expect(after.x).toBeCloseTo(before.x, 6);
          expect(after.y).toBeCloseTo(before.y, 6);
          expect(zoomed.pixelsPerMetre).toBeGreaterThanOrEqual(LIMITS.least);
          expect(zoomed.pixelsPerMetre).toBeLessThanOrEqual(LIMITS.most);
        },
      ),
      { seed: 42 },
    );
  });

  it('fit a box into the window with its middle in the middle', () => {
    const box = { left: 1, top: 2, right: 5, bottom: 4 };
    const v = viewOf(box, { width_px: 800, height_px: 600 }, { x: 50, y: 50 }, LIMITS);
    expect(v.pixelsPerMetre).toBe(175);
    expect(toScreen(v, planPoint(3, 3))).toEqual({ x: 400, y: 300 });
  });

  it('fit a single point without a scale beyond the limits', () => {
    const v = viewOf(
      { left: 1, top: 1, right: 1, bottom: 1 },
      { width_px: 800, height_px: 600 },
      { x: 50, y: 50 },
      LIMITS,
    );
    expect(v.pixelsPerMetre).toBe(LIMITS.most);
  });
});

describe('boxes', () => {
  it('go round all points, and round none where there is none', () => {
    expect(boxAround([])).toBeNull();
    const box = boxAround([planPoint(1, 5), planPoint(-2, 7)])!;
    expect(box).toEqual({ left: -2, top: 5, right: 1, bottom: 7 });
    expect(inBox(box, planPoint(1, 5))).toBe(true);
    expect(inBox(box, planPoint(1.01, 5))).toBe(false);
  });
});
