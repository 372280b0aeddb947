import type { Sourced } from '../quantities/sourced.ts';

/** Build of a filter. */
export type FilterType = 'sheet' | 'bag' | 'cartridge' | 'hepa';

/** Filter media of the catalogue. */
export type FilterMediumId =
  | 'cotton-sheet'
  | 'woven-cotton-bag'
  | 'felt-bag'
  | 'fine-felt-bag'
  | 'cartridge-pleated-polyester'
  | 'cartridge-cellulose'
  | 'hepa-after-filter';

/** A filter medium with what a small shop may expect of it, where no maker's figure is at hand. */
export interface FilterMedium extends Sourced {
  readonly id: FilterMediumId;
  readonly label: string;
  readonly type: FilterType;
  /** `S_E`, drag of the medium in use, cleaned but not new [Pa s/m]. */
  readonly drag_Pasm: number;
  /** `K2`, of a cake of the fine wood dust that reaches a filter [1/s]. */
  readonly cakeResistance_pers: number;
  /** Below this the filter is larger than it need be [m/s]. */
  readonly faceVelocityLow_ms: number;
  /** Above this dust is driven into and through the medium [m/s]. */
  readonly faceVelocityHigh_ms: number;
  /** Drop at which to clean or change it [Pa]. */
  readonly changeAtPressure_Pa: number;
  /** Share of the fine dust, by mass, that goes through once a cake has formed [-]; see `PASSED_SHARE`. */
  readonly passedShare: number;
}

/**
 * What media let through has no source for the small shop's media: bags and cartridges of industry are said to hold
 * 99 to 99.9 % by mass (EPA Air Pollution Control Cost Manual, Sec 6 Ch 1), HEPA 99.97 % at 0.3 um (DOE-STD-3020); a
 * leaking seam passes more than any medium. A measured share (weigh what settles behind it) is better.
 */
export const PASSED_SHARE = {
  source:
    'EPA Cost Manual 6th ed. Sec 6 Ch 1 (99 to 99.9 % held); DOE-STD-3020 (HEPA); rows between are assumed',
  basis: 'assumed',
} as const;

/**
 * Cake of wood dust: about 6.3 in wg/(fpm lb/ft2), after Williams, Hatch and Greenburg 1940, a value of which we are
 * not sure; published cakes of any dust run from 1.2e4 to 4e5 1/s (EPA Air Pollution Control Cost Manual, Sec 6 Ch 1).
 */
export const WOOD_DUST_CAKE_RESISTANCE = {
  value_s: 6.3e4,
  span_s: [1.2e4, 4e5],
  source: 'Williams, Hatch and Greenburg 1940, quoted in AP-40; span EPA Cost Manual 6th ed. Sec 6 Ch 1',
  basis: 'from-memory',
} as const;

const K2 = WOOD_DUST_CAKE_RESISTANCE.value_s;

/**
 * Filter media. No row is a maker's figure: the drag of small-shop filters is what the trade's clean drop at the usual
 * face velocity implies, or an assumption, and the row says which. A drop measured by the user is better.
 */
export const FILTER_MEDIA: Readonly<Record<FilterMediumId, FilterMedium>> = {
  'cotton-sheet': {
    id: 'cotton-sheet',
    label: 'Cotton sheet',
    type: 'sheet',
    drag_Pasm: 1500,
    cakeResistance_pers: K2,
    faceVelocityLow_ms: 0.005,
    faceVelocityHigh_ms: 0.05,
    changeAtPressure_Pa: 500,
    passedShare: 0.05,
    source: 'no source; lets fine dust through until a cake has formed',
    basis: 'assumed',
  },
  'woven-cotton-bag': {
    id: 'woven-cotton-bag',
    label: 'Woven cotton bag, shaken',
    type: 'bag',
    drag_Pasm: 9800,
    cakeResistance_pers: K2,
    faceVelocityLow_ms: 0.005,
    faceVelocityHigh_ms: 0.0178,
    changeAtPressure_Pa: 1000,
    passedShare: 0.01,
    source:
      'drag: low end of EPA Cost Manual Sec 6 Ch 1 (0.2 in wg/fpm); velocity: its Table 1.1, sawdust, shaken woven, 3.5 fpm; change at: common practice',
    basis: 'from-memory',
  },
  'felt-bag': {
    id: 'felt-bag',
    label: 'Needled felt bag',
    type: 'bag',
    drag_Pasm: 2500,
    cakeResistance_pers: K2,
    faceVelocityLow_ms: 0.01,
    faceVelocityHigh_ms: 0.061,
    changeAtPressure_Pa: 750,
    passedShare: 0.005,
    source:
      'velocity: EPA Cost Manual Table 1.1, sawdust, pulsed felt, 12 fpm, from memory; drag and change at: no source',
    basis: 'assumed',
  },
  'fine-felt-bag': {
    id: 'fine-felt-bag',
    label: 'Felt bag with fine surface',
    type: 'bag',
    drag_Pasm: 5000,
    cakeResistance_pers: K2,
    faceVelocityLow_ms: 0.01,
    faceVelocityHigh_ms: 0.04,
    changeAtPressure_Pa: 1000,
    passedShare: 0.002,
    source: 'no source; between the felt bag and the cartridge',
    basis: 'assumed',
  },
  'cartridge-pleated-polyester': {
    id: 'cartridge-pleated-polyester',
    label: 'Pleated cartridge, spun polyester',
    type: 'cartridge',
    drag_Pasm: 1e4,
    cakeResistance_pers: K2,
    faceVelocityLow_ms: 0.01,
    faceVelocityHigh_ms: 0.02,
    changeAtPressure_Pa: 1000,
    passedShare: 0.001,
    source:
      'trade: 2-4 fpm, clean 0.5-1 in wg, change at 3-6 in wg; drag is 150 Pa at 0.015 m/s, change at is 4 in wg',
    basis: 'common-practice',
  },
  'cartridge-cellulose': {
    id: 'cartridge-cellulose',
    label: 'Pleated cartridge, cellulose blend',
    type: 'cartridge',
    drag_Pasm: 1.6e4,
    cakeResistance_pers: K2,
    faceVelocityLow_ms: 0.01,
    faceVelocityHigh_ms: 0.02,
    changeAtPressure_Pa: 1000,
    passedShare: 0.002,
    source:
      'trade: 2-4 fpm, clean 0.5-1 in wg, change at 3-6 in wg; drag is 240 Pa at 0.015 m/s, change at is 4 in wg',
    basis: 'common-practice',
  },
  'hepa-after-filter': {
    id: 'hepa-after-filter',
    label: 'HEPA after-filter',
    type: 'hepa',
    drag_Pasm: 1e4,
    cakeResistance_pers: K2,
    faceVelocityLow_ms: 0.005,
    faceVelocityHigh_ms: 0.025,
    changeAtPressure_Pa: 750,
    passedShare: 0.0003,
    source:
      'clean at most 250 Pa at rated flow, change at 2-4 in wg: DOE-STD-3020, ASME AG-1; 0.025 m/s through the paper: common practice',
    basis: 'from-memory',
  },
};
