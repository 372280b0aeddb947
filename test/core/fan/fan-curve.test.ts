import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fallingFrom } from '../../../core/fan/curve-shape.ts';
import {
  EXTRAPOLATION_MARGIN,
  extrapolation,
  fanCurrent,
  fanCurve,
  fanPower,
  fanTotalPressure,
  hasHump,
  scaleFan,
  type FanCurveInput,
} from '../../../core/fan/fan-curve.ts';
import { ImpossibleInput } from '../../../core/quantities/impossible-input.ts';

/** A radial fan as a shop might own it; static pressure. */
const SHEET: FanCurveInput = {
  pressureKind: 'static',
  outletArea_m2: 0.0123,
  points: [
    { flow_m3s: 0, pressure_Pa: 2400, power_W: 480, current_A: 4.1 },
    { flow_m3s: 0.1, pressure_Pa: 2300, power_W: 700, current_A: null },
    { flow_m3s: 0.2, pressure_Pa: 1800, power_W: 950, current_A: 6.4 },
    { flow_m3s: 0.3, pressure_Pa: 600, power_W: 1200, current_A: 7.6 },
  ],
  ratedSpeed_rpm: 3450,
  ratedDensity_kgm3: 1.2,
};
const fan = fanCurve(SHEET);
const out = new Float64Array(3);
const pressure = (curve: typeof fan, flow_m3s: number, density_kgm3 = 1.2, speedRatio = 1) => {
  fanTotalPressure(curve, { flow_m3s, density_kgm3, speedRatio }, out);
  return { value: out[0]!, perFlow: out[1]!, perDensity: out[2]! };
};

