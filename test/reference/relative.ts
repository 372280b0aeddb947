import { expect } from 'vitest';

/** Fails unless `value` is within `tolerance` of `reference`, relative to it. */
export function expectRelative(value: number, reference: number, tolerance: number): void {
  const off = Math.abs(value - reference) / Math.abs(reference);
  expect(off, `${value} against ${reference}`).toBeLessThanOrEqual(tolerance);
}
