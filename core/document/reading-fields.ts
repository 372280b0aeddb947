import { choiceRow, countRow, quantityRow, textRow } from './field.ts';
import type { FieldRow } from './field.ts';
import { plain } from './field-options.ts';
import type { Reading, ReadingKind } from './schema-fans.ts';

/** What a kind of reading is called. */
export const READING_WORDS: Readonly<Record<ReadingKind, string>> = {
  'sealed-lift': 'Sealed lift, water column',
  'sealed-suction': 'Sealed suction, manometer',
  'hole-plate': 'Hole plate',
  orifice: 'Orifice plate in a pipe',
  'inlet-throat': 'Cone or bell at the inlet',
  'pitot-traverse': 'Pitot traverse',
  'vane-traverse': 'Vane traverse',
  point: "Point of a maker's table",
};

const more = { optional: true, rule: 'any' } as const;
const suction = quantityRow('Reading', 'suction', 'Suction', 'pressure', {
  rule: 'any',
  hint: 'below the room, at the inlet of the fan',
});
const tap = quantityRow('Reading', 'tapDiameter', 'Duct with the tap', 'length', {
  optional: true,
  hint: 'empty: a still box, with the tap in its wall',
});
const difference = (hint: string) =>
  quantityRow('Reading', 'difference', 'Difference', 'pressure', { rule: 'any', hint });

/** What is read in each kind, in the order in which it is typed; lists of a traverse follow beneath. */
export const READING_ROWS: Readonly<Record<ReadingKind, readonly FieldRow[]>> = {
  'sealed-lift': [
    quantityRow('Reading', 'lift', 'Lift', 'length', {
      rule: 'any',
      hint: 'rise of the water in the tube over its first mark',
    }),
    quantityRow('Reading', 'tube', 'Bore of the tube', 'length', {
      optional: true,
      hint: 'with that of the vessel: the level there sinks as the tube fills',
    }),
    quantityRow('Reading', 'vessel', 'Bore of the vessel', 'length', {
      optional: true,
      hint: 'empty: so wide that its level stays',
    }),
  ],
  'sealed-suction': [suction],
  'hole-plate': [
    quantityRow('Reading', 'hole', 'Hole', 'length', { hint: 'diameter of each, with a sharp edge' }),
    countRow('Reading', 'holes', 'Holes', { optional: true, hint: 'empty: one' }),
    suction,
    quantityRow('Reading', 'box', 'Pipe before the plate', 'length', {
      optional: true,
      hint: 'empty: the plate stands in the room',
    }),
    tap,
    quantityRow('Reading', 'dischargeCoefficient', 'Discharge coefficient', 'coefficient', {
      optional: true,
      hint: 'empty: that of a sharp edge',
    }),
  ],
  orifice: [
    quantityRow('Reading', 'bore', 'Bore of the plate', 'length'),
    quantityRow('Reading', 'pipe', 'Bore of the pipe', 'length'),
    choiceRow(
      'Reading',
      'taps',
      'Taps',
      plain({
        corner: 'in the corners',
        flange: '25.4 mm (1 in) off',
        'one-and-half': 'one before, half a pipe after',
      }),
    ),
    difference('over the plate'),
    suction,
    quantityRow('Reading', 'upstreamSuction', 'Suction before the plate', 'pressure', {
      ...more,
      hint: 'empty: that of the room',
    }),
    tap,
  ],
  'inlet-throat': [
    choiceRow('Reading', 'inlet', 'Inlet', plain({ cone: 'cone', bell: 'bell' })),
    quantityRow('Reading', 'throat', 'Throat', 'length'),
    difference('suction at the wall of the throat'),
    suction,
    tap,
  ],
  'pitot-traverse': [quantityRow('Reading', 'duct', 'Bore of the duct', 'length'), suction, tap],
  'vane-traverse': [quantityRow('Reading', 'duct', 'Bore of the duct', 'length'), suction, tap],
  point: [
    quantityRow('Reading', 'flow', 'Flow', 'flow', { rule: 'any' }),
    quantityRow('Reading', 'pressure', 'Pressure', 'pressure', { rule: 'any' }),
    choiceRow('Reading', 'pressureKind', 'It is', plain({ static: 'fan static', total: 'fan total' })),
    quantityRow('Reading', 'power', 'Shaft power', 'power', more),
    quantityRow('Reading', 'density', 'Air density', 'density', { optional: true, hint: 'empty: 1.2 kg/m3' }),
  ],
};

