import { settingNames } from '../../../core/network/apply-setting.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { openShop, solveSetting } from '../../../core/network/solve.ts';
import type { SettingResult } from '../../../core/network/solution.ts';
import { sourcesOf } from '../../../core/sources/sources-of.ts';
import type { SourceRow } from '../../../core/sources/source-row.ts';
import * as s from '../network/shop.ts';

/** A shop with its results and what they rest on. */
export function rowsOf(
  document: ShopDocument,
  hours = true,
): { settings: readonly SettingResult[]; rows: readonly SourceRow[] } {
  const opened = openShop(document);
  if (!opened.ok) throw new Error(opened.problems.map(({ message }) => message).join('\n'));
  const { bench } = opened;
  const settings = settingNames(document).map((name) => solveSetting(bench, name));
  return { settings, rows: sourcesOf({ shop: bench.shop, settings, units: document.units, hours }) };
}

const wheel = { type: 'radial', blading: 'backward', wheelDiameter: 0.3, outletDiameter: 0.1 };
const tap = { suction: 1500 };
const disc = { form: 'disc', material: 'pla-in-plane', bore: 0, thickness: 0.006, maxSpeed: 3000 };
const bladed = { form: 'bladed-disc', blades: 8, bladeMass: 0.01, bladeRadius: 0.07, bladeRootArea: 1.2e-4 };

/** Fans with every kind of reading, motor and rotor. */
const FANS: readonly s.Part[] = [
  {
    id: 'tested',
    ...wheel,
    speed: 2850,
    readings: [
      { id: 'T1', kind: 'sealed-lift', lift: 0.2, speed: 2850, energy: 9e4, time: 300 },
      { id: 'T2', kind: 'sealed-suction', suction: 1900 },
      { id: 'T3', kind: 'hole-plate', hole: 0.05, ...tap },
      { id: 'T4', kind: 'orifice', bore: 0.05, pipe: 0.1, taps: 'corner', difference: 800, ...tap },
      { id: 'T5', kind: 'inlet-throat', inlet: 'cone', throat: 0.08, difference: 200, ...tap },
      { id: 'T6', kind: 'inlet-throat', inlet: 'bell', throat: 0.08, difference: 200, ...tap },
      { id: 'T7', kind: 'pitot-traverse', duct: 0.1, heads: [120, 130, 140, 130], ...tap },
      { id: 'T8', kind: 'vane-traverse', duct: 0.1, velocities: [14, 15, 15, 14], ...tap },
    ],
    motor: {
      kind: 'induction',
      ...{ frequency: 50, poles: 2, ratedPower: 1100, ratedSpeed: 2850, ratedCurrent: 2.5, supply: 400 },
      ...{ phases: 'three', ratio: 1.1 },
    },
    rotor: { ...disc, cutOffGap: 0.02, temperature: 300 },
  },
  {
    id: 'bought',
    ...wheel,
    speed: 2850,
    readings: [0, 0.05, 0.1, 0.15].map((flow, i) => ({
      ...{ id: `P${i}`, kind: 'point', flow, pressure: 2000 - 60000 * flow * flow },
      ...{ pressureKind: 'static', power: 300 + 2000 * flow },
    })),
    motor: {
      kind: 'brushless',
      ...{ speedConstant: 80, resistance: 0.1, noLoadCurrent: 1, supply: 48, batteryEnergy: 1e6 },
    },
    rotor: { ...disc, bore: 0.01, material: 'mdf' },
  },
  {
    id: 'vacuum',
    ...wheel,
    readings: [],
    motor: {
      kind: 'series',
      points: [
        { torque: 0.1, speed: 20000, current: 3 },
        { torque: 0.3, speed: 15000, current: 6 },
      ],
      supply: 230,
    },
    rotor: { ...disc, ...bladed },
  },
  { id: 'ring', ...wheel, readings: [], rotor: { ...disc, form: 'ring', bore: 0.28 } },
];

