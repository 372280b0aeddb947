import { describe, expect, it } from 'vitest';
import { airPower, fanEfficiency } from '../../core/fan/air-power.ts';
import { fansInParallel, fansInSeries } from '../../core/fan/combine.ts';
import { fanCurve, fanPower, fanTotalPressure, hasRisingPart, scaleFan } from '../../core/fan/fan-curve.ts';
import { curveIntersections } from '../../core/fan/intersections.ts';
import { curveValueAndSlope, monotoneCurve } from '../../core/fan/monotone-curve.ts';
import data from './data/13_fan_curve.json' with { type: 'json' };

const out = new Float64Array(3);

/** Source: data/13_fan_curve.json, computed with scipy's PCHIP and brentq (regression vectors of the published rule). */
describe('fan curve against an independent implementation of the same slope rule', () => {
  it.each(data.cases.map((row, i) => [i, row] as const))('case %i: slopes and values to 1e-9', (_, row) => {
    const curve = monotoneCurve(row.in.curve_flow_m3s, row.in.curve_pressure_Pa);
    const steepest = Math.max(...row.out.slopes_at_points_Pa_s_m3.map(Math.abs));
    curve.slopes.forEach((slope, i) =>
      expect(Math.abs(slope - row.out.slopes_at_points_Pa_s_m3[i]!)).toBeLessThanOrEqual(1e-9 * steepest),
    );
    expect(curve.slopes).toHaveLength(row.out.slopes_at_points_Pa_s_m3.length);
    const tallest = Math.max(...row.in.curve_pressure_Pa);
    row.in.query_flow_m3s.forEach((flow, i) => {
      curveValueAndSlope(curve, flow, out);
      expect(Math.abs(out[0]! - row.out.pressure_at_query_Pa[i]!)).toBeLessThanOrEqual(1e-9 * tallest);
    });
  });

  it.each(data.cases.map((row, i) => [i, row] as const))(
    'case %i: the one operating point, and it is stable',
    (_, row) => {
      const flows = row.in.curve_flow_m3s;
      const fan = fanCurve({
        pressureKind: 'total',
        outletArea_m2: 0.01,
        points: flows.map((flow_m3s, i) => ({ flow_m3s, pressure_Pa: row.in.curve_pressure_Pa[i]! })),
        ratedSpeed_rpm: null,
        ratedDensity_kgm3: 1.2,
      });
      const found = curveIntersections({
        fan: (flow_m3s) => {
          fanTotalPressure(fan, { flow_m3s, density_kgm3: 1.2, speedRatio: 1 }, out);
          return out[0]!;
        },
        system: (flow) => row.in.system_a_Pa_s2_m6 * flow ** 2 + row.in.system_b_Pa_s_m3 * flow,
        low: 0,
        high: flows.at(-1)!,
        samples: 200,
      });
      expect(found).toHaveLength(1);
      const [point] = found;
      expect(Math.abs(point!.flow_m3s / row.out.operating_flow_m3s - 1)).toBeLessThan(1e-9);
      expect(Math.abs(point!.pressure_Pa / row.out.operating_pressure_Pa - 1)).toBeLessThan(1e-9);
      expect(Math.abs(airPower(point!.flow_m3s, point!.pressure_Pa) / row.out.air_power_W - 1)).toBeLessThan(
        1e-9,
      );
      expect(point!.stable).toBe(true);
      const humped = row.in.curve_pressure_Pa.some((p, i, all) => i > 0 && p > all[i - 1]!);
      expect(hasRisingPart(fan)).toBe(humped);
    },
  );

  it('has humped and shouldered curves among its cases', () => {
    const rising = data.cases.filter((row) =>
      row.in.curve_pressure_Pa.some((p, i, all) => i > 0 && p > all[i - 1]!),
    );
    expect(data.cases).toHaveLength(20);
    expect(rising.length).toBeGreaterThanOrEqual(3);
  });
});

/**
 * Fan laws Q ~ n D^3, p ~ rho n^2 D^2, P ~ rho n^3 D^5 (AMCA 210 / ISO 5801; from memory), worked by hand:
 * 0.100 m3/s, 2000 Pa, 400 W at 3000 rpm and 1.2 kg/m3; what does the fan do at 3600 rpm in air of 1.0 kg/m3?
 * n ratio 1.2: Q 0.120 m3/s; p 2000 x 1.44 / 1.2 = 2400 Pa; P 400 x 1.728 / 1.2 = 576 W.
 * Wheel 10 % larger, speed and air unchanged: Q 0.1331 m3/s, p 2420 Pa, P 644.204 W.
 */
