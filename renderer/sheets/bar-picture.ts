import { scaleLinear } from 'd3-scale';
import { textWidth } from '../../core/summary/figures/charts/axes.ts';
import type { StockBar } from '../../core/summary/parts/cutting-plan.ts';

export interface BarPart {
  readonly x: number;
  readonly wide: number;
  /** Empty where it has no room. */
  readonly text: string;
}

export interface BarPicture {
  readonly cuts: readonly BarPart[];
  readonly rest: BarPart;
}

/** A length of stock to scale: its cuts one after the other, and what is left; the saw has what lies between. */
export function layBar(
  bar: StockBar,
  { stock_m, width, text }: { stock_m: number; width: number; text: (length_m: number) => string },
): BarPicture {
  const x = scaleLinear([0, stock_m], [0, width]);
  const part = (from_m: number, length_m: number): BarPart => {
    const wide = x(length_m);
    const words = text(length_m);
    return { x: x(from_m), wide, text: textWidth(words) + 6 <= wide ? words : '' };
  };
  const sum_m = bar.cuts_m.reduce((sum, cut) => sum + cut, 0);
  // what neither cuts nor rest hold was lost between the cuts
  const kerf_m = Math.max(0, stock_m - sum_m - bar.rest_m) / Math.max(1, bar.cuts_m.length - 1);
  let from_m = 0;
  const cuts = bar.cuts_m.map((cut_m) => {
    const made = part(from_m, cut_m);
    from_m += cut_m + kerf_m;
    return made;
  });
  return { cuts, rest: part(stock_m - bar.rest_m, bar.rest_m) };
}
