/**
 * Unit factors against the table of NIST SP 811, Guide for the Use of the SI, App. B (pages not seen: from memory),
 * against a second route by hand, and against the unit table of a general formula library.
 */
import { unit } from 'mathjs';
import { describe, it } from 'vitest';
import type { Dimension } from '../../core/quantities/dimensions.ts';
import { requireQuantity } from '../../core/quantities/parse.ts';
import { against } from './ledger.ts';

const read = (text: string, dimension: Dimension): number =>
  requireQuantity(text, dimension, { field: text });

describe('NIST SP 811 App. B factors (from memory)', () => {
  const factors = against({
    relation: 'core/quantities/parse.ts#requireQuantity',
    source: 'NIST SP 811, App. B: factors of 35 units, to the last digit printed',
    basis: 'from-memory',
    kind: 'value',
  });

  // The third column is the printed value, with all its digits; the check is half a unit of the last one.
  const PRINTED: readonly (readonly [string, Dimension, string])[] = [
    ['1 inH2O', 'pressure', '249.082'], // inch of water (39.2 F)
    ['1 mmH2O', 'pressure', '9.80638'], // centimetre of water (4 C) 98.0638 Pa
    ['1 inHg', 'pressure', '3386.389'], // inch of mercury, conventional
    ['1 mmHg', 'pressure', '133.3224'],
    ['1 psi', 'pressure', '6894.757'],
    ['1 oz/in2', 'pressure', '430.922'],
    ['1 bar', 'pressure', '100000'],
    ['1 mbar', 'pressure', '100'],
    ['1 atm', 'pressure', '101325'],
    ['1 cfm', 'flow', '4.719474e-4'],
    ['1 fpm', 'velocity', '0.00508'],
    ['1 mph', 'velocity', '0.44704'],
    ['1 in', 'length', '0.0254'],
    ['1 ft', 'length', '0.3048'],
    ['1 yd', 'length', '0.9144'],
    ['1 ft2', 'area', '0.09290304'],
    ['1 in2', 'area', '6.4516e-4'],
    ['1 yd2', 'area', '0.83612736'],
    ['1 ft3', 'volume', '0.02831685'],
    ['1 in3', 'volume', '1.638706e-5'],
    ['1 gal', 'volume', '3.785412e-3'],
    ['1 lb', 'mass', '0.45359237'],
    ['1 oz', 'mass', '0.02834952'],
    ['1 grain', 'mass', '6.479891e-5'],
    ['1 lb/ft3', 'density', '16.01846'],
    ['1 oz/yd2', 'arealDensity', '3.390575e-2'],
    ['1 lb/h', 'massFlow', '1.259979e-4'],
    ['1 hp', 'power', '745.6999'],
    ['1 ft lbf', 'energy', '1.355818'],
    ['1 kWh', 'energy', '3.6e6'],
    ['1 cP', 'viscosity', '0.001'],
    ['1 deg', 'angle', '0.01745329'],
    ['1 rev/s', 'speed', '60'],
    ['32 F', 'temperature', '273.15'],
    ['212 F', 'temperature', '373.15'],
  ];
  it.each(PRINTED)('%s as %s is %s', (text, dimension, printed) => {
    const [mantissa, exponent = '0'] = printed.split('e');
    const decimals = mantissa!.split('.')[1]?.length ?? 0;
    const half = 0.5 * 10 ** (Number(exponent) - decimals);
    // A value with few printed digits is exact; the bound is then rounding of doubles.
    const exact = mantissa!.replace('.', '').replace(/^0+/, '').length < 6;
    const bound = exact ? Number(printed) * 1e-14 : half;
    const stated = 'half a unit of the last digit';
    factors.within(read(text, dimension), Number(printed), bound / Number(printed), { stated });
  });
});

describe('second routes', () => {
  const column = against({
    relation: 'core/quantities/parse.ts#requireQuantity',
    source: 'a column of water, density x gravity x height at 4 C',
    basis: 'from-memory',
    kind: 'second-route',
  });
  const tradeConstant = against({
    relation: 'core/quantities/parse.ts#requireQuantity',
    source: 'the trade’s 4005 ft/min for one inch of water, water at 4 C in place of 20 C',
    basis: 'from-memory',
    kind: 'second-route',
  });
  const library = against({
    relation: 'core/quantities/parse.ts#requireQuantity',
    source: 'unit table of a general formula library, 13 units',
    basis: 'independent-program',
    kind: 'value',
  });

  it('an inch of water is density x gravity x height, water at 4 C being 999.972 kg/m3', () => {
    const column_Pa = 999.972 * 9.80665 * 0.0254; // CIPM water tables give 999.972 to 999.975 (from memory)
    column.within(read('1 in wg', 'pressure'), column_Pa, 5e-6);
    column.within(read('25.4 mm wg', 'pressure'), column_Pa, 5e-6);
  });

  it('1 in wg is the velocity pressure of air of 0.075 lb/ft3 at 4005 fpm, but for the water temperature', () => {
    // The trade's 4005 holds for water at 20 C, 998.207 kg/m3 (handbook value); ours is 999.972 kg/m3 at 4 C.
    const pressure_Pa = 0.5 * read('0.075 lb/ft3', 'density') * read('4005 fpm', 'velocity') ** 2;
    const waterRatio = 999.972 / 998.207;
    const roundingOf4005 = (2 * 0.5) / 4005;
    tradeConstant.within(read('1 in wg', 'pressure'), pressure_Pa * waterRatio, roundingOf4005, {
      stated: 'rounding of 4005',
    });
  });

  it('agrees with the unit table of the formula library', () => {
    // Its horsepower and pound-force per square inch carry about ten digits. Left out: mmHg, which it
    // rounds to 133.322 Pa, 3e-6 off the printed factor above.
    const same: readonly (readonly [string, Dimension, string, string])[] = [
      ['1 in', 'length', 'inch', 'm'],
      ['1 ft', 'length', 'ft', 'm'],
      ['1 thou', 'length', 'mil', 'm'],
      ['1 gal', 'volume', 'gallon', 'm3'],
      ['1 lb', 'mass', 'lbm', 'kg'],
      ['1 oz', 'mass', 'oz', 'kg'],
      ['1 grain', 'mass', 'grain', 'kg'],
      ['1 psi', 'pressure', 'psi', 'Pa'],
      ['1 hp', 'power', 'hp', 'W'],
      ['1 week', 'time', 'week', 's'],
      ['45 deg', 'angle', '45 deg', 'rad'],
      ['70 F', 'temperature', '70 degF', 'K'],
      ['1 ft lbf', 'energy', 'ft lbf', 'J'],
    ];
    for (const [text, dimension, theirs, siUnit] of same) {
      const other = unit(/^\d/.test(theirs) ? theirs : `1 ${theirs}`).toNumber(siUnit);
      library.within(read(text, dimension), other, 1e-8);
    }
  });
});
