import { describe, expect, it } from 'vitest';
import { fanCurve, fanPower, scaleFan } from '../../core/fan/fan-curve.ts';
import { brushlessMotor, torqueConstant } from '../../core/fan/motor/brushless.ts';
import { drivenSpeed, drivenTotalPressure } from '../../core/fan/motor/driven-fan.ts';
import {
  BREAKDOWN_SHARE,
  COPPER_SHARE,
  inductionMotor,
  synchronousSpeed,
} from '../../core/fan/motor/induction.ts';
import { loadRatio, matchDiameter, matchSpeed } from '../../core/fan/motor/match.ts';
import { RADS_PER_RPM } from '../../core/fan/motor/motor-model.ts';
import { seriesMotor } from '../../core/fan/motor/series.ts';

/*
 * Sources: [H] the worked number of the handbook facts, 10.5 (direct-current equivalent of a brushless motor, reckoned
 * by hand there); [S] table of synchronous speeds at 50 and 60 Hz in a teaching page on motors (seen);
 * [L] shares of the losses of an induction motor in a training page (seen): stator 25 to 40 %, rotor 15 to 25 %;
 * [T] rated torque 9550 P/n, N m, kW, rpm, in engineering tables (seen); [C] example motor of a textbook on electrical
 * machines, 460 V, 25 hp, four poles, 60 Hz, with its equivalent circuit (from memory), solved here by complex numbers.
 */

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

describe('a brushless motor', () => {
  it('gives the worked number [H]', () => {
    const motor = brushlessMotor(PLAIN);
    const at = motor.at(13600);
    expect(at.motorCurrent_A).toBeCloseTo(20, 9);
    expect(at.torque_Nm).toBeCloseTo(0.2268, 4);
    expect(at.shaftPower_W).toBeCloseTo(323, 0);
    expect(at.shaftPower_W / at.inputPower_W).toBeCloseTo(0.897, 3);
    expect(motor.at(motor.bestSpeed_rpm).motorCurrent_A).toBeCloseTo(19.0, 1);
    expect(torqueConstant(800)).toBeCloseTo(9.549 / 800, 6);
  });

  it('is the same by a search for the current, with sag, throttle and controller', () => {
    const battery = { ...PLAIN, supplyResistance_ohm: 0.03, throttle: 0.7, controllerLoss: 0.04 };
    const motor = brushlessMotor(battery);
    for (const speed of [0, 3000, 6000, 9000]) {
      // halving on the winding current until the voltages agree
      let [low, high] = [0, 1000];
      for (let i = 0; i < 200; i++) {
        const current = (low + high) / 2;
        const drawn = (0.7 * current) / 0.96;
        const behind = 0.7 * (18 - 0.03 * drawn) - current * 0.05;
        if (behind > speed / 800) low = current;
        else high = current;
      }
      expect(motor.at(speed).motorCurrent_A).toBeCloseTo(low, 9);
      expect(motor.at(speed).supplyCurrent_A).toBeCloseTo((0.7 * low) / 0.96, 9);
    }
  });

  it('is best at the current sqrt(V I0 / R) [H], found by trying all', () => {
    const motor = brushlessMotor(PLAIN);
    const share = (speed: number) => motor.at(speed).shaftPower_W / motor.at(speed).inputPower_W;
    for (let speed = 5000; speed < 14300; speed += 10)
      expect(share(speed)).toBeLessThanOrEqual(share(motor.bestSpeed_rpm));
  });
});

