import { normalDraws } from '../../quantities/random.ts';
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
 * Basis: published (a method; its scope read).
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
