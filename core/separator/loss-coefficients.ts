import {
  BARTH_CORE_K,
  BARTH_FRICTION,
  SHEPHERD_LAPPLE_K,
  STAIRMAND_FRICTION,
} from '../catalogue/separator-models.ts';
import type { CycloneInlet, OutletRim } from '../catalogue/separator-models.ts';
import type { CycloneGeometry } from './proportions.ts';
import { barthSwirl } from './barth-swirl.ts';
import { ImpossibleInput, requirePositive } from '../quantities/impossible-input.ts';

/** What a pressure-drop model needs beside the dimensions. */
export interface CycloneLossContext {
  readonly inlet: CycloneInlet;
  readonly outletRim: OutletRim;
}

/** A plain slot and a pipe that is cut off square: what a shop builds. */
export const PLAIN_CYCLONE: CycloneLossContext = { inlet: 'plain', outletRim: 'sharp' };

/** `x = a b/De^2`, the shape number of the simple models. */
function inletOverOutlet(geometry: CycloneGeometry): number {
  const { inletHeight_m: a, inletWidth_m: b, outletDiameter_m: De } = geometry;
  requirePositive('inletHeight_m', a);
  requirePositive('inletWidth_m', b);
  return (a * b) / requirePositive('outletDiameter_m', De) ** 2;
}

/**
 * Cyclone loss coefficient by Shepherd and Lapple.
 *
 * `xi = K a b/De^2`, with `K = 16` for a plain tangential slot and 7.5 with a vane in the inlet.
 *
 * @param geometry - dimensions [m]
 * @param context - the inlet decides `K`
 * @returns `xi` [-] on the inlet velocity pressure: `dP = xi rho vi^2/2`
 * @throws ImpossibleInput naming a dimension [m] that is not above zero
 *
 * @remarks
 * Range: tangential slot inlet, near-standard proportions, light dust load.
 * Outside: the value is still returned.
 * Leaves out: body length, wall friction, dust load.
 * Limits: a wide outlet gives 0.
 * Basis: published (16 and 7.5 read in an extract of Coker, 16 in Wang and others).
 * Source: Shepherd and Lapple 1939/40, in Coker, Fortran Programs for Chemical Process Design, 1995, ch. 4, and
 *   Wang, Pereira and Hung, Air Pollution Control Engineering, 2004, p. 105.
 * Checked: test/reference/cyclone.test.ts (Cooper and Alley's example).
 *
 * @example
 * ```ts
 * shepherdLappleCoefficient(standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2), PLAIN_CYCLONE); // 8
 * ```
 */
export function shepherdLappleCoefficient(geometry: CycloneGeometry, context: CycloneLossContext): number {
  return SHEPHERD_LAPPLE_K[context.inlet].value * inletOverOutlet(geometry);
}

/**
 * Cyclone loss coefficient by Casal and Martinez-Benet.
 *
 * `xi = 3.33 + 11.3 (a b/De^2)^2`.
 *
 * @param geometry - dimensions [m]
 * @returns `xi` [-] on the inlet velocity pressure
 * @throws ImpossibleInput naming a dimension [m] that is not above zero
 *
 * @remarks
 * Range: tangential slot inlet, near-standard proportions, light dust load.
 * Outside: the value is still returned.
 * Leaves out: body length, wall friction, dust load.
 * Limits: a wide outlet gives 3.33.
 * Basis: from-memory (the two numbers read in two later works, but these print the body's diameter or the outlet
 *   pipe's depth for `De`; with `De` it lies nearest to the other models).
 * Source: Casal and Martinez-Benet 1983.
 * Checked: test/reference/cyclone.test.ts (hand calculation).
 *
 * @example
 * ```ts
 * casalMartinezBenetCoefficient(standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2)); // 6.155
 * ```
 */
export function casalMartinezBenetCoefficient(geometry: CycloneGeometry): number {
  return 3.33 + 11.3 * inletOverOutlet(geometry) ** 2;
}

/**
 * Cyclone loss coefficient by Coker.
 *
 * `xi = 9.47 a b/De^2`.
 *
 * @param geometry - dimensions [m]
 * @returns `xi` [-] on the inlet velocity pressure
 * @throws ImpossibleInput naming a dimension [m] that is not above zero
 *
 * @remarks
 * Range: tangential slot inlet, near-standard proportions, light dust load.
 * Outside: the value is still returned.
 * Leaves out: body length, wall friction, dust load; usually the lowest of the models.
 * Limits: a wide outlet gives 0.
 * Basis: from-memory (page not seen).
 * Source: Coker 1993.
 * Checked: test/reference/cyclone.test.ts (hand calculation).
 *
 * @example
 * ```ts
 * cokerCoefficient(standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2)); // 4.735
 * ```
 */
export function cokerCoefficient(geometry: CycloneGeometry): number {
  return 9.47 * inletOverOutlet(geometry);
}

/**
 * Cyclone loss coefficient by Dirgo, also given by Ramachandran and others.
 *
 * `xi = 20 (a b/De^2) [ (S/D) / ((H/D)(h/D)(B/D)) ]^(1/3)`, a regression over tested cyclones.
 *
 * @param geometry - dimensions [m]
 * @returns `xi` [-] on the inlet velocity pressure
 * @throws ImpossibleInput naming a dimension [m] that is not above zero
 *
 * @remarks
 * Range: proportions near those of the tested cyclones.
 * Outside: the value is still returned.
 * Leaves out: wall friction, dust load.
 * Limits: a wide outlet gives 0; a taller body lowers the loss.
 * Basis: published (page of Wang and others read).
 * Source: Dirgo 1988; Ramachandran, Leith, Dirgo and Feldman 1991, in Wang, Pereira and Hung, Air Pollution
 *   Control Engineering, 2004, p. 105.
 * Checked: test/reference/cyclone.test.ts (hand calculation).
 *
 * @example
 * ```ts
 * dirgoCoefficient(standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2)); // 6.786
 * ```
 */
