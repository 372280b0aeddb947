import { READING_ERRORS } from '../catalogue/reading-errors.ts';
import type { ReadingErrorId, UsualError } from '../catalogue/reading-errors.ts';
import type { FanDesign, Reading, ReadingKind, ReadingOf } from '../document/schema-fans.ts';
import { ASTRAY } from '../fan-bench/bench.ts';
import { reduceDesign } from '../fan-bench/design-curve.ts';
import { fanShapeOf } from '../fan-bench/fan-shape.ts';
import { GIVEN_SPEED_ERROR, TABLE_SPEED_ERROR } from '../fan-bench/reading-drive.ts';
import { TABLE_DENSITY } from '../fan-bench/reading-inputs.ts';
import { SHARP_HOLE, SHARP_HOLE_ERRORS } from '../fan/tests/hole-plate.ts';
import { BELL_COEFFICIENT, INLET_ERRORS } from '../fan/tests/inlet-throat.ts';
import type { Basis } from '../quantities/sourced.ts';
import { motorSources } from './motor-sources.ts';
import { rotorSources } from './rotor-sources.ts';
import type { SourceContext } from './context.ts';
import { sourced } from './piece-sources.ts';
import type { RelationId } from './relations.ts';
import { GIVEN } from './source-list.ts';
import type { SourceList } from './source-list.ts';

type Where = readonly string[];

/** Relations and usual errors of each kind of reading. */
const TESTS: Readonly<
  Record<
    ReadingKind,
    { readonly relations: readonly RelationId[]; readonly errors: readonly ReadingErrorId[] }
  >
> = {
  'sealed-lift': { relations: ['waterColumn', 'waterDensity', 'tapped'], errors: ['height', 'density'] },
  'sealed-suction': { relations: ['tapped'], errors: ['pressure', 'density'] },
  'hole-plate': {
    relations: ['holePlate', 'expansibility', 'tapped'],
    errors: ['pressure', 'size', 'density'],
  },
  orifice: {
    relations: ['orifice', 'orificeError', 'expansibility', 'tapped'],
    errors: ['pressure', 'head', 'size', 'density'],
  },
  'inlet-throat': { relations: ['tapped'], errors: ['pressure', 'head', 'size', 'density'] },
  'pitot-traverse': {
    relations: ['pitot', 'traverseError', 'tapped'],
    errors: ['pressure', 'head', 'size', 'density'],
  },
  'vane-traverse': {
    relations: ['traverseError', 'tapped'],
    errors: ['pressure', 'velocity', 'size', 'density'],
  },
  point: { relations: [], errors: ['table', 'tablePower'] },
};

/** What each usual error is of, and how its fixed part is printed. */
const ERROR_OF: Readonly<
  Record<
    ReadingErrorId,
    readonly [
      what: string,
      dimension: 'pressure' | 'length' | 'velocity' | 'voltage' | 'current' | 'fraction',
    ]
  >
> = {
  pressure: ['a pressure read on a gauge', 'pressure'],
  head: ['a velocity pressure or a difference', 'pressure'],
  height: ['a height of water', 'length'],
  size: ['a hole or throat', 'length'],
  speed: ['a speed that was read', 'fraction'],
  velocity: ['a velocity read with a vane wheel', 'velocity'],
  voltage: ['a voltage', 'voltage'],
  current: ['a current', 'current'],
  throttle: ['the throttle', 'fraction'],
  battery: ['a power by the charge of a battery', 'fraction'],
  table: ["a maker's table", 'fraction'],
  tablePower: ["the power of a maker's table", 'fraction'],
  motor: ["a speed that the motor's figures tell", 'fraction'],
  density: ['the density of the room', 'fraction'],
};

/** A fan of the list: its tests, the curve through them, its motor and its rotor. */
export function designSources(context: SourceContext, design: FanDesign, where: Where): void {
  const { list, shop } = context;
  for (const reading of design.readings) readingSources(list, reading, where);
  const kinds = new Set(design.readings.map(({ kind }) => kind));
  const power = drives(list, design, where);
  const { fit } = reduceDesign(design, shop.air, shop.document.units);
  if (fit !== null) {
    list.use(where, 'scales', 'fit', 'pressureShape', 'faintRise', 'band');
    if (power) list.use(where, 'powerShape', 'fanPower');
    const shape = fanShapeOf(design);
    const told = fit.shapeAssumed ? 'shape of the curve of' : 'usual shape behind the readings of';
    list.add({ kind: 'default', what: `${told} a fan: ${shape.label}`, ...sourced(shape) }, where);
    list.add(
      {
        kind: 'default',
        what: 'standard errors from the curve at which a reading is called astray',
        value: { si: ASTRAY, dimension: 'coefficient' },
        source: 'no source; three in a thousand readings stray so far by chance',
        basis: 'common-practice',
      },
      where,
    );
  }
  if (kinds.size > 0) {
    const value = `${design.readings.length} readings`;
    list.add({ kind: 'reading', what: 'tests of a fan', value, ...GIVEN }, where);
  }
  motorSources(list, design, where);
  rotorSources(list, design, where);
}

