import type { Dimension } from '../quantities/dimensions.ts';
import type { Quantity, QuantityRule } from './quantity-field.ts';

/** A quantity that nobody typed: its SI value alone. */
export function quantityOf(dimension: Dimension, si: number, rule: QuantityRule = 'positive'): Quantity {
  // a file knows no zero below zero
  return { dimension, rule, text: null, si: si + 0 };
}

/** A coordinate of the plan, kept to the micrometre so that sums of drags stay short to read [m]. */
export function coordinate(metres: number): Quantity {
  return quantityOf('length', Math.round(metres * 1e6) / 1e6 + 0, 'any');
}
