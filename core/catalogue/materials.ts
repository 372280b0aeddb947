import type { Sourced } from '../quantities/sourced.ts';

/** A material that a run is made of. */
export interface MaterialRow extends Sourced {
  readonly id: string;
  readonly label: string;
  /** Hose, as against rigid duct. */
  readonly flexible: boolean;
  /** Roughness height, fully stretched if flexible [m]. */
  readonly roughness_m: number;
  /** Pitch of open corrugations [m]; where present, friction follows from it and not from the roughness. */
  readonly corrugationPitch_m?: number;
  /**
   * Suction at which it is likely to collapse [Pa]. Absent where no figure is known: then ask the maker, and keep clear
   * of any run that can be sucked against a shut gate.
   */
  readonly maxSuction_Pa?: number;
}

const ASHRAE = 'ASHRAE Fundamentals, Duct Design, roughness table';
const ACGIH = 'ACGIH, Industrial Ventilation, friction-constant table';

/** Ducts and hoses; every figure can be overruled by the user's own. */
export const MATERIALS = [
  {
    id: 'galvanised-spiral',
    label: 'galvanised steel, spiral or long joints',
    flexible: false,
    roughness_m: 0.09e-3,
    source: `${ASHRAE}: spiral 0.06 to 0.12 mm, average of such ducts 0.09`,
    basis: 'published',
  },
  {
    id: 'galvanised-seamed',
    label: 'galvanised steel, joint every 0.76 m',
    flexible: false,
    roughness_m: 0.15e-3,
    source: `${ASHRAE}: joints every 2.5 ft 0.15 mm; ${ACGIH}`,
    basis: 'published',
  },
  {
    id: 'pvc-pipe',
    label: 'PVC pipe with sockets',
    flexible: false,
    roughness_m: 0.03e-3,
    source: `${ASHRAE}, older editions; later ones have 0.009 to 0.046 mm and recommend 0.046`,
    basis: 'from-memory',
  },
  {
    id: 'smooth-plastic',
    label: 'drawn tube or smooth plastic, no joints',
    flexible: false,
    roughness_m: 0.0015e-3,
    source: 'Moody (1944); Crane, TP-410',
    basis: 'from-memory',
  },
  {
    id: 'aluminium',
    label: 'aluminium, stainless or black steel',
    flexible: false,
    roughness_m: 0.046e-3,
    source: `${ASHRAE}: commercial steel 0.046 mm, aluminium 0.037 to 0.061`,
    basis: 'published',
  },
  {
    id: 'printed-tube',
    label: 'printed tube, layers across the flow',
    flexible: false,
    roughness_m: 0.2e-3,
    source: 'about one layer height, no source',
    basis: 'assumed',
  },
  {
    id: 'hose-smooth-bore',
    label: 'smooth-bore hose with wire helix',
    flexible: true,
    roughness_m: 0.2e-3,
    source: 'trade figures of 0.05 to 0.3 mm, no source',
    basis: 'common-practice',
  },
  {
    id: 'hose-fabric-wire',
    label: 'fabric or film over wire, stretched',
    flexible: true,
    roughness_m: 0.91e-3,
    source: `${ASHRAE}: 0.09 to 0.9 mm, 0.9 recommended; older editions 1.0 to 4.6`,
    basis: 'published',
  },
  {
    id: 'hose-metal-flexible',
    label: 'flexible metal duct, stretched',
    flexible: true,
    roughness_m: 1.6e-3,
    source: `${ASHRAE}, 1.2 to 2.1 mm`,
    basis: 'from-memory',
  },
  {
    id: 'hose-corrugated',
    label: 'corrugated hose with open folds',
    flexible: true,
    roughness_m: 1e-3,
    corrugationPitch_m: 6e-3,
    source: 'pitch of common 50 to 63 mm hose, no source; measure yours. Roughness only for comparison',
    basis: 'assumed',
  },
] as const satisfies readonly MaterialRow[];

/** Key of a material. */
export type MaterialId = (typeof MATERIALS)[number]['id'];

/** The row of a material. */
export function material(id: MaterialId): MaterialRow {
  return MATERIALS.find((row) => row.id === id)!;
}
