import type { FilterMedium } from '../catalogue/filter-media.ts';
import { ImpossibleInput, requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';
import { findOutside } from '../quantities/range.ts';
import type { Outside, ValidRange } from '../quantities/range.ts';

/** Clean medium and the air through it. */
export interface CleanFilter {
  /** `S_E` [Pa s/m]. */
  readonly drag_Pasm: number;
  /** `V`, flow over area, zero or more [m/s]. */
  readonly faceVelocity_ms: number;
}

/** Cake on a medium and the air through it. */
export interface FilterCake {
  /** `K2` [1/s]. */
  readonly cakeResistance_pers: number;
  /** `W`, mass of the cake over area, zero or more [kg/m2]. */
  readonly load_kgm2: number;
  /** `V`, flow over area, zero or more [m/s]. */
  readonly faceVelocity_ms: number;
}

/** Medium, cake and air. */
export interface LoadedFilter extends CleanFilter, FilterCake {}

/**
 * Velocity through a filter medium.
 *
 * `V = Q/A`, over the whole area of cloth or pleated paper, not of the housing.
 *
 * @param flow_m3s - `Q` [m3/s], zero or more
 * @param area_m2 - `A` [m2]
 * @returns `V` [m/s]
 * @throws ImpossibleInput naming `flow_m3s` below zero or `area_m2` not above zero
 *
 * @remarks
 * Range: none; a definition.
 * Outside: not applicable.
 * Leaves out: pleats that touch and bags that lie on each other.
 * Limits: no flow gives 0.
 * Basis: from-memory (continuity).
 * Source: EPA Air Pollution Control Cost Manual, 6th ed., Sec 6 Ch 1.
 * Checked: test/reference/filter.test.ts (3.5 fpm in SI).
 *
 * @example
 * ```ts
 * faceVelocity(0.15, 10); // 0.015
 * ```
 */
export function faceVelocity(flow_m3s: number, area_m2: number): number {
  return requireNotNegative('flow_m3s', flow_m3s) / requirePositive('area_m2', area_m2);
}

/**
 * Pressure drop of a filter medium without cake.
 *
 * `dP = S_E V`: the flow in the medium is laminar, so the drop is proportional to velocity.
 *
 * @param filter - drag [Pa s/m] and face velocity [m/s]
 * @returns `dP` [Pa]
 * @throws ImpossibleInput naming `drag_Pasm` or `faceVelocity_ms`: not finite or below zero
 *
 * @remarks
 * Range: face velocities of filters, millimetres to decimetres a second.
 * Outside: the value is still returned.
 * Leaves out: housing and inlet of the filter, which go as velocity squared.
 * Limits: proportional to velocity.
 * Basis: from-memory (chapter identified, page not seen).
 * Source: EPA Air Pollution Control Cost Manual, 6th ed., Sec 6 Ch 1, eqs 1.1-1.4.
 * Checked: test/reference/filter.test.ts.
 *
 * @example
 * ```ts
 * cleanFilterDrop({ drag_Pasm: 400, faceVelocity_ms: 0.02 }); // 8
 * ```
 */
export function cleanFilterDrop(filter: CleanFilter): number {
  const drag = requireNotNegative('drag_Pasm', filter.drag_Pasm);
  return drag * requireNotNegative('faceVelocity_ms', filter.faceVelocity_ms);
}

/**
 * Pressure drop of the cake on a filter.
 *
 * `dP = K2 W V`.
 *
 * @param cake - resistance [1/s], load [kg/m2] and face velocity [m/s]
 * @returns `dP` [Pa]
 * @throws ImpossibleInput naming `cakeResistance_pers`, `load_kgm2` or `faceVelocity_ms`: not finite or below zero
 *
 * @remarks
 * Range: cakes that are not crushed by the drop; published `K2` from 1.2e4 to 4e5 1/s.
 * Outside: the value is still returned.
 * Leaves out: dust that gets into the medium and stays; cake that falls off.
 * Limits: proportional to load and to velocity.
 * Basis: from-memory (chapter identified, page not seen).
 * Source: EPA Air Pollution Control Cost Manual, 6th ed., Sec 6 Ch 1, eqs 1.1-1.4.
 * Checked: test/reference/filter.test.ts.
 *
 * @example
 * ```ts
 * cakeDrop({ cakeResistance_pers: 100430, load_kgm2: 0.036, faceVelocity_ms: 0.02 }); // 72.31
 * ```
 */
export function cakeDrop(cake: FilterCake): number {
  const K2 = requireNotNegative('cakeResistance_pers', cake.cakeResistance_pers);
  const W = requireNotNegative('load_kgm2', cake.load_kgm2);
  return K2 * W * requireNotNegative('faceVelocity_ms', cake.faceVelocity_ms);
}

/**
 * Pressure drop of a filter with its cake.
 *
 * `dP = S_E V + K2 W V`.
 *
 * @param filter - drag [Pa s/m], cake resistance [1/s], load [kg/m2] and face velocity [m/s]
 * @returns `dP` [Pa]
 * @throws ImpossibleInput naming a field that is not finite or below zero
 *
 * @remarks
 * Range: as cleanFilterDrop and cakeDrop.
 * Outside: the value is still returned.
 * Leaves out: as cleanFilterDrop and cakeDrop.
 * Limits: no cake gives cleanFilterDrop.
 * Basis: published (the two terms read in Wang and others; EPA chapter identified, page not seen).
 * Source: EPA Air Pollution Control Cost Manual, 6th ed., Sec 6 Ch 1, eqs 1.1-1.4; Wang, Pereira and Hung, Air
 *   Pollution Control Engineering, 2004, p. 61.
 * Checked: test/reference/filter.test.ts.
 *
 * @example
 * ```ts
 * filterDrop({ drag_Pasm: 400, cakeResistance_pers: 100430, load_kgm2: 0.036, faceVelocity_ms: 0.02 }); // 80.31
 * ```
 */
export function filterDrop(filter: LoadedFilter): number {
  return cleanFilterDrop(filter) + cakeDrop(filter);
}

/**
 * Load of cake at which a filter reaches a pressure drop.
 *
 * filterDrop solved for the load: `W = (dP/V - S_E)/K2`, not below zero.
 *
 * @param filter - drag [Pa s/m], cake resistance [1/s] and face velocity [m/s]
 * @param drop_Pa - drop to reach, such as that at which to clean it [Pa]
 * @returns `W` [kg/m2]; 0 where the clean medium is already there
 * @throws ImpossibleInput naming `cakeResistance_pers`, `faceVelocity_ms` or `drop_Pa` not above zero, `drag_Pasm` below
 * zero
 *
 * @remarks
 * Range: as filterDrop.
 * Outside: the value is still returned.
 * Leaves out: that the flow falls as the cake grows; core/upkeep steps through that.
 * Limits: a drop equal to the clean one gives 0.
 * Basis: from-memory (as filterDrop).
 * Source: EPA Air Pollution Control Cost Manual, 6th ed., Sec 6 Ch 1, eqs 1.1-1.4.
 * Checked: test/reference/filter.test.ts.
 *
 * @example
 * ```ts
 * loadAtDrop({ drag_Pasm: 400, cakeResistance_pers: 100430, faceVelocity_ms: 0.02 }, 80.3096); // 0.036
 * ```
 */
export function loadAtDrop(filter: Omit<LoadedFilter, 'load_kgm2'>, drop_Pa: number): number {
  const K2 = requirePositive('cakeResistance_pers', filter.cakeResistance_pers);
  const V = requirePositive('faceVelocity_ms', filter.faceVelocity_ms);
  const drag = requireNotNegative('drag_Pasm', filter.drag_Pasm);
  const load_kgm2 = Math.max(0, (requirePositive('drop_Pa', drop_Pa) / V - drag) / K2);
  if (load_kgm2 === Infinity)
    throw new ImpossibleInput('faceVelocity_ms', V, 'larger: no load reaches the drop');
  return load_kgm2;
}

/**
 * Face velocities within which a medium is used, as a range for `findOutside`.
 *
 * The catalogue row's two velocities.
 *
 * @param medium - a row of FILTER_MEDIA, velocities in [m/s]
 * @returns the range of `face velocity`, bounds in m/s
 * @throws none
 *
 * @remarks
 * Range: none; it is one.
 * Outside: not applicable.
 * Leaves out: dust type; fine dust needs the lower end.
 * Limits: none; data.
 * Basis: common-practice (each row says more).
 * Source: the catalogue row.
 * Checked: test/reference/filter.test.ts (EPA's gas-to-cloth of sawdust).
 *
 * @example
 * ```ts
 * faceVelocityRange(FILTER_MEDIA['cartridge-pleated-polyester'])['face velocity']!.high; // 0.02
 * ```
 */
export function faceVelocityRange(medium: FilterMedium): ValidRange {
  return {
    'face velocity': { low: medium.faceVelocityLow_ms, high: medium.faceVelocityHigh_ms, unit: 'm/s' },
  };
}

/**
 * Checks a face velocity against what its medium is used at.
 *
 * Above the range fine dust is driven into the medium and through it; below, the filter is larger than it need be.
 *
 * @param medium - a row of FILTER_MEDIA
 * @param faceVelocity_ms - `V` [m/s], zero or more
 * @returns nothing found, or the one quantity that is outside [m/s]
 * @throws ImpossibleInput naming `faceVelocity_ms`: not finite or below zero
 *
 * @remarks
 * Range: faceVelocityRange of the medium.
 * Outside: reported, not refused.
 * Leaves out: dust type; fine dust needs the lower end.
 * Limits: the bounds themselves pass.
 * Basis: common-practice (each row says more).
 * Source: the catalogue row.
 * Checked: test/reference/filter.test.ts.
 *
 * @example
 * ```ts
 * faceVelocityLimit(FILTER_MEDIA['cartridge-pleated-polyester'], 0.05).length; // 1
 * ```
 */
export function faceVelocityLimit(medium: FilterMedium, faceVelocity_ms: number): Outside[] {
  requireNotNegative('faceVelocity_ms', faceVelocity_ms);
  return findOutside(faceVelocityRange(medium), { 'face velocity': faceVelocity_ms });
}