/** One phase of the example motor [C] at a slip: current of the line, input, and torque of the air gap. */
function circuit(slip: number) {
  const [R1, X1, R2, X2, XM] = [0.641, 1.106, 0.332, 0.464, 26.3];
  const V = 460 / Math.sqrt(3);
  // rotor branch beside the magnetising one, then the stator before both
  const [a, b] = [R2 / slip, X2];
  const bottom = a * a + (b + XM) ** 2;
  const [re, im] = [(XM * XM * a) / bottom, (XM * (a * a + b * (b + XM))) / bottom];
  const [zr, zi] = [R1 + re, X1 + im];
  const current_A = V / Math.hypot(zr, zi);
  const gap_W = 3 * current_A ** 2 * re;
  const synchronous = 1800 * RADS_PER_RPM;
  return {
    current_A,
    powerFactor: zr / Math.hypot(zr, zi),
    input_W: 3 * V * current_A * (zr / Math.hypot(zr, zi)),
    gapTorque_Nm: gap_W / synchronous,
    // rotational losses of 1100 W, taken as a drag that does not change with so little change of speed
    shaftTorque_Nm: gap_W / synchronous - 1100 / (1760 * RADS_PER_RPM),
    speed_rpm: 1800 * (1 - slip),
  };
}

describe('an induction motor', () => {
  it('has the synchronous speeds of the table [S]', () => {
    const table = [
      [2, 3000, 3600],
      [4, 1500, 1800],
      [6, 1000, 1200],
      [8, 750, 900],
      [12, 500, 600],
    ] as const;
    for (const [poles, at50, at60] of table) {
      expect(synchronousSpeed(50, poles)).toBe(at50);
      expect(synchronousSpeed(60, poles)).toBe(at60);
    }
  });

  const rated = circuit(0.022);
  const ratedPower_W = rated.shaftTorque_Nm * rated.speed_rpm * RADS_PER_RPM;
  const motor = inductionMotor({
    frequency_Hz: 60,
    poles: 4,
    ratedPower_W,
    ratedSpeed_rpm: rated.speed_rpm,
    ratedCurrent_A: rated.current_A,
    supply_V: 460,
    phases: 'three',
    powerFactor: rated.powerFactor,
    efficiency: ratedPower_W / rated.input_W,
    beltRatio: null,
  });

  it('is set beside a circuit that gives the figures of its textbook [C]', () => {
    expect(rated.current_A).toBeCloseTo(18.88, 1);
    expect(rated.powerFactor).toBeCloseTo(0.833, 2);
    expect(rated.input_W / 12530).toBeCloseTo(1, 2);
    expect(rated.gapTorque_Nm).toBeCloseTo(62.8, 0);
    expect(ratedPower_W / rated.input_W).toBeCloseTo(0.837, 2);
  });

  it('has the rated torque 9550 P/n [T]', () => {
    expect(motor.at(rated.speed_rpm).torque_Nm).toBeCloseTo(
      (9550 * ratedPower_W) / 1000 / rated.speed_rpm,
      1,
    );
  });

  it('follows that circuit between a tenth of its load and a third above it', () => {
    // stated before the run: torque within 12 % of the rated one, current within 10 %, input within 10 % of the rated one
    for (const slip of [0.006, 0.01, 0.015, 0.022, 0.026, 0.03]) {
      const exact = circuit(slip);
      const at = motor.at(exact.speed_rpm);
      const torqueOff = (at.torque_Nm - exact.shaftTorque_Nm) / rated.shaftTorque_Nm;
      expect(Math.abs(torqueOff), `torque at slip ${slip}`).toBeLessThan(0.12);
      expect(Math.abs(at.supplyCurrent_A / exact.current_A - 1), `current at ${slip}`).toBeLessThan(0.1);
      expect(Math.abs(at.inputPower_W - exact.input_W) / rated.input_W, `input at ${slip}`).toBeLessThan(0.1);
    }
  });

  it('is not said to stall before that circuit does', () => {
    let most = 0;
    for (let slip = 0.01; slip < 1; slip += 0.001) most = Math.max(most, circuit(slip).shaftTorque_Nm);
    expect(most / rated.shaftTorque_Nm).toBeGreaterThan(BREAKDOWN_SHARE.value);
  });

  it('heats its windings with a share of the losses that is published [L]', () => {
    expect(COPPER_SHARE.value).toBeGreaterThanOrEqual(0.25 + 0.15);
    expect(COPPER_SHARE.value).toBeLessThanOrEqual(0.4 + 0.25);
  });
});

