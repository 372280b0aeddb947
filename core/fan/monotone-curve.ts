import { ImpossibleInput, requireFinite } from '../quantities/impossible-input.ts';

/** A compiled curve: points and the slope at each; made by `monotoneCurve`, read by `curveValueAndSlope`. */
export interface MonotoneCurve {
  /** Abscissas, strictly increasing [unit of x]. */
  readonly x: readonly number[];
  /** Ordinates [unit of y]. */
  readonly y: readonly number[];
  /** Slope dy/dx at each point [unit of y per unit of x]. */
  readonly slopes: readonly number[];
}

/**
 * Smooth curve through points that rises and falls only where the points do.
 *
 * Piecewise cubic Hermite. With secants `m0`, `m1` over the neighbouring spans `h0`, `h1`, the slope at a point is
 * their weighted harmonic mean, `(w0 + w1)/d = w0/m0 + w1/m1` with `w0 = 2 h1 + h0` and `w1 = h1 + 2 h0`, and zero
 * where the secants differ in sign. The end slopes are three-point estimates held to the sign of the end secant.
 *
 * @param x - abscissas [unit of x], at least two, strictly increasing
 * @param y - ordinates [unit of y], as many as `x`
 * @returns the points with the slope at each
 * @throws ImpossibleInput naming the point: not finite, not above the one before it, or too close to it
 *
 * @remarks
 * Range: any finite points; two points give the straight line through them.
 * Outside: none: the points are the range; `curveValueAndSlope` tells how it goes on beyond them.
 * Leaves out: a continuous second derivative; scatter (the curve runs through each point, good or bad).
 * Limits: points on a straight line give that line; a flat span stays flat; a peak among the points stays the peak.
 * Basis: from-memory (papers not seen; formulas confirmed against computed curves).
 * Source: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5, 1984; end slopes after Moler, Numerical Computing with
 *   Matlab, SIAM, 2004, chapter 3.
 * Checked: test/reference/fan.test.ts, test/core/fan/monotone-curve.test.ts.
 *
 * @example
 * ```ts
 * monotoneCurve([0, 1, 2], [0, 1, 4]).slopes[1]; // 1.5
 * ```
 */
export function monotoneCurve(x: readonly number[], y: readonly number[]): MonotoneCurve {
  const n = x.length;
  if (n < 2) throw new ImpossibleInput('x', `a list of ${n}`, 'at least two points');
  if (y.length !== n) throw new ImpossibleInput('y', `a list of ${y.length}`, `as long as x, which has ${n}`);
  for (let i = 0; i < n; i++) {
    requireFinite(`x[${i}]`, x[i]!);
    requireFinite(`y[${i}]`, y[i]!);
    if (i > 0 && !(x[i]! > x[i - 1]!)) {
      throw new ImpossibleInput(`x[${i}]`, x[i]!, `above the point before it, ${x[i - 1]}`);
    }
  }
  const spans: number[] = [];
  const secants: number[] = [];
  for (let i = 0; i + 1 < n; i++) {
    const span = x[i + 1]! - x[i]!;
    const secant = (y[i + 1]! - y[i]!) / span;
    // Small multiples of both are formed below and in the evaluation: they must stay finite too.
    if (!Number.isFinite(span * 4) || !Number.isFinite(secant * 32)) {
      throw new ImpossibleInput(
        `x[${i + 1}]`,
        x[i + 1]!,
        'at a distance from its neighbour that gives a finite slope',
      );
    }
    spans.push(span);
    secants.push(secant);
  }
  return { x: [...x], y: [...y], slopes: slopesAtPoints(spans, secants) };
}

function slopesAtPoints(spans: readonly number[], secants: readonly number[]): number[] {
  const last = secants.length - 1;
  if (last === 0) return [secants[0]!, secants[0]!];
  const slopes = [endSlope(spans[0]!, spans[1]!, secants[0]!, secants[1]!)];
  for (let i = 1; i <= last; i++) {
    const [h0, h1, m0, m1] = [spans[i - 1]!, spans[i]!, secants[i - 1]!, secants[i]!];
    if (Math.sign(m0) !== Math.sign(m1) || m0 === 0) {
      slopes.push(0);
      continue;
    }
    const w0 = 2 * h1 + h0;
    const w1 = h1 + 2 * h0;
    slopes.push(1 / ((w0 / m0 + w1 / m1) / (w0 + w1)));
  }
  slopes.push(endSlope(spans[last]!, spans[last - 1]!, secants[last]!, secants[last - 1]!));
  return slopes;
}

/** Three-point slope at an end; `h0`, `m0` are the span and secant at that end, `h1`, `m1` the next ones. */
function endSlope(h0: number, h1: number, m0: number, m1: number): number {
  const slope = ((2 * h0 + h1) * m0 - h0 * m1) / (h0 + h1);
  if (Math.sign(slope) !== Math.sign(m0)) return 0;
  if (Math.sign(m0) !== Math.sign(m1) && Math.abs(slope) > 3 * Math.abs(m0)) return 3 * m0;
  return slope;
}

/**
 * Value and slope of a compiled curve at one place, written into `out` so that a solver's inner loop allocates nothing.
 *
 * Between points, the cubic that meets both points and both slopes. Outside the ends, the straight line along the end
 * slope, so value and slope stay continuous; whether such a value may be used is the caller's decision.
 *
 * @param curve - made by `monotoneCurve`
 * @param x - place [unit of x]
 * @param out - receives the value in `out[0]` [unit of y] and the slope in `out[1]` [unit of y per unit of x]
 * @returns nothing; see `out`
 * @throws ImpossibleInput if `x` is not finite
 *
 * @remarks
 * Range: between the first and the last point of the curve.
 * Outside: continued along the end slope, and nothing reports it: the caller compares with its own margin.
 * Leaves out: none: it is exact for the curve as compiled.
 * Limits: at a point it gives that point and its compiled slope.
 * Basis: published (the cubic Hermite basis is textbook algebra).
 * Source: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5, 1984.
 * Checked: test/reference/fan.test.ts, test/core/fan/monotone-curve.test.ts.
 *
 * @example
 * ```ts
 * const out = new Float64Array(2);
 * curveValueAndSlope(monotoneCurve([0, 1, 2], [0, 1, 4]), 1.5, out);
 * out[0]; // 2.1875
 * out[1]; // 3.125
 * ```
 */
export function curveValueAndSlope(curve: MonotoneCurve, x: number, out: Float64Array): void {
  requireFinite('x', x);
  const xs = curve.x;
  const last = xs.length - 1;
  if (x <= xs[0]! || x >= xs[last]!) {
    const end = x <= xs[0]! ? 0 : last;
    out[0] = curve.y[end]! + curve.slopes[end]! * (x - xs[end]!);
    out[1] = curve.slopes[end]!;
    return;
  }
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (xs[middle]! <= x) low = middle;
    else high = middle;
  }
  const h = xs[high]! - xs[low]!;
  const s = x - xs[low]!;
  const m = (curve.y[high]! - curve.y[low]!) / h;
  const d0 = curve.slopes[low]!;
  const d1 = curve.slopes[high]!;
  // Cubic in Newton form about the left point; t instead of powers of 1/h keeps very short spans finite.
  const t = s / h;
  const second = 3 * m - 2 * d0 - d1;
  const third = d0 + d1 - 2 * m;
  out[0] = curve.y[low]! + s * (d0 + t * (second + t * third));
  out[1] = d0 + t * (2 * second + t * 3 * third);
}
