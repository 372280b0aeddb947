import { ImpossibleInput, requireNotNegative, requirePositive } from '../../quantities/impossible-input.ts';
import { curveValueAndSlope, monotoneCurve } from '../monotone-curve.ts';
import type { MonotoneCurve } from '../monotone-curve.ts';
import { brentRoot, leastBetween } from '../root.ts';
import { RADS_PER_RPM } from './motor-model.ts';
import type { MotorModel, MotorReading, MotorState, SupplyReading } from './motor-model.ts';

/** A motor without losses of its own must not fail by rounding. */
const ROUNDING = 1e-9;

/** One measured point of a series motor, at its supply voltage. */
export interface SeriesPoint {
  /** At the shaft [N m]. */
  readonly torque_Nm: number;
  /** Speed at this torque [rpm]. */
  readonly speed_rpm: number;
  /** Current drawn there [A]. */
  readonly current_A: number;
}

/** A series-wound (universal) motor as measured. */
export interface SeriesInput {
  /** Two or more, in any order. */
  readonly points: readonly SeriesPoint[];
  /** Voltage at which the points hold [V]. */
  readonly supply_V: number;
  /** Current that it bears for ever [A]; null where nobody said. */
  readonly continuousCurrent_A: number | null;
}

/** Beyond its ends a curve goes on at its end slope, but no flatter than this share of the end secant [-]. */
const LEAST_END_SLOPE = 0.5;

/**
 * A series-wound motor through measured points of torque, speed and current.
 *
 * Torque over speed, and current over torque, are curves that fall and rise only as the points do. Of what volts and amps
 * bring beyond shaft power, `I^2 R` heats the winding and `T0 w` goes into brushes, iron and bearings; `R` and `T0` are fitted
 * to the points, neither below zero. At another voltage the same current gives the same torque, and speed
 * follows the voltage behind the winding: `n' = n (V' - I R)/(V - I R)`.
 *
 * @param input - points, their voltage, continuous current; see its fields
 * @returns the motor at the voltage of its points
 * @throws ImpossibleInput naming the point: torque or current that does not fall as speed rises, shaft power above what
 *   volts and amps bring, fewer than two points, anything not finite
 *
 * @remarks
 * Range: between the slowest and the fastest point.
 * Outside: straight lines along the ends; a real motor runs on to a higher speed without load than a line says.
 * Leaves out: power factor, so that on alternating current the input is an upper bound (about 0.9 to 0.95 of it is real
 *   power); a dimmer, whose readings say nothing of the voltage behind it.
 * Limits: it passes through each point; at the voltage of the points a reading gives back its point.
 * Basis: measured-by-user (the points); from-memory (the scaling with voltage and the split of losses).
 * Source: textbook series motor: torque follows current, back voltage follows speed at a given current.
 * Checked: test/reference/motor.test.ts, test/core/fan/motor/motor.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ torque_Nm: 0.2, speed_rpm: 20000, current_A: 3 }, { torque_Nm: 0.5, speed_rpm: 12000, current_A: 5 }];
 * const motor = seriesMotor({ points, supply_V: 230, continuousCurrent_A: 4 });
 * motor.at(16000).torque_Nm; // 0.35
 * motor.noLoadSpeed_rpm; // 25333
 * ```
 */
