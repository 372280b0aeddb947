import { samePowers, type Powers } from './powers.ts';

/** Kind of a quantity: decides which units fit a field and how a value is printed. */
export type Dimension =
  | 'length'
  | 'area'
  | 'volume'
  | 'angle'
  | 'pressure'
  | 'flow'
  | 'velocity'
  | 'massFlow'
  | 'mass'
  | 'density'
  | 'viscosity'
  | 'temperature'
  | 'speed'
  | 'power'
  | 'current'
  | 'voltage'
  | 'time'
  | 'fraction'
  | 'coefficient'
  | 'filterDrag'
  | 'cakeResistance'
  | 'arealDensity'
  | 'energy'
  | 'resistance'
  | 'speedConstant'
  | 'frequency'
  | 'torque'
  | 'stress';

/** Units that the person chose to read in. */
export type UnitSystem = 'si' | 'us';

/** One way to print: the unit, and the size in SI units from which it is used. */
export interface DisplayUnit {
  readonly unit: string;
  readonly from: number;
  /** The unit of columns, axes and field labels; the smallest one where no unit is marked. */
  readonly column?: true;
}

/** What a field of one kind accepts and how its values are printed. */
export interface DimensionRow {
  /** Plain words, to stand after `a` or `an`. */
  readonly label: string;
  /** Unit of the value that the core computes with, empty for a plain number. */
  readonly siUnit: string;
  readonly powers: Powers;
  /** Display units, smallest first. */
  readonly si: readonly DisplayUnit[];
  readonly us: readonly DisplayUnit[];
  /** Significant figures, or decimals where the zero of the scale is arbitrary. */
  readonly digits: number;
  readonly digitsAre: 'significant' | 'decimals';
  /** Entries that fit, for messages. */
  readonly examples: readonly [string, string, ...string[]];
}

function row(
  label: string,
  siUnit: string,
  powers: Powers,
  units: Pick<DimensionRow, 'si' | 'us'>,
  examples: DimensionRow['examples'],
  digits = 3,
  digitsAre: DimensionRow['digitsAre'] = 'significant',
): DimensionRow {
  return { label, siUnit, powers, ...units, digits, digitsAre, examples };
}

const only = (unit: string): readonly DisplayUnit[] => [{ unit, from: 0 }];
const both = (unit: string): Pick<DimensionRow, 'si' | 'us'> => ({ si: only(unit), us: only(unit) });
const then = (small: string, large: string, from: number): readonly DisplayUnit[] => [
  { unit: small, from: 0 },
  { unit: large, from },
];
/** Grain sizes and roughness are in micrometres everywhere. */
const lengths = (small: string, large: string, from: number): readonly DisplayUnit[] => [
  { unit: 'um', from: 0 },
  { unit: small, from: 1e-4, column: true },
  { unit: large, from },
];
const TIME_UNITS = [...then('s', 'min', 120), { unit: 'h', from: 7200 }];

/**
 * Every kind of quantity. Values are SI, with one exception at the edge: `speed` (rotation) is kept in rpm, because
 * that is what a tachometer, a motor plate and a fan curve say; the relations of `core/fan` take rpm by name.
 */
