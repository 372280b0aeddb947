import type { Bounds } from '../quantities/range.ts';

/** A figure of a range finding, in the unit of its bounds. */
export function shown(value: number, bounds: Bounds): string {
  if (bounds.unit === 'rad') return `${figure((value * 180) / Math.PI)} deg`;
  return `${figure(value)}${bounds.unit === '-' ? '' : ` ${bounds.unit}`}`;
}

const figure = (value: number) => String(Number(value.toPrecision(3)));

/** Bounds in words. */
export function span(bounds: Bounds): string {
  if (bounds.low === undefined) return `up to ${shown(bounds.high ?? 0, bounds)}`;
  if (bounds.high === undefined) return `${shown(bounds.low, bounds)} and above`;
  return `${shown(bounds.low, bounds)} to ${shown(bounds.high, bounds)}`;
}

/** A share in percent, as a person says it. */
export function percent(share: number): string {
  const value = 100 * share;
  return value < 9.95 ? value.toFixed(1) : value.toFixed(0);
}
