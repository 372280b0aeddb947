import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fanCurve, fanPower } from '../../../core/fan/fan-curve.ts';
import { brushlessMotor } from '../../../core/fan/motor/brushless.ts';
import { inductionMotor } from '../../../core/fan/motor/induction.ts';
import type { MotorModel } from '../../../core/fan/motor/motor-model.ts';
import { seriesMotor } from '../../../core/fan/motor/series.ts';
import type { FanDrive } from '../../../core/network/net.ts';
import { solveNet } from '../../../core/network/newton.ts';
import { openShop, solve, solveSetting } from '../../../core/network/solve.ts';
import { systemCurve } from '../../../core/network/system-curve.ts';
import type { FanResult } from '../../../core/network/solution.ts';
import { faultsOf } from './check-solved.ts';
import { AXIAL_ROWS, BRUSHLESS, design, drivenShop, INDUCTION, RADIAL_ROWS, SERIES } from './driven-shop.ts';
import { randomNet } from './random-net.ts';
import type { NetRecipe } from './random-net.ts';
import { seeded } from './seeded.ts';
import * as s from './shop.ts';

const MOTOR_PARTS = [
  ['brushless', BRUSHLESS],
  ['series', SERIES],
  ['induction', INDUCTION],
] as const;
/** From a gate that is open to one that lets next to nothing through. */
const GATES = [1, 0.7, 0.5, 0.3, 0.2, 0.1, 0.05, 0.02, 0.005];
const fansOf = (fan: s.Part, gates: readonly number[] = GATES): FanResult[] =>
  s.settingsOf(drivenShop(fan, gates)).map((setting) => {
    if (!setting.converged) throw new Error(setting.reasonText ?? '');
    return setting.fans[0]!;
  });

describe.each(MOTOR_PARTS)('blocking the inlet of a fan on a %s motor', (_kind, motor) => {
  it('raises the speed and lowers the current of a radial one', () => {
    const fans = fansOf(design(RADIAL_ROWS, motor));
    for (const [i, fan] of fans.slice(1).entries()) {
      expect(fan.flow_m3s).toBeLessThan(fans[i]!.flow_m3s);
      expect(fan.speed_rpm!).toBeGreaterThan(fans[i]!.speed_rpm!);
      expect(fan.current_A!).toBeLessThan(fans[i]!.current_A!);
      expect(fan.drive!.copperLoss_W).toBeLessThan(fans[i]!.drive!.copperLoss_W);
    }
  });
  it('does the reverse to an axial one', () => {
    const fans = fansOf(design(AXIAL_ROWS, motor));
    for (const [i, fan] of fans.slice(1).entries()) {
      expect(fan.speed_rpm!).toBeLessThan(fans[i]!.speed_rpm!);
      expect(fan.current_A!).toBeGreaterThan(fans[i]!.current_A!);
    }
  });
});

