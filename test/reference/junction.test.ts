import { describe, it } from 'vitest';
import { acgihBranchEntry, convergingWye, junctionLegPressures } from '../../core/fittings/junction.ts';
import { rebase } from '../../core/fittings/loss-coefficient.ts';
import { suddenExpansion } from '../../core/fittings/size-change.ts';
import { against } from './ledger.ts';
import { DENSITY, fromJunction, onMain, radians } from './wye-samples.ts';

describe('junction against the written-out wye', () => {
  const writtenOut = against({
    relation: ['junctionLegPressures', 'convergingWye'],
    source: 'momentum of any junction, and the wye written out from it: against each other',
    basis: 'hand-calculation',
    kind: 'second-route',
  });

  it.each([0, 0.1, 0.35, 0.5, 0.8, 1])('same numbers at flow ratio %f', (q) => {
    for (const share of [0.2, 0.35, 0.6, 1]) {
      for (const commonArea_m2 of [0.02, 0.024, 0.03]) {
        const wye = { ...onMain(q, share, 40), commonArea_m2 };
        const junction = fromJunction(wye, 'branch');
        writtenOut.withinAbsolute(junction.branch, convergingWye(wye).branch.k, 5e-10);
        writtenOut.withinAbsolute(junction.straight, convergingWye(wye).straight.k, 5e-10);
      }
    }
  });
});

// Idelchik, Handbook of Hydraulic Resistance, first English edition 1966, diagrams 7-3 (branch, 45 degrees), main keeping
// its size; read in a public copy of the tables. That edition has no branch correction at 45 degrees.
describe('branch at 45 degrees, tables of the first edition', () => {
  const firstEdition = against({
    relation: 'junctionLegPressures',
    source: 'Idelchik, 1st ed. 1966, diagram 7-3, branch at 45 degrees',
    basis: 'published',
    kind: 'value',
  });
  const table: readonly (readonly [share: number, k: readonly number[]])[] = [
    [0.2, [-1, -0.45, 0.54, 1.64, 3.15, 5, 6.9, 9.2, 12.4, 15.4, 18.9]],
    [0.4, [-1, -0.59, -0.17, 0.3, 0.72, 1.18, 1.65, 2.15, 2.66, 3.2, 3.71]],
    [1, [-1, -0.62, -0.29, -0.03, 0.21, 0.4, 0.53, 0.6, 0.66, 0.64, 0.59]],
  ];
  const smallBranch = against({
    relation: 'convergingWye',
    source: 'Idelchik, 1st ed. 1966, diagram 7-3, branch of a fifth of the main at 45 degrees',
    basis: 'published',
    kind: 'value',
  });

  // The handbook says that these tables are its formula refined by experiment: the printed numbers leave the printed
  // formula by up to 0.11 (0.54 for 0.437) and 4.2 % (9.2 for 9.605). Ours is the formula, so that is the agreement.
  // A branch so small takes no correction in the third edition either, so the written-out wye is held to it too.
  it('branch of a fifth of the main, written out', () => {
    const [share, printed] = table[0]!;
    printed.forEach((k, tenth) => {
      const ours = convergingWye(onMain(tenth / 10, share, 45)).branch.k;
      const tolerance = Math.max(0.11, 0.043 * Math.max(Math.abs(k), Math.abs(ours)));
      smallBranch.withinAbsolute(ours, k, tolerance, { stated: '0.11 or 4.3 %' });
    });
  });

  it.each(table)('branch of %f of the main within 0.11 or 4.3 %', (share, printed) => {
    printed.forEach((k, tenth) => {
      const ours = fromJunction(onMain(tenth / 10, share, 45)).branch;
      const tolerance = Math.max(0.11, 0.043 * Math.max(Math.abs(k), Math.abs(ours)));
      firstEdition.withinAbsolute(ours, k, tolerance, { stated: '0.11 or 4.3 %' });
    });
  });
});

