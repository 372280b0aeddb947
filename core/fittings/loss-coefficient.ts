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
 * @returns the coefficient on the wanted velocity pressure
 * @throws ImpossibleInput naming an area that is not above zero
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
