import { z } from 'zod';
import type { Dimension } from '../quantities/dimensions.ts';

/** Which values a field takes once its unit is understood. */
export type QuantityRule = 'positive' | 'not-negative' | 'share' | 'any';

/**
 * A number of the document: what the user typed and what it means in SI. `text` is null where the file gave a plain
 * SI number. `si` is NaN only between parsing and resolving, inside `readDocument`.
 */
export interface Quantity {
  readonly dimension: Dimension;
  readonly rule: QuantityRule;
  readonly text: string | null;
  readonly si: number;
}

const WRITTEN = z.union([
  z.number().describe('SI value'),
  z.string().max(200).describe('text with a unit or named values, such as 2 ft + 3 in'),
  z.strictObject({
    text: z.string().max(200).nullable().describe('what was typed'),
    si: z.number().describe('its SI value; the text decides where the two differ'),
  }),
]);

/** A field that holds a quantity of one dimension; written as an SI number, as text, or as both. */
export function quantity(dimension: Dimension, rule: QuantityRule = 'positive') {
  return WRITTEN.transform((written): Quantity => {
    if (typeof written === 'number') return { dimension, rule, text: null, si: written };
    if (typeof written === 'string') return { dimension, rule, text: written, si: NaN };
    return { dimension, rule, text: written.text, si: written.si };
  }).describe(`${dimension}, ${rule}`);
}

/** Whether a value found while walking a document is a quantity field. */
export function isQuantity(value: unknown): value is Quantity {
  return (
    typeof value === 'object' && value !== null && 'dimension' in value && 'rule' in value && 'si' in value
  );
}

/** How a quantity is written to a file: text and SI value, or the bare number where nothing was typed. */
export function writeQuantity(q: Quantity): number | { text: string; si: number } {
  return q.text === null ? q.si : { text: q.text, si: q.si };
}
