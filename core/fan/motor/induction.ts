import { ImpossibleInput, requireNotNegative, requirePositive } from '../../quantities/impossible-input.ts';
import { RADS_PER_RPM } from './motor-model.ts';
import type { MotorModel, MotorReading, MotorState, SupplyReading } from './motor-model.ts';

/** An induction motor as its plate gives it, at the plate's voltage and frequency. */
export interface InductionInput {
  /** Of the mains [Hz]. */
  readonly frequency_Hz: number;
  /** Even number, 2 or more [-]. */
  readonly poles: number;
  /** At the shaft [W]. */
  readonly ratedPower_W: number;
  /** At that power [rpm]. */
  readonly ratedSpeed_rpm: number;
  /** In each lead, at that power [A]. */
  readonly ratedCurrent_A: number;
  /** Between the leads [V]. */
  readonly supply_V: number;
  readonly phases: 'single' | 'three';
  /** On the plate [-]; null where it is not. */
  readonly powerFactor: number | null;
  /** On the plate [-]; null where it is not. */
  readonly efficiency: number | null;
  /** Wheel speed over motor speed [-]; null where the wheel sits on the motor's shaft. */
  readonly beltRatio: number | null;
}

/** Torque over rated torque at which the motor is taken to stall. */
export const BREAKDOWN_SHARE = {
  value: 1.6,
  source:
    'IEC 60034-1: an induction motor bears 1.6 times its rated torque for 15 s; most stall near 2 to 2.5',
  basis: 'from-memory',
} as const;

/** Share of the rated losses that heats the windings. */
export const COPPER_SHARE = {
  value: 0.6,
  source: 'split of motor losses in handbooks: stator and rotor copper 50 to 65 % at full load',
  basis: 'from-memory',
} as const;

/** Share of the power that a V-belt passes on. */
export const BELT_EFFICIENCY = {
  value: 0.95,
  source: 'none: usual figure for a V-belt of a few kilowatts',
  basis: 'common-practice',
} as const;

/** How far the plate's own figures may be apart before one of them must be wrong [-]; common practice. */
const PLATE_SLACK = 0.15;

/**
 * Speed of the turning field of an induction motor.
 *
 * `ns = 120 f / p`: one turn for each pair of poles and period.
 *
 * @param frequency_Hz - `f`, of the mains [Hz]
 * @param poles - `p`, an even number [-]
 * @returns synchronous speed [rpm]
 * @throws ImpossibleInput if the frequency is not above zero or the poles are not an even number of 2 or more
 *
 * @remarks
 * Range: any.
 * Outside: none: it is a definition.
 * Leaves out: none: it is exact.
 * Limits: two poles turn once a period.
 * Basis: from-memory (page not seen; the definition).
 * Source: any text on electrical machines.
 * Checked: test/reference/motor.test.ts.
 *
 * @example
 * ```ts
 * synchronousSpeed(60, 4); // 1800
 * ```
 */
export function synchronousSpeed(frequency_Hz: number, poles: number): number {
  requirePositive('frequency_Hz', frequency_Hz);
  if (!(poles >= 2 && poles % 2 === 0))
    throw new ImpossibleInput('poles', poles, 'an even number, 2 or more');
  return (120 * frequency_Hz) / poles;
}

