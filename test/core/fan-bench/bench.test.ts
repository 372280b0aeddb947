import { describe, expect, it } from 'vitest';
import { benchFan } from '../../../core/fan-bench/bench.ts';
import { designCurve } from '../../../core/fan-bench/design-curve.ts';
import { roomAir } from '../../../core/network/room-air.ts';
import { behindPlate, design, KNOWN_FAN, shopWith } from './synthetic.ts';
import type { Part } from './synthetic.ts';
import { plate, PLATES, SEALED } from './raised.ts';

const bench = (readings: readonly Part[], more: Part = {}) =>
  benchFan(shopWith([design(readings, more)]), 'F1');
const row = (readings: readonly Part[], id: string, more: Part = {}) =>
  bench(readings, more).readings.find((reading) => reading.id === id)!;

describe('a reading that cannot be, or tells little, is told at its row and the others go on', () => {
  const GOOD = [SEALED, ...PLATES];
  const CASES: readonly (readonly [string, Part, string | null, boolean])[] = [
    ['negative suction', plate('X', 0.05, { suction: -800 }), 'suction', true],
    ['sealed without suction', { id: 'X', kind: 'sealed-suction', suction: 0, speed: 6500 }, 'suction', true],
    ['negative lift', { id: 'X', kind: 'sealed-lift', lift: -0.3, speed: 6500 }, 'lift', true],
    ['plate larger than the pipe in front', plate('X', 0.05, { box: 0.05 }), 'hole', true],
    [
      'many holes larger than the pipe behind',
      plate('X', 0.05, { holes: 4, tapDiameter: 0.1 }),
      'hole',
      true,
    ],
    ['coefficient above one', plate('X', 0.05, { dischargeCoefficient: 1.4 }), 'dischargeCoefficient', true],
    ['amps without volts', plate('X', 0.05, { current: 12 }), 'voltage', false],
    ['throttle over 100 %', plate('X', 0.05, { throttle: 1.2 }), 'throttle', false],
    ['energy without time', plate('X', 0.05, { energy: 3600 }), 'time', false],
    ['no speed while others have one', plate('X', 0.05, { speed: undefined }), 'speed', true],
    ['speed of zero', plate('X', 0.05, { speed: 0 }), 'speed', true],
    ['air of 500 C', plate('X', 0.05, { temperature: 773 }), 'temperature', true],
    [
      'bore as large as the pipe',
      {
        id: 'X',
        kind: 'orifice',
        bore: 0.1,
        pipe: 0.1,
        taps: 'corner',
        difference: 500,
        suction: 900,
        speed: 6500,
      },
      'bore',
      true,
    ],
    [
      'no difference',
      { id: 'X', kind: 'inlet-throat', inlet: 'cone', throat: 0.1, difference: 0, suction: 900, speed: 6500 },
      'difference',
      true,
    ],
    [
      'head below zero',
      { id: 'X', kind: 'pitot-traverse', duct: 0.1, heads: [100, -5], suction: 900, speed: 6500 },
      'heads[1]',
      true,
    ],
    [
      'no velocity at all',
      { id: 'X', kind: 'vane-traverse', duct: 0.1, velocities: [0, 0], suction: 900, speed: 6500 },
      'velocities',
      true,
    ],
    [
      'flow backwards',
      { id: 'X', kind: 'point', flow: -0.1, pressure: 900, pressureKind: 'static', speed: 6500 },
      'flow',
      true,
    ],
  ];
  it.each(CASES)('%s', (_, wrong, field, stops) => {
    const { readings, curve } = bench([...GOOD, wrong]);
    const found = readings.at(-1)!;
    expect(found.problems.map((problem) => problem.field)).toContain(field);
    for (const { message, remedy } of found.problems) {
      expect(message.length).toBeGreaterThan(10);
      expect(remedy.length).toBeGreaterThan(5);
    }
    expect(found.problems.some((problem) => problem.stops)).toBe(stops);
    expect(found.used).toBe(!stops);
    expect(readings.slice(0, -1).every(({ used, problems }) => used && problems.length === 0)).toBe(true);
    expect(curve).not.toBeNull();
  });

  it('the same reading twice counts once', () => {
    const twice = bench([...GOOD, { ...PLATES[1], id: 'again' }]);
    expect(twice.readings.at(-1)).toMatchObject({ used: false, problems: [{ field: null, stops: true }] });
    expect(twice.curve!.bandShare).toBe(bench(GOOD).curve!.bandShare);
  });

  it('a lift that falls as speed rises', () => {
    const fast = { id: 'X', kind: 'sealed-suction', suction: 2500, speed: 8000 };
    expect(row([...GOOD, fast], 'X').problems).toMatchObject([{ field: 'suction', stops: false }]);
    const honest = { ...fast, suction: 3000 * (8000 / 6500) ** 2 };
    expect(row([...GOOD, honest], 'X').problems).toEqual([]);
  });

  it('no reading: no curve, and a word why; one reading: a curve of assumed shape', () => {
    expect(bench([]).curve).toBeNull();
    expect(bench([]).findings.map(({ code }) => code)).toEqual(['fan-no-curve']);
    const one = bench([SEALED]);
    expect(one.curve).toMatchObject({ shapeAssumed: true, basis: 'assumed' });
    expect(one.readings[0]!.distance).toBeNull();
    expect(bench([PLATES[1]!]).curve).toMatchObject({ shapeAssumed: true });
    expect(bench([SEALED, PLATES[1]!]).curve).toMatchObject({
      shapeAssumed: false,
      basis: 'measured-by-user',
    });
  });

  it('no speed at all: the curve is that at whatever speed it ran', () => {
    const bare = [SEALED, ...PLATES].map((reading) => ({ ...reading, speed: undefined }));
    const found = bench(bare);
    expect(found.curve!.speed_rpm).toBeNull();
    expect(found.readings[1]!.flowCoefficient).toBeNull();
    const known = bench([SEALED, ...PLATES]).curve!;
    expect(
      Math.abs(found.curve!.points[10]!.staticPressure_Pa / known.points[10]!.staticPressure_Pa - 1),
    ).toBeLessThan(0.1);
  });
});

