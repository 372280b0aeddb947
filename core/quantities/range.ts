/** The span in which a relation was measured or derived; an absent bound is open. */
export interface Bounds {
  readonly low?: number;
  readonly high?: number;
  /** SI unit of the bounds, `-` for a pure number. */
  readonly unit: string;
}

/** Valid range of one relation: its quantities by plain name, such as `Reynolds number`. */
export type ValidRange = Readonly<Record<string, Bounds>>;

/** One quantity of a relation that lies outside the range in which the relation holds. */
export interface Outside {
  readonly quantity: string;
  readonly value: number;
  readonly bounds: Bounds;
}

/**
 * Lists the quantities that lie outside a relation's valid range. A relation itself never clamps or refuses: it
 * returns its value, and the caller turns what this finds into a finding.
 */
export function findOutside(range: ValidRange, values: Readonly<Record<string, number>>): Outside[] {
  const found: Outside[] = [];
  for (const [quantity, bounds] of Object.entries(range)) {
    const value = values[quantity];
    if (value === undefined) continue;
    if (value < (bounds.low ?? -Infinity) || value > (bounds.high ?? Infinity)) {
      found.push({ quantity, value, bounds });
    }
  }
  return found;
}
