import type { ValidRange } from '../../quantities/range.ts';
import {
  ImpossibleInput,
  requireBetween,
  requireNotNegative,
  requirePositive,
} from '../../quantities/impossible-input.ts';
import { angularSpeed } from './turning.ts';

/** Where the theory of the thin disc holds. */
export const THIN_DISC_RANGE = {
  'thickness over outer radius': { high: 0.1, unit: '-' },
} as const satisfies ValidRange;

/** A flat disc of even thickness that turns about its axis, rim free. */
export interface SolidDisc {
  /** Outer radius [m]. */
  readonly outerRadius_m: number;
  /** Rotation speed [rpm]. */
  readonly speed_rpm: number;
  /** Density of the material [kg/m3]. */
  readonly density_kgm3: number;
  /** Poisson's ratio of the material [-], 0 to 0.5. */
  readonly poissonRatio: number;
}

/** The same with a hole in the middle, its edge free too. */
export interface AnnularDisc extends SolidDisc {
  /** Radius of the hole [m], above zero and below the outer radius. */
  readonly innerRadius_m: number;
}

/** The two stresses in the plane of a disc, tension positive. */
export interface DiscStress {
  /** Along the circumference [Pa]. */
  readonly hoop_Pa: number;
  /** Along the radius [Pa]. */
  readonly radial_Pa: number;
}

/** `rho w^2`, once all that a disc cannot be is refused. */
function massForce({ outerRadius_m, speed_rpm, density_kgm3, poissonRatio }: SolidDisc): number {
  requirePositive('outerRadius_m', outerRadius_m);
  requireBetween('poissonRatio', poissonRatio, 0, 0.5);
  return requirePositive('density_kgm3', density_kgm3) * angularSpeed(speed_rpm) ** 2;
}

/** `rho w^2` of a disc with a hole, which must lie inside the rim. */
function annularMassForce(disc: AnnularDisc): number {
  requirePositive('innerRadius_m', disc.innerRadius_m);
  const force = massForce(disc);
  if (disc.innerRadius_m >= disc.outerRadius_m)
    throw new ImpossibleInput('innerRadius_m', disc.innerRadius_m, 'below outerRadius_m');
  return force;
}

/**
 * Stress in a spinning disc without a hole, at a radius.
 *
 * `s_r = (3 + nu)/8 rho w^2 (b^2 - r^2)`, `s_h = rho w^2 [(3 + nu) b^2 - (1 + 3 nu) r^2]/8`, with outer radius `b`.
 *
 * @param disc - the disc and its speed
 * @param radius_m - `r`, where the stress is wanted [m], from 0 to the outer radius
 * @returns hoop and radial stress [Pa]
 * @throws ImpossibleInput naming the field: not finite, not above zero, Poisson's ratio outside 0 to 0.5, or a radius
 * beyond the rim
 *
 * @remarks
 * Range: thin disc of even thickness, elastic and alike in all directions; as data in THIN_DISC_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: hub, blades, holes away from the axis, layers and grain, vibration, heat.
 * Limits: both stresses are equal at the centre; radial stress is zero at the rim.
 * Basis: published (read as printed in a later book's extract; it follows from equilibrium of the disc).
 * Source: Lingaiah, Machine Design Data Handbook, 2nd ed., 2001, solid disc; Timoshenko and Goodier, sec 32.
 * Checked: test/reference/rotor.test.ts.
 *
 * @example
 * ```ts
 * const disc = { outerRadius_m: 0.075, speed_rpm: 12000, density_kgm3: 1240, poissonRatio: 0.36 };
 * solidDiscStress(disc, 0).hoop_Pa; // 4.626e6
 * solidDiscStress(disc, 0.075).hoop_Pa; // 1.762e6
 * ```
 */
export function solidDiscStress(disc: SolidDisc, radius_m: number): DiscStress {
  const { outerRadius_m: b, poissonRatio: nu } = disc;
  const force = massForce(disc);
  const r2 = requireBetween('radius_m', radius_m, 0, b) ** 2;
  return {
    hoop_Pa: (force * ((3 + nu) * b ** 2 - (1 + 3 * nu) * r2)) / 8,
    radial_Pa: (force * (3 + nu) * (b ** 2 - r2)) / 8,
  };
}

