import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CYCLONE_PROPORTIONS } from '../../../core/catalogue/cyclones.ts';
import { ImpossibleInput } from '../../../core/quantities/impossible-input.ts';
import {
  checkCycloneGeometry,
  coneDiameter,
  findPoorShape,
  inletVelocity,
  standardCyclone,
} from '../../../core/separator/proportions.ts';
import type { CycloneGeometry } from '../../../core/separator/proportions.ts';
import { SMALL_LAPPLE, anyCyclone } from './samples.ts';

describe('cyclone geometry', () => {
  it('passes every standard shape at any size', () => {
    fc.assert(
      fc.property(anyCyclone, (geometry) => {
        expect(checkCycloneGeometry(geometry)).toBe(geometry);
      }),
      { seed: 11 },
    );
  });

  it('keeps the id of each row equal to its key', () => {
    for (const [key, row] of Object.entries(CYCLONE_PROPORTIONS)) expect(row.id).toBe(key);
  });

  it.each<[string, keyof CycloneGeometry, Partial<CycloneGeometry>]>([
    ['no body', 'bodyDiameter_m', { bodyDiameter_m: 0 }],
    ['a size that is no number', 'totalHeight_m', { totalHeight_m: NaN }],
    ['an outlet as wide as the body', 'outletDiameter_m', { outletDiameter_m: 0.2 }],
    ['an inlet that passes the axis', 'inletWidth_m', { inletWidth_m: 0.1 }],
    ['an inlet higher than the straight part', 'inletHeight_m', { inletHeight_m: 0.41 }],
    ['no room for the cone', 'cylinderHeight_m', { cylinderHeight_m: 0.8 }],
    ['a dust outlet wider than the body', 'dustOutletDiameter_m', { dustOutletDiameter_m: 0.21 }],
    ['an outlet pipe deeper than the body', 'outletDepth_m', { outletDepth_m: 0.8 }],
    ['an outlet pipe that touches the cone', 'outletDepth_m', { outletDepth_m: 0.7 }],
  ])('refuses %s, naming %s', (_, field, change) => {
    const attempt = () => checkCycloneGeometry({ ...SMALL_LAPPLE, ...change });
    expect(attempt).toThrow(ImpossibleInput);
    expect(attempt).toThrow(expect.objectContaining({ field }));
  });

  it('finds an inlet wider than the gap, which the published shapes have only for high throughput', () => {
    for (const [id, row] of Object.entries(CYCLONE_PROPORTIONS)) {
      const found = findPoorShape(standardCyclone(row, 0.3)).map((f) => f.quantity);
      const scroll = id.endsWith('high-throughput');
      expect(found, id).toEqual(scroll ? ['inlet width over gap round the outlet pipe'] : []);
    }
    expect(findPoorShape({ ...SMALL_LAPPLE, outletDepth_m: 0.05 })[0]!.value).toBeCloseTo(0.5, 12);
  });

  it('narrows from the body to the dust outlet', () => {
    expect(coneDiameter(SMALL_LAPPLE, 0)).toBe(SMALL_LAPPLE.bodyDiameter_m);
    expect(coneDiameter(SMALL_LAPPLE, SMALL_LAPPLE.totalHeight_m)).toBeCloseTo(
      SMALL_LAPPLE.dustOutletDiameter_m,
      15,
    );
  });

  it('refuses a body of no size and a flow that is no number', () => {
    expect(() => standardCyclone(CYCLONE_PROPORTIONS.lapple, 0)).toThrow(
      expect.objectContaining({ field: 'bodyDiameter_m' }),
    );
    expect(() => inletVelocity(NaN, SMALL_LAPPLE)).toThrow(expect.objectContaining({ field: 'flow_m3s' }));
  });
});
