import { activityKey, findActivity } from './activity.ts';
import type { Activity } from './activity.ts';
import { Balance } from './balance.ts';
import type { NetState } from './balance.ts';
import { finishDeadEnds } from './dead-ends.ts';
import { forgetChanged } from './kept-drop.ts';
import type { PackedNet } from './packed.ts';
import { makePlan } from './plan.ts';
import type { Plan } from './plan.ts';
import { coldState, sizesOf, turnFlows, warmState } from './start.ts';

/** Why a network has no solution; a closed list. */
export type NoSolution = 'no-open-path' | 'sealed-ring' | 'did-not-settle';

export type NetOutcome =
  | {
      readonly converged: true;
      readonly state: NetState;
      readonly activity: Activity;
      readonly balance: Balance;
      readonly iterations: number;
      /** Largest mass imbalance of a node over the sum of flows into the network [-]. */
      readonly massResidual: number;
      readonly pressureResidual_Pa: number;
    }
  | {
      readonly converged: false;
      readonly reason: NoSolution;
      readonly iterations: number;
      readonly massResidual: number;
      readonly pressureResidual_Pa: number;
      /** Element with the largest imbalance, -1 where it makes no sense. */
      readonly worstElement: number;
    };

/** Newton steps at most; a shop needs about ten. */
export const MAX_ITERATIONS = 200;
/** A solution balances pressure along every element within this [Pa], plus a share of the largest pressure. */
const PRESSURE_TOLERANCE_Pa = 1e-9;
const PRESSURE_TOLERANCE_SHARE = 1e-13;
/** A solution balances mass at every node within this share of the total flow. */
const MASS_TOLERANCE = 1e-11;

/** Of these, how many a warm start may use before a cold one takes its place. */
const WARM_ITERATIONS = 40;
/** Share of the total flow by which a state may be off before a step must be taken whole. */
const MASS_BALANCED = 1e-6;
/** Times that a plain step is halved before flows are held back. */
const HALVINGS = 8;
/** Damping (see `Balance.damp`) when a plain step first fails, when it is dropped again, and when the solver gives up. */
const FIRST_DAMPING = 0.3;
const LEAST_DAMPING = 1e-4;
const MOST_DAMPING = 1e12;
/** Factor on the damping after a damped step that went well. */
const CALM = 0.6;
/** Factor by which the measure may grow in one damped step. */
const UPHILL = 4;
/** A damped step may always reach this measure, however small the one before. */
const CEILING = 100;
/** Mass that is none [kg/s]. */
const NO_FLOW_kgs = 1e-300;
/** Flows [kg/s] and pressures [Pa] beyond this are no air; it keeps squares of an iterate finite. */
const BOUND = 1e60;

/** Gates that may move at once for their flows to be turned first; of more, each would answer for the others. */
const MOST_CHANGED = 2;

/** Plans of a network by activity; a plan costs more than a solve. */
export type PlanCache = Map<string, Plan>;

export interface SolveOptions {
  /** State to start from, of the same network. */
  readonly warm?: NetState | null;
  /** For each element the mass flow it is held at [kg/s], NaN where free. */
  readonly held?: Float64Array | null;
  readonly plans?: PlanCache;
  /**
   * Share of the largest pressure, and of the total flow, to which the balance must hold; absent: as near as rounding
   * lets it. For those who solve thousands of times and need no more digits.
   */
  readonly tolerance?: number;
}

/**
 * Finds the flows and pressures of a network by Newton's method on all of them at once, with a sparse factorisation
 * and a damped step; where a step does not help, flows are held back as the inertia of the air would hold them.
 */
export function solveNet(packed: PackedNet, options: SolveOptions = {}): NetOutcome {
  const held = options.held ?? null;
  const share = options.tolerance ?? 0;
  const key = activityKey(packed, held);
  let plan = options.plans?.get(key);
  if (plan === undefined) {
    const activity = findActivity(packed);
    if (activity.sealedRing) return refused('sealed-ring');
    if (activity.elements.length === 0) return refused('no-open-path');
    plan = makePlan(packed, activity, held !== null);
    options.plans?.set(key, plan);
  }
  const { activity } = plan;
  // sizes only scale a warm start, so those of the last cold one will do
  let sizes = options.warm && plan.last?.packed === packed ? plan.last.sizes : null;
  if (sizes === null) {
    sizes = sizesOf(packed, activity.elements, options.warm ? (plan.last?.sizes.typical_kgs ?? null) : null);
    plan.last = { packed, sizes };
  }
  const changed = forgetChanged(packed);
  const balance = new Balance(packed, plan, held, sizes);
  let spent = 0;
  if (options.warm) {
    const warm = warmState(packed, plan, sizes, held, options.warm);
    if (warm !== null) {
      if (held === null && changed.length <= MOST_CHANGED) turnFlows(packed, changed, warm);
      const outcome = iterate(plan, balance, warm, share, 0, WARM_ITERATIONS);
      if (outcome.converged) {
        balance.keepDrops(warm);
        finishDeadEnds(packed, activity, balance, warm);
        return outcome;
      }
      spent = outcome.iterations;
    }
  }
  const state = coldState(packed, plan, sizes, held);
  const outcome = iterate(plan, balance, state, share, spent, MAX_ITERATIONS);
  if (outcome.converged) {
    balance.keepDrops(state);
    finishDeadEnds(packed, activity, balance, state);
  }
  return outcome;
}

