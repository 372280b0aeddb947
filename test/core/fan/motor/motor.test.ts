import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brushlessMotor } from '../../../../core/fan/motor/brushless.ts';
import { inductionMotor } from '../../../../core/fan/motor/induction.ts';
import type { MotorModel } from '../../../../core/fan/motor/motor-model.ts';
import { seriesMotor } from '../../../../core/fan/motor/series.ts';
import { CLEANER, MOTORS, ON_BATTERY, PLAIN, PLATE } from './motors.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any brushless motor that a supply can turn. */
const brushless = fc
  .record({
    speedConstant_rpmV: real(50, 5000),
    resistance_ohm: real(0.005, 2),
    noLoadCurrent_A: real(0, 3),
    supply_V: real(5, 60),
    supplyResistance_ohm: real(0, 0.2),
    throttle: real(0.2, 1),
    controllerLoss: real(0, 0.2),
  })
  .filter(
    (m) =>
      m.throttle * m.supply_V >
      1.5 * m.noLoadCurrent_A * (m.resistance_ohm + m.supplyResistance_ohm / (1 - m.controllerLoss)),
  )
  .map((m) => brushlessMotor({ ...m, continuousCurrent_A: null, batteryEnergy_J: null }));

/** Any series motor by points that lose a share of the input of their own. */
const series = fc
  .array(fc.record({ down: real(0.3, 0.9), up: real(1.05, 1.6) }), { minLength: 1, maxLength: 6 })
  .map((steps) => {
    let point = { torque_Nm: 0.5, speed_rpm: 8000, current_A: 6 };
    const points = [point];
    for (const { down, up } of steps) {
      const speed_rpm = point.speed_rpm * up;
      const torque_Nm = point.torque_Nm * down;
      const least = (torque_Nm * speed_rpm * Math.PI) / 30 / 230 + 0.2;
      const current_A = least + (point.current_A - least) * 0.8;
      if (current_A >= point.current_A) break;
      point = { torque_Nm, speed_rpm, current_A };
      points.push(point);
    }
    if (points.length < 2) points.push({ torque_Nm: 0.2, speed_rpm: 12000, current_A: 3 });
    return seriesMotor({ points, supply_V: 230, continuousCurrent_A: null });
  });

const induction = fc
  .record({
    poles: fc.constantFrom(2, 4, 6),
    slip: real(0.01, 0.1),
    ratedPower_W: real(100, 5000),
    powerFactor: real(0.5, 0.95),
    efficiency: real(0.4, 0.95),
    phases: fc.constantFrom('single' as const, 'three' as const),
    beltRatio: fc.option(real(0.5, 3), { nil: null }),
  })
  .map(({ poles, slip, ...m }) =>
    inductionMotor({
      ...m,
      poles,
      frequency_Hz: 50,
      ratedSpeed_rpm: (6000 / poles) * (1 - slip),
      supply_V: 230,
      ratedCurrent_A:
        m.ratedPower_W / (230 * m.powerFactor * m.efficiency * (m.phases === 'three' ? Math.sqrt(3) : 1)),
    }),
  );

const anyMotor: fc.Arbitrary<MotorModel> = fc.oneof(brushless, series, induction);
const kinds = [
  ['brushless', brushless, 71],
  ['series', series, 72],
  ['induction', induction, 73],
] as const;

