import {
  ImpossibleInput,
  requireBetween,
  requireNotNegative,
  requirePositive,
} from '../../quantities/impossible-input.ts';
import { RADS_PER_RPM } from './motor-model.ts';
import type { MotorModel, MotorReading, MotorState, SupplyReading } from './motor-model.ts';

/** A brushless motor on its controller and battery (or other source of direct current). */
export interface BrushlessInput {
  /** `Kv`, speed over voltage without load [rpm/V]. */
  readonly speedConstant_rpmV: number;
  /** `R`, winding from lead to lead, warm [ohm]. */
  readonly resistance_ohm: number;
  /** `I0`, current without load [A]. */
  readonly noLoadCurrent_A: number;
  /** `V0`, supply without load [V]. */
  readonly supply_V: number;
  /** `Rs`, battery and leads [ohm]. */
  readonly supplyResistance_ohm: number;
  /** `d`, duty of the controller, above 0, at most 1 [-]. */
  readonly throttle: number;
  /** `c`, share of the power into the controller that it loses, 0 to 0.5 [-]. */
  readonly controllerLoss: number;
  /** Motor current that it bears for ever [A]; null where nobody said. */
  readonly continuousCurrent_A: number | null;
  /** What the battery gives [J]; null without one. */
  readonly batteryEnergy_J: number | null;
}

/** Largest share of its power that a controller may lose and still be one [-]; assumed. */
const MOST_CONTROLLER_LOSS = 0.5;

/**
 * Torque of a motor over its winding current.
 *
 * `Kt = 60 / (2 pi Kv)`: the same flux makes voltage from speed and torque from current.
 *
 * @param speedConstant_rpmV - `Kv`, speed over voltage without load [rpm/V]
 * @returns `Kt` [N m/A]
 * @throws ImpossibleInput if it is not above zero
 *
 * @remarks
 * Range: any; a winding driven in blocks (trapezoidal), current and voltage as direct current.
 * Outside: none: the relation is one of units.
 * Leaves out: saturation of the iron at several times the continuous current.
 * Limits: `Kt Kv` is 9.5493 N m rpm / (V A) for every motor.
 * Basis: from-memory (page not seen; follows from power, `T w = E I`).
 * Source: standard direct-current equivalent of a brushless motor.
 * Checked: test/reference/motor.test.ts.
 *
 * @example
 * ```ts
 * torqueConstant(800); // 0.01194
 * ```
 */
export function torqueConstant(speedConstant_rpmV: number): number {
  return 1 / (RADS_PER_RPM * requirePositive('speedConstant_rpmV', speedConstant_rpmV));
}

/**
 * A brushless motor at a steady throttle, as a motor for direct current behind a lossless step-down.
 *
 * Winding: `d V = n/Kv + I R`; torque: `T = Kt (I - I0)`. The controller takes `Is = d I / (1 - c)` from the supply,
 * whose voltage sags to `V = V0 - Is Rs`. So `I = (d V0 - n/Kv) / (R + d^2 Rs/(1 - c))`, and torque falls along a straight line
 * with speed. Losses: `I^2 R` in the winding, `I0 n/Kv` in iron and bearings, `c V Is` in the controller; what the
 * battery loses within is not counted as input. From a meter at the supply: `I = Is (1 - c)/d`, `n = Kv (d V - I R)`.
 *
 * @param input - motor, controller and supply; see its fields
 * @returns the motor
 * @throws ImpossibleInput naming the field: not above zero where it must be, throttle outside 0 to 1, controller loss
 *   outside 0 to 0.5, continuous current not above the one without load, or a supply and throttle that cannot drive
 *   the current without load
 *
 * @remarks
 * Range: steady running at currents up to a few times the continuous one.
 * Outside: the straight line goes on to standstill, where a real controller limits current or cuts out.
 * Leaves out: growth of `I0` with speed; copper, 0.393 % more resistance for each kelvin; ripple of the current at
 *   part throttle, which heats the winding more; lead angle of the controller.
 * Limits: `d = 1`, `Rs = 0`, `c = 0` is the plain motor; without load `n = Kv (d V0 - I0 R)`.
 * Basis: published (equations read in the documentation of an open library for electric flight; pages on motor
 *   constants agree).
 * Source: standard direct-current equivalent of a brushless motor, trapezoidal drive.
 * Checked: test/reference/motor.test.ts, test/core/fan/motor/motor.test.ts.
 *
 * @example
 * ```ts
 * const plain = { supplyResistance_ohm: 0, throttle: 1, controllerLoss: 0, continuousCurrent_A: 25, batteryEnergy_J: null };
 * const motor = brushlessMotor({ speedConstant_rpmV: 800, resistance_ohm: 0.05, noLoadCurrent_A: 1, supply_V: 18, ...plain });
 * motor.at(13600).torque_Nm; // 0.2268
 * motor.at(13600).shaftPower_W; // 323.0
 * ```
 */
