/**
 * What a figure rests on. `published`: read there, or where a later work quotes it; `from-memory`: a published source, page not seen;
 * `common-practice`: a fact of the trade without one authoritative source; `assumed`: no source at all, the user
 * should replace it; `measured-by-user`: the user's own reading.
 */
export type Basis = 'published' | 'from-memory' | 'common-practice' | 'assumed' | 'measured-by-user';

/** Every basis there is. */
export const BASES: readonly Basis[] = [
  'published',
  'from-memory',
  'common-practice',
  'assumed',
  'measured-by-user',
];

/** A catalogue row or model carries where it comes from and what that rests on. */
export interface Sourced {
  readonly source: string;
  readonly basis: Basis;
}
