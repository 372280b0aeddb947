import { describe, expect, it } from 'vitest';
import { systemCurve } from '../../../../../core/network/system-curve.ts';
import type { SystemCurve } from '../../../../../core/network/system-curve.ts';
import {
  layCurve,
  readCurve,
  runningPoint,
  shareOf,
  sharesIn,
} from '../../../../../core/summary/figures/charts/curve-chart.ts';
import { benchOf, exampleDocument, solvedExample } from '../solved-example.ts';

const nameOf = (id: string) => id;
const curveOf = (id: 'one-router' | 'five-machines', setting: string): SystemCurve =>
  systemCurve(benchOf(exampleDocument(id)), setting, 'fan');
const router = curveOf('one-router', 'router');
const input = { width: 700, height: 420, units: 'si', overlay: null, overlayName: '', nameOf } as const;

/** Corners of an SVG path of straight lines. */
const corners = (path: string) =>
  [...path.matchAll(/[ML]([-\d.]+),([-\d.]+)/g)].map((m) => ({ x: Number(m[1]), y: Number(m[2]) }));

describe('system and fan curve', () => {
  it('meet where the solver says that the fan runs', () => {
    const fan = solvedExample('one-router', 'router').fans[0]!;
    const marks = layCurve(router, input);
    const [point] = marks.points;
    expect(marks.x.invert(point!.x)).toBeCloseTo(fan.flow_m3s, 3);
    const reading = readCurve(router, fan.flow_m3s)!;
    // between points 26 m3/h apart, so not to the last digit
    expect(reading.demand_Pa / fan.totalPressure_Pa).toBeCloseTo(1, 3);
    expect(reading.fanTotal_Pa! / fan.totalPressure_Pa).toBeCloseTo(1, 3);
    expect(reading.fanStatic_Pa! / fan.staticPressure_Pa).toBeCloseTo(1, 3);
  });

  it('stacks shares up to the system curve', () => {
    const marks = layCurve(router, input);
    const top = corners(marks.areas.at(-1)!.path);
    const system = corners(marks.system);
    expect(system.length).toBe(router.points.length);
    system.forEach((p, i) => {
      expect(top[i]!.x).toBe(p.x);
      expect(Math.abs(top[i]!.y - p.y)).toBeLessThan(0.2);
    });
    expect(marks.areas.map((a) => a.share)).toEqual(sharesIn(router));
  });

  it('hangs below the axis what gives pressure back', () => {
    const point = { ...router.points[10]! };
    const points = [
      router.points[0]!,
      { ...point, shares_Pa: { ...point.shares_Pa, fittings: -50 }, demand_Pa: 100 },
    ];
    const marks = layCurve({ ...router, points }, input);
    const area = corners(marks.areas.find((a) => a.share === 'fittings')!.path);
    expect(Math.max(...area.map((p) => p.y))).toBeGreaterThan(marks.y.scale(0));
  });

  it('reads shares that add up to what the system asks', () => {
    for (const flow of [0.03, 0.1, 0.185, 0.25]) {
      const { shares, demand_Pa } = readCurve(router, flow)!;
      expect(shares.reduce((sum, s) => sum + s.loss_Pa, 0)).toBeCloseTo(demand_Pa, 1);
    }
    expect(readCurve(router, 10)).toBeNull();
    expect(readCurve(router, NaN)).toBeNull();
    const p = router.points[7]!;
    expect(readCurve(router, p.flow_m3s)!.shares.find((s) => s.share === 'hood')!.loss_Pa).toBeCloseTo(
      shareOf(p, 'hood'),
      9,
    );
  });

  it('lays another setting over, with its own operating point', () => {
    const open = curveOf('five-machines', 'all open');
    const marks = layCurve(curveOf('five-machines', 'planer alone'), {
      ...input,
      units: 'us',
      overlay: open,
      overlayName: 'all open',
    });
    expect(marks.otherSystem).not.toBe('');
    expect(marks.otherFan).toBe('');
    expect(marks.points.map((p) => p.overlay)).toEqual([false, true]);
    // more open gates ask less at the same flow
    expect(marks.points[1]!.x).toBeGreaterThan(marks.points[0]!.x);
    expect(marks.labels.map((l) => l.text)).toContain('all open runs here');
  });

  it('lays the same setting over at another speed, with a fan curve of its own', () => {
    const faster = {
      ...router,
      points: router.points.map((p) => ({ ...p, fanTotal_Pa: p.fanTotal_Pa && p.fanTotal_Pa * 1.21 })),
    };
    const marks = layCurve(router, { ...input, overlay: faster, overlayName: '10 % faster' });
    expect(marks.otherFan).not.toBe('');
    expect(corners(marks.otherFan)[0]!.y).toBeLessThan(corners(marks.fan)[0]!.y);
  });

  it('marks a point that does not stand', () => {
    const [point] = router.operatingPoints;
    const hunting = {
      ...router,
      operatingPoints: [
        { ...point!, stable: false },
        { ...point!, flow_m3s: 0.2 },
      ],
    };
    const marks = layCurve(hunting, input);
    expect(marks.points.map((p) => p.stable)).toEqual([false, true]);
    expect(marks.labels.some((l) => l.text === 'unstable')).toBe(true);
    expect(runningPoint(hunting)!.flow_m3s).toBe(0.2);
    expect(marks.sentence).toContain('1 other point');
  });

  it('stands where the curves do not meet', () => {
    const none = { ...router, points: [], operatingPoints: [] };
    const marks = layCurve(none, input);
    expect(marks.system).toBe('');
    expect(marks.sentence).toContain('do not meet');
    expect(JSON.stringify(marks.y.ticks)).not.toContain('null');
  });

  it('of the router is as reviewed', () => {
    const { sentence, xTitle, yTitle, x, y, points } = layCurve(router, input);
    expect({
      sentence,
      xTitle,
      yTitle,
      x: x.ticks.map((t) => t.text).join(' '),
      y: y.ticks.map((t) => t.text).join(' '),
      points: points.map((p) => [Math.round(p.x), Math.round(p.y), p.stable]),
    }).toMatchSnapshot();
  });
});
