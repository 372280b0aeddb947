import { describe, expect, it } from 'vitest';
import { branchCorrection, branchCorrectionWeight } from '../../core/fittings/branch-correction.ts';
import { acgihBranchEntry, convergingWye, junctionLegPressures } from '../../core/fittings/junction.ts';
import type { JunctionLeg, WyeGeometry } from '../../core/fittings/junction.ts';
import { rebase } from '../../core/fittings/loss-coefficient.ts';
import { suddenExpansion } from '../../core/fittings/size-change.ts';
import { expectRelative } from './relative.ts';

const radians = (angle_deg: number): number => (angle_deg * Math.PI) / 180;
const DENSITY = 1.2;

/** Losses of a wye from the junction itself, on the velocity pressure after the join. */
function fromJunction(wye: WyeGeometry, role?: 'branch'): { branch: number; straight: number } {
  const legs: JunctionLeg[] = [
    { area_m2: wye.straightArea_m2, direction_rad: Math.PI },
    { area_m2: wye.branchArea_m2, direction_rad: Math.PI + wye.angle_rad, ...(role ? { role } : {}) },
    { area_m2: wye.commonArea_m2, direction_rad: 0 },
  ];
  const flow = 0.3;
  const e = new Float64Array(3);
  const flows = [flow * (1 - wye.flowRatio), flow * wye.flowRatio, -flow];
  junctionLegPressures(legs, flows, DENSITY, e, new Float64Array(9));
  const pressure = (flow / wye.commonArea_m2) ** 2 / (2 * DENSITY);
  return { straight: (e[0]! - e[2]!) / pressure, branch: (e[1]! - e[2]!) / pressure };
}

/** A branch of the given share of the main's area on a main that keeps its size. */
const onMain = (flowRatio: number, branchShare: number, angle_deg: number): WyeGeometry => ({
  flowRatio,
  branchArea_m2: 0.02 * branchShare,
  straightArea_m2: 0.02,
  commonArea_m2: 0.02,
  angle_rad: radians(angle_deg),
});

describe('junction against the written-out wye', () => {
  it.each([0, 0.1, 0.35, 0.5, 0.8, 1])('same numbers at flow ratio %f', (q) => {
    for (const share of [0.2, 0.35, 0.6, 1]) {
      for (const commonArea_m2 of [0.02, 0.024, 0.03]) {
        const wye = { ...onMain(q, share, 40), commonArea_m2 };
        const junction = fromJunction(wye, 'branch');
        expect(junction.branch).toBeCloseTo(convergingWye(wye).branch.k, 9);
        expect(junction.straight).toBeCloseTo(convergingWye(wye).straight.k, 9);
      }
    }
  });
});

// Idelchik, Handbook of Hydraulic Resistance, first English edition 1966, diagrams 7-3 (branch, 45 degrees), main keeping
// its size; read in a public copy of the tables. That edition has no branch correction at 45 degrees.
describe('branch at 45 degrees, tables of the first edition', () => {
  const table: readonly (readonly [share: number, k: readonly number[]])[] = [
    [0.2, [-1, -0.45, 0.54, 1.64, 3.15, 5, 6.9, 9.2, 12.4, 15.4, 18.9]],
    [0.4, [-1, -0.59, -0.17, 0.3, 0.72, 1.18, 1.65, 2.15, 2.66, 3.2, 3.71]],
    [1, [-1, -0.62, -0.29, -0.03, 0.21, 0.4, 0.53, 0.6, 0.66, 0.64, 0.59]],
  ];
  // The handbook says that these tables are its formula refined by experiment: the printed numbers leave the printed
  // formula by up to 0.11 (0.54 for 0.437) and 4.2 % (9.2 for 9.605). Ours is the formula, so that is the agreement.
  it.each(table)('branch of %f of the main within 0.11 or 4.3 %', (share, printed) => {
    printed.forEach((k, tenth) => {
      const ours = fromJunction(onMain(tenth / 10, share, 45)).branch;
      expect(Math.abs(ours - k), `q ${tenth / 10}: ${ours} against ${k}`).toBeLessThan(
        Math.max(0.11, 0.043 * Math.max(Math.abs(k), Math.abs(ours))),
      );
    });
  });
});

// The same tables in air-conditioning handbooks (ASHRAE and SMACNA converging wye, 45 degrees, round), read in an open
// library, by velocity ratio branch over common.
describe('branch at 45 degrees, air-conditioning table', () => {
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
    expect(Math.abs(ours - printed)).toBeLessThan(0.35);
  });
});

// Straight leg: diagram 7-4 (45 degrees) as transcribed. The handbook corrects the momentum value by experiment where
// little air enters; ours is the plain momentum value.
describe('straight leg at 45 degrees', () => {
  it.each([
    [0.2, [0, 0.12, 0.17, -0.13, -0.5, -1, -1.7, -2.6, -3.56, -4.75, -6.1]],
    [0.4, [0, 0.16, 0.27, 0.2, 0.08, -0.13, -0.45, -0.85, -1.3, -1.9, -2.55]],
  ] as const)('branch of %f of the main within 0.2', (share, printed) => {
    printed.forEach((k, tenth) => {
      const ours = fromJunction(onMain(tenth / 10, share, 45)).straight;
      expect(Math.abs(ours - k), `q ${tenth / 10}: ${ours} against ${k}`).toBeLessThan(0.2);
    });
  });

  // Diagram 7-7: tee at 90 degrees, 1.55 q - q^2 for every area. Momentum gives 2 q - q^2: at most 0.45 too high, as the
  // remarks of the junction say.
  it('at 90 degrees is too high, by 0.45 at most', () => {
    [0, 0.16, 0.27, 0.38, 0.46, 0.53, 0.57, 0.59, 0.6, 0.59, 0.55].forEach((k, tenth) => {
      const ours = fromJunction(onMain(tenth / 10, 0.5, 90)).straight;
      expect(ours - k).toBeGreaterThan(-0.03);
      expect(ours - k).toBeLessThan(0.46);
    });
  });
});

