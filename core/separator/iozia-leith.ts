import { ImpossibleInput, requirePositive } from '../quantities/impossible-input.ts';
import { checkSeparatorFlow } from './cut-size.ts';
import type { SeparatorFlow } from './cut-size.ts';
import { inletVelocity } from './proportions.ts';
import type { CycloneGeometry } from './proportions.ts';

/** The core of a cyclone and the cut that follows from it, by Iozia and Leith. */
export interface IoziaLeithCore {
  /** `dc`, diameter of the core [m]. */
  readonly coreDiameter_m: number;
  /** `zc`, length of the core [m]. */
  readonly coreLength_m: number;
  /** `vt`, tangential at the edge of the core [m/s]. */
  readonly tangential_ms: number;
  /** `d50`, caught by half [m]. */
  readonly cutSize_m: number;
  /** `be`, steepness of the grade curve [-]. */
  readonly slope: number;
}

/**
 * Core, cut size and steepness of the grade curve of a cyclone by Iozia and Leith.
 *
 * `dc = 0.47 D (ab/D^2)^-0.25 (De/D)^1.4`; `zc = H-S` if `dc <= B`, else `(H-S) - (H-h)/(D/B-1) (dc/B-1)`;
 * `vt = 6.1 vi (ab/D^2)^0.61 (De/D)^-0.74 (H/D)^-0.33`; `d50 = sqrt( 9 mu Q/(pi zc rho_p vt^2) )`;
 * `ln be = 0.62 - 0.87 ln(d50 in cm) + 5.21 ln(ab/D^2) + 1.05 [ln(ab/D^2)]^2`.
 *
 * @param geometry - dimensions [m]
 * @param flow - air and particle; air density and temperature are not used
 * @returns core [m], velocity [m/s], cut size [m] and slope [-]
 * @throws ImpossibleInput naming a field that cannot be, or `outletDiameter_m` where the core meets the cone above the
 * outlet pipe, so that it has no length
 *
 * @remarks
 * Range: bodies of 0.25 m with proportions near Stairmand's, from which the numbers were fitted.
 * Outside: the value is still returned.
 * Leaves out: leaks at the dust outlet, re-entrainment, dust load.
 * Limits: more flow gives a finer cut.
 * Basis: from-memory for `dc` and `d50`; `vt`, slope and `zc` read in Wang and others, eqs 26-30. Some papers
 *   print `H-S` for `H-h` in `zc`; that page and geometry have the latter.
 * Source: Iozia and Leith, Aerosol Sci. Technol. 1989 and 1990; Wang, Pereira and Hung, Air Pollution Control
 *   Engineering, 2004, p. 105.
 * Checked: test/reference/cyclone-swirl.test.ts (balance of forces, hand calculation); test/reference/stairmand.test.ts
 * (two measured cyclones: 1.3 and 0.44 times as coarse).
 *
 * @example
 * ```ts
 * const cyclone = standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2);
 * const flow = { flow_m3s: 0.075, density_kgm3: 1.2, viscosity_Pas: 1.81e-5, temperature_K: 293.15, particleDensity_kgm3: 1000 };
 * ioziaLeithCore(cyclone, flow).slope; // 4.176
 * ```
 */
export function ioziaLeithCore(geometry: CycloneGeometry, flow: SeparatorFlow): IoziaLeithCore {
  const { flow_m3s: Q, viscosity_Pas: mu, particleDensity_kgm3 } = checkSeparatorFlow(flow);
  const { bodyDiameter_m: D, outletDiameter_m: De, outletDepth_m: S, dustOutletDiameter_m: B } = geometry;
  const { inletHeight_m: a, inletWidth_m: b, cylinderHeight_m: h, totalHeight_m: H } = geometry;
  const inlet = (a * b) / D ** 2;
  const coreDiameter_m = 0.47 * D * inlet ** -0.25 * (De / D) ** 1.4;
  const lost = coreDiameter_m <= B ? 0 : ((H - h) / (D / B - 1)) * (coreDiameter_m / B - 1);
  const coreLength_m = H - S - lost;
  if (!(coreLength_m > 0)) {
    throw new ImpossibleInput('outletDiameter_m', De, 'narrower: the core of Iozia and Leith has no length');
  }
  const tangential_ms =
    6.1 * inletVelocity(Q, geometry) * inlet ** 0.61 * (De / D) ** -0.74 * (H / D) ** -0.33;
  const cutSize_m = Math.sqrt((9 * mu * Q) / (Math.PI * coreLength_m * particleDensity_kgm3)) / tangential_ms;
  const ln = Math.log(inlet);
  const slope = Math.exp(0.62 - 0.87 * Math.log(100 * cutSize_m) + 5.21 * ln + 1.05 * ln * ln);
  return { coreDiameter_m, coreLength_m, tangential_ms, cutSize_m, slope };
}

/**
 * Grade efficiency by Iozia and Leith.
 *
 * `eta = 1/(1 + (d50/d)^be)`.
 *
 * @param diameter_m - `d`, particle [m]
 * @param core - `d50` and `be` of ioziaLeithCore
 * @returns share of the mass of this size that is caught [-], 0 to 1
 * @throws ImpossibleInput naming `diameter_m`: not finite or not above zero
 *
 * @remarks
 * Range: as ioziaLeithCore.
 * Outside: the value is still returned.
 * Leaves out: what the cut size leaves out.
 * Limits: one half at the cut size; 1 for coarse, 0 for fine particles.
 * Basis: from-memory (page not seen).
 * Source: Iozia and Leith, Aerosol Sci. Technol. 1990.
 * Checked: test/reference/cyclone.test.ts (eight sizes of Cooper and Alley's example, slope 2).
 *
 * @example
 * ```ts
 * ioziaLeithGrade(10e-6, { coreDiameter_m: 0.06, coreLength_m: 0.6, tangential_ms: 27, cutSize_m: 5e-6, slope: 4 }); // 0.9412
 * ```
 */
export function ioziaLeithGrade(diameter_m: number, core: IoziaLeithCore): number {
  const ratio = core.cutSize_m / requirePositive('diameter_m', diameter_m);
  return 1 / (1 + ratio ** core.slope);
}
