import { beforeAll, describe, it } from 'vitest';
import { benchFan } from '../../core/fan-bench/bench.ts';
import { fanCurve } from '../../core/fan/fan-curve.ts';
import { curveValueAndSlope, monotoneCurve } from '../../core/fan/monotone-curve.ts';
import type { BenchCurve } from '../../core/fan-bench/result.ts';
import { design, KNOWN_FAN, readings, shopWith } from '../core/fan-bench/synthetic.ts';
import { against } from './ledger.ts';

/**
 * A made-up fan whose curve is known exactly, a polynomial that is not of the catalogue's shapes. Sealed
 * suction and eight plates are read with errors drawn from normal distributions of the size that the document states;
 * the discharge coefficient is off by one draw for all plates of a seed.
 */
const HOLES_M = [0.025, 0.035, 0.045, 0.055, 0.065, 0.075, 0.09, 0.11];
const ERRORS = { pressure_Pa: 15, hole_m: 0.0003, speed: 0.005, C: 0.012, edge: 0.005 };
/** Flows over that at free delivery at which the band is asked; the largest plate lets 0.85 of it pass. */
const PLACES = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8];
const SEEDS = 500;

const out = new Float64Array(2);

function readCurve(
  curve: BenchCurve,
  of: (point: BenchCurve['points'][number]) => number,
  flow: number,
): number {
  const flows = curve.points.map(({ flow_m3s }) => flow_m3s);
  curveValueAndSlope(monotoneCurve(flows, curve.points.map(of)), flow, out);
  return out[0]!;
}

describe('a known fan is found again from noisy readings', () => {
  const coverage = against({
    relation: ['core/fan-bench/bench.ts#benchFan', 'estimateCurve', 'curveBand'],
    source:
      'a made-up fan known exactly, read with made-up errors: share of 500 bands of nine in ten that hold it',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const middle = against({
    relation: ['core/fan-bench/bench.ts#benchFan', 'estimateCurve'],
    source: 'a made-up fan known exactly, read with made-up errors: mean of 500 curves at each flow',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const inside = PLACES.map(() => 0);
  const off = PLACES.map(() => 0);
  beforeAll(() => {
    for (let seed = 1; seed <= SEEDS; seed++) {
      const series = readings(KNOWN_FAN, { holes_m: HOLES_M, seed, errors: ERRORS });
      const document = shopWith([design(series, { speed: KNOWN_FAN.speed_rpm })]);
      const { curve } = benchFan(document, 'F1', { samples: 200, seed });
      PLACES.forEach((place, i) => {
        const flow = place * KNOWN_FAN.freeFlow_m3s;
        const truth = KNOWN_FAN.pressure_Pa(flow);
        const low = readCurve(curve!, (point) => point.low_Pa, flow);
        const high = readCurve(curve!, (point) => point.high_Pa, flow);
        if (low <= truth && truth <= high) inside[i]!++;
        off[i]! += (readCurve(curve!, (point) => point.staticPressure_Pa, flow) - truth) / SEEDS;
      });
    }
  }, 60_000);

  it(`over ${SEEDS} seeds the band of 90 % holds the truth between 85 % and 95 % of the time, over all places`, () => {
    const share = inside.reduce((sum, count) => sum + count, 0) / (SEEDS * PLACES.length);
    coverage.withinAbsolute(share, 0.9, 0.05);
  });
  it('at no place does it hold the truth less than 80 % of the time', () => {
    inside.forEach((count) => coverage.holds(count / SEEDS > 0.8, 'at each flow in more than four of five'));
  });
  it('the mean of all curves is within 1.5 % of the pressure with the inlet blocked', () => {
    const blocked_Pa = KNOWN_FAN.pressure_Pa(0);
    off.forEach((mean) =>
      middle.withinAbsolute(mean / blocked_Pa, 0, 0.015, { unit: 'of the pressure with the inlet blocked' }),
    );
  });
});

describe('round trip', () => {
  const again = against({
    relation: 'core/fan-bench/bench.ts#benchFan',
    source: 'a curve that the bench found, read again without error by plates',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  it('a curve tested again by plates that read without error comes back within its own band', () => {
    const first = readings(KNOWN_FAN, { holes_m: HOLES_M, seed: 77, errors: ERRORS });
    const found = benchFan(shopWith([design(first, { speed: KNOWN_FAN.speed_rpm })]), 'F1').curve!;
    const compiled = fanCurve({
      pressureKind: 'static',
      outletArea_m2: found.outletArea_m2,
      points: found.points.map(({ flow_m3s, staticPressure_Pa }) => ({
        flow_m3s,
        pressure_Pa: staticPressure_Pa,
      })),
      ratedSpeed_rpm: found.speed_rpm,
      ratedDensity_kgm3: found.density_kgm3,
    });
    const asFan = {
      ...KNOWN_FAN,
      pressure_Pa: (flow: number) => {
        curveValueAndSlope(compiled.pressure, flow, out);
        return out[0]!;
      },
    };
    const still = { pressure_Pa: 0, hole_m: 0, speed: 0, C: 0, edge: 0 };
    const repeated = readings(asFan, { holes_m: HOLES_M, seed: 78, errors: still }).map((reading) => ({
      ...reading,
      errors: { pressure: 30, size: 0.0006, speed: 0.01, flow: 0.024 },
    }));
    const back = benchFan(shopWith([design(repeated, { speed: KNOWN_FAN.speed_rpm })]), 'F1').curve!;
    for (const place of PLACES) {
      const flow = place * KNOWN_FAN.freeFlow_m3s;
      const truth = readCurve(found, (point) => point.staticPressure_Pa, flow);
      const low = readCurve(back, (point) => point.low_Pa, flow);
      const high = readCurve(back, (point) => point.high_Pa, flow);
      again.holds(low <= truth + 1e-9 && high >= truth - 1e-9, 'comes back within its own band');
    }
  });
});