function readingSources(list: SourceList, reading: Reading, where: Where): void {
  const { relations, errors } = TESTS[reading.kind];
  list.use(where, ...relations);
  for (const id of errors) usualError(list, id, where);
  if (reading.kind === 'hole-plate') holePlate(list, reading, where);
  if (reading.kind === 'inlet-throat') {
    list.use(where, reading.inlet === 'cone' ? 'cone' : 'bell');
    if (reading.inlet === 'bell') {
      const bell = { value: BELL_COEFFICIENT, ...INLET_ERRORS.bell };
      coefficient(list, 'coefficient of a bell inlet', bell, where);
    }
    const value = share(list, 2 * INLET_ERRORS[reading.inlet].commonError);
    const what = `flow by a ${reading.inlet} may be off by`;
    list.add({ kind: 'default', what, value, ...sourced(INLET_ERRORS[reading.inlet]) }, where);
  }
  if (reading.kind === 'point' && !reading.density) {
    const value = { si: TABLE_DENSITY.value, dimension: 'density' } as const;
    const what = "density of a maker's table that gives none";
    list.add({ kind: 'default', what, value, ...sourced(TABLE_DENSITY) }, where);
  }
}

function holePlate(list: SourceList, reading: ReadingOf<'hole-plate'>, where: Where): void {
  const what = 'discharge coefficient of a drilled plate';
  if (reading.dischargeCoefficient) list.given(reading.dischargeCoefficient, what, '', where);
  else coefficient(list, what, SHARP_HOLE, where);
  const value = share(list, 2 * SHARP_HOLE.commonError);
  const off = 'discharge coefficient of all plates of one hand may be off by';
  list.add({ kind: 'default', what: off, value, ...sourced(SHARP_HOLE_ERRORS) }, where);
}

function coefficient(
  list: SourceList,
  what: string,
  row: { readonly value: number; readonly source: string; readonly basis: Basis },
  where: Where,
): void {
  const value = { si: row.value, dimension: 'coefficient' } as const;
  list.add({ kind: 'coefficient', what, value, ...sourced(row) }, where);
}

/** Errors of speed and power; true where a reading tells of power. */
function drives(list: SourceList, design: FanDesign, where: Where): boolean {
  let power = false;
  for (const reading of design.readings) {
    const metered = reading.voltage !== undefined && reading.current !== undefined;
    if (metered) {
      usualError(list, 'voltage', where);
      usualError(list, 'current', where);
      if (reading.throttle) usualError(list, 'throttle', where);
    }
    if (reading.speed) usualError(list, 'speed', where);
    else if (metered && design.motor) usualError(list, 'motor', where);
    else if (design.speed) {
      const row = reading.kind === 'point' ? TABLE_SPEED_ERROR : GIVEN_SPEED_ERROR;
      const value = share(list, 2 * row.value);
      const what = 'a speed that is given for all readings may be off by';
      list.add({ kind: 'default', what, value, ...sourced(row) }, where);
    }
    if (!metered && reading.energy && reading.time) usualError(list, 'battery', where);
    power ||= metered || reading.energy !== undefined || (reading.kind === 'point' && !!reading.power);
  }
  return power;
}

function usualError(list: SourceList, id: ReadingErrorId, where: Where): void {
  const row: UsualError = READING_ERRORS[id];
  const [what, dimension] = ERROR_OF[id];
  const fixed = row.fixed > 0 ? [`${list.print({ si: row.fixed, dimension })}`] : [];
  const shares = row.share > 0 ? [list.print({ si: row.share, dimension: 'fraction' })] : [];
  const value = `± ${[...fixed, ...shares].join(' and ')}`;
  list.add({ kind: 'default', what: `${what} may be off by`, value, ...sourced(row) }, where);
}

const share = (list: SourceList, si: number) => `± ${list.print({ si, dimension: 'fraction' })}`;
