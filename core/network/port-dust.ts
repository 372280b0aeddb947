import { DUST_CLASSES } from '../catalogue/dusts.ts';
import { dustRate } from '../conveying/dust-rate.ts';
import type { ShopDocument } from '../document/schema.ts';
import type { ThingOf } from '../document/schema-things.ts';
import { captureFlow } from '../fittings/capture.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';

/** A dust in numbers, from the document or the catalogue. */
export interface Dust {
  readonly id: string;
  readonly label: string;
  readonly requiredVelocity_ms: number;
  readonly highVelocity_ms: number;
  readonly fineVelocity_ms: number;
  readonly particleDensity_kgm3: number;
  readonly bulkDensity_kgm3: number;
  readonly medianSize_m: number;
  readonly geometricDeviation: number;
  readonly combustible: boolean;
}

/** Velocity above which a dust counts as carried wastefully fast, over the required one [-]. */
export const WASTEFUL_RATIO = 1.4;

/** Dust of an id; the document's own come first. Throws `ImpossibleInput` naming the field where there is none. */
export function dustOf(document: ShopDocument, id: string): Dust {
  const own = document.dusts.find((dust) => dust.id === id);
  if (own === undefined) {
    if (Object.hasOwn(DUST_CLASSES, id)) return DUST_CLASSES[id as keyof typeof DUST_CLASSES];
    const ids = [...document.dusts.map((dust) => dust.id), ...Object.keys(DUST_CLASSES)];
    throw new ImpossibleInput('dust', id, `one of ${ids.join(', ')}`);
  }
  return {
    id,
    label: own.name ?? id,
    requiredVelocity_ms: own.requiredVelocity.si,
    highVelocity_ms: own.highVelocity?.si ?? WASTEFUL_RATIO * own.requiredVelocity.si,
    fineVelocity_ms: own.fineVelocity?.si ?? DUST_CLASSES['very-light-dust'].fineVelocity_ms,
    particleDensity_kgm3: own.particleDensity.si,
    bulkDensity_kgm3: own.bulkDensity.si,
    medianSize_m: own.medianSize.si,
    geometricDeviation: own.geometricDeviation.si,
    combustible: own.combustible,
  };
}

/** Dust that a port sends off [kg/s]; 0 where neither a rate nor a cut is given. */
export function portDustRate(port: ThingOf<'port'>): number {
  if (port.dustRate) return port.dustRate.si;
  if (!port.cut) return 0;
  return dustRate({
    width_m: port.cut.width.si,
    depth_m: port.cut.depth.si,
    feed_ms: port.cut.feed.si,
    density_kgm3: port.cut.density.si,
    collectedShare: port.cut.collected.si,
  });
}

/** Flow that a port asks for [m3/s]: typed, or what captures at a distance; null where neither is given. */
export function portFlowNeed(port: ThingOf<'port'>): number | null {
  const typed = port.needs?.flow?.si ?? null;
  const capture = port.needs?.capture;
  if (!capture) return typed;
  const opening = { style: capture.hood, distance_m: capture.distance.si, faceArea_m2: capture.faceArea.si };
  const flow = captureFlow(opening, capture.velocity.si);
  return Math.max(flow, typed ?? 0);
}