describe('fan curve', () => {
  it('adds the velocity pressure of the outlet to static points, exactly', () => {
    for (const { flow_m3s, pressure_Pa } of SHEET.points) {
      expect(pressure(fan, flow_m3s).value).toBeCloseTo(
        pressure_Pa + (1.2 * (flow_m3s / 0.0123) ** 2) / 2,
        9,
      );
    }
  });

  it('keeps the static curve between points whatever the outlet', () => {
    const wide = fanCurve({ ...SHEET, outletArea_m2: 0.05 });
    const velocity = (area: number) => (1.2 * (0.137 / area) ** 2) / 2;
    expect(pressure(fan, 0.137).value - velocity(0.0123)).toBeCloseTo(
      pressure(wide, 0.137).value - velocity(0.05),
      9,
    );
  });

  it('gives slopes that agree with differences of its values, also beyond the ends', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -200, max: 600 }).map((litres) => litres / 1000 + 1e-5),
        fc.double({ min: 0.5, max: 1.5, noNaN: true }),
        fc.double({ min: 0.8, max: 1.3, noNaN: true }),
        (flow, ratio, density) => {
          const step = 1e-6;
          const here = pressure(fan, flow, density, ratio);
          const perFlow =
            (pressure(fan, flow + step, density, ratio).value -
              pressure(fan, flow - step, density, ratio).value) /
            (2 * step);
          expect(Math.abs(here.perFlow - perFlow)).toBeLessThan(2);
          const perDensity =
            (pressure(fan, flow, density + step, ratio).value -
              pressure(fan, flow, density - step, ratio).value) /
            (2 * step);
          expect(Math.abs(here.perDensity - perDensity)).toBeLessThan(1e-3);
        },
      ),
      { seed: 15 },
    );
  });

  it('falls without end beyond the last point, although velocity pressure grows as a square', () => {
    expect(pressure(fan, 0.3).perFlow).toBeLessThan(0);
    expect(pressure(fan, 3).perFlow).toBe(pressure(fan, 0.3).perFlow);
  });

  it('reads power and current where points carry them, and null where they do not', () => {
    const state = { flow_m3s: 0.2, density_kgm3: 1.2, speedRatio: 1 };
    expect(fanPower(fan, state)).toBe(950);
    expect(fanCurrent(fan, state)).toBe(6.4);
    const bare = fanCurve({
      ...SHEET,
      points: SHEET.points.map(({ flow_m3s, pressure_Pa }) => ({ flow_m3s, pressure_Pa })),
    });
    expect(fanPower(bare, state)).toBeNull();
    expect(fanCurrent(bare, state)).toBeNull();
    expect(fanCurrent(fan, { flow_m3s: 0.2, density_kgm3: 1.2, speedRatio: 2 })).toBeCloseTo(
      8 * fanCurrent(fan, { flow_m3s: 0.1, density_kgm3: 1.2, speedRatio: 1 })!,
      12,
    );
    expect(fanPower(fan, { ...state, flow_m3s: -50 })).toBe(0);
  });

  it('tells a flow within the points from one in the margin and one beyond', () => {
    const edge = 0.3 + EXTRAPOLATION_MARGIN * 0.3;
    expect(extrapolation(fan, 0, 1)).toBe('within');
    expect(extrapolation(fan, 0.3, 1)).toBe('within');
    expect(extrapolation(fan, 0.301, 1)).toBe('margin');
    expect(extrapolation(fan, edge - 1e-9, 1)).toBe('margin');
    expect(extrapolation(fan, edge + 1e-9, 1)).toBe('beyond');
    expect(extrapolation(fan, -1e-9, 1)).toBe('beyond');
    expect(extrapolation(fan, 0.36, 1.2)).toBe('within');
    expect(extrapolation(fan, 0.3, 0.8)).toBe('beyond');
    const started = fanCurve({ ...SHEET, points: SHEET.points.slice(1) });
    expect(extrapolation(started, 0.095, 1)).toBe('margin');
    expect(extrapolation(started, 0.08, 1)).toBe('beyond');
  });

  it('sees where total pressure rises, also where only the outlet velocity makes it', () => {
    // At shut-off static pressure curves down by 26 667 Pa s2/m6 (2 (3 m - 2 d0 - d1)/h with m = -1000, d0 = 0,
    // d1 = -1667, h = 0.1); rho/A2^2 lifts it by 48 000 with a 50 cm2 outlet, by 7 932 with 123 cm2.
    const rises = (curve: typeof fan) => fallingFrom(curve) > curve.pressure.x[0]!;
    expect(rises(fanCurve({ ...SHEET, outletArea_m2: 0.005 }))).toBe(true);
    expect(rises(fan)).toBe(false);
    expect(rises(fanCurve({ ...SHEET, outletArea_m2: 0.005, pressureKind: 'total' }))).toBe(false);
    const humped = SHEET.points.map((point, i) => ({ ...point, pressure_Pa: [2400, 2500, 1800, 0][i]! }));
    expect(rises(fanCurve({ ...SHEET, points: humped }))).toBe(true);
    // a small outlet lifts total pressure, but no static curve that only falls has a hump
    expect(hasHump(fanCurve({ ...SHEET, outletArea_m2: 0.005 }))).toBe(false);
    expect(hasHump(fanCurve({ ...SHEET, points: humped }))).toBe(true);
  });

  it('sees a rise that begins between two points', () => {
    // Static pressure falls by 500 Pa s/m3; rho/A2^2 = 7932 lifts total pressure from 0.063 m3/s on.
    const points = [0, 0.3].map((flow_m3s) => ({ flow_m3s, pressure_Pa: 1000 - 500 * flow_m3s }));
    const line = fanCurve({ ...SHEET, points });
    expect(fallingFrom(line)).toBe(0.3);
    const shorter = points.map((point) => ({ ...point, flow_m3s: point.flow_m3s / 5 }));
    const falling = shorter.map(({ flow_m3s }) => ({ flow_m3s, pressure_Pa: 1000 - 500 * flow_m3s }));
    expect(fallingFrom(fanCurve({ ...SHEET, points: falling }))).toBe(0);
  });

  it('agrees with a fine sampling on where total pressure falls', () => {
    fc.assert(
      fc.property(
        // Whole numbers: doubles would be drawn evenly over exponents, so nearly all of them next to zero.
        fc.array(fc.integer({ min: -900, max: 400 }), { minLength: 2, maxLength: 7 }),
        fc.integer({ min: 2, max: 20 }).map((tenths) => tenths / 1000),
        (rises, outletArea_m2) => {
          let level = 2000;
          const points = [0, ...rises].map((rise, i) => ({
            flow_m3s: i * 0.05,
            pressure_Pa: (level += rise),
          }));
          const curve = fanCurve({ ...SHEET, points, outletArea_m2 });
          const start = fallingFrom(curve);
          const end = points.at(-1)!.flow_m3s;
          const steps = Array.from({ length: 2001 }, (_, i) => (end * i) / 2000);
          const slopes = steps.map((flow) => pressure(curve, flow).perFlow);
          steps.forEach((flow, i) => {
            if (flow > start + 1e-9 && flow < end) expect(slopes[i]).toBeLessThan(1e-6);
          });
          const anyRise = slopes.some((slope) => slope > 1e-3);
          if (anyRise) expect(start).toBeGreaterThan(0);
          if (slopes.every((slope) => slope < -1e-3)) expect(start).toBe(0);
        },
      ),
      { seed: 16 },
    );
  });

  it('scales there and back to itself', () => {
    const there = scaleFan(fan, { speedRatio: 1.3, diameterRatio: 0.8, densityRatio: 0.9 });
    const back = scaleFan(there, { speedRatio: 1 / 1.3, diameterRatio: 1 / 0.8, densityRatio: 1 / 0.9 });
    back.input.points.forEach((point, i) => {
      const first = SHEET.points[i]!;
      expect(point.flow_m3s).toBeCloseTo(first.flow_m3s, 12);
      expect(point.pressure_Pa).toBeCloseTo(first.pressure_Pa, 9);
      expect(point.power_W!).toBeCloseTo(first.power_W!, 9);
    });
    expect(back.input.ratedSpeed_rpm).toBeCloseTo(3450, 9);
    expect(there.input.points[1]!.current_A).toBeNull();
  });

  it('names what makes a fan impossible', () => {
    const field = (change: Partial<FanCurveInput>) => {
      try {
        fanCurve({ ...SHEET, ...change });
      } catch (error) {
        if (error instanceof ImpossibleInput) return error.field;
        throw error;
      }
      return 'nothing';
    };
    const [first, second, third] = SHEET.points as [
      (typeof SHEET.points)[0],
      (typeof SHEET.points)[0],
      (typeof SHEET.points)[0],
    ];
    expect(field({ points: [first] })).toBe('points');
    expect(field({ points: [first, third, second] })).toBe('points[2].flow_m3s');
    expect(field({ points: [{ ...first, flow_m3s: -0.1 }, second] })).toBe('points[0].flow_m3s');
    expect(field({ points: [first, { ...second, pressure_Pa: NaN }] })).toBe('points[1].pressure_Pa');
    expect(field({ points: [first, { ...second, power_W: -1 }] })).toBe('points[1].power_W');
    expect(field({ points: [first, { ...second, current_A: -1 }] })).toBe('points[1].current_A');
    expect(field({ outletArea_m2: 0 })).toBe('outletArea_m2');
    expect(field({ ratedSpeed_rpm: 0 })).toBe('ratedSpeed_rpm');
    expect(field({ ratedDensity_kgm3: -1 })).toBe('ratedDensity_kgm3');
    expect(() => pressure(fan, 0.1, 1.2, 0)).toThrow('speedRatio');
    expect(() => pressure(fan, 0.1, 0, 1)).toThrow('density_kgm3');
    expect(() => pressure(fan, NaN)).toThrow('flow_m3s');
  });
});
