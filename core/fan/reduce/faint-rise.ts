/** Standard errors by which a curve must rise before it counts as rising [-]; common practice. */
export const FAINT_RISE = 2;

/**
 * Lays flat what rises in a curve by less than its errors carry.
 *
 * The largest rise from one value to a later one is compared with its standard error. If it is below FAINT_RISE of them,
 * neighbours are pooled to their mean until nothing rises (the closest falling curve in the least-squares sense).
 *
 * @param values - values in the order of rising flow [any unit]
 * @param errorOfRise - standard error of the difference between the values at two places, in the same unit
 * @returns the values as they are if the rise is real, else the closest that never rise
 * @throws none: a list without a rise comes back as it is
 *
 * @remarks
 * Range: curves that are expected to fall.
 * Outside: a real hump passes through untouched.
 * Leaves out: which of several rises is real: the largest speaks for all.
 * Limits: falling values come back unchanged; errors of zero leave every rise.
 * Basis: published (method read in the documentation of an open library).
 * Source: pool-adjacent-violators, Ayer and others, Ann. Math. Statist. 26 (1955) 641; the two errors are common
 *   practice.
 * Checked: test/reference/fan-fit.test.ts, test/core/fan/reduce/faint-rise.test.ts.
 *
 * @example
 * ```ts
 * withoutFaintRise([10, 10.2, 8], () => 0.2)[0]; // 10.1
 * ```
 */
export function withoutFaintRise(
  values: readonly number[],
  errorOfRise: (from: number, to: number) => number,
): readonly number[] {
  let lowest = 0;
  let [rise, from, to] = [0, 0, 0];
  values.forEach((value, i) => {
    if (value < values[lowest]!) lowest = i;
    if (value - values[lowest]! > rise) [rise, from, to] = [value - values[lowest]!, lowest, i];
  });
  if (rise === 0 || rise >= FAINT_RISE * errorOfRise(from, to)) return values;
  const blocks: { sum: number; count: number }[] = [];
  for (const value of values) {
    blocks.push({ sum: value, count: 1 });
    for (let last = blocks.length - 1; last > 0; last--) {
      const [a, b] = [blocks[last - 1]!, blocks[last]!];
      if (a.sum / a.count >= b.sum / b.count) break;
      blocks.splice(last - 1, 2, { sum: a.sum + b.sum, count: a.count + b.count });
    }
  }
  return blocks.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
}
