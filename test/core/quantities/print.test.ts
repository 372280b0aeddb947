import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DIMENSION_NAMES,
  DIMENSIONS,
  type Dimension,
  type UnitSystem,
} from '../../../core/quantities/dimensions.ts';
import { ImpossibleInput } from '../../../core/quantities/impossible-input.ts';
import { requireQuantity } from '../../../core/quantities/parse.ts';
import { displayUnit, NO_VALUE, printQuantity, toDisplay } from '../../../core/quantities/print.ts';

describe('printQuantity', () => {
  const PRINTED: readonly (readonly [number, Dimension, UnitSystem, string])[] = [
    [0.103, 'length', 'si', '103 mm'],
    [2.4, 'length', 'si', '2.40 m'],
    [0.1031, 'length', 'us', '4.06 in'],
    [3.048, 'length', 'us', '10.0 ft'],
    [5e-6, 'length', 'us', '5.00 um'],
    [0, 'length', 'si', '0 mm'],
    [-0, 'length', 'si', '0 mm'],
    [-0.103, 'length', 'si', '-103 mm'],
    [0.9999, 'length', 'si', '1000 mm'],
    [1250, 'pressure', 'si', '1.25 kPa'],
    [-622, 'pressure', 'si', '-622 Pa'],
    [622.705, 'pressure', 'us', '2.50 in wg'],
    [17.8816, 'velocity', 'us', '3520 fpm'],
    [17.8816, 'velocity', 'si', '17.9 m/s'],
    [0.16518, 'flow', 'us', '350 cfm'],
    [0.16518, 'flow', 'si', '595 m3/h'],
    [293.15, 'temperature', 'si', '20.0 °C'],
    [293.15, 'temperature', 'us', '68.0 °F'],
    [273.14, 'temperature', 'si', '0.0 °C'],
    [1.2, 'density', 'us', '0.0749 lb/ft3'],
    [1.81e-5, 'viscosity', 'si', '1.81e-5 Pa s'],
    [5e7, 'cakeResistance', 'us', '5.00e7 1/s'],
    [Math.PI / 4, 'angle', 'si', '45.0 deg'],
    [3456.7, 'speed', 'us', '3457 rpm'],
    [0.5, 'fraction', 'si', '50.0 %'],
    [0.5, 'coefficient', 'si', '0.500'],
    [5400, 'time', 'si', '90.0 min'],
  ];
  it.each(PRINTED)('%d %s in %s is %s', (si, dimension, system, expected) => {
    expect(printQuantity(si, dimension, system)).toBe(expected);
  });

  it('takes figures and a unit of the same kind', () => {
    expect(printQuantity(0.103, 'length', 'si', { digits: 2, unit: 'cm' })).toBe('10 cm');
    expect(printQuantity(300, 'temperature', 'si', { unit: 'K', digits: 0 })).toBe('300 K');
    expect(() => printQuantity(1, 'length', 'si', { unit: 'kg' })).toThrow(ImpossibleInput);
    expect(() => printQuantity(1, 'length', 'si', { unit: 'constructor' })).toThrow(ImpossibleInput);
    expect(() => printQuantity(1, 'temperature', 'si', { unit: 'm' })).toThrow(ImpossibleInput);
  });

  it('prints a dash where there is no number', () => {
    for (const none of [null, undefined, Number.NaN, Infinity, -Infinity]) {
      for (const dimension of DIMENSION_NAMES) expect(printQuantity(none, dimension, 'us')).toBe(NO_VALUE);
    }
  });

  it('can be typed back, within half of the last figure shown', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...DIMENSION_NAMES),
        fc.constantFrom<UnitSystem>('si', 'us'),
        fc.double({ min: -8, max: 9, noNaN: true }),
        fc.boolean(),
        (dimension, system, magnitude, negative) => {
          const row = DIMENSIONS[dimension];
          // Within a printed digit of absolute zero the text can stand for less than nothing: -459.7 F (seed 21202).
          const isTemperature = dimension === 'temperature';
          const si = isTemperature ? 1 + 10 ** magnitude : (negative ? -1 : 1) * 10 ** magnitude;
          const back = requireQuantity(printQuantity(si, dimension, system), dimension, { field: 'x' });
          const half =
            row.digitsAre === 'significant'
              ? Math.abs(si) * 0.5 * 10 ** (1 - row.digits)
              : 0.05 * (dimension === 'angle' ? Math.PI / 180 : 1);
          expect(Math.abs(back - si)).toBeLessThanOrEqual(half + Math.abs(si) * 1e-12 + 1e-12 * half);
        },
      ),
      { seed: 21, numRuns: 2000 },
    );
  });
});

describe('toDisplay and displayUnit', () => {
  it('agree with what the parser reads', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...DIMENSION_NAMES),
        fc.constantFrom<UnitSystem>('si', 'us'),
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        (dimension, system, value) => {
          const si = requireQuantity(`${value} ${displayUnit(dimension, system)}`, dimension, { field: 'x' });
          expect(toDisplay(si, dimension, system) / value).toBeCloseTo(1, 10);
        },
      ),
      { seed: 22 },
    );
  });

  it('name the unit of a column', () => {
    expect(displayUnit('length', 'si')).toBe('mm');
    expect(displayUnit('length', 'us')).toBe('in');
    expect(displayUnit('pressure', 'us')).toBe('in wg');
    expect(displayUnit('coefficient', 'us')).toBe('');
  });

  it('order the units of every kind from the smallest up', () => {
    for (const dimension of DIMENSION_NAMES) {
      for (const system of ['si', 'us'] as const) {
        const from = DIMENSIONS[dimension][system].map((unit) => unit.from);
        expect(from[0]).toBe(0);
        expect(from).toEqual([...from].sort((a, b) => a - b));
      }
    }
  });
});
