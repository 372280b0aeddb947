import { ImpossibleInput, requireNotNegative, requirePositive } from '../../quantities/impossible-input.ts';
import { angularSpeed } from './turning.ts';

/** A flat disc or ring of even thickness. */
export interface FlatDisc {
  /** Outer radius [m]. */
  readonly outerRadius_m: number;
  /** Radius of the hole [m]; zero where there is none. */
  readonly innerRadius_m: number;
  /** Thickness along the axis [m]. */
  readonly thickness_m: number;
  /** Density of the material [kg/m3]. */
  readonly density_kgm3: number;
}

/**
 * Moment of inertia of a flat disc or ring about its axis.
 *
 * `I = pi/2 rho t (b^4 - a^4)`.
 *
 * @param disc - radii, thickness and density
 * @returns moment of inertia [kg m2]
 * @throws ImpossibleInput naming the field: not finite, not above zero (inner radius: below zero), or inner radius not
 * below the outer
 *
 * @remarks
 * Range: any.
 * Outside: none: it holds everywhere.
 * Leaves out: hub and blades.
 * Limits: no hole gives half the mass times the radius squared.
 * Basis: none: the integral of `r^2` over the mass.
 * Source: any textbook of mechanics.
 * Checked: test/reference/rotor-wheel.test.ts.
 *
 * @example
 * ```ts
 * discInertia({ outerRadius_m: 0.1, innerRadius_m: 0, thickness_m: 0.006, density_kgm3: 1240 }); // 1.169e-3
 * ```
 */
export function discInertia(disc: FlatDisc): number {
  const { outerRadius_m: b, innerRadius_m: a, thickness_m, density_kgm3 } = disc;
  requirePositive('outerRadius_m', b);
  if (requireNotNegative('innerRadius_m', a) >= b)
    throw new ImpossibleInput('innerRadius_m', a, 'below outerRadius_m');
  const massPerArea =
    requirePositive('density_kgm3', density_kgm3) * requirePositive('thickness_m', thickness_m);
  return (Math.PI / 2) * massPerArea * (b ** 4 - a ** 4);
}

/**
 * Energy of a spinning body, all of which its pieces carry away if it bursts.
 *
 * `W = I w^2 / 2`.
 *
 * @param inertia_kgm2Inertia - `I`, moment of inertia about the axis [kg m2], above zero
 * @param speed_rpm - rotation speed [rpm], above zero
 * @returns energy [J]
 * @throws ImpossibleInput naming the parameter: not finite, or not above zero
 *
 * @remarks
 * Range: any.
 * Outside: none: it holds everywhere.
 * Leaves out: none: it is the whole energy of rotation. How thick a guard must be is not told by it.
 * Limits: with the speed squared.
 * Basis: none: a definition.
 * Source: any textbook of mechanics.
 * Checked: test/reference/rotor-wheel.test.ts.
 *
 * @example
 * ```ts
 * spinEnergy(1.169e-3, 9000); // 519
 * ```
 */
export function spinEnergy(inertia_kgm2Inertia: number, speed_rpm: number): number {
  return (requirePositive('inertia_kgm2Inertia', inertia_kgm2Inertia) * angularSpeed(speed_rpm) ** 2) / 2;
}
