import { requireNotNegative, requirePositive } from '../../quantities/impossible-input.ts';

/** One length of stock, with what is cut from it. */
export interface StockBar {
  readonly cuts_m: readonly number[];
  /** Left over, after the saw has had its share [m]. */
  readonly rest_m: number;
}

/** How stock is cut with the least of it. */
export interface CuttingPlan {
  readonly stock_m: number;
  /** Empty where there are too many to be laid out. */
  readonly bars: readonly StockBar[];
  /** Joints in pieces that are longer than the stock. */
  readonly extraJoints: number;
  /** True where no plan with fewer lengths can exist. */
  readonly shortest: boolean;
}

/** More pieces or lengths than this are counted and not laid out: nobody saws by such a plan. */
const MOST_LAID_OUT = 2000;
/** Branches tried before the best plan so far is taken; enough for the shops of a workshop. */
const MOST_BRANCHES = 50_000;
/** Lengths closer than this are one [m]. */
const SAME_M = 1e-9;

/**
 * Cuts pieces from stock of one length with the fewest lengths of stock: first-fit decreasing, then branch and bound
 * below it. What is longer than the stock is made of whole lengths and a rest. Thousands are not laid out at all.
 *
 * Each piece takes its length and one cut of the saw; a bar bears one cut less than it has pieces, which is the same as
 * a bar longer by one cut.
 *
 * @param pieces_m - lengths wanted [m], above zero
 * @param stock_m - length of the stock [m]
 * @param kerf_m - lost at each cut [m]
 * @throws ImpossibleInput naming the field: a length that is not above zero, a kerf below zero
 */
export function cuttingPlan(pieces_m: readonly number[], stock_m: number, kerf_m = 0): CuttingPlan {
  requirePositive('stock_m', stock_m);
  requireNotNegative('kerf_m', kerf_m);
  pieces_m.forEach((piece, i) => requirePositive(`pieces_m[${i}]`, piece));
  const total_m = pieces_m.reduce((sum, piece) => sum + piece, 0);
  if (pieces_m.length > MOST_LAID_OUT || total_m / stock_m > MOST_LAID_OUT) {
    const extraJoints = pieces_m.reduce((sum, piece) => sum + Math.max(0, Math.ceil(piece / stock_m) - 1), 0);
    return { stock_m, bars: [], extraJoints, shortest: false };
  }
  const whole: number[] = [];
  const rests: number[] = [];
  for (const piece of pieces_m) {
    let left = piece;
    for (; left > stock_m + SAME_M; left -= stock_m) whole.push(stock_m);
    rests.push(Math.min(left, stock_m));
  }
  const packed = pack(rests, stock_m, kerf_m);
  const bars = [...whole.map((length) => [length]), ...packed.bars].map((cuts_m) => ({
    cuts_m,
    rest_m: Math.max(0, stock_m - cuts_m.reduce((sum, cut) => sum + cut + kerf_m, -kerf_m)),
  }));
  return { stock_m, bars, extraJoints: whole.length, shortest: packed.shortest };
}

/** First-fit decreasing: each piece, longest first, into the first bar that has room. */
export function firstFitDecreasing(pieces_m: readonly number[], stock_m: number, kerf_m = 0): number[][] {
  const bars: { left: number; cuts: number[] }[] = [];
  for (const piece of [...pieces_m].sort((a, b) => b - a)) {
    let bar = bars.find(({ left }) => left + SAME_M >= piece + kerf_m);
    if (bar === undefined) bars.push((bar = { left: stock_m + kerf_m, cuts: [] }));
    bar.left -= piece + kerf_m;
    bar.cuts.push(piece);
  }
  return bars.map(({ cuts }) => cuts);
}

function pack(
  pieces_m: readonly number[],
  stock_m: number,
  kerf_m: number,
): { bars: readonly (readonly number[])[]; shortest: boolean } {
  const sorted = [...pieces_m].sort((a, b) => b - a);
  const room = stock_m + kerf_m;
  const total = sorted.reduce((sum, piece) => sum + piece + kerf_m, 0);
  const least = Math.ceil(total / room - 1e-9);
  let best: readonly (readonly number[])[] = firstFitDecreasing(sorted, stock_m, kerf_m);
  let branches = 0;
  const left: number[] = [];
  const cuts: number[][] = [];
  // what pieces from `i` on still need, for the bound
  const ahead = new Float64Array(sorted.length + 1);
  for (let i = sorted.length - 1; i >= 0; i--) ahead[i] = ahead[i + 1]! + sorted[i]! + kerf_m;

  const place = (i: number): void => {
    if (best.length <= least || branches >= MOST_BRANCHES) return;
    branches++;
    if (i === sorted.length) {
      if (cuts.length < best.length) best = cuts.map((bar) => [...bar]);
      return;
    }
    const free = left.reduce((sum, rest) => sum + Math.max(0, rest), 0);
    const more = Math.max(0, Math.ceil((ahead[i]! - free) / room - 1e-9));
    if (left.length + more >= best.length) return;
    const need = sorted[i]! + kerf_m;
    const tried: number[] = [];
    for (let b = 0; b < left.length; b++) {
      const rest = left[b]!;
      // bars with the same room are the same choice
      if (rest + SAME_M < need || tried.some((seen) => Math.abs(seen - rest) < SAME_M)) continue;
      tried.push(rest);
      left[b] = rest - need;
      cuts[b]!.push(sorted[i]!);
      place(i + 1);
      cuts[b]!.pop();
      left[b] = rest;
    }
    left.push(room - need);
    cuts.push([sorted[i]!]);
    place(i + 1);
    left.pop();
    cuts.pop();
  };
  place(0);
  return { bars: best, shortest: best.length <= least || branches < MOST_BRANCHES };
}
