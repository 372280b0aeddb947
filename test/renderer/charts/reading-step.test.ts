import { expect, it } from 'vitest';
import { readingStep } from '../../../renderer/charts/reading-step.ts';

it('goes through a chart by key and stops at its ends', () => {
  expect(readingStep('ArrowRight', -1, 5)).toBe(0);
  expect(readingStep('ArrowRight', 4, 5)).toBe(4);
  expect(readingStep('ArrowLeft', -1, 5)).toBe(4);
  expect(readingStep('ArrowLeft', 0, 5)).toBe(0);
  expect(readingStep('PageUp', 0, 50)).toBe(10);
  expect(readingStep('End', 0, 50)).toBe(49);
  expect(readingStep('Escape', 3, 5)).toBe(-1);
  expect(readingStep('x', 3, 5)).toBeNull();
  expect(readingStep('Home', 3, 0)).toBeNull();
});
