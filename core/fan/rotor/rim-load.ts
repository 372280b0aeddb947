import {
  ImpossibleInput,
  requireBetween,
  requireNotNegative,
  requirePositive,
} from '../../quantities/impossible-input.ts';
import type { DiscStress } from './spinning-disc.ts';

/** Blades on a rim, their pull spread evenly over it. */
export interface RimBlades {
  /** Number of blades [-]. */
  readonly blades: number;
  /** Centrifugal pull of one blade [N]. */
  readonly pull_N: number;
  /** Outer radius of the disc [m]. */
  readonly outerRadius_m: number;
  /** Thickness of the disc along its axis [m]. */
  readonly thickness_m: number;
}

/**
 * Outward traction that stands for the blades' pull, spread evenly over the rim of their disc.
 *
 * `q = Z F / (2 pi b t)`.
 *
 * @param rim - blades, their pull, and the rim that bears it
 * @returns traction on the rim [Pa]
 * @throws ImpossibleInput naming the field: not finite, not above zero, or blades not a whole number
 *
 * @remarks
 * Range: several blades, evenly spaced.
 * Outside: with two or three blades the load comes in lumps and the disc between them bears more or less.
 * Leaves out: stiffness of the blades; a second disc (shroud) that bears a part.
 * Limits: proportional to number and pull.
 * Basis: none: force over area.
 * Source: the usual model of a bladed disc.
 * Checked: test/reference/rotor-wheel.test.ts.
 *
 * @example
 * ```ts
 * rimTraction({ blades: 8, pull_N: 315.8, outerRadius_m: 0.1, thickness_m: 0.006 }); // 6.701e5
 * ```
 */
export function rimTraction(rim: RimBlades): number {
  const { blades, pull_N, outerRadius_m, thickness_m } = rim;
  if (!(Number.isInteger(blades) && blades >= 1))
    throw new ImpossibleInput('blades', blades, 'a whole number, one or more');
  const force = blades * requirePositive('pull_N', pull_N);
  const area =
    2 *
    Math.PI *
    requirePositive('outerRadius_m', outerRadius_m) *
    requirePositive('thickness_m', thickness_m);
  return force / area;
}

/** A disc at rest whose rim is pulled outwards. */
export interface LoadedRim {
  /** Outward traction on the rim [Pa]. */
  readonly traction_Pa: number;
  /** Outer radius [m]. */
  readonly outerRadius_m: number;
  /** Radius of the hole [m]; zero where there is none. */
  readonly innerRadius_m: number;
}

/** Square of each radius, once all that cannot be is refused. */
function squares({ traction_Pa, outerRadius_m, innerRadius_m }: LoadedRim) {
  requireNotNegative('traction_Pa', traction_Pa);
  requirePositive('outerRadius_m', outerRadius_m);
  if (requireNotNegative('innerRadius_m', innerRadius_m) >= outerRadius_m)
    throw new ImpossibleInput('innerRadius_m', innerRadius_m, 'below outerRadius_m');
  return { a2: innerRadius_m ** 2, b2: outerRadius_m ** 2 };
}

/**
 * Stress in a disc under an even outward traction at its rim, at a radius; add to that of the spin.
 *
 * `s_h = q b^2/(b^2 - a^2) (1 + a^2/r^2)`, `s_r = q b^2/(b^2 - a^2) (1 - a^2/r^2)`: Lame's solution with the pressure
 * outside turned into tension. Without a hole both are `q` everywhere.
 *
 * @param rim - traction and radii
 * @param radius_m - `r`, where the stress is wanted [m], from the inner to the outer radius
 * @returns hoop and radial stress [Pa]
 * @throws ImpossibleInput naming the field: not finite, traction or inner radius below zero, outer radius not above
 * zero or not above the inner, or a radius outside the disc
 *
 * @remarks
 * Range: thin disc of even thickness, elastic and alike in all directions.
 * Outside: the value is still returned.
 * Leaves out: blades that end inside the rim, for which `innerLoadFactor` corrects.
 * Limits: a hole of no size doubles the hoop stress at the centre, as it does for the spin.
 * Basis: published (solid disc, read as printed in a later extract; the bored one is Lame's, from memory).
 * Source: Lingaiah, Machine Design Data Handbook, 2nd ed., 2001, disc under external pressure; Lame's thick ring.
 * Checked: test/reference/rotor-wheel.test.ts.
 *
 * @example
 * ```ts
 * rimLoadStress({ traction_Pa: 1e6, outerRadius_m: 0.1, innerRadius_m: 0.02 }, 0.02).hoop_Pa; // 2.083e6
 * rimLoadStress({ traction_Pa: 1e6, outerRadius_m: 0.1, innerRadius_m: 0 }, 0.05).radial_Pa; // 1e6
 * ```
 */
