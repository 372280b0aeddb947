import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIMENSION_NAMES, DIMENSIONS, type Dimension } from '../../../core/quantities/dimensions.ts';
import {
  checkName,
  parseQuantity,
  requireQuantity,
  type NamedValues,
} from '../../../core/quantities/parse.ts';
import { QuantityError, type QuantityReason } from '../../../core/quantities/quantity-error.ts';

const FIELD = 'Length of duct';

function si(text: string, dimension: Dimension, names?: NamedValues): number {
  return requireQuantity(text, dimension, names ? { field: FIELD, names } : { field: FIELD });
}

function refusal(text: string, dimension: Dimension, names?: NamedValues): QuantityError {
  const parsed = parseQuantity(text, dimension, names ? { field: FIELD, names } : { field: FIELD });
  if (parsed.ok) throw new Error(`${text} was read as ${parsed.si}`);
  expect(parsed.error).toBeInstanceOf(QuantityError);
  return parsed.error;
}

describe('parseQuantity reads what a person types', () => {
  // Expected values follow by hand from the exact definitions: inch 25.4 mm, pound 0.45359237 kg, ft3 0.3048^3 m3.
  const READ: readonly (readonly [string, Dimension, number])[] = [
    ['4 in', 'length', 0.1016],
    ['4in', 'length', 0.1016],
    ['4 in.', 'length', 0.1016],
    ['103 mm', 'length', 0.103],
    ['2 ft + 3 in', 'length', 0.6858],
    ['2 ft 3 in', 'length', 0.6858],
    [`2' 3"`, 'length', 0.6858],
    [`2′ 3 1/2″`, 'length', 0.6985],
    ['-2 ft 3 in', 'length', -0.6858],
    ['2 * (1 ft 3 in)', 'length', 0.762],
    ['8 ft 6 1/2 in', 'length', 2.6035],
    ['3/4 in', 'length', 0.01905],
    ['2 1/2 in', 'length', 0.0635],
    ['-1/2 in', 'length', -0.0127],
    ['2*1.2 m', 'length', 2.4],
    ['2 × 1.2 m', 'length', 2.4],
    ['2(3 m)', 'length', 6],
    ['1e-3 km', 'length', 1],
    ['300 mm * 200 mm', 'area', 0.06],
    ['(20 cm)^2', 'area', 0.04],
    ['6 ft²', 'area', 0.55741824],
    ['60 l', 'volume', 0.06],
    ['350 cfm', 'flow', 0.16518160512],
    ['120 m3/h', 'flow', 1 / 30],
    ['120 m³/h', 'flow', 1 / 30],
    ['160 l/s', 'flow', 0.16],
    ['2.5 inH2O', 'pressure', 622.705],
    ['2.5 in wg', 'pressure', 622.705],
    ['2.5 in. WC', 'pressure', 622.705],
    ['2.5" wg', 'pressure', 622.705],
    ['40 mmH2O', 'pressure', 392.2552],
    ['16 oz/in2', 'pressure', 6894.757293168361],
    ['1 lb/in^2', 'pressure', 6894.757293168361],
    ['12 mbar', 'pressure', 1200],
    ['0.2 bar', 'pressure', 20000],
    ['18 m/s', 'velocity', 18],
    ['3500 fpm', 'velocity', 17.78],
    ['3500 ft/min', 'velocity', 17.78],
    ['12 g/min', 'massFlow', 0.0002],
    ['20 C', 'temperature', 293.15],
    ['20 degC', 'temperature', 293.15],
    ['20 °C', 'temperature', 293.15],
    ['-40 C', 'temperature', 233.15],
    ['-40 F', 'temperature', 233.15],
    ['68 F', 'temperature', 293.15],
    ['68 degF', 'temperature', 293.15],
    ['293 K', 'temperature', 293],
    ['45 deg', 'angle', Math.PI / 4],
    ['45°', 'angle', Math.PI / 4],
    ['3000 rpm', 'speed', 3000],
    ['50 rev/s', 'speed', 3000],
    ['50 %', 'fraction', 0.5],
    ['0.5', 'fraction', 0.5],
    ['10 % + 0.05', 'fraction', 0.15],
    ['1.8', 'coefficient', 1.8],
    ['2^3', 'coefficient', 8],
    ['550 W', 'power', 550],
    ['0.75 hp', 'power', 559.2749],
    ['12 A', 'current', 12],
    ['48 V', 'voltage', 48],
    ['48 V * 2 A', 'power', 96],
    ['1.5 h', 'time', 5400],
    ['2000 Pa s/m', 'filterDrag', 2000],
    ['0.01 in wg/fpm', 'filterDrag', 490.3189],
    ['5 1/s', 'cakeResistance', 5],
    ['1.2e5/s', 'cakeResistance', 120000],
    ['250 g/m2', 'arealDensity', 0.25],
    ['1.2 kWh', 'energy', 4.32e6],
    ['16 oz/in2', 'arealDensity', 0.45359237 / 0.0254 ** 2],
  ];
  it.each(READ)('%s as %s', (text, dimension, expected) => {
    expect(si(text, dimension) / expected).toBeCloseTo(1, 6);
  });

  it('gives the nearest double, so that files and screens show what was typed', () => {
    expect(si('103 mm', 'length')).toBe(0.103);
    expect(si('2.5 in wg', 'pressure')).toBe(622.705);
    expect(si('68 F', 'temperature')).toBe(293.15);
  });

  it('returns the number itself for every SI unit', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...DIMENSION_NAMES),
        fc.double({ min: 1e-6, max: 1e9, noNaN: true }),
        (dimension, value) => {
          expect(si(`${value} ${DIMENSIONS[dimension].siUnit}`, dimension)).toBe(value);
        },
      ),
      { seed: 11 },
    );
  });

  it.each(
    DIMENSION_NAMES.flatMap((name) => DIMENSIONS[name].examples.map((example) => [name, example] as const)),
  )('reads its own example for %s: %s', (dimension, example) => {
    expect(Number.isFinite(si(example, dimension))).toBe(true);
  });
});

