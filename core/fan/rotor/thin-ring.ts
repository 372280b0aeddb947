import { requirePositive } from '../../quantities/impossible-input.ts';

/**
 * Stress in a thin ring that turns free of spokes.
 *
 * `s = rho v^2`.
 *
 * @param density_kgm3 - `rho`, of the material [kg/m3], above zero
 * @param rimSpeed_ms - `v`, speed of the ring [m/s], above zero; that of its outside is on the safe side
 * @returns hoop stress [Pa]
 * @throws ImpossibleInput naming the parameter: not finite, or not above zero
 *
 * @remarks
 * Range: width along the radius up to about a tenth of the radius.
 * Outside: a wide ring has less than this at the speed of its outside, for every hole (see Limits).
 * Leaves out: bending between spokes or blades, joints.
 * Limits: what `maxAnnularDiscStress` comes to as the hole reaches the rim, and never less than it.
 * Basis: from-memory (page not seen; follows from equilibrium of half a ring).
 * Source: Timoshenko, Strength of Materials part II, rotating ring.
 * Checked: test/reference/rotor.test.ts.
 *
 * @example
 * ```ts
 * thinRingStress(1240, 94.25); // 1.1015e7
 * ```
 */
export function thinRingStress(density_kgm3: number, rimSpeed_ms: number): number {
  return requirePositive('density_kgm3', density_kgm3) * requirePositive('rimSpeed_ms', rimSpeed_ms) ** 2;
}

/**
 * Growth of the radius of a thin ring under a hoop stress.
 *
 * `u = s r / E`.
 *
 * @param hoopStress_Pa - `s`, of the ring [Pa], above zero
 * @param radius_m - `r` [m], above zero
 * @param youngsModulus_Pa - `E`, stiffness of the material [Pa], above zero
 * @returns growth of the radius [m]
 * @throws ImpossibleInput naming the parameter: not finite, or not above zero
 *
 * @remarks
 * Range: as thinRingStress.
 * Outside: the value is still returned.
 * Leaves out: creep, heat, and what spokes hold back.
 * Limits: what `discGrowth` comes to as the hole reaches the rim.
 * Basis: from-memory (page not seen; Hooke's law).
 * Source: Timoshenko, Strength of Materials part II, rotating ring.
 * Checked: test/reference/rotor.test.ts.
 *
 * @example
 * ```ts
 * thinRingGrowth(1.1015e7, 0.075, 3.5e9); // 2.360e-4
 * ```
 */
export function thinRingGrowth(hoopStress_Pa: number, radius_m: number, youngsModulus_Pa: number): number {
  return (
    (requirePositive('hoopStress_Pa', hoopStress_Pa) * requirePositive('radius_m', radius_m)) /
    requirePositive('youngsModulus_Pa', youngsModulus_Pa)
  );
}
