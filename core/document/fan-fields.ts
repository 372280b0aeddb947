import { choiceRow, countRow, flagRow, quantityRow, textRow } from './field.ts';
import type { FieldRow } from './field.ts';
import { plain, ROTOR_MATERIAL_OPTIONS } from './field-options.ts';
import { readingRows } from './reading-fields.ts';
import type { FanDesign, Motor } from './schema-fans.ts';

export const FAN_TYPES = plain({
  radial: 'radial: air leaves at the rim',
  mixed: 'mixed flow',
  axial: 'axial: a propeller in a ring',
  'staged-axial': 'axial, several stages',
});
const BLADINGS = plain({
  backward: 'back',
  radial: 'not: straight out',
  forward: 'forward',
});

const rated = quantityRow('Motor', 'motor.continuousCurrent', 'Current that it bears for ever', 'current', {
  optional: true,
  hint: 'of the winding',
});
const supply = quantityRow('Motor', 'motor.supply', 'Supply', 'voltage');

const MOTOR_ROWS: { readonly [K in Motor['kind']]: (motor: Extract<Motor, { kind: K }>) => FieldRow[] } = {
  brushless: () => [
    quantityRow('Motor', 'motor.speedConstant', 'Speed constant (Kv)', 'speedConstant', {
      hint: 'speed over voltage without load',
    }),
    quantityRow('Motor', 'motor.resistance', 'Winding resistance', 'resistance', {
      hint: 'from lead to lead',
    }),
    quantityRow('Motor', 'motor.noLoadCurrent', 'Current without load', 'current', { rule: 'not-negative' }),
    supply,
    quantityRow('Motor', 'motor.supplyResistance', 'Battery and leads', 'resistance', {
      optional: true,
      rule: 'not-negative',
      hint: 'empty: none',
    }),
    quantityRow('Motor', 'motor.throttle', 'Throttle', 'fraction', {
      optional: true,
      rule: 'share',
      hint: 'empty: full',
    }),
    quantityRow('Motor', 'motor.controllerLoss', 'Loss of the controller', 'fraction', {
      optional: true,
      rule: 'share',
      hint: 'empty: the usual 3 %',
    }),
    rated,
    quantityRow('Motor', 'motor.batteryEnergy', 'Battery', 'energy', {
      optional: true,
      hint: 'what it can give, such as 500 Wh',
    }),
  ],
  series: ({ points }) => [
    supply,
    rated,
    ...points.flatMap((_, i) => [
      quantityRow('Motor points', `motor.points.${i}.torque`, `Torque ${i + 1}`, 'torque', {
        rule: 'not-negative',
      }),
      quantityRow('Motor points', `motor.points.${i}.speed`, `Speed ${i + 1}`, 'speed'),
      quantityRow('Motor points', `motor.points.${i}.current`, `Current ${i + 1}`, 'current', {
        rule: 'not-negative',
      }),
    ]),
  ],
  induction: () => [
    quantityRow('Motor', 'motor.ratedPower', 'Power on the plate', 'power', { hint: 'at the shaft' }),
    quantityRow('Motor', 'motor.ratedSpeed', 'Speed on the plate', 'speed'),
    quantityRow('Motor', 'motor.ratedCurrent', 'Current on the plate', 'current'),
    supply,
    choiceRow('Motor', 'motor.phases', 'Phases', plain({ single: 'single', three: 'three' })),
    quantityRow('Motor', 'motor.frequency', 'Mains', 'frequency'),
    countRow('Motor', 'motor.poles', 'Poles', { hint: 'two turn a little below 3000 or 3600 rpm' }),
    quantityRow('Motor', 'motor.powerFactor', 'Power factor', 'fraction', {
      optional: true,
      rule: 'share',
      hint: 'empty: the usual one',
    }),
    quantityRow('Motor', 'motor.efficiency', 'Efficiency', 'fraction', {
      optional: true,
      rule: 'share',
      hint: 'empty: the usual one',
    }),
    quantityRow('Motor', 'motor.ratio', 'Wheel speed over motor speed', 'coefficient', {
      optional: true,
      hint: 'empty: on the same shaft',
    }),
  ],
};

