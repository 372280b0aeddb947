import { MOIST_AIR_RANGE } from '../air/moist-air.ts';
import { ALTITUDE_RANGE } from '../air/standard-atmosphere.ts';
import { VISCOSITY_RANGE } from '../air/viscosity.ts';
import { FRICTION_RANGE } from '../duct/colebrook.ts';
import { COMPRESSED_HOSE_RANGE, HAWTHORNE_RANGE, HOSE_BEND_RANGE } from '../duct/hose.ts';
import { BRANCH_CORRECTION_RANGE } from '../fittings/branch-correction.ts';
import { BRUSH_SHOE_RANGE } from '../fittings/brush-shoe.ts';
import { CAPTURE_RANGE } from '../fittings/capture.ts';
import { TAPERED_HOOD_RANGE } from '../fittings/entry.ts';
import { LEAK_RANGE, WEATHER_CAP_RANGE } from '../fittings/exit.ts';
import { SLIDE_GATE_RANGE } from '../fittings/gate.ts';
import { JUNCTION_RANGE } from '../fittings/junction.ts';
import { STEP_RANGE, TAPERED_CONTRACTION_RANGE } from '../fittings/size-change.ts';
import { TAPERED_EXPANSION_RANGE } from '../fittings/tapered-expansion.ts';
import type { Relation } from './relation.ts';

