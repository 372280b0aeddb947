import type { ShopDocument } from '../document/schema.ts';
import type { Sourced } from '../quantities/sourced.ts';

/** What may be off; the causes among which the spread of a result is shared out. */
export type CauseId = 'fan' | 'friction' | 'hoods' | 'fittings' | 'leaks' | 'separator' | 'filter';

/** Field of the document's `ranges` that stands before a default. */
type RangeField = keyof NonNullable<ShopDocument['ranges']>;

/** How far a kind of figure may be off where the document does not say. */
export interface RangeRow extends Sourced {
  readonly label: string;
  readonly cause: CauseId;
  readonly field: RangeField;
  /**
   * Plus or minus what holds nineteen times in twenty, as a share [-]: 0.25 is up to 1.25 times the figure, or down to
   * the 1.25th part of it. Null: taken from the spread of models.
   */
  readonly plusMinus: number | null;
}

export type RangeId =
  | 'fan'
  | 'fan-tests'
  | 'duct-friction'
  | 'hose-friction'
  | 'hoods'
  | 'fittings'
  | 'leaks'
  | 'reading'
  | 'cyclone-models'
  | 'bin'
  | 'separator-reading'
  | 'filter-clean'
  | 'filter-cake';

/**
 * Declared ranges. They are the weakest figures of a chance, so each says what it rests on; most are what the trade
 * would call safe to expect and have no source. A document's own stand before them.
 */
export const DEFAULT_RANGES: Readonly<Record<RangeId, RangeRow>> = {
  fan: {
    label: 'pressure of a fan without tests of its own',
    cause: 'fan',
    field: 'fan',
    plusMinus: 0.1,
    source: 'none: data sheets and single tests of small fans are trusted to about a tenth',
    basis: 'common-practice',
  },
  'fan-tests': {
    label: 'curve of a fan by its tests',
    cause: 'fan',
    field: 'fan',
    plusMinus: null,
    source: 'errors of its readings, as the fan bench carries them through',
    basis: 'measured-by-user',
  },
  'duct-friction': {
    label: 'friction of rigid duct',
    cause: 'friction',
    field: 'friction',
    plusMinus: 0.15,
    source: 'White, Fluid Mechanics, sec. 6, on the Moody chart: 15 % over its full range',
    basis: 'published',
  },
  'hose-friction': {
    label: 'friction of hose',
    cause: 'friction',
    field: 'friction',
    plusMinus: 0.3,
    source: 'none: hose of one name differs in its corrugations, and nobody pulls it quite straight',
    basis: 'assumed',
  },
  hoods: {
    label: 'entry loss of hoods',
    cause: 'hoods',
    field: 'coefficients',
    plusMinus: 0.25,
    source: 'none: a printed figure for a hood of about this shape',
    basis: 'common-practice',
  },
  fittings: {
    label: 'coefficients of fittings',
    cause: 'fittings',
    field: 'coefficients',
    plusMinus: 0.2,
    source: 'none: tables of different authors differ by about this for elbows and junctions',
    basis: 'common-practice',
  },
  leaks: {
    label: 'discharge coefficient of leaks',
    cause: 'leaks',
    field: 'coefficients',
    plusMinus: 0.3,
    source: 'none: shape and edge of a leak are seldom known',
    basis: 'assumed',
  },
  reading: {
    label: 'losses read in the shop',
    cause: 'fittings',
    field: 'coefficients',
    plusMinus: 0.1,
    source: 'none: a pressure and a flow read with home-made gauges',
    basis: 'assumed',
  },
  'cyclone-models': {
    label: 'loss of a cyclone',
    cause: 'separator',
    field: 'separator',
    plusMinus: null,
    source: 'how far the other pressure-drop models lie from the chosen one, for this cyclone',
    basis: 'from-memory',
  },
  bin: {
    label: 'loss of a drop-out bin',
    cause: 'separator',
    field: 'separator',
    plusMinus: 0.3,
    source: 'none: sudden expansion and contraction, with a baffle of some shape between',
    basis: 'assumed',
  },
  'separator-reading': {
    label: 'loss of a separator read in the shop',
    cause: 'separator',
    field: 'separator',
    plusMinus: 0.1,
    source: 'none: a pressure and a flow read with home-made gauges',
    basis: 'assumed',
  },
  'filter-clean': {
    label: 'clean resistance of a filter',
    cause: 'filter',
    field: 'filter',
    plusMinus: 0.3,
    source: 'none: a medium in use, cleaned but not new',
    basis: 'common-practice',
  },
  'filter-cake': {
    label: 'cake on a filter',
    cause: 'filter',
    field: 'filter',
    plusMinus: 1,
    source:
      'half to double: published cakes of all dusts span a factor of 33 (EPA Air Pollution Control Cost Manual, Sec 6 Ch 1), wood dust alone less',
    basis: 'assumed',
  },
};

/** A range as it was used, for those who read the result. */
export interface UsedRange {
  readonly id: RangeId;
  readonly label: string;
  readonly cause: CauseId;
  /** Id of the thing where the range is its own, such as the cyclone; null where one range serves all. */
  readonly where: string | null;
  /** See `RangeRow.plusMinus` [-]; null where whole curves are drawn. */
  readonly plusMinus: number | null;
  /** True where the document gives it. */
  readonly given: boolean;
  readonly source: string;
  readonly basis: string;
}

/**
 * Standard deviation of the logarithm of a figure that is known to plus or minus a share.
 *
 * Figures here are multiplied by `exp(sigma z)`, `z` standard normal: a resistance never falls below zero, as a normal
 * spread would let it, the nominal figure is the middle one, and too high by a factor is as likely as too low by it.
 * Two standard deviations reach `1 + plusMinus`, so `sigma = ln(1 + plusMinus) / 2`.
 *
 * @param plusMinus - plus or minus, nineteen times in twenty [-], zero or more
 */
export const spreadOf = (plusMinus: number): number => Math.log1p(plusMinus) / 2;

/** The share, nineteen times in twenty, that belongs to a standard deviation of the logarithm [-]. */
export const plusMinusOf = (spread: number): number => Math.expm1(2 * spread);

/** The document's own share for a range, or null where its default holds. */
export function givenRange(document: ShopDocument, id: RangeId): number | null {
  return document.ranges?.[DEFAULT_RANGES[id].field]?.si ?? null;
}

/**
 * Spread of models about the chosen one: root of the mean square of the logarithms of the others over it.
 *
 * The chosen model stays the middle case, since the person chose it; one that lies apart from the others is spread
 * as far as they lie from it, on both sides.
 *
 * @param chosen - figure of the chosen model, above zero
 * @param others - figures of the other models, above zero
 */
export function modelSpread(chosen: number, others: readonly number[]): number {
  if (others.length === 0) return 0;
  const squares = others.map((other) => Math.log(other / chosen) ** 2);
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / others.length);
}
