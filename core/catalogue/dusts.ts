import type { Sourced } from '../quantities/sourced.ts';

/** Dust classes of the catalogue. */
export type DustClassId =
  | 'wood-chips'
  | 'planer-shavings'
  | 'sawdust-dry'
  | 'sawdust-damp'
  | 'sanding-dust'
  | 'mdf-routing'
  | 'foam-routing'
  | 'very-light-dust'
  | 'heavy-dust';

/** The numbers of a dust class. */
export interface DustNumbers {
  /** Velocity that carries it in a level run [m/s]. */
  readonly requiredVelocity_ms: number;
  /** Velocity above which pressure is wasted [m/s]. */
  readonly highVelocity_ms: number;
  /** Velocity needed after a separator, where only fine dust travels [m/s]. */
  readonly fineVelocity_ms: number;
  /** A single particle with its voids [kg/m3]. */
  readonly particleDensity_kgm3: number;
  /** Loose heap [kg/m3]. */
  readonly bulkDensity_kgm3: number;
  /** Mass median of a lognormal size distribution [m]. */
  readonly medianSize_m: number;
  /** Geometric standard deviation of it [-]. */
  readonly geometricDeviation: number;
}

/** A dust class. `source` and `basis` speak of the required velocity; `fields` of the numbers that rest elsewhere. */
export interface DustClass extends DustNumbers, Sourced {
  readonly id: DustClassId;
  readonly label: string;
  /** Whether its dust can burn or explode; the caution text stands in core/checks. */
  readonly combustible: boolean;
  readonly fields: Readonly<Record<Exclude<keyof DustNumbers, 'requiredVelocity_ms'>, Sourced>>;
}

const ACGIH = 'ACGIH Industrial Ventilation 2009, minimum duct velocities (secondary copy read)';
const HSG258 = 'HSE HSG258, 3rd ed. 2017, minimum duct velocities';
const ISO = 'ISO 19085-1 and EN 12779, woodworking machines';

const WASTEFUL: Sourced = {
  source: 'no source; loss has doubled at about 1.4 times the required velocity',
  basis: 'common-practice',
};
const FINE: Sourced = {
  source: `very fine light dust 2500-3000 fpm, lower end, as chips are left behind: ${ACGIH}`,
  basis: 'published',
};
const PLANNING: Sourced = {
  source: 'no source; planning figure for the size of such dust',
  basis: 'assumed',
};
const WOOD_DENSITY: Sourced = {
  source: 'USDA Wood Handbook ch. 4: softwood 350-600, hardwood 500-800 with voids',
  basis: 'from-memory',
};
const TRADE_BULK: Sourced = { source: 'trade figures', basis: 'common-practice' };
const CHIP_BULK: Sourced = {
  source: 'Briggs, Forest Products Measurements, Table 7-2, loose dry chips 105-134',
  basis: 'published',
};

/** What most rows share. */
const COMMON_FIELDS = {
  highVelocity_ms: WASTEFUL,
  fineVelocity_ms: FINE,
  particleDensity_kgm3: WOOD_DENSITY,
  bulkDensity_kgm3: TRADE_BULK,
  medianSize_m: PLANNING,
  geometricDeviation: PLANNING,
} as const;

