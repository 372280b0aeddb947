import type * as z from 'zod';
import type { ShopDocument } from '../schema.ts';
import { FORMAT_VERSION, SHOP } from '../schema.ts';
import { namesOf, resolveWithin } from '../resolve.ts';
import { PIECE } from '../schema-pieces.ts';
import { THING } from '../schema-things.ts';
import type { Thing, ThingKind } from '../schema-things.ts';
import { MOTOR_STARTS, ROTOR_START } from './fan-defaults.ts';

type Units = ShopDocument['units'];
type ThingInput = z.input<typeof THING>;
type Body<K extends ThingKind> = Omit<Extract<ThingInput, { kind: K }>, 'id' | 'at' | 'turn'>;
/** Sizes as the trade calls them, in the units that the document shows. */
const sized = (units: Units, si: string, us: string) => (units === 'us' ? us : si);

/**
 * What a thing is when it is placed. Every figure is a start to be replaced; none describes a real product
 * (common practice, no source).
 */
const STARTS: { readonly [K in ThingKind]: (units: Units) => Body<K> } = {
  port: () => ({ kind: 'port', hood: { kind: 'entry', entry: 'plain' }, dust: 'sawdust-dry' }),
  leak: (units) => ({ kind: 'leak', area: sized(units, '5 cm2', '0.75 in2') }),
  exhaust: () => ({ kind: 'exhaust', outlet: { kind: 'open' }, to: 'room' }),
  pressure: (units) => ({ kind: 'pressure', pressure: sized(units, '-1 kPa', '-4 in wg') }),
  wye: () => ({ kind: 'wye', angle: '45 deg' }),
  tee: () => ({ kind: 'tee' }),
  breeches: () => ({ kind: 'breeches', angle: '30 deg' }),
  joint: () => ({ kind: 'joint' }),
  cyclone: (units) => ({
    kind: 'cyclone',
    proportions: 'stairmand-high-efficiency',
    bodyDiameter: sized(units, '300 mm', '12 in'),
    lossModel: 'casal-martinez-benet',
    gradeModel: 'iozia-leith',
  }),
  bin: (units) => ({
    kind: 'bin',
    inletDiameter: sized(units, '100 mm', '4 in'),
    outletDiameter: sized(units, '100 mm', '4 in'),
    baffle: true,
    catchShare: '70 %',
  }),
  filter: (units) => ({
    kind: 'filter',
    layers: [{ medium: 'cartridge-pleated-polyester', area: sized(units, '10 m2', '110 ft2') }],
  }),
  fan: (units) => ({
    kind: 'fan',
    outletDiameter: sized(units, '125 mm', '5 in'),
    curve: {
      pressureKind: 'static',
      speed: '2850 rpm',
      density: sized(units, '1.2 kg/m3', '0.075 lb/ft3'),
      source: 'a start to be replaced: put in the points of your own fan',
      points:
        units === 'us'
          ? [
              { flow: '0 cfm', pressure: '10 in wg' },
              { flow: '250 cfm', pressure: '9.5 in wg' },
              { flow: '500 cfm', pressure: '7 in wg' },
              { flow: '750 cfm', pressure: '2.5 in wg' },
            ]
          : [
              { flow: '0 m3/h', pressure: '2500 Pa' },
              { flow: '400 m3/h', pressure: '2400 Pa' },
              { flow: '800 m3/h', pressure: '1800 Pa' },
              { flow: '1200 m3/h', pressure: '700 Pa' },
            ],
    },
  }),
};

/** A ready variant of a kind of thing. */
export interface Preset {
  readonly id: string;
  readonly kind: ThingKind;
  readonly label: string;
  readonly change: Readonly<Record<string, unknown>>;
}

/** Variants that can be placed beside the plain kinds. */
export const PRESETS: readonly Preset[] = [
  { id: 'machine', kind: 'port', label: 'Machine port', change: {} },
  {
    id: 'spindle-shoe',
    kind: 'port',
    label: 'Spindle shoe with brush',
    change: { name: 'Spindle shoe', hood: { kind: 'brush-shoe', gapArea: '70 cm2' }, dust: 'mdf-routing' },
  },
  {
    id: 'floor-sweep',
    kind: 'port',
    label: 'Floor sweep',
    change: { name: 'Floor sweep', hood: { kind: 'entry', entry: 'flanged' }, dust: 'planer-shavings' },
  },
  { id: 'open-end', kind: 'port', label: 'Open end', change: { name: 'Open end', dust: undefined } },
  { id: 'outside', kind: 'exhaust', label: 'Exhaust to the outside', change: { to: 'outside' } },
];

