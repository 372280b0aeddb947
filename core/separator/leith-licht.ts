import { ImpossibleInput, requirePositive } from '../quantities/impossible-input.ts';
import { checkSeparatorFlow } from './cut-size.ts';
import type { SeparatorFlow } from './cut-size.ts';
import { coneDiameter } from './proportions.ts';
import type { CycloneGeometry } from './proportions.ts';

/**
 * Vortex exponent by Alexander.
 *
 * Tangential velocity falls as `radius^-n`, `n = 1 - (1 - 0.67 D^0.14)(T/283)^0.3`, `D` in m, `T` in K.
 *
 * @param bodyDiameter_m - `D` [m]
 * @param temperature_K - `T`, air [K]
 * @returns `n` [-]
 * @throws ImpossibleInput naming `bodyDiameter_m` or `temperature_K`: not finite or not above zero
 *
 * @remarks
 * Range: bodies of 0.1 to 3 m.
 * Outside: the value is still returned.
 * Leaves out: inlet velocity, dust load, wall roughness.
 * Limits: a free vortex has 1; a body turning as a solid has -1.
 * Basis: from-memory (page not seen).
 * Source: Alexander 1949, in Koch and Licht, Chem. Eng., 7 Nov 1977.
 * Checked: test/reference/cyclone.test.ts (hand calculation, the form in feet).
 *
 * @example
 * ```ts
 * alexanderExponent(0.2, 293.15); // 0.5299
 * ```
 */
export function alexanderExponent(bodyDiameter_m: number, temperature_K: number): number {
  const D = requirePositive('bodyDiameter_m', bodyDiameter_m);
  return 1 - (1 - 0.67 * D ** 0.14) * (requirePositive('temperature_K', temperature_K) / 283) ** 0.3;
}

/** Volume of a frustum [m3]. */
function frustum(upper_m: number, lower_m: number, height_m: number): number {
  return (Math.PI / 12) * height_m * (upper_m * upper_m + upper_m * lower_m + lower_m * lower_m);
}

/** Volume of the body between two depths below the roof [m3]. */
function bodyVolume(geometry: CycloneGeometry, from_m: number, to_m: number): number {
  const { bodyDiameter_m: D, cylinderHeight_m: h } = geometry;
  const straight = Math.max(0, Math.min(to_m, h) - Math.min(from_m, h));
  const coneFrom = Math.max(from_m, h);
  const coneTo = Math.max(to_m, h);
  const cone = frustum(coneDiameter(geometry, coneFrom), coneDiameter(geometry, coneTo), coneTo - coneFrom);
  return (Math.PI / 4) * D * D * straight + cone;
}

/**
 * Geometry constant of a cyclone by Leith and Licht.
 *
 * `G = 8 Kc/((a/D)^2 (b/D)^2)`, `Kc = (Vs + Vnl/2)/D^3`: `Vs` is the ring beside the outlet pipe below mid-inlet,
 * `Vnl` the body below the pipe less the core, down to the vortex's natural length `ln = 2.3 De (D^2/(ab))^(1/3)`.
 * Where `ln` reaches past the dust outlet, the whole body below the pipe counts.
 *
 * @param geometry - dimensions [m]
 * @returns `G` [-]
 * @throws ImpossibleInput naming a dimension [m] not above zero, or `outletDiameter_m` where the core takes up all of
 * the volume
 *
 * @remarks
 * Range: near-standard proportions, in all of which `ln < H-S`.
 * Outside: the value is still returned.
 * Leaves out: none known beyond the model's own picture.
 * Limits: the same for any size of one shape.
 * Basis: from-memory (page not seen); seven shapes reproduce the published list.
 * Source: Leith and Licht 1972; Koch and Licht, Chem. Eng., 7 Nov 1977.
 * Checked: test/reference/cyclone.test.ts (seven published values).
 *
 * @example
 * ```ts
 * leithLichtConstant(standardCyclone(CYCLONE_PROPORTIONS.lapple, 1)); // 402.88
 * ```
 */
export function leithLichtConstant(geometry: CycloneGeometry): number {
  const { outletDiameter_m: De, outletDepth_m: S, totalHeight_m: H } = geometry;
  const D = requirePositive('bodyDiameter_m', geometry.bodyDiameter_m);
  const a = requirePositive('inletHeight_m', geometry.inletHeight_m);
  const b = requirePositive('inletWidth_m', geometry.inletWidth_m);
  const natural_m = 2.3 * De * Math.cbrt(D ** 2 / (a * b));
  const length_m = Math.min(natural_m, H - S);
  const ring = (Math.PI / 4) * (S - a / 2) * (D * D - De * De);
  const below = bodyVolume(geometry, S, S + length_m) - (Math.PI / 4) * De * De * length_m;
  const share = (ring + below / 2) / D ** 3;
  if (!(share > 0)) {
    throw new ImpossibleInput('outletDiameter_m', De, 'narrower: the core of Leith and Licht fills the body');
  }
  return (8 * share) / ((a / D) ** 2 * (b / D) ** 2);
}

