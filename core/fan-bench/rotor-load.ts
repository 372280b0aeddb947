import type { RotorMaterial } from '../catalogue/rotor-materials.ts';
import type { Rotor } from '../document/schema-fans.ts';
import { bladePull, bladeRootStress } from '../fan/rotor/blade-pull.ts';
import { discInertia, spinEnergy } from '../fan/rotor/energy.ts';
import { innerLoadFactor, rimLoadGrowth, rimLoadStress, rimTraction } from '../fan/rotor/rim-load.ts';
import { discGrowth, maxAnnularDiscStress, maxSolidDiscStress } from '../fan/rotor/spinning-disc.ts';
import type { AnnularDisc } from '../fan/rotor/spinning-disc.ts';
import { thinRingGrowth, thinRingStress } from '../fan/rotor/thin-ring.ts';
import { tipSpeed } from '../fan/rotor/turning.ts';
import type { RotorResult } from './result.ts';
import type { RotorShape } from './rotor-shape.ts';

/** Greatest stress of a rotor, where it stands, and what goes with it. */
export type RotorLoad = Pick<
  RotorResult,
  'stress_Pa' | 'stressAt' | 'rootStress_Pa' | 'growth_m' | 'energy_J'
>;

interface Body {
  readonly stress_Pa: number;
  readonly stressAt: string;
  readonly growth_m: number;
}

/** What carries the load, by form of the rotor. */
const BODIES: Readonly<
  Record<Rotor['form'], (shape: RotorShape, material: RotorMaterial, speed_rpm: number) => Body>
> = {
  disc,
  ring,
  'bladed-disc': bladedDisc,
};

/** Stress, growth and energy of a rotor at a speed; its shape has been found complete. */
export function loadOf(shape: RotorShape, material: RotorMaterial, speed_rpm: number): RotorLoad {
  const body = BODIES[shape.form](shape, material, speed_rpm);
  const rootStress_Pa = rootStress(shape, speed_rpm);
  const root = rootStress_Pa !== null && rootStress_Pa > body.stress_Pa;
  return {
    stress_Pa: root ? rootStress_Pa : body.stress_Pa,
    stressAt: root ? 'root of the blades' : body.stressAt,
    rootStress_Pa,
    growth_m: body.growth_m,
    energy_J: energy(shape, material, speed_rpm),
  };
}

function disc(shape: RotorShape, material: RotorMaterial, speed_rpm: number): Body {
  const { outerRadius_m, innerRadius_m } = shape;
  const { density_kgm3, poissonRatio, youngsModulus_Pa } = material;
  const spinning: AnnularDisc = { outerRadius_m, innerRadius_m, speed_rpm, density_kgm3, poissonRatio };
  const bored = innerRadius_m > 0;
  return {
    stress_Pa: bored ? maxAnnularDiscStress(spinning).hoop_Pa : maxSolidDiscStress(spinning),
    stressAt: bored ? 'edge of the bore, around it' : 'centre of the disc',
    growth_m: discGrowth(spinning, youngsModulus_Pa),
  };
}

/** The ring at the speed of its outside, which is never less than what a ring of some width bears. */
function ring({ outerRadius_m }: RotorShape, material: RotorMaterial, speed_rpm: number): Body {
  const stress_Pa = thinRingStress(material.density_kgm3, tipSpeed(2 * outerRadius_m, speed_rpm));
  return {
    stress_Pa,
    stressAt: 'around the ring',
    growth_m: thinRingGrowth(stress_Pa, outerRadius_m, material.youngsModulus_Pa),
  };
}

/**
 * The disc with the pull of its blades. For stress the pull stands where the blades' mass is, for growth at the rim:
 * both on the safe side.
 */
function bladedDisc(shape: RotorShape, material: RotorMaterial, speed_rpm: number): Body {
  const body = disc(shape, material, speed_rpm);
  const { outerRadius_m, innerRadius_m } = shape;
  const traction_Pa = rimTraction({
    blades: shape.blades!,
    pull_N: bladePull(shape.bladeMass_kg!, shape.bladeRadius_m!, speed_rpm),
    outerRadius_m,
    thickness_m: shape.thickness_m!,
  });
  const rim = { traction_Pa, outerRadius_m, innerRadius_m };
  const { poissonRatio, youngsModulus_Pa } = material;
  return {
    stress_Pa:
      body.stress_Pa +
      rimLoadStress(rim, innerRadius_m).hoop_Pa *
        innerLoadFactor(shape.bladeRadius_m!, outerRadius_m, poissonRatio),
    stressAt: body.stressAt,
    growth_m: body.growth_m + rimLoadGrowth(rim, poissonRatio, youngsModulus_Pa),
  };
}

function rootStress(shape: RotorShape, speed_rpm: number): number | null {
  const { form, bladeMass_kg, bladeRadius_m, bladeRootArea_m2 } = shape;
  if (form !== 'bladed-disc' || bladeRootArea_m2 === null) return null;
  return bladeRootStress(bladePull(bladeMass_kg!, bladeRadius_m!, speed_rpm), bladeRootArea_m2);
}

/** Of the disc, and of the blades as masses at their centres. */
function energy(shape: RotorShape, material: RotorMaterial, speed_rpm: number): number | null {
  const { outerRadius_m, innerRadius_m, thickness_m } = shape;
  if (thickness_m === null) return null;
  const { density_kgm3 } = material;
  const blades =
    shape.form === 'bladed-disc' ? shape.blades! * shape.bladeMass_kg! * shape.bladeRadius_m! ** 2 : 0;
  return spinEnergy(
    discInertia({ outerRadius_m, innerRadius_m, thickness_m, density_kgm3 }) + blades,
    speed_rpm,
  );
}
