import type { Sourced } from '../quantities/sourced.ts';

/** What a wheel is made of. */
export type RotorMaterialKind = 'print' | 'wood' | 'metal';

/** Material of a rotor, in one direction where its directions differ: the weakest that the load meets decides. */
export interface RotorMaterial extends Sourced {
  readonly id: string;
  readonly label: string;
  readonly kind: RotorMaterialKind;
  readonly density_kgm3: number;
  readonly youngsModulus_Pa: number;
  readonly poissonRatio: number;
  /** Short-term tension at room temperature; of a metal its yield [Pa]. */
  readonly strength_Pa: number;
  /** Where it softens, by glass transition [K]; null where nothing softens in a workshop. */
  readonly softening_K: number | null;
  /** Least strength over stress [-], from MINIMUM_FACTORS. */
  readonly minimumFactor: number;
  /** What density, modulus and softening rest on, where it is not what the strength rests on. */
  readonly bulk?: Sourced;
  /** Of Poisson's ratio likewise. */
  readonly poisson?: Sourced;
}

interface FactorRow extends Sourced {
  readonly factor: number;
}

const PRACTICE = 'practice for home-made wheels, 4 to 6 for prints and 4 for wood; no standard covers them';

/** Least safety factors of rotors on short-term strength at room temperature, and what they rest on. */
export const MINIMUM_FACTORS = {
  printInPlane: { factor: 5, source: PRACTICE, basis: 'common-practice' },
  /** The top of the span: a missed layer shows nowhere. */
  printAcross: { factor: 6, source: PRACTICE, basis: 'common-practice' },
  wood: { factor: 4, source: PRACTICE, basis: 'common-practice' },
  fibreboard: { factor: 6, source: 'no source; board without grain, with a weak core', basis: 'assumed' },
  metal: {
    factor: 3,
    source:
      'no source; on yield, to leave room for holes, welds and fatigue that the disc formula leaves out',
    basis: 'assumed',
  },
} as const satisfies Record<string, FactorRow>;

interface TipRow extends Sourced {
  readonly highest_ms: number;
}

/** Tip speeds at which practice stops, by what the wheel is made of: blades, hub and joints give way before the disc. */
export const TIP_SPEED_PRACTICE = {
  print: {
    highest_ms: 70,
    source: 'trade figures of 60 to 70 m/s for prints, no source',
    basis: 'common-practice',
  },
  wood: {
    highest_ms: 80,
    source: 'trade figures of 70 to 80 m/s for plywood, no source',
    basis: 'common-practice',
  },
  metal: {
    highest_ms: 150,
    source: 'trade figures of 100 to 150 m/s for welded steel wheels, no source',
    basis: 'common-practice',
  },
} as const satisfies Record<RotorMaterialKind, TipRow>;

/** From degrees Celsius. */
const celsius = (degrees: number) => degrees + 273.15;

const PLASTICS =
  'modulus of the plastic as quoted in Processes 13 (2025) 2733, of which a print has a little less; Poisson ratio assumed';
/** The plastic itself, as its page has it. */
const PETG = {
  bulk: {
    source:
      'Processes 13 (2025) 2733, page read: 1270 kg/m3, 2.0 GPa, softens at 71 °C; a print has a little less',
    basis: 'published',
  },
  poisson: { source: 'no source', basis: 'assumed' },
} as const satisfies Partial<RotorMaterial>;
const AHN =
  'Ahn et al., Rapid Prototyping J. 8 (2002): 10 to 73 % of moulded strength, by direction of the strands';
const PLYWOOD =
  'Handbook of Finnish Plywood, characteristic tension; Poisson ratio assumed, on the safe side: plywood has less';
const AL_6061 =
  'typical figures of the Aluminum Association as quoted on two suppliers’ sheets: 2700 kg/m3, 68.9 GPa, 0.33, yield 276 MPa; 10 % less at 100 °C';

