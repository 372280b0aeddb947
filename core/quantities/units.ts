import { multiplyPowers, type Powers } from './powers.ts';

/**
 * A number with its kind. The number is `numerator / denominator` in SI units (rpm for rotation): kept as two numbers
 * so that `103 mm` is 103 / 1000, the nearest double to 0.103, and not 103 times a rounded 0.001.
 */
export interface Measure {
  readonly numerator: number;
  readonly denominator: number;
  readonly powers: Powers;
}

/**
 * Pascal in one inch and one millimetre of water at 4 C (39.2 F), the density that water gauges were long calibrated to.
 * Conventions differ by up to 0.2 %: conventional water (1000 kg/m3) 249.0889, 60 F 248.84, 20 C 248.64 Pa. A home-made
 * water gauge is read far more coarsely than that; one convention is used everywhere so that typed, computed and
 * printed values agree. Source: NIST SP 811, App. B.8 (from memory).
 */
export const WATER_COLUMN_4C = { inch_Pa: 249.082, millimetre_Pa: 9.80638 } as const;

/** Pascal in one inch and one millimetre of mercury, conventional. Source: NIST SP 811, App. B.8 (from memory). */
export const MERCURY_COLUMN = { inch_Pa: 3386.389, millimetre_Pa: 133.3224 } as const;

const STANDARD_GRAVITY_MS2 = 9.80665; // exact by definition
const POUND_KG = 0.45359237; // exact by definition, international pound
const POUND_FORCE_N = POUND_KG * STANDARD_GRAVITY_MS2;
const INCH_M = 0.0254; // exact by definition, international inch
const CUBIC_FOOT_M3 = 0.028316846592; // exact: 0.3048^3
const US_GALLON_M3 = 0.003785411784; // exact: 231 in3

const LENGTH: Powers = { m: 1 };
const AREA: Powers = { m: 2 };
const VOLUME: Powers = { m: 3 };
const MASS: Powers = { kg: 1 };
const TIME: Powers = { s: 1 };
const FORCE: Powers = { kg: 1, m: 1, s: -2 };
const PRESSURE: Powers = { kg: 1, m: -1, s: -2 };
const ENERGY: Powers = { kg: 1, m: 2, s: -2 };
const POWER: Powers = { kg: 1, m: 2, s: -3 };
const VOLTAGE: Powers = { kg: 1, m: 2, s: -3, A: -1 };
const RESISTANCE: Powers = { kg: 1, m: 2, s: -3, A: -2 };

type UnitRow = readonly [names: string, powers: Powers, numerator: number, denominator?: number];

/** Every unit that a field understands: names, kind, SI value as numerator over denominator. No prefix is implied. */
const UNIT_ROWS: readonly UnitRow[] = [
  ['m metre metres meter meters', LENGTH, 1],
  ['mm', LENGTH, 1, 1000],
  ['cm', LENGTH, 1, 100],
  ['km', LENGTH, 1000],
  ['um micron microns', LENGTH, 1, 1e6],
  ['in inch inches', LENGTH, 254, 10_000],
  ['ft foot feet', LENGTH, 3048, 10_000],
  ['yd yard yards', LENGTH, 9144, 10_000],
  ['thou', LENGTH, 254, 1e7],
  ['m2', AREA, 1],
  ['cm2', AREA, 1, 10_000],
  ['mm2', AREA, 1, 1e6],
  ['in2 sqin', AREA, 64_516, 1e8],
  ['ft2 sqft', AREA, 9_290_304, 1e8],
  ['yd2 sqyd', AREA, 83_612_736, 1e8],
  ['m3', VOLUME, 1],
  ['l L litre litres liter liters', VOLUME, 1, 1000],
  ['ml mL cm3', VOLUME, 1, 1e6],
  ['mm3', VOLUME, 1, 1e9],
  ['in3 cuin', VOLUME, 16_387_064, 1e12],
  ['ft3 cuft', VOLUME, CUBIC_FOOT_M3],
  ['gal gallon gallons', VOLUME, US_GALLON_M3],
  ['rad', { rad: 1 }, 1],
  ['deg degree degrees', { rad: 1 }, Math.PI, 180],
  ['s sec second seconds', TIME, 1],
  ['ms', TIME, 1, 1000],
  ['min minute minutes', TIME, 60],
  ['h hr hour hours', TIME, 3600],
  ['d day days', TIME, 86_400],
  ['week weeks', TIME, 604_800],
  ['kg', MASS, 1],
  ['g', MASS, 1, 1000],
  ['mg', MASS, 1, 1e6],
  ['ug', MASS, 1, 1e9],
  ['t tonne tonnes', MASS, 1000],
  ['lb lbs pound pounds', MASS, POUND_KG],
  ['oz ounce ounces', MASS, POUND_KG, 16],
  ['gr grain grains', MASS, POUND_KG, 7000],
  ['N', FORCE, 1],
  ['kN', FORCE, 1000],
  ['lbf', FORCE, POUND_FORCE_N],
  ['ozf', FORCE, POUND_FORCE_N, 16],
  ['Pa', PRESSURE, 1],
  ['hPa', PRESSURE, 100],
  ['kPa', PRESSURE, 1000],
  ['MPa', PRESSURE, 1e6],
  ['mbar', PRESSURE, 100],
  ['bar', PRESSURE, 1e5],
  ['atm', PRESSURE, 101_325],
  ['psi PSI', PRESSURE, POUND_FORCE_N, INCH_M * INCH_M],
  ['osi', PRESSURE, POUND_FORCE_N, 16 * INCH_M * INCH_M],
  ['inH2O inh2o inwg inwc inWG inWC', PRESSURE, WATER_COLUMN_4C.inch_Pa * 1000, 1000],
  ['mmH2O mmh2o mmwg mmwc mmWG mmWC', PRESSURE, WATER_COLUMN_4C.millimetre_Pa * 100_000, 100_000],
  ['inHg', PRESSURE, MERCURY_COLUMN.inch_Pa],
  ['mmHg', PRESSURE, MERCURY_COLUMN.millimetre_Pa],
  ['cfm CFM', { m: 3, s: -1 }, CUBIC_FOOT_M3, 60],
  ['fpm FPM', { m: 1, s: -1 }, 3048, 600_000],
  ['mph', { m: 1, s: -1 }, 1609.344, 3600],
  ['cP', { kg: 1, m: -1, s: -1 }, 1, 1000],
  ['W watt watts', POWER, 1],
  ['mW', POWER, 1, 1000],
  ['kW', POWER, 1000],
  ['hp HP', POWER, 550 * 0.3048 * POUND_FORCE_N],
  ['J', ENERGY, 1],
  ['kJ', ENERGY, 1000],
  ['Wh', ENERGY, 3600],
  ['kWh', ENERGY, 3.6e6],
  ['A amp amps', { A: 1 }, 1],
  ['mA', { A: 1 }, 1, 1000],
  ['V volt volts', VOLTAGE, 1],
  ['mV', VOLTAGE, 1, 1000],
  ['ohm ohms', RESISTANCE, 1],
  ['mohm', RESISTANCE, 1, 1000],
  ['Hz', { s: -1 }, 1],
  ['kHz', { s: -1 }, 1000],
  ['rpm RPM', { turn: 1 }, 1],
  ['rps', { turn: 1 }, 60],
  ['rev revs', { turn: 1, s: 1 }, 60],
  ['percent', {}, 1, 100],
];

