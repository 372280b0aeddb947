/** First-order shares of the variance of one answer, by the least-squares plane through its samples. */
export interface Shares {
  /** For each draw [-]. */
  readonly share: Float64Array;
  /** Standard error of each from the number of samples [-]. */
  readonly error: Float64Array;
  /** Sum of them: the share of the variance that the plane explains [-]. */
  readonly explained: number;
}

/**
 * The planes of many answers over the same draws: the normal equations are laid out and factorised once.
 *
 * With independent draws `x` of known variance `v` and `y = b0 + sum b x + e`, the first-order share of a draw,
 * `V(E(y | x)) / V(y)` (Saltelli and others, Global Sensitivity Analysis: The Primer, Wiley, 2008, ch. 1 and 4, from
 * memory), is `b^2 v / (sum b^2 v + s^2)`, `s^2` being the variance that the plane leaves. What of `y` is curved in
 * one draw is left with `s^2`, so a share is low by that; `explained` tells by how much at most.
 *
 * The plane is used rather than plain squared correlations because those scatter by `1/n` for every draw that does
 * nothing, and by the root of `n` through all the others; here only what the plane leaves makes them scatter.
 */
export class Planes {
  private readonly factor: Float64Array;
  private readonly means: Float64Array;
  private readonly variances: Float64Array;
  private readonly count: number;

  /**
   * @param draws - a row of numbers for each draw, one for each sample; independent of one another
   * @param used - number of the samples that have an answer
   */
  constructor(
    private readonly draws: readonly Float64Array[],
    private readonly used: Int32Array,
  ) {
    const p = draws.length;
    const n = used.length;
    this.count = n;
    this.means = new Float64Array(p);
    draws.forEach((row, j) => {
      let sum = 0;
      for (let k = 0; k < n; k++) sum += row[used[k]!]!;
      this.means[j] = n > 0 ? sum / n : 0;
    });
    this.factor = new Float64Array(p * p);
    this.variances = new Float64Array(p);
    for (let i = 0; i < p; i++) {
      for (let j = 0; j <= i; j++) {
        let sum = 0;
        const a = draws[i]!;
        const b = draws[j]!;
        const aMean = this.means[i]!;
        const bMean = this.means[j]!;
        for (let k = 0; k < n; k++) sum += (a[used[k]!]! - aMean) * (b[used[k]!]! - bMean);
        this.factor[i * p + j] = sum;
      }
      this.variances[i] = n > 1 ? this.factor[i * p + i]! / (n - 1) : 0;
    }
    this.factorise();
  }

  /** Cholesky factor of the sums of products, in place; a draw that never moves, or follows from others, is left out. */
  private factorise(): void {
    const { factor: l } = this;
    const p = this.draws.length;
    for (let j = 0; j < p; j++) {
      const own = l[j * p + j]!;
      let d = own;
      for (let k = 0; k < j; k++) d -= l[j * p + k]! ** 2;
      const root = d > 1e-9 * own && own > 0 ? Math.sqrt(d) : 0;
      l[j * p + j] = root;
      for (let i = j + 1; i < p; i++) {
        let sum = l[i * p + j]!;
        for (let k = 0; k < j; k++) sum -= l[i * p + k]! * l[j * p + k]!;
        l[i * p + j] = root > 0 ? sum / root : 0;
      }
    }
  }

  /** Shares of one answer, given for every sample; null where too few samples have one, or it does not vary. */
  of(answer: Float64Array): Shares | null {
    const { factor: l, used, draws, means, variances, count: n } = this;
    const p = draws.length;
    if (n < p + 3) return null;
    let mean = 0;
    for (let k = 0; k < n; k++) mean += answer[used[k]!]! / n;
    const b = new Float64Array(p);
    let total = 0;
    for (let k = 0; k < n; k++) total += (answer[used[k]!]! - mean) ** 2;
    if (!(total > 1e-20 * n * mean * mean)) return null;
    for (let j = 0; j < p; j++) {
      const row = draws[j]!;
      let sum = 0;
      for (let k = 0; k < n; k++) sum += (row[used[k]!]! - means[j]!) * (answer[used[k]!]! - mean);
      b[j] = sum;
    }
    let explainedSquares = 0;
    for (let i = 0; i < p; i++) {
      for (let k = 0; k < i; k++) b[i]! -= l[i * p + k]! * b[k]!;
      b[i] = l[i * p + i]! > 0 ? b[i]! / l[i * p + i]! : 0;
      explainedSquares += b[i]! ** 2;
    }
    for (let i = p - 1; i >= 0; i--) {
      for (let k = i + 1; k < p; k++) b[i]! -= l[k * p + i]! * b[k]!;
      b[i] = l[i * p + i]! > 0 ? b[i]! / l[i * p + i]! : 0;
    }
    const left = Math.max(0, total - explainedSquares) / (n - p - 1);
    let variance = left;
    for (let j = 0; j < p; j++) variance += b[j]! ** 2 * variances[j]!;
    const share = new Float64Array(p);
    const error = new Float64Array(p);
    let explained = 0;
    for (let j = 0; j < p; j++) {
      share[j] = (b[j]! ** 2 * variances[j]!) / variance;
      explained += share[j]!;
    }
    for (let j = 0; j < p; j++) error[j] = shareError(share[j]!, left / variance, n);
    return { share, error, explained };
  }
}

/** Standard error of `b^2 v / V` where `b` has that of a slope, `left / (n v)`; its square keeps a share of zero honest. */
function shareError(share: number, left: number, n: number): number {
  const slope = left / n;
  return Math.sqrt(4 * share * slope + 2 * slope * slope);
}
