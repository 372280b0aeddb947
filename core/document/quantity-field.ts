import * as z from 'zod';
import { DIMENSIONS, withArticle } from '../quantities/dimensions.ts';
import type { Dimension } from '../quantities/dimensions.ts';
import { whatFits } from '../quantities/quantity-error.ts';

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

const RULE_WORDS: Readonly<Record<QuantityRule, string>> = {
  positive: ', above zero',
  'not-negative': ', zero or more',
  share: ', from 0 to 1 (0 % to 100 %)',
  any: '',
};

function makeField(dimension: Dimension, rule: QuantityRule) {
  const { siUnit, examples } = DIMENSIONS[dimension];
  const fits = whatFits(dimension);
  return z
    .union(
      [
        z.number().describe(siUnit === '' ? 'plain number' : `value in ${siUnit}`),
        z.string().max(200).describe('text with a unit or named values'),
        z.strictObject({
          text: z.string().max(200).nullable().describe('what was typed'),
          si: z.number().describe('its SI value; the text decides where the two differ'),
        }),
      ],
      { error: () => fits },
    )
    .transform((written): Quantity => {
      if (typeof written === 'number') return { dimension, rule, text: null, si: written };
      if (typeof written === 'string') return { dimension, rule, text: written, si: NaN };
      return { dimension, rule, text: written.text, si: written.si };
    })
    .meta({
      id: rule === 'positive' ? dimension : `${dimension}-${rule}`,
      description: `${withArticle(dimension)}${RULE_WORDS[rule]}; such as "${examples[0]}"`,
    });
}

const FIELDS = new Map<string, ReturnType<typeof makeField>>();

/** A field that holds a quantity of one dimension; written as an SI number, as text, or as both. */
export function quantity(dimension: Dimension, rule: QuantityRule = 'positive') {
  const key = `${dimension} ${rule}`;
  const field = FIELDS.get(key) ?? makeField(dimension, rule);
  FIELDS.set(key, field);
  return field;
}

/** Whether a value found while walking a document is a quantity field. */
export function isQuantity(value: unknown): value is Quantity {
  // by type, as gates may be called `dimension`, `rule` and `si` too
  return (
    typeof value === 'object' &&
    value !== null &&
    'dimension' in value &&
    typeof value.dimension === 'string' &&
    'rule' in value &&
    'si' in value &&
    typeof value.si === 'number'
  );
}

/** How a quantity is written to a file: text and SI value, or the bare number where nothing was typed. */
export function writeQuantity(q: Quantity): number | { text: string; si: number } {
  return q.text === null ? q.si : { text: q.text, si: q.si };
}
