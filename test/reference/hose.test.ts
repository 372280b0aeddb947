import { describe, it } from 'vitest';
import { compressedHoseFactor, hawthorneFriction, hoseBendCoefficient } from '../../core/duct/hose.ts';
import { elbowCoefficient } from '../../core/fittings/elbow.ts';
import { suddenExpansion } from '../../core/fittings/size-change.ts';
import { against } from './ledger.ts';

describe('corrugated hose', () => {
  const byHand = against({
    relation: 'hawthorneFriction',
    source: 'Hawthorne 1963 by hand, formula as quoted: three hoses, to four decimals',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const folds = against({
    relation: 'hawthorneFriction',
    source: 'one step expansion for each fold',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const practice = against({
    relation: 'hawthorneFriction',
    source: 'friction factors of 0.04 to 0.09 for wire-helix hose',
    basis: 'common-practice',
    kind: 'value',
  });

  // Hawthorne 1963, worked by hand with the formula as quoted: D 100, s 10 mm; D 63, s 6; D 38, s 5.
  it.each([
    [0.1, 0.01, 0.0675],
    [0.063, 0.006, 0.0647],
    [0.038, 0.005, 0.0854],
  ])('D %f, pitch %f', (diameter_m, pitch_m, friction) => {
    byHand.withinAbsolute(hawthorneFriction(diameter_m, pitch_m), friction, 5e-5);
  });

  it('is one step expansion for each fold (second route)', () => {
    const each = suddenExpansion(0.05, 0.05 + 0.438 * 0.006).k;
    folds.within((hawthorneFriction(0.05, 0.006) * 1) / 0.05, each / 0.006, 1e-12);
  });

  it('falls in the span 0.04 to 0.09 that practice gives for wire-helix hose', () => {
    for (const [D, s] of [
      [0.1, 0.006],
      [0.063, 0.006],
      [0.05, 0.006],
    ] as const) {
      const friction = hawthorneFriction(D, s);
      practice.holds(friction > 0.04 && friction < 0.09, 'within the span from 50 to 100 mm');
    }
  });
});

describe('slack hose', () => {
  const abstract = against({
    relation: 'compressedHoseFactor',
    source:
      'Abushakra, Walker and Sherman, abstract: about 4 times, close to 10 times when compressed further',
    basis: 'published',
    kind: 'value',
  });
  const stretched = against({
    relation: 'compressedHoseFactor',
    source: 'a stretched hose',
    basis: 'hand-calculation',
    kind: 'limit',
  });

  // Abstract of Abushakra, Walker and Sherman (150, 200, 250 mm): moderate compression raises the loss about 4 times,
  // further compression close to 10 times. Read; the formula itself is from memory.
  it('rises about 4 times when moderately compressed and close to 10 times further on', () => {
    const moderate = [0.1524, 0.2032, 0.254].map((D) => compressedHoseFactor(D, 0.15));
    const mean = moderate.reduce((a, b) => a + b) / 3;
    const further = compressedHoseFactor(0.1524, 0.3);
    abstract.holds(mean > 3 && mean < 5, '3 to 5 times at 15 %');
    abstract.holds(further > 8 && further < 11, '8 to 11 times at 30 %');
  });

  it('is 1 when stretched', () => {
    stretched.holds(compressedHoseFactor(0.1, 0) === 1, 'loses no more');
  });
});

// common practice, no source: times 1.5 to 2 where tighter than R/D 1.5.
describe('bent hose', () => {
  const practice = against({
    relation: 'hoseBendCoefficient',
    source: '1.5 to 2 smooth elbows where tighter than R/D 1.5',
    basis: 'common-practice',
    kind: 'value',
  });

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
    practice.within(bend.k, factor * elbowCoefficient(elbow).k, 1e-12);
  });
});