/** What may be read beside it, of any kind. */
export const DRIVE_ROWS: readonly FieldRow[] = [
  quantityRow('Drive', 'speed', 'Speed', 'speed', { ...more, hint: 'empty: from the motor' }),
  quantityRow('Drive', 'voltage', 'Volts', 'voltage', { ...more, hint: 'at the supply' }),
  quantityRow('Drive', 'current', 'Amps', 'current', { ...more, hint: 'in the supply lead' }),
  quantityRow('Drive', 'throttle', 'Throttle', 'fraction', {
    ...more,
    hint: 'duty of the speed controller; empty: full',
  }),
  quantityRow('Drive', 'temperature', 'Air temperature', 'temperature', {
    optional: true,
    hint: 'empty: that of the shop',
  }),
  quantityRow('Drive', 'energy', 'Energy taken', 'energy', {
    ...more,
    hint: 'from the battery, where there is no meter',
  }),
  quantityRow('Drive', 'time', 'Running time', 'time', { ...more, hint: 'that took this energy' }),
];

const errorRow = (path: string, label: string, dimension: 'pressure' | 'length' | 'fraction') =>
  quantityRow('Reading errors', `errors.${path}`, label, dimension, {
    optional: true,
    hint: 'empty: that of the usual instrument',
  });

/** How far readings may be off, nineteen times in twenty. */
export const ERROR_ROWS: readonly FieldRow[] = [
  errorRow('pressure', 'Pressures, plus or minus', 'pressure'),
  errorRow('height', 'Column, plus or minus', 'length'),
  errorRow('size', 'Hole, bore, throat, plus or minus', 'length'),
  errorRow('flow', 'Flow besides, plus or minus', 'fraction'),
  errorRow('speed', 'Speed, plus or minus', 'fraction'),
  errorRow('voltage', 'Volts, plus or minus', 'fraction'),
  errorRow('current', 'Amps, plus or minus', 'fraction'),
  errorRow('power', 'Power, plus or minus', 'fraction'),
];

/** Rows of a table under a path, with its place in their group. */
const under = (rows: readonly FieldRow[], path: readonly (string | number)[], group: string): FieldRow[] =>
  rows.map((row) => ({
    ...row,
    path: [...path, ...row.path],
    group: row.group === 'Reading' ? group : `${group}: ${row.group.toLowerCase()}`,
  }));

/** Readings of a traverse, one field each; all but the last may go. */
export function listRows(reading: Reading): FieldRow[] {
  const last = (length: number) => (length > 1 ? { optional: true as const } : {});
  if (reading.kind === 'pitot-traverse') {
    const { length } = reading.heads;
    return reading.heads.map((_, i) =>
      quantityRow('Reading', `heads.${i}`, `Velocity pressure ${i + 1}`, 'pressure', {
        rule: 'any',
        ...last(length),
      }),
    );
  }
  if (reading.kind !== 'vane-traverse') return [];
  const { length } = reading.velocities;
  return reading.velocities.map((_, i) =>
    quantityRow('Reading', `velocities.${i}`, `Velocity ${i + 1}`, 'velocity', {
      rule: 'any',
      ...last(length),
    }),
  );
}

/** Every field of one reading, whose path starts at its fan. */
export function readingRows(reading: Reading, index: number): FieldRow[] {
  const note = textRow('Reading', 'note', 'Note', { optional: true });
  const rows = [...READING_ROWS[reading.kind], ...listRows(reading), note, ...DRIVE_ROWS, ...ERROR_ROWS];
  return under(rows, ['readings', index], `Reading ${index + 1}`);
}
