import type { Sourced } from '../quantities/sourced.ts';

/** Loss of a branch that joins a main of like velocity, on the branch's velocity pressure, by branch angle. */
export const BRANCH_ENTRY: Sourced & {
  readonly angles_deg: readonly number[];
  readonly k: readonly number[];
} = {
  angles_deg: [10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 90],
  k: [0.06, 0.09, 0.12, 0.15, 0.18, 0.21, 0.25, 0.28, 0.32, 0.44, 1.0],
  source: 'ACGIH, Industrial Ventilation, figure 5-17, branch entry loss',
  basis: 'from-memory',
};
