import { MATERIALS } from '../../catalogue/materials.ts';
import { FILTER_MEDIA } from '../../catalogue/filter-media.ts';
import { CYCLONE_PROPORTIONS } from '../../catalogue/cyclones.ts';
import { ELBOW_TABLES } from '../../catalogue/elbows.ts';
import type { ShopDocument } from '../../document/schema.ts';
import { countParts } from './count.ts';
import type { Part } from './count.ts';
import { cuttingPlan } from './cutting-plan.ts';
import type { PartKind, PartRow, PartsList, PartUnit } from './result.ts';
import { USUAL_KERF_m, USUAL_SPARE, USUAL_STOCK_m } from './usual.ts';

/** Order of the rows: along the air, then what holds it together. */
const ORDER: readonly PartKind[] = [
  'duct',
  'hose',
  'elbow',
  'reducer',
  'wye',
  'tee',
  'breeches',
  'gate',
  'cap',
  'separator',
  'bin',
  'filter-medium',
  'fan',
  'other',
  'clamp',
  'joint',
];

const WORDS: Readonly<Record<PartKind, string>> = {
  duct: 'Duct',
  hose: 'Hose',
  elbow: 'Elbow',
  reducer: 'Reducer',
  wye: 'Wye',
  tee: 'Tee',
  breeches: 'Breeches piece',
  gate: 'Gate',
  cap: 'Weather cap',
  separator: 'Cyclone',
  bin: 'Drop-out bin',
  'filter-medium': 'Filter',
  fan: 'Fan',
  clamp: 'Hose clamp',
  joint: 'Joint of rigid parts',
  other: 'Part with a given loss',
};

const SPARED: ReadonlySet<PartKind> = new Set<PartKind>(['duct', 'hose', 'clamp']);

/** Parts of a shop: counted from the drawing, with what to buy, how to cut it, and what it costs and weighs. */
export function partsList(document: ShopDocument): PartsList {
  const options = document.parts;
  const spare = options?.spare?.si ?? USUAL_SPARE;
  const kerf_m = options?.kerf?.si ?? USUAL_KERF_m;
  const groups = new Map<string, Part[]>();
  for (const part of countParts(document)) {
    const key = keyOf(part);
    groups.set(key, [...(groups.get(key) ?? []), part]);
  }
  const prices = new Map(options?.prices?.map((row) => [row.part, row]));
  const stockOf = (material: string | null) =>
    options?.stock?.find((row) => row.material === material)?.length.si ?? USUAL_STOCK_m;
  const rows = [...groups]
    .map(([key, parts]): PartRow => {
      const first = parts[0]!;
      const lengths = parts.flatMap(({ length_m }) => (length_m === undefined ? [] : [length_m]));
      const length_m = lengths.length > 0 ? lengths.reduce((sum, length) => sum + length, 0) : null;
      const cutting = first.kind === 'duct' ? cuttingPlan(lengths, stockOf(first.of), kerf_m) : null;
      const unit: PartUnit = first.kind === 'duct' ? 'length' : first.kind === 'hose' ? 'metre' : 'each';
      const more = 1 + (SPARED.has(first.kind) ? spare : 0);
      // what is left of the lengths that are cut counts towards the spare
      const buy = cutting
        ? Math.max(cutting.bars.length, wholeUnits((length_m! * more) / cutting.stock_m))
        : unit === 'metre'
          ? wholeUnits(length_m! * more * 10) / 10
          : wholeUnits(parts.length * more);
      const own = prices.get(key);
      const unitPrice = own?.price?.si ?? null;
      const unitWeight_kg = own?.weight?.si ?? null;
      return {
        key,
        kind: first.kind,
        label: labelOf(first),
        of: first.of,
        diameter_m: first.diameter_m,
        toDiameter_m: first.toDiameter_m ?? null,
        mainDiameter_m: first.mainDiameter_m ?? null,
        angle_rad: first.angle_rad ?? null,
        radiusRatio: first.radiusRatio ?? null,
        area_m2: first.area_m2 ?? null,
        unit,
        count: parts.length,
        length_m,
        buy,
        cutting,
        unitPrice,
        price: unitPrice === null ? null : unitPrice * buy,
        unitWeight_kg,
        weight_kg: unitWeight_kg === null ? null : unitWeight_kg * buy,
        where: [...new Set(parts.map(({ where }) => where))],
      };
    })
    .sort(
      (a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind) || (b.diameter_m ?? 0) - (a.diameter_m ?? 0),
    );
  const sum = (figures: readonly (number | null)[]) => {
    const known = figures.filter((figure) => figure !== null);
    return known.length > 0 ? known.reduce((total, figure) => total + figure, 0) : null;
  };
  return {
    document: document.name,
    rows,
    spare,
    kerf_m,
    money: options?.money ?? null,
    totalPrice: sum(rows.map(({ price }) => price)),
    totalWeight_kg: sum(rows.map(({ weight_kg }) => weight_kg)),
    unpriced: rows.filter(({ price }) => price === null).length,
    unweighed: rows.filter(({ weight_kg }) => weight_kg === null).length,
    unusedPrices: [...prices.keys()].filter((key) => !groups.has(key)),
    notes: notesOf(rows),
  };
}