export function rimLoadStress(rim: LoadedRim, radius_m: number): DiscStress {
  const { a2, b2 } = squares(rim);
  const r = requireBetween('radius_m', radius_m, rim.innerRadius_m, rim.outerRadius_m);
  const even = (rim.traction_Pa * b2) / (b2 - a2);
  // the quotient first: squares of a tiny hole vanish
  const edge = rim.innerRadius_m === 0 ? 0 : (rim.innerRadius_m / r) ** 2;
  return { hoop_Pa: even * (1 + edge), radial_Pa: even * (1 - edge) };
}

/**
 * Growth of the outer radius of a disc under an even outward traction at its rim; add to that of the spin.
 *
 * `u = q b/E [(b^2 + a^2)/(b^2 - a^2) - nu]`.
 *
 * @param rim - traction and radii
 * @param poissonRatio - `nu`, of the material [-], 0 to 0.5
 * @param youngsModulus_Pa - `E`, stiffness of the material [Pa], above zero
 * @returns growth of the outer radius [m]
 * @throws ImpossibleInput naming the field: as rimLoadStress, Poisson's ratio outside 0 to 0.5, or `E` not above zero
 *
 * @remarks
 * Range: as rimLoadStress.
 * Outside: the value is still returned.
 * Leaves out: creep and heat; blades that end inside the rim spread it less than this.
 * Limits: no traction gives no growth.
 * Basis: from-memory (page not seen; Hooke's law on Lame's solution).
 * Source: Roark's Formulas for Stress and Strain, 7th ed., thick-walled rings.
 * Checked: test/reference/rotor-wheel.test.ts.
 *
 * @example
 * ```ts
 * rimLoadGrowth({ traction_Pa: 1e6, outerRadius_m: 0.1, innerRadius_m: 0.02 }, 0.36, 3.5e9); // 2.067e-5
 * ```
 */
export function rimLoadGrowth(rim: LoadedRim, poissonRatio: number, youngsModulus_Pa: number): number {
  const { a2, b2 } = squares(rim);
  const nu = requireBetween('poissonRatio', poissonRatio, 0, 0.5);
  const E = requirePositive('youngsModulus_Pa', youngsModulus_Pa);
  return ((rim.traction_Pa * rim.outerRadius_m) / E) * ((b2 + a2) / (b2 - a2) - nu);
}

/**
 * How much more a pull inside the rim stresses the middle of a disc than the same pull at the rim.
 *
 * `[(1 - nu) c/b + (1 + nu) b/c]/2`, for a pull spread over the circle of radius `c`; for the stress at the hole, or at
 * the centre of a disc without one. It follows from the reciprocity of work (Betti): what a pull at `c` does to the
 * hole is to what it does from the rim as the two radii move when the hole is pressed.
 *
 * @param loadRadius_m - `c`, where the pull acts [m], above zero, up to the rim
 * @param outerRadius_m - `b`, of the rim [m], above zero
 * @param poissonRatio - `nu`, of the material [-], 0 to 0.5
 * @returns factor on the stress of `rimLoadStress` at the middle [-], 1 or more
 * @throws ImpossibleInput naming the parameter: not finite, not above zero, load outside the rim, or Poisson's ratio
 * outside 0 to 0.5
 *
 * @remarks
 * Range: as rimLoadStress; load radius outside the hole.
 * Outside: the value is still returned.
 * Leaves out: length of the blade along the radius; a blade spread about its centre of mass gives a little more.
 * Limits: 1 at the rim; rises without bound as the load nears the axis of a disc without a hole.
 * Basis: none: derived here from Betti's theorem and Lame's solution; no page prints it.
 * Source: Betti's reciprocal theorem; checked by solving the disc's equilibrium with the load inside.
 * Checked: test/reference/rotor-wheel.test.ts.
 *
 * @example
 * ```ts
 * innerLoadFactor(0.07, 0.1, 0.36); // 1.1954
 * ```
 */
export function innerLoadFactor(loadRadius_m: number, outerRadius_m: number, poissonRatio: number): number {
  const b = requirePositive('outerRadius_m', outerRadius_m);
  const c = requirePositive('loadRadius_m', loadRadius_m);
  requireBetween('loadRadius_m', c, 0, b);
  const nu = requireBetween('poissonRatio', poissonRatio, 0, 0.5);
  return (((1 - nu) * c) / b + ((1 + nu) * b) / c) / 2;
}