/** The two numbers that a Leith-Licht grade curve consists of: `eta = 1 - exp(-scale d^power)`. */
export interface LeithLichtCurve {
  /** `2 [G rho_p Q (n+1)/(18 mu D^3)]^(power/2)` [1/m^power]. */
  readonly scale: number;
  /** `1/(n+1)` [-]. */
  readonly power: number;
}

/**
 * Grade curve of a cyclone by Leith and Licht.
 *
 * `eta = 1 - exp{ -2 [G tau Q (n+1)/D^3]^(0.5/(n+1)) }`, `tau = rho_p d^2/(18 mu)`; written as
 * `1 - exp(-scale d^power)`.
 *
 * @param geometry - dimensions [m]
 * @param flow - air and particle; air density is not used
 * @returns scale [1/m^power] and power [-] of the curve
 * @throws ImpossibleInput naming a field that cannot be, a dimension as leithLichtConstant, or `temperature_K` where
 * the vortex exponent falls to -1
 *
 * @remarks
 * Range: Stokes drag, near-standard proportions, bodies of 0.1 to 3 m.
 * Outside: the value is still returned.
 * Leaves out: leaks at the dust outlet, re-entrainment; it mixes dust across the radius and so has a flat curve.
 * Limits: more flow catches more.
 * Basis: from-memory (page not seen).
 * Source: Leith and Licht 1972; Koch and Licht, Chem. Eng., 7 Nov 1977.
 * Checked: test/reference/cyclone-swirl.test.ts (the 1972 form); test/reference/stairmand.test.ts (two measured
 * cyclones: 0.62 and 0.41 times as coarse); its constant in test/reference/cyclone.test.ts.
 *
 * @example
 * ```ts
 * const cyclone = standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2);
 * const flow = { flow_m3s: 0.075, density_kgm3: 1.2, viscosity_Pas: 1.81e-5, temperature_K: 293.15, particleDensity_kgm3: 1000 };
 * leithLichtCurve(cyclone, flow).power; // 0.6536
 * ```
 */
export function leithLichtCurve(geometry: CycloneGeometry, flow: SeparatorFlow): LeithLichtCurve {
  const { flow_m3s: Q, viscosity_Pas: mu, temperature_K, particleDensity_kgm3 } = checkSeparatorFlow(flow);
  const D = requirePositive('bodyDiameter_m', geometry.bodyDiameter_m);
  const n = alexanderExponent(D, temperature_K);
  if (!(n > -1))
    throw new ImpossibleInput('temperature_K', temperature_K, 'lower: the air turns as a solid body');
  const G = leithLichtConstant(geometry);
  const power = 1 / (n + 1);
  const perSquare = (G * particleDensity_kgm3 * Q * (n + 1)) / (18 * mu * D ** 3);
  return { scale: 2 * perSquare ** (power / 2), power };
}

/**
 * Grade efficiency on a Leith-Licht curve.
 *
 * `eta = 1 - exp(-scale d^power)`.
 *
 * @param diameter_m - `d`, particle [m]
 * @param curve - scale [1/m^power] and power [-] of leithLichtCurve
 * @returns share of the mass of this size that is caught [-], 0 to 1
 * @throws ImpossibleInput naming `diameter_m`: not finite or not above zero
 *
 * @remarks
 * Range: as leithLichtCurve.
 * Outside: the value is still returned.
 * Leaves out: what the curve leaves out.
 * Limits: 1 for coarse, 0 for fine particles.
 * Basis: from-memory (page not seen).
 * Source: Leith and Licht 1972.
 * Checked: test/reference/cyclone-swirl.test.ts (law of Rosin and Rammler, the 1972 form).
 *
 * @example
 * ```ts
 * leithLichtGrade(10e-6, { scale: 4000, power: 0.65 }); // 0.8945
 * ```
 */
export function leithLichtGrade(diameter_m: number, curve: LeithLichtCurve): number {
  return -Math.expm1(-curve.scale * requirePositive('diameter_m', diameter_m) ** curve.power);
}
