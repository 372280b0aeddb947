import { CYCLONE_PROPORTIONS } from '../catalogue/cyclones.ts';
import { FILTER_MEDIA } from '../catalogue/filter-media.ts';
import type { FilterMedium } from '../catalogue/filter-media.ts';
import type { ThingOf } from '../document/schema-things.ts';
import { filterDrop } from '../filter/media.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import { dropOutBinCoefficient } from '../separator/drop-out-bin.ts';
import { GRADE_MODELS } from '../separator/efficiency.ts';
import type { GradeModel } from '../separator/efficiency.ts';
import { CYCLONE_LOSS_MODELS, PLAIN_CYCLONE } from '../separator/pressure-drop.ts';
import type { CycloneLossModel } from '../separator/pressure-drop.ts';
import { checkCycloneGeometry, standardCyclone } from '../separator/proportions.ts';
import type { CycloneGeometry } from '../separator/proportions.ts';
import { measuredSegment } from './measured-segment.ts';
import { linearSegment, localSegment } from './net.ts';
import type { Segment } from './net.ts';
import { roundArea } from './round-area.ts';

/** One layer of a filter, in numbers. */
export interface FilterLayer {
  readonly medium: FilterMedium;
  readonly area_m2: number;
  readonly load_kgm2: number;
}

/** A device turned into what the solver marches through, with what results say of it. */
export type BuiltDevice =
  | {
      readonly kind: 'cyclone';
      readonly segments: readonly Segment[];
      readonly geometry: CycloneGeometry;
      readonly inletArea_m2: number;
      readonly gradeModel: GradeModel;
      readonly model: string;
      readonly source: string;
      readonly basis: string;
    }
  | {
      readonly kind: 'bin';
      readonly segments: readonly Segment[];
      readonly inletArea_m2: number;
      readonly catchShare: number;
      readonly model: string;
      readonly source: string;
      readonly basis: string;
    }
  | {
      readonly kind: 'filter';
      readonly segments: readonly Segment[];
      readonly layers: readonly FilterLayer[];
      readonly model: string;
      readonly source: string;
      readonly basis: string;
    };

/** Row of a table by an id from the document; names the field where there is none. */
export function rowOf<T>(table: Readonly<Record<string, T>>, field: string, id: string): T {
  if (!Object.hasOwn(table, id))
    throw new ImpossibleInput(field, id, `one of ${Object.keys(table).join(', ')}`);
  return table[id]!;
}

const FREE_FIELDS = [
  'inletHeight',
  'inletWidth',
  'outletDiameter',
  'outletDepth',
  'cylinderHeight',
  'totalHeight',
  'dustOutletDiameter',
] as const;

function cycloneGeometry(cyclone: ThingOf<'cyclone'>): CycloneGeometry {
  const given = Object.fromEntries(
    FREE_FIELDS.flatMap((field) => {
      const value = cyclone.dimensions?.[field];
      return value === undefined ? [] : [[`${field}_m`, value.si]];
    }),
  );
  if (cyclone.proportions !== 'free') {
    const proportions = rowOf(CYCLONE_PROPORTIONS, 'proportions', cyclone.proportions);
    return checkCycloneGeometry({ ...standardCyclone(proportions, cyclone.bodyDiameter.si), ...given });
  }
  for (const field of FREE_FIELDS) {
    if (cyclone.dimensions?.[field] === undefined) {
      throw new ImpossibleInput(`dimensions.${field}`, 'not given', 'given where the proportions are free');
    }
  }
  return checkCycloneGeometry({
    bodyDiameter_m: cyclone.bodyDiameter.si,
    ...given,
  } as unknown as CycloneGeometry);
}

const MEASURED = {
  model: 'measured',
  source: 'reading in the document',
  basis: 'measured-by-user',
} as const;

export function buildCyclone(cyclone: ThingOf<'cyclone'>): BuiltDevice {
  const geometry = cycloneGeometry(cyclone);
  const inletArea_m2 = geometry.inletHeight_m * geometry.inletWidth_m;
  const row = rowOf(CYCLONE_LOSS_MODELS, 'lossModel', cyclone.lossModel);
  rowOf(GRADE_MODELS, 'gradeModel', cyclone.gradeModel);
  const common = {
    kind: 'cyclone',
    geometry,
    inletArea_m2,
    gradeModel: cyclone.gradeModel as GradeModel,
  } as const;
  if (cyclone.measured) {
    const { loss, flow } = cyclone.measured;
    return { ...common, ...MEASURED, segments: [measuredSegment(inletArea_m2, loss.si, flow.si)] };
  }
  const xi = row.coefficient(geometry, PLAIN_CYCLONE);
  return {
    ...common,
    segments: [localSegment(inletArea_m2, xi)],
    model: cyclone.lossModel as CycloneLossModel,
    source: row.source,
    basis: row.basis,
  };
}

export function buildBin(bin: ThingOf<'bin'>): BuiltDevice {
  const inletArea_m2 = roundArea(bin.inletDiameter.si);
  const outletArea_m2 = roundArea(bin.outletDiameter.si);
  const common = { kind: 'bin', inletArea_m2, catchShare: bin.catchShare.si } as const;
  if (bin.measured) {
    const { loss, flow } = bin.measured;
    return { ...common, ...MEASURED, segments: [measuredSegment(inletArea_m2, loss.si, flow.si)] };
  }
  const k = dropOutBinCoefficient({ inletArea_m2, outletArea_m2, baffle: bin.baffle });
  return {
    ...common,
    segments: [localSegment(inletArea_m2, k)],
    model: 'chamber',
    source: 'sudden expansion, baffle and sudden contraction (Rennels and Hudson 2012; Borda-Carnot)',
    basis: 'from-memory',
  };
}

export function buildFilter(filter: ThingOf<'filter'>): BuiltDevice {
  const layers = filter.layers.map((layer, i): FilterLayer => {
    const medium = rowOf<FilterMedium>(FILTER_MEDIA, `layers[${i}].medium`, layer.medium);
    return {
      medium: {
        ...medium,
        drag_Pasm: layer.drag?.si ?? medium.drag_Pasm,
        cakeResistance_pers: layer.cakeResistance?.si ?? medium.cakeResistance_pers,
        passedShare: layer.passedShare?.si ?? medium.passedShare,
      },
      area_m2: layer.area.si,
      load_kgm2: layer.load?.si ?? 0,
    };
  });
  const own = filter.layers.some((layer) => layer.drag !== undefined);
  return {
    kind: 'filter',
    // the law is linear in face velocity, so the drop at 1 m/s is the whole of it
    segments: layers.map((layer) =>
      linearSegment(
        filterDrop({ ...layer.medium, load_kgm2: layer.load_kgm2, faceVelocity_ms: 1 }) / layer.area_m2,
      ),
    ),
    layers,
    model: 'clean and cake',
    source: own ? 'drag given in the document' : layers[0]!.medium.source,
    basis: own ? 'measured-by-user' : layers[0]!.medium.basis,
  };
}
