import { THIN_DISC_RANGE } from '../fan/rotor/spinning-disc.ts';
import { EXPANSIBILITY_RANGE } from '../fan/tests/expansibility.ts';
import { HOLE_PLATE_RANGE } from '../fan/tests/hole-plate.ts';
import { CONICAL_INLET_RANGE } from '../fan/tests/inlet-throat.ts';
import { ORIFICE_RANGE } from '../fan/tests/orifice-plate.ts';
import { WATER_DENSITY_RANGE } from '../fan/tests/water-gauge.ts';
import type { Relation } from './relation.ts';

/** Relations of fan tests and rotors; source and basis as the doc comment of each function has them. */
export const BENCH_RELATIONS = {
  waterColumn: {
    what: 'pressure by the rise of a water column',
    file: 'fan/tests/water-gauge.ts',
    fn: 'waterColumn',
    source: 'hydrostatics of a well-type manometer',
    basis: 'from-memory',
  },
  waterDensity: {
    what: 'density of water',
    file: 'fan/tests/water-gauge.ts',
    fn: 'waterDensity',
    source: 'Tanaka, Girard, Davis, Peuto and Bignell, Metrologia 38 (2001) 301-309, recommended equation',
    basis: 'published',
    range: WATER_DENSITY_RANGE,
  },
  holePlate: {
    what: 'flow through a plate with holes',
    file: 'fan/tests/hole-plate.ts',
    fn: 'holePlateFlow',
    source: 'ISO 5167 orifice as the diameter ratio tends to zero; Borda-Carnot for the pipe behind',
    basis: 'from-memory',
    range: HOLE_PLATE_RANGE,
  },
  expansibility: {
    what: 'how air widens behind a plate',
    file: 'fan/tests/expansibility.ts',
    fn: 'plateExpansibility',
    source: 'ISO 5167-2:2003, 5.3.2.2',
    basis: 'published',
    range: EXPANSIBILITY_RANGE,
  },
  orifice: {
    what: 'flow through an orifice plate',
    file: 'fan/tests/orifice-plate.ts',
    fn: 'orificeFlow',
    source: 'ISO 5167-2:2003; iteration as in ISO 5167-1',
    basis: 'published',
    range: ORIFICE_RANGE,
  },
  orificeError: {
    what: "error of an orifice plate's coefficient",
    file: 'fan/tests/orifice-plate.ts',
    fn: 'orificeCoefficientError',
    source: 'ISO 5167-2:2003, 5.3.3.1',
    basis: 'from-memory',
    range: ORIFICE_RANGE,
  },
  cone: {
    what: 'flow through a conical inlet',
    file: 'fan/tests/inlet-throat.ts',
    fn: 'conicalInletFlow',
    source: 'ISO 5801, conical inlet',
    basis: 'from-memory',
    range: CONICAL_INLET_RANGE,
  },
  bell: {
    what: 'flow through a bell inlet',
    file: 'fan/tests/inlet-throat.ts',
    fn: 'bellInletFlow',
    source: 'ISO 5801, inlet nozzle',
    basis: 'from-memory',
  },
  pitot: {
    what: 'mean velocity of a Pitot traverse',
    file: 'fan/tests/traverse.ts',
    fn: 'pitotMeanVelocity',
    source: 'ISO 3966',
    basis: 'from-memory',
  },
  traverseError: {
    what: 'error of a traverse by its number of points',
    file: 'fan/tests/traverse.ts',
    fn: 'traverseProfileError',
    source: 'none: a round figure for each class',
    basis: 'assumed',
  },
  tapped: {
    what: 'fan static pressure from the suction at its inlet',
    file: 'fan/tests/tapped-suction.ts',
    fn: 'fanStaticPressure',
    source: 'AMCA 210 / ISO 5801, fan pressures; Burton, Occupational Health and Safety',
    basis: 'published',
  },
  scales: {
    what: 'readings brought to one speed and density',
    file: 'fan/reduce/coefficients.ts',
    fn: 'coefficientScales',
    source:
      'Eck, Fans, Pergamon, 1973 (flow, pressure and power coefficients); fan laws of AMCA 210 / ISO 5801',
    basis: 'from-memory',
  },
  fit: {
    what: 'curve through readings with errors',
    file: 'fan/reduce/estimate.ts',
    fn: 'estimateCurve',
    source:
      'Gauss-Newton with a prior, as in Tarantola, Inverse Problem Theory, 2005, chapter 3; effective variance after Orear, Am. J. Phys. 50 (1982) 912',
    basis: 'from-memory',
  },
  pressureShape: {
    what: 'shapes that a pressure curve may have',
    file: 'fan/reduce/families.ts',
    fn: 'pressureFamily',
    source: 'none: drawn from the usual look of such curves; free delivery by a usual velocity in the outlet',
    basis: 'assumed',
  },
  powerShape: {
    what: 'shapes that a power curve may have',
    file: 'fan/reduce/families.ts',
    fn: 'powerFamily',
    source: 'none: drawn from the usual look of such curves',
    basis: 'assumed',
  },
  faintRise: {
    what: 'rises of a curve that are within its errors',
    file: 'fan/reduce/faint-rise.ts',
    fn: 'withoutFaintRise',
    source:
      'pool-adjacent-violators, Ayer and others, Ann. Math. Statist. 26 (1955) 641; the two errors are common practice',
    basis: 'published',
  },
  band: {
    what: 'band of a fan curve',
    file: 'fan/reduce/band.ts',
    fn: 'curveBand',
    source: 'JCGM 101:2008 (propagation of distributions by Monte Carlo)',
    basis: 'published',
  },
  solidDisc: {
    what: 'stress of a spinning disc without a bore',
    file: 'fan/rotor/spinning-disc.ts',
    fn: 'maxSolidDiscStress',
    source:
      "Lingaiah, Machine Design Databook, ch. 10; Timoshenko, Strength of Materials part II, rotating discs; Roark's Formulas, bodies under rotation",
    basis: 'published',
    range: THIN_DISC_RANGE,
  },
  boredDisc: {
    what: 'stress of a spinning disc with a bore',
    file: 'fan/rotor/spinning-disc.ts',
    fn: 'maxAnnularDiscStress',
    source: 'Shigley and Mischke, Mechanical Engineering Design, 5th ed., 1989, rotating rings',
    basis: 'published',
    range: THIN_DISC_RANGE,
  },
  discGrowth: {
    what: 'growth of a spinning disc',
    file: 'fan/rotor/spinning-disc.ts',
    fn: 'discGrowth',
    source:
      "Lingaiah, Machine Design Data Handbook, 2nd ed., 2001, hollow rotating disk; Roark's Formulas for Stress and Strain, 7th ed., bodies under rotation",
    basis: 'published',
    range: THIN_DISC_RANGE,
  },
  ringStress: {
    what: 'stress of a spinning ring',
    file: 'fan/rotor/thin-ring.ts',
    fn: 'thinRingStress',
    source: 'Timoshenko, Strength of Materials part II, rotating ring',
    basis: 'from-memory',
  },
  ringGrowth: {
    what: 'growth of a spinning ring',
    file: 'fan/rotor/thin-ring.ts',
    fn: 'thinRingGrowth',
    source: 'Timoshenko, Strength of Materials part II, rotating ring',
    basis: 'from-memory',
  },
  rimLoad: {
    what: 'stress of a disc that carries blades',
    file: 'fan/rotor/rim-load.ts',
    fn: 'rimLoadStress',
    source:
      "Lingaiah, Machine Design Data Handbook, 2nd ed., 2001, disc under external pressure; Lame's thick ring",
    basis: 'published',
  },
  rimGrowth: {
    what: 'growth of a disc that carries blades',
    file: 'fan/rotor/rim-load.ts',
    fn: 'rimLoadGrowth',
    source: "Roark's Formulas for Stress and Strain, 7th ed., thick-walled rings",
    basis: 'from-memory',
  },
  bladeRoot: {
    what: 'stress at the root of a blade',
    file: 'fan/rotor/blade-pull.ts',
    fn: 'bladeRootStress',
    source: 'common machine-design practice; blade root of a rotating wheel',
    basis: 'from-memory',
  },
  cutOff: {
    what: 'gap between wheel and cut-off edge',
    file: 'fan/rotor/gaps.ts',
    fn: 'judgeCutOff',
    source: 'shop practice for radial wheels, no one source for the bounds',
    basis: 'common-practice',
  },
} as const satisfies Readonly<Record<string, Relation>>;
