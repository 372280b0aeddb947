import type { CuttingPlan } from './cutting-plan.ts';

/** Unit in which a part is counted and sold. */
export type PartUnit = 'each' | 'length' | 'metre';

export type PartKind =
  | 'duct'
  | 'hose'
  | 'elbow'
  | 'reducer'
  | 'wye'
  | 'tee'
  | 'breeches'
  | 'gate'
  | 'cap'
  | 'separator'
  | 'bin'
  | 'filter-medium'
  | 'fan'
  | 'clamp'
  | 'joint'
  | 'other';

/** One row of the parts list. Plain data in SI; what does not apply is null. */
export interface PartRow {
  /** Says what it is and its size; prices are kept under it. */
  readonly key: string;
  readonly kind: PartKind;
  readonly label: string;
  /** Id of the material or style, for whoever prints it. */
  readonly of: string | null;
  readonly diameter_m: number | null;
  /** The smaller end of a reducer, the branch of a wye. */
  readonly toDiameter_m: number | null;
  /** The straight way into a wye, where it is not as wide as the way out. */
  readonly mainDiameter_m: number | null;
  readonly angle_rad: number | null;
  readonly radiusRatio: number | null;
  /** Area of a filter medium [m2]. */
  readonly area_m2: number | null;
  readonly unit: PartUnit;
  /** Pieces in the shop. */
  readonly count: number;
  /** Length of duct or hose in the shop [m]; hose pulled out full. */
  readonly length_m: number | null;
  /** How many units to buy, spare and whole lengths counted. */
  readonly buy: number;
  readonly cutting: CuttingPlan | null;
  /** Price and weight of one unit, as the document gives them, and of all to buy. */
  readonly unitPrice: number | null;
  readonly price: number | null;
  readonly unitWeight_kg: number | null;
  readonly weight_kg: number | null;
  /** Ids of the things, runs or pieces where it stands. */
  readonly where: readonly string[];
}

export interface PartsList {
  readonly document: string;
  readonly rows: readonly PartRow[];
  readonly spare: number;
  readonly kerf_m: number;
  readonly money: string | null;
  /** Sums over the rows that have a figure; null where none has. */
  readonly totalPrice: number | null;
  readonly totalWeight_kg: number | null;
  /** Rows without a price and without a weight. */
  readonly unpriced: number;
  readonly unweighed: number;
  /** Prices of the document for parts that are not in the shop. */
  readonly unusedPrices: readonly string[];
  readonly notes: readonly string[];
}
