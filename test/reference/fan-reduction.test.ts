import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airPower } from '../../core/fan/air-power.ts';
import { fanCurve, scaleFan } from '../../core/fan/fan-curve.ts';
import { coefficientScales, outletVelocityPressure } from '../../core/fan/reduce/coefficients.ts';
import { expectRelative } from './relative.ts';

/** Source: Eck, Fans, 1973, definitions, from memory; by hand: 200 mm at 6000 rpm has 62.832 m/s at the tip. */
describe('coefficients', () => {
  it('by hand', () => {
    const scales = coefficientScales({ wheelDiameter_m: 0.2, speed_rpm: 6000, density_kgm3: 1.2 });
    expect(scales.flow_m3s).toBeCloseTo(62.832 * 0.0314159, 4);
    expect(scales.pressure_Pa).toBeCloseTo(0.6 * 62.832 ** 2, 1);
    expectRelative(scales.power_W, scales.flow_m3s * scales.pressure_Pa, 1e-15);
  });

  /** Source: fan laws of AMCA 210 / ISO 5801: Q ~ n D^3, p ~ rho n^2 D^2, P ~ rho n^3 D^5; `scaleFan` is the second route. */
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
          expectRelative(point.flow_m3s / two.flow_m3s, before.flow_m3s / one.flow_m3s, 1e-12);
          expectRelative(point.pressure_Pa / two.pressure_Pa, before.pressure_Pa / one.pressure_Pa, 1e-12);
          expectRelative(point.power_W! / two.power_W, before.power_W / one.power_W, 1e-12);
        });
      }),
      { seed: 4101 },
    );
  });

  it('efficiency is phi psi over lambda', () => {
    const scales = coefficientScales({ wheelDiameter_m: 0.2, speed_rpm: 6000, density_kgm3: 1.2 });
    const [flow, pressure, power] = [0.1, 2000, 450];
    const byShares = ((flow / scales.flow_m3s) * (pressure / scales.pressure_Pa)) / (power / scales.power_W);
    expectRelative(byShares, airPower(flow, pressure) / power, 1e-12);
  });

  /** By hand: 0.1 m3/s through 100 mm is 12.732 m/s; half of 1.2 times its square is 97.27 Pa. */
  it('velocity pressure of the outlet', () => {
    expect(outletVelocityPressure(0.1, 0.1, 1.2)).toBeCloseTo(97.27, 2);
  });
});
