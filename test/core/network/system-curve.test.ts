import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDocument } from '../../../core/document/read.ts';
import { settingNames } from '../../../core/network/apply-setting.ts';
import { LOSS_SHARES } from '../../../core/network/solution.ts';
import { systemCurve } from '../../../core/network/system-curve.ts';
import * as s from './shop.ts';

const EXAMPLES = new URL('../../../core/examples/', import.meta.url);
const cases = readdirSync(EXAMPLES)
  .filter((name) => name.endsWith('.json'))
  .flatMap((name) => {
    const read = readDocument(readFileSync(new URL(name, EXAMPLES), 'utf8'));
    if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
    return settingNames(read.document).map((setting) => [name, setting, read.document] as const);
  });

describe.each(cases)('%s, %s', (_name, setting, document) => {
  const bench = s.benchOf(document);
  const fanId = bench.shop.fans[0]!.thing.id;
  const curve = systemCurve(bench, setting, fanId, 21);

  it('sums the power lost in every kind of piece to what the fan must give', () => {
    expect(curve.points.length).toBeGreaterThan(10);
    for (const point of curve.points) {
      const named = LOSS_SHARES.reduce((sum, share) => sum + point.shares_Pa[share], 0);
      expect(Math.abs(named - point.demand_Pa)).toBeLessThan(1e-6 * Math.abs(point.demand_Pa) + 1e-6);
      expect(Math.abs(point.otherShare_Pa)).toBeLessThan(1e-6 * Math.abs(point.demand_Pa) + 1e-6);
    }
  });

  it('asks for more at more flow', () => {
    const demands = curve.points.map((p) => p.demand_Pa);
    for (let i = 1; i < demands.length; i++) expect(demands[i]).toBeGreaterThan(demands[i - 1]!);
  });

  it('meets the fan at the operating point', () => {
    const [point] = curve.operatingPoints;
    const i = curve.points.findIndex((p) => p.massFlow_kgs > point!.massFlow_kgs);
    const [before, after] = [curve.points[i - 1]!, curve.points[i]!];
    // demand is near a parabola through the origin: interpolate in the square of the flow
    const t =
      (point!.massFlow_kgs ** 2 - before.massFlow_kgs ** 2) /
      (after.massFlow_kgs ** 2 - before.massFlow_kgs ** 2);
    const demand = before.demand_Pa + t * (after.demand_Pa - before.demand_Pa);
    expect(Math.abs(demand / point!.totalPressure_Pa - 1)).toBeLessThan(0.005);
    expect(before.fanTotal_Pa! - before.demand_Pa).toBeGreaterThan(0);
    expect((after.fanTotal_Pa ?? 0) - after.demand_Pa).toBeLessThan(0);
  });
});

describe('a shop with given pressures', () => {
  it('names what they add apart from its losses', () => {
    const shop = s.shopOf(
      [{ id: 'P', kind: 'pressure', pressure: -200 }, s.STEADY_FAN, s.exhaust()],
      [s.run('R1', 'P', 'fan', [s.straight(2)]), s.run('R2', 'fan', 'out')],
    );
    for (const point of systemCurve(s.benchOf(shop), 'as drawn', 'fan', 9).points) {
      expect(Math.abs(point.otherShare_Pa - 200)).toBeLessThan(1e-6);
    }
  });
});

describe('a curve at the very flow of the operating point', () => {
  it('asks what the fan gives', () => {
    const shop = s.shopOf(
      [s.port('a'), s.STEADY_FAN, s.exhaust()],
      [s.run('R1', 'a', 'fan', [s.straight(4)]), s.run('R2', 'fan', 'out')],
    );
    const at = s.resultOf(shop).fans[0]!;
    // K V^2: one run without change of density, so the demand at another flow follows from friction by hand
    const curve = systemCurve(s.benchOf(shop), 'as drawn', 'fan', 421);
    const i = curve.points.findIndex((p) => p.flow_m3s > at.flow_m3s);
    const [p, q] = [curve.points[i - 1]!, curve.points[i]!];
    const t = (at.flow_m3s - p.flow_m3s) / (q.flow_m3s - p.flow_m3s);
    expect(Math.abs(p.demand_Pa + t * (q.demand_Pa - p.demand_Pa) - at.totalPressure_Pa)).toBeLessThan(0.1);
  });
});