describe.each(kinds)('a %s motor', (_name, motors: fc.Arbitrary<MotorModel>, seed) => {
  it('gives less torque the faster it turns, none without load', () => {
    fc.assert(
      fc.property(motors, real(0, 1), real(0.001, 1), (motor, share, step) => {
        const slow = share * motor.noLoadSpeed_rpm;
        const fast = slow + step * motor.noLoadSpeed_rpm;
        expect(motor.at(fast).torque_Nm).toBeLessThan(motor.at(slow).torque_Nm);
        const most = motor.at(0).torque_Nm;
        expect(Math.abs(motor.at(motor.noLoadSpeed_rpm).torque_Nm)).toBeLessThan(1e-9 * most);
      }),
      { seed, numRuns: 300 },
    );
  });

  it('turns all of its input into shaft power, copper and other losses', () => {
    fc.assert(
      fc.property(motors, real(0.02, 1), (motor, share) => {
        const at = motor.at(share * motor.noLoadSpeed_rpm);
        const parts = at.shaftPower_W + at.copperLoss_W + at.otherLoss_W;
        expect(Math.abs(parts - at.inputPower_W)).toBeLessThan(1e-9 * Math.abs(at.inputPower_W) + 1e-12);
        expect(at.copperLoss_W).toBeGreaterThanOrEqual(0);
        expect(at.otherLoss_W).toBeGreaterThanOrEqual(-1e-9 * at.inputPower_W);
        for (const value of Object.values(at)) expect(Number.isFinite(value)).toBe(true);
      }),
      { seed, numRuns: 300 },
    );
  });

  it('says its torque and its slope as the state does', () => {
    const out = new Float64Array(2);
    fc.assert(
      fc.property(motors, real(0.05, 0.95), (motor, share) => {
        const speed = share * motor.noLoadSpeed_rpm;
        const h = 1e-4 * motor.noLoadSpeed_rpm;
        motor.turn(speed, out);
        const [torque, slope] = [out[0]!, out[1]!];
        expect(torque).toBeCloseTo(motor.at(speed).torque_Nm, 9);
        motor.turn(speed + h, out);
        const ahead = out[0]!;
        motor.turn(speed - h, out);
        const mean = (ahead - out[0]!) / (2 * h);
        // a kink of the curve through points leaves the slopes on either side apart
        expect(slope).toBeLessThan(0);
        if (motor.kind !== 'series') expect(Math.abs(slope / mean - 1)).toBeLessThan(1e-6);
      }),
      { seed, numRuns: 200 },
    );
  });
});

describe('a supply reading', () => {
  it('leads back to the speed, torque and power that drew it', () => {
    fc.assert(
      fc.property(anyMotor, real(0.05, 0.9), (motor, share) => {
        // below the slowest point (8000 rpm above) the curve of a series motor is a guess
        const lowest = {
          induction: motor.bestSpeed_rpm,
          series: 8000,
          brushless: 0.05 * motor.noLoadSpeed_rpm,
        };
        const low = lowest[motor.kind];
        const speed = low + share * (motor.noLoadSpeed_rpm - low);
        const at = motor.at(speed);
        if (motor.kind === 'series' && at.inputPower_W > 230 * at.supplyCurrent_A * (1 + 1e-12)) return;
        // the terminals, behind what sags
        const voltage_V = motor.kind === 'brushless' ? at.inputPower_W / at.supplyCurrent_A : 230;
        const read = motor.fromSupply({ voltage_V, supplyCurrent_A: at.supplyCurrent_A, throttle: null });
        if (read === null) throw new Error('no answer');
        expect(read.speed_rpm / speed).toBeCloseTo(1, 6);
        expect(read.torque_Nm / at.torque_Nm).toBeCloseTo(1, 6);
        expect(read.shaftPower_W / at.shaftPower_W).toBeCloseTo(1, 6);
        expect(read.inputPower_W / at.inputPower_W).toBeCloseTo(1, 6);
      }),
      { seed: 74, numRuns: 400 },
    );
  });

  it('gives no answer, and no error, where there is none', () => {
    const values = fc.oneof(real(-10, 500), fc.constantFrom(0, Infinity, -Infinity, Number.NaN));
    fc.assert(
      fc.property(anyMotor, values, values, fc.option(values, { nil: null }), (motor, v, a, throttle) => {
        const read = motor.fromSupply({ voltage_V: v, supplyCurrent_A: a, throttle });
        for (const value of Object.values(read ?? {})) expect(Number.isFinite(value)).toBe(true);
      }),
      { seed: 75, numRuns: 500 },
    );
    expect(
      MOTORS.series.fromSupply({ voltage_V: 230, supplyCurrent_A: 4, throttle: 0.5 }),
      'dimmer',
    ).toBeNull();
    expect(
      MOTORS.brushless.fromSupply({ voltage_V: 18, supplyCurrent_A: 0.1, throttle: null }),
      'below no load',
    ).toBeNull();
  });

  it('knows a series motor on a lower voltage: same current, same torque, less speed', () => {
    const full = MOTORS.series.fromSupply({ voltage_V: 230, supplyCurrent_A: 4, throttle: null })!;
    const low = MOTORS.series.fromSupply({ voltage_V: 115, supplyCurrent_A: 4, throttle: null })!;
    expect(low.torque_Nm).toBeCloseTo(full.torque_Nm, 12);
    expect(low.speed_rpm / full.speed_rpm).toBeLessThan(0.5);
    expect(low.speed_rpm / full.speed_rpm).toBeGreaterThan(0.35);
  });
});

