import { describe, expect, it } from 'vitest';
import { FAN_SHAPES } from '../../../../core/catalogue/fan-shapes.ts';
import type { CurveFamily } from '../../../../core/fan/reduce/estimate.ts';
import { powerFamily, pressureFamily } from '../../../../core/fan/reduce/families.ts';
import { normalDraws } from '../../../../core/quantities/random.ts';

const ROWS = Object.values(FAN_SHAPES);

/** Slopes against differences, at places away from the kink at free delivery. */
function slopesAgree(family: CurveFamily, places: readonly number[]): void {
  const next = normalDraws(5);
  const u = Float64Array.from({ length: family.unknowns }, () => 0.6 * next());
  const out = new Float64Array(family.unknowns + 1);
  const scratch = new Float64Array(family.unknowns + 1);
  for (const flow of places) {
    const value = family.evaluate(flow, u, out);
    const scale = Math.abs(value) + 0.01;
    const step = 1e-6;
    const dx = flow * step;
    const along =
      (family.evaluate(flow + dx, u, scratch) - family.evaluate(flow - dx, u, scratch)) / (2 * dx);
    expect(Math.abs(along - out[0]!) * flow).toBeLessThan(1e-5 * scale);
    for (let j = 0; j < family.unknowns; j++) {
      const up = Float64Array.from(u);
      const down = Float64Array.from(u);
      up[j]! += step;
      down[j]! -= step;
      const slope = (family.evaluate(flow, up, scratch) - family.evaluate(flow, down, scratch)) / (2 * step);
      expect(Math.abs(slope - out[j + 1]!)).toBeLessThan(1e-5 * scale);
    }
  }
}

describe.each(ROWS)('$label', (shape) => {
  it('starts at 1 and ends at 0 of its pressure, and only falls', () => {
    expect(shape.pressure[0]).toBe(1);
    expect(shape.pressure.at(-1)).toBe(0);
    shape.pressure.slice(1).forEach((value, i) => expect(value).toBeLessThan(shape.pressure[i]!));
    expect(shape.power.at(-1)).toBe(1);
    expect(shape.pressure).toHaveLength(shape.flow.length);
    expect(shape.power).toHaveLength(shape.flow.length);
  });
  it('tells the slopes of its pressure', () => {
    slopesAgree(
      pressureFamily(shape, 0.3),
      [0.013, 0.029, 0.051].map((x) => x * (shape.freeOutlet.median / 0.3)),
    );
  });
  it('tells the slopes of its power', () => slopesAgree(powerFamily(shape, 0.2), [0.03, 0.09, 0.17]));
  it('unknowns of zero give the row', () => {
    const family = pressureFamily(shape, 0.3);
    const zero = new Float64Array(family.unknowns);
    const free = family.freeFlow(zero);
    shape.flow.forEach((x, i) => {
      const value = family.evaluate(x * free, zero, new Float64Array(family.unknowns + 1));
      expect(value).toBeCloseTo(shape.shutOff.median * shape.pressure[i]!, 12);
    });
  });
});

it('radial wheels take less power blocked than open, axial ones more (known in the trade)', () => {
  for (const shape of ROWS) {
    if (shape.id.startsWith('radial')) expect(shape.power[0]).toBeLessThan(0.6);
    if (shape.id.includes('axial')) expect(shape.power[0]).toBeGreaterThan(1);
  }
});
