import { drawUnknowns } from './estimate.ts';
import type { CurveEstimate } from './estimate.ts';

/** A band about a curve and the curves that it was taken from, all over the same flows. */
export interface CurveBand {
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly samples: readonly (readonly number[])[];
}

/** Share of the draws below the band, and above it [-]. */
export const BAND_TAIL = 0.05;

/**
 * Draws from a normal distribution, the same for the same seed.
 *
 * Two uniform numbers of a 32-bit mixing generator make a pair by the polar form, `sqrt(-2 ln a) cos(2 pi b)`.
 *
 * @param seed - any whole number [-]
 * @returns a function that gives the next draw, mean 0 and deviation 1 [-]
 * @throws none: every seed serves
 *
 * @remarks
 * Range: some millions of draws; its period is 2^32.
 * Outside: it repeats.
 * Leaves out: none: it is no cipher and need not be.
 * Limits: mean tends to 0, variance to 1.
 * Basis: published (a method, not a relation).
 * Source: Box and Muller, Ann. Math. Statist. 29 (1958) 610.
 * Checked: test/reference/fan-fit.test.ts, test/core/fan/reduce/band.test.ts.
 *
 * @example
 * ```ts
 * normalDraws(7)() === normalDraws(7)(); // true
 * ```
 */
export function normalDraws(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}

/**
 * The band in which a curve lies nine times in ten, with the whole curves that it was taken from.
 *
 * Curves are drawn from what the points leave possible; at each flow the band runs from the value with a twentieth of
 * the draws below it to that with a twentieth above.
 *
 * @param estimate - made by `estimateCurve`
 * @param flows - flows of the curve [-]
 * @param draws - curves to draw [-], two or more
 * @param seed - of the draws [-]
 * @returns band and curves, in the unit of the curve's values
 * @throws none: fewer than two draws count as two
 *
 * @remarks
 * Range: as `estimateCurve`; with 400 draws an edge is known to about a tenth of the band's half width.
 * Outside: none: it answers for every flow.
 * Leaves out: what `estimateCurve` leaves out.
 * Limits: points without error on every unknown give a band without width.
 * Basis: from-memory (page not seen).
 * Source: JCGM 101:2008 (propagation of distributions by Monte Carlo).
 * Checked: test/reference/fan-fit.test.ts, test/core/fan/reduce/band.test.ts.
 *
 * @example
 * ```ts
 * const line = { unknowns: 1, evaluate: (x: number, u: ArrayLike<number>, out: Float64Array) => ((out[1] = 1), u[0]!) };
 * curveBand(estimateCurve(line, []), [0], 100000, 1).high[0]; // 1.64
 * ```
 */
export function curveBand(
  estimate: CurveEstimate,
  flows: readonly number[],
  draws: number,
  seed: number,
): CurveBand {
  const next = normalDraws(seed);
  const out = new Float64Array(estimate.family.unknowns + 1);
  const samples = Array.from({ length: Math.max(2, Math.floor(draws)) }, () => {
    const unknowns = drawUnknowns(
      estimate,
      Array.from({ length: estimate.unknowns.length }, () => next()),
    );
    return flows.map((flow) => estimate.family.evaluate(flow, unknowns, out));
  });
  const low: number[] = [];
  const high: number[] = [];
  flows.forEach((_, i) => {
    const column = samples.map((sample) => sample[i]!).sort((a, b) => a - b);
    low.push(quantile(column, BAND_TAIL));
    high.push(quantile(column, 1 - BAND_TAIL));
  });
  return { low, high, samples };
}

/** Value below which a share of a sorted list lies, straight between neighbours. */
function quantile(sorted: readonly number[], share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const above = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return sorted[below]! + (place - below) * (above - sorted[below]!);
}