/** Units by the name that is typed. */
export const UNITS: ReadonlyMap<string, Measure> = new Map(
  UNIT_ROWS.flatMap(([names, powers, numerator, denominator = 1]) =>
    names.split(' ').map((name) => [name, { numerator, denominator, powers }] as const),
  ),
);

/** A temperature scale: `kelvin = (reading - mark) * numerator / denominator + markK`. */
export interface TemperatureScale {
  /** A reading, and the kelvin at that reading. */
  readonly mark: number;
  readonly markK: number;
  readonly numerator: number;
  readonly denominator: number;
}

const KELVIN: TemperatureScale = { mark: 0, markK: 0, numerator: 1, denominator: 1 };
const CELSIUS: TemperatureScale = { mark: 0, markK: 273.15, numerator: 1, denominator: 1 };
const FAHRENHEIT: TemperatureScale = { mark: 32, markK: 273.15, numerator: 5, denominator: 9 };

/** Temperature scales by the name that is typed. They have no place in arithmetic: 20 C + 20 C is not 40 C. */
export const TEMPERATURE_SCALES: ReadonlyMap<string, TemperatureScale> = new Map([
  ['K', KELVIN],
  ['kelvin', KELVIN],
  ['C', CELSIUS],
  ['°C', CELSIUS],
  ['degC', CELSIUS],
  ['celsius', CELSIUS],
  ['F', FAHRENHEIT],
  ['°F', FAHRENHEIT],
  ['degF', FAHRENHEIT],
  ['fahrenheit', FAHRENHEIT],
]);

/** Symbols that print with a space or a sign inside, and the unit that each is. */
const PRINTED_SYMBOLS: ReadonlyMap<string, string> = new Map([
  ['in wg', 'inH2O'],
  ['mm wg', 'mmH2O'],
  ['%', 'percent'],
]);

const measures = new Map<string, Measure>();

/** Value of a printed unit such as `m3/h`, `in wg/fpm` or `Pa s/m`: factors, and `/` before each divisor. */
export function unitMeasure(symbol: string): Measure | undefined {
  const measure = measures.get(symbol) ?? measureOf(symbol);
  // what is typed and no unit is not kept
  if (measure !== undefined) measures.set(symbol, measure);
  return measure;
}

function measureOf(symbol: string): Measure | undefined {
  let result: Measure = { numerator: 1, denominator: 1, powers: {} };
  for (const [position, part] of symbol.split('/').entries()) {
    for (const word of PRINTED_SYMBOLS.has(part) ? [PRINTED_SYMBOLS.get(part)!] : part.split(' ')) {
      if (word === '1' || word === '') continue;
      const unit = UNITS.get(word);
      if (unit === undefined) return undefined;
      result = position === 0 ? multiplyMeasures(result, unit) : divideMeasures(result, unit);
    }
  }
  return result;
}

/** Product of two measures. */
export function multiplyMeasures(left: Measure, right: Measure): Measure {
  return {
    numerator: left.numerator * right.numerator,
    denominator: left.denominator * right.denominator,
    powers: multiplyPowers(left.powers, right.powers),
  };
}

/** Quotient of two measures; a zero divisor leaves a denominator of zero, which the caller refuses. */
export function divideMeasures(left: Measure, right: Measure): Measure {
  return {
    numerator: left.numerator * right.denominator,
    denominator: left.denominator * right.numerator,
    powers: multiplyPowers(left.powers, right.powers, -1),
  };
}
