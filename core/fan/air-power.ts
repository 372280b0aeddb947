import { requireFinite, requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';

/**
 * Power that a fan gives to the air: flow times rise of pressure.
 *
 * `P_air = Q p`. With total pressure it is the total air power; with fan static pressure, the static air power.
 *
 * @param flow_m3s - `Q`, volume flow at the fan's inlet [m3/s]
 * @param pressure_Pa - `p`, rise of total (or static) pressure over the fan [Pa]
 * @returns air power [W]; negative where the fan is a resistance (`p` below zero)
 * @throws ImpossibleInput naming the parameter: flow below zero, or either not finite
 *
 * @remarks
 * Range: pressure rise small against the absolute pressure (5 kPa costs about 2 % of compression work).
 * Outside: the value is still returned.
 * Leaves out: compression of the air; at 15 kPa the true figure is about 5 % lower.
 * Limits: zero at shut-off and at free delivery.
 * Basis: published (6356 read on pages that teach fans; it follows from the definition of work).
 * Source: AMCA 210 / ISO 5801, fan air power; US form cfm x in wg / 6356.
 * Checked: test/reference/fan.test.ts.
 *
 * @example
 * ```ts
 * airPower(0.1, 2500); // 250
 * ```
 */
export function airPower(flow_m3s: number, pressure_Pa: number): number {
  return requireNotNegative('flow_m3s', flow_m3s) * requireFinite('pressure_Pa', pressure_Pa);
}

/**
 * Efficiency of a fan: air power over the power that goes in.
 *
 * `eta = Q p / P`. Total or static efficiency according to `p`; of the rotor alone if `P` is shaft power, of fan and
 * motor together if `P` is electrical.
 *
 * @param flow_m3s - `Q`, volume flow [m3/s]
 * @param pressure_Pa - `p`, rise of total (or static) pressure [Pa]
 * @param power_W - `P`, shaft or electrical power [W], above zero
 * @returns efficiency [-]; above 1 means that a reading is wrong, and the value is returned so that it can be said
 * @throws ImpossibleInput naming the parameter: flow below zero, power not above zero, or any not finite
 *
 * @remarks
 * Range: 0 to 1; shop-made radial wheels reach 0.35 to 0.55, bought ones 0.6 to 0.8.
 * Outside: the value is still returned; the caller reports it.
 * Leaves out: compression of the air, as `airPower` does.
 * Limits: zero at shut-off and at free delivery.
 * Basis: from-memory (page not seen; the definition).
 * Source: AMCA 210 / ISO 5801, fan efficiency.
 * Checked: test/reference/fan.test.ts.
 *
 * @example
 * ```ts
 * fanEfficiency(0.1, 2500, 500); // 0.500
 * ```
 */
export function fanEfficiency(flow_m3s: number, pressure_Pa: number, power_W: number): number {
  return airPower(flow_m3s, pressure_Pa) / requirePositive('power_W', power_W);
}