export function seriesMotor(input: SeriesInput): MotorModel {
  const volts = requirePositive('supply_V', input.supply_V);
  const { continuousCurrent_A: lasting } = input;
  if (lasting !== null) requirePositive('continuousCurrent_A', lasting);
  const points = sorted(input.points, volts);
  const bySpeed = monotoneCurve(
    points.map((point) => point.speed_rpm),
    points.map((point) => point.torque_Nm),
  );
  const risingTorque = [...points].reverse();
  const byTorque = monotoneCurve(
    risingTorque.map((point) => point.torque_Nm),
    risingTorque.map((point) => point.current_A),
  );
  const { resistance_ohm, drag_Nm } = losses(points, volts);
  const out = new Float64Array(2);
  const read = (curve: MonotoneCurve, x: number): number => {
    straightBeyond(curve, x, out);
    return out[0]!;
  };

  const last = points[points.length - 1]!;
  straightBeyond(bySpeed, last.speed_rpm + 1, out);
  const noLoadSpeed_rpm = last.speed_rpm - last.torque_Nm / out[1]!;
  const currentAt = (torque: number): number => Math.max(0, read(byTorque, torque));
  const at = (speed_rpm: number): MotorState => {
    const torque_Nm = read(bySpeed, requireNotNegative('speed_rpm', speed_rpm));
    const current = currentAt(torque_Nm);
    const shaftPower_W = torque_Nm * speed_rpm * RADS_PER_RPM;
    const inputPower_W = Math.max(volts * current, shaftPower_W);
    const copperLoss_W = Math.min(current * current * resistance_ohm, inputPower_W - shaftPower_W);
    return {
      torque_Nm,
      shaftPower_W,
      motorCurrent_A: current,
      supplyCurrent_A: current,
      inputPower_W,
      copperLoss_W,
      otherLoss_W: inputPower_W - shaftPower_W - copperLoss_W,
    };
  };
  const turn = (speed_rpm: number, result: Float64Array): void => straightBeyond(bySpeed, speed_rpm, result);
  const torqueOf = (current: number): number => {
    const most = byTorque.x.length - 1;
    straightBeyond(byTorque, byTorque.x[most]!, out);
    const beyond = (current - byTorque.y[most]!) / out[1]!;
    if (beyond >= 0) return byTorque.x[most]! + beyond;
    return brentRoot((torque) => read(byTorque, torque) - current, 0, byTorque.x[most]!);
  };
  const fromSupply = (reading: SupplyReading): MotorReading | null => {
    const { voltage_V, supplyCurrent_A, throttle } = reading;
    // a dimmer cuts the wave: nothing tells the voltage behind it
    if (throttle !== null && throttle !== 1) return null;
    if (!(voltage_V > 0 && voltage_V < Infinity && supplyCurrent_A >= read(byTorque, 0))) return null;
    const drop = supplyCurrent_A * resistance_ohm;
    if (!(voltage_V > drop && volts > drop && supplyCurrent_A < currentAt(read(bySpeed, 0)))) return null;
    const torque_Nm = torqueOf(supplyCurrent_A);
    const rated = brentRoot((speed) => read(bySpeed, speed) - torque_Nm, 0, noLoadSpeed_rpm);
    const speed_rpm = (rated * (voltage_V - drop)) / (volts - drop);
    const shaftPower_W = torque_Nm * speed_rpm * RADS_PER_RPM;
    const inputPower_W = voltage_V * supplyCurrent_A;
    if (!(speed_rpm > 0 && shaftPower_W <= inputPower_W * (1 + ROUNDING))) return null;
    return { speed_rpm, torque_Nm, shaftPower_W, inputPower_W };
  };

  const efficiency = (speed: number): number => {
    const state = at(speed);
    return state.inputPower_W > 0 ? state.shaftPower_W / state.inputPower_W : 0;
  };
  const bestSpeed_rpm = leastBetween((speed) => -efficiency(speed), points[0]!.speed_rpm, last.speed_rpm);
  const most = lasting !== null && lasting > read(byTorque, 0) ? torqueOf(lasting) : null;
  if (lasting !== null && most === null) {
    throw new ImpossibleInput(
      'continuousCurrent_A',
      lasting,
      `above the current without load, ${read(byTorque, 0)}`,
    );
  }
  return {
    kind: 'series',
    at,
    turn,
    fromSupply,
    noLoadSpeed_rpm,
    bestSpeed_rpm,
    continuousCurrent_A: lasting,
    lastingTorque_Nm: most ?? Math.max(read(bySpeed, bestSpeed_rpm), 0),
    breakdownTorque_Nm: null,
    batteryEnergy_J: null,
    source: `curve through ${points.length} points; winding and drag of ${drag_Nm.toPrecision(2)} N m fitted to them`,
    basis: 'measured-by-user',
  };
}

