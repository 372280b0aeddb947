import { describe, expect, it } from 'vitest';
import { brushlessMotor, torqueConstant } from '../../core/fan/motor/brushless.ts';
import {
  BREAKDOWN_SHARE,
  COPPER_SHARE,
  inductionMotor,
  synchronousSpeed,
} from '../../core/fan/motor/induction.ts';
import { RADS_PER_RPM } from '../../core/fan/motor/motor-model.ts';
import { seriesMotor } from '../../core/fan/motor/series.ts';
import { against } from './ledger.ts';

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
  const current = against({
    relation: 'brushlessMotor',
    source: 'direct-current equivalent by hand: 20 A at 13 600 rpm of 800 rpm/V on 18 V',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const torque = against({
    relation: 'brushlessMotor',
    source: 'direct-current equivalent by hand: 0.2268 N m and 323 W, 89.7 % of the input',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const best = against({
    relation: 'brushlessMotor',
    source: 'best at a current of sqrt(V I0/R), 19.0 A, and none better where all speeds are tried',
    basis: 'from-memory',
    kind: 'value',
  });
  const constant = against({
    relation: 'torqueConstant',
    source: '9.549 over the speed constant in rpm/V',
    basis: 'from-memory',
    kind: 'value',
  });
  const units = against({
    relation: 'torqueConstant',
    source: 'by hand: back voltage times current is torque times angular speed',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const search = against({
    relation: 'brushlessMotor',
    source: 'winding current sought by halving until the voltages agree, with sag, throttle and controller',
    basis: 'hand-calculation',
    kind: 'second-route',
  });

  it('gives the worked number [H]', () => {
    const motor = brushlessMotor(PLAIN);
    const at = motor.at(13600);
    current.withinAbsolute(at.motorCurrent_A, 20, 5e-10, { unit: 'A' });
    const printed = [
      [at.torque_Nm, 0.2268, 1e-4],
      [at.shaftPower_W, 323, 1],
      [at.shaftPower_W / at.inputPower_W, 0.897, 1e-3],
    ] as const;
    for (const [value, shown, lastDigit] of printed)
      torque.withinAbsolute(value / lastDigit, shown / lastDigit, 0.5, { unit: 'of the last digit' });
    best.withinAbsolute(motor.at(motor.bestSpeed_rpm).motorCurrent_A, 19.0, 0.05, { unit: 'A' });
    constant.withinAbsolute(torqueConstant(800), 9.549 / 800, 5e-7, { unit: 'N m/A' });
    units.within(torqueConstant(800) * ((2 * Math.PI * 8000) / 60), 8000 / 800, 1e-14);
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
      search.withinAbsolute(motor.at(speed).motorCurrent_A, low, 5e-10, { unit: 'A' });
      search.withinAbsolute(motor.at(speed).supplyCurrent_A, (0.7 * low) / 0.96, 5e-10, { unit: 'A' });
    }
  });

  it('is best at the current sqrt(V I0 / R) [H], found by trying all', () => {
    const motor = brushlessMotor(PLAIN);
    const share = (speed: number) => motor.at(speed).shaftPower_W / motor.at(speed).inputPower_W;
    for (let speed = 5000; speed < 14300; speed += 10)
      best.holds(share(speed) <= share(motor.bestSpeed_rpm), 'none better');
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
  const synchronous = against({
    relation: 'synchronousSpeed',
    source: 'table of a teaching page on motors, 50 and 60 Hz, 2 to 12 poles',
    basis: 'published',
    kind: 'value',
  });
  const ratedTorque = against({
    relation: 'inductionMotor',
    source: 'engineering tables: rated torque is 9550 times kW over rpm',
    basis: 'published',
    kind: 'value',
  });
  const torqueOf = against({
    relation: 'inductionMotor',
    source: "torque of a textbook motor's equivalent circuit from a tenth to over a third above its load",
    basis: 'from-memory',
    kind: 'value',
  });
  const currentOf = against({
    relation: 'inductionMotor',
    source: "current of a textbook motor's equivalent circuit",
    basis: 'from-memory',
    kind: 'value',
  });
  const inputOf = against({
    relation: 'inductionMotor',
    source: "input of a textbook motor's equivalent circuit",
    basis: 'from-memory',
    kind: 'value',
  });
  const breakdown = against({
    relation: 'inductionMotor',
    source: "largest torque of a textbook motor's equivalent circuit",
    basis: 'from-memory',
    kind: 'limit',
  });
  const copper = against({
    relation: 'inductionMotor',
    source: 'a training page: losses in the stator 25 to 40 %, in the rotor 15 to 25 %',
    basis: 'published',
    kind: 'limit',
  });

  it('has the synchronous speeds of the table [S]', () => {
    const table = [
      [2, 3000, 3600],
      [4, 1500, 1800],
      [6, 1000, 1200],
      [8, 750, 900],
      [12, 500, 600],
    ] as const;
    for (const [poles, at50, at60] of table) {
      synchronous.within(synchronousSpeed(50, poles), at50, 0);
      synchronous.within(synchronousSpeed(60, poles), at60, 0);
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
    const printed = (9550 * ratedPower_W) / 1000 / rated.speed_rpm;
    ratedTorque.withinAbsolute(motor.at(rated.speed_rpm).torque_Nm, printed, 0.05, { unit: 'N m' });
  });

  it('follows that circuit between a tenth of its load and a third above it', () => {
    // stated before the run: torque within 12 % of the rated one, current within 10 %, input within 10 % of the rated one
    for (const slip of [0.006, 0.01, 0.015, 0.022, 0.026, 0.03]) {
      const exact = circuit(slip);
      const at = motor.at(exact.speed_rpm);
      const torqueOff = (at.torque_Nm - exact.shaftTorque_Nm) / rated.shaftTorque_Nm;
      torqueOf.withinAbsolute(torqueOff, 0, 0.12, { unit: 'of the rated' });
      currentOf.within(at.supplyCurrent_A, exact.current_A, 0.1);
      inputOf.withinAbsolute(at.inputPower_W / rated.input_W, exact.input_W / rated.input_W, 0.1, {
        unit: 'of the rated',
      });
    }
  });

  it('is not said to stall before that circuit does', () => {
    let most = 0;
    for (let slip = 0.01; slip < 1; slip += 0.001) most = Math.max(most, circuit(slip).shaftTorque_Nm);
    breakdown.holds(
      most / rated.shaftTorque_Nm > BREAKDOWN_SHARE.value,
      'above the share at which it stalls here',
    );
    breakdown.holds(most > motor.breakdownTorque_Nm!, 'above the torque at which it stalls here');
  });

  it('heats its windings with a share of the losses that is published [L]', () => {
    copper.holds(COPPER_SHARE.value >= 0.25 + 0.15, 'no less than the least of both');
    copper.holds(COPPER_SHARE.value <= 0.4 + 0.25, 'no more than the most of both');
    const at = motor.at(rated.speed_rpm);
    const share = at.copperLoss_W / (at.inputPower_W - at.shaftPower_W);
    copper.holds(share >= 0.25 + 0.15 && share <= 0.4 + 0.25, 'within them at rated speed');
  });
});

describe('a series motor', () => {
  const losses = against({
    relation: 'seriesMotor',
    source: 'a made-up motor without saturation: its copper loss and its drag found again',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const otherVoltage = against({
    relation: 'seriesMotor',
    source: 'a made-up motor without saturation: torque and speed on 160 V, known on 230 V',
    basis: 'hand-calculation',
    kind: 'value',
  });
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
      losses.withinAbsolute(at.copperLoss_W, current_A ** 2 * R, 5e-7, { unit: 'W' });
      losses.withinAbsolute(at.otherLoss_W, drag * speed_rpm * RADS_PER_RPM, 5e-7, { unit: 'W' });
    }
    // and so knows it on another voltage, where nothing was measured
    const read = motor.fromSupply({ voltage_V: 160, supplyCurrent_A: 3, throttle: null })!;
    // 5e-10 N m of 0.16, 5e-7 rpm of 22 600: both below 2e-11
    otherVoltage.within(read.torque_Nm, k * 9 - drag, 2e-11);
    otherVoltage.within(read.speed_rpm, (160 - 3 * R) / (k * 3) / RADS_PER_RPM, 2e-11);
  });
});
