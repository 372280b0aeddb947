import { scaleLinear } from 'd3-scale';
import type { Dimension, UnitSystem } from '../../../quantities/dimensions.ts';
import { displayUnit, toDisplay } from '../../../quantities/print.ts';
import { fixed } from './columns.ts';

/** Height of a chart's lettering, and the width of one letter in it, plain and bold, in the wider fonts [px]. */
export const TEXT = { height: 11, perLetter: 6.4, perBoldLetter: 7.2 } as const;
/** Width of a line of lettering, on the safe side [px]. */
export const textWidth = (text: string): number => text.length * TEXT.perLetter;
export const boldWidth = (text: string): number => text.length * TEXT.perBoldLetter;

/** SI values to pixels along one edge of a chart. */
export type Scale = (si: number) => number;

export interface Tick {
  /** Place along the axis [px]. */
  readonly at: number;
  readonly text: string;
  readonly si: number;
}

export interface Axis {
  readonly ticks: readonly Tick[];
  readonly scale: Scale;
  /** Pixels to SI. */
  readonly invert: (at: number) => number;
  readonly unit: string;
}

export interface AxisInput {
  /** Smallest and largest SI value. */
  readonly domain: readonly [number, number];
  /** Where these lie [px]. */
  readonly range: readonly [number, number];
  readonly dimension: Dimension;
  readonly units: UnitSystem;
  readonly side: 'bottom' | 'left';
  /** Widens the domain to round figures. */
  readonly nice?: boolean;
}

/** Room between the letterings of two ticks [px]. */
const CLEAR = { bottom: 14, left: 12 } as const;

/** Scale and ticks of one axis: round figures in the units shown, never so many that their lettering meets. */
export function axis(input: AxisInput): Axis {
  const { dimension, units, side } = input;
  const unit = displayUnit(dimension, units);
  const [low, high] = input.domain;
  const shown = [toDisplay(low, dimension, units), toDisplay(high, dimension, units)] as const;
  const display = scaleLinear()
    .domain(shown[0] === shown[1] ? [shown[0], shown[0] + 1] : shown)
    .range(input.range);
  const length = Math.abs(input.range[1] - input.range[0]);
  let count = Math.max(2, Math.floor(length / (side === 'left' ? 38 : 64)));
  if (input.nice) display.nice(count);
  // one unit of SI in the units shown, without an offset: no chart has a temperature on it
  const perSi = toDisplay(1, dimension, units);
  const scale: Scale = (si) => display(si * perSi);
  const make = (): Tick[] => {
    const values = display.ticks(count);
    const decimals = decimalsOf(values);
    return values.map((value) => ({ at: display(value), text: fixed(value, decimals), si: value / perSi }));
  };
  let ticks = make();
  while (count > 1 && meets(ticks, side)) {
    count--;
    ticks = make();
  }
  if (meets(ticks, side)) ticks = ticks.slice(0, 1);
  return { ticks, scale, invert: (at) => display.invert(at) / perSi, unit };
}

/** The longest of some titles that fits along an axis; the shortest where none does. */
export const titleFor = (titles: readonly string[], length_px: number): string =>
  titles.find((title) => textWidth(title) <= length_px) ?? titles.at(-1)!;

/** Decimals that tell evenly spaced figures apart. */
function decimalsOf(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const step = Math.abs(values[1]! - values[0]!);
  return Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
}

function meets(ticks: readonly Tick[], side: 'bottom' | 'left'): boolean {
  return ticks.some((tick, i) => {
    const before = ticks[i - 1];
    if (!before) return false;
    const apart = Math.abs(tick.at - before.at);
    if (side === 'left') return apart < TEXT.height + CLEAR.left / 2;
    return apart < (textWidth(tick.text) + textWidth(before.text)) / 2 + CLEAR.bottom;
  });
}
