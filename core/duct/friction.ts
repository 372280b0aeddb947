import { requireBetween, requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';
import { turbulentGroup } from './colebrook.ts';

export { colebrookFriction, FRICTION_RANGE } from './colebrook.ts';

/** Flow is taken as laminar below this Reynolds number [-]. */
export const LAMINAR_BELOW = 2000;
/** Flow is taken as fully turbulent above this Reynolds number [-]. */
export const TURBULENT_ABOVE = 4000;

/** Writes `g = f Re^2` and `dg/dRe` of the blend; end slopes limited so that `g` rises everywhere. */
function blendedGroup(reynolds: number, relativeRoughness: number, out: Float64Array): void {
  turbulentGroup(TURBULENT_ABOVE, relativeRoughness, out);
  const width = TURBULENT_ABOVE - LAMINAR_BELOW;
  const low = 64 * LAMINAR_BELOW;
  const high = out[0]!;
  const secant = (high - low) / width;
  let lowSlope = 64;
  let highSlope = out[1]!;
  const excess = Math.hypot(lowSlope, highSlope) / (3 * secant);
  if (excess > 1) {
    lowSlope /= excess;
    highSlope /= excess;
  }
  const t = (reynolds - LAMINAR_BELOW) / width;
  const u = 1 - t;
  out[0] =
    u * u * ((1 + 2 * t) * low + t * width * lowSlope) + t * t * ((3 - 2 * t) * high - u * width * highSlope);
  out[1] = 6 * t * u * secant + u * (1 - 3 * t) * lowSlope + t * (3 * t - 2) * highSlope;
}

/**
 * The product `f Re^2`, to which friction drop is proportional at a given diameter and viscosity, and its slope.
 *
 * Unlike `f` it is finite and smooth through zero flow. Laminar `64 Re` up to Re 2000, Colebrook-White from 4000,
 * and between them the cubic that continues value and slope of both, with Fritsch-Carlson limited slopes, so that
 * more flow always costs more pressure.
 *
 * @param reynolds - `Re`, Reynolds number on the diameter [-], 0 or more
 * @param relativeRoughness - roughness height over diameter [-], 0 to 0.5
 * @param out - receives `f Re^2` in place 0 and `d(f Re^2)/dRe` in place 1 (pure numbers)
 * @returns nothing; the result is in `out`, so that a solver's inner loop allocates nothing
 * @throws ImpossibleInput naming the argument that is outside these limits
 *
 * @remarks
 * Range: as data in FRICTION_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: what flow really does between Re 2000 and 4000, where it flickers between two states.
 * Limits: 0 at rest, with slope 64.
 * Basis: from-memory (laminar and turbulent laws); the blend is ours and rests on nothing but smoothness (assumed).
 * Source: Hagen-Poiseuille; Colebrook 1939; Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) for the slopes.
 * Checked: test/reference/friction.test.ts and test/core/duct/friction.test.ts.
 *
 * @example
 * ```ts
 * const out = new Float64Array(2);
 * frictionGroup(1000, 0, out);
 * out[0]; // 64000
 * ```
 */
export function frictionGroup(reynolds: number, relativeRoughness: number, out: Float64Array): void {
  requireBetween('reynolds', reynolds, 0, 1e15);
  requireBetween('relativeRoughness', relativeRoughness, 0, 0.5);
  if (reynolds <= LAMINAR_BELOW) {
    out[0] = 64 * reynolds;
    out[1] = 64;
  } else if (reynolds >= TURBULENT_ABOVE) turbulentGroup(reynolds, relativeRoughness, out);
  else blendedGroup(reynolds, relativeRoughness, out);
}

/**
 * Darcy friction factor over all flow regimes, with its slope.
 *
 * @param reynolds - `Re`, Reynolds number on the diameter [-], above 0
 * @param relativeRoughness - roughness height over diameter [-], 0 to 0.5
 * @param out - receives `f` in place 0 and `df/dRe` in place 1 (pure numbers)
 * @returns nothing; the result is in `out`
 * @throws ImpossibleInput naming the argument that is outside these limits
 *
 * @remarks
 * Range: as data in FRICTION_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: as `frictionGroup`.
 * Limits: `64/Re` below Re 2000; Colebrook-White above 4000.
 * Basis: from-memory, as `frictionGroup`.
 * Source: as `frictionGroup`.
 * Checked: test/reference/friction.test.ts; slope by finite differences in test/core/duct/friction.test.ts.
 *
 * @example
 * ```ts
 * const out = new Float64Array(2);
 * frictionFactorWithSlope(1000, 0, out);
 * out[1]; // -6.4e-5
 * ```
 */
export function frictionFactorWithSlope(
  reynolds: number,
  relativeRoughness: number,
  out: Float64Array,
): void {
  requirePositive('reynolds', reynolds);
  frictionGroup(reynolds, relativeRoughness, out);
  const f = out[0]! / reynolds / reynolds;
  out[1] = (out[1]! / reynolds - 2 * f) / reynolds;
  out[0] = f;
}

/**
 * Darcy friction factor over all flow regimes.
 *
 * @param reynolds - `Re`, Reynolds number on the diameter [-], above 0
 * @param relativeRoughness - roughness height over diameter [-], 0 to 0.5
 * @returns Darcy friction factor `f` [-]
 * @throws ImpossibleInput naming the argument that is outside these limits
 *
 * @remarks
 * Range: as data in FRICTION_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: as `frictionGroup`.
 * Limits: `64/Re` below Re 2000; Colebrook-White above 4000.
 * Basis: from-memory, as `frictionGroup`.
 * Source: as `frictionGroup`.
 * Checked: test/reference/friction.test.ts.
 *
 * @example
 * ```ts
 * frictionFactor(1000, 0.001); // 0.064
 * ```
 */
export function frictionFactor(reynolds: number, relativeRoughness: number): number {
  requirePositive('reynolds', reynolds);
  frictionGroup(reynolds, relativeRoughness, scratch);
  return scratch[0]! / reynolds / reynolds;
}

const scratch = new Float64Array(2);

/** A straight round run and the air in it. */
export interface FrictionRun {
  /** Mass flow [kg/s]; negative means against the run's direction. */
  readonly massFlow_kgs: number;
  /** Inside diameter [m]. */
  readonly diameter_m: number;
  /** Length [m]. */
  readonly length_m: number;
  /** Roughness height [m]. */
  readonly roughness_m: number;
  /** Density [kg/m3]. */
  readonly density_kgm3: number;
  /** Dynamic viscosity [Pa s]. */
  readonly viscosity_Pas: number;
}

/**
 * Friction drop of a straight round run and its slope with mass flow, finite at any flow, zero included.
 *
 * `dp = f L/D rho V^2/2 = (f Re^2) mu^2 L / (2 rho D^3)`, with the sign of the flow.
 *
 * @param run - mass flow [kg/s], diameter [m], length [m], roughness [m], density [kg/m3], viscosity [Pa s]
 * @param out - receives the drop [Pa] in place 0 and its slope with mass flow [Pa s/kg] in place 1
 * @returns nothing; the result is in `out`
 * @throws ImpossibleInput naming the field that no run can have
 *
 * @remarks
 * Range: as data in FRICTION_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: change of density along the run, chips in the air.
 * Limits: 0 at no flow, with the laminar slope `128 mu L / (pi rho D^4)`; strictly rising; odd in the flow.
 * Basis: from-memory, as `frictionGroup`.
 * Source: Darcy-Weisbach with `frictionGroup`.
 * Checked: test/reference/friction.test.ts, through `frictionDrop`; its slope in test/core/duct/friction.test.ts.
 *
 * @example
 * ```ts
 * const out = new Float64Array(2);
 * const run = { massFlow_kgs: 0, diameter_m: 0.1, length_m: 1, roughness_m: 0, density_kgm3: 1.2, viscosity_Pas: 1.8e-5 };
 * frictionDropWithSlope(run, out);
 * out[1]; // 6.1115
 * ```
 */
export function frictionDropWithSlope(run: FrictionRun, out: Float64Array): void {
  const D = requirePositive('diameter_m', run.diameter_m);
  const L = requireNotNegative('length_m', run.length_m);
  const rho = requirePositive('density_kgm3', run.density_kgm3);
  const mu = requirePositive('viscosity_Pas', run.viscosity_Pas);
  const m = run.massFlow_kgs;
  const reynoldsPerFlow = 4 / (Math.PI * D * mu);
  frictionGroup(Math.abs(m) * reynoldsPerFlow, run.roughness_m / D, out);
  const scale = (mu * mu * L) / (2 * rho * D * D * D);
  out[0] = (m < 0 ? -scale : scale) * out[0]!;
  out[1] = scale * reynoldsPerFlow * out[1]!;
}

/**
 * Friction drop of a straight round run, finite at any flow, zero included.
 *
 * @param run - mass flow [kg/s], diameter [m], length [m], roughness [m], density [kg/m3], viscosity [Pa s]
 * @returns drop of total pressure along the run [Pa], with the sign of the flow
 * @throws ImpossibleInput naming the field that no run can have
 *
 * @remarks
 * Range: as data in FRICTION_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: as `frictionDropWithSlope`.
 * Limits: 0 at no flow; strictly rising; odd in the flow.
 * Basis: from-memory, as `frictionGroup`.
 * Source: Darcy-Weisbach with `frictionGroup`.
 * Checked: test/reference/friction.test.ts.
 *
 * @example
 * ```ts
 * const air = { density_kgm3: 1.2, viscosity_Pas: 1.8e-5 };
 * frictionDrop({ massFlow_kgs: 0.2, diameter_m: 0.1, length_m: 10, roughness_m: 1e-4, ...air }); // 581.712
 * ```
 */
export function frictionDrop(run: FrictionRun): number {
  frictionDropWithSlope(run, scratch);
  return scratch[0]!;
}
