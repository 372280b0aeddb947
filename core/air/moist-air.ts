import { ImpossibleInput, requireBetween, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import { sutherlandViscosity } from './viscosity.ts';

export { sutherlandViscosity, VISCOSITY_RANGE } from './viscosity.ts';
export { pressureAtAltitude, temperatureAtAltitude, ALTITUDE_RANGE } from './standard-atmosphere.ts';

/** Where CIPM-2007 was agreed; outside it the equation drifts by some 0.05 %. */
export const MOIST_AIR_RANGE: ValidRange = {
  temperature: { low: 288.15, high: 300.15, unit: 'K' },
  'absolute pressure': { low: 60_000, high: 110_000, unit: 'Pa' },
};

/** Carbon dioxide in ordinary air, the value that CIPM-2007 takes when nobody has measured it [mol/mol]. */
export const USUAL_CO2_FRACTION = 0.0004;

const MOLAR_GAS_CONSTANT = 8.314472; // J/(mol K), the value in force when CIPM-2007 was fitted
const WATER_MOLAR_MASS = 18.01528e-3; // kg/mol
const ZERO_CELSIUS_K = 273.15;

/** State of the air in the room. */
export interface AirConditions {
  /** Absolute pressure [Pa]. */
  readonly pressure_Pa: number;
  /** Thermodynamic temperature [K]. */
  readonly temperature_K: number;
  /** Vapour pressure over saturation pressure [-], 0 to 1. */
  readonly relativeHumidity: number;
  /** Carbon dioxide, amount fraction [-]; absent means USUAL_CO2_FRACTION. */
  readonly co2Fraction?: number;
}

/** The room's air as the relations for ducts and fittings need it. */
export interface AirState {
  /** Density [kg/m3]. */
  readonly density_kgm3: number;
  /** Dynamic viscosity [Pa s]. */
  readonly viscosity_Pas: number;
  /** Absolute pressure [Pa]. */
  readonly pressure_Pa: number;
  /** Temperature [K]. */
  readonly temperature_K: number;
  /** `p / (rho T)` of this very air [J/(kg K)], so that density follows pressure at constant temperature. */
  readonly gasConstant_JkgK: number;
}

/**
 * Saturation vapour pressure over water.
 *
 * `psv = exp(A T^2 + B T + C + D / T)` with the constants that CIPM-2007 prescribes.
 *
 * @param temperature_K - `T` [K]
 * @returns saturation pressure [Pa]
 * @throws ImpossibleInput naming the temperature outside 200 K to 400 K
 *
 * @remarks
 * Range: 273 K to 303 K, as fitted; MOIST_AIR_RANGE for density.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: ice below the freezing point (the curve is that of supercooled water).
 * Limits: rises strictly with temperature.
 * Basis: published (constants read as quoted in two open libraries; page not seen).
 * Source: Picard, Davis, Glaeser and Fujii, CIPM-2007, Metrologia 45 (2008) 149-155, appendix A1.1, as quoted in
 *   open libraries.
 * Checked: test/reference/air.test.ts.
 *
 * @example
 * ```ts
 * saturationPressure(293.15); // 2339.16
 * ```
 */
export function saturationPressure(temperature_K: number): number {
  const T = requireBetween('temperature_K', temperature_K, 200, 400);
  return Math.exp(1.2378847e-5 * T * T - 1.9121316e-2 * T + 33.93711047 - 6.3431645e3 / T);
}

/**
 * Density of moist air by the CIPM-2007 equation.
 *
 * `rho = p Ma / (Z R T) (1 - xv (1 - Mv/Ma))`, with the vapour fraction `xv` from humidity, saturation pressure
 * and enhancement factor, and the compressibility `Z` as a series in `p/T`, `t` and `xv`.
 *
 * @param air - pressure `p` [Pa], temperature `T` [K], relative humidity [-] and, if known, carbon dioxide [-]
 * @returns density [kg/m3]
 * @throws ImpossibleInput naming a pressure not above zero, a temperature outside 200 K to 400 K, a humidity or
 * carbon dioxide fraction outside 0 to 1, or a humidity whose vapour alone would exceed the pressure
 *
 * @remarks
 * Range: 15 to 27 C, 600 to 1100 hPa; as data in MOIST_AIR_RANGE.
 * Outside: the value is still returned (off by some 0.05 % from -10 to 45 C); `findOutside` reports it.
 * Leaves out: dust carried in the air, smoke and other gases.
 * Limits: humid air is lighter than dry air; at low pressure it tends to the ideal gas.
 * Basis: published (constants read as quoted in two open libraries; page not seen).
 * Source: Picard, Davis, Glaeser and Fujii, CIPM-2007, Metrologia 45 (2008) 149-155, as quoted in open libraries.
 * Checked: test/reference/air.test.ts.
 *
 * @example
 * ```ts
 * moistAirDensity({ pressure_Pa: 101325, temperature_K: 293.15, relativeHumidity: 0.5 }); // 1.19931
 * ```
 */
export function moistAirDensity(air: AirConditions): number {
  const p = requirePositive('pressure_Pa', air.pressure_Pa);
  const saturation = saturationPressure(air.temperature_K);
  const humidity = requireBetween('relativeHumidity', air.relativeHumidity, 0, 1);
  const co2 = requireBetween('co2Fraction', air.co2Fraction ?? USUAL_CO2_FRACTION, 0, 1);
  const T = air.temperature_K;
  const t = T - ZERO_CELSIUS_K;

  const enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t;
  const xv = (humidity * enhancement * saturation) / p;
  if (xv > 1)
    throw new ImpossibleInput('relativeHumidity', humidity, 'such that vapour stays below the pressure');

  const pT = p / T;
  const first = 1.58123e-6 - 2.9331e-8 * t + 1.1043e-10 * t * t;
  const second = (5.707e-6 - 2.051e-8 * t) * xv + (1.9898e-4 - 2.376e-6 * t) * xv * xv;
  const Z = 1 - pT * (first + second) + pT * pT * (1.83e-11 - 0.765e-8 * xv * xv);
  if (!(Z > 0))
    throw new ImpossibleInput('pressure_Pa', p, 'low enough for air to be a gas in this equation');

  const dryMolarMass = 28.96546e-3 + 12.011e-3 * (co2 - USUAL_CO2_FRACTION);
  return (
    ((p * dryMolarMass) / (Z * MOLAR_GAS_CONSTANT * T)) * (1 - xv * (1 - WATER_MOLAR_MASS / dryMolarMass))
  );
}

/**
 * Density, viscosity and gas constant of the room's air in one step.
 *
 * @param air - pressure [Pa], temperature [K], relative humidity [-] and, if known, carbon dioxide [-]
 * @returns the state that duct and fitting relations take
 * @throws ImpossibleInput as `moistAirDensity` and `sutherlandViscosity` do
 *
 * @remarks
 * Range: as data in MOIST_AIR_RANGE and VISCOSITY_RANGE.
 * Outside: the values are still returned; `findOutside` reports it.
 * Leaves out: the effect of humidity on viscosity (below 1 % in a workshop).
 * Limits: the gas constant tends to that of dry air, about 287 J/(kg K), as humidity goes to zero.
 * Basis: published (as its two parts).
 * Source: CIPM-2007 for density; U.S. Standard Atmosphere, 1976, for viscosity.
 * Checked: test/reference/air.test.ts.
 *
 * @example
 * ```ts
 * airState({ pressure_Pa: 101325, temperature_K: 293.15, relativeHumidity: 0.5 }).gasConstant_JkgK; // 288.2
 * ```
 */
export function airState(air: AirConditions): AirState {
  const density_kgm3 = moistAirDensity(air);
  return {
    density_kgm3,
    viscosity_Pas: sutherlandViscosity(air.temperature_K),
    pressure_Pa: air.pressure_Pa,
    temperature_K: air.temperature_K,
    gasConstant_JkgK: air.pressure_Pa / (density_kgm3 * air.temperature_K),
  };
}
