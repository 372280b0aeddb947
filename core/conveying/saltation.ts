import { requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { Sourced } from '../quantities/sourced.ts';
import { GRAVITY_MS2 } from './gravity.ts';

/** Dust carried along a level pipe. */
export interface ConveyedDust {
  /** `Mp`, mass flow of dust, zero or more [kg/s]. */
  readonly solids_kgs: number;
  /** `rho`, air [kg/m3]. */
  readonly density_kgm3: number;
  /** `D`, inside diameter of the pipe [m]. */
  readonly diameter_m: number;
  /** `x`, particle [m]. */
  readonly particleDiameter_m: number;
  /** `rho_p`, particle [kg/m3]. */
  readonly particleDensity_kgm3: number;
  /** `vt`, terminal velocity of the particle [m/s]. */
  readonly terminalVelocity_ms: number;
}

/** What Rizk's correlation needs of it. */
export type RizkDust = Pick<
  ConveyedDust,
  'solids_kgs' | 'density_kgm3' | 'diameter_m' | 'particleDiameter_m'
>;

/** Dust for which the correlations were made: round grains, carried thinly. */
export const SALTATION_RANGE: ValidRange = {
  'particle diameter': { low: 1e-4, high: 5e-3, unit: 'm' },
  'pipe diameter': { low: 0.04, high: 0.4, unit: 'm' },
  'loading ratio': { high: 20, unit: '-' },
};

/** `ln(Mp/(rho A))`, the velocity that the air would have at a loading of one; `null` where nothing is carried. */
function logUnitLoading(dust: RizkDust): number | null {
  const solids = requireNotNegative('solids_kgs', dust.solids_kgs);
  const rho = requirePositive('density_kgm3', dust.density_kgm3);
  const D = requirePositive('diameter_m', dust.diameter_m);
  requirePositive('particleDiameter_m', dust.particleDiameter_m);
  return solids === 0 ? null : Math.log(solids / (rho * (Math.PI / 4) * D * D));
}

/** Solves `loading = exp(logFactor) Fr^power` with `loading = Mp/(rho U A)`, `Fr = U/sqrt(g D)` [m/s]. */
function solveFroude(dust: RizkDust, logFactor: number, power: number): number {
  const logUnit = logUnitLoading(dust);
  if (logUnit === null) return 0;
  const logScale = Math.log(GRAVITY_MS2 * dust.diameter_m) / 2;
  return Math.exp((logUnit - logFactor + power * logScale) / (1 + power));
}

/**
 * Saltation velocity by Rizk: the air velocity below which grains settle out in a level pipe.
 *
 * `Mp/(rho U A) = 10^-(1440 x + 1.96) (U/sqrt(g D))^(1100 x + 2.5)`, `x` in m, solved for `U`.
 *
 * @param dust - mass flow [kg/s], air density [kg/m3], pipe and particle [m]
 * @returns `U` [m/s]; 0 where nothing is carried
 * @throws ImpossibleInput naming `solids_kgs` below zero, or another field not above zero
 *
 * @remarks
 * Range: roundish grains, not fibres or shavings; as data in SALTATION_RANGE.
 * Outside: the value is still returned.
 * Leaves out: particle density and shape, bends, slopes; the correlations differ by a factor of about 2.
 * Limits: more dust needs more air, as the power 1/(1100 x + 3.5).
 * Basis: published (documentation of an open library that quotes Rhodes).
 * Source: Rizk, Pneumotransport 3, paper D4, 1973; Rhodes, Introduction to Particle Technology, ch. 8.
 * Checked: test/reference/saltation.test.ts (Rhodes' example 9.88 m/s; six further cases).
 *
 * @example
 * ```ts
 * rizkSaltation({ solids_kgs: 0.25, density_kgm3: 1.2, diameter_m: 0.078, particleDiameter_m: 1e-4 }); // 9.8833
 * ```
 */
export function rizkSaltation(dust: RizkDust): number {
  const x = requirePositive('particleDiameter_m', dust.particleDiameter_m);
  return solveFroude(dust, -Math.LN10 * (1440 * x + 1.96), 1100 * x + 2.5);
}

/**
 * Saltation velocity by Matsumoto and others, 1977.
 *
 * Loading `= 5560 (x/D)^1.43 (Fr/10)^4` for fine grains, `0.373 (rho_p/rho)^1.06 (Frp/10)^-3.7 (Fr/10)^3.61` for
 * grains above `1.39 D (rho_p/rho)^-0.74`; `Fr = U/sqrt(g D)`, `Frp = vt/sqrt(g x)`.
 *
 * @param dust - mass flow [kg/s], densities [kg/m3], pipe and particle [m], terminal velocity [m/s]
 * @returns `U` [m/s]; 0 where nothing is carried
 * @throws ImpossibleInput naming `solids_kgs` below zero, or another field not above zero
 *
 * @remarks
 * Range: roundish grains; as data in SALTATION_RANGE. The two branches do not meet: a step at the limiting size.
 * Outside: the value is still returned.
 * Leaves out: shape, bends, slopes.
 * Limits: more dust needs more air.
 * Basis: from-memory (page not seen; values checked against an open library).
 * Source: Matsumoto and others, J. Chem. Eng. Japan 10, 273, 1977.
 * Checked: test/reference/saltation.test.ts (cases of both branches).
 *
 * @example
 * ```ts
 * const dust = { solids_kgs: 0.0128, density_kgm3: 1.131, diameter_m: 0.125, particleDiameter_m: 0.0025, particleDensity_kgm3: 1260, terminalVelocity_ms: 9.162 };
 * matsumotoSaltation(dust); // 6.5796
 * ```
 */
export function matsumotoSaltation(dust: ConveyedDust): number {
  const x = requirePositive('particleDiameter_m', dust.particleDiameter_m);
  const D = requirePositive('diameter_m', dust.diameter_m);
  const rho = requirePositive('density_kgm3', dust.density_kgm3);
  const heaviness = requirePositive('particleDensity_kgm3', dust.particleDensity_kgm3) / rho;
  const vt = requirePositive('terminalVelocity_ms', dust.terminalVelocity_ms);
  if (x <= 1.39 * D * heaviness ** -0.74) {
    return solveFroude(dust, Math.log(5560) + 1.43 * Math.log(x / D) - 4 * Math.LN10, 4);
  }
  const particle = -3.7 * Math.log(vt / Math.sqrt(GRAVITY_MS2 * x) / 10);
  return solveFroude(dust, Math.log(0.373) + 1.06 * Math.log(heaviness) + particle - 3.61 * Math.LN10, 3.61);
}

/**
 * Saltation velocity by Schade.
 *
 * `Fr = loading^0.11 (D/x)^0.025 (rho_p/rho)^0.34`, `Fr = U/sqrt(g D)`.
 *
 * @param dust - mass flow [kg/s], densities [kg/m3], pipe and particle [m]; terminal velocity is not used
 * @returns `U` [m/s]; 0 where nothing is carried
 * @throws ImpossibleInput naming `solids_kgs` below zero, or another field not above zero
 *
 * @remarks
 * Range: roundish grains; as data in SALTATION_RANGE.
 * Outside: the value is still returned.
 * Leaves out: shape, bends, slopes.
 * Limits: more dust needs more air, as the power 0.11/1.11.
 * Basis: from-memory (page not seen; values checked against an open library).
 * Source: Schade, dissertation, Karlsruhe, 1987.
 * Checked: test/reference/saltation.test.ts.
 *
 * @example
 * ```ts
 * const dust = { solids_kgs: 0.0287, density_kgm3: 1.156, diameter_m: 0.1, particleDiameter_m: 0.00276, particleDensity_kgm3: 519, terminalVelocity_ms: 6 };
 * schadeSaltation(dust); // 7.8202
 * ```
 */
export function schadeSaltation(dust: Omit<ConveyedDust, 'terminalVelocity_ms'>): number {
  const D = requirePositive('diameter_m', dust.diameter_m);
  const rho = requirePositive('density_kgm3', dust.density_kgm3);
  const slender = Math.log(D / requirePositive('particleDiameter_m', dust.particleDiameter_m));
  const heavy = Math.log(requirePositive('particleDensity_kgm3', dust.particleDensity_kgm3) / rho);
  return solveFroude(dust, -(0.025 * slender + 0.34 * heavy) / 0.11, 1 / 0.11);
}

/**
 * Saltation velocity by Weber.
 *
 * `Fr = (7 + 8 vt/3) loading^0.25 (x/D)^0.1`, with 15 in place of the bracket for `vt` above 3 m/s.
 *
 * @param dust - mass flow [kg/s], air density [kg/m3], pipe and particle [m], terminal velocity [m/s]
 * @returns `U` [m/s]; 0 where nothing is carried
 * @throws ImpossibleInput naming `solids_kgs` below zero, or another field not above zero
 *
 * @remarks
 * Range: roundish grains; as data in SALTATION_RANGE.
 * Outside: the value is still returned.
 * Leaves out: particle density, other than by the terminal velocity; shape, bends, slopes.
 * Limits: more dust needs more air, as the power 0.2.
 * Basis: from-memory (page not seen; values checked against an open library).
 * Source: Weber, Bulk Solids Handling 1, 1981.
 * Checked: test/reference/saltation.test.ts (cases of both branches).
 *
 * @example
 * ```ts
 * const dust = { solids_kgs: 0.00996, density_kgm3: 1.233, diameter_m: 0.063, particleDiameter_m: 0.00239, particleDensity_kgm3: 1500, terminalVelocity_ms: 9.417 };
 * weberSaltation(dust); // 6.7027
 * ```
 */
export function weberSaltation(dust: Omit<ConveyedDust, 'particleDensity_kgm3'>): number {
  const D = requirePositive('diameter_m', dust.diameter_m);
  const x = requirePositive('particleDiameter_m', dust.particleDiameter_m);
  const vt = requirePositive('terminalVelocity_ms', dust.terminalVelocity_ms);
  const bracket = vt > 3 ? 15 : 7 + (8 / 3) * vt;
  return solveFroude(dust, -(Math.log(bracket) + 0.1 * Math.log(x / D)) / 0.25, 1 / 0.25);
}

/** Saltation correlations. */
export type SaltationModel = 'rizk' | 'matsumoto' | 'schade' | 'weber';

/** One saltation correlation. */
export interface SaltationRow extends Sourced {
  readonly label: string;
  readonly range: ValidRange;
  /** Saltation velocity [m/s]. */
  readonly velocity: (dust: ConveyedDust) => number;
}

/** Second opinions on the velocity that carries dust; they disagree by a factor of about 2 and are for grains. */
export const SALTATION_MODELS: Readonly<Record<SaltationModel, SaltationRow>> = {
  rizk: {
    label: 'Rizk',
    range: SALTATION_RANGE,
    source: 'Rizk, Pneumotransport 3, paper D4, 1973',
    basis: 'published',
    velocity: rizkSaltation,
  },
  matsumoto: {
    label: 'Matsumoto, 1977',
    range: SALTATION_RANGE,
    source: 'Matsumoto and others, J. Chem. Eng. Japan 10, 273, 1977',
    basis: 'from-memory',
    velocity: matsumotoSaltation,
  },
  schade: {
    label: 'Schade',
    range: SALTATION_RANGE,
    source: 'Schade, dissertation, Karlsruhe, 1987',
    basis: 'from-memory',
    velocity: schadeSaltation,
  },
  weber: {
    label: 'Weber',
    range: SALTATION_RANGE,
    source: 'Weber, Bulk Solids Handling 1, 1981',
    basis: 'from-memory',
    velocity: weberSaltation,
  },
};