describe('a fan on a motor in the shop', () => {
  it('turns where the torques meet, and says figures that belong together', () => {
    for (const [, motor] of MOTOR_PARTS) {
      const document = drivenShop(design(RADIAL_ROWS, motor), GATES);
      const bench = s.benchOf(document);
      const { curve, motor: turning } = bench.shop.packed.net.elements[bench.shop.fans[0]!.element]!.fan!;
      for (const { name } of document.settings) {
        const fan = solveSetting(bench, name).fans[0]!;
        const drive = fan.drive!;
        const speedRatio = fan.speed_rpm! / curve.input.ratedSpeed_rpm!;
        const asked = fanPower(curve, { flow_m3s: fan.flow_m3s, density_kgm3: 1.2, speedRatio })!;
        expect(drive.shaftPower_W / asked).toBeCloseTo(1, 8);
        const at = turning!.model.at(fan.speed_rpm!);
        expect(drive.torque_Nm).toBe(at.torque_Nm);
        expect(drive.torque_Nm * fan.speed_rpm! * (Math.PI / 30)).toBeCloseTo(drive.shaftPower_W, 8);
        expect(fan.power_W).toBe(drive.inputPower_W);
        expect(fan.current_A).toBe(drive.supplyCurrent_A);
        expect(fan.efficiency! * fan.power_W!).toBeCloseTo(fan.flow_m3s * fan.totalPressure_Pa, 6);
        expect(drive.motor).toBe(turning!.model.kind);
      }
    }
  });

  it('tells share of the continuous current and time on the battery', () => {
    const drive = fansOf(design(RADIAL_ROWS, BRUSHLESS), [1])[0]!.drive!;
    expect(drive.currentShare).toBeCloseTo(drive.motorCurrent_A / 40, 12);
    expect(drive.runTime_s).toBeCloseTo((500 * 3600) / drive.inputPower_W, 6);
    const bare = { ...BRUSHLESS, continuousCurrent: undefined, batteryEnergy: undefined };
    const silent = fansOf(design(RADIAL_ROWS, bare), [1])[0]!.drive!;
    expect(silent.currentShare).toBeNull();
    expect(silent.runTime_s).toBeNull();
  });

  it('gives the air what the runs take from it, and loses no mass', () => {
    for (const [, motor] of MOTOR_PARTS) {
      for (const setting of s.settingsOf(drivenShop(design(RADIAL_ROWS, motor), [1, 0.3]))) {
        const fan = setting.fans[0]!;
        const losses = setting.runs.reduce((sum, run) => sum + run.lossTotal_Pa, 0);
        expect(losses / fan.totalPressure_Pa).toBeCloseTo(1, 6);
        for (const run of setting.runs) expect(run.massFlow_kgs / fan.massFlow_kgs).toBeCloseTo(1, 9);
      }
    }
  });

  it('keeps a speed that the thing holds, whatever its motor', () => {
    const held = { thing: { speed: 9000 } };
    const result = s.resultOf(drivenShop(design(RADIAL_ROWS, BRUSHLESS), [1], held)).fans[0]!;
    expect(result.speed_rpm).toBeCloseTo(9000, 9);
    expect(result.drive).toBeNull();
  });

  it('comes to the same flow from a warm start as from a cold one', () => {
    const document = drivenShop(design(RADIAL_ROWS, BRUSHLESS), GATES);
    const warm = s.benchOf(document);
    for (const { name } of document.settings) solveSetting(warm, name);
    for (const { name } of document.settings) {
      const again = solveSetting(warm, name).fans[0]!;
      const cold = solveSetting(s.benchOf(document), name).fans[0]!;
      expect(again.flow_m3s / cold.flow_m3s).toBeCloseTo(1, 8);
      expect(again.speed_rpm! / cold.speed_rpm!).toBeCloseTo(1, 9);
    }
  });

  it('has a system curve whose fan is the driven one, through the operating point', () => {
    const bench = s.benchOf(drivenShop(design(RADIAL_ROWS, BRUSHLESS), [0.5]));
    const { points, operatingPoints } = systemCurve(bench, 'gate 0', 'fan', 161);
    const { flow_m3s, totalPressure_Pa } = operatingPoints[0]!;
    const after = points.findIndex((point) => point.flow_m3s > flow_m3s);
    const [a, b] = [points[after - 1]!, points[after]!];
    const share = (flow_m3s - a.flow_m3s) / (b.flow_m3s - a.flow_m3s);
    const between = a.fanTotal_Pa! + share * (b.fanTotal_Pa! - a.fanTotal_Pa!);
    expect(between / totalPressure_Pa).toBeCloseTo(1, 3);
    expect(a.fanTotal_Pa!).toBeGreaterThan(a.demand_Pa);
    expect(b.fanTotal_Pa!).toBeLessThan(b.demand_Pa);
  });

  it('is told at its thing where its design cannot be used', () => {
    const refused = (fan: s.Part) => {
      const opened = openShop(drivenShop(fan));
      if (opened.ok) throw new Error('opened');
      return opened.problems;
    };
    const bare = refused({ ...design(RADIAL_ROWS, BRUSHLESS), readings: [] });
    expect(bare.map(({ path }) => path)).toEqual(['things[1](fan).design']);
    const motor = refused(design(RADIAL_ROWS, { ...BRUSHLESS, noLoadCurrent: 500, continuousCurrent: 600 }));
    expect(motor.map(({ path }) => path)).toEqual(['things[1](fan).design']);
    expect(motor[0]!.message).toContain('noLoadCurrent');
  });

  it('stays beyond a fan at rest and beyond a shut gate as before: a typed reason', () => {
    const solved = solve(drivenShop(design(RADIAL_ROWS, BRUSHLESS), [0]));
    expect(solved.ok && solved.solution.settings[0]!.reason).toBe('no-open-path');
  });
});