describe('parseQuantity refuses with a reason', () => {
  const REFUSED: readonly (readonly [string, Dimension, QuantityReason])[] = [
    ['', 'length', 'empty'],
    [' \t', 'length', 'empty'],
    ['4 +', 'length', 'syntax'],
    ['(4 m', 'length', 'syntax'],
    ['4 5 m', 'length', 'syntax'],
    ['1/2 1/2 in', 'length', 'syntax'],
    ['4 ft 3 ft', 'area', 'syntax'],
    ['in', 'length', 'syntax'],
    ['2 ft + in', 'length', 'syntax'],
    ['4 mM', 'length', 'unknown-name'],
    ['4 kg', 'length', 'wrong-dimension'],
    ['20 C', 'length', 'wrong-dimension'],
    ['2 m', 'temperature', 'wrong-dimension'],
    ['2 ft + 3 kg', 'length', 'wrong-dimension'],
    ['2 m^4', 'area', 'wrong-dimension'],
    ['2 ^ (3 m)', 'length', 'wrong-dimension'],
    ['300 rad/s', 'speed', 'wrong-dimension'],
    ['5', 'length', 'needs-unit'],
    ['20', 'temperature', 'needs-unit'],
    ['2 ft + 3', 'length', 'needs-unit'],
    ['1/0', 'coefficient', 'not-finite'],
    ['1e999 m', 'length', 'not-finite'],
    ['1e999 C', 'temperature', 'not-finite'],
    ['9^9^9', 'coefficient', 'not-finite'],
    ['1e200 m * 1e200', 'length', 'not-finite'],
    ['(-1)^0.5', 'coefficient', 'not-finite'],
    ['(2 m)^0.5', 'length', 'not-allowed'],
    ['20 C + 5 C', 'temperature', 'not-allowed'],
    ['2 * 20 C', 'temperature', 'not-allowed'],
    ['-300 C', 'temperature', 'not-allowed'],
    ['2,5 m', 'length', 'comma'],
    ['1,000 mm', 'length', 'comma'],
  ];
  it.each(REFUSED)('%j as %s: %s', (text, dimension, reason) => {
    const error = refusal(text, dimension);
    expect(error.reason).toBe(reason);
    expect(error.field).toBe(FIELD);
    expect(error.typed).toBe(text.trim());
  });

  it('says what was typed, what it is, and what would fit', () => {
    expect(refusal('4 kg', 'length').message).toBe(
      'Length of duct: `4 kg` is a mass; a length fits, such as 4 in, 100 mm or 2 ft + 3 in',
    );
    expect(refusal('2,5 m', 'length').message).toContain('with a point');
    expect(refusal('4 mM', 'length').message).toContain('perhaps mm');
    expect(refusal('5', 'flow').fits).toBe('a flow fits, such as 350 cfm, 600 m3/h or 160 l/s');
  });

  it('throws the same error from the throwing variant', () => {
    expect(() => requireQuantity('4 kg', 'length', { field: FIELD })).toThrow(QuantityError);
  });
});

describe('named values', () => {
  const names: NamedValues = new Map([
    ['reach', { si: 2.4, dimension: 'length' }],
    ['room', { si: 293.15, dimension: 'temperature' }],
    ['idle', { si: 1500, dimension: 'speed' }],
    ['m', { si: 99, dimension: 'length' }],
    ['broken', { si: Number.NaN, dimension: 'length' }],
  ] as const);

  it('are used with their kind', () => {
    expect(si('reach + 300 mm', 'length', names)).toBeCloseTo(2.7, 12);
    expect(si('reach', 'length', names)).toBe(2.4);
    expect(si('room', 'temperature', names)).toBe(293.15);
    expect(si('2 idle', 'speed', names)).toBe(3000);
    expect(refusal('reach', 'mass', names).reason).toBe('wrong-dimension');
    expect(refusal('room + room', 'temperature', names).reason).toBe('not-allowed');
    expect(refusal('reach(2)', 'length', names).reason).toBe('not-allowed');
  });

  it('are case sensitive, cannot shadow a unit, and cannot bring in what is not finite', () => {
    expect(refusal('Reach', 'length', names).reason).toBe('unknown-name');
    expect(si('1 m', 'length', names)).toBe(1);
    expect(refusal('broken', 'length', names).reason).toBe('not-finite');
  });

  it('may only have safe names', () => {
    for (const good of ['reach', 'Reach2', 'saw_drop', 'h2']) expect(checkName(good)).toBeNull();
    const bad = ['m', 'in', 'C', 'wg', 'H2O', 'mod', 'to', 'pi', 'e', 'constructor', 'toString', '__proto__'];
    const shape = ['2m', 'a b', 'a.b', 'é', 'x'.repeat(41), 'x'.repeat(100_000), '_a'];
    for (const name of [...bad, ...shape]) expect(checkName(name)?.reason, name).toBe('not-allowed');
    expect(checkName('')?.reason).toBe('empty');
  });
});
