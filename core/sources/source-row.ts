import type { Dimension } from '../quantities/dimensions.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { Sourced } from '../quantities/sourced.ts';

/**
 * What kind of figure a row is about. `relation`: a law that was used; `coefficient`: a number read from a table for a
 * piece; `model`: one of several that the document or the program chose; `catalogue`: a property of what was chosen;
 * `default`: stands where the document says nothing; `reading`: the user's own.
 */
export type SourceKind = 'relation' | 'coefficient' | 'model' | 'catalogue' | 'default' | 'reading';

/** One figure or relation that results rest on. */
export interface SourceRow extends Sourced {
  readonly kind: SourceKind;
  readonly what: string;
  /** Printed with its unit, where it is one number; null where it is not. */
  readonly value: string | null;
  /** Where the relation holds, in words; null where no bounds are known. */
  readonly range: string | null;
  /** Ids of all things, runs and pieces whose results use it; `WHOLE_SHOP` for what all use. */
  readonly where: readonly string[];
  /** Field that overrules or holds it, with points between, at each id of `where`; null where there is none. */
  readonly field: string | null;
}

/** Stands in `where` for everything in the shop; findings about the whole shop carry the same. */
export const WHOLE_SHOP = 'shop';

/** One number with its kind, before it is printed. */
export interface Figure {
  readonly si: number;
  readonly dimension: Dimension;
}

/** A row before its places are known. */
export interface Draft extends Sourced {
  readonly kind: SourceKind;
  readonly what: string;
  /** A number, or a text that says several. */
  readonly value?: Figure | string;
  readonly range?: ValidRange;
  readonly field?: string;
}