/** Relations of air, ducts and fittings; source and basis as the doc comment of each function has them. */
export const DUCT_RELATIONS = {
  moistAir: {
    what: 'density of moist air',
    file: 'air/moist-air.ts',
    fn: 'moistAirDensity',
    source:
      'Picard, Davis, Glaeser and Fujii, CIPM-2007, Metrologia 45 (2008) 149-155, as quoted in open libraries',
    basis: 'published',
    range: MOIST_AIR_RANGE,
  },
  vapourPressure: {
    what: 'vapour pressure of water',
    file: 'air/moist-air.ts',
    fn: 'saturationPressure',
    source:
      'Picard, Davis, Glaeser and Fujii, CIPM-2007, Metrologia 45 (2008) 149-155, appendix A1.1, as quoted in open libraries',
    basis: 'published',
    range: MOIST_AIR_RANGE,
  },
  altitude: {
    what: 'pressure of the room by altitude',
    file: 'air/standard-atmosphere.ts',
    fn: 'pressureAtAltitude',
    source: 'U.S. Standard Atmosphere, 1976, equation 33a, as quoted in an open library',
    basis: 'published',
    range: ALTITUDE_RANGE,
  },
  viscosity: {
    what: 'viscosity of air',
    file: 'air/viscosity.ts',
    fn: 'sutherlandViscosity',
    source: 'U.S. Standard Atmosphere, 1976, equation 51, as quoted in an open library',
    basis: 'published',
    range: VISCOSITY_RANGE,
  },
  thinning: {
    what: 'air that thins as its pressure falls, at one temperature',
    file: 'duct/straight.ts',
    fn: 'isothermalOutletPressure',
    source:
      'Rennels and Hudson, Pipe Flow, Wiley, 2012, isothermal flow; Crane TP-410; the equation as quoted in an open library',
    basis: 'published',
  },
  velocityPressure: {
    what: 'velocity pressure',
    file: 'duct/straight.ts',
    fn: 'velocityPressure',
    source: 'ISO 5801 and any text on fluid mechanics: dynamic pressure',
    basis: 'published',
  },
  ductFriction: {
    what: 'loss of a length by its friction factor',
    file: 'duct/straight.ts',
    fn: 'darcyWeisbachDrop',
    source: 'Darcy-Weisbach, for instance Rennels and Hudson, Pipe Flow, Wiley, 2012, ch. 3',
    basis: 'published',
  },
  colebrook: {
    what: 'friction factor of turbulent flow',
    file: 'duct/colebrook.ts',
    fn: 'colebrookFriction',
    source:
      'Colebrook, Turbulent flow in pipes, J. ICE 11 (1939) no. 4, as in White, Fluid Mechanics, eq 6.64; Clamond, Ind. Eng. Chem. Res. 48 (2009)',
    basis: 'published',
    range: FRICTION_RANGE,
  },
  slowFlow: {
    what: 'friction of slow flow, and the blend up to turbulent flow',
    file: 'duct/friction.ts',
    fn: 'frictionGroup',
    source:
      'Hagen-Poiseuille; Colebrook 1939; Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) for the slopes',
    basis: 'from-memory',
  },
  corrugated: {
    what: 'friction of corrugated hose',
    file: 'duct/hose.ts',
    fn: 'hawthorneFriction',
    source: 'Hawthorne, Product Engineering, 10 June 1963',
    basis: 'published',
    range: HAWTHORNE_RANGE,
  },
  compressedHose: {
    what: 'friction of hose that is pushed together',
    file: 'duct/hose.ts',
    fn: 'compressedHoseFactor',
    source: 'ASHRAE Fundamentals, 2009 and later, ch. 21; after Abushakra, Walker and Sherman',
    basis: 'from-memory',
    range: COMPRESSED_HOSE_RANGE,
  },
  hoseBend: {
    what: 'loss of a bend of hose beyond its friction',
    file: 'duct/hose.ts',
    fn: 'hoseBendCoefficient',
    source:
      'practice: a smooth elbow, times 1.5 to 2 where tighter than R/D 1.5; the taper to 1 at R/D 2 is ours',
    basis: 'common-practice',
    range: HOSE_BEND_RANGE,
  },
  elbow: {
    what: 'loss of an elbow by its style, radius and angle',
    file: 'fittings/elbow.ts',
    fn: 'elbowCoefficient',
    source:
      'SMACNA, HVAC Systems Duct Design, 4th ed., table A-7; ACGIH, Industrial Ventilation, figure 5-16; ASHRAE Fundamentals for the angle factors',
    basis: 'published',
  },
  mitre: {
    what: 'loss of a mitre by its angle',
    file: 'fittings/elbow.ts',
    fn: 'mitreCoefficient',
    source: 'Rennels and Hudson, Pipe Flow, Wiley, 2012, mitre bends',
    basis: 'from-memory',
  },
  suddenExpansion: {
    what: 'loss where a duct widens in one step',
    file: 'fittings/size-change.ts',
    fn: 'suddenExpansion',
    source: 'Borda-Carnot, as in Rennels and Hudson, Pipe Flow, Wiley, 2012, as quoted in an open library',
    basis: 'published',
    range: STEP_RANGE,
  },
  suddenContraction: {
    what: 'loss where a duct narrows in one step',
    file: 'fittings/size-change.ts',
    fn: 'suddenContraction',
    source:
      'Rennels and Hudson, Pipe Flow, Wiley, 2012, ch. 10, sharp-edged contraction, as quoted in an open library',
    basis: 'published',
    range: STEP_RANGE,
  },
  taperedContraction: {
    what: 'loss of a taper that narrows',
    file: 'fittings/size-change.ts',
    fn: 'taperedContraction',
    source:
      'Rennels and Hudson, Pipe Flow, Wiley, 2012, ch. 10, conical contraction, as quoted in an open library',
    basis: 'published',
    range: TAPERED_CONTRACTION_RANGE,
  },
  taperedExpansion: {
    what: 'loss of a taper that widens',
    file: 'fittings/tapered-expansion.ts',
    fn: 'taperedExpansion',
    source:
      'Rennels and Hudson, Pipe Flow, Wiley, 2012, ch. 11, conical diffuser, as quoted in an open library',
    basis: 'published',
    range: TAPERED_EXPANSION_RANGE,
  },
  gate: {
    what: 'loss of a slide gate by its opening',
    file: 'fittings/gate.ts',
    fn: 'slideGateCoefficient',
    source: 'Idelchik, Handbook of Hydraulic Resistance, diagram 9-5, circular cross-section',
    basis: 'published',
    range: SLIDE_GATE_RANGE,
  },
  taperedHood: {
    what: 'entry loss of a tapered hood by its angle',
    file: 'fittings/entry.ts',
    fn: 'taperedHoodCoefficient',
    source: 'ACGIH, Industrial Ventilation, hood entry losses, p. 5-35',
    basis: 'published',
    range: TAPERED_HOOD_RANGE,
  },
  slotHood: {
    what: 'entry loss of a slot with a plenum behind it',
    file: 'fittings/entry.ts',
    fn: 'slotHoodCoefficient',
    source: 'ACGIH, Industrial Ventilation, compound hoods',
    basis: 'from-memory',
  },
  brushShoe: {
    what: 'entry loss of a shoe with a brush skirt',
    file: 'fittings/brush-shoe.ts',
    fn: 'brushShoeCoefficient',
    source: 'practice: the skirt as a sharp-edged slot (1.78), the throat as a hood entry',
    basis: 'assumed',
    range: BRUSH_SHOE_RANGE,
  },
  capture: {
    what: 'flow that captures at a distance',
    file: 'fittings/capture.ts',
    fn: 'captureFlow',
    source: 'DallaValle, 1930s, as in ACGIH, Industrial Ventilation, figure 3-11',
    basis: 'from-memory',
    range: CAPTURE_RANGE,
  },
  stackExit: {
    what: 'loss of a free outlet: its velocity pressure',
    file: 'fittings/exit.ts',
    fn: 'stackExit',
    source:
      'Rennels and Hudson, Pipe Flow, Wiley, 2012, exits, as quoted in an open library; ACGIH, Industrial Ventilation, ch. 5',
    basis: 'published',
  },
  weatherCap: {
    what: 'loss of a weather cap by its gap',
    file: 'fittings/exit.ts',
    fn: 'weatherCapCoefficient',
    source: 'ACGIH, Industrial Ventilation, figure 5-15',
    basis: 'from-memory',
    range: WEATHER_CAP_RANGE,
  },
  leak: {
    what: 'flow through a hole',
    file: 'fittings/exit.ts',
    fn: 'orificeLeakCoefficient',
    source: 'ISO 5167-2 in the limit of a small hole, coefficient 0.60',
    basis: 'from-memory',
    range: LEAK_RANGE,
  },
  junction: {
    what: 'streams that mix at a junction, by momentum',
    file: 'fittings/junction.ts',
    fn: 'junctionLegPressures',
    source:
      'Idelchik, Handbook of Hydraulic Resistance, 3rd ed., ch. 7 (momentum theory after Levin and Taliev)',
    basis: 'from-memory',
    range: JUNCTION_RANGE,
  },
  branchFactor: {
    what: 'factor on a branch, by its share of flow and area',
    file: 'fittings/branch-correction.ts',
    fn: 'branchCorrection',
    source: 'Idelchik, Handbook of Hydraulic Resistance, 3rd ed., 2006, p. 417, table 7-1',
    basis: 'published',
    range: BRANCH_CORRECTION_RANGE,
  },
  branchBlend: {
    what: 'blend of the branch factor where a flow turns round',
    file: 'fittings/branch-correction.ts',
    fn: 'branchCorrectionWeight',
    source: 'Idelchik, Handbook of Hydraulic Resistance, 3rd ed., 2006, p. 417',
    basis: 'assumed',
  },
} as const satisfies Readonly<Record<string, Relation>>;