const refused = (reason: NoSolution): NetOutcome => ({
  converged: false,
  reason,
  iterations: 0,
  massResidual: 0,
  pressureResidual_Pa: 0,
  worstElement: -1,
});

/** Newton's method from a state, which it changes in place, until the balance holds or the steps are spent. */
function iterate(
  plan: Plan,
  balance: Balance,
  state: NetState,
  share: number,
  spent: number,
  limit: number,
): NetOutcome {
  const { activity } = plan;
  const { step, before } = plan.work;
  const tolerance_Pa =
    PRESSURE_TOLERANCE_Pa + Math.max(PRESSURE_TOLERANCE_SHARE, share) * balance.pressureScale_Pa;
  const massTolerance = Math.max(MASS_TOLERANCE, share);
  let damping = 0;
  let firstDamping = FIRST_DAMPING;
  let ceiling = Infinity;
  let iterations = spent;
  balance.evaluate(state);
  let measure = balance.measure;

  for (;;) {
    const total = balance.throughput_kgs;
    if (balance.pressure_Pa <= tolerance_Pa && balance.mass_kgs <= massTolerance * total + NO_FLOW_kgs) {
      const massResidual = total > NO_FLOW_kgs ? balance.mass_kgs / total : 0;
      const pressureResidual_Pa = balance.pressure_Pa;
      return { converged: true, state, activity, balance, iterations, massResidual, pressureResidual_Pa };
    }
    if (iterations >= limit || damping > MOST_DAMPING) break;
    iterations++;
    balance.newtonStep(damping, step);
    remember(activity, state, before);

    // the first step brings mass into balance, whatever that does to pressure
    const unbalanced = balance.mass_kgs > MASS_BALANCED * total;
    let taken = 1;
    let accepted = false;
    let next = measure;
    for (let halving = 0; halving < (damping > 0 ? 1 : HALVINGS); halving++, taken /= 2) {
      if (!advance(activity, before, step, taken, state)) continue;
      balance.evaluate(state);
      next = balance.measure;
      // rounding alone moves a settled residual, so a tiny one always passes; inertia may carry a damped one uphill
      const bound = damping > 0 ? Math.min(UPHILL * measure, ceiling) : measure * (1 - 1e-3 * taken);
      if (next < bound || next < 1e-24 || (unbalanced && Number.isFinite(next))) {
        accepted = true;
        break;
      }
    }
    if (accepted) {
      if (damping > 0)
        damping *= next < 2 * measure ? Math.min(CALM, Math.max(0.1, Math.sqrt(next / measure))) : 1;
      if (damping < LEAST_DAMPING) damping = 0;
      measure = next;
    } else {
      if (damping === 0) {
        damping = firstDamping;
        ceiling = Math.max(1e4 * measure, CEILING);
        firstDamping *= 4;
      } else damping *= 8;
      restore(activity, before, state);
      balance.evaluate(state);
    }
  }
  const total = balance.throughput_kgs;
  const massResidual = total > 0 ? balance.mass_kgs / total : 0;
  return {
    converged: false,
    reason: 'did-not-settle',
    iterations,
    massResidual: Number.isFinite(massResidual) ? massResidual : 1,
    pressureResidual_Pa: Number.isFinite(balance.pressure_Pa) ? balance.pressure_Pa : Number.MAX_VALUE,
    worstElement: balance.worstElement,
  };
}

/** Copies the active part of a state: flows, then pressures. */
function remember({ elements, nodes }: Activity, state: NetState, before: Float64Array): void {
  const ne = elements.length;
  for (let i = 0; i < ne; i++) before[i] = state.flow_kgs[elements[i]!]!;
  for (let i = 0; i < nodes.length; i++) before[ne + i] = state.pressure_Pa[nodes[i]!]!;
}

function restore({ elements, nodes }: Activity, before: Float64Array, state: NetState): void {
  const ne = elements.length;
  for (let i = 0; i < ne; i++) state.flow_kgs[elements[i]!] = before[i]!;
  for (let i = 0; i < nodes.length; i++) state.pressure_Pa[nodes[i]!] = before[ne + i]!;
}

/** Moves a state to one share of a step from what was remembered; false where a value leaves all bounds. */
function advance(
  { elements, nodes }: Activity,
  before: Float64Array,
  step: Float64Array,
  share: number,
  state: NetState,
): boolean {
  const { flow_kgs, pressure_Pa } = state;
  const ne = elements.length;
  let inBounds = true;
  for (let i = 0; i < ne; i++) {
    const value = before[i]! + share * step[i]!;
    flow_kgs[elements[i]!] = value;
    if (!(Math.abs(value) < BOUND)) inBounds = false;
  }
  for (let i = 0; i < nodes.length; i++) {
    const value = before[ne + i]! + share * step[ne + i]!;
    pressure_Pa[nodes[i]!] = value;
    if (!(Math.abs(value) < BOUND)) inBounds = false;
  }
  return inBounds;
}
