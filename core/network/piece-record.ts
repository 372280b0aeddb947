import type { Outside } from '../quantities/range.ts';
import type { Segment } from './net.ts';
import type { LossShare } from './solution.ts';

/** What a result says of one piece of a run, beside the segments that the solver marches through. */
export interface PieceRecord {
  readonly id: string;
  /** Piece kind of the document, or `hood`, `exhaust`, `leak`, `size-change` for what the run's ends add. */
  readonly kind: string;
  readonly share: LossShare;
  /** Number of segments that the piece is made of. */
  readonly segments: number;
  /** Area whose velocity the piece's coefficient refers to [m2]; null where it has none. */
  readonly area_m2: number | null;
  /** Area of the duct after the piece [m2]; null where there is no duct. */
  readonly areaAfter_m2: number | null;
  readonly diameter_m: number | null;
  readonly length_m: number | null;
  /** Whether dust may settle here: a straight or a bend. */
  readonly carries: boolean;
  readonly source: string | null;
  readonly basis: string | null;
  /** Quantities of the piece's relation outside their range. */
  readonly outside: readonly Outside[];
  /** Relation that `outside` is about, in plain words. */
  readonly relation: string;
}

/** A piece turned into what the solver marches through. */
export interface BuiltPiece {
  readonly segments: readonly Segment[];
  readonly record: Omit<PieceRecord, 'id' | 'segments'>;
  /** Inside diameter after the piece [m]. */
  readonly diameterAfter_m: number;
}

/** What a piece's record holds where nothing else is said. */
export const PLAIN = {
  source: null,
  basis: null,
  outside: [],
  relation: '',
  length_m: null,
  carries: false,
} as const;

/** Where a gate's coefficient stands in the packed net. */
export interface GateRecord {
  readonly id: string;
  readonly element: number;
  /** Segment index in the packed net. */
  readonly segment: number;
  /** Opening where a setting does not say [-]. */
  readonly opening: number;
}
