import { ImpossibleInput, requireFinite, requirePositive } from '../../quantities/impossible-input.ts';
import { fanTotalPressure } from '../fan-curve.ts';
import type { FanCurve } from '../fan-points.ts';
import { curveValueAndSlope } from '../monotone-curve.ts';
import { RADS_PER_RPM } from './motor-model.ts';
import type { MotorModel } from './motor-model.ts';

/** A fan on a motor: both must be known well enough to turn together. */
export interface DrivenFan {
  /** Its power is shaft power and its rated speed is known. */
  readonly curve: FanCurve;
  readonly motor: MotorModel;
}

/** The state in which a driven fan is asked what it does. */
export interface DrivenState {
  /** Volume flow at the inlet [m3/s]; below zero when air is blown back through the fan. */
  readonly flow_m3s: number;
  /** Density of the air in the fan [kg/m3]. */
  readonly density_kgm3: number;
  /** Speed from which the search starts [rpm]; the answer does not depend on it. */
  readonly guess_rpm: number;
}

/** The search ends with a step of Newton's method below this share of the speed without load: the next is rounding. */
const SPEED_TOLERANCE = 1e-9;
/** A guess below this share of the speed without load is none [-]. */
const LEAST_GUESS = 0.01;
const MOST_STEPS = 100;

/** Of the balance of torque at a speed: the rest [N m] and its slopes over speed, flow and density. */
const rest = new Float64Array(4);
const power = new Float64Array(2);
const torque = new Float64Array(2);

/** Motor's torque less the fan's, into `rest`. */
function balance(fan: DrivenFan, state: DrivenState, speed_rpm: number): void {
  const { curve, motor } = fan;
  const rated = curve.input.ratedSpeed_rpm!;
  const r = speed_rpm / rated;
  const q = state.flow_m3s;
  motor.turn(speed_rpm, torque);
  curveValueAndSlope(curve.power!, q / r, power);
  const p = power[0]!;
  if (p <= 0) {
    // beyond its points a power that falls would end below nothing
    rest[0] = torque[0]!;
    rest[1] = torque[1]!;
    rest[2] = 0;
    rest[3] = 0;
    return;
  }
  const perDensity = (r * r * p) / (curve.input.ratedDensity_kgm3 * rated * RADS_PER_RPM);
  const k = state.density_kgm3 / (curve.input.ratedDensity_kgm3 * rated * RADS_PER_RPM);
  rest[0] = torque[0]! - perDensity * state.density_kgm3;
  rest[1] = torque[1]! - (k * (2 * r * p - q * power[1]!)) / rated;
  rest[2] = -k * r * power[1]!;
  rest[3] = -perDensity;
}

/**
 * Speed at which a motor turns a fan: where its torque is the fan's at the flow that goes through and the density there.
 *
 * `T(n) = P/w` with `P = (rho/rho0) r^3 P0(Q/r)` and `r = n/n0`. At standstill the motor's torque is larger, without load
 * the fan's; in between Newton's method, halving where it would leave the bracket.
 *
 * @param fan - curve with shaft power and rated speed, and its motor
 * @param state - flow, density and first guess
 * @returns speed [rpm], above zero, at most that without load
 * @throws ImpossibleInput naming the field: no power or speed with the curve, flow not finite, density not above zero
 *
 * @remarks
 * Range: flows of the curve's points, times the speed ratio.
 * Outside: shaft power goes on along its end slope, never below zero, where the motor runs free.
 * Leaves out: bearings of the fan beyond what its power curve holds; acceleration.
 * Limits: a fan that asks nothing runs at the speed without load; a motor without slope holds the rated speed.
 * Basis: published (fan laws read in Process Heating, a trade journal; the rest is the balance of torque).
 * Source: fan laws, AMCA 210 / ISO 5801, as in the journal Process Heating.
 * Checked: test/reference/driven-fan.test.ts, test/core/fan/motor/driven-fan.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ flow_m3s: 0, pressure_Pa: 2000, power_W: 100 }, { flow_m3s: 0.1, pressure_Pa: 1000, power_W: 323 }];
 * const curve = fanCurve({ pressureKind: 'total', outletArea_m2: 0.01, points, ratedSpeed_rpm: 13600, ratedDensity_kgm3: 1.2 });
 * const plain = { supplyResistance_ohm: 0, throttle: 1, controllerLoss: 0, continuousCurrent_A: 25, batteryEnergy_J: null };
 * const motor = brushlessMotor({ speedConstant_rpmV: 800, resistance_ohm: 0.05, noLoadCurrent_A: 1, supply_V: 18, ...plain });
 * drivenSpeed({ curve, motor }, { flow_m3s: 0.1, density_kgm3: 1.2, guess_rpm: 10000 }); // 13600
 * ```
 */
