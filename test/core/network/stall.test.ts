import { describe, expect, it } from 'vitest';
import { fanCurve, fanTotalPressure } from '../../../core/fan/fan-curve.ts';
import { solveSetting } from '../../../core/network/solve.ts';
import * as s from './shop.ts';

/** Falls, rises to a hump at 0.1 m3/s and falls again. */
const HUMP = [
  [0, 1000],
  [0.03, 700],
  [0.06, 850],
  [0.1, 1400],
  [0.13, 1300],
  [0.16, 600],
  [0.2, 0],
] as const;

/** One run of one coefficient: the system's curve is that of a hand calculation. */
const shopWith = (pressure: number, K: number) =>
  s.shopOf(
    [{ id: 'P', kind: 'pressure', pressure }, s.fan(HUMP), s.exhaust()],
    [s.run('R1', 'P', 'fan', [{ kind: 'given', coefficient: K }]), s.run('R2', 'fan', 'out')],
  );
const AREA = (Math.PI / 4) * 0.1 ** 2;

/** Crossings by a plain scan and bisection, without the solver. */
function crossings(pressure: number, K: number): number[] {
  const curve = fanCurve({
    pressureKind: 'total',
    outletArea_m2: AREA,
    points: HUMP.map(([flow_m3s, pressure_Pa]) => ({ flow_m3s, pressure_Pa })),
    ratedSpeed_rpm: null,
    ratedDensity_kgm3: 1.2,
  });
  const out = new Float64Array(3);
  const gap = (q: number) => {
    fanTotalPressure(curve, { flow_m3s: q, density_kgm3: 1.2, speedRatio: 1 }, out);
    return out[0]! - ((K + 1) * 0.6 * (q / AREA) ** 2 - pressure);
  };
  const found: number[] = [];
  for (let i = 1; i < 2000; i++) {
    let [low, high] = [(0.2 * i) / 2000, (0.2 * (i + 1)) / 2000];
    if (gap(low) * gap(high) > 0) continue;
    for (let k = 0; k < 60; k++) {
      const middle = (low + high) / 2;
      if (gap(low) * gap(middle) <= 0) high = middle;
      else low = middle;
    }
    found.push(low);
  }
  return found;
}

describe('a fan with a hump', () => {
  it('that meets the system three times reports all, and stands at the lowest stable', () => {
    const [pressure, K] = [-700, 3];
    const wanted = crossings(pressure, K);
    expect(wanted).toHaveLength(3);
    const result = s.resultOf(shopWith(pressure, K));
    const fan = result.fans[0]!;
    const points = fan.allOperatingPoints;
    expect(points.map((p) => p.stable)).toEqual([true, false, true]);
    points.forEach((p, i) => expect(Math.abs(p.flow_m3s - wanted[i]!)).toBeLessThan(1e-7));
    expect(Math.abs(fan.flow_m3s - wanted[0]!)).toBeLessThan(1e-7);
    expect(fan.stable).toBe(true);
    expect(s.codesOf(result)).toContain('fan-several-points');
  });

  it('that meets the system once, on its falling side, says nothing', () => {
    const result = s.resultOf(shopWith(0, 5));
    expect(crossings(0, 5)).toHaveLength(1);
    expect(result.fans[0]!.allOperatingPoints).toHaveLength(1);
    expect(result.fans[0]!.stable).toBe(true);
    expect(s.codesOf(result)).not.toContain('fan-several-points');
  });

  it('that is caught on its rising side, with no stable point to go to, is said to be unstable', () => {
    const pressure = -800;
    const shop = s.shopOf(
      [{ id: 'P', kind: 'pressure', pressure }, s.fan(HUMP.slice(1, 4)), s.exhaust()],
      [s.run('R1', 'P', 'fan', [], { diameter: 0.2 }), s.run('R2', 'fan', 'out', [], { diameter: 0.2 })],
    );
    const bench = s.benchOf(shop);
    const { elementCount, nodeCount } = bench.shop.packed;
    // a start near the one crossing, as after a change of the fan's curve
    bench.states.set('as drawn', {
      flow_kgs: new Float64Array(elementCount).fill(1.2 * 0.05),
      pressure_Pa: new Float64Array(nodeCount),
    });
    const result = solveSetting(bench, 'as drawn');
    expect(result.reasonText).toBeNull();
    expect(result.fans[0]!.allOperatingPoints.map((p) => p.stable)).toEqual([false]);
    expect(result.fans[0]!.stable).toBe(false);
    expect(s.codesOf(result)).toContain('fan-unstable');
  });
});