export function brushlessMotor(input: BrushlessInput): MotorModel {
  const kv = requirePositive('speedConstant_rpmV', input.speedConstant_rpmV);
  const kt = torqueConstant(kv);
  const r = requirePositive('resistance_ohm', input.resistance_ohm);
  const idle = requireNotNegative('noLoadCurrent_A', input.noLoadCurrent_A);
  const volts = requirePositive('supply_V', input.supply_V);
  const source = requireNotNegative('supplyResistance_ohm', input.supplyResistance_ohm);
  const duty = requireBetween('throttle', requirePositive('throttle', input.throttle), 0, 1);
  const passed = 1 - requireBetween('controllerLoss', input.controllerLoss, 0, MOST_CONTROLLER_LOSS);
  const { continuousCurrent_A: lasting, batteryEnergy_J } = input;
  if (lasting !== null && !(requirePositive('continuousCurrent_A', lasting) > idle)) {
    throw new ImpossibleInput('continuousCurrent_A', lasting, `above the current without load, ${idle}`);
  }
  if (batteryEnergy_J !== null) requirePositive('batteryEnergy_J', batteryEnergy_J);

  const whole = r + (duty * duty * source) / passed;
  const noLoadSpeed_rpm = kv * (duty * volts - idle * whole);
  if (!(noLoadSpeed_rpm > 0)) {
    const rule = `below ${(duty * volts) / whole}, which the supply can drive through the winding at this throttle`;
    throw new ImpossibleInput('noLoadCurrent_A', idle, rule);
  }

  const at = (speed_rpm: number): MotorState => {
    const back = requireNotNegative('speed_rpm', speed_rpm) / kv;
    const current = (duty * volts - back) / whole;
    const drawn = (duty * current) / passed;
    const inputPower_W = (volts - drawn * source) * drawn;
    const torque_Nm = kt * (current - idle);
    return {
      torque_Nm,
      shaftPower_W: torque_Nm * speed_rpm * RADS_PER_RPM,
      motorCurrent_A: current,
      supplyCurrent_A: drawn,
      inputPower_W,
      copperLoss_W: current * current * r,
      otherLoss_W: back * idle + (1 - passed) * inputPower_W,
    };
  };
  const slope = -kt / (kv * whole);
  const turn = (speed_rpm: number, out: Float64Array): void => {
    out[0] = kt * ((duty * volts - speed_rpm / kv) / whole - idle);
    out[1] = slope;
  };
  const fromSupply = (reading: SupplyReading): MotorReading | null => {
    const share = reading.throttle ?? duty;
    const { voltage_V, supplyCurrent_A } = reading;
    if (!(share > 0 && share <= 1 && voltage_V < Infinity && supplyCurrent_A > 0)) return null;
    const current = (supplyCurrent_A * passed) / share;
    const back = share * voltage_V - current * r;
    if (!(back > 0 && current >= idle)) return null;
    const torque_Nm = kt * (current - idle);
    const shaftPower_W = back * (current - idle);
    return { speed_rpm: kv * back, torque_Nm, shaftPower_W, inputPower_W: voltage_V * supplyCurrent_A };
  };

  // of the power that leaves the battery's cells, (1 - I W/(d V0)) (1 - I0/I) reaches the shaft
  const bestCurrent = Math.sqrt((duty * volts * idle) / whole);
  const bestSpeed_rpm = kv * (duty * volts - bestCurrent * whole);
  // without losses of its own the best is no load, whose torque says nothing: half of what stalls it stands in
  const lastingCurrent = lasting ?? (idle > 0 ? bestCurrent : (duty * volts) / (2 * whole));
  return {
    kind: 'brushless',
    at,
    turn,
    fromSupply,
    noLoadSpeed_rpm,
    bestSpeed_rpm,
    continuousCurrent_A: lasting,
    lastingTorque_Nm: kt * (lastingCurrent - idle),
    breakdownTorque_Nm: null,
    batteryEnergy_J,
    source: 'direct-current equivalent: n = Kv (d V - I R), T = Kt (I - I0)',
    basis: 'published',
  };
}
