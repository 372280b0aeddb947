import { BARTH_GRADE_EXPONENT } from '../catalogue/separator-models.ts';
import { ImpossibleInput, requirePositive } from '../quantities/impossible-input.ts';
import { barthSwirl } from './barth-swirl.ts';
import { inletVelocity } from './proportions.ts';
import type { CycloneGeometry } from './proportions.ts';

/** The air and the dust that a separator sees. */
export interface SeparatorFlow {
  /** `Q`, volume flow at the inlet, above zero [m3/s]. */
  readonly flow_m3s: number;
  /** `rho`, air [kg/m3]. */
  readonly density_kgm3: number;
  /** `mu`, air [Pa s]. */
  readonly viscosity_Pas: number;
  /** `T`, air [K]. */
  readonly temperature_K: number;
  /** `rho_p`, a single particle with its voids, heavier than air [kg/m3]. */
  readonly particleDensity_kgm3: number;
}

/**
 * Refuses a flow that cannot be.
 *
 * Every field must be above zero and the particle heavier than the air.
 *
 * @param flow - air and particle
 * @returns the same flow
 * @throws ImpossibleInput naming the field that is not finite or not above zero, or `particleDensity_kgm3` not above
 * the air's
 *
 * @remarks
 * Range: none; these are limits of what can exist.
 * Outside: not applicable; it throws.
 * Leaves out: whether the numbers go together.
 * Limits: none; a check.
 * Basis: from-memory (no relation).
 * Source: none, no relation.
 * Checked: test/core/separator/efficiency.test.ts.
 *
 * @example
 * ```ts
 * const flow = { flow_m3s: 0.075, density_kgm3: 1.2, viscosity_Pas: 1.81e-5, temperature_K: 293.15, particleDensity_kgm3: 1000 };
 * checkSeparatorFlow(flow).flow_m3s; // 0.075
 * ```
 */
export function checkSeparatorFlow(flow: SeparatorFlow): SeparatorFlow {
  for (const [field, value] of Object.entries(flow)) requirePositive(field, value as number);
  if (flow.particleDensity_kgm3 <= flow.density_kgm3) {
    throw new ImpossibleInput('particleDensity_kgm3', flow.particleDensity_kgm3, 'above that of the air');
  }
  return flow;
}

/**
 * Turns that the air makes in a cyclone, by Lapple.
 *
 * `Ne = (h + (H-h)/2)/a`: each turn takes the height of the inlet, and the cone counts half.
 *
 * @param geometry - dimensions [m]
 * @returns `Ne` [-]
 * @throws ImpossibleInput naming `inletHeight_m` not above zero
 *
 * @remarks
 * Range: near-standard proportions; textbooks also take a fixed 5 or 6.
 * Outside: the value is still returned.
 * Leaves out: the velocity, with which the count of turns really grows.
 * Limits: a cylinder without cone gives `H/a`.
 * Basis: from-memory (page not seen).
 * Source: Lapple 1951; Cooper and Alley ch. 4.
 * Checked: test/reference/cyclone.test.ts (6 turns in Cooper and Alley's example).
 *
 * @example
 * ```ts
 * lappleTurns(standardCyclone(CYCLONE_PROPORTIONS.lapple, 1)); // 6
 * ```
 */
export function lappleTurns(geometry: CycloneGeometry): number {
  const { cylinderHeight_m: h, totalHeight_m: H } = geometry;
  return (h + (H - h) / 2) / requirePositive('inletHeight_m', geometry.inletHeight_m);
}

/**
 * Cut size of a cyclone by Lapple.
 *
 * The particle that crosses half of the inlet width during `Ne` turns:
 * `d50 = sqrt( 9 mu b / (2 pi Ne vi (rho_p - rho)) )`.
 *
 * @param geometry - dimensions [m]
 * @param flow - air and particle; the temperature is not used
 * @returns `d50` [m], caught by half
 * @throws ImpossibleInput naming a field that is not above zero, or `particleDensity_kgm3` not above the air's
 *
 * @remarks
 * Range: Stokes drag, near-standard proportions, light dust load.
 * Outside: the value is still returned.
 * Leaves out: leaks at the dust outlet, re-entrainment, slip below about 1 um, dust load.
 * Limits: grows with the root of the size of the cyclone at equal inlet velocity.
 * Basis: published (formula read in an open library and on a reference sheet of process engineering).
 * Source: Lapple 1951; Cooper and Alley eq 4.6.
 * Checked: test/reference/cyclone.test.ts (Cooper and Alley's example, 6.2 um).
 *
 * @example
 * ```ts
 * const cyclone = standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2);
 * const flow = { flow_m3s: 0.075, density_kgm3: 1.2, viscosity_Pas: 1.81e-5, temperature_K: 293.15, particleDensity_kgm3: 1000 };
 * lappleCutSize(cyclone, flow) * 1e6; // 3.797
 * ```
 */
