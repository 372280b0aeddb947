import { describe, expect, it } from 'vitest';
import { airPower, fanEfficiency } from '../../core/fan/air-power.ts';
import { fansInParallel, fansInSeries } from '../../core/fan/combine.ts';
import { fanCurve, fanPower, fanTotalPressure, scaleFan } from '../../core/fan/fan-curve.ts';
import { curveIntersections } from '../../core/fan/intersections.ts';
import { curveValueAndSlope, monotoneCurve } from '../../core/fan/monotone-curve.ts';
import data from './data/13_fan_curve.json' with { type: 'json' };
import { against } from './ledger.ts';

const out = new Float64Array(3);

// Tolerance stated in the file: 1e-9.
describe('fan curve against an independent implementation of the same slope rule', () => {
  const slopes = against({
    relation: 'monotoneCurve',
    source: 'data 13: slopes of a monotone cubic in a library of numerics, over the steepest',
    basis: 'independent-program',
    kind: 'value',
  });
  const values = against({
    relation: ['curveValueAndSlope', 'monotoneCurve'],
    source: 'data 13: values of a monotone cubic in a library of numerics, over the tallest',
    basis: 'independent-program',
    kind: 'value',
  });
  const meeting = against({
    relation: ['curveIntersections', 'fanCurve', 'fanTotalPressure'],
    source: 'data 13: where the curve meets a system, by a library of numerics',
    basis: 'independent-program',
    kind: 'value',
  });
  const power = against({
    relation: 'airPower',
    source: 'data 13: air power where the curve meets a system',
    basis: 'independent-program',
    kind: 'value',
  });

  it.each(data.cases.map((row, i) => [i, row] as const))('case %i: slopes and values', (_, row) => {
    const curve = monotoneCurve(row.in.curve_flow_m3s, row.in.curve_pressure_Pa);
    const steepest = Math.max(...row.out.slopes_at_points_Pa_s_m3.map(Math.abs));
    expect(curve.slopes).toHaveLength(row.out.slopes_at_points_Pa_s_m3.length);
    curve.slopes.forEach((slope, i) =>
      slopes.withinAbsolute(slope / steepest, row.out.slopes_at_points_Pa_s_m3[i]! / steepest, 1e-9),
    );
    const tallest = Math.max(...row.in.curve_pressure_Pa);
    row.in.query_flow_m3s.forEach((flow, i) => {
      curveValueAndSlope(curve, flow, out);
      values.withinAbsolute(out[0]! / tallest, row.out.pressure_at_query_Pa[i]! / tallest, 1e-9);
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
      meeting.holds(found.length === 1, 'one point');
      const [point] = found;
      meeting.within(point!.flow_m3s, row.out.operating_flow_m3s, 1e-9);
      meeting.within(point!.pressure_Pa, row.out.operating_pressure_Pa, 1e-9);
      power.within(airPower(point!.flow_m3s, point!.pressure_Pa), row.out.air_power_W, 1e-9);
      meeting.holds(point!.stable, 'stable');
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
 * Fan laws Q ~ n D^3, p ~ rho n^2 D^2, P ~ rho n^3 D^5, as two pages print them: one on the cooling of electronics (speed
 * and size) and one for mechanics (density). Worked by hand:
 * 0.100 m3/s, 2000 Pa, 400 W at 3000 rpm and 1.2 kg/m3; what does the fan do at 3600 rpm in air of 1.0 kg/m3?
 * n ratio 1.2: Q 0.120 m3/s; p 2000 x 1.44 / 1.2 = 2400 Pa; P 400 x 1.728 / 1.2 = 576 W.
 * Wheel 10 % larger, speed and air unchanged: Q 0.1331 m3/s, p 2420 Pa, P 644.204 W.
 */
describe('affinity laws against a hand calculation', () => {
  const running = against({
    relation: ['fanTotalPressure', 'fanPower', 'fanCurve'],
    source: 'printed fan laws, worked by hand: 3600 from 3000 rpm, 1.0 from 1.2 kg/m3',
    basis: 'published',
    kind: 'value',
  });
  const size = against({
    relation: 'scaleFan',
    source: 'printed fan laws, worked by hand: a wheel larger by a tenth',
    basis: 'published',
    kind: 'value',
  });
  const efficiency = against({
    relation: 'fanEfficiency',
    source: 'by hand: 0.1 m3/s at 2000 Pa from 400 W, and what the fan laws make of it',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const twoWays = against({
    relation: ['scaleFan', 'fanTotalPressure'],
    source: 'a fan that runs faster and its curve scaled, over the largest of the flows asked',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
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
    running.within(out[0]!, 2400, 2e-13);
    running.within(fanPower(fan, state)!, 576, 2e-13);
    // Efficiency is the same at both: 0.1 x 2000 / 400 = 0.12 x 2400 / 576 = 0.5.
    efficiency.within(fanEfficiency(0.12, out[0]!, 576), 0.5, 1e-12);
    efficiency.within(fanEfficiency(0.1, 2000, 400), 0.5, 1e-12);
    efficiency.holds(fanEfficiency(0.1, 2000, 400) === 0.5, 'to the last digit in round figures');
  });

  it('size', () => {
    const larger = scaleFan(fan, { speedRatio: 1, diameterRatio: 1.1, densityRatio: 1 });
    const state = { flow_m3s: 0.1331, density_kgm3: 1.2, speedRatio: 1 };
    fanTotalPressure(larger, state, out);
    size.within(out[0]!, 2420, 2e-12);
    size.within(fanPower(larger, state)!, 644.204, 2e-12);
  });

  it('the two routes, running faster and scaling the curve, agree at every flow', () => {
    const scaled = scaleFan(fan, { speedRatio: 1.2, diameterRatio: 1, densityRatio: 1 / 1.2 });
    twoWays.withinAbsolute(scaled.input.ratedSpeed_rpm! / 3600, 1, 1e-13);
    const asked = [0, 0.03, 0.12, 0.19, 0.24, 0.3].map((flow_m3s) => {
      fanTotalPressure(scaled, { flow_m3s, density_kgm3: 1.0, speedRatio: 1 }, out);
      const byCurve = [...out];
      fanTotalPressure(fan, { flow_m3s, density_kgm3: 1.0, speedRatio: 1.2 }, out);
      return { byCurve, bySpeed: [...out] };
    });
    for (const i of [0, 1, 2]) {
      const largest = Math.max(...asked.map(({ byCurve }) => Math.abs(byCurve[i]!)));
      asked.forEach(({ byCurve, bySpeed }) =>
        twoWays.withinAbsolute(bySpeed[i]! / largest, byCurve[i]! / largest, 1e-13),
      );
    }
  });
});

/** What a teaching page on several fans states: in series pressures add at one flow, in parallel flows at one pressure. */
describe('combined fans', () => {
  const doubledPressure = against({
    relation: 'fansInSeries',
    source: 'teaching page on several fans: two equal fans in series give twice the pressure',
    basis: 'published',
    kind: 'limit',
  });
  const doubledFlow = against({
    relation: 'fansInParallel',
    source: 'teaching page on several fans: two equal fans in parallel give twice the flow',
    basis: 'published',
    kind: 'limit',
  });
  const unequalSeries = against({
    relation: 'fansInSeries',
    source: 'two straight curves added by hand: 3500 Pa less 15 000 Pa s/m3 times flow',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const unequalParallel = against({
    relation: 'fansInParallel',
    source: 'two straight curves solved for flow and added by hand: 0.5 m3/s less pressure over 3333 Pa s/m3',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const rated = { ratedSpeed_rpm: null, ratedDensity_kgm3: 1.2 };
  const running = (points: readonly { flow_m3s: number; pressure_Pa: number }[]) => ({
    curve: fanCurve({ pressureKind: 'total', outletArea_m2: 0.02, points, ...rated }),
    density_kgm3: 1.2,
    speedRatio: 1,
  });
  const fan = running([2000, 1700, 1000, 0].map((pressure_Pa, i) => ({ flow_m3s: i / 10, pressure_Pa })));

  it('two equal fans double the pressure in series and the flow in parallel', () => {
    const alone = fansInSeries([fan], 31);
    fansInSeries([fan, fan], 31).pressure_Pa.forEach((p, i) =>
      doubledPressure.withinAbsolute(p, 2 * alone.pressure_Pa[i]!, 5e-10, { unit: 'Pa' }),
    );
    const [one, two] = [fansInParallel([fan], 31), fansInParallel([fan, fan], 31)];
    two.flow_m3s.forEach((flow, i) =>
      doubledFlow.withinAbsolute(flow, 2 * one.flow_m3s[i]!, 5e-13, { unit: 'm3/s' }),
    );
    expect(two.pressure_Pa).toEqual(one.pressure_Pa);
  });

  it('two unequal fans with straight curves', () => {
    const line = (shutOff_Pa: number, slope: number) =>
      running([0, 0.1].map((flow_m3s) => ({ flow_m3s, pressure_Pa: shutOff_Pa - slope * flow_m3s })));
    const both = [line(2000, 10_000), line(1500, 5000)];
    const series = fansInSeries(both, 11);
    series.flow_m3s.forEach((flow, i) =>
      unequalSeries.within(series.pressure_Pa[i]!, 3500 - 15_000 * flow, 1e-12),
    );
    const parallel = fansInParallel(both, 11);
    // both reach from 1000 Pa up to 1500 Pa
    unequalParallel.holds(Math.max(...parallel.pressure_Pa) === 1500, 'ends where the weaker fan shuts off');
    parallel.pressure_Pa.forEach((p, i) =>
      unequalParallel.within(parallel.flow_m3s[i]!, (2000 - p) / 10_000 + (1500 - p) / 5000, 1e-12),
    );
  });
});

const CFM = 4.719474e-4;
const CONVENTIONAL_INCH = 249.0889;

describe('air power against customary constants', () => {
  const horsepower = against({
    relation: 'airPower',
    source:
      'AMCA 210: a horsepower is 6356 cfm x in wg, by water at 62.3 lbf/ft3; 6355 and 6343 by other water',
    basis: 'from-memory',
    kind: 'value',
  });
  const byHand = against({
    relation: 'airPower',
    source: 'by hand: 50 cfm at 40 in wg are 235.11 W',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const trade = against({
    relation: 'airPower',
    source: 'cfm x in wg over 8.5, a page on tests of vacuum cleaners',
    basis: 'published',
    kind: 'value',
  });
  const cleaners = against({
    relation: 'airPower',
    source: 'ASTM F558, 0.117354 W for each cfm x in wg',
    basis: 'from-memory',
    kind: 'value',
  });

  /**
   * US air horsepower: cfm x in wg / 6356. The constant is 33 000 ft lbf/min over the pressure of an inch of water at
   * 62.3 lbf/ft3, the trade's figure (water near 20 C), known to four digits.
   */
  it('one horsepower is 6356 cfm x in wg', () => {
    const inch_Pa = (62.3 / 12) * 47.880259;
    const horsepower_W = 745.6999;
    const unit = { unit: 'cfm in wg' };
    horsepower.withinAbsolute(horsepower_W / airPower(CFM, inch_Pa), 6356, 0.5, unit);
    // An inch of water at 20 C (998.207 kg/m3) gives 6355 and the conventional inch 6343: the spread of the unit.
    const at20C_Pa = 998.207 * 9.80665 * 0.0254;
    horsepower.withinAbsolute(horsepower_W / airPower(CFM, at20C_Pa), 6355, 0.5, unit);
    horsepower.withinAbsolute(horsepower_W / airPower(CFM, CONVENTIONAL_INCH), 6343, 0.5, unit);
  });

  /** The constant of ASTM F558 is an inch of water at 20 C to 1 part in 10 000; the trade's 8.5 is good to its two digits. */
  it('50 cfm at 40 in wg is 235 air watts', () => {
    const watts = airPower(50 * CFM, 40 * CONVENTIONAL_INCH);
    byHand.withinAbsolute(watts, 235.11, 0.005, { unit: 'W' });
    trade.withinAbsolute(watts, (50 * 40) / 8.5, 0.5, { unit: 'W' });
    const at20C = airPower(50 * CFM, 40 * 998.207 * 9.80665 * 0.0254);
    cleaners.within(at20C, 0.117354 * 50 * 40, 1e-4);
  });
});
