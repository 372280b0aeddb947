import { describe, expect, it } from 'vitest';
import { orificeLeakCoefficient, stackExit, weatherCapCoefficient } from '../../core/fittings/exit.ts';
import { suddenExpansion } from '../../core/fittings/size-change.ts';
import { expectRelative } from './relative.ts';

describe('exits', () => {
  it('plain exit is the step loss into a space without bound (limit)', () => {
    expect(suddenExpansion(1, 1e5).k).toBeCloseTo(stackExit().k, 8);
  });

  // ACGIH figure 5-15, from memory; what the cap adds to the exit's velocity pressure.
  it.each([
    [1, 0.1],
    [0.75, 0.18],
    [0.7, 0.22],
    [0.65, 0.3],
    [0.6, 0.41],
    [0.55, 0.56],
    [0.5, 0.73],
    [0.45, 1],
  ])('weather cap at gap %f', (gap, added) => {
    expectRelative(weatherCapCoefficient(gap).k, 1 + added, 1e-12);
  });

  // By hand, discharge coefficient 0.60, density 1.2: a 20 mm hole at 2000 Pa passes 39.2 m3/h, a 50 mm hole at 500 Pa 122.
  it.each([
    [0.02, 2000, 39.2, 0.05],
    [0.05, 500, 122, 0.5],
    [0.01, 10000, 21.9, 0.05],
  ])('hole of %f m at %f Pa passes %f m3/h, to its last digit', (diameter_m, suction_Pa, flow_m3h, half) => {
    const velocity = Math.sqrt((2 * suction_Pa) / 1.2 / orificeLeakCoefficient(0.6).k);
    expect(Math.abs(velocity * ((Math.PI * diameter_m ** 2) / 4) * 3600 - flow_m3h)).toBeLessThanOrEqual(
      half,
    );
  });
});
