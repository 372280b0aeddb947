import { TIP_SPEED_PRACTICE, rotorMaterial } from '../catalogue/rotor-materials.ts';
import type { RotorMaterial } from '../catalogue/rotor-materials.ts';
import { finding } from '../checks/finding.ts';
import type { Printer } from '../checks/finding.ts';
import { percent, shown, span } from '../checks/range-text.ts';
import type { FanDesign, Rotor } from '../document/schema-fans.ts';
import { HEAT_MARGIN } from '../fan/rotor/gaps.ts';
import { THIN_DISC_RANGE } from '../fan/rotor/spinning-disc.ts';
import type { Finding } from '../network/solution.ts';
import { findOutside } from '../quantities/range.ts';
import type { RotorResult } from './result.ts';
import { rotorProblems } from './rotor-shape.ts';

/** What the person should know of a rotor, worked out or not; figures in the units that `print` prints. */
export function rotorFindings(design: FanDesign, result: RotorResult | null, print: Printer): Finding[] {
  const { rotor, id } = design;
  if (!rotor) return [];
  const material = rotorMaterial(rotor.material);
  if (result === null || !material) {
    const problems = rotorProblems(design);
    return problems.length > 0
      ? [finding('rotor-unchecked', id, problems.join('; '))]
      : [finding('rotor-speed-unknown', id)];
  }
  return [
    ...strengthFindings(design, result, material, print),
    ...gapFindings(id, rotor, result, print),
    ...heatFindings(id, rotor, result, material, print),
    ...rangeFindings(design, rotor),
    ...uncheckedFindings(id, rotor, result, material),
    finding('caution-rotor', id),
  ];
}

function strengthFindings(
  design: FanDesign,
  result: RotorResult,
  material: RotorMaterial,
  print: Printer,
): Finding[] {
  const { id } = design;
  const found: Finding[] = [];
  if (result.safetyFactor < result.minimumFactor) {
    found.push(
      finding(
        'rotor-factor-low',
        id,
        // rounded down, so that it never reads as the least
        String(Math.floor(100 * result.safetyFactor) / 100),
        print(result.speed_rpm, 'speed'),
        String(result.minimumFactor),
        material.label,
      ),
    );
  }
  const fastest = Math.max(result.speed_rpm, ...runSpeeds(design));
  if (fastest > result.speedLimit_rpm) {
    found.push(
      finding(
        'rotor-over-speed',
        id,
        print(fastest, 'speed'),
        print(result.speedLimit_rpm, 'speed'),
        print(result.burstSpeed_rpm, 'speed'),
      ),
    );
  }
  const practice = TIP_SPEED_PRACTICE[material.kind];
  if (result.tipSpeed_ms > practice.highest_ms) {
    found.push(
      finding(
        'rotor-tip-fast',
        id,
        print(result.tipSpeed_ms, 'velocity'),
        print(practice.highest_ms, 'velocity'),
      ),
    );
  }
  return found;
}

/** Speeds at which the fan runs or has run, whatever its highest speed is said to be. */
function runSpeeds(design: FanDesign): number[] {
  const speeds = [design.speed, ...design.readings.map((reading) => reading.speed)];
  return speeds.flatMap((speed) => (speed && Number.isFinite(speed.si) ? [speed.si] : []));
}

function gapFindings(id: string, rotor: Rotor, result: RotorResult, print: Printer): Finding[] {
  const found: Finding[] = [];
  if (rotor.rimGap && result.rimGapLeft_m !== null && result.rimGapLeft_m <= 0) {
    found.push(
      finding('rim-gap-closed', id, print(result.growth_m, 'length'), print(rotor.rimGap.si, 'length')),
    );
  }
  if (result.cutOffShare === null || result.cutOffJudged === 'usual') return found;
  const share = percent(result.cutOffShare);
  if (result.cutOffJudged === 'wide') found.push(finding('cut-off-wide', id, share));
  else {
    const tone = result.bladePass_Hz === null ? '' : ` near ${print(result.bladePass_Hz, 'frequency')}`;
    found.push(finding('cut-off-close', id, share, tone));
  }
  return found;
}

function heatFindings(
  id: string,
  rotor: Rotor,
  result: RotorResult,
  material: RotorMaterial,
  print: Printer,
): Finding[] {
  if (result.heatMargin_K === null || result.heatMargin_K >= HEAT_MARGIN.least_K) return [];
  return [
    finding(
      'rotor-hot',
      id,
      print(rotor.temperature!.si, 'temperature'),
      print(material.softening_K!, 'temperature'),
    ),
  ];
}

/** A disc too thick for the theory of the thin one. */
function rangeFindings({ id, wheelDiameter }: FanDesign, rotor: Rotor): Finding[] {
  if (!rotor.thickness || rotor.form === 'ring') return [];
  const ratio = rotor.thickness.si / (wheelDiameter.si / 2);
  return findOutside(THIN_DISC_RANGE, { 'thickness over outer radius': ratio }).map(
    ({ quantity, value, bounds }) =>
      finding('outside-range', id, 'strength of the rotor', quantity, shown(value, bounds), span(bounds)),
  );
}

/** What was left out for want of a field. */
function uncheckedFindings(
  id: string,
  rotor: Rotor,
  result: RotorResult,
  material: RotorMaterial,
): Finding[] {
  const missing: string[] = [];
  if (rotor.form === 'bladed-disc' && result.rootStress_Pa === null)
    missing.push('the roots of the blades: their section is missing');
  if (material.softening_K !== null && result.heatMargin_K === null)
    missing.push('heat: the temperature of the running wheel is missing');
  return missing.length > 0 ? [finding('rotor-unchecked', id, missing.join('; '))] : [];
}
