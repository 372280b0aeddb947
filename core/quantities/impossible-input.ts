/** Input that no physical situation can have; names the field, the value and the rule that it breaks. */
export class ImpossibleInput extends Error {
  override readonly name = 'ImpossibleInput';

  constructor(
    readonly field: string,
    readonly value: number | string,
    readonly rule: string,
  ) {
    super(`${field} is ${String(value)}: it must be ${rule}`);
  }
}

/** Throws `ImpossibleInput` unless `value` is finite and above zero; returns it otherwise. */
export function requirePositive(field: string, value: number): number {
  if (!(value > 0 && value < Infinity)) throw new ImpossibleInput(field, value, 'a finite number above zero');
  return value;
}

/** Throws `ImpossibleInput` unless `value` is finite and not below zero; returns it otherwise. */
export function requireNotNegative(field: string, value: number): number {
  if (!(value >= 0 && value < Infinity))
    throw new ImpossibleInput(field, value, 'a finite number, zero or more');
  return value;
}

/** Throws `ImpossibleInput` unless `value` is finite; returns it otherwise. */
export function requireFinite(field: string, value: number): number {
  if (!Number.isFinite(value)) throw new ImpossibleInput(field, value, 'a finite number');
  return value;
}

/** Throws `ImpossibleInput` unless `low <= value <= high`; returns it otherwise. */
export function requireBetween(field: string, value: number, low: number, high: number): number {
  if (!(value >= low && value <= high)) throw new ImpossibleInput(field, value, `between ${low} and ${high}`);
  return value;
}
