/** Base quantities that a unit is made of. `turn` is rotation; the SI value of a rotation speed is kept in rpm. */
export const BASES = ['m', 'kg', 's', 'A', 'K', 'rad', 'turn'] as const;
export type Base = (typeof BASES)[number];

/** Exponents of the base quantities, such as `{ m: 3, s: -1 }` for a flow; an absent base has exponent zero. */
export type Powers = Readonly<Partial<Record<Base, number>>>;

/** Exponents of `left * right^sign`. */
export function multiplyPowers(left: Powers, right: Powers, sign: 1 | -1 = 1): Powers {
  const product: Partial<Record<Base, number>> = {};
  for (const base of BASES) product[base] = (left[base] ?? 0) + sign * (right[base] ?? 0);
  return product;
}

/** Exponents of `powers^exponent`. */
export function raisePowers(powers: Powers, exponent: number): Powers {
  const raised: Partial<Record<Base, number>> = {};
  for (const base of BASES) raised[base] = (powers[base] ?? 0) * exponent;
  return raised;
}

/** True where both stand for the same kind of quantity. */
export function samePowers(left: Powers, right: Powers): boolean {
  return BASES.every((base) => (left[base] ?? 0) === (right[base] ?? 0));
}

/** True for a plain number. */
export function isPure(powers: Powers): boolean {
  return samePowers(powers, {});
}
