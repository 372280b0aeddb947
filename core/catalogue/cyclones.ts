import type { Sourced } from '../quantities/sourced.ts';

/** Named sets of standard cyclone proportions. */
export type CycloneProportionsId =
  | 'stairmand-high-efficiency'
  | 'swift-high-efficiency'
  | 'lapple'
  | 'swift-general'
  | 'peterson-whitby'
  | 'stairmand-high-throughput'
  | 'swift-high-throughput'
  | 'one-d-three-d';

/** Every dimension of a cyclone as a ratio to the inside diameter of its body. */
export interface CycloneProportions extends Sourced {
  readonly id: CycloneProportionsId;
  readonly label: string;
  /** `a/D` [-]. */
  readonly inletHeight: number;
  /** `b/D` [-]. */
  readonly inletWidth: number;
  /** `De/D` [-]. */
  readonly outletDiameter: number;
  /** `S/D`, depth of the outlet pipe below the roof [-]. */
  readonly outletDepth: number;
  /** `h/D`, height of the straight part [-]. */
  readonly cylinderHeight: number;
  /** `H/D`, roof to dust outlet [-]. */
  readonly totalHeight: number;
  /** `B/D` [-]. */
  readonly dustOutletDiameter: number;
}

const TABULATED = 'read as tabulated in an open library';
const TABLES = 'as tabulated by Leith and Mehta 1973, Koch and Licht 1977, Cooper and Alley Table 4.1';

/**
 * Standard proportions. Five sets were read as another's table, and the table checks itself: the Leith-Licht constant that follows from
 * these ratios equals the published Koch and Licht list for the first seven shapes (test/reference/cyclone.test.ts).
 */
export const CYCLONE_PROPORTIONS: Readonly<Record<CycloneProportionsId, CycloneProportions>> = {
  'stairmand-high-efficiency': {
    id: 'stairmand-high-efficiency',
    label: 'Stairmand, high efficiency',
    inletHeight: 0.5,
    inletWidth: 0.2,
    outletDiameter: 0.5,
    outletDepth: 0.5,
    cylinderHeight: 1.5,
    totalHeight: 4,
    dustOutletDiameter: 0.375,
    source: `Stairmand 1951, ${TABLES}; ${TABULATED}`,
    basis: 'published',
  },
  'swift-high-efficiency': {
    id: 'swift-high-efficiency',
    label: 'Swift, high efficiency',
    inletHeight: 0.44,
    inletWidth: 0.21,
    outletDiameter: 0.4,
    outletDepth: 0.5,
    cylinderHeight: 1.4,
    totalHeight: 3.9,
    dustOutletDiameter: 0.4,
    source: `Swift 1969, ${TABLES}; ${TABULATED}`,
    basis: 'published',
  },
  lapple: {
    id: 'lapple',
    label: 'Lapple, conventional (2D2D)',
    inletHeight: 0.5,
    inletWidth: 0.25,
    outletDiameter: 0.5,
    outletDepth: 0.625,
    cylinderHeight: 2,
    totalHeight: 4,
    dustOutletDiameter: 0.25,
    source: `Lapple 1951, ${TABLES}; the 2D2D shape read in Funk and Baker, J. Cotton Sci. 17:40, 2013`,
    basis: 'published',
  },
  'swift-general': {
    id: 'swift-general',
    label: 'Swift, general purpose',
    inletHeight: 0.5,
    inletWidth: 0.25,
    outletDiameter: 0.5,
    outletDepth: 0.6,
    cylinderHeight: 1.75,
    totalHeight: 3.75,
    dustOutletDiameter: 0.4,
    source: `Swift 1969, ${TABLES}; ${TABULATED}`,
    basis: 'published',
  },
  'peterson-whitby': {
    id: 'peterson-whitby',
    label: 'Peterson and Whitby',
    inletHeight: 0.583,
    inletWidth: 0.208,
    outletDiameter: 0.5,
    outletDepth: 0.583,
    cylinderHeight: 1.333,
    totalHeight: 3.17,
    dustOutletDiameter: 0.5,
    source: `Peterson and Whitby 1965, ${TABLES}; ${TABULATED}`,
    basis: 'published',
  },
  'stairmand-high-throughput': {
    id: 'stairmand-high-throughput',
    label: 'Stairmand, high throughput',
    inletHeight: 0.75,
    inletWidth: 0.375,
    outletDiameter: 0.75,
    outletDepth: 0.875,
    cylinderHeight: 1.5,
    totalHeight: 4,
    dustOutletDiameter: 0.375,
    source: `Stairmand 1951, ${TABLES}`,
    basis: 'from-memory',
  },
  'swift-high-throughput': {
    id: 'swift-high-throughput',
    label: 'Swift, high throughput',
    inletHeight: 0.8,
    inletWidth: 0.35,
    outletDiameter: 0.75,
    outletDepth: 0.85,
    cylinderHeight: 1.7,
    totalHeight: 3.7,
    dustOutletDiameter: 0.4,
    source: `Swift 1969, ${TABLES}`,
    basis: 'from-memory',
  },
  'one-d-three-d': {
    id: 'one-d-three-d',
    label: '1D3D, long cone',
    inletHeight: 0.5,
    inletWidth: 0.25,
    outletDiameter: 0.5,
    outletDepth: 0.625,
    cylinderHeight: 1,
    totalHeight: 4,
    dustOutletDiameter: 0.25,
    source: 'Parnell and Davis, cotton-gin cyclones',
    basis: 'from-memory',
  },
};
