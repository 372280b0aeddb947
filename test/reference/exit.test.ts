import { describe, it } from 'vitest';
import { orificeLeakCoefficient, stackExit, weatherCapCoefficient } from '../../core/fittings/exit.ts';
import { suddenExpansion } from '../../core/fittings/size-change.ts';
import { against } from './ledger.ts';

describe('exits', () => {
  const wide = against({
    relation: 'stackExit',
    source: 'step into a space 100 000 times as wide',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const figure = against({
    relation: 'weatherCapCoefficient',
    source: 'ACGIH figure 5-15, what the cap adds',
    basis: 'from-memory',
    kind: 'value',
  });
  const hole = against({
    relation: 'orificeLeakCoefficient',
    source: 'holes of 10 and 20 mm by hand, discharge coefficient 0.60: 21.9 and 39.2 m3/h',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const largeHole = against({
    relation: 'orificeLeakCoefficient',
    source: 'a hole of 50 mm at 500 Pa by hand, discharge coefficient 0.60: 122 m3/h',
    basis: 'hand-calculation',
    kind: 'value',
  });

  it('plain exit is the step loss into a space without bound (limit)', () => {
    wide.withinAbsolute(stackExit().k, suddenExpansion(1, 1e5).k, 5e-9);
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
    figure.within(weatherCapCoefficient(gap).k, 1 + added, 1e-12);
  });

  // By hand, discharge coefficient 0.60, density 1.2: a 20 mm hole at 2000 Pa passes 39.2 m3/h, a 50 mm hole at 500 Pa 122.
  it.each([
    [hole, 0.02, 2000, 39.2, 0.05],
    [largeHole, 0.05, 500, 122, 0.5],
    [hole, 0.01, 10000, 21.9, 0.05],
  ] as const)('$0.claim.source, to the last digit', (check, diameter_m, suction_Pa, flow_m3h, half) => {
    const velocity = Math.sqrt((2 * suction_Pa) / 1.2 / orificeLeakCoefficient(0.6).k);
    const passed_m3h = velocity * ((Math.PI * diameter_m ** 2) / 4) * 3600;
    check.withinAbsolute(passed_m3h, flow_m3h, half, { unit: 'm3/h' });
  });
});
