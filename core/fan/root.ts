import { ImpossibleInput } from '../quantities/impossible-input.ts';

/** Steps after which a search gives up narrowing; halving alone reaches the last digit of a double before. */
const MOST_STEPS = 200;

/**
 * Root of a continuous function between two places where its signs differ, down to rounding.
 *
 * Brent's method: each step is a secant or an inverse parabola if that narrows fast enough, else a halving.
 *
 * @param f - continuous function, finite between the bounds
 * @param left - one bound [unit of x]
 * @param right - the other bound [unit of x]
 * @returns the root [unit of x]
 * @throws ImpossibleInput if the signs at the bounds are equal
 *
 * @remarks
 * Range: any bracket.
 * Outside: none: without a bracket it throws.
 * Leaves out: further roots in the same bracket; it finds one of them.
 * Limits: a root at a bound is returned as it is.
 * Basis: published (a method, not a relation).
 * Source: Brent, Algorithms for Minimization without Derivatives, Prentice-Hall, 1973, chapter 4.
 * Checked: test/reference/root-search.test.ts, test/core/fan/intersections.test.ts.
 *
 * @example
 * ```ts
 * brentRoot((x: number) => x * x - 2, 1, 2); // 1.414213562373
 * ```
 */
export function brentRoot(f: (x: number) => number, left: number, right: number): number {
  let [a, b] = [left, right];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) throw new ImpossibleInput('right', right, 'where the function has the other sign');
  let [c, fc] = [a, fa];
  let step = b - a;
  let previous = step;
  for (let i = 0; i < MOST_STEPS && fb !== 0; i++) {
    if (fb > 0 === fc > 0) {
      [c, fc] = [a, fa];
      step = previous = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const tolerance = 2 * Number.EPSILON * Math.abs(b) + Number.MIN_VALUE;
    const half = (c - b) / 2;
    if (Math.abs(half) <= tolerance) break;
    const useful = Math.abs(previous) > tolerance && Math.abs(fa) > Math.abs(fb);
    const guess = useful ? interpolated(a, b, c, fa, fb, fc) : 0;
    const narrows = Math.abs(guess) < Math.min(1.5 * Math.abs(half), Math.abs(previous) / 2);
    if (narrows && guess * half > 0) [previous, step] = [step, guess];
    else step = previous = half;
    [a, fa] = [b, fb];
    b += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance;
    fb = f(b);
  }
  return b;
}

/** Step from `b` by the secant (two points) or the inverse parabola (three); 0 if it cannot be formed. */
function interpolated(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const s = fb / fa;
  const u = fa / fc;
  const r = fb / fc;
  const two = a === c;
  const p = two ? (c - b) * s : s * ((c - b) * u * (u - r) - (b - a) * (r - 1));
  const q = two ? 1 - s : (u - 1) * (r - 1) * (s - 1);
  const step = -p / q;
  return Number.isFinite(step) ? step : 0;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Where a function that dips once between two places is least.
 *
 * Golden section: three probes keep the least value between two larger ones and the bracket shrinks by 0.618 a step.
 *
 * @param f - continuous function with one dip between the bounds
 * @param left - lower bound [unit of x]
 * @param right - upper bound [unit of x]
 * @returns place of the least value [unit of x]
 * @throws none: it only compares values
 *
 * @remarks
 * Range: one dip; with several it finds one of them.
 * Outside: without a dip it ends at the bound where the function is least.
 * Leaves out: the last digits: a smooth dip is placed to about the square root of rounding, its value to rounding.
 * Limits: a sharp dip (two straight lines) is placed to rounding.
 * Basis: published (a method, not a relation).
 * Source: Kiefer, Sequential minimax search for a maximum, Proc. Amer. Math. Soc. 4, 1953.
 * Checked: test/reference/root-search.test.ts, test/core/fan/intersections.test.ts.
 *
 * @example
 * ```ts
 * leastBetween((x: number) => (x - 0.3) ** 2, 0, 1); // 0.300000
 * ```
 */
export function leastBetween(f: (x: number) => number, left: number, right: number): number {
  let [a, b] = [left, right];
  let x1 = b - GOLDEN * (b - a);
  let x2 = a + GOLDEN * (b - a);
  let [f1, f2] = [f(x1), f(x2)];
  for (let i = 0; i < MOST_STEPS && x1 < x2; i++) {
    if (f1 <= f2) {
      [b, x2, f2] = [x2, x1, f1];
      x1 = b - GOLDEN * (b - a);
      f1 = f(x1);
    } else {
      [a, x1, f1] = [x1, x2, f2];
      x2 = a + GOLDEN * (b - a);
      f2 = f(x2);
    }
  }
  return f1 <= f2 ? x1 : x2;
}
