import { requireNotNegative } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { Sourced } from '../quantities/sourced.ts';

/** Constant of solidsMultiplier: 0.2 to 0.5 for grains, the middle taken. */
export const SOLIDS_LOSS_K: Sourced & { readonly value: number; readonly span: readonly [number, number] } = {
  value: 0.3,
  span: [0.2, 0.5],
  source: 'Gasterstaedt 1924, via Perry; not sure of it',
  basis: 'from-memory',
};

/** Loads that a shop carries; the line was drawn for light loads of grain. */
export const SOLIDS_LOADING_RANGE: ValidRange = { 'loading ratio': { high: 5, unit: '-' } };

/**
 * Factor by which carried dust raises the pressure drop of a run.
 *
 * `dP/dPair = 1 + K Ms/Ma`.
 *
 * @param loading - `Ms/Ma`, mass flow of dust over that of air, zero or more [-]
 * @param k - `K`, such as SOLIDS_LOSS_K.value, zero or more [-]
 * @returns the factor [-], 1 or more
 * @throws ImpossibleInput naming `loading` or `k`: not finite or below zero
 *
 * @remarks
 * Range: dilute conveying; as data in SOLIDS_LOADING_RANGE. Shops carry 0.01 to 0.3.
 * Outside: the value is still returned.
 * Leaves out: lifting, the feed point where dust is brought to speed, pipe size and velocity.
 * Limits: no dust gives 1. `K` is for grains and chips; for dust of 0.15 mm Rhodes' line comes to a `K` near 4, and no
 * measurement was found that decides.
 * Basis: from-memory (not sure of it).
 * Source: Gasterstaedt 1924, via Perry.
 * Checked: test/reference/conveying-line.test.ts (against what Rhodes' full line adds).
 *
 * @example
 * ```ts
 * solidsMultiplier(0.1, 0.3); // 1.03
 * ```
 */
export function solidsMultiplier(loading: number, k: number): number {
  return 1 + requireNotNegative('k', k) * requireNotNegative('loading', loading);
}