describe('the band', () => {
  it('shrinks with each plate, by 3 % of itself or more, and to less than half with four', () => {
    const shares = [1, 2, 3, 4, 5].map(
      (count) => bench([SEALED, ...PLATES].slice(0, count)).curve!.bandShare,
    );
    shares.slice(1).forEach((share, i) => expect(share, shares.join(' ')).toBeLessThan(0.97 * shares[i]!));
    expect(shares[4]!).toBeLessThan(shares[0]! / 2);
  });
  it('is the same for the same seed', () => {
    const document = shopWith([design([SEALED, ...PLATES])]);
    expect(benchFan(document, 'F1', { seed: 4 })).toEqual(benchFan(document, 'F1', { seed: 4 }));
    expect(benchFan(document, 'F1', { seed: 4 }).curve!.samples).not.toEqual(
      benchFan(document, 'F1', { seed: 5 }).curve!.samples,
    );
  });
  it('holds its curve, and its samples run over its flows', () => {
    const { points, samples } = bench([SEALED, ...PLATES]).curve!;
    for (const point of points) {
      expect(point.low_Pa).toBeLessThanOrEqual(point.staticPressure_Pa);
      expect(point.high_Pa).toBeGreaterThanOrEqual(point.staticPressure_Pa);
    }
    for (const sample of samples) expect(sample.staticPressure_Pa).toHaveLength(points.length);
  });
});

describe('readings at several speeds and densities', () => {
  const at = (id: string, hole: number, share: number): Part => ({
    id,
    kind: 'hole-plate',
    hole,
    suction: behindPlate(KNOWN_FAN, hole, 0.6, share).suction_Pa,
    speed: KNOWN_FAN.speed_rpm * share,
  });
  it('fall on one curve (affinity laws), none of them astray', () => {
    const mixed = bench([
      SEALED,
      at('A', 0.03, 0.7),
      at('B', 0.045, 1.2),
      at('C', 0.06, 0.8),
      at('D', 0.08, 1.1),
    ]);
    for (const { distance } of mixed.readings) expect(Math.abs(distance!)).toBeLessThan(2);
    const one = bench([SEALED, ...PLATES]).curve!;
    mixed.curve!.points.slice(0, 15).forEach(({ flow_m3s }, i) => {
      expect(Math.abs(flow_m3s / one.points[i]!.flow_m3s) || 1).toBeCloseTo(
        mixed.curve!.speed_rpm! / one.speed_rpm!,
        1,
      );
    });
  });
  it('a wrong one is told by its distance from the curve through the others', () => {
    const found = bench([SEALED, ...PLATES, { ...at('X', 0.05, 1), speed: 5500 }]);
    expect(Math.abs(found.readings.at(-1)!.distance!)).toBeGreaterThan(3);
    expect(found.findings.map(({ code }) => code)).toContain('reading-astray');
  });
});