/** One shop with every kind of hood, piece, junction, end, device, reading, motor and rotor. */
export function everyKind(more: s.Part = {}, device: s.Part = {}): ShopDocument {
  const ports: s.Part[] = [
    { kind: 'entry', entry: 'bell' },
    { kind: 'tapered', angle: 1, shape: 'round' },
    { kind: 'slot', slotArea: 0.01 },
    { kind: 'brush-shoe', gapArea: 0.006 },
    { kind: 'given', coefficient: 0.7 },
    { kind: 'measured', loss: 300, flow: 0.1 },
  ].map((hood, i) =>
    s.port(`P${i}`, {
      hood,
      needs: i === 0 ? { capture: { hood: 'plain', velocity: 0.5, distance: 0.1, faceArea: 0.01 } } : {},
      ...(i === 1 ? { dust: 'sawdust-dry', cut: CUT } : {}),
      ...(i === 2 ? { needs: { velocity: 15 } } : {}),
      ...(i === 3 ? { dust: 'own', dustRate: 1e-4 } : {}),
    }),
  );
  const things: s.Part[] = [
    ...ports,
    s.leak('gap', 1e-4),
    { id: 'W', kind: 'wye', angle: 0.5 },
    { id: 'T', kind: 'tee' },
    { id: 'B', kind: 'breeches', angle: 0.5 },
    { id: 'J', kind: 'joint' },
    { id: 'X', kind: 'tee' },
    { id: 'Y', kind: 'tee' },
    { id: 'Z', kind: 'tee' },
    s.cyclone('cyc', { bodyDiameter: 0.4, binVolume: 0.1, ...device }),
    { id: 'drum', kind: 'bin', inletDiameter: 0.1, outletDiameter: 0.1, baffle: true, catchShare: 0.5 },
    s.filter('bag'),
    { ...s.STEADY_FAN, speed: 2900, curve: CURVE },
    s.exhaust('out', { outlet: { kind: 'cap', gapRatio: 0.6 }, to: 'outside' }),
  ];
  const runs: s.Part[] = [
    s.run('R0', 'P0', 'W.main', [s.straight(1), ELBOW]),
    s.run('R1', 'P1', 'W.branch', [
      s.straight(1, { material: 'hose-smooth-bore', compression: 0.1 }),
      { kind: 'hose-bend', angle: 1, radius: 0.2 },
    ]),
    s.run('R2', 'W', 'T.main', [{ kind: 'reducer', to: 0.12, angle: 0.3 }, s.gate('G1')]),
    s.run('R3', 'P2', 'T.branch', [
      s.straight(1, { material: 'hose-corrugated' }),
      { kind: 'elbow', style: 'mitre', angle: 1 },
    ]),
    s.run('R4', 'T', 'J', [{ kind: 'reducer', to: 0.1, angle: 0.3 }, s.straight(1)], { diameter: 0.12 }),
    s.run('R5', 'P3', 'B.left', [s.straight(1)]),
    s.run('R6', 'P4', 'B.right', [{ kind: 'given', coefficient: 0.2 }]),
    s.run('R7', 'J', 'X.main', [{ kind: 'measured', loss: 30, flow: 0.1 }]),
    s.run('R8', 'B', 'X.branch', [
      { kind: 'bare', length: 1, diameter: 0.1, roughness: 1e-4, coefficient: 1 },
    ]),
    s.run('R9', 'X', 'Y.main', [
      s.straight(1),
      s.straight(1, { diameter: 0.08 }),
      s.straight(1, { diameter: 0.1 }),
    ]),
    s.run('R10', 'P5', 'Y.branch', [s.straight(1)]),
    s.run('R11', 'Y', 'Z.main', [s.straight(1)]),
    s.run('R12', 'gap', 'Z.branch', []),
    s.run('R13', 'Z', 'drum', [s.straight(1)]),
    s.run('R14', 'drum', 'cyc', [s.straight(1)]),
    s.run('R15', 'cyc', 'bag', [s.straight(1)]),
    s.run('R16', 'bag', 'fan', [s.straight(1)]),
    s.run('R17', 'fan', 'out', [s.straight(1)]),
  ];
  const air = { kind: 'weather', temperature: 293.15, humidity: 0.5 };
  const options = { compressible: true };
  const settings = [
    { name: 'open', gates: {} },
    { name: 'half', gates: { G1: 0.5 } },
  ];
  return s.shopOf(things, runs, { air, options, dusts: [OWN], settings, fans: FANS, ...more });
}

const CUT = { width: 0.003, depth: 0.02, feed: 0.05, density: 600, collected: 0.9 };
const ELBOW = { kind: 'elbow', style: 'smooth', angle: 1, radiusRatio: 1.5 };
const CURVE = {
  ...{ pressureKind: 'static', density: 1.2, speed: 2900 },
  points: [
    { flow: 0, pressure: 3000, power: 300, current: 2 },
    { flow: 0.2, pressure: 2500, power: 700, current: 3 },
    { flow: 0.5, pressure: 0, power: 900, current: 4 },
  ],
};
const OWN = {
  ...{ id: 'own', requiredVelocity: 16, particleDensity: 900, bulkDensity: 200, medianSize: 1e-4 },
  ...{ geometricDeviation: 2, combustible: true },
};
