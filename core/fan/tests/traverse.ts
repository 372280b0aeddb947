import { ImpossibleInput, requireNotNegative, requirePositive } from '../../quantities/impossible-input.ts';
import type { Sourced } from '../../quantities/sourced.ts';

/** Rule by which the places of a traverse are chosen. */
export type TraverseRule = 'log-linear' | 'log-tchebycheff';

/** Places from one wall to the middle, as shares of the diameter [-], by points per diameter. */
export interface TraverseRow extends Sourced {
  readonly halves: Readonly<Record<number, readonly number[]>>;
}

/** Places of a traverse in a round duct; the other half mirrors them. */
export const TRAVERSE_RULES: Readonly<Record<TraverseRule, TraverseRow>> = {
  'log-linear': {
    halves: {
      4: [0.043, 0.29],
      6: [0.0321, 0.1349, 0.3207],
      8: [0.021, 0.117, 0.184, 0.345],
      10: [0.0189, 0.0765, 0.1525, 0.2171, 0.3612],
    },
    source: 'ISO 3966, log-linear rule; 6 to 10 points also in instrument manuals',
    basis: 'published',
  },
  'log-tchebycheff': {
    halves: {
      6: [0.0321, 0.1374, 0.3123],
      8: [0.0238, 0.1, 0.1938, 0.3343],
      10: [0.0189, 0.0764, 0.1554, 0.215, 0.3567],
    },
    source: 'ISO 3966, log-Tchebycheff rule',
    basis: 'from-memory',
  },
};

/** Standard error of a traverse by what its points step over, share of the flow [-]: rows of least points, error; assumed. */
const PROFILE_ERRORS: readonly (readonly [number, number])[] = [
  [12, 0.01],
  [6, 0.015],
  [4, 0.025],
  [2, 0.04],
];

/**
 * Standard error of the flow of a traverse from the profile that lies between its points.
 *
 * A table by the number of points read, over all diameters: 1 % from 12, 1.5 % from 6, 2.5 % from 4, 4 % from 2, and
 * 8 % for one reading in the middle.
 *
 * @param points - readings in all [-]
 * @returns share of the flow, one standard error [-]
 * @throws none: every count has an answer
 *
 * @remarks
 * Range: places by a rule of `traversePlaces`, straight duct as that asks for.
 * Outside: less straight duct costs more, and nothing tells how much.
 * Leaves out: the error of the probe, which is kept apart.
 * Limits: more points never give a larger error.
 * Basis: assumed: ISO 3966 reckons it for each case, 1 to 2 % for 12 points and more.
 * Source: none: a round figure for each class.
 * Checked: test/reference/fan-readings.test.ts.
 *
 * @example
 * ```ts
 * traverseProfileError(6); // 0.015
 * ```
 */
export function traverseProfileError(points: number): number {
  return PROFILE_ERRORS.find(([from]) => points >= from)?.[1] ?? 0.08;
}

/**
 * Where to put the probe on one diameter of a round duct: the drilling template.
 *
 * The shares of the diameter by the rule, `y` from one wall and `1 - y` from the other, times the diameter. Read on two
 * diameters at right angles.
 *
 * @param diameter_m - `D`, inside diameter of the duct [m]
 * @param rule - the rule of the places
 * @param points - points on the diameter [-]: 4, 6, 8 or 10; log-Tchebycheff has no 4
 * @returns distances from the inside of one wall, rising [m]
 * @throws ImpossibleInput naming the diameter that is not above zero, or points that the rule does not have
 *
 * @remarks
 * Range: full turbulent profile, ten diameters of straight duct in front and five behind.
 * Outside: close to a bend or the fan the mean is off by several per cent and nothing shows it.
 * Leaves out: the probe's own thickness: the first place must be half a probe or more from the wall.
 * Limits: places lie in mirrored pairs about the middle.
 * Basis: from-memory (the standard's page not seen; three log-linear rows agree with printed manuals).
 * Source: ISO 3966, annex on the places of measurement.
 * Checked: test/reference/fan-readings.test.ts.
 *
 * @example
 * ```ts
 * traversePlaces(0.1, 'log-linear', 6)[1]; // 0.01349
 * ```
 */
export function traversePlaces(diameter_m: number, rule: TraverseRule, points: number): readonly number[] {
  requirePositive('diameter_m', diameter_m);
  const { halves } = TRAVERSE_RULES[rule];
  const half = halves[points];
  if (half === undefined)
    throw new ImpossibleInput('points', points, `one of ${Object.keys(halves).join(', ')} for this rule`);
  return [...half, ...half.map((y) => 1 - y).reverse()].map((y) => y * diameter_m);
}

/**
 * Mean velocity from velocity pressures read at the places of a traverse.
 *
 * `v = mean of sqrt(2 h/rho)`: the mean of the roots. The root of the mean pressure would be too large.
 *
 * @param heads_Pa - `h`, velocity pressures [Pa]
 * @param density_kgm3 - `rho`, in the duct [kg/m3]
 * @returns mean velocity [m/s]
 * @throws ImpossibleInput naming the reading below zero, an empty list, or a density not above zero
 *
 * @remarks
 * Range: a Pitot-static tube within 10 degrees of the flow, 3 m/s and more.
 * Outside: the value is still returned.
 * Leaves out: the tube's own coefficient (1.00 for the usual shapes), swirl, turbulence (reads up to 2 % high).
 * Limits: equal readings give the velocity of each.
 * Basis: from-memory (page not seen; Bernoulli's equation).
 * Source: ISO 3966.
 * Checked: test/reference/fan-readings.test.ts.
 *
 * @example
 * ```ts
 * pitotMeanVelocity([60, 240], 1.2); // 15
 * ```
 */
export function pitotMeanVelocity(heads_Pa: readonly number[], density_kgm3: number): number {
  requirePositive('density_kgm3', density_kgm3);
  if (heads_Pa.length === 0) throw new ImpossibleInput('heads_Pa', 'an empty list', 'at least one reading');
  const sum = heads_Pa.reduce(
    (total, head, i) => total + Math.sqrt((2 * requireNotNegative(`heads_Pa[${i}]`, head)) / density_kgm3),
    0,
  );
  return sum / heads_Pa.length;
}
