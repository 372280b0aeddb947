import { ImpossibleInput } from '../../quantities/impossible-input.ts';

/** By how much one source of error, at one standard error, shifts a point: along the flow and in its value. */
export interface Shift {
  /** In the flow coefficient [-]. */
  readonly flow: number;
  /** In the pressure or power coefficient [-]. */
  readonly value: number;
}

/** A measured point of a curve in coefficients, with what may be wrong with it. */
export interface MeasuredPoint {
  /** Flow coefficient [-]. */
  readonly flow: number;
  /** Pressure or power coefficient [-]. */
  readonly value: number;
  /** Errors of this point alone. */
  readonly own: readonly Shift[];
  /** Errors that it shares with others, one for each common source, in the same order for every point. */
  readonly common: readonly Shift[];
}

/** A family of curves over the flow coefficient, its unknowns scaled so that each is 0 with a deviation of 1 before anything is measured. */
export interface CurveFamily {
  /** Number of unknowns [-]. */
  readonly unknowns: number;
  /** Value at a flow; the slope over flow goes into `out[0]`, those over the unknowns into `out[1]` on. */
  evaluate(flow: number, unknowns: ArrayLike<number>, out: Float64Array): number;
}

/** The curve of a family that points make most likely, and how sure that is. */
export interface CurveEstimate {
  readonly family: CurveFamily;
  /** Unknowns of the family, then one for each common source [-]. */
  readonly unknowns: Float64Array;
  /** Lower triangle of the Cholesky factor of the inverse covariance, row by row [-]. */
  readonly factor: readonly Float64Array[];
  /** Of each point: distance from the curve through the others, in standard errors [-]. */
  readonly distances: readonly number[];
}

const MOST_STEPS = 60;
/** A point is never surer than this share of the largest value [-]; keeps figures without error from dividing by zero. */
const LEAST_ERROR = 1e-6;

/**
 * The most likely curve of a family through measured points, and how sure it is.
 *
 * Each point says `value = f(flow) + common + own`. Errors along the flow count by the slope of the curve (effective
 * variance): a source that shifts a point by `(dx, dy)` shifts its distance from the curve by `dy - f' dx`, so that a
 * source which moves the point along the curve does no harm. Own errors make the weight of the point; common ones are
 * unknowns of their own, expected 0 with a deviation of 1. The unknowns that make the sum of squares least are found by
 * Gauss-Newton steps, damped where the sum would rise; the covariance is that of the curve's tangent there.
 *
 * @param family - curves and the meaning of their unknowns
 * @param points - measured points, any number
 * @returns unknowns, factor of their inverse covariance, and each point's distance from the curve through the others
 * @throws ImpossibleInput naming `points` where a figure is not finite
 *
 * @remarks
 * Range: errors small enough that the curve is nearly straight over them.
 * Outside: the answer is still given; its covariance is then rough.
 * Leaves out: errors that are not like a normal distribution; a gross one pulls the curve and is told by its distance.
 * Limits: no point gives the family's middle; a point without error is met.
 * Basis: from-memory (page not seen).
 * Source: Gauss-Newton with a prior, as in Tarantola, Inverse Problem Theory, 2005, chapter 3; effective variance after
 *   Orear, Am. J. Phys. 50 (1982) 912.
 * Checked: test/reference/fan-fit.test.ts, test/core/fan/reduce/estimate.test.ts.
 *
 * @example
 * ```ts
 * const line = { unknowns: 1, evaluate: (x: number, u: ArrayLike<number>, out: Float64Array) => ((out[1] = 1), u[0]!) };
 * const point = { flow: 0, value: 2, own: [{ flow: 0, value: 1 }], common: [] };
 * estimateCurve(line, [point]).unknowns[0]; // 1.000
 * ```
 */