/**
 * An induction motor on the stable part of its curve, from its plate.
 *
 * Torque goes with slip: `T/Tr = (ns - n)/(ns - nr)`. Current has a magnetising part that stays, `Im = Ir sin phi`, and
 * one in phase with the voltage that rises in a straight line from the fixed losses to its rated value:
 * `I^2 = Im^2 + Ia^2`. Of the rated losses COPPER_SHARE goes with the square of current and the rest stays. On another
 * voltage, `u` times the plate's, the same slip gives `u^2` the torque. A belt turns the wheel at its ratio and takes
 * its share of the power.
 *
 * @param input - the plate, and the belt if there is one; see its fields
 * @returns the motor, at the shaft of the wheel
 * @throws ImpossibleInput naming the field: rated speed not below the synchronous one or less than half of it, poles not even, plate
 *   figures that contradict each other, anything not above zero
 *
 * @remarks
 * Range: from no load to BREAKDOWN_SHARE times the rated torque.
 * Outside: the line of slip goes on; `breakdownTorque_Nm` tells the caller, who says that it stalls.
 * Leaves out: starting; the bend of the torque curve before it stalls; warming; a frequency drive; the higher current without
 *   load of single-phase motors, which this may understate.
 * Limits: at rated speed it gives the plate; at synchronous speed no torque.
 * Basis: from-memory (equivalent circuit simplified to a constant magnetising branch and a straight line of slip); power
 *   factor and efficiency equal where the plate gives neither: assumed.
 * Source: any text on electrical machines; shares as sourced beside them.
 * Checked: test/reference/motor.test.ts, test/core/fan/motor/motor.test.ts.
 *
 * @example
 * ```ts
 * const plate = { ratedPower_W: 1500, ratedSpeed_rpm: 1440, ratedCurrent_A: 3.4, supply_V: 400, phases: 'three' } as const;
 * const more = { frequency_Hz: 50, poles: 4, powerFactor: 0.79, efficiency: 0.82, beltRatio: null };
 * const motor = inductionMotor({ ...plate, ...more });
 * motor.at(1440).torque_Nm; // 9.947
 * motor.at(1470).torque_Nm; // 4.974
 * ```
 */
export function inductionMotor(input: InductionInput): MotorModel {
  const field = synchronousSpeed(input.frequency_Hz, input.poles);
  const rated = requirePositive('ratedSpeed_rpm', input.ratedSpeed_rpm);
  if (!(rated < field && rated > field / 2)) {
    const rule = `below ${field}, the speed of the turning field, and above half of it`;
    throw new ImpossibleInput('ratedSpeed_rpm', rated, rule);
  }
  const plate = plateOf(input);
  const { ratedCurrent_A, supply_V, beltRatio } = input;
  const ratio = beltRatio === null ? 1 : requirePositive('beltRatio', beltRatio);
  const passed = beltRatio === null ? 1 : BELT_EFFICIENCY.value;

  const ratedTorque = input.ratedPower_W / (rated * RADS_PER_RPM);
  const loss = plate.input_W - input.ratedPower_W;
  const copper = COPPER_SHARE.value * loss;
  const fixed = loss - copper;
  const active = ratedCurrent_A * plate.powerFactor;
  const magnetising = Math.sqrt(ratedCurrent_A ** 2 - active ** 2);
  const fixedShare = fixed / plate.input_W;
  const currentAt = (load: number): number =>
    Math.hypot(magnetising, active * (fixedShare + (1 - fixedShare) * load));

  const at = (speed_rpm: number): MotorState => {
    const speed = requireNotNegative('speed_rpm', speed_rpm) / ratio;
    const load = (field - speed) / (field - rated);
    const current = currentAt(load);
    const motorPower = load * ratedTorque * speed * RADS_PER_RPM;
    // driven by its wheel, the belt takes its share from the other side
    const share = load >= 0 ? passed : 1 / passed;
    const copperLoss_W = copper * (current / ratedCurrent_A) ** 2;
    return {
      torque_Nm: (load * ratedTorque * share) / ratio,
      shaftPower_W: motorPower * share,
      motorCurrent_A: current,
      supplyCurrent_A: current,
      inputPower_W: motorPower + copperLoss_W + fixed,
      copperLoss_W,
      otherLoss_W: fixed + motorPower * (1 - share),
    };
  };
  const slope = (-ratedTorque * passed) / ((field - rated) * ratio ** 2);
  const turn = (speed_rpm: number, out: Float64Array): void => {
    out[0] = slope * (speed_rpm - field * ratio);
    out[1] = slope;
  };
  const fromSupply = (reading: SupplyReading): MotorReading | null => {
    const { voltage_V, supplyCurrent_A, throttle } = reading;
    if ((throttle !== null && throttle !== 1) || !(voltage_V > 0 && voltage_V < Infinity)) return null;
    const u = voltage_V / supply_V;
    const inPhase = supplyCurrent_A ** 2 - (magnetising * u) ** 2;
    if (!(inPhase > 0)) return null;
    const load = ((Math.sqrt(inPhase) * u) / active - fixedShare * u * u) / (1 - fixedShare);
    const speed = field - ((field - rated) * load) / (u * u);
    if (!(load >= 0 && load <= BREAKDOWN_SHARE.value * u * u && speed > 0)) return null;
    const motorPower = load * ratedTorque * speed * RADS_PER_RPM;
    return {
      speed_rpm: speed * ratio,
      torque_Nm: (load * ratedTorque * passed) / ratio,
      shaftPower_W: motorPower * passed,
      inputPower_W: motorPower + fixed * u * u + copper * (supplyCurrent_A / ratedCurrent_A) ** 2,
    };
  };
  const lastingTorque_Nm = (ratedTorque * passed) / ratio;
  return {
    kind: 'induction',
    at,
    turn,
    fromSupply,
    noLoadSpeed_rpm: field * ratio,
    bestSpeed_rpm: rated * ratio,
    continuousCurrent_A: ratedCurrent_A,
    lastingTorque_Nm,
    breakdownTorque_Nm: BREAKDOWN_SHARE.value * lastingTorque_Nm,
    batteryEnergy_J: null,
    source: `torque in a straight line of slip from the plate; ${plate.said}`,
    basis: 'from-memory',
  };
}

