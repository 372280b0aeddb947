import { requirePositive } from '../../quantities/impossible-input.ts';
import { angularSpeed } from './turning.ts';

/**
 * Centrifugal pull of one blade.
 *
 * `F = m r w^2`.
 *
 * @param mass_kg - `m`, of one blade [kg], above zero
 * @param radius_m - `r`, from the axis to the blade's centre of mass [m], above zero
 * @param speed_rpm - rotation speed [rpm], above zero
 * @returns outward force [N]
 * @throws ImpossibleInput naming the parameter: not finite, or not above zero
 *
 * @remarks
 * Range: any.
 * Outside: none: it holds everywhere.
 * Leaves out: force of the air, which is small beside it.
 * Limits: with the speed squared.
 * Basis: none: Newton's second law on a circle.
 * Source: any textbook of mechanics.
 * Checked: test/reference/rotor-wheel.test.ts.
 *
 * @example
 * ```ts
 * bladePull(0.01, 0.08, 6000); // 315.8
 * ```
 */
export function bladePull(mass_kg: number, radius_m: number, speed_rpm: number): number {
  return (
    requirePositive('mass_kg', mass_kg) * requirePositive('radius_m', radius_m) * angularSpeed(speed_rpm) ** 2
  );
}

/**
 * Mean tension in the root that holds a blade.
 *
 * `s = F / A`.
 *
 * @param pull_N - `F`, centrifugal pull of the blade [N], above zero
 * @param rootArea_m2 - `A`, section of material or glue that holds it [m2], above zero
 * @returns mean tension [Pa]
 * @throws ImpossibleInput naming the parameter: not finite, or not above zero
 *
 * @remarks
 * Range: a straight radial blade that is held at its inner end.
 * Outside: a leaning, curved or side-held blade bends as well, which often weighs more than this.
 * Leaves out: bending, notches and sharp corners at the root, quality of glue and weld.
 * Limits: none: proportional to the pull.
 * Basis: from-memory (page not seen; force over area).
 * Source: common machine-design practice; blade root of a rotating wheel.
 * Checked: test/reference/rotor-wheel.test.ts.
 *
 * @example
 * ```ts
 * bladeRootStress(315.8, 60e-6); // 5.263e6
 * ```
 */
export function bladeRootStress(pull_N: number, rootArea_m2: number): number {
  return requirePositive('pull_N', pull_N) / requirePositive('rootArea_m2', rootArea_m2);
}
