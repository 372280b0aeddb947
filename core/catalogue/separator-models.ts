import type { Sourced } from '../quantities/sourced.ts';
import type { ValidRange } from '../quantities/range.ts';

/** A named number with its source. */
export interface SourcedNumber extends Sourced {
  readonly value: number;
  /** Lowest and highest that the sources give, where they give a span. */
  readonly span?: readonly [low: number, high: number];
}

/** How the air enters the body: a plain tangential slot, or one with a vane that guides it past the outlet pipe. */
export type CycloneInlet = 'plain' | 'vaned';

const COKER = 'Coker, Fortran Programs for Chemical Process Design, 1995, ch. 4';

/** Shepherd and Lapple's `K` in `xi = K a b / De^2`. */
export const SHEPHERD_LAPPLE_K: Readonly<Record<CycloneInlet, SourcedNumber>> = {
  plain: {
    value: 16,
    span: [12, 18],
    source: `Shepherd and Lapple 1939/40, in ${COKER}`,
    basis: 'published',
  },
  vaned: {
    value: 7.5,
    source: `Shepherd and Lapple 1939/40, in ${COKER}`,
    basis: 'published',
  },
};

/** Wall friction in Stairmand's pressure-drop model. */
export const STAIRMAND_FRICTION: SourcedNumber = {
  value: 0.005,
  source: 'Stairmand 1949',
  basis: 'from-memory',
};

/** Wall friction in Barth's model, clean air on steel. */
export const BARTH_FRICTION: SourcedNumber = {
  value: 0.02,
  source: 'Barth 1956, in Hoffmann and Stein, Gas Cyclones and Swirl Tubes, ch. 4',
  basis: 'from-memory',
};

/** The lower rim of the outlet pipe. */
export type OutletRim = 'sharp' | 'rounded';

/** Barth's constant for the loss in the core, by the rim of the outlet pipe. */
export const BARTH_CORE_K: Readonly<Record<OutletRim, SourcedNumber>> = {
  sharp: { value: 4.4, source: BARTH_FRICTION.source, basis: 'from-memory' },
  rounded: { value: 3.41, source: BARTH_FRICTION.source, basis: 'from-memory' },
};

/** Exponent of the grade curve that Dirgo and Leith fitted round Barth's cut size. */
export const BARTH_GRADE_EXPONENT: SourcedNumber = {
  value: 6.4,
  source: 'Dirgo and Leith 1985',
  basis: 'from-memory',
};

/** Inlet velocities at which cyclones are usually run. */
export const INLET_VELOCITY_RANGE: ValidRange = {
  'inlet velocity': { low: 15, high: 30, unit: 'm/s' },
};

/** Source of INLET_VELOCITY_RANGE. */
export const INLET_VELOCITY_SOURCE: Sourced = {
  source: 'Tan, Air Pollution and Greenhouse Gases, Springer 2014, sec. 6.4',
  basis: 'published',
};

/** Design inlet velocities that a source states for one shape, of standard air [m/s]. */
export const DESIGN_INLET_VELOCITY: Readonly<Record<'lapple' | 'one-d-three-d', SourcedNumber>> = {
  lapple: {
    value: 15.24,
    source: '3000 fpm for 2D2D; Wang, Buser, Parnell and Shaw, ASAE paper 024216, 2002',
    basis: 'published',
  },
  'one-d-three-d': {
    value: 16.256,
    source: '3200 fpm for 1D3D; Wang, Buser, Parnell and Shaw, ASAE paper 024216, 2002',
    basis: 'published',
  },
};

/** Ratio of inlet velocity to saltation velocity at which collection is best. */
export const BEST_SALTATION_RATIO: SourcedNumber = {
  value: 1.25,
  source: 'Kalen and Zenz 1974, in Koch and Licht, Chem. Eng., 7 Nov 1977',
  basis: 'from-memory',
};

/** Ratio of inlet velocity to saltation velocity above which caught dust is picked up again. */
export const RE_ENTRAINMENT_RATIO: SourcedNumber = {
  value: 1.36,
  source: 'Kalen and Zenz 1974, in Koch and Licht, Chem. Eng., 7 Nov 1977',
  basis: 'from-memory',
};

/** Added loss of the baffle of a drop-out bin, on the inlet velocity pressure; a measured loss of the bin is better. */
export const BIN_BAFFLE_K: SourcedNumber = {
  value: 0.5,
  span: [0.2, 2],
  source:
    'no source; half of a velocity pressure for the jet that is turned down, two where a ring leaves a slot',
  basis: 'assumed',
};

/** Loss of a settling chamber in one figure, on the velocity pressure of its duct: a comparison only. */
export const SETTLING_CHAMBER_K: SourcedNumber = {
  value: 1.5,
  source: 'ACGIH Industrial Ventilation, hood entry losses: trap or settling chamber 1.5 VP, p. 5-35',
  basis: 'published',
};

/** Contraction factor of a sharp-edged outlet from a chamber, `K = 0.5 (1 - A2/A1)` on the outlet velocity pressure. */
export const SHARP_OUTLET_K: SourcedNumber = {
  value: 0.5,
  source: 'sudden contraction in many texts; ASHRAE flush entry 0.50',
  basis: 'from-memory',
};
