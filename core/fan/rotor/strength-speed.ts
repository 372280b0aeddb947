import { requirePositive } from '../../quantities/impossible-input.ts';

/**
 * Speed at which a stress that grows with the square of speed reaches a strength.
 *
 * `n = n0 sqrt(S / s0)`.
 *
 * @param speed_rpm - `n0`, speed at which the stress is known [rpm], above zero
 * @param stress_Pa - `s0`, greatest stress at that speed [Pa], above zero
 * @param strength_Pa - `S`, of the material, or its strength over a safety factor [Pa], above zero
 * @returns speed [rpm]
 * @throws ImpossibleInput naming the parameter: not finite, or not above zero
 *
 * @remarks
 * Range: elastic; every stress of a spinning rotor grows so.
 * Outside: a tough metal yields and shares the load before it breaks, so it breaks above this speed.
 * Leaves out: creep, fatigue, heat and imbalance, by which a rotor may break far below this speed.
 * Limits: a strength equal to the stress gives the speed itself.
 * Basis: none: follows from stress growing with the square of speed.
 * Source: hand calculation.
 * Checked: test/reference/rotor.test.ts.
 *
 * @example
 * ```ts
 * speedAtStrength(12000, 9.257e6, 40e6); // 24945
 * ```
 */
export function speedAtStrength(speed_rpm: number, stress_Pa: number, strength_Pa: number): number {
  return (
    requirePositive('speed_rpm', speed_rpm) *
    Math.sqrt(requirePositive('strength_Pa', strength_Pa) / requirePositive('stress_Pa', stress_Pa))
  );
}