describe('a series motor', () => {
  it('finds the winding and the drag of a made-up motor from its points', () => {
    // torque k I^2 less a drag, back voltage k I w: the textbook motor, without saturation
    const [V, R, k, drag] = [230, 6, 0.02, 0.02];
    const points = [5, 4, 3, 2, 1.5].map((current_A) => ({
      torque_Nm: k * current_A ** 2 - drag,
      speed_rpm: (V - current_A * R) / (k * current_A) / RADS_PER_RPM,
      current_A,
    }));
    const motor = seriesMotor({ points, supply_V: V, continuousCurrent_A: null });
    for (const { current_A, speed_rpm } of points) {
      const at = motor.at(speed_rpm);
      expect(at.copperLoss_W).toBeCloseTo(current_A ** 2 * R, 6);
      expect(at.otherLoss_W).toBeCloseTo(drag * speed_rpm * RADS_PER_RPM, 6);
    }
    // and so knows it on another voltage, where nothing was measured
    const read = motor.fromSupply({ voltage_V: 160, supplyCurrent_A: 3, throttle: null })!;
    expect(read.torque_Nm).toBeCloseTo(k * 9 - drag, 9);
    expect(read.speed_rpm).toBeCloseTo((160 - 3 * R) / (k * 3) / RADS_PER_RPM, 6);
  });
});

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

describe('a fan on the motor of the worked number', () => {
  it('turns at its speed where it asks its shaft power [H]', () => {
    const fan = { curve, motor: brushlessMotor(PLAIN) };
    const state = { flow_m3s: 0.1, density_kgm3: 1.2, guess_rpm: 0 };
    expect(drivenSpeed(fan, state)).toBeCloseTo(13600, 6);
    const out = new Float64Array(4);
    drivenTotalPressure(fan, state, out);
    expect(out[0]).toBeCloseTo(1000, 6);
    // hand: with the inlet blocked T = (100/w0)(n/n0)^2 meets the line 0.2268 N m + (13600 - n) 0.2388 N m/800 rpm
    const T0 = 100 / (13600 * RADS_PER_RPM);
    const [A, B] = [T0 / 13600 ** 2, 0.23873 / 800];
    const blocked = (-B + Math.sqrt(B * B + 4 * A * (0.226796 + 13600 * B))) / (2 * A);
    expect(drivenSpeed(fan, { ...state, flow_m3s: 0 })).toBeCloseTo(blocked, 0);
    expect(blocked).toBeGreaterThan(14000);
  });
});

describe('matching a motor', () => {
  const motor = { lastingTorque_Nm: 0.15, bestSpeed_rpm: 15000 };
  const torqueOf = (shape: typeof curve) => {
    const { ratedSpeed_rpm: speed } = shape.input;
    const flow_m3s = shape.pressure.x.at(-1)!;
    const power = fanPower(shape, { flow_m3s, density_kgm3: 1.2, speedRatio: 1 })!;
    return { torque_Nm: power / (speed! * RADS_PER_RPM), speed_rpm: speed! };
  };
  it('is right for the wheel that the fan laws scale to the match', () => {
    const ratio = loadRatio(torqueOf(curve), motor);
    expect(ratio).toBeCloseTo(0.226796 * (15 / 13.6) ** 2 * (1 / 0.15), 3);
    const slower = scaleFan(curve, {
      speedRatio: matchSpeed(15000, ratio) / 13600,
      diameterRatio: 1,
      densityRatio: 1,
    });
    expect(torqueOf(slower).torque_Nm).toBeCloseTo(0.15, 9);
    const smaller = scaleFan(curve, {
      speedRatio: 15000 / 13600,
      diameterRatio: matchDiameter(1, ratio),
      densityRatio: 1,
    });
    expect(torqueOf(smaller).torque_Nm).toBeCloseTo(0.15, 9);
  });
});
