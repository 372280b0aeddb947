import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benchFan } from '../../../core/fan-bench/bench.ts';
import { designCurve } from '../../../core/fan-bench/design-curve.ts';
import { testSheet } from '../../../core/summary/test-sheet.ts';
import { readValue } from '../../../core/document/read.ts';
import { roomAir } from '../../../core/network/room-air.ts';
import type { Part } from './synthetic.ts';

/** Mostly what a shop has, now and then what no shop has. */
const above = fc.oneof(
  { weight: 12, arbitrary: fc.double({ min: 0.01, max: 0.4, noNaN: true }) },
  { weight: 1, arbitrary: fc.constantFrom(1e-300, 1e-12, 0.001, 1, 293, 1e6) },
);
const any = fc.oneof(
  { weight: 12, arbitrary: fc.double({ min: 0.01, max: 5000, noNaN: true }) },
  { weight: 1, arbitrary: fc.constantFrom(0, -1, 1e-300, 1e8, -1e8, 0.5, 1, 100, 3000, 6500) },
);
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const common = {
  speed: maybe(any),
  voltage: maybe(any),
  current: maybe(any),
  throttle: maybe(any),
  temperature: maybe(fc.constantFrom(288, 290, 293, 295, 300, 5, 1e9)),
  energy: maybe(any),
  time: maybe(any),
  errors: maybe(
    fc.record({ pressure: maybe(above), size: maybe(above), flow: maybe(above), speed: maybe(above) }),
  ),
};
const tapped = { ...common, suction: any, tapDiameter: maybe(above) };

const reading: fc.Arbitrary<Part> = fc.oneof(
  fc.record({
    kind: fc.constant('sealed-lift'),
    ...common,
    lift: any,
    tube: maybe(above),
    vessel: maybe(above),
  }),
  fc.record({ kind: fc.constant('sealed-suction'), ...common, suction: any }),
  fc.record({
    kind: fc.constant('hole-plate'),
    ...tapped,
    hole: above,
    holes: maybe(fc.integer({ min: 1, max: 100 })),
    box: maybe(above),
    dischargeCoefficient: maybe(above),
  }),
  fc.record({
    kind: fc.constant('orifice'),
    ...tapped,
    bore: above,
    pipe: above,
    taps: fc.constantFrom('corner', 'flange', 'one-and-half'),
    difference: any,
    upstreamSuction: maybe(any),
  }),
  fc.record({
    kind: fc.constant('inlet-throat'),
    ...tapped,
    inlet: fc.constantFrom('cone', 'bell'),
    throat: above,
    difference: any,
  }),
  fc.record({
    kind: fc.constant('pitot-traverse'),
    ...tapped,
    duct: above,
    heads: fc.array(any, { minLength: 1, maxLength: 6 }),
  }),
  fc.record({
    kind: fc.constant('vane-traverse'),
    ...tapped,
    duct: above,
    velocities: fc.array(any, { minLength: 1, maxLength: 6 }),
  }),
  fc.record({
    kind: fc.constant('point'),
    ...common,
    flow: any,
    pressure: any,
    pressureKind: fc.constantFrom('static', 'total'),
    power: maybe(any),
    density: maybe(above),
  }),
);

const motor = fc.record({
  kind: fc.constant('brushless'),
  speedConstant: above,
  resistance: above,
  noLoadCurrent: above,
  supply: above,
});

const design = fc.record({
  id: fc.constant('F1'),
  type: fc.constantFrom('radial', 'mixed', 'axial', 'staged-axial'),
  blading: maybe(fc.constantFrom('backward', 'radial', 'forward')),
  wheelDiameter: above,
  outletDiameter: above,
  speed: maybe(above),
  readings: fc
    .array(reading, { maxLength: 6 })
    .map((list) => list.map((one, i): Part => ({ id: `T${i}`, ...one }))),
  motor: maybe(motor),
});

const air = fc.constantFrom<Part>(
  { kind: 'given', density: 1.2, viscosity: 1.8e-5 },
  { kind: 'weather', temperature: 293.15, humidity: 0.5, altitude: 200 },
  { kind: 'weather', temperature: 293.15, humidity: 0.5, altitude: 1500 },
  { kind: 'weather', temperature: 5, humidity: 0.5, altitude: 0 },
);

/** Every number of a result, wherever it stands. */
function numbersOf(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersOf);
}

describe('the bench', () => {
  it(
    'throws for no fan that the document admits, and never shows what is no number',
    { timeout: 60_000 },
    () => {
      let curves = 0;
      let refused = 0;
      fc.assert(
        fc.property(design, air, (fan, room) => {
          const read = readValue(
            {
              format: 'chipdraft-shop',
              version: 2,
              name: 'any',
              options: { compressible: room['kind'] === 'weather' },
              air: room,
              things: [],
              runs: [],
              fans: [JSON.parse(JSON.stringify(fan))],
            },
            { allowIncomplete: true },
          );
          if (!read.ok) return void refused++;
          const { document } = read;
          const result = benchFan(document, 'F1', { samples: 5 });
          const wrong = numbersOf(result).filter((number) => !Number.isFinite(number));
          expect(wrong).toEqual([]);
          if (result.curve !== null) curves++;
          expect(testSheet(document, 'F1', { units: 'si', paper: 'a4' })).not.toMatch(
            /NaN|Infinity|undefined/,
          );
          for (const one of result.readings)
            expect(one.used || one.problems.length > 0 || result.curve === null).toBe(true);
          if (room['temperature'] !== 5) designCurve(document.fans[0]!, roomAir(document));
        }),
        { seed: 4103, numRuns: 600 },
      );
      // the property says something only if curves come out of many of them
      expect(curves, `${refused} were refused`).toBeGreaterThan(60);
    },
  );
});
