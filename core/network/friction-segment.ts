import { MATERIALS } from '../catalogue/materials.ts';
import type { MaterialRow } from '../catalogue/materials.ts';
import { hawthorneFriction } from '../duct/hose.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import { FRICTION } from './net.ts';
import type { Segment } from './net.ts';
import { roundArea } from './round-area.ts';

const MATERIALS_BY_ID = new Map<string, MaterialRow>(MATERIALS.map((row) => [row.id, row]));

/** Material of a piece; names the field where there is none or it is unknown. */
export function materialOf(id: string | undefined): MaterialRow {
  if (id === undefined)
    throw new ImpossibleInput('material', 'not given', 'a material id, here or in the run');
  const row = MATERIALS_BY_ID.get(id);
  if (row === undefined) {
    throw new ImpossibleInput('material', id, `one of ${[...MATERIALS_BY_ID.keys()].join(', ')}`);
  }
  return row;
}

/** Rougher than this a wall would meet the one across [-]. */
const ROUGHEST = 0.5;

/** Roughness over diameter; names the field where the duct is so thin that its walls would meet. */
export function relativeRoughnessOf(roughness_m: number, diameter_m: number): number {
  const ratio = roughness_m / diameter_m;
  if (ratio <= ROUGHEST) return ratio;
  const least_mm = Number(((1000 * roughness_m) / ROUGHEST).toPrecision(3));
  throw new ImpossibleInput(
    'diameter',
    diameter_m,
    `at least ${least_mm} mm, twice the roughness of its wall`,
  );
}

/** Wall friction of a length; `fixed` where it does not change with flow, as in corrugated hose. */
export function frictionSegment(
  length_m: number,
  diameter_m: number,
  material: MaterialRow,
  factor = 1,
): { segment: Segment; fixed: boolean } {
  const pitch = material.corrugationPitch_m ?? null;
  const ratio = (factor * length_m) / diameter_m;
  return {
    fixed: pitch !== null,
    segment: {
      type: FRICTION,
      area_m2: roundArea(diameter_m),
      forward: ratio,
      backward: ratio,
      diameter_m,
      relativeRoughness: relativeRoughnessOf(material.roughness_m, diameter_m),
      fixedFriction: pitch === null ? -1 : hawthorneFriction(diameter_m, pitch),
    },
  };
}
