import { requireBetween } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';

/** The troposphere of the standard, as geometric altitude. */
export const ALTITUDE_RANGE: ValidRange = { altitude: { low: -5000, high: 11_019, unit: 'm' } };

const EARTH_RADIUS_m = 6_356_766;
const SEA_LEVEL_PRESSURE_Pa = 101_325;
const SEA_LEVEL_TEMPERATURE_K = 288.15;
const LAPSE_RATE_Km = 6.5e-3;
/** `g M / (R L)` with g 9.80665 m/s2, M 28.9644 kg/kmol, R 8314.32 J/(kmol K), L 6.5 K/km. */
const PRESSURE_EXPONENT = (9.80665 * 28.9644) / (8314.32 * LAPSE_RATE_Km);

/**
 * Temperature of the standard atmosphere at an altitude.
 *
 * `T = T0 - L H`, with the geopotential height `H = r h / (r + h)`.
 *
 * @param altitude_m - `h`, geometric altitude above sea level [m]
 * @returns temperature [K]
 * @throws ImpossibleInput naming the altitude below -10 km or above 40 km
 *
 * @remarks
 * Range: troposphere; as data in ALTITUDE_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: weather and season; a workshop is heated, so use this for outdoor air only.
 * Limits: 288.15 K at sea level.
 * Basis: published (read as quoted in an open library; page not seen).
 * Source: U.S. Standard Atmosphere, 1976, equation 23 and table 4, as quoted in an open library.
 * Checked: test/reference/air.test.ts.
 *
 * @example
 * ```ts
 * temperatureAtAltitude(1000); // 281.651
 * ```
 */
export function temperatureAtAltitude(altitude_m: number): number {
  const h = requireBetween('altitude_m', altitude_m, -10_000, 40_000);
  return SEA_LEVEL_TEMPERATURE_K - (LAPSE_RATE_Km * EARTH_RADIUS_m * h) / (EARTH_RADIUS_m + h);
}

/**
 * Barometric pressure of the standard atmosphere at an altitude.
 *
 * `P = P0 (T/T0)^(g M / (R L))`, with `T` of the standard atmosphere there.
 *
 * @param altitude_m - `h`, geometric altitude above sea level [m]
 * @returns absolute pressure [Pa]
 * @throws ImpossibleInput naming the altitude below -10 km or above 40 km
 *
 * @remarks
 * Range: troposphere; as data in ALTITUDE_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: weather, which moves the barometer by some 3 % either way.
 * Limits: 101 325 Pa at sea level; falls strictly with altitude.
 * Basis: published (read as quoted in an open library; page not seen).
 * Source: U.S. Standard Atmosphere, 1976, equation 33a, as quoted in an open library.
 * Checked: test/reference/air.test.ts.
 *
 * @example
 * ```ts
 * pressureAtAltitude(1000); // 89876.3
 * ```
 */
export function pressureAtAltitude(altitude_m: number): number {
  return (
    SEA_LEVEL_PRESSURE_Pa * (temperatureAtAltitude(altitude_m) / SEA_LEVEL_TEMPERATURE_K) ** PRESSURE_EXPONENT
  );
}