describe('affinity laws against a hand calculation', () => {
  const fan = fanCurve({
    pressureKind: 'static',
    outletArea_m2: 0.0314,
    points: [
      { flow_m3s: 0, pressure_Pa: 2300, power_W: 250 },
      { flow_m3s: 0.1, pressure_Pa: 2000 - (1.2 * (0.1 / 0.0314) ** 2) / 2, power_W: 400 },
      { flow_m3s: 0.2, pressure_Pa: 300, power_W: 600 },
    ],
    ratedSpeed_rpm: 3000,
    ratedDensity_kgm3: 1.2,
  });

  it('speed and density', () => {
    const state = { flow_m3s: 0.12, density_kgm3: 1.0, speedRatio: 3600 / 3000 };
    fanTotalPressure(fan, state, out);
    expect(out[0]).toBeCloseTo(2400, 9);
    expect(fanPower(fan, state)).toBeCloseTo(576, 9);
    // Efficiency is the same at both: 0.1 x 2000 / 400 = 0.12 x 2400 / 576 = 0.5.
    expect(fanEfficiency(0.12, out[0]!, 576)).toBeCloseTo(0.5, 12);
    expect(fanEfficiency(0.1, 2000, 400)).toBe(0.5);
  });

  it('size', () => {
    const larger = scaleFan(fan, { speedRatio: 1, diameterRatio: 1.1, densityRatio: 1 });
    const state = { flow_m3s: 0.1331, density_kgm3: 1.2, speedRatio: 1 };
    fanTotalPressure(larger, state, out);
    expect(out[0]).toBeCloseTo(2420, 8);
    expect(fanPower(larger, state)).toBeCloseTo(644.204, 8);
  });

  it('the two routes, running faster and scaling the curve, agree at every flow', () => {
    const scaled = scaleFan(fan, { speedRatio: 1.2, diameterRatio: 1, densityRatio: 1 / 1.2 });
    expect(scaled.input.ratedSpeed_rpm).toBeCloseTo(3600, 9);
    for (const flow_m3s of [0, 0.03, 0.12, 0.19, 0.24, 0.3]) {
      fanTotalPressure(scaled, { flow_m3s, density_kgm3: 1.0, speedRatio: 1 }, out);
      const [value, slope, perDensity] = out;
      fanTotalPressure(fan, { flow_m3s, density_kgm3: 1.0, speedRatio: 1.2 }, out);
      expect(out[0]).toBeCloseTo(value!, 8);
      expect(out[1]).toBeCloseTo(slope!, 7);
      expect(out[2]).toBeCloseTo(perDensity!, 8);
    }
  });
});

/** Two equal fans: textbook limit cases (AMCA 201; from memory). */
describe('combined fans against their limit cases', () => {
  const curve = fanCurve({
    pressureKind: 'total',
    outletArea_m2: 0.02,
    points: [2000, 1700, 1000, 0].map((pressure_Pa, i) => ({ flow_m3s: i / 10, pressure_Pa })),
    ratedSpeed_rpm: null,
    ratedDensity_kgm3: 1.2,
  });
  const fan = { curve, density_kgm3: 1.2, speedRatio: 1 };

  it('two equal fans double the pressure in series and the flow in parallel', () => {
    const alone = fansInSeries([fan], 31);
    fansInSeries([fan, fan], 31).pressure_Pa.forEach((p, i) =>
      expect(p).toBeCloseTo(2 * alone.pressure_Pa[i]!, 9),
    );
    const [one, two] = [fansInParallel([fan], 31), fansInParallel([fan, fan], 31)];
    two.flow_m3s.forEach((flow, i) => expect(flow).toBeCloseTo(2 * one.flow_m3s[i]!, 12));
    expect(two.pressure_Pa).toEqual(one.pressure_Pa);
  });
});

const CFM = 4.719474e-4;
const CONVENTIONAL_INCH = 249.0889;

describe('air power against customary constants', () => {
  /**
   * US air horsepower: cfm x in wg / 6356 (AMCA 210; from memory). The constant is 33 000 ft lbf/min over the pressure
   * of an inch of water at 62.3 lbf/ft3, the trade's figure (water near 20 C), known to four digits.
   */
  it('one horsepower is 6356 cfm x in wg', () => {
    const inch_Pa = (62.3 / 12) * 47.880259;
    const horsepower_W = 745.6999;
    const product = horsepower_W / airPower(CFM, inch_Pa);
    expect(Math.abs(product - 6356)).toBeLessThan(0.5);
    // An inch of water at 20 C (998.207 kg/m3) gives 6355 and the conventional inch 6343: the spread of the unit.
    expect(Math.abs(horsepower_W / airPower(CFM, 998.207 * 9.80665 * 0.0254) - 6355)).toBeLessThan(0.5);
    expect(Math.abs(horsepower_W / airPower(CFM, CONVENTIONAL_INCH) - 6343)).toBeLessThan(0.5);
  });

  /**
   * Worked example: 50 cfm at 40 in wg. ASTM F558 prints 0.117354 W per cfm in wg (from memory), which is an inch of
   * water at 20 C to 1 part in 10 000; the trade divides by 8.5, good to its two digits.
   */
  it('50 cfm at 40 in wg is 235 air watts', () => {
    const watts = airPower(50 * CFM, 40 * CONVENTIONAL_INCH);
    expect(watts).toBeCloseTo(235.11, 2);
    expect(Math.abs(watts - (50 * 40) / 8.5)).toBeLessThan(0.5);
    const at20C = airPower(50 * CFM, 40 * 998.207 * 9.80665 * 0.0254);
    expect(Math.abs(at20C / (0.117354 * 50 * 40) - 1)).toBeLessThan(1e-4);
  });
});
