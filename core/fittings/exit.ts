import { WEATHER_CAP } from '../catalogue/gates.ts';
import { requireBetween, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { LossCoefficient } from './loss-coefficient.ts';
import { readTable } from '../quantities/table.ts';

/** Gaps that the printed column for weather caps covers. */
export const WEATHER_CAP_RANGE: ValidRange = { 'gap over diameter': { low: 0.45, high: 1, unit: '-' } };
/** Discharge coefficients of holes in thin plate. */
export const LEAK_RANGE: ValidRange = { 'discharge coefficient': { low: 0.59, high: 0.65, unit: '-' } };

/**
 * Loss of a plain exit into the open: the jet's whole velocity pressure.
 *
 * @returns `k` [-] with `on: 'upstream'`: the velocity pressure of the duct
 * @throws none: it takes no input
 *
 * @remarks
 * Range: any exit into a room or the open.
 * Outside: not applicable.
 * Leaves out: the extra kinetic energy of an uneven profile.
 * Limits: none: a constant.
 * Basis: published (1 read as quoted in an open library; it follows from momentum: the limit of the step loss).
 * Source: Rennels and Hudson, Pipe Flow, Wiley, 2012, exits, as quoted in an open library; ACGIH, Industrial
 *   Ventilation, ch. 5.
 * Checked: test/reference/exit.test.ts.
 *
 * @example
 * ```ts
 * stackExit().k; // 1
 * ```
 */
export function stackExit(): LossCoefficient {
  return { k: 1, on: 'upstream' };
}

/**
 * Loss of a stack that ends under a weather cap, its exit included.
 *
 * The printed column is what the cap adds to the velocity pressure that any exit loses: `K = 1 + Kcap`.
 *
 * @param gapRatio - height of the gap under the cap over stack diameter [-], above 0
 * @returns `k` [-] with `on: 'upstream'`: the velocity pressure of the stack
 * @throws ImpossibleInput naming a gap not above zero
 *
 * @remarks
 * Range: 0.45 to 1; as data in WEATHER_CAP_RANGE.
 * Outside: wider returns the last value; narrower grows as the square of the last printed ratio over the gap;
 * `findOutside` reports both.
 * Leaves out: wind. A cap throws dust and fumes down on the roof; a tall open stack keeps rain out too.
 * Limits: tends to a plain exit with 10 % on top.
 * Basis: from-memory (page not seen; that the column excludes the exit's own loss is how the method counts it).
 * Source: ACGIH, Industrial Ventilation, figure 5-15.
 * Checked: test/reference/exit.test.ts.
 *
 * @example
 * ```ts
 * weatherCapCoefficient(0.75).k; // 1.18
 * ```
 */
export function weatherCapCoefficient(gapRatio: number): LossCoefficient {
  const gap = requireBetween('gapRatio', gapRatio, 1e-3, 1e6);
  const first = WEATHER_CAP.at[0]!;
  const added =
    gap < first ? WEATHER_CAP.k[0]! * (first / gap) ** 2 : readTable(WEATHER_CAP.at, WEATHER_CAP.k, gap);
  return { k: 1 + added, on: 'upstream' };
}

/**
 * Loss of a hole or gap through which air leaks, on the velocity through its own area.
 *
 * `Q = Cd A sqrt(2 dp / rho)` gives `K = 1/Cd^2`.
 *
 * @param dischargeCoefficient - `Cd` [-], about 0.60 for a sharp hole
 * @returns `k` [-] with `on: 'upstream'`: the velocity pressure of flow over the hole's area; its exit is included
 * @throws ImpossibleInput naming a coefficient not above zero
 *
 * @remarks
 * Range: as data in LEAK_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: long narrow cracks, whose flow is partly laminar.
 * Limits: 1 is a perfect nozzle, which loses its velocity pressure.
 * Basis: from-memory (page not seen).
 * Source: ISO 5167-2 in the limit of a small hole, coefficient 0.60.
 * Checked: test/reference/exit.test.ts.
 *
 * @example
 * ```ts
 * orificeLeakCoefficient(0.6).k; // 2.7778
 * ```
 */
export function orificeLeakCoefficient(dischargeCoefficient: number): LossCoefficient {
  const Cd = requirePositive('dischargeCoefficient', dischargeCoefficient);
  return { k: 1 / Cd / Cd, on: 'upstream' };
}
