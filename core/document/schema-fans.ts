import * as z from 'zod';
import { quantity } from './quantity-field.ts';
import { CATALOGUE_ID, ID } from './schema-common.ts';

/**
 * Reading errors as the person knows them: plus or minus what holds nineteen times in twenty (two standard
 * deviations). Absent: that of the usual instrument.
 */
export const READING_ERRORS = z.strictObject({
  pressure: quantity('pressure').optional().describe('of the water gauge or manometer'),
  height: quantity('length').optional().describe('of a column read with a rule'),
  size: quantity('length').optional().describe('of the hole, bore or throat'),
  flow: quantity('fraction').optional().describe('of the flow, beyond what sizes and pressures bring'),
  speed: quantity('fraction').optional().describe('of the speed read'),
  voltage: quantity('fraction').optional(),
  current: quantity('fraction').optional(),
  power: quantity('fraction').optional().describe('of a power from battery energy and running time'),
});

// a reading that cannot be is told at its row, so the schema lets any number in
const reading = {
  id: ID,
  note: z.string().max(200).optional(),
  speed: quantity('speed', 'any').optional(),
  voltage: quantity('voltage', 'any').optional().describe('at the supply'),
  current: quantity('current', 'any').optional().describe('in the supply lead'),
  throttle: quantity('fraction', 'any').optional().describe('duty of the speed controller'),
  temperature: quantity('temperature').optional().describe('of the air; absent: that of the shop'),
  energy: quantity('energy', 'any').optional().describe('taken from the battery, where there is no meter'),
  time: quantity('time', 'any').optional().describe('running time that took this energy'),
  errors: READING_ERRORS.optional(),
};

/** Suction read at a tap: in a still box it is total pressure, in a duct static. */
const tapped = {
  suction: quantity('pressure', 'any').describe('below the room, at the inlet of the fan'),
  tapDiameter: quantity('length').optional().describe('of the duct with the tap; absent: a still box'),
};

export const READING = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('sealed-lift'),
    ...reading,
    lift: quantity('length', 'any').describe('rise of the water in the tube over its first mark'),
    tube: quantity('length').optional().describe('inside diameter of the tube'),
    vessel: quantity('length').optional().describe('inside diameter of the vessel, whose level sinks'),
  }),
  z.strictObject({
    kind: z.literal('sealed-suction'),
    ...reading,
    suction: quantity('pressure', 'any').describe('with the inlet blocked'),
  }),
  z.strictObject({
    kind: z.literal('hole-plate'),
    ...reading,
    ...tapped,
    hole: quantity('length').describe('diameter of each hole'),
    holes: z.number().int().min(1).max(100).optional(),
    box: quantity('length')
      .optional()
      .describe('diameter of the pipe in front of the plate; absent: the room'),
    dischargeCoefficient: quantity('coefficient').optional(),
  }),
  z.strictObject({
    kind: z.literal('orifice'),
    ...reading,
    ...tapped,
    bore: quantity('length'),
    pipe: quantity('length').describe('inside diameter of the pipe'),
    taps: z.enum(['corner', 'flange', 'one-and-half']).describe('where the difference is read'),
    difference: quantity('pressure', 'any'),
    upstreamSuction: quantity('pressure', 'any').optional().describe('static, in front of the plate'),
  }),
  z.strictObject({
    kind: z.literal('inlet-throat'),
    ...reading,
    ...tapped,
    inlet: z.enum(['cone', 'bell']),
    throat: quantity('length'),
    difference: quantity('pressure', 'any').describe('suction at the wall of the throat'),
  }),
  z.strictObject({
    kind: z.literal('pitot-traverse'),
    ...reading,
    ...tapped,
    duct: quantity('length'),
    heads: z.array(quantity('pressure', 'any')).min(1).max(80).describe('velocity pressures'),
  }),
  z.strictObject({
    kind: z.literal('vane-traverse'),
    ...reading,
    ...tapped,
    duct: quantity('length'),
    velocities: z.array(quantity('velocity', 'any')).min(1).max(80),
  }),
  z.strictObject({
    kind: z.literal('point'),
    ...reading,
    flow: quantity('flow', 'any'),
    pressure: quantity('pressure', 'any'),
    pressureKind: z.enum(['static', 'total']),
    power: quantity('power', 'any').optional().describe('at the shaft'),
    density: quantity('density').optional().describe('absent: 1.2 kg/m3'),
  }),
]);
export type Reading = z.output<typeof READING>;
export type ReadingKind = Reading['kind'];
export type ReadingOf<K extends ReadingKind> = Extract<Reading, { kind: K }>;

