import {
  ImpossibleInput,
  requireBetween,
  requireNotNegative,
  requirePositive,
} from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { LossCoefficient } from './loss-coefficient.ts';
import { degrees } from '../quantities/table.ts';

/** Where the conical expansion was fitted. */
export const TAPERED_EXPANSION_RANGE: ValidRange = {
  'included angle': { low: degrees(5), high: Math.PI, unit: 'rad' },
};

/** A cone between two round ducts. */
export interface Taper {
  /** Inside diameter before the cone [m]. */
  readonly upstreamDiameter_m: number;
  /** Inside diameter after the cone [m]. */
  readonly downstreamDiameter_m: number;
  /** Full angle of the cone [rad]; pi is a plain step. */
  readonly includedAngle_rad: number;
  /** Darcy friction factor along the cone's wall [-]; 0 leaves wall friction out. */
  readonly wallFrictionFactor: number;
}

/** Share of the Borda-Carnot loss that a cone of 20 to 60 degrees takes; up to 1.2, worse than a plain step. */
function separatedShare(angle_deg: number, beta: number): number {
  const share = 1.366 * Math.sqrt(Math.sin(degrees(2 * (angle_deg - 15)))) - 0.17;
  if (beta >= 0.5) return share;
  return share - 3.28 * (0.0625 - beta ** 4) * Math.sqrt((angle_deg - 20) / 40);
}

/** Share of the Borda-Carnot loss that a cone of 60 to 180 degrees takes. */
function bluntShare(angle_deg: number, beta: number): number {
  const opened = Math.sqrt((angle_deg - 60) / 120);
  if (beta >= 0.5) return 1.205 - 0.2 * opened;
  return 1.205 - 3.28 * (0.0625 - beta ** 4) - 12.8 * beta ** 6 * opened;
}

/**
 * Total-pressure loss coefficient of a cone that widens.
 *
 * `K = s (1 - b^2)^2` with `b = D1/D2`. Up to 20 degrees `s = 8.30 tan(a/2)^1.75` plus wall friction
 * `f (1 - b^4) / (8 sin(a/2))`; from 20 to 60 degrees the flow lets go of the wall and `s` rises to about 1.2, with the
 * same wall friction; from 60 degrees on `s` falls to that of a plain step.
 *
 * @param taper - diameters [m], included angle `a` [rad], Darcy friction factor `f` of the wall [-]
 * @returns `k` [-] with `on: 'upstream'`: the velocity pressure of the small duct
 * @throws ImpossibleInput naming a diameter not above zero, `D2` below `D1`, an angle outside 0 to pi, a negative
 * friction factor
 *
 * @remarks
 * Range: as data in TAPERED_EXPANSION_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: a skewed or swirling approach, which makes a wide cone worse; nothing follows that settles the flow.
 * Limits: equal diameters give 0; pi gives `suddenExpansion` within 2 %. It jumps by up to 0.02 at 20 and 60 degrees,
 * where the published pieces meet.
 * Basis: published (read as quoted in an open library; page not seen).
 * Source: Rennels and Hudson, Pipe Flow, Wiley, 2012, ch. 11, conical diffuser, as quoted in an open library.
 * Checked: test/reference/size-change.test.ts.
 *
 * @example
 * ```ts
 * const cone = { upstreamDiameter_m: 0.1, downstreamDiameter_m: 0.2, includedAngle_rad: Math.PI / 4 };
 * taperedExpansion({ ...cone, wallFrictionFactor: 0.027 }).k; // 0.627697
 * ```
 */
export function taperedExpansion(taper: Taper): LossCoefficient {
  const D1 = requirePositive('upstreamDiameter_m', taper.upstreamDiameter_m);
  const D2 = requirePositive('downstreamDiameter_m', taper.downstreamDiameter_m);
  if (D2 < D1) throw new ImpossibleInput('downstreamDiameter_m', D2, 'at least the upstream diameter');
  const angle_rad = requireBetween('includedAngle_rad', taper.includedAngle_rad, 1e-4, Math.PI);
  const f = requireNotNegative('wallFrictionFactor', taper.wallFrictionFactor);
  const angle_deg = (angle_rad * 180) / Math.PI;
  const beta = D1 / D2;
  const step = (1 - beta * beta) ** 2;
  const wall = (f * (1 - beta ** 4)) / (8 * Math.sin(angle_rad / 2));
  const k =
    angle_deg <= 20
      ? 8.3 * Math.tan(angle_rad / 2) ** 1.75 * step + wall
      : angle_deg <= 60
        ? separatedShare(angle_deg, beta) * step + wall
        : bluntShare(angle_deg, beta) * step;
  return { k, on: 'upstream' };
}
