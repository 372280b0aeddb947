import { rotorMaterial } from '../catalogue/rotor-materials.ts';
import type { RotorMaterial } from '../catalogue/rotor-materials.ts';
import type { FanDesign, Rotor } from '../document/schema-fans.ts';
import { cutOffShare, heatMargin, judgeCutOff, rimGapLeft } from '../fan/rotor/gaps.ts';
import { speedAtStrength } from '../fan/rotor/strength-speed.ts';
import { bladePassFrequency, tipSpeed } from '../fan/rotor/turning.ts';
import { loadOf } from './rotor-load.ts';
import { rotorProblems, shapeOf } from './rotor-shape.ts';
import type { RotorResult } from './result.ts';

export { rotorFindings } from './rotor-findings.ts';

/** Speeds that other parts of the bench know of. */
export interface KnownSpeeds {
  readonly motorNoLoad_rpm: number | null;
  readonly highestReading_rpm: number | null;
}

/**
 * Strength, growth and gaps of a fan's rotor at the highest speed that it may reach. Null where there is no rotor or
 * where something is missing, which `rotorFindings` then names.
 */
export function rotorResult(design: FanDesign, known: KnownSpeeds): RotorResult | null {
  const { rotor } = design;
  const material = rotor && rotorMaterial(rotor.material);
  const speed = highestSpeed(design, known);
  if (!rotor || !material || speed === null || rotorProblems(design).length > 0) return null;
  const { speed_rpm } = speed;
  const shape = shapeOf(design, rotor);
  const load = loadOf(shape, material, speed_rpm);
  const strength_Pa = rotor.strength?.si ?? material.strength_Pa;
  const share =
    design.type === 'radial' && rotor.cutOffGap
      ? cutOffShare(rotor.cutOffGap.si, 2 * shape.outerRadius_m)
      : null;
  return {
    ...speed,
    tipSpeed_ms: tipSpeed(2 * shape.outerRadius_m, speed_rpm),
    stress_Pa: load.stress_Pa,
    stressAt: load.stressAt,
    rootStress_Pa: load.rootStress_Pa,
    strength_Pa,
    safetyFactor: strength_Pa / load.stress_Pa,
    minimumFactor: material.minimumFactor,
    burstSpeed_rpm: speedAtStrength(speed_rpm, load.stress_Pa, strength_Pa),
    speedLimit_rpm: speedAtStrength(speed_rpm, load.stress_Pa, strength_Pa / material.minimumFactor),
    growth_m: load.growth_m,
    rimGapLeft_m: rotor.rimGap ? rimGapLeft(rotor.rimGap.si, load.growth_m) : null,
    bladePass_Hz: rotor.blades === undefined ? null : bladePassFrequency(rotor.blades, speed_rpm),
    cutOffShare: share,
    cutOffJudged: share === null ? null : judgeCutOff(share),
    heatMargin_K:
      material.softening_K === null || !rotor.temperature
        ? null
        : heatMargin(material.softening_K, rotor.temperature.si),
    energy_J: load.energy_J,
    ...sourceOf(rotor, material),
  };
}

/** What the strength rests on: the user's own figure goes before the catalogue's. */
function sourceOf(rotor: Rotor, material: RotorMaterial): Pick<RotorResult, 'source' | 'basis'> {
  if (!rotor.strength) return { source: material.source, basis: material.basis };
  return { source: `own strength; the rest: ${material.source}`, basis: 'measured-by-user' };
}

/** The highest speed that the rotor may reach, by the first that tells it; null where nothing does. */
function highestSpeed(
  design: FanDesign,
  known: KnownSpeeds,
): Pick<RotorResult, 'speed_rpm' | 'speedFrom'> | null {
  const tellers: readonly (readonly [number | null | undefined, RotorResult['speedFrom']])[] = [
    [design.rotor?.maxSpeed?.si, 'given'],
    [known.motorNoLoad_rpm, 'motor without load'],
    [design.speed?.si, 'design speed'],
    [known.highestReading_rpm, 'highest reading'],
  ];
  for (const [speed_rpm, speedFrom] of tellers) {
    if (speed_rpm && speed_rpm > 0 && Number.isFinite(speed_rpm)) return { speed_rpm, speedFrom };
  }
  return null;
}
