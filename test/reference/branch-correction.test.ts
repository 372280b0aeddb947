import { describe, it } from 'vitest';
import {
  branchCorrection,
  branchCorrectionSlope,
  branchCorrectionWeight,
} from '../../core/fittings/branch-correction.ts';
import { convergingWye } from '../../core/fittings/junction.ts';
import { against } from './ledger.ts';
import { fromJunction, onMain } from './wye-samples.ts';

// Idelchik, 3rd ed. 2006, p. 417, table 7-1, read as quoted in an open library: A = 1 for Fb/Fc up to 0.35; above it
// 0.9 (1 - q) up to q 0.4 and 0.55 beyond; 1 if the main grows by the branch.
describe('branch correction, third edition', () => {
  const table = against({
    relation: ['branchCorrection', 'branchCorrectionWeight'],
    source: 'Idelchik, 3rd ed. 2006, table 7-1, as quoted in an open library',
    basis: 'published',
    kind: 'value',
  });
  const slope = against({
    relation: 'branchCorrectionSlope',
    source: 'rise of the factor between two flow ratios of Idelchik, 3rd ed. 2006, table 7-1',
    basis: 'published',
    kind: 'value',
  });
  const smoothFit = against({
    relation: 'branchCorrection',
    source: 'cubic through the table in the same library',
    basis: 'published',
    kind: 'value',
  });
  const spread = against({
    relation: ['branchCorrection', 'convergingWye'],
    source: 'the third edition over the first, which has no correction: the spread of the sources',
    basis: 'published',
    kind: 'limit',
  });

  it('takes the printed values', () => {
    const large = branchCorrectionWeight(0.8, 0);
    table.holds(branchCorrection(0.5, branchCorrectionWeight(0.25, 0)) === 1, '1 for a small branch');
    table.holds(branchCorrection(0.7, branchCorrectionWeight(0.8, 1)) === 1, '1 if the main grows by it');
    for (const q of [0, 0.1, 0.2, 0.3]) table.within(branchCorrection(q, large), 0.9 * (1 - q), 1e-12);
    for (const q of [0.45, 0.7, 1]) table.within(branchCorrection(q, large), 0.55, 1e-12);
  });

  it('rises between two printed values as its slope says', () => {
    const large = branchCorrectionWeight(0.8, 0);
    // 0.90 at no flow and 0.63 at 0.3; 0.55 from 0.4 on; 1 for a small branch whatever the flow
    for (const q of [0, 0.1, 0.2, 0.3])
      slope.withinAbsolute(branchCorrectionSlope(q, large), (0.63 - 0.9) / 0.3, 1e-12);
    for (const q of [0.45, 0.7, 1]) slope.withinAbsolute(branchCorrectionSlope(q, large), 0, 1e-12);
    for (const q of [0.1, 0.7])
      slope.withinAbsolute(branchCorrectionSlope(q, branchCorrectionWeight(0.25, 0)), 0, 1e-12);
  });

  // The same library fits the table by 0.9166 - 1.4058 q + 1.6970 q^2 - 0.6527 q^3.
  it('stays within 0.06 of the smooth fit of the table', () => {
    for (let q = 0; q <= 1; q += 0.05) {
      const fit = 0.9166 - 1.4058 * q + 1.697 * q * q - 0.6527 * q ** 3;
      smoothFit.withinAbsolute(branchCorrection(q, 1), fit, 0.06);
    }
  });

  it('lowers the branch loss by no more than 45 % against the first edition: the spread of the sources', () => {
    for (const q of [0.4, 0.6, 0.8, 1]) {
      const ratio = convergingWye(onMain(q, 0.8, 45)).branch.k / fromJunction(onMain(q, 0.8, 45)).branch;
      spread.holds(ratio > 0.549 && ratio <= 1, 'lower by no more than 45 %');
    }
  });
});