export function drivenSpeed(fan: DrivenFan, state: DrivenState): number {
  requireTurning(fan.curve);
  requireFinite('flow_m3s', state.flow_m3s);
  requirePositive('density_kgm3', state.density_kgm3);
  const free = fan.motor.noLoadSpeed_rpm;
  let low = 0;
  let high = free;
  const { guess_rpm: guess } = state;
  let speed = guess > LEAST_GUESS * free && guess < free ? guess : 0.8 * free;
  for (let i = 0; i < MOST_STEPS; i++) {
    balance(fan, state, speed);
    if (rest[0]! > 0) low = speed;
    else high = speed;
    const step = -rest[0]! / rest[1]!;
    const next = speed + step;
    if (rest[1]! < 0 && Math.abs(step) <= SPEED_TOLERANCE * free) return Math.min(next, free);
    speed = rest[1]! < 0 && next > low && next < high ? next : (low + high) / 2;
  }
  return speed;
}

/**
 * Rise of total pressure over a driven fan at a flow and density, with its slopes: the speed is no longer given, it
 * follows flow and density by the balance of torque.
 *
 * With `F(r, Q, rho)` the rest of that balance, `dr/dQ = -F_Q/F_r`, and `dp/dQ = p_Q + p_r dr/dQ`; likewise over
 * density. Writes into `out`, so that a solver's inner loop allocates nothing.
 *
 * @param fan - curve with shaft power and rated speed, and its motor
 * @param state - flow, density and first guess of the speed
 * @param out - receives `out[0]` pressure [Pa], `out[1]` its slope over flow [Pa s/m3], `out[2]` its slope over
 *   density [Pa m3/kg], `out[3]` the speed [rpm]
 * @returns nothing; see `out`
 * @throws ImpossibleInput naming the field: no power or speed with the curve, flow not finite, density not above zero
 *
 * @remarks
 * Range: flows of the curve's points, times the speed ratio.
 * Outside: pressure and power go on along their end slopes; the caller refuses what lies too far beyond.
 * Leaves out: what `fanTotalPressure` leaves out.
 * Limits: a motor without slope gives the curve of `fanTotalPressure` at its speed.
 * Basis: from-memory (page not seen; follows from the balance of torque and the fan laws).
 * Source: fan laws, AMCA 210 / ISO 5801.
 * Checked: test/reference/driven-fan.test.ts, test/core/fan/motor/driven-fan.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ flow_m3s: 0, pressure_Pa: 2000, power_W: 100 }, { flow_m3s: 0.1, pressure_Pa: 1000, power_W: 323 }];
 * const curve = fanCurve({ pressureKind: 'total', outletArea_m2: 0.01, points, ratedSpeed_rpm: 13600, ratedDensity_kgm3: 1.2 });
 * const plain = { supplyResistance_ohm: 0, throttle: 1, controllerLoss: 0, continuousCurrent_A: 25, batteryEnergy_J: null };
 * const motor = brushlessMotor({ speedConstant_rpmV: 800, resistance_ohm: 0.05, noLoadCurrent_A: 1, supply_V: 18, ...plain });
 * const out = new Float64Array(4);
 * drivenTotalPressure({ curve, motor }, { flow_m3s: 0.1, density_kgm3: 1.2, guess_rpm: 10000 }, out);
 * out[0]; // 1000
 * ```
 */
export function drivenTotalPressure(fan: DrivenFan, state: DrivenState, out: Float64Array): void {
  const speed_rpm = drivenSpeed(fan, state);
  const { flow_m3s, density_kgm3 } = state;
  const rated = fan.curve.input.ratedSpeed_rpm!;
  balance(fan, state, speed_rpm);
  const byFlow = -rest[2]! / rest[1]!; // of the speed [rpm]
  const byDensity = -rest[3]! / rest[1]!;
  fanTotalPressure(fan.curve, { flow_m3s, density_kgm3, speedRatio: speed_rpm / rated }, out);
  const bySpeed = (2 * out[0]! - flow_m3s * out[1]!) / speed_rpm;
  out[1] = out[1]! + bySpeed * byFlow;
  out[2] = out[2]! + bySpeed * byDensity;
  out[3] = speed_rpm;
}

