import type { Plan } from './plan.ts';
import { treeStep } from './tree-step.ts';

/** Slopes of the pressure balance along each active element. */
export interface Slopes {
  /** Against its own flow [Pa s/kg], never zero. */
  readonly byFlow: Float64Array;
  /** Against total pressure at its start and at its end [-]. */
  readonly byStart: Float64Array;
  readonly byEnd: Float64Array;
}

/**
 * Solves the linear system of one step: for each active element `byFlow m + byStart p(start) + byEnd p(end) = right`,
 * and at each active node mass in less mass out `= right`.
 *
 * @param plan - structure
 * @param slopes - of each element
 * @param right - right-hand sides, elements then nodes; receives flows, then pressures
 * @param couple - adds what mixing junctions put into the rows of coupled flows; null leaves junctions out
 */
export function linearStep(
  plan: Plan,
  slopes: Slopes,
  right: Float64Array,
  couple: ((values: Float64Array) => void) | null,
): void {
  const { system, startNode, endNode } = plan;
  if (system.kind === 'tree') {
    treeStep(system, startNode, endNode, slopes.byFlow, right);
    return;
  }
  const { lu, coupled, flowUnknown, own } = system;
  const { byFlow, byStart, byEnd } = slopes;
  const { values } = lu;
  const ne = startNode.length;
  const nc = coupled.length;
  const reduced = lu.right;
  values.fill(0);
  for (let v = 0; v < lu.size - nc; v++) reduced[nc + v] = right[ne + v]!;
  for (let i = 0; i < ne; i++) {
    const f = startNode[i]!;
    const t = endNode[i]!;
    const at = 5 * i;
    if (flowUnknown[i]! >= 0) {
      reduced[flowUnknown[i]!] = right[i]!;
      values[own[at]!]! += byFlow[i]!;
      if (f >= 0) {
        values[own[at + 1]!]! += byStart[i]!;
        values[own[at + 3]!]! -= 1;
      }
      if (t >= 0) {
        values[own[at + 2]!]! += byEnd[i]!;
        values[own[at + 4]!]! += 1;
      }
      continue;
    }
    const yields = 1 / byFlow[i]!;
    const m = right[i]! * yields;
    const s = byStart[i]! * yields;
    const e = byEnd[i]! * yields;
    if (f >= 0) {
      reduced[nc + f]! += m;
      values[own[at]!]! += s;
      if (t >= 0) values[own[at + 1]!]! += e;
    }
    if (t >= 0) {
      reduced[nc + t]! -= m;
      if (f >= 0) values[own[at + 2]!]! -= s;
      values[own[at + 3]!]! -= e;
    }
  }
  if (couple !== null) couple(values);
  lu.factorise();
  lu.solve(reduced);
  for (let v = 0; v < lu.size - nc; v++) right[ne + v] = reduced[nc + v]!;
  for (let i = 0; i < ne; i++) {
    const unknown = flowUnknown[i]!;
    if (unknown >= 0) {
      right[i] = reduced[unknown]!;
      continue;
    }
    const f = startNode[i]!;
    const t = endNode[i]!;
    let rest = right[i]!;
    if (f >= 0) rest -= byStart[i]! * reduced[nc + f]!;
    if (t >= 0) rest -= byEnd[i]! * reduced[nc + t]!;
    right[i] = rest / byFlow[i]!;
  }
}
