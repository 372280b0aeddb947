import type { FieldRow } from '../../core/document/field.ts';
import { isQuantity } from '../../core/document/quantity-field.ts';
import { DRIVE_ROWS, READING_ROWS, READING_WORDS } from '../../core/document/reading-fields.ts';
import type { FanDesign, Reading, ReadingKind } from '../../core/document/schema-fans.ts';
import type { Estimate, ReadingResult } from '../../core/fan-bench/result.ts';
import type { Dimension, UnitSystem } from '../../core/quantities/dimensions.ts';
import { displayUnit } from '../../core/quantities/print.ts';
import { figure, plainFigure } from '../../core/summary/figures/charts/columns.ts';
import { withoutUnit } from '../controls/understood.ts';
import { valueAt } from '../controls/values.ts';

/** Columns that every table of a kind has; other fields of the kind wait in the row's details. */
const FIRST: Readonly<Record<ReadingKind, readonly string[]>> = {
  'sealed-lift': ['lift'],
  'sealed-suction': ['suction'],
  'hole-plate': ['hole', 'suction'],
  orifice: ['bore', 'difference', 'suction'],
  'inlet-throat': ['throat', 'difference', 'suction'],
  'pitot-traverse': ['duct', 'suction'],
  'vane-traverse': ['duct', 'suction'],
  point: ['flow', 'pressure'],
};

/** A reading with its place in the list of its fan. */
export interface Placed {
  readonly reading: Reading;
  readonly index: number;
}

/** Readings of one kind, as a table. */
export interface KindTable {
  readonly kind: ReadingKind;
  readonly title: string;
  readonly rows: readonly Placed[];
  /** Fields in columns, with paths within a reading. */
  readonly columns: readonly FieldRow[];
  /** Fields that have a place in the details only. */
  readonly rest: readonly FieldRow[];
}

const ORDER = Object.keys(READING_WORDS) as ReadingKind[];

/** The readings of a fan by kind; a column for a drive reading stands where some have it, or all are asked for. */
export function tablesOf({ readings }: FanDesign, drive: boolean): KindTable[] {
  const placed = readings.map((reading, index): Placed => ({ reading, index }));
  return ORDER.flatMap((kind) => {
    const rows = placed.filter(({ reading }) => reading.kind === kind);
    if (rows.length === 0) return [];
    const own = READING_ROWS[kind];
    const has = ({ path }: FieldRow) => rows.some(({ reading }) => valueAt(reading, path) !== undefined);
    const isFirst = ({ path }: FieldRow) => FIRST[kind].includes(String(path[0]));
    // what turned it is asked of everything but a maker's table, where it is one figure for all
    const driven = DRIVE_ROWS.filter(
      (row) => has(row) || row.path[0] === 'speed' || (drive && ASKED.has(String(row.path[0]))),
    );
    const columns = [...own.filter(isFirst), ...driven];
    const rest = [...own, ...DRIVE_ROWS].filter((row) => !columns.includes(row));
    return [{ kind, title: READING_WORDS[kind], rows, columns, rest }];
  });
}

const ASKED: ReadonlySet<string> = new Set(['voltage', 'current', 'throttle']);

/** A row with its path from the fan. */
export const rowAt = (row: FieldRow, index: number): FieldRow => ({
  ...row,
  path: ['readings', index, ...row.path],
});

/** Readings are off by no more than so many standard errors nineteen times in twenty, as errors are typed. */
const NINETEEN_IN_TWENTY = 2;

/** A figure with its plus or minus, in the unit of its column. */
export function estimateText(
  estimate: Estimate | null | undefined,
  dimension: Dimension,
  units: UnitSystem,
): { readonly value: string; readonly off: string } {
  if (!estimate) return { value: figure(null, dimension, units), off: '' };
  return {
    value: figure(estimate.value, dimension, units),
    off: estimate.error > 0 ? `±${figure(NINETEEN_IN_TWENTY * estimate.error, dimension, units)}` : '',
  };
}

/** How far a reading lies from the curve, in standard errors. */
export const distanceText = ({ distance }: ReadingResult): string => plainFigure(distance, 1);

/** A point this many standard errors off the curve does not collapse onto it. */
export const FAR = 3;

/** Unit of a column, which a bare number typed there has; none for counts, and where one column holds several. */
export const columnUnit = ({ kind, dimension }: FieldRow, units: UnitSystem): string | undefined =>
  kind === 'quantity' && dimension ? displayUnit(dimension, units) || undefined : undefined;

/** Whether a value was typed in another unit than that of its column, which then stands in the field. */
export function hasOwnUnit(reading: Reading, { path }: FieldRow, unit: string | undefined): boolean {
  const value = valueAt(reading, path);
  return isQuantity(value) && value.text !== null && withoutUnit(value.text, unit) === value.text;
}