export function estimateCurve(family: CurveFamily, points: readonly MeasuredPoint[]): CurveEstimate {
  const sources = points[0]?.common.length ?? 0;
  const size = family.unknowns + sources;
  const scale = points.reduce((most, point) => Math.max(most, Math.abs(point.value)), 0);
  if (!Number.isFinite(scale) || points.some((point) => !Number.isFinite(point.flow)))
    throw new ImpossibleInput('points', scale, 'finite');
  let unknowns = new Float64Array(size);
  let state = linearise(family, points, unknowns, scale);
  let damping = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const factor = choleskyOf(state.normal, damping);
    const change = solveWith(factor, state.gradient);
    const next = unknowns.map((value, i) => value + change[i]!);
    const after = linearise(family, points, next, scale);
    const small = change.every((value) => Math.abs(value) < 1e-9);
    // weights change along with the slope, so the sums are compared under the weights of before
    if (small || costOf(after, state.weights) <= costOf(state, state.weights)) {
      unknowns = next;
      state = after;
      damping = damping < 1e-3 ? 0 : damping / 10;
      if (small) break;
    } else damping = Math.max(damping * 10, 1e-2);
  }
  const factor = choleskyOf(state.normal, 0);
  const distances = points.map((_, i) => {
    const row = state.rows[i]!;
    const known = squareOf(forward(factor, row)) * state.weights[i]!;
    return (state.residuals[i]! * Math.sqrt(state.weights[i]!)) / Math.sqrt(Math.max(1 - known, 1e-9));
  });
  return { family, unknowns, factor, distances };
}

interface Linear {
  readonly rows: readonly Float64Array[];
  readonly residuals: readonly number[];
  readonly weights: readonly number[];
  readonly unknowns: Float64Array;
  readonly normal: readonly Float64Array[];
  readonly gradient: Float64Array;
}

function linearise(
  family: CurveFamily,
  points: readonly MeasuredPoint[],
  unknowns: Float64Array,
  scale: number,
): Linear {
  const size = unknowns.length;
  const normal = Array.from({ length: size }, (_, i) => {
    const row = new Float64Array(size);
    row[i] = 1;
    return row;
  });
  const gradient = unknowns.map((value) => -value);
  const out = new Float64Array(family.unknowns + 1);
  const rows: Float64Array[] = [];
  const residuals: number[] = [];
  const weights: number[] = [];
  for (const point of points) {
    let residual = point.value - family.evaluate(point.flow, unknowns, out);
    const slope = out[0]!;
    const row = new Float64Array(size);
    for (let j = 0; j < family.unknowns; j++) row[j] = out[j + 1]!;
    point.common.forEach((shift, c) => {
      const j = family.unknowns + c;
      row[j] = shift.value - slope * shift.flow;
      residual -= row[j]! * unknowns[j]!;
    });
    let variance = (LEAST_ERROR * scale) ** 2 + Number.MIN_VALUE;
    for (const shift of point.own) variance += (shift.value - slope * shift.flow) ** 2;
    const weight = 1 / variance;
    for (let i = 0; i < size; i++) {
      const weighted = row[i]! * weight;
      gradient[i]! += weighted * residual;
      for (let j = 0; j <= i; j++) normal[i]![j]! += weighted * row[j]!;
    }
    rows.push(row);
    residuals.push(residual);
    weights.push(weight);
  }
  return { rows, residuals, weights, unknowns, normal, gradient };
}

const squareOf = (values: Float64Array) => values.reduce((sum, value) => sum + value * value, 0);

const costOf = (state: Linear, weights: readonly number[]) =>
  squareOf(state.unknowns) + state.residuals.reduce((sum, r, i) => sum + r * r * weights[i]!, 0);

/** Factor `L` of `M + damping diag(M) = L L^T`, from the lower triangle of `M`; the prior keeps `M` above one. */
function choleskyOf(lower: readonly Float64Array[], damping: number): Float64Array[] {
  const size = lower.length;
  const factor = lower.map(() => new Float64Array(size));
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = lower[i]![j]! * (i === j ? 1 + damping : 1);
      for (let k = 0; k < j; k++) sum -= factor[i]![k]! * factor[j]![k]!;
      factor[i]![j] = i === j ? Math.sqrt(Math.max(sum, 1e-3)) : sum / factor[j]![j]!;
    }
  }
  return factor;
}

