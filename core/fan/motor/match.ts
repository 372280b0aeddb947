import { requirePositive } from '../../quantities/impossible-input.ts';

/** A rotor at work. */
export interface RotorLoad {
  /** Torque that it asks [N m]. */
  readonly torque_Nm: number;
  /** At this speed [rpm]. */
  readonly speed_rpm: number;
}

/** What a motor bears, see `MotorModel`. */
export interface MotorGift {
  /** Torque that it gives for ever [N m]. */
  readonly lastingTorque_Nm: number;
  /** Its best speed [rpm]. */
  readonly bestSpeed_rpm: number;
}

/** Load ratios between which a motor suits its rotor [-]. */
export const SUITED = {
  low: 0.3,
  high: 1.15,
  source: 'none: under a third of its load a motor is heavy and wasteful, over it by a seventh it overheats',
  basis: 'common-practice',
} as const;

/**
 * How much a rotor asks of a motor: its torque at the motor's best speed over what the motor gives for ever.
 *
 * Fan law at the same point of the curve: torque goes with the square of speed, `T2 = T1 (n2/n1)^2`.
 *
 * @param rotor - torque and the speed at which it is asked
 * @param motor - lasting torque and best speed
 * @returns ratio [-]; above 1 the motor is too small, well below it too big
 * @throws ImpossibleInput naming the field: not above zero
 *
 * @remarks
 * Range: speeds within about a factor of two (common practice).
 * Outside: the value is still returned.
 * Leaves out: Reynolds number; cooling of the motor, which goes with speed and with the air that passes.
 * Limits: a rotor that asks the lasting torque at the best speed gives 1.
 * Basis: published (fan laws read in Process Heating, a trade journal; torque is power over speed).
 * Source: fan laws, AMCA 210 / ISO 5801, as in the journal Process Heating.
 * Checked: test/reference/driven-fan.test.ts.
 *
 * @example
 * ```ts
 * loadRatio({ torque_Nm: 0.1, speed_rpm: 10000 }, { lastingTorque_Nm: 0.2, bestSpeed_rpm: 20000 }); // 2.000
 * ```
 */
export function loadRatio(rotor: RotorLoad, motor: MotorGift): number {
  const faster =
    requirePositive('bestSpeed_rpm', motor.bestSpeed_rpm) / requirePositive('speed_rpm', rotor.speed_rpm);
  const asked = requirePositive('torque_Nm', rotor.torque_Nm) * faster * faster;
  return asked / requirePositive('lastingTorque_Nm', motor.lastingTorque_Nm);
}

/**
 * Speed at which a rotor would take just what the motor gives for ever.
 *
 * Fan law: `T ~ n^2`, so `n = n_best / sqrt(ratio)`.
 *
 * @param bestSpeed_rpm - of the motor [rpm]
 * @param ratio - load ratio at that speed [-]
 * @returns speed [rpm]
 * @throws ImpossibleInput naming the parameter: not above zero
 *
 * @remarks
 * Range: speeds within about a factor of two (common practice).
 * Outside: the value is still returned.
 * Leaves out: whether motor and supply reach it, and whether the rotor bears it: see to that first.
 * Limits: ratio 1 gives the best speed.
 * Basis: published (fan laws read in Process Heating, a trade journal; torque is power over speed).
 * Source: fan laws, AMCA 210 / ISO 5801, as in the journal Process Heating.
 * Checked: test/reference/driven-fan.test.ts.
 *
 * @example
 * ```ts
 * matchSpeed(20000, 2); // 14142
 * ```
 */
export function matchSpeed(bestSpeed_rpm: number, ratio: number): number {
  return requirePositive('bestSpeed_rpm', bestSpeed_rpm) / Math.sqrt(requirePositive('ratio', ratio));
}

/**
 * Diameter of a wheel of the same shape that would take just what the motor gives for ever, at its best speed.
 *
 * Fan law: `P ~ n^3 D^5`, so at one speed `T ~ D^5` and `D2 = D1 ratio^(-1/5)`.
 *
 * @param diameter_m - of the wheel there is [m]
 * @param ratio - its load ratio [-]
 * @returns diameter [m]
 * @throws ImpossibleInput naming the parameter: not above zero
 *
 * @remarks
 * Range: sizes within about a factor of two, every dimension scaled along (common practice).
 * Outside: the value is still returned.
 * Leaves out: Reynolds number and clearance; a wheel that is only turned down keeps its width and does not follow this.
 * Limits: ratio 1 gives the same wheel.
 * Basis: from-memory (page not seen).
 * Source: fan laws, AMCA 210 / ISO 5801.
 * Checked: test/reference/driven-fan.test.ts.
 *
 * @example
 * ```ts
 * matchDiameter(0.2, 2); // 0.1741
 * ```
 */
export function matchDiameter(diameter_m: number, ratio: number): number {
  return requirePositive('diameter_m', diameter_m) * requirePositive('ratio', ratio) ** -0.2;
}