/**
 * Greatest stress in a spinning disc without a hole: at its centre, hoop and radial alike.
 *
 * `s = (3 + nu)/8 rho w^2 b^2`.
 *
 * @param disc - the disc and its speed
 * @returns stress at the centre [Pa]
 * @throws ImpossibleInput naming the field: not finite, not above zero, or Poisson's ratio outside 0 to 0.5
 *
 * @remarks
 * Range: as solidDiscStress; as data in THIN_DISC_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: as solidDiscStress; any hole at the centre, however small, doubles it.
 * Limits: with the speed squared; the same for every size at the same tip speed.
 * Basis: published (page read of Lingaiah, eq 10-4).
 * Source: Lingaiah, Machine Design Databook, ch. 10; Timoshenko, Strength of Materials part II, rotating discs;
 *   Roark's Formulas, bodies under rotation.
 * Checked: test/reference/rotor.test.ts.
 *
 * @example
 * ```ts
 * const disc = { outerRadius_m: 0.075, speed_rpm: 12000, density_kgm3: 1240, poissonRatio: 0.36 };
 * maxSolidDiscStress(disc); // 4.626e6
 * ```
 */
export function maxSolidDiscStress(disc: SolidDisc): number {
  return (massForce(disc) * (3 + disc.poissonRatio) * disc.outerRadius_m ** 2) / 8;
}

/**
 * Stress in a spinning disc with a hole, at a radius.
 *
 * `s_r = (3 + nu)/8 rho w^2 (a^2 + b^2 - a^2 b^2/r^2 - r^2)`,
 * `s_h = (3 + nu)/8 rho w^2 [a^2 + b^2 + a^2 b^2/r^2 - (1 + 3 nu)/(3 + nu) r^2]`, with inner radius `a`, outer `b`.
 *
 * @param disc - the disc and its speed
 * @param radius_m - `r`, where the stress is wanted [m], from the inner to the outer radius
 * @returns hoop and radial stress [Pa]
 * @throws ImpossibleInput naming the field: not finite, not above zero, Poisson's ratio outside 0 to 0.5, inner radius
 * not below the outer, or a radius outside the disc
 *
 * @remarks
 * Range: as solidDiscStress; as data in THIN_DISC_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: as solidDiscStress; also the press fit of a hub, keyways and bolt holes at the bore.
 * Limits: radial stress is zero at both edges; hoop stress is never below it.
 * Basis: published (read as printed in a later extract).
 * Source: Shigley and Mischke, Mechanical Engineering Design, 5th ed., 1989, rotating rings.
 * Checked: test/reference/rotor.test.ts.
 *
 * @example
 * ```ts
 * const disc = { outerRadius_m: 0.1, innerRadius_m: 0.02, speed_rpm: 6000, density_kgm3: 2700, poissonRatio: 0.33 };
 * annularDiscStress(disc, 0.05).hoop_Pa; // 4.661e6
 * annularDiscStress(disc, 0.05).radial_Pa; // 2.795e6
 * ```
 */
export function annularDiscStress(disc: AnnularDisc, radius_m: number): DiscStress {
  const { outerRadius_m: b, innerRadius_m: a, poissonRatio: nu } = disc;
  const force = annularMassForce(disc);
  const r = requireBetween('radius_m', radius_m, a, b);
  // the quotient first: squares of a tiny hole vanish
  const edges = ((a / r) * b) ** 2;
  return {
    hoop_Pa: (force * ((3 + nu) * (a ** 2 + b ** 2 + edges) - (1 + 3 * nu) * r ** 2)) / 8,
    radial_Pa: (force * (3 + nu) * (a ** 2 + b ** 2 - edges - r ** 2)) / 8,
  };
}

/** The greatest stresses of a disc with a hole, and where the radial one stands. */
export interface MaxAnnularStress extends DiscStress {
  /** Radius of the greatest radial stress [m]; the greatest hoop stress is at the hole. */
  readonly radialAt_m: number;
}

