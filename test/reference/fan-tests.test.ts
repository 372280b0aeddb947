import { describe, expect, it } from 'vitest';
import { plateExpansibility } from '../../core/fan/tests/expansibility.ts';
import { holePlateFlow } from '../../core/fan/tests/hole-plate.ts';
import { bellInletFlow, conicalInletFlow } from '../../core/fan/tests/inlet-throat.ts';
import {
  leastOrificeReynolds,
  orificeCoefficient,
  orificeCoefficientError,
  orificeFlow,
} from '../../core/fan/tests/orifice-plate.ts';
import type { OrificeTaps } from '../../core/fan/tests/orifice-plate.ts';
import { fanStaticPressure } from '../../core/fan/tests/tapped-suction.ts';
import { pitotMeanVelocity, traversePlaces, traverseProfileError } from '../../core/fan/tests/traverse.ts';
import { waterColumn, waterDensity } from '../../core/fan/tests/water-gauge.ts';
import data from './data/05_orifice_meter.json' with { type: 'json' };
import { expectRelative } from './relative.ts';

const TAPS: Readonly<Record<string, OrificeTaps>> = { corner: 'corner', flange: 'flange', D: 'one-and-half' };

/** Source: data/05_orifice_meter.json, ISO 5167-2:2003 solved by a library of fluid mechanics; tolerance stated there. */
describe('orifice plate against computed cases of ISO 5167-2', () => {
  it.each(data.cases.map((row, i) => [i, row] as const))('case %i to 1e-6', (_, { in: given, out }) => {
    const plate = {
      bore_m: given.orifice_diameter_m,
      pipe_m: given.pipe_diameter_m,
      taps: TAPS[given.taps]!,
    };
    const found = orificeFlow({
      ...plate,
      difference_Pa: given.dp_Pa,
      density_kgm3: given.density_kg_m3,
      viscosity_Pas: given.dynamic_viscosity_Pa_s,
      upstreamPressure_Pa: given.upstream_pressure_Pa,
    });
    expectRelative(found.massFlow_kgs, out.mass_flow_kg_s, 1e-6);
    expectRelative(found.dischargeCoefficient, out.discharge_coefficient, 1e-6);
    expectRelative(orificeCoefficient(plate, out.pipe_reynolds), out.discharge_coefficient, 1e-6);
    const pressures = { difference_Pa: given.dp_Pa, upstreamPressure_Pa: given.upstream_pressure_Pa };
    const beta = plate.bore_m / plate.pipe_m;
    expectRelative(plateExpansibility(beta, pressures), out.expansibility, 1e-6);
    // all cases were chosen inside the standard's limits
    expect(found.pipeReynolds).toBeGreaterThan(leastOrificeReynolds(plate));
  });
});

/** Source: ISO 5167-2:2003, 5.3.1 and 5.3.3.1, from memory, by hand. */
describe('limits and uncertainty of an orifice plate', () => {
  it('asks for 5000 or more, as the taps say', () => {
    expect(leastOrificeReynolds({ bore_m: 0.05, pipe_m: 0.1, taps: 'corner' })).toBe(5000);
    expect(leastOrificeReynolds({ bore_m: 0.07, pipe_m: 0.1, taps: 'one-and-half' })).toBeCloseTo(7840, 6);
    expect(leastOrificeReynolds({ bore_m: 0.06, pipe_m: 0.1, taps: 'flange' })).toBeCloseTo(6120, 6);
  });
  it('is half of the printed uncertainty', () => {
    const at = (beta: number, pipe_m: number, Re: number) =>
      orificeCoefficientError({ bore_m: beta * pipe_m, pipe_m, taps: 'corner' }, Re);
    expect(at(0.15, 0.1, 1e5)).toBeCloseTo(0.0055 / 2, 12);
    expect(at(0.4, 0.1, 1e5)).toBeCloseTo(0.005 / 2, 12);
    expect(at(0.7, 0.1, 1e5)).toBeCloseTo((1.667 * 0.7 - 0.5) / 200, 12);
    expect(at(0.55, 0.1, 9000)).toBeCloseTo(0.01 / 2, 12);
    // 50.8 mm: 0.9 (0.75 - 0.5) (2.8 - 2) = 0.18 % more
    expect(at(0.5, 0.0508, 1e5)).toBeCloseTo(0.0068 / 2, 12);
  });
});

