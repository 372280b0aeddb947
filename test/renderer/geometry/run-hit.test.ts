import { describe, expect, it } from 'vitest';
import { lineMeetsBox, nearestOnLine } from '../../../renderer/geometry/run-hit.ts';
import { planPoint } from '../../../renderer/geometry/space.ts';

const line = [planPoint(0, 0), planPoint(4, 0), planPoint(4, 3)];

describe('nearest place on a run', () => {
  it('is the foot of the perpendicular', () => {
    expect(nearestOnLine(line, planPoint(1, 0.5))).toEqual({
      leg: 0,
      at: 0.25,
      point: { x: 1, y: 0 },
      distance_m: 0.5,
    });
    expect(nearestOnLine(line, planPoint(5, 1.5))).toEqual({
      leg: 1,
      at: 0.5,
      point: { x: 4, y: 1.5 },
      distance_m: 1,
    });
  });

  it('is an end beyond the ends', () => {
    expect(nearestOnLine(line, planPoint(-3, -4))).toMatchObject({ leg: 0, at: 0, distance_m: 5 });
  });

  it('does not stumble over a riser, which has no length on the plan', () => {
    expect(nearestOnLine([planPoint(1, 1), planPoint(1, 1)], planPoint(1, 2))).toMatchObject({
      at: 0,
      distance_m: 1,
    });
    expect(nearestOnLine([planPoint(1, 1)], planPoint(1, 2))).toBeNull();
  });
});

describe('a line and a rectangle', () => {
  it('meet where a leg crosses it, even with no corner inside', () => {
    expect(lineMeetsBox(line, { left: 1, right: 2, top: -1, bottom: 1 })).toBe(true);
    expect(lineMeetsBox(line, { left: 1, right: 2, top: 0.5, bottom: 1 })).toBe(false);
    expect(lineMeetsBox(line, { left: -9, right: 9, top: -9, bottom: 9 })).toBe(true);
  });
});
