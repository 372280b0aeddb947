import { requireBetween, requirePositive } from '../../quantities/impossible-input.ts';
import type { ValidRange } from '../../quantities/range.ts';

/** Where the expansibility of orifice plates was fitted. */
export const EXPANSIBILITY_RANGE: ValidRange = {
  'diameter ratio': { low: 0, high: 0.75, unit: '-' },
  'pressure ratio': { low: 0.75, high: 1, unit: '-' },
};

/** Ratio of specific heats of air. */
export const AIR_ISENTROPIC_EXPONENT = 1.4;

/** Pressures at a plate. */
export interface PlatePressures {
  /** `dp`, difference over the plate [Pa]. */
  readonly difference_Pa: number;
  /** `p1`, absolute pressure in front of the plate [Pa]; null leaves compression out. */
  readonly upstreamPressure_Pa: number | null;
}

/**
 * Expansibility of air through a sharp-edged plate.
 *
 * `epsilon = 1 - (0.351 + 0.256 beta^4 + 0.93 beta^8) (1 - (p2/p1)^(1/kappa))`, `p2 = p1 - dp`: behind the edge the air
 * is thinner than in front, and less of it passes than density in front says.
 *
 * @param diameterRatio - `beta`, bore over pipe [-], zero for a plate in a wall
 * @param pressures - difference `difference_Pa` [Pa] and absolute pressure in front `upstreamPressure_Pa` [Pa]
 * @returns `epsilon` [-], 1 where compression is left out
 * @throws ImpossibleInput naming the field: ratio outside 0 to 1, difference below zero or not below the pressure
 *
 * @remarks
 * Range: as data in EXPANSIBILITY_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: bores and nozzles with a throat, whose expansibility follows another law.
 * Limits: no difference gives 1. For small holes the older rule `1 - 0.41 dp/(kappa p1)` agrees within 0.002 at 3 kPa.
 * Basis: published (formula read as quoted in an open library; that says from 0.80 of pressure, the standard from
 *   0.75; agrees with computed cases).
 * Source: ISO 5167-2:2003, 5.3.2.2.
 * Checked: test/reference/fan-tests.test.ts.
 *
 * @example
 * ```ts
 * plateExpansibility(0.5, { difference_Pa: 2000, upstreamPressure_Pa: 101325 }); // 0.99476
 * ```
 */
export function plateExpansibility(diameterRatio: number, pressures: PlatePressures): number {
  const beta = requireBetween('diameterRatio', diameterRatio, 0, 1);
  if (pressures.upstreamPressure_Pa === null) return 1;
  const p1 = requirePositive('upstreamPressure_Pa', pressures.upstreamPressure_Pa);
  const dp = requireBetween('difference_Pa', pressures.difference_Pa, 0, p1 * (1 - 1e-9));
  const share = 1 - (1 - dp / p1) ** (1 / AIR_ISENTROPIC_EXPONENT);
  return 1 - (0.351 + 0.256 * beta ** 4 + 0.93 * beta ** 8) * share;
}
