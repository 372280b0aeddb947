import { ANGLE_RULES, ELBOW_TABLES } from '../catalogue/elbows.ts';
import type { ElbowTable } from '../catalogue/elbows.ts';
import { requireBetween, requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { LossCoefficient } from './loss-coefficient.ts';
import { degrees, readTable } from '../quantities/table.ts';

/** How an elbow is made. */
export type ElbowStyle = keyof typeof ELBOW_TABLES | 'mitre';
/** Which practice scales a 90 degree elbow to other angles. */
export type AngleRuleName = keyof typeof ANGLE_RULES;

const tableRange = (table: ElbowTable): ValidRange => ({
  'radius over diameter': { low: table.radiusRatio[0]!, high: table.radiusRatio.at(-1)!, unit: '-' },
  angle: { low: degrees(20), high: degrees(180), unit: 'rad' },
});

/** What the tables of each style cover; the proportional angle rule is published to 90 degrees only. */
export const ELBOW_RANGES: Readonly<Record<ElbowStyle, ValidRange>> = {
  smooth: tableRange(ELBOW_TABLES.smooth),
  'five-piece': tableRange(ELBOW_TABLES['five-piece']),
  'four-piece': tableRange(ELBOW_TABLES['four-piece']),
  'three-piece': tableRange(ELBOW_TABLES['three-piece']),
  mitre: { angle: { low: 0, high: degrees(150), unit: 'rad' } },
};

/** One elbow. */
export interface Elbow {
  /** How it is made. */
  readonly style: ElbowStyle;
  /** Centre-line radius over inside diameter [-]; a mitre has none and ignores it. */
  readonly radiusRatio: number;
  /** Change of direction [rad]. */
  readonly angle_rad: number;
  /** Which practice scales to other angles than 90 degrees; a mitre has its own formula. */
  readonly angleRule: AngleRuleName;
}

const fromTable =
  (table: ElbowTable) =>
  (elbow: Elbow): number => {
    const rule = ANGLE_RULES[elbow.angleRule];
    const ninety = readTable(table.radiusRatio, table.k, elbow.radiusRatio);
    return ninety * readTable(rule.angles_deg.map(degrees), rule.factor, elbow.angle_rad);
  };

const ELBOW_MODELS: Readonly<Record<ElbowStyle, (elbow: Elbow) => number>> = {
  smooth: fromTable(ELBOW_TABLES.smooth),
  'five-piece': fromTable(ELBOW_TABLES['five-piece']),
  'four-piece': fromTable(ELBOW_TABLES['four-piece']),
  'three-piece': fromTable(ELBOW_TABLES['three-piece']),
  mitre: (elbow) => mitreCoefficient(elbow.angle_rad).k,
};

/**
 * Loss coefficient of a round elbow by the way it is made.
 *
 * The printed 90 degree value at the radius ratio, by straight lines between the printed radii, times the factor of
 * the angle rule; a mitre by `mitreCoefficient`.
 *
 * @param elbow - style, radius over diameter [-], angle [rad], angle rule
 * @returns `k` [-] with `on: 'upstream'`; inlet and outlet are alike
 * @throws ImpossibleInput naming a radius ratio not above zero or an angle outside 0 to pi
 *
 * @remarks
 * Range: R/D 0.5 or 0.75 to 2.5, 20 to 180 degrees; as data in ELBOW_RANGES.
 * Outside: the end value of the table is returned; `findOutside` reports it. Below 20 degrees the factor falls to 0.
 * Leaves out: wall friction along the arc is included as in the tables (short ducts); flattening, ridges, chips.
 * Limits: falls with radius, rises with angle; 0 at no turn.
 * Basis: published (tables read in a copy of SMACNA's; what differs or is missing there, its row tells).
 * Source: SMACNA, HVAC Systems Duct Design, 4th ed., table A-7; ACGIH, Industrial Ventilation, figure 5-16; ASHRAE
 *   Fundamentals for the angle factors.
 * Checked: test/reference/elbow.test.ts, against `roundedBendRennels` and other handbooks.
 *
 * @example
 * ```ts
 * elbowCoefficient({ style: 'five-piece', radiusRatio: 1.5, angle_rad: Math.PI / 2, angleRule: 'ashrae' }).k; // 0.24
 * ```
 */
export function elbowCoefficient(elbow: Elbow): LossCoefficient {
  requirePositive('radiusRatio', elbow.radiusRatio);
  requireBetween('angle_rad', elbow.angle_rad, 0, Math.PI);
  return { k: ELBOW_MODELS[elbow.style](elbow), on: 'upstream' };
}

/**
 * Loss coefficient of a mitre: one cut, no vanes.
 *
 * `K = 0.42 sin(a/2) + 2.56 sin(a/2)^3`.
 *
 * @param angle_rad - `a`, change of direction [rad]
 * @returns `k` [-] with `on: 'upstream'`; inlet and outlet are alike
 * @throws ImpossibleInput naming an angle outside 0 to pi
 *
 * @remarks
 * Range: 0 to 150 degrees; as data in ELBOW_RANGES.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: Reynolds number; a second cut close downstream.
 * Limits: 0 at no turn; 1.20 at 90 degrees.
 * Basis: from-memory (page not seen).
 * Source: Rennels and Hudson, Pipe Flow, Wiley, 2012, mitre bends.
 * Checked: test/reference/elbow.test.ts.
 *
 * @example
 * ```ts
 * mitreCoefficient(Math.PI / 2).k; // 1.20208
 * ```
 */
export function mitreCoefficient(angle_rad: number): LossCoefficient {
  const s = Math.sin(requireBetween('angle_rad', angle_rad, 0, Math.PI) / 2);
  return { k: 0.42 * s + 2.56 * s * s * s, on: 'upstream' };
}

/** A smooth bend in a pipe of known friction. */
export interface RoundedBend {
  /** Centre-line radius over inside diameter [-]. */
  readonly radiusRatio: number;
  /** Change of direction [rad]. */
  readonly angle_rad: number;
  /** Darcy friction factor of the pipe [-]. */
  readonly frictionFactor: number;
}

/** Where the closed form for smooth bends was fitted. */
export const ROUNDED_BEND_RANGE: ValidRange = {
  'radius over diameter': { low: 0.5, unit: '-' },
  angle: { low: 0, high: Math.PI, unit: 'rad' },
};

/**
 * Loss coefficient of a smooth bend including the wall friction along its centre line: a second opinion on
 * `elbowCoefficient`.
 *
 * `K = f a R/D + (0.10 + 2.4 f) sin(a/2) + 6.6 f (sqrt(sin(a/2)) + sin(a/2)) / (R/D)^(4 a/pi)`.
 *
 * @param bend - radius over diameter `R/D` [-], angle `a` [rad], Darcy friction factor `f` [-]
 * @returns `k` [-] with `on: 'upstream'`; inlet and outlet are alike
 * @throws ImpossibleInput naming a radius ratio not above zero, an angle outside 0 to pi, a negative friction factor
 *
 * @remarks
 * Range: as data in ROUNDED_BEND_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: seams and pieces.
 * Limits: 0 at no turn; a long gentle bend tends to straight friction plus 0.10 sin(a/2).
 * Basis: from-memory (page not seen).
 * Source: Rennels and Hudson, Pipe Flow, Wiley, 2012, smooth pipe bends.
 * Checked: test/reference/elbow.test.ts.
 *
 * @example
 * ```ts
 * roundedBendRennels({ radiusRatio: 1.5, angle_rad: Math.PI / 2, frictionFactor: 0.02 }).k; // 0.242592
 * ```
 */
export function roundedBendRennels(bend: RoundedBend): LossCoefficient {
  const R = requirePositive('radiusRatio', bend.radiusRatio);
  const a = requireBetween('angle_rad', bend.angle_rad, 0, Math.PI);
  const f = requireNotNegative('frictionFactor', bend.frictionFactor);
  const s = Math.sin(a / 2);
  const crowding = (6.6 * f * (Math.sqrt(s) + s)) / R ** ((4 * a) / Math.PI);
  return { k: f * a * R + (0.1 + 2.4 * f) * s + crowding, on: 'upstream' };
}