// The same tables in air-conditioning handbooks (ASHRAE and SMACNA converging wye, 45 degrees, round), read in an open
// library, by velocity ratio branch over common.
describe('branch at 45 degrees, air-conditioning table', () => {
  const airConditioning = against({
    relation: 'junctionLegPressures',
    source: 'ASHRAE and SMACNA, converging wye of 45 degrees, round',
    basis: 'published',
    kind: 'value',
  });

  it.each([
    [0.1, 0.5, -0.48],
    [0.1, 1, 0.22],
    [0.1, 2, 3.1],
    [0.2, 1, 0.31],
    [0.2, 2, 3.2],
    [0.3, 1.5, 1.5],
    [0.4, 1, 0.44],
    [0.6, 0.5, -0.09],
    [0.6, 1, 0.53],
    [1, 0.5, 0.11],
    [1, 1, 0.69],
  ])('branch of %f of the main at velocity ratio %f within 0.35 of %f', (share, velocityRatio, printed) => {
    const ours = fromJunction(onMain(velocityRatio * share, share, 45)).branch;
    airConditioning.withinAbsolute(ours, printed, 0.35);
  });
});

// Straight leg: diagram 7-4 (45 degrees) as transcribed. The handbook corrects the momentum value by experiment where
// little air enters; ours is the plain momentum value.
describe('straight leg at 45 degrees', () => {
  const straight = against({
    relation: 'junctionLegPressures',
    source: 'Idelchik, 1st ed. 1966, diagram 7-4, straight leg of a wye of 45 degrees',
    basis: 'published',
    kind: 'value',
  });
  const tee = against({
    relation: 'junctionLegPressures',
    source: 'Idelchik, 1st ed. 1966, diagram 7-7, straight leg of a tee of 90 degrees',
    basis: 'published',
    kind: 'value',
  });

  it.each([
    [0.2, [0, 0.12, 0.17, -0.13, -0.5, -1, -1.7, -2.6, -3.56, -4.75, -6.1]],
    [0.4, [0, 0.16, 0.27, 0.2, 0.08, -0.13, -0.45, -0.85, -1.3, -1.9, -2.55]],
  ] as const)('branch of %f of the main within 0.2', (share, printed) => {
    printed.forEach((k, tenth) => {
      const ours = fromJunction(onMain(tenth / 10, share, 45)).straight;
      straight.withinAbsolute(ours, k, 0.2);
    });
  });

  // Diagram 7-7: tee at 90 degrees, 1.55 q - q^2 for every area. Momentum gives 2 q - q^2: at most 0.45 too high, as the
  // remarks of the junction say.
  it('at 90 degrees is too high, by 0.45 at most', () => {
    [0, 0.16, 0.27, 0.38, 0.46, 0.53, 0.57, 0.59, 0.6, 0.59, 0.55].forEach((k, tenth) => {
      const ours = fromJunction(onMain(tenth / 10, 0.5, 90)).straight;
      tee.withinAbsolute(ours, k, ours > k ? 0.46 : 0.03, { stated: '0.46 above, 0.03 below' });
    });
  });
});

// ACGIH figure 5-17 (from memory): branch entry loss at matched velocities, main growing by the branch, main charged none.
describe('exhaust trade table at matched velocities', () => {
  const figure = against({
    relation: ['convergingWye', 'acgihBranchEntry'],
    source: 'ACGIH figure 5-17, branch entry at matched velocities, and momentum: against each other',
    basis: 'from-memory',
    kind: 'value',
  });
  const shared = against({
    relation: 'convergingWye',
    source: 'momentum at matched velocities by symmetry: the straight leg pays what the branch pays',
    basis: 'hand-calculation',
    kind: 'second-route',
  });

  it.each([15, 20, 30, 45, 60, 90])(
    '%f degrees: half of the air from the branch within 0.07, main no loss',
    (angle) => {
      const areas = { branchArea_m2: 0.01, straightArea_m2: 0.01, commonArea_m2: 0.02 };
      const wye = convergingWye({ flowRatio: 0.5, ...areas, angle_rad: radians(angle) });
      const onBranch = wye.branch.k; // equal velocities, so any reference is the same
      figure.withinAbsolute(onBranch, acgihBranchEntry(radians(angle)).k, 0.07);
      // Momentum shares the loss: the straight leg pays what the branch pays. The trade charges the branch alone.
      shared.withinAbsolute(wye.straight.k, onBranch, 5e-13);
    },
  );
});

