import { describe, expect, it } from 'vitest';
import { fanCurve, fanPower, scaleFan } from '../../core/fan/fan-curve.ts';
import { brushlessMotor } from '../../core/fan/motor/brushless.ts';
import {
  drivenLargestFlow,
  drivenSpeed,
  drivenSpeedAt,
  drivenTotalPressure,
} from '../../core/fan/motor/driven-fan.ts';
import { loadRatio, matchDiameter, matchSpeed } from '../../core/fan/motor/match.ts';
import { RADS_PER_RPM } from '../../core/fan/motor/motor-model.ts';
import { against } from './ledger.ts';

// The motor and, below, the fan of a worked number: 20 A at 13 600 rpm, 0.2268 N m and 323 W, reckoned by hand.
const PLAIN = {
  speedConstant_rpmV: 800,
  resistance_ohm: 0.05,
  noLoadCurrent_A: 1,
  supply_V: 18,
  supplyResistance_ohm: 0,
  throttle: 1,
  controllerLoss: 0,
  continuousCurrent_A: null,
  batteryEnergy_J: null,
};

const rows = [
  [0, 2000, 100],
  [0.06, 1700, 240],
  [0.1, 1000, 323],
] as const;
const curve = fanCurve({
  pressureKind: 'total',
  outletArea_m2: 0.01,
  points: rows.map(([flow_m3s, pressure_Pa, power_W]) => ({ flow_m3s, pressure_Pa, power_W })),
  ratedSpeed_rpm: 13600,
  ratedDensity_kgm3: 1.2,
});

/** Line of torque of the motor over speed, and the fan's torque over the square of speed at 1.2 kg/m3, by hand. */
const STALL_NM = ((18 / 0.05 - 1) * 60) / (2 * Math.PI * 800);
const PER_RPM = 60 / (2 * Math.PI * 800) / (0.05 * 800);
const meets = (power_W: number, density_kgm3: number) => {
  const square = ((power_W / (13600 * RADS_PER_RPM)) * density_kgm3) / 1.2 / 13600 ** 2;
  return (-PER_RPM + Math.sqrt(PER_RPM ** 2 + 4 * square * STALL_NM)) / (2 * square);
};

