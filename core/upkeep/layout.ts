import type { CompiledDevice, CompiledShop } from '../network/compile.ts';

/** A layer of a filter, and where its cake stands in the state. */
export interface LayerSlot {
  readonly device: CompiledDevice;
  readonly layer: number;
  /** Segment of the packed net that it is. */
  readonly segment: number;
  readonly area_m2: number;
  /** Place of its cake [kg] in the state. */
  readonly cake: number;
}

/** A separator, and where its catch stands in the state. */
export interface SeparatorSlot {
  readonly device: CompiledDevice;
  readonly volume_m3: number | null;
  /** Place of what it has caught [kg], and of the volume that this heaps up to [m3]; emptying takes nothing off. */
  readonly caught: number;
  readonly heap: number;
}

/** Which number of the state vector is what; all of them start at zero but the cakes. */
export interface StateLayout {
  readonly layers: readonly LayerSlot[];
  readonly separators: readonly SeparatorSlot[];
  /** Place of the mass that each filter device has held back [kg]. */
  readonly filters: readonly { readonly device: CompiledDevice; readonly held: number }[];
  readonly made: number;
  readonly passed: number;
  readonly energy: number;
  readonly size: number;
}

/** Lays the state of a shop out: cakes, catches, heaps, what filters hold, dust made and passed [kg], energy [J]. */
export function stateLayout(shop: CompiledShop): StateLayout {
  let size = 0;
  const next = () => size++;
  const filters = shop.devices.filter(({ built }) => built.kind === 'filter');
  const layers = filters.flatMap((device) =>
    (device.built.kind === 'filter' ? device.built.layers : []).map(({ area_m2 }, layer) => ({
      device,
      layer,
      segment: shop.packed.segmentStart[device.element]! + layer,
      area_m2,
      cake: next(),
    })),
  );
  const separators = shop.devices.flatMap((device) => {
    const { thing } = device;
    if (thing.kind === 'filter') return [];
    return [{ device, volume_m3: thing.binVolume?.si ?? null, caught: next(), heap: next() }];
  });
  const held = filters.map((device) => ({ device, held: next() }));
  return { layers, separators, filters: held, made: next(), passed: next(), energy: next(), size };
}

/** State before the first hour: the cakes that the document gives, all else nothing. */
export function startState(layout: StateLayout): Float64Array {
  const state = new Float64Array(layout.size);
  for (const { device, layer, area_m2, cake } of layout.layers) {
    if (device.built.kind === 'filter') state[cake] = device.built.layers[layer]!.load_kgm2 * area_m2;
  }
  return state;
}