function forward(factor: readonly Float64Array[], right: Float64Array): Float64Array {
  const out = Float64Array.from(right);
  for (let i = 0; i < out.length; i++) {
    for (let j = 0; j < i; j++) out[i]! -= factor[i]![j]! * out[j]!;
    out[i]! /= factor[i]![i]!;
  }
  return out;
}

function backward(factor: readonly Float64Array[], right: Float64Array): Float64Array {
  const out = Float64Array.from(right);
  for (let i = out.length - 1; i >= 0; i--) {
    for (let j = i + 1; j < out.length; j++) out[i]! -= factor[j]![i]! * out[j]!;
    out[i]! /= factor[i]![i]!;
  }
  return out;
}

const solveWith = (factor: readonly Float64Array[], right: Float64Array) =>
  backward(factor, forward(factor, right));

/**
 * A curve drawn from those that the points leave possible.
 *
 * Unknowns `u + L^-T z` with `L L^T` the inverse covariance and `z` independent normal draws, so that draws have that
 * covariance.
 *
 * @param estimate - made by `estimateCurve`
 * @param normals - `z`, as many as the estimate has unknowns [-]
 * @returns unknowns of the family and of the common sources [-]
 * @throws none: an estimate is valid
 *
 * @remarks
 * Range: as `estimateCurve`.
 * Outside: none: any normals give a curve.
 * Leaves out: what `estimateCurve` leaves out.
 * Limits: normals of zero give the most likely curve.
 * Basis: from-memory (page not seen; linear algebra).
 * Source: standard way to draw from a normal distribution of given covariance.
 * Checked: test/reference/fan-fit.test.ts, test/core/fan/reduce/estimate.test.ts.
 *
 * @example
 * ```ts
 * const line = { unknowns: 1, evaluate: (x: number, u: ArrayLike<number>, out: Float64Array) => ((out[1] = 1), u[0]!) };
 * drawUnknowns(estimateCurve(line, []), [2])[0]; // 2
 * ```
 */
export function drawUnknowns(estimate: CurveEstimate, normals: ArrayLike<number>): Float64Array {
  const away = backward(estimate.factor, Float64Array.from(normals));
  return estimate.unknowns.map((value, i) => value + away[i]!);
}

/**
 * Standard error of the curve at one flow, or of the difference between two.
 *
 * `sqrt(g^T C g)` with the slopes `g` of the value over the unknowns (less those at the other flow) and their
 * covariance `C`.
 *
 * @param estimate - made by `estimateCurve`
 * @param flow - where [-]
 * @param against - the other flow [-]; null for the value itself
 * @returns standard error in the unit of the curve's values
 * @throws none: an estimate is valid
 *
 * @remarks
 * Range: as `estimateCurve`.
 * Outside: none: it answers for every flow.
 * Leaves out: what `estimateCurve` leaves out.
 * Limits: zero for the difference of a flow to itself.
 * Basis: from-memory (page not seen; propagation of errors).
 * Source: JCGM 100:2008 (guide to the expression of uncertainty), 5.2.
 * Checked: test/reference/fan-fit.test.ts, test/core/fan/reduce/estimate.test.ts.
 *
 * @example
 * ```ts
 * const line = { unknowns: 1, evaluate: (x: number, u: ArrayLike<number>, out: Float64Array) => ((out[1] = 1), u[0]!) };
 * curveError(estimateCurve(line, []), 0, null); // 1
 * ```
 */
export function curveError(estimate: CurveEstimate, flow: number, against: number | null): number {
  const { family, unknowns, factor } = estimate;
  const slopes = (at: number) => {
    const out = new Float64Array(family.unknowns + 1);
    family.evaluate(at, unknowns, out);
    return out;
  };
  const here = slopes(flow);
  const there = against === null ? null : slopes(against);
  const row = new Float64Array(unknowns.length);
  for (let j = 0; j < family.unknowns; j++) row[j] = here[j + 1]! - (there?.[j + 1] ?? 0);
  return Math.sqrt(squareOf(forward(factor, row)));
}
