import type { ValidRange } from '../quantities/range.ts';
import type { Sourced } from '../quantities/sourced.ts';

/** A relation that results are worked out by, with the function that holds it. */
export interface Relation extends Sourced {
  readonly what: string;
  /** File within core, and the name of the function in it. */
  readonly file: string;
  readonly fn: string;
  readonly range?: ValidRange;
}