// Idelchik, 3rd ed. 2006, p. 417, table 7-1, read as quoted in an open library: A = 1 for Fb/Fc up to 0.35; above it
// 0.9 (1 - q) up to q 0.4 and 0.55 beyond; 1 if the main grows by the branch.
describe('branch correction, third edition', () => {
  it('takes the printed values', () => {
    const large = branchCorrectionWeight(0.8, 0);
    expect(branchCorrection(0.5, branchCorrectionWeight(0.25, 0))).toBe(1);
    expect(branchCorrection(0.7, branchCorrectionWeight(0.8, 1))).toBe(1);
    for (const q of [0, 0.1, 0.2, 0.3]) expectRelative(branchCorrection(q, large), 0.9 * (1 - q), 1e-12);
    for (const q of [0.45, 0.7, 1]) expectRelative(branchCorrection(q, large), 0.55, 1e-12);
  });

  // The same library fits the table by 0.9166 - 1.4058 q + 1.6970 q^2 - 0.6527 q^3.
  it('stays within 0.06 of the smooth fit of the table', () => {
    for (let q = 0; q <= 1; q += 0.05) {
      const fit = 0.9166 - 1.4058 * q + 1.697 * q * q - 0.6527 * q ** 3;
      expect(Math.abs(branchCorrection(q, 1) - fit)).toBeLessThan(0.06);
    }
  });

  it('lowers the branch loss by no more than 45 % against the first edition: the spread of the sources', () => {
    for (const q of [0.4, 0.6, 0.8, 1]) {
      const ratio = convergingWye(onMain(q, 0.8, 45)).branch.k / fromJunction(onMain(q, 0.8, 45)).branch;
      expect(ratio).toBeGreaterThan(0.549);
      expect(ratio).toBeLessThanOrEqual(1);
    }
  });
});

// ACGIH figure 5-17 (from memory): branch entry loss at matched velocities, main growing by the branch, main charged none.
describe('exhaust trade table at matched velocities', () => {
  it.each([15, 20, 30, 45, 60, 90])(
    '%f degrees: half of the air from the branch within 0.07, main no loss',
    (angle) => {
      const areas = { branchArea_m2: 0.01, straightArea_m2: 0.01, commonArea_m2: 0.02 };
      const wye = convergingWye({ flowRatio: 0.5, ...areas, angle_rad: radians(angle) });
      const onBranch = wye.branch.k; // equal velocities, so any reference is the same
      expect(Math.abs(onBranch - acgihBranchEntry(radians(angle)).k)).toBeLessThan(0.07);
      // Momentum shares the loss: the straight leg pays what the branch pays. The trade charges the branch alone.
      expect(wye.straight.k).toBeCloseTo(onBranch, 12);
    },
  );
});

describe('limits', () => {
  it('dead branch: step loss of Borda and Carnot from the straight to the common duct', () => {
    const wye = { ...onMain(0, 0.5, 45), commonArea_m2: 0.03 };
    const step = rebase(suddenExpansion(Math.sqrt(0.02), Math.sqrt(0.03)), 'downstream', 0.02, 0.03);
    expectRelative(fromJunction(wye, 'branch').straight, step.k, 1e-9);
  });

  it('dead straight leg and no turn: step loss from the branch, times the correction', () => {
    const wye = onMain(1, 0.5, 0);
    const step = rebase(suddenExpansion(1, Math.SQRT2), 'downstream', 1, 2);
    expectRelative(fromJunction(wye).branch, step.k, 1e-9);
    expectRelative(fromJunction(wye, 'branch').branch, 0.55 * step.k, 1e-9);
  });

  it('straight on without change of area and with a dead branch loses nothing', () => {
    expect(fromJunction(onMain(0, 0.5, 45), 'branch').straight).toBeCloseTo(0, 12);
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
    expectRelative((e[0]! - e[1]!) / approach, 1 + (0.1 / 0.01 / (0.3 / 0.02)) ** 2, 1e-12);
  });

  it('a breech of two like inlets at equal angles loses the same on both sides', () => {
    const legs = [
      { area_m2: 0.01, direction_rad: Math.PI - 0.5 },
      { area_m2: 0.01, direction_rad: Math.PI + 0.5 },
      { area_m2: 0.02, direction_rad: 0 },
    ];
    const e = new Float64Array(3);
    junctionLegPressures(legs, [0.12, 0.12, -0.24], DENSITY, e, new Float64Array(9));
    expectRelative(e[0]!, e[1]!, 1e-12);
    const pressure = (0.12 / 0.01) ** 2 / (2 * DENSITY);
    expectRelative((e[0]! - e[2]!) / pressure, 2 * (1 - Math.cos(0.5)), 1e-9);
  });
});
