import type { Sourced } from '../quantities/sourced.ts';

/** An opening through which air enters a duct; `k` is its loss on the duct's velocity pressure. */
export interface EntryRow extends Sourced {
  readonly id: string;
  readonly label: string;
  readonly k: number;
}

const ACGIH = 'ACGIH, Industrial Ventilation, hood entry losses, p. 5-35';

/** Openings with one printed coefficient. */
export const ENTRIES = {
  plain: { id: 'plain', label: 'plain duct end', k: 0.93, source: ACGIH, basis: 'published' },
  flanged: { id: 'flanged', label: 'flanged duct end', k: 0.49, source: ACGIH, basis: 'published' },
  bell: { id: 'bell', label: 'bellmouth', k: 0.04, source: ACGIH, basis: 'published' },
  'sharp-flush': {
    id: 'sharp-flush',
    label: 'sharp edge flush with a wall',
    k: 0.5,
    source: 'ASHRAE Fundamentals; Idelchik, diagram 3-1. Rennels and Hudson give 0.57',
    basis: 'from-memory',
  },
  'thin-reentrant': {
    id: 'thin-reentrant',
    label: 'thin pipe standing out of a wall',
    k: 1,
    source: 'Idelchik, diagram 3-1',
    basis: 'from-memory',
  },
  'booth-direct': {
    id: 'booth-direct',
    label: 'booth, duct on its flat back',
    k: 0.5,
    source: ACGIH,
    basis: 'published',
  },
  'settling-chamber': {
    id: 'settling-chamber',
    label: 'trap or settling chamber',
    k: 1.5,
    source: ACGIH,
    basis: 'published',
  },
  'wheel-hood-straight': {
    id: 'wheel-hood-straight',
    label: 'grinding-wheel hood, straight take-off',
    k: 0.65,
    source: ACGIH,
    basis: 'published',
  },
  'wheel-hood-tapered': {
    id: 'wheel-hood-tapered',
    label: 'grinding-wheel hood, tapered take-off',
    k: 0.4,
    source: ACGIH,
    basis: 'published',
  },
} as const satisfies Record<string, EntryRow>;

/** Tapered hoods by full angle: loss on the duct's velocity pressure. */
export const TAPERED_HOODS = {
  angles_deg: [15, 30, 45, 60, 90, 120, 150, 180],
  round: [0.15, 0.08, 0.06, 0.08, 0.15, 0.26, 0.4, 0.5],
  rectangular: [0.25, 0.16, 0.15, 0.17, 0.25, 0.35, 0.48, 0.5],
  source: ACGIH,
  basis: 'published',
} as const satisfies Sourced & Record<string, unknown>;

/** Sharp-edged slot, on the slot's own velocity pressure, and the turn into the duct behind it, on the duct's. */
export const SLOT_HOOD: Sourced & { readonly slot: number; readonly duct: number } = {
  slot: 1.78,
  duct: 0.25,
  source: `${ACGIH}; 0.25 from memory`,
  basis: 'from-memory',
};
