import { ImpossibleInput, requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';

/** Where the relations of this file hold. */
export const EQUIVALENT_DIAMETER_RANGE: ValidRange = { 'side ratio': { low: 1, high: 8, unit: '-' } };

/** A straight run at constant density. */
export interface StraightRun {
  /** Darcy friction factor [-]. */
  readonly frictionFactor: number;
  /** Length [m]. */
  readonly length_m: number;
  /** Inside diameter, or hydraulic diameter [m]. */
  readonly diameter_m: number;
  /** Density [kg/m3]. */
  readonly density_kgm3: number;
  /** Mean velocity [m/s]. */
  readonly velocity_ms: number;
}

/**
 * Velocity pressure.
 *
 * `VP = rho V^2 / 2`.
 *
 * @param density_kgm3 - `rho` [kg/m3]
 * @param velocity_ms - `V`, mean velocity [m/s]; its sign does not matter
 * @returns velocity pressure [Pa]
 * @throws ImpossibleInput naming a density not above zero or a velocity that is not finite
 *
 * @remarks
 * Range: none: follows from the definition; air below about 60 m/s, where compression on impact is under 1 %.
 * Outside: the value is still returned.
 * Leaves out: the uneven profile, which adds some 5 % of kinetic energy in turbulent flow.
 * Limits: 0 at rest.
 * Basis: published (definition, read in a list of fan terms).
 * Source: ISO 5801 and any text on fluid mechanics: dynamic pressure.
 * Checked: test/reference/straight.test.ts.
 *
 * @example
 * ```ts
 * velocityPressure(1.2, 20); // 240
 * ```
 */
export function velocityPressure(density_kgm3: number, velocity_ms: number): number {
  return (
    (requirePositive('density_kgm3', density_kgm3) *
      requireNotNegative('velocity_ms', Math.abs(velocity_ms)) ** 2) /
    2
  );
}

/**
 * Friction drop of a straight run at constant density, Darcy-Weisbach.
 *
 * `dp = f L/D rho V^2/2`.
 *
 * @param run - friction factor [-], length [m], diameter [m], density [kg/m3], velocity [m/s]
 * @returns drop of total pressure along the run [Pa]
 * @throws ImpossibleInput naming the field that no run can have
 *
 * @remarks
 * Range: none: an identity that defines the friction factor; see FRICTION_RANGE for that.
 * Outside: not applicable.
 * Leaves out: change of density along the run; see `isothermalOutletPressure`.
 * Limits: 0 at rest and for no length.
 * Basis: published (definition, read on a reference sheet of process engineering).
 * Source: Darcy-Weisbach, for instance Rennels and Hudson, Pipe Flow, Wiley, 2012, ch. 3.
 * Checked: test/reference/straight.test.ts.
 *
 * @example
 * ```ts
 * darcyWeisbachDrop({ frictionFactor: 0.02, length_m: 5, diameter_m: 0.1, density_kgm3: 1.2, velocity_ms: 20 }); // 240
 * ```
 */
export function darcyWeisbachDrop(run: StraightRun): number {
  const f = requireNotNegative('frictionFactor', run.frictionFactor);
  const L = requireNotNegative('length_m', run.length_m);
  const D = requirePositive('diameter_m', run.diameter_m);
  return ((f * L) / D) * velocityPressure(run.density_kgm3, run.velocity_ms);
}

/** A straight run with gas at constant temperature. */
export interface IsothermalRun {
  /** Absolute static pressure just inside the inlet [Pa]. */
  readonly inletPressure_Pa: number;
  /** Mass flow [kg/s], zero or more. */
  readonly massFlow_kgs: number;
  /** Cross-section [m2]. */
  readonly area_m2: number;
  /** Temperature, the same everywhere [K]. */
  readonly temperature_K: number;
  /** Friction factor times length over diameter [-]. */
  readonly fLoverD: number;
  /** Specific gas constant [J/(kg K)]. */
  readonly gasConstant_JkgK: number;
}

/**
 * Largest mass flow that a run can pass at constant temperature, whatever pulls at its end.
 *
 * At the limit the outlet velocity is `sqrt(R T)`; then `u - ln u = 1 + f L/D` with `u = (A P1/m)^2 / (R T)`.
 *
 * @param run - inlet pressure [Pa], area [m2], temperature [K], fLoverD [-], gas constant [J/(kg K)]; flow not used
 * @returns mass flow at which the run chokes [kg/s]
 * @throws ImpossibleInput naming the field that no run can have
 *
 * @remarks
 * Range: ideal gas, constant friction factor, constant temperature.
 * Outside: not applicable; the temperature of a real run falls near choking.
 * Leaves out: entry loss; static pressure is just inside the inlet.
 * Limits: `f L/D = 0` gives `A P1 / sqrt(R T)`.
 * Basis: from-memory (derived from the isothermal flow equation: slope of flow with outlet pressure is zero).
 * Source: Rennels and Hudson, Pipe Flow, Wiley, 2012, isothermal flow.
 * Checked: test/reference/straight.test.ts, by a scan of the flow equation.
 *
 * @example
 * ```ts
 * const run = { inletPressure_Pa: 1e5, area_m2: 0.01, temperature_K: 293.15, fLoverD: 0, gasConstant_JkgK: 287.05 };
 * isothermalChokingFlow(run); // 3.4473
 * ```
 */
export function isothermalChokingFlow(run: Omit<IsothermalRun, 'massFlow_kgs'>): number {
  const P1 = requirePositive('inletPressure_Pa', run.inletPressure_Pa);
  const A = requirePositive('area_m2', run.area_m2);
  const RT =
    requirePositive('gasConstant_JkgK', run.gasConstant_JkgK) *
    requirePositive('temperature_K', run.temperature_K);
  const target = 1 + requireNotNegative('fLoverD', run.fLoverD);
  if (target === 1) return (A * P1) / Math.sqrt(RT);
  // Newton from the right of the root of a convex function: never passes it.
  let u = 2 * target;
  for (let step = 0; step < 60; step++) {
    const change = (u - Math.log(u) - target) / (1 - 1 / u);
    u -= change;
    if (Math.abs(change) <= 1e-15 * u) break;
  }
  return (A * P1) / Math.sqrt(RT * u);
}

/**
 * Absolute static pressure at the end of a run in which the gas expands at constant temperature.
 *
 * Solves `m^2 = A^2 (P1^2 - P2^2) / (R T (f L/D + 2 ln(P1/P2)))` for `P2` on the subsonic side.
 *
 * @param run - inlet pressure [Pa], mass flow [kg/s], area [m2], temperature [K], fLoverD [-], gas constant [J/(kg K)]
 * @returns outlet pressure [Pa], absolute and static
 * @throws ImpossibleInput naming a field that no run can have; naming `massFlow_kgs` if the run cannot pass that
 * flow (`isothermalChokingFlow` tells how much it can)
 *
 * @remarks
 * Range: ideal gas, constant friction factor along the run, outlet below `sqrt(R T)` (about 290 m/s in air).
 * Outside: more flow than the choking flow is impossible and throws.
 * Leaves out: entry and exit losses, heat exchange short of perfect.
 * Limits: no flow returns the inlet pressure; small flow tends to Darcy-Weisbach at inlet density.
 * Basis: published (equation read as quoted in an open library; it follows from momentum).
 * Source: Rennels and Hudson, Pipe Flow, Wiley, 2012, isothermal flow; Crane TP-410; the equation as quoted in an
 *   open library.
 * Checked: test/reference/straight.test.ts.
 *
 * @example
 * ```ts
 * const run = { inletPressure_Pa: 1e5, area_m2: 0.01, temperature_K: 293.15, fLoverD: 4, gasConstant_JkgK: 287.05 };
 * isothermalOutletPressure({ ...run, massFlow_kgs: 0 }); // 100000
 * ```
 */
export function isothermalOutletPressure(run: IsothermalRun): number {
  const m = requireNotNegative('massFlow_kgs', run.massFlow_kgs);
  const most = isothermalChokingFlow(run);
  if (m > most) throw new ImpossibleInput('massFlow_kgs', m, `at most ${most}, where the run chokes`);
  const P1 = run.inletPressure_Pa;
  const flux = m / (run.area_m2 * P1);
  const c = flux * flux * run.gasConstant_JkgK * run.temperature_K;
  // d = 1 - P2/P1. The residual is concave and d starts below the root, so Newton climbs to it and never passes.
  let d = 0;
  for (let step = 0; step < 100; step++) {
    const r = 1 - d;
    const residual = d * (2 - d) - c * (run.fLoverD - 2 * Math.log1p(-d));
    const slope = 2 * r - (2 * c) / r;
    if (!(slope > 0)) break;
    const change = residual / slope;
    d -= change;
    if (Math.abs(change) <= 1e-16 + 1e-15 * d) break;
  }
  return P1 * (1 - d);
}

/**
 * Hydraulic diameter.
 *
 * `Dh = 4 A / P`.
 *
 * @param area_m2 - `A`, cross-section of the flow [m2]
 * @param perimeter_m - `P`, wetted perimeter [m]
 * @returns hydraulic diameter [m]
 * @throws ImpossibleInput naming the argument: not finite or not above zero
 *
 * @remarks
 * Range: none: a definition. For turbulent friction it serves within some 5 % for shapes near round or square.
 * Outside: the value is still returned.
 * Leaves out: laminar flow, where shape matters.
 * Limits: a round duct gives its diameter, a square duct its side.
 * Basis: from-memory (definition).
 * Source: any text on fluid mechanics: hydraulic diameter.
 * Checked: test/reference/straight.test.ts.
 *
 * @example
 * ```ts
 * hydraulicDiameter(0.02, 0.6); // 0.13333
 * ```
 */
export function hydraulicDiameter(area_m2: number, perimeter_m: number): number {
  return (4 * requirePositive('area_m2', area_m2)) / requirePositive('perimeter_m', perimeter_m);
}

/**
 * Round duct with the same friction drop at the same flow as a rectangular one, after Huebscher.
 *
 * `De = 1.30 (a b)^0.625 / (a + b)^0.25`.
 *
 * @param width_m - `a`, one inside width [m]
 * @param height_m - `b`, the other inside width [m]
 * @returns equivalent diameter [m]; velocity is then flow over the real area `a b`
 * @throws ImpossibleInput naming the argument: not finite or not above zero
 *
 * @remarks
 * Range: sides up to 8 to 1; as data in EQUIVALENT_DIAMETER_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: corner flow details; turbulent air only.
 * Limits: a square duct of side `a` gives 1.093 a.
 * Basis: from-memory (page not seen).
 * Source: Huebscher, ASHVE Transactions 54 (1948); ASHRAE Fundamentals, Duct Design.
 * Checked: test/reference/straight.test.ts.
 *
 * @example
 * ```ts
 * equivalentRoundDiameter(0.2, 0.1); // 0.15234
 * ```
 */
export function equivalentRoundDiameter(width_m: number, height_m: number): number {
  const a = requirePositive('width_m', width_m);
  const b = requirePositive('height_m', height_m);
  return (1.3 * (a * b) ** 0.625) / (a + b) ** 0.25;
}
