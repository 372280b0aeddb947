import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOTOR_STARTS } from '../../../core/document/commands/fan-defaults.ts';
import { readDocument, readValue } from '../../../core/document/read.ts';
import { FORMAT_VERSION } from '../../../core/document/schema.ts';
import { documentToJson, writeDocument } from '../../../core/document/write.ts';
import { fileOf } from './samples.ts';

const number = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const length = fc.oneof(
  number(1e-3, 2),
  fc.integer({ min: 1, max: 900 }).map((mm) => `${mm} mm`),
  fc.constant('reach / 10'),
);
// readings admit any number, also what cannot be
const pressure = fc.oneof(
  number(-9000, 9000),
  fc.integer({ min: -40, max: 90 }).map((inches) => `${inches} in wg`),
);
const share = fc.oneof(
  number(1e-4, 1),
  fc.integer({ min: 1, max: 100 }).map((percent) => `${percent} %`),
);
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
const common = {
  speed: maybe(number(-10, 40_000)),
  voltage: maybe(fc.constantFrom('24 V', 230)),
  current: maybe(number(-5, 60)),
  throttle: maybe(fc.constantFrom('120 %', 0.5)),
  energy: maybe(fc.constantFrom('40 Wh', 0)),
  errors: maybe(fc.record({ pressure: maybe(number(1, 50)), size: maybe(length), speed: maybe(share) })),
};
const of = (kind: string, fields: Record<string, fc.Arbitrary<unknown>>) =>
  fc.record({ kind: fc.constant(kind), ...common, ...fields });
const reading = fc.oneof(
  of('sealed-lift', { lift: number(-1, 3), tube: maybe(length), vessel: maybe(length) }),
  of('sealed-suction', { suction: pressure }),
  of('hole-plate', { suction: pressure, hole: length, holes: maybe(fc.integer({ min: 1, max: 9 })) }),
  of('orifice', {
    bore: length,
    pipe: length,
    taps: fc.constantFrom('corner', 'flange', 'one-and-half'),
    difference: pressure,
    suction: pressure,
  }),
  of('inlet-throat', {
    inlet: fc.constantFrom('cone', 'bell'),
    throat: length,
    difference: pressure,
    suction: pressure,
  }),
  of('pitot-traverse', {
    duct: length,
    heads: fc.array(pressure, { minLength: 1, maxLength: 12 }),
    suction: pressure,
  }),
  of('vane-traverse', {
    duct: length,
    velocities: fc.array(number(-5, 40), { minLength: 1, maxLength: 12 }),
    suction: pressure,
  }),
  of('point', { flow: number(-1, 5), pressure, pressureKind: fc.constantFrom('static', 'total') }),
);
const fan = fc.record({
  name: maybe(fc.string({ unit: 'grapheme', maxLength: 40 })),
  type: fc.constantFrom('radial', 'mixed', 'axial', 'staged-axial'),
  blading: maybe(fc.constantFrom('backward', 'radial', 'forward')),
  wheelDiameter: length,
  outletDiameter: length,
  readings: fc.array(reading, { maxLength: 8 }),
  motor: maybe(fc.constantFrom(...Object.values(MOTOR_STARTS))),
  rotor: maybe(
    fc.record({
      form: fc.constantFrom('disc', 'ring', 'bladed-disc'),
      material: fc.constant('some-stuff'),
      bore: fc.constantFrom(0, '8 mm'),
      blades: maybe(fc.integer({ min: 1, max: 40 })),
      rimGap: maybe(length),
    }),
  ),
});

const cleaned = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe('any document with fans', () => {
  it('comes back equal, and its text is then stable', () => {
    const shop = fc.record({
      fans: fc.array(fan, { maxLength: 4 }),
      ranges: maybe(fc.record({ friction: maybe(share), filter: maybe(share) })),
      stands: fc.nat(5),
    });
    fc.assert(
      fc.property(shop, ({ fans, ranges, stands }) => {
        const file = fileOf('one-router');
        file.fans = cleaned(
          fans.map((one, i) => ({
            ...one,
            id: `design-${i}`,
            readings: one.readings.map((row, r) => ({ ...row, id: `r${r}` })),
          })),
        );
        if (ranges) file.ranges = cleaned(ranges);
        const thing = file.things.find(({ kind }: { kind: string }) => kind === 'fan');
        if (stands < fans.length) thing.design = `design-${stands}`;
        const read = readValue(file);
        if (!read.ok) throw new Error(JSON.stringify(read.problems));
        expect(read.document.fans).toHaveLength(fans.length);
        const text = writeDocument(read.document);
        const back = readDocument(text);
        if (!back.ok) throw new Error(JSON.stringify(back.problems));
        expect(back.document).toEqual(read.document);
        expect(writeDocument(back.document)).toBe(text);
      }),
      { seed: 20250318, numRuns: 150 },
    );
  }, 30_000);
});

describe('a document of version 1', () => {
  it('opens as one of this version without fans, otherwise the same', () => {
    const file = fileOf('five-machines');
    const now = readValue(file);
    const old = readValue({ ...file, version: 1 });
    if (!now.ok || !old.ok) throw new Error('it was refused');
    expect(old.document).toEqual(now.document);
    expect(old.document.version).toBe(FORMAT_VERSION);
    expect(documentToJson(old.document)).toMatchObject({ version: FORMAT_VERSION, fans: [] });
  });
});

describe('what is wrong with a fan', () => {
  const file = (change: (fan: Record<string, unknown>) => void) => {
    const shop = fileOf('one-router');
    const fan = {
      id: 'own',
      type: 'radial',
      wheelDiameter: 0.3,
      outletDiameter: 0.1,
      readings: [{ id: 'a', kind: 'sealed-suction', suction: '2 kPa' }],
    };
    change(fan);
    return readValue({ ...shop, fans: [fan] });
  };
  it.each([
    [
      'wheelDiameter',
      (fan: Record<string, unknown>) => (fan.wheelDiameter = '-1 m'),
      /fans\[0\].*wheelDiameter/,
    ],
    ['name of a thing', (fan: Record<string, unknown>) => (fan.id = 'cyclone'), /"cyclone" is taken/],
    [
      'two readings of one name',
      (fan: Record<string, unknown>) => (fan.readings = [...(fan.readings as []), ...(fan.readings as [])]),
      /readings\[1\].*"a" is taken/,
    ],
    [
      'a unit that does not fit',
      (fan: Record<string, unknown>) =>
        (fan.readings = [{ id: 'a', kind: 'sealed-suction', suction: '2 mm' }]),
      /suction: `2 mm`/,
    ],
  ])('is told by its path: %s', (_, change, words) => {
    const read = file(change);
    if (read.ok) throw new Error('it was taken');
    expect(read.problems[0]!.message).toMatch(words);
  });
});
