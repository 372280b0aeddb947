import { describe, expect, it } from 'vitest';
import { fanStaticPressure } from '../../core/fan/tests/tapped-suction.ts';
import { pitotMeanVelocity, traversePlaces, traverseProfileError } from '../../core/fan/tests/traverse.ts';
import { waterColumn, waterDensity } from '../../core/fan/tests/water-gauge.ts';
import { against } from './ledger.ts';

/** Distances from the wall over the diameter. */
describe('traverse', () => {
  const printedPlaces = against({
    relation: 'traversePlaces',
    source: 'ISO 3966 as instrument manuals print it with three decimals: log-linear, 6, 8 and 10 points',
    basis: 'published',
    kind: 'value',
  });
  const rememberedPlaces = against({
    relation: 'traversePlaces',
    source: 'ISO 3966: log-linear with 4 points, log-Tchebycheff',
    basis: 'from-memory',
    kind: 'value',
  });
  const seventhRoot = against({
    relation: ['traversePlaces', 'pitotMeanVelocity'],
    source: 'mean of a seventh-root profile over the disc, integrated by hand: 98/120 of that on the axis',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const roots = against({
    relation: 'pitotMeanVelocity',
    source: 'by hand: 60 and 240 Pa are 10 and 20 m/s',
    basis: 'hand-calculation',
    kind: 'value',
  });
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
    const check = rule === 'log-linear' && points > 4 ? printedPlaces : rememberedPlaces;
    found.forEach((place, i) =>
      check.withinAbsolute(place / 0.2, places[i]!, 0.00051, { unit: 'of the diameter' }),
    );
  });
  it.each(PRINTED)(
    '%s, %i points: mean of a seventh-root profile within 1 %% of the exact one',
    (rule, points) => {
      // mean over the disc of (1 - r)^(1/7) by hand: 2 n^2/((n + 1)(2 n + 1)) with n = 7
      const exact = (2 * 49) / (8 * 15);
      const heads = traversePlaces(1, rule, points).map(
        (y) => 0.5 * 1.2 * (2 * Math.min(y, 1 - y)) ** (2 / 7),
      );
      seventhRoot.within(pitotMeanVelocity(heads, 1.2), exact, 0.01);
    },
  );
  it('means the roots, not the pressures', () => {
    roots.withinAbsolute(pitotMeanVelocity([60, 240], 1.2), (10 + 20) / 2, 5e-13, { unit: 'm/s' });
  });
  it('more points never bring a larger error', () => {
    const errors = Array.from({ length: 30 }, (_, i) => traverseProfileError(i + 1));
    errors.slice(1).forEach((error, i) => expect(error).toBeLessThanOrEqual(errors[i]!));
  });
});

describe('water gauge', () => {
  const density = against({
    relation: 'waterDensity',
    source: 'CRC handbook, density of water at one atmosphere to 0.01 kg/m3',
    basis: 'from-memory',
    kind: 'value',
  });
  const table = against({
    relation: 'waterDensity',
    source: 'a page with the usual table of the density of water, four decimals',
    basis: 'published',
    kind: 'value',
  });
  const millimetre = against({
    relation: 'waterColumn',
    source: 'by hand: 1 mm of water at 20 degC is 9.789 Pa',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const limbs = against({
    relation: 'waterColumn',
    source: 'by hand: both limbs of a U-tube count, in a vessel of ten tubes across one and a hundredth',
    basis: 'hand-calculation',
    kind: 'value',
  });
  it.each([
    [277.13, 999.97],
    [283.15, 999.7],
    [293.15, 998.21],
    [303.15, 995.65],
  ])('density at %d K', (temperature_K, density_kgm3) => {
    density.withinAbsolute(waterDensity(temperature_K), density_kgm3, 0.01, { unit: 'kg/m3' });
  });
  it.each([
    [0, 999.8395],
    [4, 999.972],
    [10, 999.7026],
    [15, 999.1026],
    [20, 998.2071],
    [22, 997.7735],
    [25, 997.0479],
    [30, 995.6502],
  ])('printed density at %d degC', (celsius, density_kgm3) => {
    table.withinAbsolute(waterDensity(celsius + 273.15), density_kgm3, 0.01, { unit: 'kg/m3' });
  });
  it('one millimetre at 20 C is 9.789 Pa', () => {
    const column = { rise_m: 0.001, tube_m: null, vessel_m: null, temperature_K: 293.15 };
    millimetre.withinAbsolute(waterColumn(column), 9.789, 5e-4, { unit: 'Pa' });
  });
  it('a U-tube counts both limbs, a wide vessel one', () => {
    const column = (vessel_m: number) =>
      waterColumn({ rise_m: 0.1, tube_m: 0.01, vessel_m, temperature_K: 293.15 });
    limbs.within(column(0.01), 2 * 978.9, 1e-4);
    // 10 mm in 100 mm: the level sinks by a hundredth of the rise
    limbs.within(column(0.1), 1.01 * 978.9, 1e-4);
  });
});

describe('pressure at the tap', () => {
  const byHand = against({
    relation: 'fanStaticPressure',
    source: 'by hand: 1000 Pa of suction less 97.27 Pa of velocity pressure, 0.1 m3/s in 100 mm',
    basis: 'hand-calculation',
    kind: 'value',
  });
  /** By hand: 0.1 m3/s in 100 mm is 12.732 m/s, 97.27 Pa. */
  it('a duct holds velocity pressure, a box none', () => {
    const tap = { suction_Pa: 1000, massFlow_kgs: 0.12, density_kgm3: 1.2 };
    byHand.withinAbsolute(fanStaticPressure({ ...tap, duct_m: 0.1 }), 1000 - 97.27, 0.05, { unit: 'Pa' });
    byHand.holds(fanStaticPressure({ ...tap, duct_m: null }) === 1000, 'a box takes nothing off');
  });
});
