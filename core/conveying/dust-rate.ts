import { requireBetween, requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';

/** A cut that makes dust. */
export interface Cut {
  /** Width of the cut [m]. */
  readonly width_m: number;
  /** Depth of the cut [m]. */
  readonly depth_m: number;
  /** Feed of the work or the tool [m/s]. */
  readonly feed_ms: number;
  /** Density of the solid material, such as the board [kg/m3]. */
  readonly density_kgm3: number;
  /** Share of the chips that the hood takes, 0 to 1 [-]. */
  readonly collectedShare: number;
}

/**
 * Mass of dust that a cut sends into its hood.
 *
 * `M = width x depth x feed x density x share`.
 *
 * @param cut - sizes [m], feed [m/s], density [kg/m3], share [-]
 * @returns `M` [kg/s] while the tool cuts
 * @throws ImpossibleInput naming a size, feed or density that is below zero, or `collectedShare` outside 0 to 1
 *
 * @remarks
 * Range: none; a mass balance.
 * Outside: not applicable.
 * Leaves out: time without cutting; the user gives running hours of cutting.
 * Limits: a share of 0 gives 0.
 * Basis: from-memory (mass balance).
 * Source: none, mass balance.
 * Checked: test/reference/dust-rate.test.ts (hand calculation).
 *
 * @example
 * ```ts
 * dustRate({ width_m: 0.006, depth_m: 0.003, feed_ms: 0.05, density_kgm3: 700, collectedShare: 0.9 }); // 0.000567
 * ```
 */
export function dustRate(cut: Cut): number {
  const area_m2 = requireNotNegative('width_m', cut.width_m) * requireNotNegative('depth_m', cut.depth_m);
  const removed_m3s = area_m2 * requireNotNegative('feed_ms', cut.feed_ms);
  const share = requireBetween('collectedShare', cut.collectedShare, 0, 1);
  return removed_m3s * requireNotNegative('density_kgm3', cut.density_kgm3) * share;
}

/** A bin that fills. */
export interface FillingBin {
  /** Volume of the bin [m3]. */
  readonly volume_m3: number;
  /** Share of it to fill before it is emptied, above 0 to 1 [-]. */
  readonly fillShare: number;
  /** Loose density of what lies in it [kg/m3]. */
  readonly bulkDensity_kgm3: number;
  /** Dust that reaches the separator [kg/s]. */
  readonly dust_kgs: number;
  /** Share of it that the separator catches, 0 to 1 [-]. */
  readonly catchShare: number;
}

/**
 * Running time until a bin is full.
 *
 * `t = V f rho_bulk/(M E)`.
 *
 * @param bin - volume [m3], bulk density [kg/m3], dust [kg/s] and shares [-]
 * @returns `t` of cutting time [s], or null where nothing falls into it
 * @throws ImpossibleInput naming `volume_m3` or `bulkDensity_kgm3` not above zero, `dust_kgs` below zero, a share
 * outside 0 to 1, or `fillShare` of 0
 *
 * @remarks
 * Range: none; a mass balance.
 * Outside: not applicable.
 * Leaves out: packing under the vortex, which may double the bulk density. A heap near the cone is blown up again: do
 * not fill to the brim.
 * Limits: twice the dust fills it in half the time.
 * Basis: from-memory (mass balance).
 * Source: none, mass balance.
 * Checked: test/reference/dust-rate.test.ts (hand calculation).
 *
 * @example
 * ```ts
 * binFillTime({ volume_m3: 0.06, fillShare: 0.8, bulkDensity_kgm3: 150, dust_kgs: 0.001, catchShare: 0.96 }); // 7500
 * ```
 */
export function binFillTime(bin: FillingBin): number | null {
  const volume_m3 = requirePositive('volume_m3', bin.volume_m3);
  const fill = requireBetween('fillShare', requirePositive('fillShare', bin.fillShare), 0, 1);
  const bulk = requirePositive('bulkDensity_kgm3', bin.bulkDensity_kgm3);
  const caught_kgs =
    requireNotNegative('dust_kgs', bin.dust_kgs) * requireBetween('catchShare', bin.catchShare, 0, 1);
  const time_s = (volume_m3 * fill * bulk) / caught_kgs;
  return Number.isFinite(time_s) ? time_s : null;
}