describe('limits', () => {
  const step = against({
    relation: 'junctionLegPressures',
    source: 'step loss of Borda and Carnot where one leg is dead, times the correction 0.55 on a branch',
    basis: 'hand-calculation',
    kind: 'limit',
  });
  const straightOn = against({
    relation: 'junctionLegPressures',
    source: 'straight on without change of area, the branch dead',
    basis: 'hand-calculation',
    kind: 'limit',
  });
  const takeOff = against({
    relation: 'junctionLegPressures',
    source: 'Idelchik ch. 7, take-off at 90 degrees by plain momentum: 1 + (Vb/Vc)^2',
    basis: 'from-memory',
    kind: 'value',
  });
  const likeInlets = against({
    relation: 'junctionLegPressures',
    source: 'two like inlets at equal angles lose the same',
    basis: 'hand-calculation',
    kind: 'limit',
  });
  const breech = against({
    relation: 'junctionLegPressures',
    source: 'a breech of two like inlets by momentum, 2 (1 - cos angle)',
    basis: 'hand-calculation',
    kind: 'second-route',
  });

  it('dead branch: step loss of Borda and Carnot from the straight to the common duct', () => {
    const wye = { ...onMain(0, 0.5, 45), commonArea_m2: 0.03 };
    const widening = rebase(suddenExpansion(Math.sqrt(0.02), Math.sqrt(0.03)), 'downstream', 0.02, 0.03);
    step.within(fromJunction(wye, 'branch').straight, widening.k, 1e-9);
  });

  it('dead straight leg and no turn: step loss from the branch, times the correction', () => {
    const wye = onMain(1, 0.5, 0);
    const widening = rebase(suddenExpansion(1, Math.SQRT2), 'downstream', 1, 2);
    step.within(fromJunction(wye).branch, widening.k, 1e-9);
    step.within(fromJunction(wye, 'branch').branch, 0.55 * widening.k, 1e-9);
  });

  it('straight on without change of area and with a dead branch loses nothing', () => {
    straightOn.withinAbsolute(fromJunction(onMain(0, 0.5, 45), 'branch').straight, 0, 5e-13);
  });

  // Diverging, plain momentum (Idelchik ch. 7, from memory): a branch that takes off at 90 degrees loses
  // 1 + (Vb/Vc)^2 on the approach velocity in that theory.
  it('take-off at a right angle', () => {
    const legs = [
      { area_m2: 0.02, direction_rad: Math.PI },
      { area_m2: 0.01, direction_rad: Math.PI / 2 },
      { area_m2: 0.02, direction_rad: 0 },
    ];
    const e = new Float64Array(3);
    junctionLegPressures(legs, [0.3, -0.1, -0.2], DENSITY, e, new Float64Array(9));
    const approach = (0.3 / 0.02) ** 2 / (2 * DENSITY);
    takeOff.within((e[0]! - e[1]!) / approach, 1 + (0.1 / 0.01 / (0.3 / 0.02)) ** 2, 1e-12);
  });

  it('a breech of two like inlets at equal angles loses the same on both sides', () => {
    const legs = [
      { area_m2: 0.01, direction_rad: Math.PI - 0.5 },
      { area_m2: 0.01, direction_rad: Math.PI + 0.5 },
      { area_m2: 0.02, direction_rad: 0 },
    ];
    const e = new Float64Array(3);
    junctionLegPressures(legs, [0.12, 0.12, -0.24], DENSITY, e, new Float64Array(9));
    likeInlets.within(e[0]!, e[1]!, 1e-12);
    const pressure = (0.12 / 0.01) ** 2 / (2 * DENSITY);
    breech.within((e[0]! - e[2]!) / pressure, 2 * (1 - Math.cos(0.5)), 1e-9);
  });
});