export const MOTOR = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('brushless'),
    speedConstant: quantity('speedConstant').describe('speed over voltage without load'),
    resistance: quantity('resistance').describe('winding, from lead to lead'),
    noLoadCurrent: quantity('current', 'not-negative'),
    supply: quantity('voltage'),
    supplyResistance: quantity('resistance', 'not-negative').optional().describe('battery and leads'),
    throttle: quantity('fraction', 'share').optional().describe('duty of the controller; absent: full'),
    controllerLoss: quantity('fraction', 'share').optional(),
    continuousCurrent: quantity('current').optional().describe('that the motor bears for ever'),
    batteryEnergy: quantity('energy').optional(),
  }),
  z.strictObject({
    kind: z.literal('series'),
    points: z
      .array(
        z.strictObject({
          torque: quantity('torque', 'not-negative'),
          speed: quantity('speed'),
          current: quantity('current', 'not-negative'),
        }),
      )
      .min(2, 'a series motor needs two points or more: add a measured point')
      .max(50),
    supply: quantity('voltage'),
    continuousCurrent: quantity('current').optional(),
  }),
  z.strictObject({
    kind: z.literal('induction'),
    frequency: quantity('frequency'),
    poles: z.number().int().min(2).max(12),
    ratedPower: quantity('power').describe('at the shaft, on the plate'),
    ratedSpeed: quantity('speed'),
    ratedCurrent: quantity('current'),
    supply: quantity('voltage'),
    phases: z.enum(['single', 'three']),
    powerFactor: quantity('fraction', 'share').optional().describe('on the plate'),
    efficiency: quantity('fraction', 'share').optional().describe('on the plate'),
    ratio: quantity('coefficient').optional().describe('wheel speed over motor speed, by belt'),
  }),
]);
export type Motor = z.output<typeof MOTOR>;

export const ROTOR = z.strictObject({
  form: z.enum(['disc', 'ring', 'bladed-disc']),
  material: CATALOGUE_ID.describe('rotor material id of the catalogue'),
  strength: quantity('stress').optional().describe('own figure, such as from broken test bars'),
  bore: quantity('length', 'not-negative').describe('hole for the shaft; zero: none'),
  thickness: quantity('length').optional().describe('of the disc or ring, along the axis'),
  blades: z.number().int().min(1).max(200).optional(),
  bladeMass: quantity('mass').optional().describe('of one blade'),
  bladeRadius: quantity('length').optional().describe('axis to centre of mass of a blade'),
  bladeRootArea: quantity('area').optional().describe('section that holds one blade'),
  maxSpeed: quantity('speed')
    .optional()
    .describe('highest speed that it may reach; absent: what the motor gives'),
  temperature: quantity('temperature').optional().describe('of the wheel while it runs'),
  cutOffGap: quantity('length').optional().describe('wheel to the cut-off edge of the housing'),
  rimGap: quantity('length').optional().describe('running clearance at the rim'),
});
export type Rotor = z.output<typeof ROTOR>;

/** A fan that may be put into the shop: its tests, its motor and its rotor. */
export const FAN_DESIGN = z.strictObject({
  id: ID,
  name: z.string().max(80).optional(),
  note: z.string().max(2000).optional(),
  type: z.enum(['radial', 'mixed', 'axial', 'staged-axial']),
  blading: z.enum(['backward', 'radial', 'forward']).optional().describe('of a radial wheel'),
  wheelDiameter: quantity('length'),
  outletDiameter: quantity('length'),
  speed: quantity('speed').optional().describe('at which it would run, where it has no motor here'),
  readings: z.array(READING).max(200),
  motor: MOTOR.optional(),
  rotor: ROTOR.optional(),
});
export type FanDesign = z.output<typeof FAN_DESIGN>;

/**
 * How far the figures of the reckoning may be off: plus or minus what holds nineteen times in twenty. Absent: the
 * declared defaults.
 */
export const RANGES = z.strictObject({
  fan: quantity('fraction', 'not-negative').optional().describe('pressure of a fan whose curve has no tests'),
  friction: quantity('fraction', 'not-negative').optional(),
  coefficients: quantity('fraction', 'not-negative').optional().describe('hoods and fittings'),
  separator: quantity('fraction', 'not-negative').optional().describe('absent: the spread of its models'),
  filter: quantity('fraction', 'not-negative').optional().describe('clean resistance and cake'),
});
