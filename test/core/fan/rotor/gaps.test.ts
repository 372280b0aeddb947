import { describe, expect, it } from 'vitest';
import {
  CUT_OFF_PRACTICE,
  cutOffShare,
  heatMargin,
  judgeCutOff,
  rimGapLeft,
} from '../../../../core/fan/rotor/gaps.ts';
import { ImpossibleInput } from '../../../../core/quantities/impossible-input.ts';

describe('gap to the cut-off edge', () => {
  it.each([
    [0, 'close'],
    [0.0499, 'close'],
    [0.05, 'usual'],
    [0.1, 'usual'],
    [0.12, 'usual'],
    [0.1201, 'wide'],
    [1, 'wide'],
  ] as const)('%f of the wheel is %s', (share, judged) => {
    expect(judgeCutOff(share)).toBe(judged);
    expect(judgeCutOff(cutOffShare(share * 0.25, 0.25))).toBe(judged);
  });
  it('has its bounds in order, and says what they rest on', () => {
    const { close, usualTo, wide, basis } = CUT_OFF_PRACTICE;
    expect([close, usualTo, wide]).toEqual([0.05, 0.1, 0.12]);
    expect(basis).toBe('common-practice');
  });
});

describe('gap at the rim and margin of heat', () => {
  it('are differences, with their signs', () => {
    expect(rimGapLeft(1e-3, 3e-4)).toBeCloseTo(7e-4, 15);
    expect(rimGapLeft(1e-4, 3e-4)).toBeCloseTo(-2e-4, 15);
    expect(heatMargin(328, 300)).toBe(28);
    expect(heatMargin(328, 340)).toBe(-12);
  });
});

describe('what cannot be', () => {
  it.each([
    ['gap_m', () => cutOffShare(-1, 1)],
    ['wheelDiameter_m', () => cutOffShare(1, 0)],
    ['share', () => judgeCutOff(NaN)],
    ['growth_m', () => rimGapLeft(1, -1)],
    ['gap_m', () => rimGapLeft(Infinity, 1)],
    ['softening_K', () => heatMargin(0, 300)],
    ['temperature_K', () => heatMargin(300, NaN)],
  ])('%s', (field, call) => {
    expect(call).toThrow(ImpossibleInput);
    expect(call).toThrow(field);
  });
});