export function dirgoCoefficient(geometry: CycloneGeometry): number {
  const D = requirePositive('bodyDiameter_m', geometry.bodyDiameter_m);
  const S = requirePositive('outletDepth_m', geometry.outletDepth_m) / D;
  const H = requirePositive('totalHeight_m', geometry.totalHeight_m) / D;
  const h = requirePositive('cylinderHeight_m', geometry.cylinderHeight_m) / D;
  const B = requirePositive('dustOutletDiameter_m', geometry.dustOutletDiameter_m) / D;
  return 20 * inletOverOutlet(geometry) * Math.cbrt(S / (H * h * B));
}

/**
 * Cyclone loss coefficient by Stairmand.
 *
 * `xi = 1 + 2 p^2 (2(D-b)/De - 1) + 2 (4ab/(pi De^2))^2`. `p`, the ratio of wall to inlet velocity, follows from the
 * balance of swirl against friction over the wetted area `A`, with friction `G = 0.005`:
 * `p = [sqrt(r + 4 g) - sqrt(r)]/(2 g)`, `r = De/(2(D-b))`, `g = G A/(ab)`.
 *
 * @param geometry - dimensions [m]
 * @returns `xi` [-] on the inlet velocity pressure
 * @throws ImpossibleInput naming a dimension [m] that cannot be
 *
 * @remarks
 * Range: tangential slot inlet, smooth walls.
 * Outside: the value is still returned.
 * Leaves out: dust load; rough or ribbed printed walls.
 * Limits: no friction gives `p = 1/sqrt(r)`, a swirl that keeps its momentum.
 * Basis: from-memory (page not seen).
 * Source: Stairmand 1949.
 * Checked: test/reference/cyclone.test.ts (frictionless limit; quadratic solved a second way).
 *
 * @example
 * ```ts
 * stairmandCoefficient(standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2)); // 5.543
 * ```
 */
export function stairmandCoefficient(geometry: CycloneGeometry): number {
  const { bodyDiameter_m: D, outletDiameter_m: De, outletDepth_m: S, dustOutletDiameter_m: B } = geometry;
  const { inletHeight_m: a, inletWidth_m: b, cylinderHeight_m: h, totalHeight_m: H } = geometry;
  const x = inletOverOutlet(geometry);
  if (!(b < D)) throw new ImpossibleInput('inletWidth_m', b, `narrower than the body (${D})`);
  const cone = (Math.PI / 2) * (D + B) * Math.hypot(H - h, (D - B) / 2);
  const wetted_m2 = (Math.PI / 4) * (D * D - De * De) + Math.PI * D * h + Math.PI * De * S + cone;
  const friction = (STAIRMAND_FRICTION.value * wetted_m2) / (a * b);
  const r = De / (2 * (D - b));
  const wallRatio = 2 / (Math.sqrt(r + 4 * friction) + Math.sqrt(r)); // the same root, without cancellation
  return 1 + 2 * wallRatio ** 2 * (1 / r - 1) + 2 * ((4 * x) / Math.PI) ** 2;
}

/**
 * Cyclone loss coefficient by Barth.
 *
 * The body turns swirl into friction, the core throws most of its swirl away. With core velocities from barthSwirl:
 * body `(rho vx^2/2)(De/D) { 1/[vx/vcs - (H-S) f/Rx]^2 - (vcs/vx)^2 }`, core
 * `(rho vx^2/2) [ (vcs/vx)^2 + K (vcs/vx)^(4/3) ]`. Both scale with `vi^2`, so `xi` does not depend on the flow.
 *
 * @param geometry - dimensions [m]
 * @param context - the rim of the outlet pipe decides `K`
 * @returns `xi` [-] on the inlet velocity pressure
 * @throws ImpossibleInput naming a dimension [m] that cannot be, or `totalHeight_m` where friction over the length
 * below the pipe uses up more swirl than the core has, so that the body term has no value
 *
 * @remarks
 * Range: smooth walls, light dust load; friction factor 0.02.
 * Outside: the value is still returned.
 * Leaves out: dust load, which usually lowers the loss; inlet losses.
 * Limits: without friction the body term vanishes.
 * Basis: from-memory (page not seen).
 * Source: Barth 1956, in Hoffmann and Stein, Gas Cyclones and Swirl Tubes, ch. 4.
 * Checked: test/reference/cyclone-swirl.test.ts (hand calculation); test/reference/stairmand.test.ts (two measured
 * cyclones: 19 % high and 10 % low).
 *
 * @example
 * ```ts
 * barthCoefficient(standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2), PLAIN_CYCLONE); // 7.426
 * ```
 */
export function barthCoefficient(geometry: CycloneGeometry, context: CycloneLossContext): number {
  const { bodyDiameter_m: D, outletDiameter_m: De, outletDepth_m: S, totalHeight_m: H } = geometry;
  const swirl = barthSwirl(geometry, geometry.inletHeight_m * geometry.inletWidth_m); // at vi = 1 m/s
  const ratio = swirl.core_ms / swirl.axial_ms;
  const left = 1 / ratio - ((H - S) * BARTH_FRICTION.value) / (De / 2);
  if (!(left > 0)) {
    throw new ImpossibleInput(
      'totalHeight_m',
      H,
      'lower: wall friction passes the swirl, Barth gives no loss',
    );
  }
  const body = (De / D) * (1 / left ** 2 - ratio ** 2);
  const core = ratio ** 2 + BARTH_CORE_K[context.outletRim].value * ratio ** (4 / 3);
  return swirl.axial_ms ** 2 * (body + core);
}