export function lappleCutSize(geometry: CycloneGeometry, flow: SeparatorFlow): number {
  const { flow_m3s, density_kgm3: rho, viscosity_Pas: mu, particleDensity_kgm3 } = checkSeparatorFlow(flow);
  const vi = inletVelocity(flow_m3s, geometry);
  const pull = 2 * Math.PI * lappleTurns(geometry) * vi * (particleDensity_kgm3 - rho);
  return Math.sqrt((9 * mu * geometry.inletWidth_m) / pull);
}

/**
 * Grade efficiency round Lapple's cut size, by Theodore and De Paola.
 *
 * `eta = 1/(1 + (d50/d)^2)`, an algebraic fit to Lapple's curve.
 *
 * @param diameter_m - `d`, particle [m]
 * @param cutSize_m - `d50` [m]
 * @returns share of the mass of this size that is caught [-], 0 to 1
 * @throws ImpossibleInput naming `diameter_m` or `cutSize_m`: not finite or not above zero
 *
 * @remarks
 * Range: the tested cyclones of Lapple.
 * Outside: the value is still returned.
 * Leaves out: what the cut size leaves out.
 * Limits: one half at the cut size; 1 for coarse, 0 for fine particles.
 * Basis: published (formula read in an open library and on a reference sheet of process engineering).
 * Source: Theodore and De Paola 1980, in Cooper and Alley ch. 4.
 * Checked: test/reference/cyclone.test.ts (eight sizes of Cooper and Alley's example).
 *
 * @example
 * ```ts
 * theodoreDePaolaGrade(10e-6, 5e-6); // 0.8
 * ```
 */
export function theodoreDePaolaGrade(diameter_m: number, cutSize_m: number): number {
  const ratio = requirePositive('cutSize_m', cutSize_m) / requirePositive('diameter_m', diameter_m);
  return 1 / (1 + ratio * ratio);
}

/**
 * Cut size of a cyclone by Barth.
 *
 * The particle that hangs in balance on the control surface: `x50 = sqrt( 9 mu vr De/(rho_p vcs^2) )` with the inward
 * velocity `vr = Q/(pi De Hcs)` and `vcs`, `Hcs` of barthSwirl.
 *
 * @param geometry - dimensions [m]
 * @param flow - air and particle; air density and temperature are not used
 * @returns `x50` [m], caught by half
 * @throws ImpossibleInput naming a field that cannot be, or a dimension as barthSwirl
 *
 * @remarks
 * Range: Stokes drag, smooth walls, light dust load.
 * Outside: the value is still returned.
 * Leaves out: leaks at the dust outlet, re-entrainment, dust load.
 * Limits: more flow gives a finer cut, as the swirl grows faster than the drift.
 * Basis: from-memory (page not seen).
 * Source: Barth 1956, in Hoffmann and Stein, Gas Cyclones and Swirl Tubes, ch. 4-6.
 * Checked: test/reference/cyclone-swirl.test.ts (balance of forces); test/reference/stairmand.test.ts (two measured
 * cyclones: 2.1 and 1.2 times as coarse).
 *
 * @example
 * ```ts
 * const cyclone = standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2);
 * const flow = { flow_m3s: 0.075, density_kgm3: 1.2, viscosity_Pas: 1.81e-5, temperature_K: 293.15, particleDensity_kgm3: 1000 };
 * barthCutSize(cyclone, flow) * 1e6; // 4.820
 * ```
 */
export function barthCutSize(geometry: CycloneGeometry, flow: SeparatorFlow): number {
  const { flow_m3s, viscosity_Pas: mu, particleDensity_kgm3 } = checkSeparatorFlow(flow);
  const swirl = barthSwirl(geometry, flow_m3s);
  const inward_ms = flow_m3s / (Math.PI * geometry.outletDiameter_m * swirl.surfaceHeight_m);
  const drag = 9 * mu * inward_ms * geometry.outletDiameter_m;
  return Math.sqrt(drag / particleDensity_kgm3) / swirl.core_ms;
}

/**
 * Grade efficiency round Barth's cut size.
 *
 * `eta = 1/(1 + (x50/x)^6.4)`.
 *
 * @param diameter_m - `x`, particle [m]
 * @param cutSize_m - `x50` [m]
 * @returns share of the mass of this size that is caught [-], 0 to 1
 * @throws ImpossibleInput naming `diameter_m` or `cutSize_m`: not finite or not above zero
 *
 * @remarks
 * Range: the cyclones of Dirgo and Leith's fit.
 * Outside: the value is still returned.
 * Leaves out: what the cut size leaves out.
 * Limits: one half at the cut size; 1 for coarse, 0 for fine particles.
 * Basis: from-memory (page not seen).
 * Source: Dirgo and Leith 1985.
 * Checked: test/reference/cyclone.test.ts (hand calculation).
 *
 * @example
 * ```ts
 * barthGrade(10e-6, 5e-6); // 0.9883
 * ```
 */
export function barthGrade(diameter_m: number, cutSize_m: number): number {
  const ratio = requirePositive('cutSize_m', cutSize_m) / requirePositive('diameter_m', diameter_m);
  return 1 / (1 + ratio ** BARTH_GRADE_EXPONENT.value);
}
