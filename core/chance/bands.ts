import type { Band } from './chance.ts';

/** Shares of the samples below the three figures of a band. */
const BAND = [0.05, 0.5, 0.95] as const;

/**
 * Quantile of sorted numbers, straight between neighbours (the seventh definition of Hyndman and Fan, The American
 * Statistician 50, 1996).
 *
 * @param sorted - at least one number, rising
 * @param share - 0 to 1 [-]
 */
export function quantileOf(sorted: Float64Array, share: number): number {
  const at = share * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low]! + (at - low) * (sorted[high]! - sorted[low]!);
}

/** Band of one figure over the samples that have one; null where none has. */
export function bandOf(values: Float64Array, used: Int32Array): Band | null {
  if (used.length === 0) return null;
  const sorted = new Float64Array(used.length);
  used.forEach((k, i) => (sorted[i] = values[k]!));
  sorted.sort();
  const [low, middle, high] = BAND.map((share) => quantileOf(sorted, share));
  return { low: low!, middle: middle!, high: high! };
}

/**
 * Standard error of a share that was counted, from the number of samples alone.
 *
 * With two cases of either kind added, `p = (k + 2) / (n + 4)`, so that a share of none or of all is not said to be
 * certain (Agresti and Coull, The American Statistician 52, 1998; from memory).
 *
 * @param count - samples in which it holds
 * @param samples - all samples
 */
export function shareError(count: number, samples: number): number {
  const p = (count + 2) / (samples + 4);
  return Math.sqrt((p * (1 - p)) / (samples + 4));
}
