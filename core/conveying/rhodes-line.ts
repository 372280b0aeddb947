import { ImpossibleInput, requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';
import { GRAVITY_MS2 } from './gravity.ts';

/** A pneumatic line of one diameter with a steady feed of grains. */
export interface RhodesLine {
  /** `U`, superficial air velocity [m/s]. */
  readonly velocity_ms: number;
  /** `Mp`, mass flow of solids [kg/s]. */
  readonly solids_kgs: number;
  /** `D`, inside diameter [m]. */
  readonly diameter_m: number;
  /** `rho`, air [kg/m3]. */
  readonly density_kgm3: number;
  /** `mu`, air [Pa s]. */
  readonly viscosity_Pas: number;
  /** `x`, grain [m]. */
  readonly particleDiameter_m: number;
  /** `rho_p`, grain [kg/m3]. */
  readonly particleDensity_kgm3: number;
  /** `vt`, terminal velocity of the grain [m/s]. */
  readonly terminalVelocity_ms: number;
  /** Level length, zero or more [m]. */
  readonly horizontal_m: number;
  /** Height lifted, zero or more [m]. */
  readonly vertical_m: number;
  /** Number of right-angle bends, each as BEND_LENGTH_M of vertical pipe [-]. */
  readonly bends: number;
}

/** Parts of the pressure drop of a pneumatic line. */
export interface RhodesDrop {
  /** Level pipe with the acceleration of air and solids [Pa]. */
  readonly horizontal_Pa: number;
  /** Vertical pipe [Pa]. */
  readonly vertical_Pa: number;
  /** Bends [Pa]. */
  readonly bends_Pa: number;
  /** All of them [Pa]. */
  readonly total_Pa: number;
  /** `Up`, solids in the level pipe [m/s]. */
  readonly solidsVelocity_ms: number;
  /** `e`, share of the level pipe that is air [-]. */
  readonly voidage: number;
  /** `fp`, friction factor of the solids in the level pipe [-]. */
  readonly solidsFriction: number;
}

/** Fanning friction factor of the air (Rhodes) [-]. */
export const GAS_FRICTION = 0.005;
/** Vertical pipe to which one right-angle bend comes (Rhodes) [m]. */
export const BEND_LENGTH_M = 7.5;

/** Drag coefficient of a sphere in three spans, as Rhodes takes it [-]. */
function drag(reynolds: number): number {
  if (reynolds < 0.3) return 24 / reynolds;
  return reynolds < 500 ? 18.5 * reynolds ** -0.6 : 0.44;
}

/**
 * Pressure drop of a dilute pneumatic line by Rhodes' method.
 *
 * Acceleration `e rho Uf^2/2 + (1-e) rho_p Up^2/2`, air friction `2 fg rho U^2 L/D`, solids friction
 * `2 fp (1-e) rho_p Up^2 L/D` level and `0.057 G L sqrt(g/D)` upright, weight of solids and air upright.
 * `G = Mp/A`, `1-e = G/(rho_p Up)`, `Uf = U/e`, `fp = (3/8)(rho/rho_p)(D/x) Cd ((Uf-Up)/Up)^2`,
 * `Up = U (1 - 0.0638 x^0.3 rho_p^0.5)` level, `Up = Uf - vt` upright.
 *
 * @param line - velocity [m/s], solids [kg/s], pipe [m], air and grain
 * @returns drop by part [Pa], with solids velocity [m/s], voidage and friction [-] of the level pipe
 * @throws ImpossibleInput naming a field that cannot be, `particleDiameter_m` where the slip law stops the solids, or
 * `velocity_ms` where the air cannot lift the grain or the solids fill the pipe
 *
 * @remarks
 * Range: round grains, dilute, above saltation.
 * Outside: the value is still returned.
 * Leaves out: the expansion of the air along the line; shavings and fibres. Full momentum of the solids would be twice
 * Rhodes' acceleration term.
 * Limits: no height and no bend leaves the level part.
 * Basis: from-memory (page not seen).
 * Source: Rhodes, Introduction to Particle Technology, 2nd ed., eqs 8.14-8.20; Hinkle 1953; Konno and Saito 1969.
 * Checked: test/reference/conveying-line.test.ts (Rhodes' worked example, four pipe sizes).
 *
 * @example
 * ```ts
 * const line = { velocity_ms: 14.83, solids_kgs: 0.25, diameter_m: 0.078, density_kgm3: 1.2, viscosity_Pas: 18.4e-6,
 *   particleDiameter_m: 1e-4, particleDensity_kgm3: 2500, terminalVelocity_ms: 0.52, horizontal_m: 30, vertical_m: 10, bends: 6 };
 * rhodesLineDrop(line).total_Pa; // 21179.36
 * ```
 */
export function rhodesLineDrop(line: RhodesLine): RhodesDrop {
  const U = requirePositive('velocity_ms', line.velocity_ms);
  const D = requirePositive('diameter_m', line.diameter_m);
  const rho = requirePositive('density_kgm3', line.density_kgm3);
  const mu = requirePositive('viscosity_Pas', line.viscosity_Pas);
  const x = requirePositive('particleDiameter_m', line.particleDiameter_m);
  const rhoP = requirePositive('particleDensity_kgm3', line.particleDensity_kgm3);
  const vt = requirePositive('terminalVelocity_ms', line.terminalVelocity_ms);
  const level_m = requireNotNegative('horizontal_m', line.horizontal_m);
  const lift_m = requireNotNegative('vertical_m', line.vertical_m);
  const bends_m = requireNotNegative('bends', line.bends) * BEND_LENGTH_M;
  const G = requireNotNegative('solids_kgs', line.solids_kgs) / ((Math.PI / 4) * D * D);

  const solidsVelocity_ms = U * (1 - 0.0638 * x ** 0.3 * Math.sqrt(rhoP));
  if (!(solidsVelocity_ms > 0))
    throw new ImpossibleInput('particleDiameter_m', x, 'smaller: the slip law has no value');
  const voidage = 1 - G / (rhoP * solidsVelocity_ms);
  if (!(voidage > 0)) throw new ImpossibleInput('velocity_ms', U, 'higher: the solids fill the pipe');
  const air_ms = U / voidage;
  const slip_ms = air_ms - solidsVelocity_ms;
  const solidsFriction =
    (3 / 8) * (rho / rhoP) * (D / x) * drag((rho * slip_ms * x) / mu) * (slip_ms / solidsVelocity_ms) ** 2;
  const acceleration_Pa = 0.5 * voidage * rho * air_ms ** 2 + 0.5 * G * solidsVelocity_ms;
  const air_Pam = (2 * GAS_FRICTION * rho * U * U) / D;
  const level_Pam = air_Pam + (2 * solidsFriction * G * solidsVelocity_ms) / D;
  const horizontal_Pa = acceleration_Pa + level_Pam * level_m;

  const upright_Pam = lift_m + bends_m > 0 ? air_Pam + solidsUpright(U, vt, G, D, rho, rhoP) : 0;
  const vertical_Pa = upright_Pam * lift_m;
  const bends_Pa = upright_Pam * bends_m;
  const total_Pa = horizontal_Pa + vertical_Pa + bends_Pa;
  return { horizontal_Pa, vertical_Pa, bends_Pa, total_Pa, solidsVelocity_ms, voidage, solidsFriction };
}

/** Solids friction and weight of solids and air in an upright pipe [Pa/m]. */
function solidsUpright(U: number, vt: number, G: number, D: number, rho: number, rhoP: number): number {
  // (1-e) rho_p (U/e - vt) = G is a quadratic in the share of solids s = 1-e; the smaller root is the dilute one:
  // rho_p vt s^2 + (rho_p (U - vt) + G) s - G = 0.
  const half = (rhoP * (U - vt) + G) / 2;
  const share = G === 0 ? 0 : G / (half + Math.sqrt(half * half + rhoP * vt * G));
  if (!(U > vt && share < 1))
    throw new ImpossibleInput('velocity_ms', U, `above the terminal velocity (${vt})`);
  const weight_Pam = (rhoP * share + rho * (1 - share)) * GRAVITY_MS2;
  return 0.057 * G * Math.sqrt(GRAVITY_MS2 / D) + weight_Pam;
}
