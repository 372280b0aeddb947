import type * as z from 'zod';
import type { ShopDocument } from '../schema.ts';
import type {
  FAN_DESIGN,
  FanDesign,
  MOTOR,
  Motor,
  Reading,
  READING,
  ReadingKind,
  ROTOR,
} from '../schema-fans.ts';
import { toJson } from '../write.ts';

type Units = ShopDocument['units'];
type ReadingInput = z.input<typeof READING>;
type Start<K extends ReadingKind> = Omit<Extract<ReadingInput, { kind: K }>, 'id' | 'kind'>;

/** Points along one diameter, and diameters, of a traverse as it is started. */
const TRAVERSE_POINTS = 6 * 2;
const zeros = (unit: string) => Array.from({ length: TRAVERSE_POINTS }, () => `0 ${unit}`);

/**
 * What a reading is before anything was read: what is measured stands at zero, which its row asks to be replaced; sizes
 * of the rig are a start (common practice, no source).
 */
const READING_STARTS: { readonly [K in ReadingKind]: (units: Units) => Start<K> } = {
  'sealed-lift': (units) => ({ lift: units === 'us' ? '0 in' : '0 mm' }),
  'sealed-suction': (units) => ({ suction: units === 'us' ? '0 in wg' : '0 Pa' }),
  'hole-plate': (units) =>
    units === 'us' ? { hole: '1 in', suction: '0 in wg' } : { hole: '25 mm', suction: '0 Pa' },
  orifice: (units) =>
    units === 'us'
      ? { bore: '2.5 in', pipe: '4 in', taps: 'flange', difference: '0 in wg', suction: '0 in wg' }
      : { bore: '60 mm', pipe: '100 mm', taps: 'flange', difference: '0 Pa', suction: '0 Pa' },
  'inlet-throat': (units) =>
    units === 'us'
      ? { inlet: 'cone', throat: '4 in', difference: '0 in wg', suction: '0 in wg' }
      : { inlet: 'cone', throat: '100 mm', difference: '0 Pa', suction: '0 Pa' },
  'pitot-traverse': (units) =>
    units === 'us'
      ? { duct: '4 in', heads: zeros('in wg'), suction: '0 in wg' }
      : { duct: '100 mm', heads: zeros('Pa'), suction: '0 Pa' },
  'vane-traverse': (units) =>
    units === 'us'
      ? { duct: '4 in', velocities: zeros('fpm'), suction: '0 in wg' }
      : { duct: '100 mm', velocities: zeros('m/s'), suction: '0 Pa' },
  point: (units) =>
    units === 'us'
      ? { flow: '0 cfm', pressure: '0 in wg', pressureKind: 'static' }
      : { flow: '0 m3/h', pressure: '0 Pa', pressureKind: 'static' },
};

export const isReadingKind = (kind: unknown): kind is ReadingKind =>
  typeof kind === 'string' && Object.hasOwn(READING_STARTS, kind);

/** What belongs to the rig and is the same from one reading to the next. */
const KEPT: readonly string[] = [
  'tube',
  'vessel',
  'hole',
  'holes',
  'box',
  'dischargeCoefficient',
  'bore',
  'pipe',
  'taps',
  'inlet',
  'throat',
  'duct',
  'tapDiameter',
  'pressureKind',
  'density',
  'throttle',
  'errors',
];

/** Names for new readings of a fan, each once: `r1`, `r2`. */
export function readingIds(readings: readonly { readonly id: string }[]): () => string {
  const taken = new Set(readings.map(({ id }) => id));
  let n = readings.length;
  return () => {
    do n++;
    while (taken.has(`r${n}`));
    taken.add(`r${n}`);
    return `r${n}`;
  };
}

/**
 * A new reading as a file holds it: of the kind given, with the rig of the last reading of that kind, and over both what
 * the row says.
 */
export function startReading(
  readings: readonly Reading[],
  kind: ReadingKind,
  row: Readonly<Record<string, unknown>>,
  id: string,
  units: Units,
): unknown {
  const like = readings.findLast((reading) => reading.kind === kind);
  const rig = Object.entries(like ? (toJson(like) as Record<string, unknown>) : {});
  const kept = Object.fromEntries(rig.filter(([key]) => KEPT.includes(key)));
  return { ...READING_STARTS[kind](units), ...kept, id, ...row, kind };
}

type Sizes = Pick<z.input<typeof FAN_DESIGN>, 'blading' | 'wheelDiameter' | 'outletDiameter'>;

/** A fan before anything is known of it; sizes are a start to be replaced (common practice, no source). */
export const DESIGN_STARTS: { readonly [T in FanDesign['type']]: (units: Units) => Sizes } = {
  radial: (units) => ({
    blading: 'backward',
    ...(units === 'us'
      ? { wheelDiameter: '12 in', outletDiameter: '5 in' }
      : { wheelDiameter: '300 mm', outletDiameter: '125 mm' }),
  }),
  mixed: (units) =>
    units === 'us'
      ? { wheelDiameter: '6 in', outletDiameter: '6 in' }
      : { wheelDiameter: '150 mm', outletDiameter: '150 mm' },
  axial: (units) =>
    units === 'us'
      ? { wheelDiameter: '8 in', outletDiameter: '8 in' }
      : { wheelDiameter: '200 mm', outletDiameter: '200 mm' },
  'staged-axial': (units) =>
    units === 'us'
      ? { wheelDiameter: '3 in', outletDiameter: '3 in' }
      : { wheelDiameter: '75 mm', outletDiameter: '75 mm' },
};

/** A motor of each kind, to be replaced by what stands on the plate or was measured (common practice, no source). */
export const MOTOR_STARTS: { readonly [K in Motor['kind']]: Extract<z.input<typeof MOTOR>, { kind: K }> } = {
  brushless: {
    kind: 'brushless',
    speedConstant: '190 rpm/V',
    resistance: '60 mohm',
    noLoadCurrent: '1 A',
    supply: '24 V',
  },
  series: {
    kind: 'series',
    points: [
      { torque: '0.1 N m', speed: '30000 rpm', current: '3 A' },
      { torque: '0.3 N m', speed: '20000 rpm', current: '6 A' },
    ],
    supply: '230 V',
  },
  induction: {
    kind: 'induction',
    frequency: '50 Hz',
    poles: 2,
    ratedPower: '750 W',
    ratedSpeed: '2850 rpm',
    ratedCurrent: '4.8 A',
    supply: '230 V',
    phases: 'single',
  },
};

/** A rotor to be replaced by one's own; a plain disc of aluminium says least that may be wrong. */
export const ROTOR_START: z.input<typeof ROTOR> = {
  form: 'disc',
  material: 'aluminium-6061-t6',
  bore: '8 mm',
};
