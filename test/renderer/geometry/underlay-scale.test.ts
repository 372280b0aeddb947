import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../renderer/geometry/underlay-scale.ts';

describe('calibration by two points', () => {
  it('divides the distance in the building by that in the picture', () => {
    expect(calibrate({ x: 10, y: 20 }, { x: 310, y: 420 }, 5)).toEqual({ ok: true, metresPerPixel: 0.01 });
  });

  it('refuses points on each other and distances that are none', () => {
    expect(calibrate({ x: 1, y: 1 }, { x: 1.5, y: 1 }, 2).ok).toBe(false);
    for (const distance of [0, -1, NaN, Infinity]) {
      expect(calibrate({ x: 0, y: 0 }, { x: 100, y: 0 }, distance)).toMatchObject({ ok: false });
    }
  });
});