/** Materials of rotors; every strength can be overruled by the user's own test bars. */
export const ROTOR_MATERIALS = [
  {
    id: 'pla-in-plane',
    label: 'printed PLA, load within the layers',
    kind: 'print',
    density_kgm3: 1240,
    youngsModulus_Pa: 3.5e9,
    poissonRatio: 0.36,
    strength_Pa: 40e6,
    softening_K: celsius(55),
    minimumFactor: MINIMUM_FACTORS.printInPlane.factor,
    source: `strength: low end of 40 to 60 MPa; softens at 55 to 60 °C; ${PLASTICS}`,
    basis: 'from-memory',
  },
  {
    id: 'pla-across-layers',
    label: 'printed PLA, load across the layers',
    kind: 'print',
    density_kgm3: 1240,
    youngsModulus_Pa: 3.5e9,
    poissonRatio: 0.36,
    strength_Pa: 22.8e6,
    softening_K: celsius(55),
    minimumFactor: MINIMUM_FACTORS.printAcross.factor,
    source: `strength: mean of upright specimens, 3D Printing and Additive Manufacturing 2020, doi 10.1089/3dp.2020.0109; softening from memory; ${PLASTICS}`,
    basis: 'published',
  },
  {
    id: 'petg-in-plane',
    label: 'printed PETG, load within the layers',
    kind: 'print',
    density_kgm3: 1270,
    youngsModulus_Pa: 2.0e9,
    poissonRatio: 0.38,
    strength_Pa: 40e6,
    softening_K: celsius(71),
    minimumFactor: MINIMUM_FACTORS.printInPlane.factor,
    source: 'strength: low end of 40 to 50 MPa; printed bars 44 to 56 on a page read',
    basis: 'from-memory',
    ...PETG,
  },
  {
    id: 'petg-across-layers',
    label: 'printed PETG, load across the layers',
    kind: 'print',
    density_kgm3: 1270,
    youngsModulus_Pa: 2.0e9,
    poissonRatio: 0.38,
    strength_Pa: 20e6,
    softening_K: celsius(71),
    minimumFactor: MINIMUM_FACTORS.printAcross.factor,
    source: 'strength: low end of 20 to 35 MPa; upright printed bars 25 to 38 on a page read',
    basis: 'from-memory',
    ...PETG,
  },
  {
    id: 'abs-in-plane',
    label: 'printed ABS or ASA, load within the layers',
    kind: 'print',
    density_kgm3: 1040,
    youngsModulus_Pa: 2.1e9,
    poissonRatio: 0.36,
    strength_Pa: 25e6,
    softening_K: celsius(105),
    minimumFactor: MINIMUM_FACTORS.printInPlane.factor,
    source: `strength: low end of 25 to 40 MPa, ${AHN}; softening 105 °C from memory; ASA taken as ABS; ${PLASTICS}`,
    basis: 'from-memory',
  },
  {
    id: 'abs-across-layers',
    label: 'printed ABS or ASA, load across the layers',
    kind: 'print',
    density_kgm3: 1040,
    youngsModulus_Pa: 2.1e9,
    poissonRatio: 0.36,
    strength_Pa: 10e6,
    softening_K: celsius(105),
    minimumFactor: MINIMUM_FACTORS.printAcross.factor,
    source: `strength: low end of 10 to 25 MPa, ${AHN}; softening 105 °C from memory; ASA taken as ABS; ${PLASTICS}`,
    basis: 'from-memory',
  },
  {
    id: 'glass-nylon-in-plane',
    label: 'printed nylon with glass fibre, dry, load within the layers',
    kind: 'print',
    density_kgm3: 1350,
    youngsModulus_Pa: 3e9,
    poissonRatio: 0.36,
    strength_Pa: 50e6,
    softening_K: celsius(55),
    minimumFactor: MINIMUM_FACTORS.printInPlane.factor,
    source:
      'no source; below what filament sheets claim. Damp nylon is weaker and softer; softening is the glass transition of dry nylon 6, past which it creeps though it keeps its shape',
    basis: 'assumed',
  },
  {
    id: 'glass-nylon-across-layers',
    label: 'printed nylon with glass fibre, dry, load across the layers',
    kind: 'print',
    density_kgm3: 1350,
    youngsModulus_Pa: 2e9,
    poissonRatio: 0.36,
    strength_Pa: 20e6,
    softening_K: celsius(55),
    minimumFactor: MINIMUM_FACTORS.printAcross.factor,
    source:
      'no source; fibres do not cross the layers. Damp nylon is weaker and softer; softening as within the layers',
    basis: 'assumed',
  },
  {
    id: 'birch-plywood-across',
    label: 'birch plywood, across the face grain (a whole wheel meets this)',
    kind: 'wood',
    density_kgm3: 680,
    youngsModulus_Pa: 8e9,
    poissonRatio: 0.3,
    strength_Pa: 35e6,
    softening_K: null,
    minimumFactor: MINIMUM_FACTORS.wood.factor,
    source: `${PLYWOOD}; damp or long-loaded plywood has half`,
    basis: 'from-memory',
  },
  {
    id: 'birch-plywood-along',
    label: 'birch plywood, along the face grain (a straight blade)',
    kind: 'wood',
    density_kgm3: 680,
    youngsModulus_Pa: 9e9,
    poissonRatio: 0.3,
    strength_Pa: 40e6,
    softening_K: null,
    minimumFactor: MINIMUM_FACTORS.wood.factor,
    source: `${PLYWOOD}; damp or long-loaded plywood has half`,
    basis: 'from-memory',
  },
  {
    id: 'mdf',
    label: 'MDF, dry, in its plane',
    kind: 'wood',
    density_kgm3: 750,
    youngsModulus_Pa: 2.5e9,
    poissonRatio: 0.3,
    strength_Pa: 12e6,
    softening_K: null,
    minimumFactor: MINIMUM_FACTORS.fibreboard.factor,
    source: 'about the characteristic tension of EN 12369-1 for load-bearing MDF; the rest assumed',
    basis: 'from-memory',
  },
  {
    id: 'aluminium-6061-t6',
    label: 'aluminium 6061-T6, not welded',
    kind: 'metal',
    density_kgm3: 2700,
    youngsModulus_Pa: 68.9e9,
    poissonRatio: 0.33,
    strength_Pa: 276e6,
    softening_K: null,
    minimumFactor: MINIMUM_FACTORS.metal.factor,
    source: AL_6061,
    basis: 'published',
  },
  {
    id: 'aluminium-6082-t6',
    label: 'aluminium 6082-T6, not welded',
    kind: 'metal',
    density_kgm3: 2700,
    youngsModulus_Pa: 70e9,
    poissonRatio: 0.33,
    strength_Pa: 250e6,
    softening_K: null,
    minimumFactor: MINIMUM_FACTORS.metal.factor,
    source: 'EN 755-2, yield 250 MPa; 10 % less at 100 °C',
    basis: 'from-memory',
  },
  {
    id: 'mild-steel',
    label: 'mild steel S235',
    kind: 'metal',
    density_kgm3: 7850,
    youngsModulus_Pa: 210e9,
    poissonRatio: 0.3,
    strength_Pa: 235e6,
    softening_K: null,
    minimumFactor: MINIMUM_FACTORS.metal.factor,
    source: 'EN 10025-2, yield 235 MPa up to 16 mm; EN 1993-1-1',
    basis: 'from-memory',
  },
] as const satisfies readonly RotorMaterial[];

/** Key of a rotor material. */
export type RotorMaterialId = (typeof ROTOR_MATERIALS)[number]['id'];

/** The row of a rotor material; undefined where the catalogue has none of that name. */
export function rotorMaterial(id: string): RotorMaterial | undefined {
  return ROTOR_MATERIALS.find((row) => row.id === id);
}
