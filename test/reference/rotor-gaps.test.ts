import { describe, it } from 'vitest';
import { cutOffShare, heatMargin, judgeCutOff, rimGapLeft } from '../../core/fan/rotor/gaps.ts';
import { discGrowth } from '../../core/fan/rotor/spinning-disc.ts';
import { solveDisc } from './disc-equilibrium.ts';
import { against } from './ledger.ts';

describe('gaps and margin of heat', () => {
  const share = against({
    relation: 'cutOffShare',
    source: 'by hand: 16 mm of 200 mm is 8 %, half an inch of eight inches a sixteenth',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const judged = against({
    relation: 'judgeCutOff',
    source:
      'shop practice for radial wheels: loud below a twentieth, mostly built up to a tenth, leaky above 12 %',
    basis: 'common-practice',
    kind: 'value',
  });
  const rim = against({
    relation: 'rimGapLeft',
    source:
      'equilibrium of a spinning disc, integrated in steps: what the rim leaves free to a wall around it',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const rubs = against({
    relation: 'rimGapLeft',
    source: 'by hand: a gap of 0.1 mm and a growth of 0.3 mm overlap by 0.2 mm',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const heat = against({
    relation: 'heatMargin',
    source: 'by hand in degC: glass transition of PLA as a page on filaments prints it, 59.1, less 40',
    basis: 'hand-calculation',
    kind: 'value',
  });

  it('gap to the cut-off edge as a share', () => {
    share.within(cutOffShare(0.016, 0.2), 0.08, 1e-14);
    share.within(cutOffShare(0.5 * 0.0254, 8 * 0.0254), 1 / 16, 1e-14);
  });
  it('practice of the gap', () => {
    for (const usual of [0.051, 0.06, 0.08, 0.1])
      judged.holds(judgeCutOff(usual) === 'usual', 'usual to a tenth');
    /** Where the judgement turns from one word to the next. */
    const turn = (below: string, low: number, high: number): number => {
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2;
        if (judgeCutOff(middle) === below) low = middle;
        else high = middle;
      }
      return high;
    };
    judged.within(turn('close', 0, 0.08), 0.05, 1e-14);
    judged.within(turn('usual', 0.08, 1), 0.12, 1e-14);
    judged.holds(
      judgeCutOff(0.01) === 'close' && judgeCutOff(0.2) === 'wide',
      'close, then usual, then wide',
    );
  });
  it('gap left at the rim', () => {
    const w = (12_000 * 2 * Math.PI) / 60;
    const solved = solveDisc({ inner: 0.004, outer: 0.075, nu: 0.36, E: 3.5e9, massForce: 1240 * w ** 2 });
    const disc = { outerRadius_m: 0.075, innerRadius_m: 0.004, speed_rpm: 12_000, density_kgm3: 1240 };
    const growth_m = discGrowth({ ...disc, poissonRatio: 0.36 }, 3.5e9);
    const wall_m = 0.076;
    rim.within(rimGapLeft(wall_m - 0.075, growth_m), wall_m - (0.075 + solved.rimGrowth), 1e-9);
    rubs.withinAbsolute(rimGapLeft(1e-4, 3e-4), -2e-4, 1e-15, { unit: 'm' });
  });
  it('margin to the softening point', () => {
    heat.withinAbsolute(heatMargin(59.1 + 273.15, 40 + 273.15), 19.1, 1e-12, { unit: 'K' });
    heat.holds(heatMargin(59.1 + 273.15, 65 + 273.15) < 0, 'below zero in a wheel warmer than that');
  });
});