export const DIMENSIONS: Readonly<Record<Dimension, DimensionRow>> = {
  length: row('length', 'm', { m: 1 }, { si: lengths('mm', 'm', 1), us: lengths('in', 'ft', 0.9144) }, [
    '4 in',
    '100 mm',
    '2 ft + 3 in',
  ]),
  area: row('area', 'm2', { m: 2 }, { si: then('cm2', 'm2', 0.1), us: then('in2', 'ft2', 0.0929) }, [
    '0.5 m2',
    '6 ft2',
    '300 mm * 200 mm',
  ]),
  volume: row('volume', 'm3', { m: 3 }, { si: then('l', 'm3', 1), us: only('ft3') }, [
    '60 l',
    '0.2 m3',
    '30 gal',
  ]),
  angle: row('angle', 'rad', { rad: 1 }, both('deg'), ['45 deg', '0.8 rad'], 1, 'decimals'),
  pressure: row(
    'pressure',
    'Pa',
    { kg: 1, m: -1, s: -2 },
    { si: then('Pa', 'kPa', 1000), us: only('in wg') },
    ['2.5 in wg', '600 Pa', '40 mmH2O'],
  ),
  flow: row('flow', 'm3/s', { m: 3, s: -1 }, { si: only('m3/h'), us: only('cfm') }, [
    '350 cfm',
    '600 m3/h',
    '160 l/s',
  ]),
  velocity: row('velocity', 'm/s', { m: 1, s: -1 }, { si: only('m/s'), us: only('fpm') }, [
    '18 m/s',
    '3500 fpm',
  ]),
  massFlow: row(
    'mass flow',
    'kg/s',
    { kg: 1, s: -1 },
    { si: then('g/min', 'kg/min', 1 / 60), us: then('oz/min', 'lb/min', 0.0075599) },
    ['12 g/min', '2 lb/h', '0.5 oz/min'],
  ),
  mass: row('mass', 'kg', { kg: 1 }, { si: then('g', 'kg', 1), us: then('oz', 'lb', 0.4536) }, [
    '400 g',
    '2 kg',
    '3 lb',
  ]),
  density: row('density', 'kg/m3', { kg: 1, m: -3 }, { si: only('kg/m3'), us: only('lb/ft3') }, [
    '1.2 kg/m3',
    '0.075 lb/ft3',
  ]),
  viscosity: row('viscosity', 'Pa s', { kg: 1, m: -1, s: -1 }, both('Pa s'), ['1.81e-5 Pa s', '0.0181 cP']),
  temperature: row(
    'temperature',
    'K',
    { K: 1 },
    { si: only('°C'), us: only('°F') },
    ['20 C', '68 F', '293 K'],
    1,
    'decimals',
  ),
  speed: row('rotation speed', 'rpm', { turn: 1 }, both('rpm'), ['3000 rpm', '50 rev/s'], 4),
  power: row(
    'power',
    'W',
    { kg: 1, m: 2, s: -3 },
    { si: then('W', 'kW', 1000), us: then('W', 'hp', 186.4) },
    ['550 W', '0.75 hp'],
  ),
  current: row('current', 'A', { A: 1 }, both('A'), ['12 A', '800 mA']),
  voltage: row('voltage', 'V', { kg: 1, m: 2, s: -3, A: -1 }, both('V'), ['48 V', '230 V']),
  time: row('time', 's', { s: 1 }, { si: TIME_UNITS, us: TIME_UNITS }, ['40 h', '15 min', '30 s']),
  fraction: row('share', '', {}, both('%'), ['50 %', '0.5']),
  coefficient: row('plain number', '', {}, both(''), ['0.5', '1.8']),
  filterDrag: row(
    'filter drag',
    'Pa s/m',
    { kg: 1, m: -2, s: -1 },
    { si: only('Pa s/m'), us: only('in wg/fpm') },
    ['2000 Pa s/m', '0.05 in wg/fpm'],
  ),
  cakeResistance: row('cake resistance', '1/s', { s: -1 }, both('1/s'), ['50000 1/s', '1.2e5/s']),
  arealDensity: row('mass per area', 'kg/m2', { kg: 1, m: -2 }, { si: only('g/m2'), us: only('oz/yd2') }, [
    '250 g/m2',
    '8 oz/yd2',
  ]),
  energy: row('energy', 'J', { kg: 1, m: 2, s: -2 }, { si: then('J', 'kJ', 1000), us: only('ft lbf') }, [
    '200 J',
    '1.2 kWh',
    '150 ft lbf',
  ]),
  resistance: row(
    'electrical resistance',
    'ohm',
    { kg: 1, m: 2, s: -3, A: -2 },
    { si: then('mohm', 'ohm', 1), us: then('mohm', 'ohm', 1) },
    ['50 mohm', '0.05 ohm'],
  ),
  speedConstant: row(
    'speed constant',
    'rpm/V',
    { turn: 1, kg: -1, m: -2, s: 3, A: 1 },
    both('rpm/V'),
    ['800 rpm/V', '0.8 rpm/mV'],
    4,
  ),
  // the kinds below share their exponents with one above; a field says which it means
  frequency: row('frequency', 'Hz', { s: -1 }, both('Hz'), ['50 Hz', '60 Hz']),
  torque: row('torque', 'N m', { kg: 1, m: 2, s: -2 }, { si: only('N m'), us: only('ft lbf') }, [
    '0.2 N m',
    '1.5 ft lbf',
  ]),
  stress: row('stress', 'Pa', { kg: 1, m: -1, s: -2 }, { si: only('MPa'), us: only('psi') }, [
    '40 MPa',
    '6000 psi',
  ]),
};

/** All kinds, in the order of the table. */
export const DIMENSION_NAMES = Object.keys(DIMENSIONS) as readonly Dimension[];

/** Kind that has these exponents; a plain number is a `coefficient`. */
export function dimensionOf(powers: Powers): Dimension | undefined {
  if (samePowers(powers, {})) return 'coefficient';
  return DIMENSION_NAMES.find((name) => samePowers(DIMENSIONS[name].powers, powers));
}

/** Label of a kind with its article: `a length`, `an area`. */
export function withArticle(dimension: Dimension): string {
  const { label } = DIMENSIONS[dimension];
  return `${/^[aeiou]/.test(label) ? 'an' : 'a'} ${label}`;
}