/**
 * Greatest stresses in a spinning disc with a hole.
 *
 * Hoop stress is greatest at the hole, `s_h = rho w^2 [(3 + nu) b^2 + (1 - nu) a^2]/4`; radial stress at
 * `r = sqrt(a b)`, `s_r = (3 + nu)/8 rho w^2 (b - a)^2`.
 *
 * @param disc - the disc and its speed
 * @returns greatest hoop and radial stress [Pa], and the radius of the latter
 * @throws ImpossibleInput naming the field: as annularDiscStress
 *
 * @remarks
 * Range: as solidDiscStress; as data in THIN_DISC_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: as annularDiscStress.
 * Limits: a hole of no size gives twice the solid disc's stress; a hole as wide as the disc gives the thin ring's.
 * Basis: published (read as printed in a later extract).
 * Source: Shigley and Mischke, Mechanical Engineering Design, 5th ed., 1989, rotating rings.
 * Checked: test/reference/rotor.test.ts.
 *
 * @example
 * ```ts
 * const bored = {
 *   outerRadius_m: 0.075, innerRadius_m: 0.004, speed_rpm: 12000, density_kgm3: 1240, poissonRatio: 0.36,
 * };
 * maxAnnularDiscStress(bored).hoop_Pa; // 9.257e6
 * maxAnnularDiscStress(bored).radialAt_m; // 0.01732
 * ```
 */
export function maxAnnularDiscStress(disc: AnnularDisc): MaxAnnularStress {
  const { outerRadius_m: b, innerRadius_m: a, poissonRatio: nu } = disc;
  const force = annularMassForce(disc);
  return {
    hoop_Pa: (force * ((3 + nu) * b ** 2 + (1 - nu) * a ** 2)) / 4,
    radial_Pa: (force * (3 + nu) * (b - a) ** 2) / 8,
    radialAt_m: Math.sqrt(a * b),
  };
}

/**
 * Growth of the outer radius of a spinning disc, with or without a hole.
 *
 * `u = rho w^2 b [(1 - nu) b^2 + (3 + nu) a^2]/(4 E)`.
 *
 * @param disc - the disc and its speed, a solid one with innerRadius_m 0
 * @param youngsModulus_Pa - `E`, stiffness of the material [Pa], above zero
 * @returns growth of the outer radius [m]
 * @throws ImpossibleInput naming the field: not finite, not above zero (inner radius: below zero), Poisson's ratio
 * outside 0 to 0.5, or inner radius not below the outer
 *
 * @remarks
 * Range: as solidDiscStress; as data in THIN_DISC_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: creep and swelling, by which plastic and wood go on growing; growth by heat; tilt of the blades.
 * Limits: a hole as wide as the disc gives the thin ring's growth.
 * Basis: published (read as printed in a later extract of Lingaiah, at the rim; it follows from Hooke at the free
 *   rim, `u = b s_h/E`).
 * Source: Lingaiah, Machine Design Data Handbook, 2nd ed., 2001, hollow rotating disk; Roark's Formulas for Stress
 *   and Strain, 7th ed., bodies under rotation.
 * Checked: test/reference/rotor.test.ts.
 *
 * @example
 * ```ts
 * const disc = { outerRadius_m: 0.1, innerRadius_m: 0, speed_rpm: 9000, density_kgm3: 1240, poissonRatio: 0.36 };
 * discGrowth(disc, 3.5e9); // 5.035e-5
 * ```
 */
export function discGrowth(disc: AnnularDisc, youngsModulus_Pa: number): number {
  const { outerRadius_m: b, poissonRatio: nu } = disc;
  const a = requireNotNegative('innerRadius_m', disc.innerRadius_m);
  const force = a > 0 ? annularMassForce(disc) : massForce(disc);
  const E = requirePositive('youngsModulus_Pa', youngsModulus_Pa);
  return (force * b * ((1 - nu) * b ** 2 + (3 + nu) * a ** 2)) / (4 * E);
}
