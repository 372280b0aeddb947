import { requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';

/** Where the 1976 form of Sutherland's law is used for air. */
export const VISCOSITY_RANGE: ValidRange = { temperature: { low: 170, high: 1900, unit: 'K' } };

/**
 * Dynamic viscosity of air by Sutherland's law.
 *
 * `mu = beta T^1.5 / (T + S)` with `beta = 1.458e-6 kg/(s m K^0.5)` and `S = 110.4 K`.
 *
 * @param temperature_K - `T` [K]
 * @returns viscosity [Pa s]
 * @throws ImpossibleInput naming the temperature: not finite or not above zero
 *
 * @remarks
 * Range: as data in VISCOSITY_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: humidity (below 1 % in a workshop) and pressure (no effect near one atmosphere).
 * Limits: rises strictly with temperature.
 * Basis: published (read as quoted in an open library; page not seen).
 * Source: U.S. Standard Atmosphere, 1976, equation 51, as quoted in an open library.
 * Checked: test/reference/air.test.ts.
 *
 * @example
 * ```ts
 * sutherlandViscosity(293.15); // 1.81341e-5
 * ```
 */
export function sutherlandViscosity(temperature_K: number): number {
  const T = requirePositive('temperature_K', temperature_K);
  return (1.458e-6 * T * Math.sqrt(T)) / (T + 110.4);
}