describe('a fan on the motor of the worked number', () => {
  const speedOf = against({
    relation: 'drivenSpeed',
    source: 'by hand: a fan that asks 323 W at 13 600 rpm on the motor that gives it there',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const pressureOf = against({
    relation: 'drivenTotalPressure',
    source: "by hand: at its rated speed the fan gives its point's 1000 Pa",
    basis: 'hand-calculation',
    kind: 'value',
  });
  const blockedSpeed = against({
    relation: 'drivenSpeed',
    source: 'by hand: inlet blocked, a straight line of torque meets a square, with constants of five digits',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const quadratic = against({
    relation: ['drivenSpeedAt', 'drivenSpeed'],
    source: 'by hand: a straight line of torque meets the square of the fan laws, root of a quadratic',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const largest = against({
    relation: 'drivenLargestFlow',
    source: 'by hand: flow of the last point times the speed at which line and square of torque meet',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const otherPressure = against({
    relation: 'drivenTotalPressure',
    source: 'by hand: pressure of the last point by the fan laws at the speed of that quadratic',
    basis: 'hand-calculation',
    kind: 'value',
  });

  it('turns at its speed where it asks its shaft power', () => {
    const fan = { curve, motor: brushlessMotor(PLAIN) };
    const state = { flow_m3s: 0.1, density_kgm3: 1.2, guess_rpm: 0 };
    speedOf.withinAbsolute(drivenSpeed(fan, state), 13600, 5e-7, { unit: 'rpm' });
    const out = new Float64Array(4);
    drivenTotalPressure(fan, state, out);
    pressureOf.withinAbsolute(out[0]!, 1000, 5e-7, { unit: 'Pa' });
    // hand: with the inlet blocked T = (100/w0)(n/n0)^2 meets the line 0.2268 N m + (13600 - n) 0.2388 N m/800 rpm
    const T0 = 100 / (13600 * RADS_PER_RPM);
    const [A, B] = [T0 / 13600 ** 2, 0.23873 / 800];
    const blocked = (-B + Math.sqrt(B * B + 4 * A * (0.226796 + 13600 * B))) / (2 * A);
    blockedSpeed.withinAbsolute(drivenSpeed(fan, { ...state, flow_m3s: 0 }), blocked, 0.5, { unit: 'rpm' });
    expect(blocked).toBeGreaterThan(14000);
  });

  it.each([0.9, 1.2, 1.3])('turns at the root of the quadratic in air of %f kg/m3', (density_kgm3) => {
    const fan = { curve, motor: brushlessMotor(PLAIN) };
    for (const [flow_m3s, , power_W] of rows) {
      const speed = meets(power_W, density_kgm3);
      quadratic.within(drivenSpeedAt(fan, flow_m3s, density_kgm3), speed, 1e-9);
      const moved = (flow_m3s * speed) / 13600;
      quadratic.within(drivenSpeed(fan, { flow_m3s: moved, density_kgm3, guess_rpm: 0 }), speed, 1e-9);
    }
    const ratio = meets(323, density_kgm3) / 13600;
    largest.within(drivenLargestFlow(fan, density_kgm3), 0.1 * ratio, 1e-9);
    const out = new Float64Array(4);
    drivenTotalPressure(fan, { flow_m3s: 0.1 * ratio, density_kgm3, guess_rpm: 0 }, out);
    otherPressure.within(out[0]!, ((1000 * density_kgm3) / 1.2) * ratio ** 2, 1e-8);
  });
});

describe('matching a motor', () => {
  const ratioOf = against({
    relation: 'loadRatio',
    source: 'by hand: 0.2268 N m at 13 600 rpm, the square of speed to 15 000, over 0.15 N m',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const speedMatch = against({
    relation: 'matchSpeed',
    source: 'the fan laws: a wheel at that speed asks the lasting torque',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const sizeMatch = against({
    relation: 'matchDiameter',
    source: 'the fan laws: a wheel of that size asks the lasting torque',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const powers = against({
    relation: ['matchSpeed', 'matchDiameter'],
    source: 'by hand: torque goes with n^2 D^5, so that 4 asks for half the speed and 32 for half the wheel',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const motor = { lastingTorque_Nm: 0.15, bestSpeed_rpm: 15000 };
  const torqueOf = (shape: typeof curve) => {
    const { ratedSpeed_rpm: speed } = shape.input;
    const flow_m3s = shape.pressure.x.at(-1)!;
    const power = fanPower(shape, { flow_m3s, density_kgm3: 1.2, speedRatio: 1 })!;
    return { torque_Nm: power / (speed! * RADS_PER_RPM), speed_rpm: speed! };
  };
  it('is right for the wheel that the fan laws scale to the match', () => {
    const ratio = loadRatio(torqueOf(curve), motor);
    ratioOf.withinAbsolute(ratio, 0.226796 * (15 / 13.6) ** 2 * (1 / 0.15), 5e-4);
    powers.within(matchSpeed(15000, 4), 7500, 1e-14);
    powers.within(matchDiameter(0.2, 32), 0.1, 1e-14);
    const slower = scaleFan(curve, {
      speedRatio: matchSpeed(15000, ratio) / 13600,
      diameterRatio: 1,
      densityRatio: 1,
    });
    speedMatch.withinAbsolute(torqueOf(slower).torque_Nm, 0.15, 5e-10, { unit: 'N m' });
    const smaller = scaleFan(curve, {
      speedRatio: 15000 / 13600,
      diameterRatio: matchDiameter(1, ratio),
      densityRatio: 1,
    });
    sizeMatch.withinAbsolute(torqueOf(smaller).torque_Nm, 0.15, 5e-10, { unit: 'N m' });
  });
});
