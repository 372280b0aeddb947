import type { ShopDocument } from '../../../core/document/schema.ts';
import * as s from './shop.ts';

type Row = readonly [flow_m3s: number, pressure_Pa: number, power_W: number];

/** A radial wheel: shaft power falls towards shut-off. */
export const RADIAL_ROWS: readonly Row[] = [
  [0, 3000, 90],
  [0.05, 2900, 190],
  [0.1, 2300, 290],
  [0.15, 1200, 370],
  [0.18, 100, 400],
];
/** An axial wheel: shaft power is highest at shut-off. */
export const AXIAL_ROWS: readonly Row[] = [
  [0, 2000, 400],
  [0.05, 1600, 340],
  [0.1, 1100, 270],
  [0.15, 600, 190],
  [0.18, 100, 120],
];

export const BRUSHLESS: s.Part = {
  kind: 'brushless',
  speedConstant: 800,
  resistance: 0.05,
  noLoadCurrent: 1,
  supply: 18,
  supplyResistance: 0.02,
  continuousCurrent: 40,
  batteryEnergy: '500 Wh',
};
/** Suited to the same wheels by a belt: 2 poles on 50 Hz, 4.2 to 1. */
export const INDUCTION: s.Part = {
  kind: 'induction',
  frequency: 50,
  poles: 2,
  ratedPower: 550,
  ratedSpeed: 2800,
  ratedCurrent: 1.35,
  supply: 400,
  phases: 'three',
  powerFactor: 0.8,
  efficiency: 0.74,
  ratio: 4.2,
};
export const SERIES: s.Part = {
  kind: 'series',
  supply: 230,
  continuousCurrent: 4,
  points: [
    { torque: 0.8, speed: 6000, current: 5 },
    { torque: 0.4, speed: 10500, current: 3.2 },
    { torque: 0.15, speed: 16000, current: 2 },
  ],
};

/** A fan of the list with points measured at 12000 rpm. */
export const design = (rows: readonly Row[], motor: s.Part | null, more: s.Part = {}): s.Part => ({
  id: 'blower',
  type: rows === AXIAL_ROWS ? 'axial' : 'radial',
  wheelDiameter: 0.18,
  outletDiameter: 0.1,
  readings: rows.map(([flow, pressure, power], i) => ({
    id: `r${i}`,
    kind: 'point',
    flow,
    pressure,
    pressureKind: 'static',
    power,
    density: 1.2,
    speed: 12000,
  })),
  ...(motor === null ? {} : { motor }),
  ...more,
});

/** One port, a gate, the fan, an exhaust; the gate stands as each setting says. */
export const drivenShop = (
  fan: s.Part,
  gates: readonly number[] = [1],
  change: { readonly thing?: s.Part; readonly more?: s.Part } = {},
): ShopDocument =>
  s.shopOf(
    [s.port('hood'), { ...s.STEADY_FAN, design: 'blower', ...change.thing }, s.exhaust()],
    [
      s.run('R1', 'hood', 'fan', [s.straight(2), s.gate('G')], { diameter: 0.12 }),
      s.run('R2', 'fan', 'out', [s.straight(1)], { diameter: 0.12 }),
    ],
    {
      fans: [fan],
      settings: gates.map((opening, i) => ({ name: `gate ${i}`, gates: { G: opening } })),
      ...change.more,
    },
  );
