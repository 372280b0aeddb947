/**
 * Reads a table by straight lines between its points; beyond the ends it holds the end values.
 * `xs` rises strictly. A table that rises or falls gives a reading that never turns back.
 */
export function readTable(xs: readonly number[], ys: readonly number[], x: number): number {
  const last = xs.length - 1;
  if (x <= xs[0]!) return ys[0]!;
  if (x >= xs[last]!) return ys[last]!;
  let high = 1;
  while (xs[high]! < x) high++;
  const low = high - 1;
  const t = (x - xs[low]!) / (xs[high]! - xs[low]!);
  return ys[low]! + t * (ys[high]! - ys[low]!);
}

/** As `readTable`, but straight in the logarithm of `ys`, for coefficients that span decades. */
export function readLogTable(xs: readonly number[], ys: readonly number[], x: number): number {
  return Math.exp(readTable(xs, ys.map(Math.log), x));
}

/** Degrees of a printed table in radians. */
export function degrees(angle_deg: number): number {
  return (angle_deg * Math.PI) / 180;
}
