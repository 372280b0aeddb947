import { requirePositive } from '../quantities/impossible-input.ts';

/** Which velocity pressure a loss coefficient multiplies. */
export type Reference = 'upstream' | 'downstream';

/** A total-pressure loss coefficient with the velocity that it refers to; it never travels without it. */
export interface LossCoefficient {
  /** Loss of total pressure over the velocity pressure at `on` [-]. */
  readonly k: number;
  readonly on: Reference;
}

/**
 * The same loss, referred to the other side's velocity pressure.
 *
 * Continuity at constant density gives `V1 A1 = V2 A2`, so `K1 = K2 (A1/A2)^2`.
 *
 * @param loss - coefficient and its present reference
 * @param on - the reference wanted
 * @param upstreamArea_m2 - `A1` [m2]
 * @param downstreamArea_m2 - `A2` [m2]
 * @returns the coefficient on the wanted velocity pressure [-]
 * @throws ImpossibleInput naming an area that is not above zero
 *
 * @remarks
 * Range: density the same on both sides, as in any fitting of a shop.
 * Outside: the value is still returned; at 15 kPa below the room density differs by 15 % from the room's, but hardly
 * between the two sides of one fitting.
 * Leaves out: nothing else; it changes how a loss is written, not the loss.
 * Limits: equal areas, or the reference that it has already, give the same coefficient.
 * Basis: from-memory (follows from continuity and the definition of the coefficient).
 * Source: continuity, `V1 A1 = V2 A2`.
 * Checked: test/reference/size-change.test.ts (both coefficients of the data); there and back in
 * test/core/fittings/coefficients.test.ts.
 *
 * @example
 * ```ts
 * rebase({ k: 0.25, on: 'upstream' }, 'downstream', 0.01, 0.02).k; // 1
 * ```
 */
export function rebase(
  loss: LossCoefficient,
  on: Reference,
  upstreamArea_m2: number,
  downstreamArea_m2: number,
): LossCoefficient {
  requirePositive('upstreamArea_m2', upstreamArea_m2);
  requirePositive('downstreamArea_m2', downstreamArea_m2);
  if (loss.on === on) return loss;
  const ratio = on === 'upstream' ? upstreamArea_m2 / downstreamArea_m2 : downstreamArea_m2 / upstreamArea_m2;
  return { k: loss.k * ratio * ratio, on };
}
