import { ImpossibleInput, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { Sourced } from '../quantities/sourced.ts';
import { GRAVITY_MS2 } from './gravity.ts';

/** A round particle in still air. */
export interface FallingParticle {
  /** `d` [m]. */
  readonly particleDiameter_m: number;
  /** `rho_p`, with its voids; heavier than air [kg/m3]. */
  readonly particleDensity_kgm3: number;
  /** `rho`, air [kg/m3]. */
  readonly density_kgm3: number;
  /** `mu`, air [Pa s]. */
  readonly viscosity_Pas: number;
}

/** Published drag laws of a smooth sphere. */
export type DragLaw = 'cheng' | 'haider-levenspiel' | 'clift-gauvin';

/** One drag law. */
export interface DragRow extends Sourced {
  readonly label: string;
  readonly range: ValidRange;
  /** `Cd` [-] at a Reynolds number [-] above zero. */
  readonly drag: (reynolds: number) => number;
}

/** Reynolds numbers below the drag crisis of a smooth sphere. */
export const SPHERE_DRAG_RANGE: ValidRange = { 'Reynolds number of the particle': { high: 2e5, unit: '-' } };

/** Drag laws side by side; they differ by up to about 5 %. */
export const DRAG_LAWS: Readonly<Record<DragLaw, DragRow>> = {
  cheng: {
    label: 'Cheng',
    range: SPHERE_DRAG_RANGE,
    source:
      'Cheng, Comparison of formulas for drag coefficient and settling velocity, Powder Technol. 189, 2009',
    basis: 'from-memory',
    drag: (Re) => (24 / Re) * (1 + 0.27 * Re) ** 0.43 - 0.47 * Math.expm1(-0.04 * Re ** 0.38),
  },
  'haider-levenspiel': {
    label: 'Haider and Levenspiel',
    range: SPHERE_DRAG_RANGE,
    source: 'Haider and Levenspiel, Drag coefficient and terminal velocity, Powder Technol. 58, 1989',
    basis: 'from-memory',
    drag: (Re) => (24 / Re) * (1 + 0.1806 * Re ** 0.6459) + 0.4251 / (1 + 6880.95 / Re),
  },
  'clift-gauvin': {
    label: 'Clift and Gauvin',
    range: SPHERE_DRAG_RANGE,
    source: 'Clift and Gauvin, The motion of particles in turbulent gas streams, Proc. Chemeca 70, 1970',
    basis: 'from-memory',
    drag: (Re) => (24 / Re) * (1 + 0.152 * Re ** 0.677) + 0.417 / (1 + 5070 * Re ** -0.94),
  },
};

/** The law that terminalVelocity uses: it keeps the Stokes limit, and has no step. */
export const TERMINAL_DRAG_LAW: DragLaw = 'cheng';

/**
 * Terminal velocity of a sphere by a named drag law.
 *
 * Weight less buoyancy equals drag: `Cd Re^2 = (4/3) Ar`, `Ar = d^3 rho (rho_p - rho) g/mu^2`. The left side grows as
 * `Re` to a power between 1 and a little over 2, so that stepping `ln Re` by the error over 1.5 always converges.
 *
 * @param law - a row of DRAG_LAWS
 * @param particle - sizes [m], densities [kg/m3] and viscosity [Pa s]
 * @returns `vt` [m/s]
 * @throws ImpossibleInput naming a field that is not finite or not above zero, or `particleDensity_kgm3` not above the
 * air's
 *
 * @remarks
 * Range: smooth spheres below the drag crisis; as data in SPHERE_DRAG_RANGE.
 * Outside: the value is still returned.
 * Leaves out: shape (a shaving falls slower), slip (17 % at 1 um), crowding.
 * Limits: Stokes' `d^2 (rho_p - rho) g/(18 mu)` for small particles.
 * Basis: from-memory (pages not seen; values checked against an open library).
 * Source: the row of DRAG_LAWS.
 * Checked: test/reference/terminal-velocity.test.ts.
 *
 * @example
 * ```ts
 * const grain = { particleDiameter_m: 1e-3, particleDensity_kgm3: 2700, density_kgm3: 1.2041, viscosity_Pas: 1.8134e-5 };
 * terminalVelocityBy('haider-levenspiel', grain); // 7.199
 * ```
 */
export function terminalVelocityBy(law: DragLaw, particle: FallingParticle): number {
  const d = requirePositive('particleDiameter_m', particle.particleDiameter_m);
  const particleDensity = requirePositive('particleDensity_kgm3', particle.particleDensity_kgm3);
  const rho = requirePositive('density_kgm3', particle.density_kgm3);
  const mu = requirePositive('viscosity_Pas', particle.viscosity_Pas);
  if (particleDensity <= rho) {
    throw new ImpossibleInput('particleDensity_kgm3', particleDensity, `above that of the air (${rho})`);
  }
  const { drag } = DRAG_LAWS[law];
  const excess = particleDensity - rho;
  const logTarget =
    Math.log((4 / 3) * GRAVITY_MS2) + 3 * Math.log(d) + Math.log(rho * excess) - 2 * Math.log(mu);
  let logReynolds = logTarget - Math.log(24);
  for (let step = 0; step < 200; step++) {
    const error = Math.log(drag(Math.exp(logReynolds))) + 2 * logReynolds - logTarget;
    logReynolds -= error / 1.5;
    if (Math.abs(error) < 1e-14) break;
  }
  return (Math.exp(logReynolds) * mu) / (rho * d);
}

/**
 * Terminal velocity of a sphere.
 *
 * terminalVelocityBy with Cheng's drag, `Cd = (24/Re)(1 + 0.27 Re)^0.43 + 0.47 [1 - exp(-0.04 Re^0.38)]`.
 *
 * @param particle - sizes [m], densities [kg/m3] and viscosity [Pa s]
 * @returns `vt` [m/s]
 * @throws ImpossibleInput as terminalVelocityBy
 *
 * @remarks
 * Range: smooth spheres below the drag crisis; as data in SPHERE_DRAG_RANGE.
 * Outside: the value is still returned.
 * Leaves out: shape (a shaving falls slower), slip (17 % at 1 um), crowding.
 * Limits: Stokes' `d^2 (rho_p - rho) g/(18 mu)` for small particles.
 * Basis: from-memory (page not seen; values checked against an open library).
 * Source: Cheng, Powder Technol. 189, 2009.
 * Checked: test/reference/terminal-velocity.test.ts (30 cases, 1e-6; other laws within 5 %).
 *
 * @example
 * ```ts
 * const grain = { particleDiameter_m: 1e-3, particleDensity_kgm3: 2700, density_kgm3: 1.2041, viscosity_Pas: 1.8134e-5 };
 * terminalVelocity(grain); // 7.183
 * ```
 */
export function terminalVelocity(particle: FallingParticle): number {
  return terminalVelocityBy(TERMINAL_DRAG_LAW, particle);
}
