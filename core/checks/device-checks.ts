import { faceVelocityLimit, filterDrop } from '../filter/media.ts';
import type { CompiledDevice } from '../network/compile.ts';
import type { DeviceResult, Finding } from '../network/solution.ts';
import { findOutside } from '../quantities/range.ts';
import { INLET_VELOCITY_RANGE, RE_ENTRAINMENT_RANGE, reEntrainmentRatio } from '../separator/limits.ts';
import { GRADE_RANGE } from '../separator/efficiency.ts';
import { CYCLONE_LOSS_MODELS } from '../separator/pressure-drop.ts';
import type { CycloneLossModel } from '../separator/pressure-drop.ts';
import { findPoorShape } from '../separator/proportions.ts';
import { finding, printApart } from './finding.ts';
import type { Printer } from './finding.ts';
import type { CheckInput, Check } from './check.ts';
import { shown, span } from './range-text.ts';

/** Separators and filters: velocities, ratings, cakes. */
export const checkDevices: Check = (input, print) =>
  input.shop.devices.flatMap((device, i) => {
    const result = input.result.devices[i]!;
    const rating = device.thing.maxSuction?.si ?? null;
    const suction = -(result.inletTotalPressure_Pa ?? 0);
    const found: Finding[] = [];
    if (rating !== null && suction > rating) {
      found.push(
        finding('suction-over-rating', result.id, ...printApart(print, suction, rating, 'pressure')),
      );
    }
    found.push(...checkShape(device));
    if (result.flow_m3s <= 0) return found;
    return [...found, ...checkCyclone(input, device, result, print), ...checkFilter(device, result, print)];
  });

/** Sizes and shapes of a cyclone for which its models were not made. */
function checkShape({ built, thing }: CompiledDevice): Finding[] {
  if (built.kind !== 'cyclone') return [];
  const { bodyDiameter_m } = built.geometry;
  const models = [
    ...(built.model in CYCLONE_LOSS_MODELS
      ? [['loss model', CYCLONE_LOSS_MODELS[built.model as CycloneLossModel].range] as const]
      : []),
    ['grade model', GRADE_RANGE] as const,
  ];
  const sizes = models.flatMap(([label, range]) =>
    findOutside(range, { 'body diameter': bodyDiameter_m }).map(({ quantity, value, bounds }) =>
      finding('outside-range', thing.id, label, quantity, shown(value, bounds), span(bounds)),
    ),
  );
  const shapes = findPoorShape(built.geometry).map(({ quantity, value, bounds }) =>
    finding('cyclone-shape', thing.id, quantity, shown(value, bounds), span(bounds)),
  );
  return [...sizes, ...shapes];
}

/** Body below which the saltation relation was never tried and flags every cyclone [m]. */
export const RE_ENTRAINMENT_LEAST_BODY_m = 0.3;

function checkCyclone(
  input: CheckInput,
  device: CompiledDevice,
  result: DeviceResult,
  print: Printer,
): Finding[] {
  const { built, element } = device;
  if (built.kind !== 'cyclone' || result.inletVelocity_ms === null) return [];
  const found: Finding[] = [];
  for (const { bounds } of findOutside(INLET_VELOCITY_RANGE, { 'inlet velocity': result.inletVelocity_ms })) {
    found.push(
      finding(
        'inlet-velocity',
        result.id,
        print(result.inletVelocity_ms, 'velocity'),
        print(bounds.low ?? 0, 'velocity'),
        print(bounds.high ?? 0, 'velocity'),
      ),
    );
  }
  const dust = input.dust.loads[element]?.dusts[0];
  if (dust && built.geometry.bodyDiameter_m >= RE_ENTRAINMENT_LEAST_BODY_m) {
    const { air } = input.shop;
    const ratio = reEntrainmentRatio(built.geometry, {
      flow_m3s: result.flow_m3s,
      density_kgm3: air.density_kgm3,
      viscosity_Pas: air.viscosity_Pas,
      temperature_K: air.temperature_K ?? 293.15,
      particleDensity_kgm3: dust.particleDensity_kgm3,
    });
    const limit = RE_ENTRAINMENT_RANGE['inlet velocity over saltation velocity']!.high!;
    if (ratio > limit) found.push(finding('re-entrainment', result.id, (ratio / limit).toPrecision(2)));
  }
  return found;
}

function checkFilter(device: CompiledDevice, result: DeviceResult, print: Printer): Finding[] {
  const { built } = device;
  if (built.kind !== 'filter') return [];
  return built.layers.flatMap((layer, i) => {
    const found: Finding[] = [];
    const v = result.faceVelocity_ms![i]!;
    for (const { bounds } of faceVelocityLimit(layer.medium, v)) {
      // a filter that is larger than need be does no harm
      if (bounds.high !== undefined && v > bounds.high) {
        found.push(
          finding('face-velocity-high', result.id, ...printApart(print, v, bounds.high, 'velocity')),
        );
      }
    }
    const drop = filterDrop({ ...layer.medium, load_kgm2: layer.load_kgm2, faceVelocity_ms: v });
    if (drop > layer.medium.changeAtPressure_Pa) {
      found.push(
        finding(
          'filter-full',
          result.id,
          ...printApart(print, drop, layer.medium.changeAtPressure_Pa, 'pressure'),
        ),
      );
    }
    return found;
  });
}