/** Power factor and input at the rating, from what the plate gives. */
function plateOf(input: InductionInput): { powerFactor: number; input_W: number; said: string } {
  const power = requirePositive('ratedPower_W', input.ratedPower_W);
  const current = requirePositive('ratedCurrent_A', input.ratedCurrent_A);
  const volts = requirePositive('supply_V', input.supply_V);
  const apparent = volts * current * (input.phases === 'three' ? Math.sqrt(3) : 1);
  const { powerFactor, efficiency } = input;
  for (const [name, value] of Object.entries({ powerFactor, efficiency })) {
    if (value !== null && !(requirePositive(name, value) < 1))
      throw new ImpossibleInput(name, value, 'below 1');
  }
  // both together, whatever the plate leaves out
  const product = power / apparent;
  const contradiction = (share: number): boolean => !(share < 1);
  if (contradiction(product)) {
    const rule = `below ${apparent.toPrecision(4)}, which is all that the plate's volts and amps bring`;
    throw new ImpossibleInput('ratedPower_W', power, rule);
  }
  if (powerFactor !== null && efficiency !== null) {
    if (Math.abs(powerFactor * efficiency - product) > PLATE_SLACK * product) {
      const rule = `near ${(powerFactor * efficiency * apparent).toPrecision(3)}, which volts, amps, power factor and efficiency of the plate give: see whether the supply is that of the plate`;
      throw new ImpossibleInput('ratedPower_W', power, rule);
    }
    return { powerFactor, input_W: power / efficiency, said: 'power factor and efficiency of the plate' };
  }
  if (efficiency !== null) {
    if (contradiction(product / efficiency)) {
      throw new ImpossibleInput('efficiency', efficiency, `above ${product.toPrecision(3)}`);
    }
    return {
      powerFactor: product / efficiency,
      input_W: power / efficiency,
      said: 'efficiency of the plate',
    };
  }
  if (powerFactor !== null) {
    if (contradiction(product / powerFactor)) {
      throw new ImpossibleInput('powerFactor', powerFactor, `above ${product.toPrecision(3)}`);
    }
    return { powerFactor, input_W: apparent * powerFactor, said: 'power factor of the plate' };
  }
  const both = Math.sqrt(product);
  return { powerFactor: both, input_W: apparent * both, said: 'power factor and efficiency taken as equal' };
}