/**
 * Flow of a driven fan at the last point of its curve.
 *
 * At a flow coefficient that is held, the fan's torque goes with the square of speed; where that meets the motor's, flow
 * is the point's times the speed ratio.
 *
 * @param fan - curve with shaft power and rated speed, and its motor
 * @param density_kgm3 - density of the air in the fan [kg/m3]
 * @returns flow [m3/s]
 * @throws ImpossibleInput naming the field: no power or speed with the curve, density not above zero
 *
 * @remarks
 * Range: any density of air.
 * Outside: none: it answers for every density.
 * Leaves out: none: it is the balance of torque at one point.
 * Limits: a motor that holds the rated speed gives the flow of the last point.
 * Basis: from-memory (page not seen; follows from the balance of torque and the fan laws).
 * Source: fan laws, AMCA 210 / ISO 5801.
 * Checked: test/reference/driven-fan.test.ts, test/core/fan/motor/driven-fan.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ flow_m3s: 0, pressure_Pa: 2000, power_W: 100 }, { flow_m3s: 0.1, pressure_Pa: 1000, power_W: 323 }];
 * const curve = fanCurve({ pressureKind: 'total', outletArea_m2: 0.01, points, ratedSpeed_rpm: 13600, ratedDensity_kgm3: 1.2 });
 * const plain = { supplyResistance_ohm: 0, throttle: 1, controllerLoss: 0, continuousCurrent_A: 25, batteryEnergy_J: null };
 * const motor = brushlessMotor({ speedConstant_rpmV: 800, resistance_ohm: 0.05, noLoadCurrent_A: 1, supply_V: 18, ...plain });
 * drivenLargestFlow({ curve, motor }, 1.2); // 0.1
 * ```
 */
export function drivenLargestFlow(fan: DrivenFan, density_kgm3: number): number {
  requireTurning(fan.curve);
  requirePositive('density_kgm3', density_kgm3);
  const flows = fan.curve.pressure.x;
  const flow = flows[flows.length - 1]!;
  return (flow * drivenSpeedAt(fan, flow, density_kgm3)) / fan.curve.input.ratedSpeed_rpm!;
}

/**
 * Speed at which a motor turns a fan that stays at one point of its curve.
 *
 * The flow goes with the speed here, as it does where every resistance goes with the square of flow.
 *
 * @param fan - curve with shaft power and rated speed, and its motor
 * @param ratedFlow_m3s - flow of the point at the rated speed [m3/s]
 * @param density_kgm3 - density of the air in the fan [kg/m3]
 * @returns speed [rpm]
 * @throws ImpossibleInput naming the field: no power or speed with the curve
 *
 * @remarks
 * Range: flows of the curve's points.
 * Outside: power goes on along its end slope, never below zero.
 * Leaves out: none: it is the balance of torque at one point.
 * Limits: a motor that holds the rated speed gives that.
 * Basis: from-memory (page not seen; follows from the balance of torque and the fan laws).
 * Source: fan laws, AMCA 210 / ISO 5801.
 * Checked: test/reference/driven-fan.test.ts, test/core/fan/motor/driven-fan.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ flow_m3s: 0, pressure_Pa: 2000, power_W: 100 }, { flow_m3s: 0.1, pressure_Pa: 1000, power_W: 323 }];
 * const curve = fanCurve({ pressureKind: 'total', outletArea_m2: 0.01, points, ratedSpeed_rpm: 13600, ratedDensity_kgm3: 1.2 });
 * const plain = { supplyResistance_ohm: 0, throttle: 1, controllerLoss: 0, continuousCurrent_A: 25, batteryEnergy_J: null };
 * const motor = brushlessMotor({ speedConstant_rpmV: 800, resistance_ohm: 0.05, noLoadCurrent_A: 1, supply_V: 18, ...plain });
 * drivenSpeedAt({ curve, motor }, 0.1, 1.2); // 13600
 * ```
 */
export function drivenSpeedAt(fan: DrivenFan, ratedFlow_m3s: number, density_kgm3: number): number {
  requireTurning(fan.curve);
  const { curve, motor } = fan;
  const rated = curve.input.ratedSpeed_rpm!;
  curveValueAndSlope(curve.power!, requireFinite('ratedFlow_m3s', ratedFlow_m3s), power);
  const relative = requirePositive('density_kgm3', density_kgm3) / curve.input.ratedDensity_kgm3;
  if (!(power[0]! > 0)) return motor.noLoadSpeed_rpm;
  const factor = (power[0]! * relative) / (RADS_PER_RPM * rated ** 3);
  let low = 0;
  let high = motor.noLoadSpeed_rpm;
  let speed = 0.8 * high;
  for (let i = 0; i < MOST_STEPS; i++) {
    motor.turn(speed, torque);
    const over = torque[0]! - factor * speed * speed;
    if (over > 0) low = speed;
    else high = speed;
    const step = -over / (torque[1]! - 2 * factor * speed);
    const next = speed + step;
    if (Math.abs(step) <= SPEED_TOLERANCE * motor.noLoadSpeed_rpm) {
      return Math.min(next, motor.noLoadSpeed_rpm);
    }
    speed = next > low && next < high ? next : (low + high) / 2;
  }
  return speed;
}

function requireTurning(curve: FanCurve): void {
  if (curve.power === null)
    throw new ImpossibleInput('curve.power', 'not known', 'known where a motor turns it');
  if (curve.input.ratedSpeed_rpm === null) {
    throw new ImpossibleInput('curve.ratedSpeed_rpm', 'not known', 'known where a motor turns it');
  }
}
