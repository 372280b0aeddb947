import type { Sourced } from '../quantities/sourced.ts';

/** A printed column of 90 degree elbow coefficients by centre-line radius over diameter. */
export interface ElbowTable extends Sourced {
  readonly label: string;
  readonly radiusRatio: readonly number[];
  readonly k: readonly number[];
}

/** Factor on the 90 degree coefficient at other angles. */
export interface AngleRule extends Sourced {
  readonly label: string;
  readonly angles_deg: readonly number[];
  readonly factor: readonly number[];
}

const SMACNA = 'SMACNA, HVAC Systems Duct Design, 4th ed., table A-7';
const FIGURE = 'ACGIH, Industrial Ventilation, figure 5-16';
const PIECES = `${SMACNA}; R/D 2.5 from memory, ${FIGURE}`;

/** Round 90 degree elbows that are bent or built up from pieces. */
export const ELBOW_TABLES = {
  smooth: {
    label: 'smooth bend',
    radiusRatio: [0.5, 0.75, 1, 1.5, 2, 2.5],
    k: [0.71, 0.33, 0.22, 0.15, 0.13, 0.12],
    source: `${SMACNA}; ${FIGURE}`,
    basis: 'published',
  },
  'five-piece': {
    label: 'five pieces',
    radiusRatio: [0.75, 1, 1.5, 2, 2.5],
    k: [0.46, 0.33, 0.24, 0.19, 0.17],
    source: PIECES,
    basis: 'published',
  },
  'four-piece': {
    label: 'four pieces',
    radiusRatio: [0.75, 1, 1.5, 2, 2.5],
    k: [0.5, 0.37, 0.27, 0.24, 0.23],
    source: PIECES,
    basis: 'published',
  },
  'three-piece': {
    label: 'three pieces',
    radiusRatio: [0.5, 0.75, 1, 1.5, 2, 2.5],
    k: [0.9, 0.54, 0.42, 0.34, 0.33, 0.33],
    source: `${FIGURE}; from 0.75 to 2 as ${SMACNA}, which has 0.98 at 0.5`,
    basis: 'from-memory',
  },
} as const satisfies Record<string, ElbowTable>;

/** How a 90 degree elbow's coefficient scales to other angles; the two trades disagree by a fifth at 45 degrees. */
export const ANGLE_RULES = {
  ashrae: {
    label: 'falls slowly with angle (air-conditioning practice)',
    angles_deg: [0, 20, 30, 45, 60, 75, 90, 110, 130, 150, 180],
    factor: [0, 0.31, 0.45, 0.6, 0.78, 0.9, 1, 1.13, 1.2, 1.28, 1.4],
    source: `${SMACNA}, note 1; ASHRAE Fundamentals, Duct Design, fitting CD3-1 notes`,
    basis: 'published',
  },
  acgih: {
    label: 'in proportion to angle (exhaust practice)',
    angles_deg: [0, 30, 45, 60, 90, 180],
    factor: [0, 1 / 3, 1 / 2, 2 / 3, 1, 2],
    source: 'ACGIH, Industrial Ventilation, elbows of less than 90 degrees; beyond 90 counted as two elbows',
    basis: 'published',
  },
} as const satisfies Record<string, AngleRule>;