describe('pressure and power of a reading', () => {
  it('a tap in a duct: velocity pressure is taken off; behind a hole the jet has spread', () => {
    const boxed = row([plate('P', 0.05)], 'P');
    const ducted = row([plate('P', 0.05, { tapDiameter: 0.1 })], 'P');
    // the pipe wins pressure back, so that the same suction tells a larger flow: by hand r = 4/0.6, 1/sqrt(1 - 2/r + 2/r^2)
    const r = 4 / 0.6;
    expect(ducted.flow_m3s!.value / boxed.flow_m3s!.value).toBeCloseTo(
      1 / Math.sqrt(1 - 2 / r + 2 / r ** 2),
      9,
    );
    const V = ducted.flow_m3s!.value / ((Math.PI / 4) * 0.01);
    expect(boxed.staticPressure_Pa!.value - ducted.staticPressure_Pa!.value).toBeCloseTo(0.6 * V * V, 6);
    expect(boxed.totalPressure_Pa!.value - boxed.staticPressure_Pa!.value).toBeCloseTo(
      0.6 * (boxed.flow_m3s!.value / ((Math.PI / 4) * 0.01)) ** 2,
      6,
    );
  });
  it('volts times amps, or battery energy over time with its larger error', () => {
    const metered = row([plate('P', 0.05, { voltage: 36, current: 20 })], 'P').inputPower_W!;
    const battery = row([plate('P', 0.05, { energy: 720 * 300, time: 300 })], 'P').inputPower_W!;
    expect(metered.value).toBeCloseTo(720, 9);
    expect(battery.value).toBeCloseTo(720, 9);
    expect(battery.error).toBeGreaterThan(2 * metered.error);
  });
  it('speed and shaft power come from the motor where no tachometer was read', () => {
    const motor = {
      kind: 'brushless',
      speedConstant: 200,
      resistance: 0.05,
      noLoadCurrent: 1.5,
      supply: 36,
      controllerLoss: 0,
    };
    const readings = [plate('P', 0.05, { speed: undefined, voltage: 36, current: 20, throttle: 1 })];
    const found = row(readings, 'P', { motor });
    // by hand: 200 (36 - 20 0.05) = 7000 rpm; 35 V (20 - 1.5) A = 647.5 W
    expect(found.speedFrom).toBe('motor');
    expect(found.speed_rpm!.value).toBeCloseTo(7000, 6);
    expect(found.shaftPower_W!.value).toBeCloseTo(647.5, 6);
    expect(found.speed_rpm!.error / 7000).toBeGreaterThan(0.01);
    expect(row(readings, 'P', { motor, speed: 6000 }).speedFrom).toBe('motor');
    expect(row([plate('P', 0.05, { speed: undefined })], 'P', { speed: 6000 }).speedFrom).toBe('given');
  });
});

describe('designCurve', () => {
  it('runs from the blocked inlet to free delivery and carries power where it was read', () => {
    const powered = PLATES.map((reading, i) => ({ ...reading, voltage: 36, current: 12 + 3 * i }));
    const document = shopWith([design([SEALED, ...powered])]);
    const found = designCurve(document.fans[0]!, roomAir(document));
    if (!found.ok) throw new Error(found.message);
    const { points } = found.input;
    expect(points[0]!.flow_m3s).toBe(0);
    expect(Math.abs(points.at(-1)!.pressure_Pa)).toBeLessThan(1e-6 * points[0]!.pressure_Pa);
    expect(points.every(({ power_W }) => power_W! > 0)).toBe(true);
    expect(points[10]!.power_W).toBeGreaterThan(points[0]!.power_W!);
  });
  it('is kept by the identity of the design', () => {
    const document = shopWith([design([SEALED, ...PLATES])]);
    const air = roomAir(document);
    expect(designCurve(document.fans[0]!, air)).toBe(designCurve(document.fans[0]!, { ...air }));
    const copy = structuredClone(document.fans[0]!);
    expect(designCurve(copy, air)).not.toBe(designCurve(document.fans[0]!, air));
    expect(designCurve(copy, air)).toEqual(designCurve(document.fans[0]!, air));
  });
});
