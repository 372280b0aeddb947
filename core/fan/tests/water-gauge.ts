import { requireFinite, requirePositive } from '../../quantities/impossible-input.ts';
import type { ValidRange } from '../../quantities/range.ts';

/** Where the density of water was fitted. */
export const WATER_DENSITY_RANGE: ValidRange = { temperature: { low: 273.15, high: 313.15, unit: 'K' } };

const GRAVITY_MS2 = 9.80665; // standard gravity, exact
const FREEZING_K = 273.15;

/**
 * Density of clean water at one atmosphere.
 *
 * `rho = a5 (1 - (t + a1)^2 (t + a2) / (a3 (t + a4)))` with `t` in degrees Celsius.
 *
 * @param temperature_K - `T`, of the water [K]
 * @returns density [kg/m3]
 * @throws ImpossibleInput naming the temperature: not finite or not above zero
 *
 * @remarks
 * Range: as data in WATER_DENSITY_RANGE.
 * Outside: held at the nearer end, since no liquid water of a gauge is far from it; `findOutside` reports it.
 * Leaves out: dissolved air and salts, dye or soap in the tube (soap changes nothing that a rule can see).
 * Limits: largest close to 4 C.
 * Basis: published (constants read as quoted in the documentation of an open library).
 * Source: Tanaka, Girard, Davis, Peuto and Bignell, Metrologia 38 (2001) 301-309, recommended equation.
 * Checked: test/reference/fan-readings.test.ts.
 *
 * @example
 * ```ts
 * waterDensity(293.15); // 998.207
 * ```
 */
export function waterDensity(temperature_K: number): number {
  const t = Math.min(Math.max(requirePositive('temperature_K', temperature_K) - FREEZING_K, 0), 40);
  return 999.97495 * (1 - ((t - 3.983035) ** 2 * (t + 301.797)) / (522528.9 * (t + 69.34881)));
}

/** A rise of water in a tube that stands in a vessel. */
export interface WaterRise {
  /** `h`, rise of the water in the tube over its first mark [m]. */
  readonly rise_m: number;
  /** `d`, inside diameter of the tube [m]; null where the vessel's level cannot have sunk. */
  readonly tube_m: number | null;
  /** `D`, inside diameter of the vessel [m]; null as above. */
  readonly vessel_m: number | null;
  /** `T`, temperature of the water [K]. */
  readonly temperature_K: number;
}

/**
 * Suction that lifts water in a tube, with the level that sinks in the vessel meanwhile.
 *
 * What rises in the tube is missing in the vessel: its level sinks by `h d^2/D^2`, so that the true column is
 * `h (1 + (d/D)^2)` and the suction `rho g` times that. A U-tube of one bore is the case `d = D`: the rise of one limb
 * counts twice.
 *
 * @param column - rise `rise_m` [m], tube `tube_m` [m], vessel `vessel_m` [m] and temperature `temperature_K` [K]
 * @returns suction below the room [Pa]; negative for a fall
 * @throws ImpossibleInput naming the field: not finite, or a diameter or temperature not above zero
 *
 * @remarks
 * Range: water that stands still; WATER_DENSITY_RANGE.
 * Outside: the value is still returned.
 * Leaves out: capillary rise (about 6 mm in a 5 mm tube, but the same at the first mark), local gravity (0.3 %), the
 *   tube's own wall in the water, the air over the column.
 * Limits: a vessel without bound gives `rho g h`; at 20 C that is 9.789 Pa for each mm.
 * Basis: from-memory (page not seen; follows from hydrostatics and the volume of the water).
 * Source: hydrostatics of a well-type manometer.
 * Checked: test/reference/fan-readings.test.ts.
 *
 * @example
 * ```ts
 * waterColumn({ rise_m: 0.3, tube_m: 0.01, vessel_m: 0.1, temperature_K: 293.15 }); // 2966.1
 * ```
 */
export function waterColumn(column: WaterRise): number {
  const rise = requireFinite('rise_m', column.rise_m);
  const sunk =
    column.tube_m === null || column.vessel_m === null
      ? 0
      : (requirePositive('tube_m', column.tube_m) / requirePositive('vessel_m', column.vessel_m)) ** 2;
  return waterDensity(column.temperature_K) * GRAVITY_MS2 * rise * (1 + sunk);
}
