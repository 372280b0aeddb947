import type { NamedValues } from '../../core/quantities/parse.ts';

/** A table of named values that has none. */
export const NO_NAMES: NamedValues = new Map();
