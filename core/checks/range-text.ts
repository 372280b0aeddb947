import type { Bounds } from '../quantities/range.ts';

/** More figures than these no reader tells apart. */
const MOST_DIGITS = 9;

/** A figure of a range finding, in the unit of its bounds, in as many digits as tell it from a bound that it misses. */
export function shown(value: number, bounds: Bounds): string {
  const missed = [bounds.low, bounds.high].filter((bound) => bound !== undefined && bound !== value);
  let digits = 3;
  while (digits < MOST_DIGITS && missed.some((bound) => figure(bound!, digits) === figure(value, digits)))
    digits++;
  if (bounds.unit === 'rad') return `${figure((value * 180) / Math.PI, digits)} deg`;
  return `${figure(value, digits)}${bounds.unit === '-' ? '' : ` ${bounds.unit}`}`;
}

const figure = (value: number, digits: number) => String(Number(value.toPrecision(digits)));

/** Bounds in words. */
export function span(bounds: Bounds): string {
  if (bounds.low === undefined) return `up to ${shown(bounds.high ?? 0, bounds)}`;
  if (bounds.high === undefined) return `${shown(bounds.low, bounds)} and above`;
  return `${shown(bounds.low, bounds)} to ${shown(bounds.high, bounds)}`;
}

/** A share in percent, as a person says it. */
export function percent(share: number): string {
  const value = 100 * share;
  if (value > 0 && value < 0.05) return 'under 0.1';
  return value < 9.95 ? value.toFixed(1) : value.toFixed(0);
}
