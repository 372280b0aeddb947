import { requirePositive } from '../quantities/impossible-input.ts';

/**
 * Flow into an enclosure that holds a wanted velocity inwards through its gaps.
 *
 * `Q = Vgap Aopen`.
 *
 * @param gapVelocity_ms - `Vgap`, mean velocity inwards through the gaps [m/s]
 * @param openArea_m2 - `Aopen`, area of all gaps together [m2]
 * @returns flow [m3/s]
 * @throws ImpossibleInput naming an argument not above zero
 *
 * @remarks
 * Range: none: continuity.
 * Outside: not applicable.
 * Leaves out: dust that a cutter throws against a gap; so close the side towards which it throws.
 * Limits: none beyond proportion.
 * Basis: from-memory (continuity).
 * Source: HSE, HSG258; ACGIH, Industrial Ventilation: enclosures.
 * Checked: test/reference/capture.test.ts.
 *
 * @example
 * ```ts
 * enclosureFlow(1, 0.02); // 0.02
 * ```
 */
export function enclosureFlow(gapVelocity_ms: number, openArea_m2: number): number {
  return requirePositive('gapVelocity_ms', gapVelocity_ms) * requirePositive('openArea_m2', openArea_m2);
}

/**
 * Mean velocity inwards through the gaps of an enclosure.
 *
 * `Vgap = Q / Aopen`.
 *
 * @param flow_m3s - `Q`, flow drawn from the enclosure [m3/s]
 * @param openArea_m2 - `Aopen`, area of all gaps together [m2]
 * @returns velocity [m/s]
 * @throws ImpossibleInput naming an argument not above zero
 *
 * @remarks
 * Range: none: continuity.
 * Outside: not applicable.
 * Leaves out: uneven share among the gaps.
 * Limits: none beyond proportion.
 * Basis: from-memory (continuity).
 * Source: HSE, HSG258; ACGIH, Industrial Ventilation: enclosures.
 * Checked: test/reference/capture.test.ts.
 *
 * @example
 * ```ts
 * enclosureVelocity(0.02, 0.02); // 1
 * ```
 */
export function enclosureVelocity(flow_m3s: number, openArea_m2: number): number {
  return requirePositive('flow_m3s', flow_m3s) / requirePositive('openArea_m2', openArea_m2);
}
