import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  atLength,
  gridStep,
  pulledDirection,
  roundTo,
  snap,
  snapToGrid,
  turnBetween,
} from '../../../renderer/geometry/snap.ts';
import { apart, planPoint } from '../../../renderer/geometry/space.ts';

const DEGREE = Math.PI / 180;
const plain = { step_m: 0.1, reach_m: 0.2 };

describe('grid', () => {
  it('goes from 10 mm close by to 1 m far off', () => {
    expect(gridStep(2000, 'si').step_m).toBe(0.01);
    expect(gridStep(100, 'si').step_m).toBe(0.1);
    expect(gridStep(4, 'si').step_m).toBe(1);
  });

  it('is in inches and feet for those who read them', () => {
    expect(gridStep(100, 'us').step_m).toBeCloseTo(0.1524, 12);
    expect(gridStep(1000, 'us').step_m).toBeCloseTo(0.0127, 12);
  });

  it('never lies closer than the eye can tell, but at the coarsest step', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 2500, noNaN: true }),
        fc.constantFrom('si' as const, 'us' as const),
        (scale, units) => {
          const { step_m } = gridStep(scale, units);
          expect(step_m * scale >= 8 || step_m >= 0.9).toBe(true);
        },
      ),
      { seed: 43 },
    );
  });

  it('gives coordinates without a tail of binary dust', () => {
    expect(roundTo(0.30000000000000004, 0.1)).toBe(0.3);
    expect(Object.is(roundTo(-0.01, 0.1), 0)).toBe(true);
    expect(snapToGrid(planPoint(1.234, -0.77), 0.1)).toEqual({ x: 1.2, y: -0.8 });
  });
});

describe('directions', () => {
  it('differ by at most half a turn', () => {
    expect(turnBetween(350 * DEGREE, 10 * DEGREE)).toBeCloseTo(20 * DEGREE, 12);
    expect(turnBetween(10 * DEGREE, 350 * DEGREE)).toBeCloseTo(-20 * DEGREE, 12);
  });

  it('are pulled to a turn of 0, 15, 30, 45 or 90 degrees from the leg before', () => {
    const before = 7 * DEGREE;
    for (const turn of [0, 15, 30, 45, 90]) {
      expect(pulledDirection((7 + turn + 2) * DEGREE, before)! / DEGREE).toBeCloseTo(7 + turn, 9);
      expect(pulledDirection((7 - turn - 2) * DEGREE, before)! / DEGREE).toBeCloseTo(7 - turn, 9);
    }
  });

  it('are left alone where no plain one is near', () => {
    expect(pulledDirection(22 * DEGREE, null)).toBeNull();
  });
});

describe('snap', () => {
  it('takes an anchor before a run, a run before an angle, an angle before the grid', () => {
    const anchors = [{ x: 1.05, y: 1.05, target: 'end' }];
    const onRun = () => ({ x: 1.02, y: 1, distance_m: 0.02, target: 'run' });
    const point = planPoint(1.02, 1.02);
    expect(snap(point, { ...plain, anchors, onRun })).toEqual({
      point: { x: 1.05, y: 1.05 },
      by: 'anchor',
      target: 'end',
    });
    expect(snap(point, { ...plain, onRun })).toEqual({ point: { x: 1.02, y: 1 }, by: 'run', target: 'run' });
    expect(snap(point, { ...plain, previous: planPoint(0, 1) }).by).toBe('angle');
    expect(snap(point, plain)).toEqual({ point: { x: 1, y: 1 }, by: 'grid', target: null });
  });

  it('takes the nearest of several anchors, and none out of reach', () => {
    const anchors = [
      { x: 1.1, y: 1, target: 'far' },
      { x: 1.05, y: 1, target: 'near' },
    ];
    expect(snap(planPoint(1, 1), { ...plain, anchors }).target).toBe('near');
    expect(snap(planPoint(3, 3), { ...plain, anchors }).by).toBe('grid');
  });

  it('keeps a leg along the paper exactly level', () => {
    const { point, by } = snap(planPoint(2.03, 0.53), { ...plain, previous: planPoint(0.3, 0.513) });
    expect(by).toBe('angle');
    expect(point).toEqual({ x: 2, y: 0.513 });
  });

  it('gives a slanted leg an even length', () => {
    const { point } = snap(planPoint(1.02, 1), { ...plain, previous: planPoint(0, 0) });
    expect(apart(planPoint(0, 0), point)).toBeCloseTo(1.4, 9);
    expect(point.x).toBeCloseTo(point.y, 9);
  });

  it('leaves directions alone when asked, and everything when suspended', () => {
    const point = planPoint(2.03, 0.53);
    const options = { ...plain, previous: planPoint(0.3, 0.513), anchors: [{ x: 2, y: 0.5, target: 1 }] };
    expect(snap(point, { ...options, anchors: [], anyAngle: true }).by).toBe('grid');
    expect(snap(point, { ...options, suspended: true })).toEqual({ point, by: 'nothing', target: null });
  });
});

describe('a typed length', () => {
  it('is laid off towards the pointer', () => {
    expect(atLength(planPoint(1, 1), planPoint(4, 5), 10)).toEqual({ x: 7, y: 9 });
    expect(atLength(planPoint(1, 1), planPoint(1, 1), 2)).toEqual({ x: 3, y: 1 });
  });
});