describe('a series motor', () => {
  it('passes through its points, in whatever order they come', () => {
    const turned = seriesMotor({
      points: [...CLEANER].reverse(),
      supply_V: 230,
      continuousCurrent_A: null,
    });
    for (const motor of [MOTORS.series, turned]) {
      for (const point of CLEANER) {
        expect(motor.at(point.speed_rpm).torque_Nm).toBeCloseTo(point.torque_Nm, 12);
        expect(motor.at(point.speed_rpm).motorCurrent_A).toBeCloseTo(point.current_A, 12);
      }
    }
  });
  it('gives for ever the torque at its continuous current', () => {
    const { lastingTorque_Nm: torque } = MOTORS.series;
    expect(torque).toBeGreaterThan(0.3);
    expect(torque).toBeLessThan(0.45);
  });
});

describe('a motor on a lower throttle or a softer battery', () => {
  it('turns slower at the same torque', () => {
    const full = brushlessMotor(PLAIN);
    const half = brushlessMotor({ ...PLAIN, throttle: 0.5 });
    const soft = brushlessMotor({ ...PLAIN, supplyResistance_ohm: 0.05 });
    expect(half.noLoadSpeed_rpm).toBeLessThan(0.5 * full.noLoadSpeed_rpm);
    expect(soft.at(12000).torque_Nm).toBeLessThan(full.at(12000).torque_Nm);
    // part throttle: the battery gives less current than the winding carries
    const at = half.at(5000);
    expect(at.supplyCurrent_A).toBeCloseTo(0.5 * at.motorCurrent_A, 12);
  });
});

describe('motors that cannot be', () => {
  it.each([
    ['speedConstant_rpmV', () => brushlessMotor({ ...PLAIN, speedConstant_rpmV: 0 })],
    ['throttle', () => brushlessMotor({ ...PLAIN, throttle: 1.2 })],
    ['throttle', () => brushlessMotor({ ...PLAIN, throttle: 0 })],
    ['controllerLoss', () => brushlessMotor({ ...PLAIN, controllerLoss: 1 })],
    ['noLoadCurrent_A', () => brushlessMotor({ ...PLAIN, noLoadCurrent_A: 400, continuousCurrent_A: null })],
    ['continuousCurrent_A', () => brushlessMotor({ ...ON_BATTERY, continuousCurrent_A: 0.5 })],
    ['poles', () => inductionMotor({ ...PLATE, poles: 3 })],
    ['ratedSpeed_rpm', () => inductionMotor({ ...PLATE, ratedSpeed_rpm: 1500 })],
    ['ratedSpeed_rpm', () => inductionMotor({ ...PLATE, ratedSpeed_rpm: 300 })],
    ['ratedPower_W', () => inductionMotor({ ...PLATE, supply_V: 230 })],
    ['ratedPower_W', () => inductionMotor({ ...PLATE, ratedPower_W: 5000 })],
    ['efficiency', () => inductionMotor({ ...PLATE, powerFactor: null, efficiency: 0.5 })],
    ['powerFactor', () => inductionMotor({ ...PLATE, powerFactor: 0.5, efficiency: null })],
    ['beltRatio', () => inductionMotor({ ...PLATE, beltRatio: 0 })],
    ['points', () => seriesMotor({ points: [CLEANER[0]!], supply_V: 230, continuousCurrent_A: null })],
    [
      'points[1].torque_Nm',
      () =>
        seriesMotor({
          points: [CLEANER[1]!, { ...CLEANER[2]!, torque_Nm: 0.35 }],
          supply_V: 400,
          continuousCurrent_A: null,
        }),
    ],
    [
      'points[1].current_A',
      () =>
        seriesMotor({
          points: [CLEANER[1]!, { ...CLEANER[2]!, current_A: 5 }],
          supply_V: 400,
          continuousCurrent_A: null,
        }),
    ],
    ['points[0].torque_Nm', () => seriesMotor({ points: CLEANER, supply_V: 100, continuousCurrent_A: null })],
  ] as const)('are refused at %s', (field, make) => {
    expect(make).toThrow(expect.objectContaining({ name: 'ImpossibleInput', field }) as Error);
  });
});