/** Points by rising speed, each checked. */
function sorted(points: readonly SeriesPoint[], volts: number): SeriesPoint[] {
  if (points.length < 2) {
    throw new ImpossibleInput('points', `a list of ${points.length}`, 'at least two points');
  }
  points.forEach((point, i) => {
    const speed = requirePositive(`points[${i}].speed_rpm`, point.speed_rpm);
    const torque = requireNotNegative(`points[${i}].torque_Nm`, point.torque_Nm);
    const current = requireNotNegative(`points[${i}].current_A`, point.current_A);
    if (torque * speed * RADS_PER_RPM > volts * current) {
      const most = (volts * current) / (speed * RADS_PER_RPM);
      const rule = `at most ${most.toPrecision(4)}, which is all that the supply's volts and these amps bring`;
      throw new ImpossibleInput(`points[${i}].torque_Nm`, torque, rule);
    }
  });
  const order = points
    .map((point, i) => ({ point, i }))
    .sort((a, b) => a.point.speed_rpm - b.point.speed_rpm);
  order.forEach(({ point, i }, k) => {
    if (k === 0) return;
    const slower = order[k - 1]!.point;
    const torqueRule = `below ${slower.torque_Nm}, the torque at ${slower.speed_rpm} rpm: it falls as speed rises`;
    const currentRule = `below ${slower.current_A}, the current at ${slower.speed_rpm} rpm: it falls with torque`;
    if (!(point.speed_rpm > slower.speed_rpm)) {
      throw new ImpossibleInput(`points[${i}].speed_rpm`, point.speed_rpm, 'unlike that of any other point');
    }
    if (!(point.torque_Nm < slower.torque_Nm)) {
      throw new ImpossibleInput(`points[${i}].torque_Nm`, point.torque_Nm, torqueRule);
    }
    if (!(point.current_A < slower.current_A)) {
      throw new ImpossibleInput(`points[${i}].current_A`, point.current_A, currentRule);
    }
  });
  return order.map(({ point }) => point);
}

/** Winding resistance and drag that come nearest to the losses of the points, in shares of their input. */
function losses(points: readonly SeriesPoint[], volts: number): { resistance_ohm: number; drag_Nm: number } {
  let [aa, ab, bb, ay, by] = [0, 0, 0, 0, 0];
  for (const { torque_Nm, speed_rpm, current_A } of points) {
    const input = volts * current_A;
    if (input === 0) continue;
    const a = current_A ** 2 / input;
    const b = (speed_rpm * RADS_PER_RPM) / input;
    const y = 1 - (torque_Nm * speed_rpm * RADS_PER_RPM) / input;
    aa += a * a;
    ab += a * b;
    bb += b * b;
    ay += a * y;
    by += b * y;
  }
  const det = aa * bb - ab * ab;
  const resistance_ohm = (ay * bb - by * ab) / det;
  const drag_Nm = (aa * by - ab * ay) / det;
  if (det > 1e-12 * aa * bb && resistance_ohm >= 0 && drag_Nm >= 0) return { resistance_ohm, drag_Nm };
  if (ay ** 2 / aa > by ** 2 / bb) return { resistance_ohm: ay / aa, drag_Nm: 0 };
  return { resistance_ohm: 0, drag_Nm: by / bb };
}

/** Value and slope of a curve, which beyond its ends goes on straight and never flat. */
function straightBeyond(curve: MonotoneCurve, x: number, out: Float64Array): void {
  const { x: xs, y: ys, slopes } = curve;
  const n = xs.length - 1;
  if (x > xs[0]! && x < xs[n]!) {
    curveValueAndSlope(curve, x, out);
    return;
  }
  const low = x <= xs[0]!;
  const [i, j, end] = low ? [0, 1, 0] : [n - 1, n, n];
  const secant = (LEAST_END_SLOPE * (ys[j]! - ys[i]!)) / (xs[j]! - xs[i]!);
  const slope = Math.abs(slopes[end]!) > Math.abs(secant) ? slopes[end]! : secant;
  out[0] = ys[end]! + slope * (x - xs[end]!);
  out[1] = slope;
}
