import { describe, expect, it } from 'vitest';
import { compressedHoseFactor, hawthorneFriction, hoseBendCoefficient } from '../../core/duct/hose.ts';
import { elbowCoefficient } from '../../core/fittings/elbow.ts';
import { suddenExpansion } from '../../core/fittings/size-change.ts';
import { expectRelative } from './relative.ts';

describe('corrugated hose', () => {
  // Hawthorne 1963, worked by hand with the formula as quoted: D 100, s 10 mm; D 63, s 6; D 38, s 5.
  it.each([
    [0.1, 0.01, 0.0675],
    [0.063, 0.006, 0.0647],
    [0.038, 0.005, 0.0854],
  ])('D %f, pitch %f', (diameter_m, pitch_m, friction) => {
    expect(hawthorneFriction(diameter_m, pitch_m)).toBeCloseTo(friction, 4);
  });

  it('is one step expansion for each fold (second route)', () => {
    const each = suddenExpansion(0.05, 0.05 + 0.438 * 0.006).k;
    expectRelative((hawthorneFriction(0.05, 0.006) * 1) / 0.05, each / 0.006, 1e-12);
  });

  it('falls in the span 0.04 to 0.09 that practice gives for wire-helix hose', () => {
    for (const [D, s] of [
      [0.1, 0.006],
      [0.063, 0.006],
      [0.05, 0.006],
    ] as const) {
      expect(hawthorneFriction(D, s)).toBeGreaterThan(0.04);
      expect(hawthorneFriction(D, s)).toBeLessThan(0.09);
    }
  });
});

describe('slack hose', () => {
  // Abstract of Abushakra, Walker and Sherman (150, 200, 250 mm): moderate compression raises the loss about 4 times,
  // further compression close to 10 times. Read; the formula itself is from memory.
  it('rises about 4 times when moderately compressed and close to 10 times further on', () => {
    const moderate = [0.1524, 0.2032, 0.254].map((D) => compressedHoseFactor(D, 0.15));
    expect(moderate.reduce((a, b) => a + b) / 3).toBeGreaterThan(3);
    expect(moderate.reduce((a, b) => a + b) / 3).toBeLessThan(5);
    expect(compressedHoseFactor(0.1524, 0.3)).toBeGreaterThan(8);
    expect(compressedHoseFactor(0.1524, 0.3)).toBeLessThan(11);
  });

  it('is 1 when stretched', () => {
    expect(compressedHoseFactor(0.1, 0)).toBe(1);
  });
});

// common practice, no source: times 1.5 to 2 where tighter than R/D 1.5.
describe('bent hose', () => {
  it.each([
    [1, 2],
    [1.5, 1.5],
    [2.5, 1],
  ])('R/D %f costs %f smooth elbows', (ratio, factor) => {
    const bend = hoseBendCoefficient({ bendRadius_m: ratio * 0.1, diameter_m: 0.1, angle_rad: Math.PI / 2 });
    const elbow = {
      style: 'smooth',
      radiusRatio: ratio,
      angle_rad: Math.PI / 2,
      angleRule: 'ashrae',
    } as const;
    expectRelative(bend.k, factor * elbowCoefficient(elbow).k, 1e-12);
  });
});
