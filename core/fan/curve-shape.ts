import type { FanCurve } from './fan-points.ts';

/** Slope over a span's secant (or the whole curve's) below which a flat stretch counts as flat, not as rising. */
const FLAT = 1e-12;

/** Share of the largest pressure by which a curve must rise to have a hump; less is the reading of a gauge (common practice, no source). */
export const HUMP_SHARE = 0.002;

/**
 * Tells whether a fan's curve has a hump deep enough to let it cross a system more than once.
 *
 * The pressure is looked at as it was given. A static pressure that never rises cannot make a second crossing: what
 * total pressure adds, the outlet's own velocity pressure, the system has to take up in full as well.
 *
 * @param curve - made by `fanCurve`
 * @returns true if the given pressure rises by more than HUMP_SHARE of its largest value between any two points
 * @throws none: a compiled fan is valid
 *
 * @remarks
 * Range: between the first and the last point; the curve follows its points without overshoot.
 * Outside: none: nothing is said about flows beyond the points.
 * Leaves out: a hump that the tests stepped over.
 * Limits: points that only fall give false, whatever the outlet's area.
 * Basis: from-memory (page not seen).
 * Source: AMCA 201, fan instability.
 * Checked: test/reference/fan-hump.test.ts, test/core/fan/fan-curve.test.ts.
 *
 * @example
 * ```ts
 * const points = [900, 1000, 0].map((pressure_Pa, i) => ({ flow_m3s: i / 10, pressure_Pa }));
 * const rated = { ratedSpeed_rpm: null, ratedDensity_kgm3: 1.2 };
 * hasHump(fanCurve({ pressureKind: 'static', outletArea_m2: 0.01, points, ...rated })); // true
 * ```
 */
export function hasHump(curve: FanCurve): boolean {
  let lowest = Infinity;
  let rise = 0;
  let largest = 0;
  for (const y of curve.pressure.y) {
    lowest = Math.min(lowest, y);
    rise = Math.max(rise, y - lowest);
    largest = Math.max(largest, Math.abs(y));
  }
  return rise > HUMP_SHARE * largest;
}

/**
 * Flow right of which a fan's total pressure only falls, at rated speed: the start of the working branch.
 *
 * The last place where the slope passes from rising to falling, found on each span from the quadratic slope; the first
 * point if total pressure never rises, the last if it still rises there.
 *
 * @param curve - made by `fanCurve`
 * @returns flow at rated speed [m3/s]
 * @throws none: a compiled fan is valid
 *
 * @remarks
 * Range: between the first and the last point.
 * Outside: none: the answer is always one of the flows between the points' ends.
 * Leaves out: a second hump further left, which may be higher.
 * Limits: points that only fall give the first flow.
 * Basis: from-memory (page not seen).
 * Source: AMCA 201, fan instability; the algebra is that of `monotoneCurve`.
 * Checked: test/reference/fan-hump.test.ts, test/core/fan/fan-curve.test.ts.
 *
 * @example
 * ```ts
 * const points = [900, 1000, 0].map((pressure_Pa, i) => ({ flow_m3s: i / 10, pressure_Pa }));
 * const rated = { ratedSpeed_rpm: null, ratedDensity_kgm3: 1.2 };
 * fallingFrom(fanCurve({ pressureKind: 'total', outletArea_m2: 0.01, points, ...rated })); // 0.1
 * ```
 */
export function fallingFrom(curve: FanCurve): number {
  const flat = flatSlope(curve);
  const flows = curve.pressure.x;
  for (let i = flows.length - 2; i >= 0; i--) {
    const { a, b, c, h } = slopeOnSpan(curve, i);
    if (c + h * (b + h * a) > flat) return flows[i + 1]!;
    const risingUpTo = lastRoot(a, b, c - flat, h);
    if (risingUpTo !== null) return flows[i]! + risingUpTo;
  }
  return flows[0]!;
}

/** A slope too small to count, from the curve's own scale. */
function flatSlope(curve: FanCurve): number {
  const { x, y } = curve.pressure;
  const tallest = y.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return (FLAT * tallest) / (x[x.length - 1]! - x[0]!);
}

/** Slope of total pressure on span `i` as `c + b s + a s^2`, with `s` from 0 to `h` the flow above the span's start. */
function slopeOnSpan(curve: FanCurve, i: number): { a: number; b: number; c: number; h: number } {
  const { x, y, slopes } = curve.pressure;
  const h = x[i + 1]! - x[i]!;
  const m = (y[i + 1]! - y[i]!) / h;
  const [d0, d1] = [slopes[i]!, slopes[i + 1]!];
  return {
    a: (3 * (d0 + d1 - 2 * m)) / (h * h),
    b: (2 * (3 * m - 2 * d0 - d1)) / h + 2 * curve.velocityFactor,
    c: d0 + 2 * curve.velocityFactor * x[i]!,
    h,
  };
}

/** Largest root of `c + b s + a s^2` in (0, h] where it turns from above to below zero; null if there is none. */
function lastRoot(a: number, b: number, c: number, h: number): number | null {
  let roots: number[];
  if (a === 0) {
    if (b === 0) return null;
    roots = [-c / b];
  } else {
    const square = b * b - 4 * a * c;
    if (square <= 0) return null;
    // The two roots without cancellation.
    const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(square));
    roots = q === 0 ? [0] : [q / a, c / q];
  }
  const turning = roots.filter((s) => s > 0 && s <= h && b + 2 * a * s < 0);
  return turning.length > 0 ? Math.max(...turning) : null;
}
