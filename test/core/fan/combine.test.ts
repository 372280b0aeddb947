import { describe, expect, it } from 'vitest';
import { fansInParallel, fansInSeries } from '../../../core/fan/combine.ts';
import { fanCurve, fanTotalPressure } from '../../../core/fan/fan-curve.ts';

const make = (pressures: number[], step = 0.1) => ({
  curve: fanCurve({
    pressureKind: 'total',
    outletArea_m2: 0.02,
    points: pressures.map((pressure_Pa, i) => ({ flow_m3s: i * step, pressure_Pa })),
    ratedSpeed_rpm: 3000,
    ratedDensity_kgm3: 1.2,
  }),
  density_kgm3: 1.2,
  speedRatio: 1,
});
const large = make([2000, 1800, 1200, 0]);
const small = make([1500, 1100, 0], 0.08);
const humped = make([1700, 2000, 1300, 0]);
const out = new Float64Array(3);
const pressure = (fan: typeof large, flow_m3s: number) => {
  fanTotalPressure(fan.curve, { ...fan, flow_m3s }, out);
  return out[0]!;
};

describe('fans in series and in parallel', () => {
  it('adds pressures at each flow, over the flows that both have', () => {
    const both = fansInSeries([large, small], 33);
    expect(both.flow_m3s.at(-1)).toBeCloseTo(0.16, 12);
    both.flow_m3s.forEach((flow, i) =>
      expect(both.pressure_Pa[i]).toBeCloseTo(pressure(large, flow) + pressure(small, flow), 9),
    );
  });

  it('adds flows at each pressure, over the pressures that both reach', () => {
    const both = fansInParallel([large, small], 33);
    expect(both.pressure_Pa[0]).toBeCloseTo(1500, 9);
    expect(both.pressure_Pa.at(-1)).toBeCloseTo(0, 9);
    expect(both.flow_m3s.at(-1)).toBeCloseTo(0.3 + 0.16, 9);
    const alone = [fansInParallel([large], 9), fansInParallel([small], 9)];
    for (const [i, fan] of [large, small].entries()) {
      alone[i]!.flow_m3s.forEach((flow, j) =>
        expect(pressure(fan, flow)).toBeCloseTo(alone[i]!.pressure_Pa[j]!, 6),
      );
    }
  });

  it('reads only the falling part of a humped fan', () => {
    const pair = fansInParallel([humped, humped], 20);
    expect(pair.flow_m3s[0]).toBeCloseTo(0.2, 6);
    expect(pair.flow_m3s.every((flow, i) => i === 0 || flow > pair.flow_m3s[i - 1]!)).toBe(true);
  });

  it('refuses what has no common part', () => {
    const weak = make([100, 0]);
    const strong = make([2000, 1500]);
    expect(() => fansInParallel([weak, strong], 5)).toThrow('fans');
    expect(() => fansInSeries([], 5)).toThrow('fans');
    expect(() => fansInSeries([large], 1)).toThrow('samples');
  });
});