/** Reads a part of a file that code wrote; texts are worked out without named values. */
export function readPart<T>(schema: z.ZodType<T>, raw: unknown): T {
  const parsed = schema.parse(raw);
  const names = namesOf({ values: [] }, []);
  return resolveWithin(parsed, [], parsed, names, []) as T;
}

/** A thing as it is placed, without a place. */
export function startThing(kind: ThingKind, id: string, units: Units, preset?: string): Thing {
  const change = PRESETS.find((row) => row.id === preset && row.kind === kind)?.change ?? {};
  return readPart(THING, { ...STARTS[kind](units), ...change, id });
}

/** Values that a piece starts with when it is put on a run, beside what is asked for. */
export const PIECE_STARTS: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  straight: { length: '1 m' },
  elbow: { style: 'five-piece', angle: '90 deg', radiusRatio: 1.5 },
  'hose-bend': { angle: '90 deg', radius: '300 mm' },
  reducer: { to: '125 mm', angle: '30 deg' },
  gate: {},
  given: { coefficient: 1 },
  measured: { loss: '100 Pa', flow: '500 m3/h' },
  bare: { length: '1 m', diameter: '100 mm', roughness: '0.1 mm', coefficient: 0 },
};

export function isPieceKind(kind: string): boolean {
  return PIECE.options.some((option) => option.shape.kind.value === kind);
}

/** What the run is made of where nothing says otherwise. */
export const RUN_START = {
  material: 'galvanised-spiral',
  bend: { style: 'five-piece', radiusRatio: 1.5 },
  diameter: (units: Units) => sized(units, '100 mm', '4 in'),
} as const;

/** Groups that can be switched on, by path in their item, with what they start with. */
export const GROUP_STARTS: Readonly<Record<string, unknown>> = {
  cut: { width: '6 mm', depth: '6 mm', feed: '50 mm/s', density: '600 kg/m3', collected: '90 %' },
  'needs.capture': { hood: 'plain', velocity: '1 m/s', distance: '150 mm', faceArea: '100 cm2' },
  measured: { loss: '200 Pa', flow: '500 m3/h' },
  dimensions: {},
  motor: MOTOR_STARTS.brushless,
  rotor: ROTOR_START,
};

/** What a group holds once its kind is chosen, by the group's last name. */
export const KIND_STARTS: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  hood: {
    entry: { kind: 'entry', entry: 'plain' },
    tapered: { kind: 'tapered', angle: '45 deg', shape: 'round' },
    slot: { kind: 'slot', slotArea: '50 cm2' },
    'brush-shoe': { kind: 'brush-shoe', gapArea: '70 cm2' },
    given: { kind: 'given', coefficient: 0.5 },
    measured: { kind: 'measured', loss: '200 Pa', flow: '500 m3/h' },
  },
  outlet: {
    open: { kind: 'open' },
    cap: { kind: 'cap', gapRatio: 0.75 },
    given: { kind: 'given', coefficient: 1 },
  },
  air: {
    weather: { kind: 'weather', temperature: '20 degC', humidity: '50 %', altitude: '0 m' },
    given: { kind: 'given', density: '1.2 kg/m3', viscosity: '1.81e-5 Pa s' },
  },
  motor: MOTOR_STARTS,
};

/** A shop in which nothing is drawn yet. */
export function blankDocument(units: Units = 'si'): ShopDocument {
  return readPart(SHOP, {
    format: 'chipdraft-shop',
    version: FORMAT_VERSION,
    name: 'New shop',
    units,
    air: {
      kind: 'weather',
      temperature: sized(units, '20 degC', '68 degF'),
      humidity: '50 %',
      altitude: sized(units, '0 m', '0 ft'),
    },
    things: [],
    runs: [],
    settings: [{ name: 'all open', gates: {} }],
  });
}