export const MOTOR_WORDS: Readonly<Record<Motor['kind'], string>> = {
  brushless: 'DC, brushless',
  series: 'series wound, by points',
  induction: 'induction, from its plate',
};

export function motorRows(motor: Motor | undefined): FieldRow[] {
  const on = flagRow('Motor', 'motor', 'Its motor is known', { optional: true });
  if (motor === undefined) return [on];
  const rows = MOTOR_ROWS[motor.kind] as (motor: Motor) => FieldRow[];
  return [on, choiceRow('Motor', 'motor.kind', 'Motor', plain(MOTOR_WORDS)), ...rows(motor)];
}

export function rotorRows({ rotor, type }: Pick<FanDesign, 'rotor' | 'type'>): FieldRow[] {
  const on = flagRow('Rotor', 'rotor', 'Its rotor is to be judged', { optional: true });
  if (rotor === undefined) return [on];
  const length = (path: string, label: string, hint: string) =>
    quantityRow('Rotor', `rotor.${path}`, label, 'length', { optional: true, hint });
  return [
    on,
    choiceRow(
      'Rotor',
      'rotor.form',
      'Form',
      plain({ disc: 'disc', ring: 'thin ring', 'bladed-disc': 'disc with blades' }),
    ),
    choiceRow('Rotor', 'rotor.material', 'Material', ROTOR_MATERIAL_OPTIONS),
    quantityRow('Rotor', 'rotor.bore', 'Hole for the shaft', 'length', {
      rule: 'not-negative',
      hint: 'zero: none',
    }),
    quantityRow('Rotor', 'rotor.maxSpeed', 'Highest speed', 'speed', {
      optional: true,
      hint: 'empty: what the motor gives without load',
    }),
    quantityRow('Rotor', 'rotor.strength', 'Strength, own figure', 'stress', {
      optional: true,
      hint: 'empty: that of the material',
    }),
    length('thickness', 'Thickness', 'of the disc or ring, along the axis'),
    countRow('Rotor', 'rotor.blades', 'Number of blades', { optional: true }),
    quantityRow('Rotor', 'rotor.bladeMass', 'Mass of one blade', 'mass', { optional: true }),
    length('bladeRadius', 'Axis to middle of a blade', 'to its centre of mass'),
    quantityRow('Rotor', 'rotor.bladeRootArea', 'Section that holds a blade', 'area', { optional: true }),
    length('rimGap', 'Gap at the rim', 'running clearance to the housing or shroud'),
    ...(type === 'radial' || rotor.cutOffGap !== undefined
      ? [length('cutOffGap', 'Gap at the cut-off edge', 'wheel to the edge of the housing')]
      : []),
    quantityRow('Rotor', 'rotor.temperature', 'Temperature of the wheel', 'temperature', {
      optional: true,
      hint: 'while it runs; empty: that of the shop',
    }),
  ];
}

/** What a fan is, apart from its tests, motor and rotor. */
export function designRows({ type, blading }: Pick<FanDesign, 'type' | 'blading'>): FieldRow[] {
  return [
    textRow('Fan', 'name', 'Name', { optional: true }),
    textRow('Fan', 'id', 'Short name', { hint: 'a letter, then letters, digits, - and _' }),
    choiceRow('Fan', 'type', 'Type', FAN_TYPES),
    ...(type === 'radial' || blading !== undefined
      ? [choiceRow('Fan', 'blading', 'Blades lean', BLADINGS, { optional: true })]
      : []),
    quantityRow('Fan', 'wheelDiameter', 'Wheel diameter', 'length', { hint: 'outside, over the blades' }),
    quantityRow('Fan', 'outletDiameter', 'Outlet diameter', 'length'),
    quantityRow('Fan', 'speed', 'Speed to show it at', 'speed', {
      optional: true,
      hint: 'empty: that of its readings',
    }),
    textRow('Fan', 'note', 'Notes', { optional: true }),
  ];
}

/** Every field of a fan of the list. */
export const fanDesignRows = (design: FanDesign): FieldRow[] => [
  ...designRows(design),
  ...design.readings.flatMap(readingRows),
  ...motorRows(design.motor),
  ...rotorRows(design),
];
