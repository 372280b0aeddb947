import type { Sourced } from '../../quantities/sourced.ts';
import { requireFinite, requireNotNegative, requirePositive } from '../../quantities/impossible-input.ts';

/** How a gap to the cut-off edge stands against common practice. */
export type CutOffJudgement = 'close' | 'usual' | 'wide';

/**
 * Gap between a radial wheel and the cut-off edge of its housing, as a share of the wheel's diameter: below the first
 * figure the blades' tone is loud, above the last air leaks round past the edge.
 */
export const CUT_OFF_PRACTICE = {
  close: 0.05,
  usualTo: 0.1,
  wide: 0.12,
  source:
    'shop practice for radial wheels, no one source for the bounds; that a wider gap lowers the tone is in Neise, J. Sound Vib. 45 (1976), and tests of blowers span 6 to 12.5 % (Jadhav and Patil 2016)',
  basis: 'common-practice',
} as const satisfies Sourced & Record<'close' | 'usualTo' | 'wide', number>;

/**
 * Gap to the cut-off edge as a share of the wheel's diameter.
 *
 * `g / D`.
 *
 * @param gap_m - `g`, from the wheel to the cut-off edge [m], zero or more
 * @param wheelDiameter_m - `D` [m], above zero
 * @returns share [-]
 * @throws ImpossibleInput naming the parameter: gap below zero, diameter not above zero, or not finite
 *
 * @remarks
 * Range: any.
 * Outside: none: it is a ratio.
 * Leaves out: growth of the wheel at speed.
 * Limits: no gap gives zero.
 * Basis: none: a definition.
 * Source: the usual way to state the gap.
 * Checked: test/reference/rotor-gaps.test.ts, test/core/fan/rotor/gaps.test.ts.
 *
 * @example
 * ```ts
 * cutOffShare(0.016, 0.2); // 0.08
 * ```
 */
export function cutOffShare(gap_m: number, wheelDiameter_m: number): number {
  return requireNotNegative('gap_m', gap_m) / requirePositive('wheelDiameter_m', wheelDiameter_m);
}

/**
 * Judges a gap to the cut-off edge by common practice.
 *
 * Below 5 % of the diameter `close`, above 12 % `wide`, between them `usual` (5 to 10 % is what is mostly built).
 *
 * @param share - gap over wheel diameter [-], zero or more
 * @returns `close`, `usual` or `wide`
 * @throws ImpossibleInput naming `share`: below zero or not finite
 *
 * @remarks
 * Range: radial wheels in a scroll housing; bounds as data in CUT_OFF_PRACTICE.
 * Outside: axial and mixed wheels have no cut-off edge.
 * Leaves out: roundness and slant of the edge and the style of blade, which change the tone as much as the gap does.
 * Limits: the bounds themselves are usual.
 * Basis: common-practice (no one source; see CUT_OFF_PRACTICE).
 * Source: CUT_OFF_PRACTICE.
 * Checked: test/reference/rotor-gaps.test.ts, test/core/fan/rotor/gaps.test.ts.
 *
 * @example
 * ```ts
 * judgeCutOff(0.03); // 'close'
 * judgeCutOff(0.08); // 'usual'
 * ```
 */
export function judgeCutOff(share: number): CutOffJudgement {
  requireNotNegative('share', share);
  if (share < CUT_OFF_PRACTICE.close) return 'close';
  return share > CUT_OFF_PRACTICE.wide ? 'wide' : 'usual';
}

/**
 * Running gap that is left at the rim when the wheel has grown.
 *
 * `g - u`.
 *
 * @param gap_m - `g`, at rest [m], zero or more
 * @param growth_m - `u`, of the outer radius at speed [m], zero or more
 * @returns gap left [m]; zero or less means that the wheel rubs
 * @throws ImpossibleInput naming the parameter: below zero or not finite
 *
 * @remarks
 * Range: any.
 * Outside: none: it is a difference.
 * Leaves out: shake of shaft and bearings, wheel out of true, heat, creep; leave room for them too.
 * Limits: no growth leaves the gap.
 * Basis: none: a difference.
 * Source: hand calculation.
 * Checked: test/reference/rotor-gaps.test.ts, test/core/fan/rotor/gaps.test.ts.
 *
 * @example
 * ```ts
 * rimGapLeft(0.001, 0.0002); // 0.0008
 * ```
 */
export function rimGapLeft(gap_m: number, growth_m: number): number {
  return requireNotNegative('gap_m', gap_m) - requireNotNegative('growth_m', growth_m);
}

/**
 * How near a material is to the temperature at which it softens. Below it, plastic already loses strength and creeps.
 */
export const HEAT_MARGIN = {
  least_K: 20,
  source: 'no source; printed PLA creeps well below its softening point',
  basis: 'assumed',
} as const;

/**
 * Temperature that is left before a material softens.
 *
 * `T_s - T`.
 *
 * @param softening_K - `T_s`, softening point, such as the glass transition [K], above zero
 * @param temperature_K - `T`, of the wheel while it runs [K], above zero
 * @returns margin [K]; below zero it is soft already
 * @throws ImpossibleInput naming the parameter: not finite, or not above zero
 *
 * @remarks
 * Range: any; the least margin is HEAT_MARGIN.
 * Outside: none: it is a difference.
 * Leaves out: loss of strength below the softening point; moisture in nylon.
 * Limits: equal temperatures give zero.
 * Basis: none: a difference.
 * Source: hand calculation.
 * Checked: test/reference/rotor-gaps.test.ts, test/core/fan/rotor/gaps.test.ts.
 *
 * @example
 * ```ts
 * heatMargin(328.15, 313.15); // 15
 * ```
 */
export function heatMargin(softening_K: number, temperature_K: number): number {
  return requireFinite(
    'margin_K',
    requirePositive('softening_K', softening_K) - requirePositive('temperature_K', temperature_K),
  );
}