/** Dust classes of a small shop. Sizes are of the bulk that falls into the hood; airborne samples are much finer. */
export const DUST_CLASSES: Readonly<Record<DustClassId, DustClass>> = {
  'wood-chips': {
    id: 'wood-chips',
    label: 'Wood chips, dry (routing, milling)',
    requiredVelocity_ms: 20,
    highVelocity_ms: 28,
    fineVelocity_ms: 12.7,
    particleDensity_kgm3: 550,
    bulkDensity_kgm3: 134,
    medianSize_m: 1.5e-3,
    geometricDeviation: 4.5,
    combustible: true,
    source: `dry chips 20 m/s: ${ISO}; wood shavings about 20: ${HSG258}`,
    basis: 'from-memory',
    fields: { ...COMMON_FIELDS, bulkDensity_kgm3: CHIP_BULK },
  },
  'planer-shavings': {
    id: 'planer-shavings',
    label: 'Planer shavings, dry',
    requiredVelocity_ms: 20,
    highVelocity_ms: 28,
    fineVelocity_ms: 12.7,
    particleDensity_kgm3: 500,
    bulkDensity_kgm3: 100,
    medianSize_m: 4e-3,
    geometricDeviation: 2.5,
    combustible: true,
    source: `light shavings 15-20 m/s, upper end: ${ACGIH}; wood shavings about 20: ${HSG258}; dry chips 20: ${ISO}`,
    basis: 'published',
    fields: {
      ...COMMON_FIELDS,
      medianSize_m: {
        source: 'mostly 2-8 mm, under 1 % below 0.125 mm: Barcik and Gasparik, BioResources 9(1), 2014',
        basis: 'published',
      },
    },
  },
  'sawdust-dry': {
    id: 'sawdust-dry',
    label: 'Sawdust, dry',
    requiredVelocity_ms: 18,
    highVelocity_ms: 25,
    fineVelocity_ms: 12.7,
    particleDensity_kgm3: 550,
    bulkDensity_kgm3: 200,
    medianSize_m: 225e-6,
    geometricDeviation: 3,
    combustible: true,
    source: `18-20 m/s for average dust: ${ACGIH}; sources run from 15 (${HSG258}) to 20 (${ISO})`,
    basis: 'published',
    fields: COMMON_FIELDS,
  },
  'sawdust-damp': {
    id: 'sawdust-damp',
    label: 'Sawdust and chips, damp',
    requiredVelocity_ms: 25,
    highVelocity_ms: 35,
    fineVelocity_ms: 12.7,
    particleDensity_kgm3: 800,
    bulkDensity_kgm3: 300,
    medianSize_m: 500e-6,
    geometricDeviation: 3,
    combustible: true,
    source: `damp dust about 25 m/s: ${HSG258}; wet chips 28: ${ISO}; heavy and wet 20-23: ${ACGIH}`,
    basis: 'from-memory',
    fields: {
      ...COMMON_FIELDS,
      particleDensity_kgm3: { source: 'no source; dry wood plus its water', basis: 'assumed' },
    },
  },
  'sanding-dust': {
    id: 'sanding-dust',
    label: 'Sanding dust and wood flour',
    requiredVelocity_ms: 15,
    highVelocity_ms: 23,
    fineVelocity_ms: 12.7,
    particleDensity_kgm3: 600,
    bulkDensity_kgm3: 200,
    medianSize_m: 20e-6,
    geometricDeviation: 2.3,
    combustible: true,
    source: `wood flour 12-15 m/s: ${ACGIH}; fine dust 15: ${HSG258}`,
    basis: 'published',
    fields: COMMON_FIELDS,
  },
  'mdf-routing': {
    id: 'mdf-routing',
    label: 'MDF dust (routing, sawing)',
    requiredVelocity_ms: 18,
    highVelocity_ms: 25,
    fineVelocity_ms: 12.7,
    particleDensity_kgm3: 700,
    bulkDensity_kgm3: 240,
    medianSize_m: 150e-6,
    geometricDeviation: 3.3,
    combustible: true,
    source: `MDF dust 15-20 m/s: page of a trade body, read; average dust 18-20: ${ACGIH}`,
    basis: 'common-practice',
    fields: {
      ...COMMON_FIELDS,
      particleDensity_kgm3: { source: 'board of 600-850: EN 316, EN 622', basis: 'from-memory' },
    },
  },
  'foam-routing': {
    id: 'foam-routing',
    label: 'Foam board dust (routing)',
    requiredVelocity_ms: 15,
    highVelocity_ms: 23,
    fineVelocity_ms: 13,
    particleDensity_kgm3: 35,
    bulkDensity_kgm3: 20,
    medianSize_m: 550e-6,
    geometricDeviation: 3,
    combustible: true,
    source: 'no source found for foam; taken as very fine light dust, higher end. Clings by static charge',
    basis: 'assumed',
    fields: {
      ...COMMON_FIELDS,
      fineVelocity_ms: { source: 'no source; low end of very fine light dust', basis: 'assumed' },
      particleDensity_kgm3: { source: 'extruded polystyrene board 25-45', basis: 'from-memory' },
      bulkDensity_kgm3: { source: 'no source; 10-40', basis: 'assumed' },
    },
  },
  'very-light-dust': {
    id: 'very-light-dust',
    label: 'Very light dust (lint, cork, balsa)',
    requiredVelocity_ms: 15,
    highVelocity_ms: 23,
    fineVelocity_ms: 13,
    particleDensity_kgm3: 200,
    bulkDensity_kgm3: 60,
    medianSize_m: 100e-6,
    geometricDeviation: 3,
    combustible: true,
    source: `cotton lint, wood flour 12-15 m/s, higher end: ${ACGIH}`,
    basis: 'published',
    fields: {
      ...COMMON_FIELDS,
      fineVelocity_ms: { source: `very fine light dust 12-15 m/s, low end: ${ACGIH}`, basis: 'published' },
      particleDensity_kgm3: { source: 'no source; balsa and cork 120-250', basis: 'assumed' },
      bulkDensity_kgm3: { source: 'no source', basis: 'assumed' },
    },
  },
  'heavy-dust': {
    id: 'heavy-dust',
    label: 'Heavy dust (wood blocks, metal turnings)',
    requiredVelocity_ms: 23,
    highVelocity_ms: 32,
    fineVelocity_ms: 18,
    particleDensity_kgm3: 2700,
    bulkDensity_kgm3: 500,
    medianSize_m: 2e-3,
    geometricDeviation: 3,
    combustible: true,
    source: `wood blocks, metal turnings 20-23 m/s, higher end: ${ACGIH}; large or damp about 25: ${HSG258}`,
    basis: 'published',
    fields: {
      ...COMMON_FIELDS,
      fineVelocity_ms: { source: `average industrial dust 18-20 m/s: ${ACGIH}`, basis: 'published' },
      particleDensity_kgm3: { source: 'aluminium 2700', basis: 'from-memory' },
      bulkDensity_kgm3: { source: 'no source', basis: 'assumed' },
    },
  },
};
