import { ImpossibleInput, requirePositive } from '../../quantities/impossible-input.ts';

/**
 * Angular speed of a wheel.
 *
 * `w = 2 pi n / 60`.
 *
 * @param speed_rpm - `n`, rotation speed [rpm], above zero
 * @returns angular speed [rad/s]
 * @throws ImpossibleInput naming `speed_rpm`: not finite, or not above zero
 *
 * @remarks
 * Range: any.
 * Outside: none: it holds everywhere.
 * Leaves out: none: it is a change of unit.
 * Limits: zero speed gives zero.
 * Basis: none: a definition.
 * Source: the definition of the revolution, 2 pi rad.
 * Checked: test/reference/rotor.test.ts.
 *
 * @example
 * ```ts
 * angularSpeed(3000); // 314.16
 * ```
 */
export function angularSpeed(speed_rpm: number): number {
  return (requirePositive('speed_rpm', speed_rpm) * Math.PI) / 30;
}

/**
 * Speed of the rim of a wheel.
 *
 * `v = w D / 2`.
 *
 * @param diameter_m - `D`, outside diameter of the wheel [m], above zero
 * @param speed_rpm - rotation speed [rpm], above zero
 * @returns speed of the tip [m/s]
 * @throws ImpossibleInput naming the parameter: not finite, or not above zero
 *
 * @remarks
 * Range: any.
 * Outside: none: it holds everywhere.
 * Leaves out: growth of the wheel, which is below a thousandth.
 * Limits: zero speed gives zero.
 * Basis: none: a definition.
 * Source: the definition of angular speed.
 * Checked: test/reference/rotor.test.ts.
 *
 * @example
 * ```ts
 * tipSpeed(0.15, 12000); // 94.25
 * ```
 */
export function tipSpeed(diameter_m: number, speed_rpm: number): number {
  return (angularSpeed(speed_rpm) * requirePositive('diameter_m', diameter_m)) / 2;
}

/**
 * Frequency at which blades pass the cut-off edge: the pitch of a fan's tone.
 *
 * `f = Z n / 60`.
 *
 * @param blades - `Z`, number of blades [-], a whole number from 1
 * @param speed_rpm - `n`, rotation speed [rpm], above zero
 * @returns frequency [Hz]
 * @throws ImpossibleInput naming the parameter: blades not whole or below 1, speed not above zero
 *
 * @remarks
 * Range: evenly spaced blades.
 * Outside: unevenly spaced blades spread the tone over other multiples of the shaft's frequency.
 * Leaves out: overtones at whole multiples.
 * Limits: one blade gives the shaft's own frequency.
 * Basis: none: a definition.
 * Source: the definition of frequency.
 * Checked: test/reference/rotor-wheel.test.ts.
 *
 * @example
 * ```ts
 * bladePassFrequency(7, 6000); // 700
 * ```
 */
export function bladePassFrequency(blades: number, speed_rpm: number): number {
  if (!(Number.isInteger(blades) && blades >= 1))
    throw new ImpossibleInput('blades', blades, 'a whole number, one or more');
  return (blades * requirePositive('speed_rpm', speed_rpm)) / 60;
}