/** The same fan on a motor that was drawn at random: too weak, suited or far too strong. */
function onMotor({ curve }: FanDrive, random: () => number): FanDrive {
  const between = (low: number, high: number) => low + (high - low) * random();
  const rated = between(1000, 20000);
  const { points } = curve.input;
  const widest = points.at(-1)!.flow_m3s;
  const size = points.reduce((most, point) => Math.max(most, point.flow_m3s * point.pressure_Pa), 0) / 0.5;
  const axial = random() < 0.4;
  const driven = fanCurve({
    ...curve.input,
    ratedSpeed_rpm: rated,
    points: points.map((point) => {
      const share = point.flow_m3s / widest;
      return { ...point, power_W: size * (axial ? 1 - 0.6 * share : 0.2 + 0.8 * share) };
    }),
  });
  const load = between(0.1, 3);
  const speed = rated * between(0.6, 1.3);
  const torque = (size * (speed / rated) ** 2) / (rated * (Math.PI / 30)) / load;
  return {
    curve: driven,
    speedRatio: 1,
    motor: { model: motorFor(random, speed, torque), guess_rpm: new Float64Array(1) },
  };
}

/** A motor that turns near a speed where it gives a torque. */
function motorFor(random: () => number, speed: number, torque: number): MotorModel {
  const power = torque * speed * (Math.PI / 30);
  const kind = Math.floor(random() * 3);
  const slip = 0.02 + 0.2 * random();
  if (kind === 0) {
    const volts = 24;
    const Kv = (speed * (1 + slip)) / volts;
    const current = torque * Kv * (Math.PI / 30);
    return brushlessMotor({
      speedConstant_rpmV: Kv,
      resistance_ohm: (volts * slip) / (1 + slip) / current,
      noLoadCurrent_A: 0.02 * current,
      supply_V: volts,
      supplyResistance_ohm: 0,
      throttle: 1,
      controllerLoss: 0.03,
      continuousCurrent_A: null,
      batteryEnergy_J: null,
    });
  }
  if (kind === 1) {
    return seriesMotor({
      supply_V: 230,
      continuousCurrent_A: null,
      points: [
        { speed_rpm: 0.6 * speed, torque_Nm: 2.4 * torque, current_A: (2.4 * power) / 230 },
        { speed_rpm: speed, torque_Nm: torque, current_A: (1.6 * power) / 230 },
        { speed_rpm: 1.5 * speed, torque_Nm: 0.4 * torque, current_A: power / 230 },
      ],
    });
  }
  const field = 3000;
  const ratedSpeed_rpm = field / (1 + slip);
  return inductionMotor({
    frequency_Hz: 50,
    poles: 2,
    ratedPower_W: power,
    ratedSpeed_rpm,
    ratedCurrent_A: power / (230 * 0.6),
    supply_V: 230,
    phases: 'single',
    powerFactor: null,
    efficiency: null,
    beltRatio: speed / ratedSpeed_rpm,
  });
}

describe('random networks with driven fans', () => {
  const recipes = fc.record({
    seed: fc.integer({ min: 1, max: 1e9 }),
    size: fc.integer({ min: 1, max: 120 }),
    sizes: fc.constant<NetRecipe['sizes']>('sane'),
    loops: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 6 })),
    fans: fc.integer({ min: 1, max: 4 }),
    shutShare: fc.constantFrom(0, 0.1, 0.4),
    junctionShare: fc.constantFrom(0, 0.5, 1),
    compressible: fc.boolean(),
  });
  it('settle, lose no mass, and balance pressure where the torques meet by a search of its own', () => {
    let turning = 0;
    fc.assert(
      fc.property(recipes, (recipe) => {
        const packed = randomNet(recipe);
        const random = seeded(recipe.seed + 1);
        for (const e of packed.fans) {
          const element = packed.net.elements[e]!;
          Object.assign(element, { fan: onMotor(element.fan!, random) });
        }
        const outcome = solveNet(packed);
        expect(faultsOf(packed, outcome)).toEqual([]);
        if (!outcome.converged) expect(outcome.reason).not.toBe('did-not-settle');
        else turning += packed.fans.filter((e) => outcome.state.flow_kgs[e] !== 0).length;
      }),
      { seed: 91, numRuns: 300 },
    );
    // a test of nets whose fans all stand still would show nothing
    expect(turning).toBeGreaterThan(200);
  });
});