/** Source: table of flows of sharp holes at C 0.60 and 1.2 kg/m3 without expansibility, reckoned by hand, to its last digit. */
describe('hole plate', () => {
  const ROWS = [
    [0.01, [4.9, 6.9, 9.8, 15.5, 21.9]],
    [0.02, [19.6, 27.7, 39.2, 61.9, 87.6]],
    [0.03, [44.1, 62.3, 88.2, 139, 197]],
    [0.05, [122, 173, 245, 387, 548]],
  ] as const;
  const open = { frontPipe_m: null, backPipe_m: null, density_kgm3: 1.2, roomPressure_Pa: null };
  const plate = { ...open, holes: 1, dischargeCoefficient: 0.6 };
  it.each(ROWS)('of %d m', (hole_m, flows) => {
    [500, 1000, 2000, 5000, 10000].forEach((suction_Pa, i) => {
      const flow = (holePlateFlow({ ...plate, hole_m, suction_Pa }) / 1.2) * 3600;
      expect(Math.abs(flow - flows[i]!)).toBeLessThanOrEqual(flows[i]! >= 100 ? 0.51 : 0.051);
    });
  });
  it('passes less where air expands: 1 - 0.41 dp/(1.4 p1) within 0.002 at 3 kPa (older rule of ISO 5167)', () => {
    const flow = (roomPressure_Pa: number | null) =>
      holePlateFlow({ ...plate, hole_m: 0.03, suction_Pa: 3000, roomPressure_Pa });
    expect(Math.abs(flow(101325) / flow(null) - (1 - (0.41 * 3000) / (1.4 * 101325)))).toBeLessThan(0.002);
  });
  it('agrees with the orifice plate as the diameter ratio tends to zero (ISO 5167-2: C 0.5961 + small terms)', () => {
    const suction_Pa = 2000;
    const air = { density_kgm3: 1.2, viscosity_Pas: 1.81e-5, upstreamPressure_Pa: 101325 };
    const orifice = orificeFlow({
      bore_m: 0.05,
      pipe_m: 0.5,
      taps: 'corner',
      difference_Pa: suction_Pa,
      ...air,
    });
    const hole = holePlateFlow({ ...plate, hole_m: 0.05, suction_Pa, roomPressure_Pa: 101325 });
    expectRelative(hole, orifice.massFlow_kgs, 0.01);
  });
  it('meets the momentum of a pipe in front and behind by a second route', () => {
    const [suction_Pa, hole_m, C, pipe] = [1500, 0.04, 0.62, 0.08];
    const A0 = (Math.PI / 4) * hole_m ** 2;
    const Ap = (Math.PI / 4) * pipe ** 2;
    // in front: total pressure of the room drives a jet of area C A0 against the static pressure behind; the pipe's
    // static pressure is lower by its velocity pressure, which the meter formula with (1 - beta^4) then uses
    const front =
      holePlateFlow({ ...plate, hole_m, suction_Pa, dischargeCoefficient: C, frontPipe_m: pipe }) / 1.2;
    const static1 = -0.6 * (front / Ap) ** 2;
    const meter =
      (C * A0 * Math.sqrt((2 * (static1 + suction_Pa)) / 1.2)) / Math.sqrt(1 - (hole_m / pipe) ** 4);
    expectRelative(front, meter, 1e-12);
    // behind: jet of area C A0 into the pipe, Borda-Carnot to the pipe's velocity
    const back =
      holePlateFlow({ ...plate, hole_m, suction_Pa, dischargeCoefficient: C, backPipe_m: pipe }) / 1.2;
    const jet = back / (C * A0);
    const pipeVelocity = back / Ap;
    const lost = 0.6 * (jet - pipeVelocity) ** 2;
    expectRelative(lost + 0.6 * pipeVelocity ** 2, suction_Pa, 1e-12);
  });
});

/** Source: ISO 5801, conical inlet, from memory; the worked figure by hand: d 100 mm, dp 100 Pa, 1.2 kg/m3, 1.81e-5 Pa s. */
describe('shaped inlets', () => {
  const inlet = { throat_m: 0.1, difference_Pa: 100, density_kgm3: 1.2, viscosity_Pas: 1.81e-5 };
  it('cone: Re 8.11e4, coefficient 0.94786, 0.09611 m3/s', () => {
    const flow = conicalInletFlow(inlet) / 1.2;
    expect(flow).toBeCloseTo(0.09611, 5);
    expect((1.2 * flow * 4) / (Math.PI * 0.1 * 1.81e-5)).toBeCloseTo(8.11e4, -2);
  });
  it('cone: the two parts meet at Re 300 000 (0.9599 and 0.96)', () => {
    expect(Math.abs(1 - 0.5 * 3e5 ** -0.2 - 0.96)).toBeLessThan(2e-4);
    const fast = conicalInletFlow({ ...inlet, difference_Pa: 4000 });
    expect(fast / ((Math.PI / 4) * 0.01 * Math.sqrt(2 * 1.2 * 4000))).toBeCloseTo(0.96, 10);
  });
  it('bell: between 0.97 and 0.99 of the ideal flow', () => {
    const share = bellInletFlow(inlet) / ((Math.PI / 4) * 0.01 * Math.sqrt(2 * 1.2 * 100));
    expect(share).toBeGreaterThan(0.97);
    expect(share).toBeLessThan(0.99);
  });
});

