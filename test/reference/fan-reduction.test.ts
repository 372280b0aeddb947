import fc from 'fast-check';
import { describe, it } from 'vitest';
import { airPower } from '../../core/fan/air-power.ts';
import { fanCurve, scaleFan } from '../../core/fan/fan-curve.ts';
import { coefficientScales, outletVelocityPressure } from '../../core/fan/reduce/coefficients.ts';
import { against } from './ledger.ts';

describe('coefficients', () => {
  const flow = against({
    relation: 'coefficientScales',
    source:
      'Eck, Fans, 1973, worked by hand: flow of a 200 mm wheel at 6000 rpm, 62.832 m/s over 0.0314159 m2',
    basis: 'from-memory',
    kind: 'value',
  });
  const pressure = against({
    relation: 'coefficientScales',
    source:
      'Eck, Fans, 1973, worked by hand: pressure of a 200 mm wheel at 6000 rpm, half of 1.2 times 62.832 squared',
    basis: 'from-memory',
    kind: 'value',
  });
  const power = against({
    relation: 'coefficientScales',
    source: 'Eck, Fans, 1973: power is flow times pressure',
    basis: 'from-memory',
    kind: 'value',
  });
  const affinity = against({
    relation: 'coefficientScales',
    source: 'the fan laws: a fan scaled by them keeps its coefficients',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const printedLaws = against({
    relation: 'coefficientScales',
    source: 'fan laws as a page prints them, N D^3, rho N^2 D^2, rho N^3 D^5, at ratios by hand',
    basis: 'published',
    kind: 'value',
  });
  const efficiency = against({
    relation: 'coefficientScales',
    source: 'efficiency is air power over power, and phi psi over lambda',
    basis: 'hand-calculation',
    kind: 'second-route',
  });

  /** By hand: 200 mm at 6000 rpm has 62.832 m/s at the tip. */
  it('by hand', () => {
    const scales = coefficientScales({ wheelDiameter_m: 0.2, speed_rpm: 6000, density_kgm3: 1.2 });
    flow.withinAbsolute(scales.flow_m3s, 62.832 * 0.0314159, 5e-5, { unit: 'm3/s' });
    pressure.withinAbsolute(scales.pressure_Pa, 0.6 * 62.832 ** 2, 0.05, { unit: 'Pa' });
    power.within(scales.power_W, scales.flow_m3s * scales.pressure_Pa, 1e-15);
  });

  /** Half speed, twice the size, density of 1.0 for 1.2: flow 8/2 = 4, pressure 4/4/1.2, power 32/8/1.2. */
  it('go as the laws say', () => {
    const one = coefficientScales({ wheelDiameter_m: 0.2, speed_rpm: 6000, density_kgm3: 1.2 });
    const two = coefficientScales({ wheelDiameter_m: 0.4, speed_rpm: 3000, density_kgm3: 1.0 });
    printedLaws.within(two.flow_m3s / one.flow_m3s, 4, 1e-14);
    printedLaws.within(two.pressure_Pa / one.pressure_Pa, 1 / 1.2, 1e-14);
    printedLaws.within(two.power_W / one.power_W, 4 / 1.2, 1e-14);
  });

  it('a fan scaled by the affinity laws keeps its coefficients', () => {
    const ratio = fc.double({ min: 0.5, max: 2, noNaN: true });
    fc.assert(
      fc.property(ratio, ratio, ratio, (speedRatio, diameterRatio, densityRatio) => {
        const points = [
          { flow_m3s: 0.05, pressure_Pa: 2000, power_W: 200 },
          { flow_m3s: 0.1, pressure_Pa: 1000, power_W: 260 },
        ];
        const rated = { ratedSpeed_rpm: 4000, ratedDensity_kgm3: 1.2 };
        const fan = fanCurve({ pressureKind: 'static', outletArea_m2: 0.01, points, ...rated });
        const other = scaleFan(fan, { speedRatio, diameterRatio, densityRatio }).input;
        const one = coefficientScales({ wheelDiameter_m: 0.25, speed_rpm: 4000, density_kgm3: 1.2 });
        const two = coefficientScales({
          wheelDiameter_m: 0.25 * diameterRatio,
          speed_rpm: 4000 * speedRatio,
          density_kgm3: 1.2 * densityRatio,
        });
        other.points.forEach((point, i) => {
          const before = points[i]!;
          affinity.within(point.flow_m3s / two.flow_m3s, before.flow_m3s / one.flow_m3s, 1e-12);
          affinity.within(point.pressure_Pa / two.pressure_Pa, before.pressure_Pa / one.pressure_Pa, 1e-12);
          affinity.within(point.power_W! / two.power_W, before.power_W / one.power_W, 1e-12);
        });
      }),
      { seed: 4101 },
    );
  });

  it('efficiency is phi psi over lambda', () => {
    const scales = coefficientScales({ wheelDiameter_m: 0.2, speed_rpm: 6000, density_kgm3: 1.2 });
    const [flow_m3s, pressure_Pa, power_W] = [0.1, 2000, 450];
    const phi = flow_m3s / scales.flow_m3s;
    const psi = pressure_Pa / scales.pressure_Pa;
    efficiency.within(
      (phi * psi) / (power_W / scales.power_W),
      airPower(flow_m3s, pressure_Pa) / power_W,
      1e-12,
    );
  });
});

describe('velocity pressure of the outlet', () => {
  const byHand = against({
    relation: 'outletVelocityPressure',
    source: 'by hand: 0.1 m3/s through 100 mm is 12.732 m/s, half of 1.2 times its square 97.27 Pa',
    basis: 'hand-calculation',
    kind: 'value',
  });

  it('by hand', () => {
    byHand.withinAbsolute(outletVelocityPressure(0.1, 0.1, 1.2), 97.27, 0.005, { unit: 'Pa' });
  });
});
