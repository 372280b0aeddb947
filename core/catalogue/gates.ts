import type { Sourced } from '../quantities/sourced.ts';

/** A printed column of coefficients by one quantity. */
export interface PrintedColumn extends Sourced {
  readonly at: readonly number[];
  readonly k: readonly number[];
}

/** Slide gate in a round duct, by open height over diameter. */
export const SLIDE_GATE: PrintedColumn = {
  at: [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9],
  k: [35, 10, 4.6, 2.06, 0.98, 0.44, 0.17, 0.06],
  source: 'Idelchik, Handbook of Hydraulic Resistance, diagram 9-5, circular cross-section',
  basis: 'published',
};

/** Slide gate fully open: what its slot and frame leave in the way; 0 to 0.06 is reported. */
export const SLIDE_GATE_OPEN: Sourced & { readonly k: number } = {
  k: 0.03,
  source: 'middle of the reported span, no source',
  basis: 'common-practice',
};

/** Butterfly in a round duct, by angle from fully open, in degrees. */
export const BUTTERFLY: PrintedColumn = {
  at: [0, 10, 20, 30, 40, 50, 60],
  k: [0.2, 0.52, 1.5, 4.5, 11, 29, 108],
  source: 'ASHRAE, round butterfly damper',
  basis: 'from-memory',
};

/** Weather cap over a stack, by gap over stack diameter; loss beyond the velocity pressure that any exit loses. */
export const WEATHER_CAP: PrintedColumn = {
  at: [0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 1],
  k: [1, 0.73, 0.56, 0.41, 0.3, 0.22, 0.18, 0.1],
  source: 'ACGIH, Industrial Ventilation, figure 5-15',
  basis: 'from-memory',
};
