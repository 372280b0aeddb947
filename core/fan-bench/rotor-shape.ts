import { rotorMaterial } from '../catalogue/rotor-materials.ts';
import type { FanDesign, Rotor } from '../document/schema-fans.ts';

/** Sizes of a rotor in SI; null where they are not given. */
export interface RotorShape {
  readonly form: Rotor['form'];
  readonly outerRadius_m: number;
  readonly innerRadius_m: number;
  readonly thickness_m: number | null;
  readonly blades: number | null;
  readonly bladeMass_kg: number | null;
  readonly bladeRadius_m: number | null;
  readonly bladeRootArea_m2: number | null;
}

/** Fields without which the pull of the blades on their disc cannot be told, by the name that a person reads. */
export const BLADE_FIELDS = [
  ['blades', 'number of blades'],
  ['bladeMass_kg', 'mass of a blade'],
  ['bladeRadius_m', 'radius of the blades’ centre of mass'],
  ['thickness_m', 'thickness of the disc'],
] as const;

/** Sizes of a design's rotor. */
export function shapeOf(design: FanDesign, rotor: Rotor): RotorShape {
  return {
    form: rotor.form,
    outerRadius_m: design.wheelDiameter.si / 2,
    innerRadius_m: rotor.bore.si / 2,
    thickness_m: rotor.thickness?.si ?? null,
    blades: rotor.blades ?? null,
    bladeMass_kg: rotor.bladeMass?.si ?? null,
    bladeRadius_m: rotor.bladeRadius?.si ?? null,
    bladeRootArea_m2: rotor.bladeRootArea?.si ?? null,
  };
}

/** What keeps a rotor from being worked out at all, each with the field to give or mend. */
export function rotorProblems(design: FanDesign): string[] {
  const { rotor } = design;
  if (!rotor) return [];
  const problems: string[] = [];
  if (!rotorMaterial(rotor.material))
    problems.push(`its material "${rotor.material}" is not in the catalogue`);
  const shape = shapeOf(design, rotor);
  if (shape.innerRadius_m >= shape.outerRadius_m) problems.push('its bore is not smaller than the wheel');
  if (rotor.form !== 'bladed-disc') return problems;
  for (const [field, name] of BLADE_FIELDS) {
    if (shape[field] === null) problems.push(`the pull of the blades: ${name} is missing`);
  }
  const radius = shape.bladeRadius_m;
  if (radius !== null && radius > shape.outerRadius_m) {
    problems.push('the centre of mass of a blade lies outside the wheel');
  } else if (radius !== null && radius <= shape.innerRadius_m) {
    problems.push('the centre of mass of a blade lies inside the bore');
  }
  return problems;
}
