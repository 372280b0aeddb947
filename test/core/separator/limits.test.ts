import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DESIGN_INLET_VELOCITY } from '../../../core/catalogue/separator-models.ts';
import { findOutside } from '../../../core/quantities/range.ts';
import {
  INLET_VELOCITY_RANGE,
  RE_ENTRAINMENT_RANGE,
  reEntrainmentRatio,
  saltationVelocityKalenZenz,
} from '../../../core/separator/limits.ts';
import { SMALL_LAPPLE, SMALL_STAIRMAND, anyCyclone, anyFlow, smallFlow } from './samples.ts';

describe('limits of a cyclone', () => {
  it('keeps its regression vectors, worked out once with the constant rounded to 4.913 (ours is 4.91354)', () => {
    expect(saltationVelocityKalenZenz(SMALL_LAPPLE, smallFlow(0.075)) / 9.289 - 1).toBeCloseTo(1.1e-4, 4);
    expect(saltationVelocityKalenZenz(SMALL_STAIRMAND, smallFlow(0.06)) / 8.315 - 1).toBeCloseTo(1.1e-4, 4);
    expect(reEntrainmentRatio(SMALL_LAPPLE, smallFlow(0.075))).toBeCloseTo(1.615, 3);
    expect(reEntrainmentRatio(SMALL_STAIRMAND, smallFlow(0.06))).toBeCloseTo(1.804, 3);
  });

  it('the ratio grows as the cube root of the flow and is never lost', () => {
    fc.assert(
      fc.property(anyCyclone, anyFlow, (geometry, flow) => {
        const ratio = reEntrainmentRatio(geometry, flow);
        const more = reEntrainmentRatio(geometry, { ...flow, flow_m3s: 8 * flow.flow_m3s });
        expect(ratio).toBeGreaterThan(0);
        expect(more / ratio).toBeCloseTo(2, 9);
      }),
      { seed: 41 },
    );
  });

  it('finds what lies outside', () => {
    expect(findOutside(INLET_VELOCITY_RANGE, { 'inlet velocity': 12 }).length).toBe(1);
    expect(findOutside(INLET_VELOCITY_RANGE, { 'inlet velocity': 20 }).length).toBe(0);
    expect(findOutside(RE_ENTRAINMENT_RANGE, { 'inlet velocity over saltation velocity': 1.4 }).length).toBe(
      1,
    );
  });

  it('keeps the design velocities in their published feet a minute', () => {
    expect(DESIGN_INLET_VELOCITY.lapple.value / 0.00508).toBeCloseTo(3000, 9);
    expect(DESIGN_INLET_VELOCITY['one-d-three-d'].value / 0.00508).toBeCloseTo(3200, 9);
  });

  it('refuses an inlet as wide as the body', () => {
    const wide = { ...SMALL_LAPPLE, inletWidth_m: 0.2 };
    expect(() => saltationVelocityKalenZenz(wide, smallFlow(0.075))).toThrow(
      expect.objectContaining({ field: 'inletWidth_m' }),
    );
  });
});
