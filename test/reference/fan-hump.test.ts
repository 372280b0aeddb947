import { describe, it } from 'vitest';
import { fallingFrom } from '../../core/fan/curve-shape.ts';
import { fanCurve, hasHump, type FanCurveInput } from '../../core/fan/fan-curve.ts';
import data from './data/13_fan_curve.json' with { type: 'json' };
import { against } from './ledger.ts';

const RATED = { ratedSpeed_rpm: null, ratedDensity_kgm3: 1.2 } as const;

function fanOf(
  pressureKind: FanCurveInput['pressureKind'],
  flows: readonly number[],
  pressures: readonly number[],
  outletArea_m2 = 0.01,
) {
  const points = flows.map((flow_m3s, i) => ({ flow_m3s, pressure_Pa: pressures[i]! }));
  return fanCurve({ pressureKind, outletArea_m2, points, ...RATED });
}

/** How often the straight lines through the points cross a level pressure, at most, over levels next to each point. */
function mostCrossings(pressures: readonly number[]): number {
  const step = 1e-9 * Math.max(...pressures);
  const levels = pressures.flatMap((p) => [p - step, p + step]);
  const crossings = (level: number) =>
    pressures.slice(1).filter((p, i) => p > level !== pressures[i]! > level).length;
  return Math.max(...levels.map(crossings));
}

describe('a hump', () => {
  const levelSystem = against({
    relation: 'hasHump',
    source: 'counted by hand: a system of level pressure crosses the points of data 13 more than once',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const share = against({
    relation: 'hasHump',
    source: 'what a gauge can tell, 0.2 % of the largest pressure',
    basis: 'common-practice',
    kind: 'value',
  });

  it.each(data.cases.map((row, i) => [i, row] as const))('case %i', (_, row) => {
    const fan = fanOf('total', row.in.curve_flow_m3s, row.in.curve_pressure_Pa);
    const twice = mostCrossings(row.in.curve_pressure_Pa) > 1;
    levelSystem.holds(hasHump(fan) === twice, 'a hump just where it does');
  });

  it('counts from two parts in a thousand', () => {
    const humped = (rise_Pa: number) => hasHump(fanOf('static', [0, 0.1, 0.2], [1000 - rise_Pa, 1000, 0]));
    let [low, high] = [0, 100];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (humped(middle)) high = middle;
      else low = middle;
    }
    share.withinAbsolute(high / 1000, 0.002, 1e-12, { unit: 'of the largest' });
  });
});

describe('where total pressure begins to fall for good', () => {
  const points = against({
    relation: 'fallingFrom',
    source: 'data 13: the last of the points that lies higher than the one before it, or the first of all',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const lifted = against({
    relation: 'fallingFrom',
    source:
      'by hand: static points 900, 1000 and 0 Pa with the velocity pressure of the outlet added, the root of a quadratic',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const straight = against({
    relation: 'fallingFrom',
    source: 'by hand: a straight static curve with its velocity pressure falls to b A^2/rho, then rises',
    basis: 'hand-calculation',
    kind: 'limit',
  });

  it.each(data.cases.map((row, i) => [i, row] as const))('case %i', (_, row) => {
    const { curve_flow_m3s: flows, curve_pressure_Pa: pressures } = row.in;
    const fan = fanOf('total', flows, pressures);
    // a monotone cubic through points of total pressure turns at points only; slopes below 1e-12 of the whole count as flat,
    // which moves the turn by up to a millionth of the span where it has no curvature either (a clamped end slope)
    const last = pressures.findLastIndex((p, i) => i > 0 && p > pressures[i - 1]!);
    const span = flows.at(-1)! - flows[0]!;
    const expected = flows[Math.max(last, 0)]!;
    points.withinAbsolute(fallingFrom(fan) / span, expected / span, 1e-6, { unit: 'of the span' });
    const humped = pressures.some((p, i, all) => i > 0 && p > all[i - 1]!);
    points.holds(fallingFrom(fan) > flows[0]! === humped, 'beyond the first point just where points rise');
  });

  /**
   * Spans h = 0.1 m3/s. The slope at the peak is 0, that at the end (3 (-1000) - 100)/2 = -1550 Pa for each h. With
   * t = s/h the static slope beyond the peak is (-2900 t + 1350 t^2)/h; velocity pressure adds 2 k h (1 + t) with
   * k = rho/(2 A^2). For 2 k h^2 = 100 Pa: 1350 t^2 - 2800 t + 100 = 0.
   */
  it('lies beyond the peak of the static points', () => {
    const area = 0.1 * Math.sqrt(1.2 / 100);
    const fan = fanOf('static', [0, 0.1, 0.2], [900, 1000, 0], area);
    const t = (2800 - Math.sqrt(2800 ** 2 - 4 * 1350 * 100)) / 2700;
    lifted.within(fallingFrom(fan), 0.1 * (1 + t), 1e-12);
  });

  it('is the first flow of a straight curve that ends before its valley, else the last', () => {
    const [slope, area] = [2000, 0.01];
    const valley = (slope * area ** 2) / 1.2;
    const end = (flow: number) => fallingFrom(fanOf('static', [0, flow], [1000, 1000 - slope * flow], area));
    straight.holds(end(valley * (1 - 1e-9)) === 0, 'the first flow if it ends before');
    straight.holds(end(valley * (1 + 1e-9)) === valley * (1 + 1e-9), 'the last flow if it ends after');
  });
});