/** Rounded up, but not for the sake of rounding. */
const wholeUnits = (needed: number): number => Math.ceil(needed - 1e-9);

function notesOf(rows: readonly PartRow[]): string[] {
  const notes = [
    'Hoods, screws, sealant, hangers, wire and bonding are not counted: the drawing does not hold them.',
  ];
  if (rows.some(({ cutting }) => cutting?.bars.length === 0)) {
    notes.push(
      'Some duct is too long for a plan of cuts: its lengths are counted, without what sawing wastes.',
    );
  }
  if (rows.some(({ cutting }) => (cutting?.extraJoints ?? 0) > 0)) {
    notes.push('Some ducts are longer than their stock and take a joint more in each.');
  }
  if (rows.some(({ kind }) => kind === 'hose')) {
    notes.push('Hose is counted pulled out full; buy it in one piece where a run has one.');
  }
  return notes;
}

const millimetres = (length: number) => Math.round(length * 1e4) / 10;
const degrees = (angle: number) => Math.round((angle * 1800) / Math.PI) / 10;

function keyOf(part: Part): string {
  return [
    part.kind,
    part.of ?? '',
    part.diameter_m === null ? '' : millimetres(part.diameter_m),
    part.toDiameter_m === undefined ? '' : millimetres(part.toDiameter_m),
    part.mainDiameter_m === undefined ? '' : `from ${millimetres(part.mainDiameter_m)}`,
    part.angle_rad === undefined ? '' : `${degrees(part.angle_rad)} deg`,
    part.radiusRatio === undefined ? '' : `r/d ${Math.round(part.radiusRatio * 100) / 100}`,
    part.area_m2 === undefined ? '' : `${Math.round(part.area_m2 * 1e3) / 1e3} m2`,
  ]
    .filter((word) => word !== '')
    .join(' ');
}

function labelOf({ kind, of }: Part): string {
  const word = WORDS[kind];
  if (of === null) return word;
  const rowLabel = (table: Readonly<Record<string, { readonly label: string }>>) =>
    Object.hasOwn(table, of) ? table[of]!.label : of;
  switch (kind) {
    case 'duct':
    case 'hose':
      return `${word}, ${MATERIALS.find(({ id }) => id === of)?.label ?? of}`;
    case 'elbow':
      return `${word}, ${of === 'mitre' ? 'mitre' : rowLabel(ELBOW_TABLES)}`;
    case 'separator':
      return `${word}, ${of === 'free' ? 'own dimensions' : rowLabel(CYCLONE_PROPORTIONS)}`;
    case 'filter-medium':
      return `${word}, ${rowLabel(FILTER_MEDIA)}`;
    default:
      return `${word}, ${of}`;
  }
}
