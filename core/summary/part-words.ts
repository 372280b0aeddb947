import type { UnitSystem } from '../quantities/dimensions.ts';
import { NO_VALUE, printQuantity } from '../quantities/print.ts';
import { longText } from './figures/plan-wishes.ts';
import type { PartRow, PartsList } from './parts/result.ts';

/** What a part is called. */
export const partLabel = (row: PartRow): string => row.label;

/** Sizes of a part as a person orders it. */
export function sizeText(row: PartRow, units: UnitSystem): string {
  const length = (si: number | null) => printQuantity(si, 'length', units);
  const sizes = [
    ...(row.diameter_m === null ? [] : [length(row.diameter_m)]),
    ...(row.toDiameter_m === null ? [] : [`to ${length(row.toDiameter_m)}`]),
    ...(row.mainDiameter_m === null ? [] : [`from ${length(row.mainDiameter_m)}`]),
    ...(row.angle_rad === null ? [] : [printQuantity(row.angle_rad, 'angle', units, { digits: 0 })]),
    ...(row.radiusRatio === null ? [] : [`radius ${Number(row.radiusRatio.toFixed(2))} diameters`]),
    ...(row.area_m2 === null ? [] : [printQuantity(row.area_m2, 'area', units)]),
  ];
  if (row.kind === 'wye' || row.kind === 'tee') {
    const branch = row.toDiameter_m === null ? [] : [`branch ${length(row.toDiameter_m)}`];
    const main = row.mainDiameter_m === null ? [] : [`from ${length(row.mainDiameter_m)}`];
    const angle = row.angle_rad === null ? [] : [printQuantity(row.angle_rad, 'angle', units, { digits: 0 })];
    return [length(row.diameter_m), ...branch, ...main, ...angle].join(', ');
  }
  return sizes.length === 0 ? NO_VALUE : sizes.join(', ');
}

/** How many of what to buy. */
export function buyText(row: PartRow, units: UnitSystem): string {
  if (row.unit === 'each') return String(row.buy);
  if (row.unit === 'metre') return longText(row.buy, units);
  return `${row.buy} of ${longText(row.cutting?.stock_m ?? 0, units)}`;
}

export interface BarText {
  readonly bar: string;
  readonly cuts: string;
  readonly left: string;
}

/** Each length of stock of a row with what is cut from it. */
export function cutsText(row: PartRow, units: UnitSystem): BarText[] {
  return (row.cutting?.bars ?? []).map(({ cuts_m, rest_m }, i) => ({
    bar: String(i + 1),
    cuts: cuts_m.map((cut) => longText(cut, units)).join(' + '),
    left: longText(rest_m, units),
  }));
}

/** Sums, spare, kerf and what is not counted, one sentence each. */
export function totalsText(list: PartsList, units: UnitSystem): string[] {
  const money = list.money === null ? '' : ` ${list.money}`;
  const partly = (missing: number, what: string) =>
    missing === 0 ? '' : `; ${missing} ${missing === 1 ? 'row has' : 'rows have'} no ${what}`;
  const unlike = list.rows.some(({ cutting }) => cutting !== null && !cutting.shortest);
  return [
    ...(list.totalPrice === null
      ? []
      : [`Price in all ${list.totalPrice.toFixed(2)}${money}${partly(list.unpriced, 'price')}.`]),
    ...(list.totalWeight_kg === null
      ? []
      : [
          `Weight in all ${printQuantity(list.totalWeight_kg, 'mass', units)}${partly(list.unweighed, 'weight')}.`,
        ]),
    `Duct, hose and clamps with ${(100 * list.spare).toFixed(0)} % to spare; each cut of the saw takes ${printQuantity(list.kerf_m, 'length', units)}.`,
    ...(unlike ? ['For some duct a plan with fewer lengths may exist.'] : []),
    ...(list.unusedPrices.length > 0
      ? [`Prices are given for parts that the shop does not have: ${list.unusedPrices.join(', ')}.`]
      : []),
    ...list.notes,
  ];
}