/** Source: ISO 3966 as instrument manuals print it (three decimals for 8 and 10 points), distances from the wall over diameter. */
describe('traverse', () => {
  const PRINTED = [
    ['log-linear', 4, [0.043, 0.29, 0.71, 0.957]],
    ['log-linear', 6, [0.032, 0.135, 0.321, 0.679, 0.865, 0.968]],
    ['log-linear', 8, [0.021, 0.117, 0.184, 0.345, 0.655, 0.816, 0.883, 0.979]],
    ['log-linear', 10, [0.019, 0.077, 0.153, 0.217, 0.361, 0.639, 0.783, 0.847, 0.923, 0.981]],
    ['log-tchebycheff', 6, [0.032, 0.137, 0.312, 0.688, 0.863, 0.968]],
    ['log-tchebycheff', 8, [0.024, 0.1, 0.194, 0.334, 0.666, 0.806, 0.9, 0.976]],
    ['log-tchebycheff', 10, [0.019, 0.076, 0.155, 0.215, 0.357, 0.643, 0.785, 0.845, 0.924, 0.981]],
  ] as const;
  it.each(PRINTED)('%s, %i points: the printed places', (rule, points, places) => {
    const found = traversePlaces(0.2, rule, points);
    expect(found).toHaveLength(places.length);
    found.forEach((place, i) => expect(Math.abs(place / 0.2 - places[i]!)).toBeLessThanOrEqual(0.00051));
  });
  it.each(PRINTED)(
    '%s, %i points: mean of a seventh-root profile within 1 %% of the exact one',
    (rule, points) => {
      // mean over the disc of (1 - r)^(1/7) by hand: 2 n^2/((n + 1)(2 n + 1)) with n = 7
      const exact = (2 * 49) / (8 * 15);
      const heads = traversePlaces(1, rule, points).map(
        (y) => 0.5 * 1.2 * (2 * Math.min(y, 1 - y)) ** (2 / 7),
      );
      expect(Math.abs(pitotMeanVelocity(heads, 1.2) / exact - 1)).toBeLessThan(0.01);
    },
  );
  it('means the roots, not the pressures', () => {
    expect(pitotMeanVelocity([60, 240], 1.2)).toBeCloseTo((10 + 20) / 2, 12);
  });
  it('more points never bring a larger error', () => {
    const errors = Array.from({ length: 30 }, (_, i) => traverseProfileError(i + 1));
    errors.slice(1).forEach((error, i) => expect(error).toBeLessThanOrEqual(errors[i]!));
  });
});

describe('water gauge', () => {
  /** Source: density of water at one atmosphere, CRC handbook to 0.01 kg/m3, from memory; 9.789 Pa for 1 mm at 20 C by hand. */
  it.each([
    [277.13, 999.97],
    [283.15, 999.7],
    [293.15, 998.21],
    [303.15, 995.65],
  ])('density at %d K', (temperature_K, density) => {
    expect(Math.abs(waterDensity(temperature_K) - density)).toBeLessThan(0.01);
  });
  it('one millimetre at 20 C is 9.789 Pa', () => {
    const column = { rise_m: 0.001, tube_m: null, vessel_m: null, temperature_K: 293.15 };
    expect(waterColumn(column)).toBeCloseTo(9.789, 3);
  });
  it('a U-tube counts both limbs, a wide vessel one', () => {
    const column = (vessel_m: number) =>
      waterColumn({ rise_m: 0.1, tube_m: 0.01, vessel_m, temperature_K: 293.15 });
    expectRelative(column(0.01), 2 * 978.9, 1e-4);
    // 10 mm in 100 mm: the level sinks by a hundredth of the rise
    expectRelative(column(0.1), 1.01 * 978.9, 1e-4);
  });
});

describe('pressure at the tap', () => {
  /** By hand: 0.1 m3/s in 100 mm is 12.732 m/s, 97.27 Pa. */
  it('a duct holds velocity pressure, a box none', () => {
    const tap = { suction_Pa: 1000, massFlow_kgs: 0.12, density_kgm3: 1.2 };
    expect(fanStaticPressure({ ...tap, duct_m: 0.1 })).toBeCloseTo(1000 - 97.27, 1);
    expect(fanStaticPressure({ ...tap, duct_m: null })).toBe(1000);
  });
});
