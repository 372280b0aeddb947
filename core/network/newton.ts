import { fanTotalPressure } from '../fan/fan-curve.ts';
import { findActivity } from './activity.ts';
import type { Activity } from './activity.ts';
import { Balance } from './balance.ts';
import type { NetState } from './balance.ts';
import { densityAt, marchElement, newMarch } from './march.ts';
import { FAN } from './net.ts';
import type { PackedNet } from './packed.ts';
import { makePlan } from './plan.ts';
import type { Plan } from './plan.ts';

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
const PRESSURE_TOLERANCE_Pa = 1e-8;
const PRESSURE_TOLERANCE_SHARE = 1e-12;
/** A solution balances mass at every node within this share of the total flow. */
const MASS_TOLERANCE = 1e-11;
/** Speed of air in a run before anything is known [m/s]. */
const FIRST_VELOCITY_ms = 15;

/** Plans of a network by activity; a plan costs more than a solve. */
export type PlanCache = Map<string, Plan>;

export interface SolveOptions {
  /** State to start from, of the same network. */
  readonly warm?: NetState | null;
  /** For each element the mass flow it is held at [kg/s], NaN where free. */
  readonly held?: Float64Array | null;
  readonly plans?: PlanCache;
}

/**
 * Finds the flows and pressures of a network by Newton's method on all of them at once, with a sparse factorisation
 * and a damped step; where a step does not help, flows are held back as the inertia of the air would hold them.
 */
export function solveNet(packed: PackedNet, options: SolveOptions = {}): NetOutcome {
  const held = options.held ?? null;
  const activity = findActivity(packed, held);
  const refused = (reason: NoSolution): NetOutcome => ({
    converged: false,
    reason,
    iterations: 0,
    massResidual: 0,
    pressureResidual_Pa: 0,
    worstElement: -1,
  });
  if (activity.sealedRing) return refused('sealed-ring');
  if (activity.elements.length === 0) return refused('no-open-path');

  let plan = options.plans?.get(activity.key);
  if (plan === undefined) {
    plan = makePlan(packed, activity);
    options.plans?.set(activity.key, plan);
  }
  const state = startState(packed, activity, options.warm ?? null, held);
  const balance = new Balance(packed, plan, held, scales(packed, activity, state));
  const outcome = iterate(packed, plan, balance, state);
  if (outcome.converged) finishDeadEnds(packed, outcome.activity, balance, state);
  return outcome;
}

function iterate(packed: PackedNet, plan: Plan, balance: Balance, state: NetState): NetOutcome {
  const { activity, lu } = plan;
  const { elements, nodes } = activity;
  const ne = elements.length;
  const step = new Float64Array(lu.size);
  const trial: NetState = { flow_kgs: state.flow_kgs.slice(), pressure_Pa: state.pressure_Pa.slice() };
  const unit = balance.pressureScale_Pa / balance.flowScale_kgs;
  const tolerance_Pa = PRESSURE_TOLERANCE_Pa + PRESSURE_TOLERANCE_SHARE * balance.pressureScale_Pa;
  let shift = 0;
  let iterations = 0;
  balance.evaluate(state, true, 0);
  let measure = balance.measure();
  let settled = false;

  while (iterations < MAX_ITERATIONS) {
    const now = balance.largest();
    const total = throughput(packed, activity, state);
    if (now.pressure_Pa <= tolerance_Pa && now.mass_kgs <= MASS_TOLERANCE * total + 1e-300) {
      settled = true;
      break;
    }
    iterations++;
    lu.factorise();
    for (let i = 0; i < lu.size; i++) step[i] = -balance.residual[i]!;
    lu.solve(step);

    let share = 1;
    let accepted = false;
    for (let halving = 0; halving < (shift > 0 ? 3 : 8); halving++) {
      let finite = true;
      for (let i = 0; i < ne; i++) {
        const value = state.flow_kgs[elements[i]!]! + share * step[i]!;
        trial.flow_kgs[elements[i]!] = value;
        if (!Number.isFinite(value)) finite = false;
      }
      for (let i = 0; i < nodes.length; i++) {
        const value = state.pressure_Pa[nodes[i]!]! + share * step[ne + i]!;
        trial.pressure_Pa[nodes[i]!] = value;
        if (!Number.isFinite(value)) finite = false;
      }
      if (finite) {
        balance.evaluate(trial, false);
        const next = balance.measure();
        // rounding alone moves a settled residual, so a tiny one always passes
        if (next < measure * (1 - 1e-3 * share) || next < 1e-24) {
          measure = next;
          accepted = true;
          break;
        }
      }
      share /= 2;
    }
    if (accepted) {
      for (const e of elements) state.flow_kgs[e] = trial.flow_kgs[e]!;
      for (const v of nodes) state.pressure_Pa[v] = trial.pressure_Pa[v]!;
      shift = share === 1 ? shift / 16 : shift;
      if (shift < 1e-6 * unit) shift = 0;
    } else {
      shift = shift === 0 ? 1e-3 * unit : shift * 8;
      if (shift > 1e12 * unit) break;
    }
    balance.evaluate(state, true, shift);
  }

  const end = balance.largest();
  const total = throughput(packed, activity, state);
  const massResidual = total > 0 ? end.mass_kgs / total : 0;
  if (!settled) {
    return {
      converged: false,
      reason: 'did-not-settle',
      iterations,
      massResidual: Number.isFinite(massResidual) ? massResidual : 1,
      pressureResidual_Pa: Number.isFinite(end.pressure_Pa) ? end.pressure_Pa : Number.MAX_VALUE,
      worstElement: end.worstElement,
    };
  }
  return {
    converged: true,
    state,
    activity,
    balance,
    iterations,
    massResidual,
    pressureResidual_Pa: end.pressure_Pa,
  };
}

/** Sum of the flows that cross the given pressures, or the largest flow where none does [kg/s]. */
function throughput(packed: PackedNet, activity: Activity, state: NetState): number {
  let crossing = 0;
  let largest = 0;
  for (const e of activity.elements) {
    const m = Math.abs(state.flow_kgs[e]!);
    if (m > largest) largest = m;
    if (!Number.isNaN(packed.given_Pa[packed.from[e]!]!)) crossing += m;
    if (!Number.isNaN(packed.given_Pa[packed.to[e]!]!)) crossing += m;
  }
  return Math.max(crossing / 2, largest);
}

/** Mass flow of an element at the first velocity, by its narrowest segment [kg/s]; 0 where it has no area. */
function firstFlow(packed: PackedNet, e: number): number {
  let area = Infinity;
  for (let s = packed.segmentStart[e]!; s < packed.segmentStart[e + 1]!; s++) {
    const a = packed.area_m2[s]!;
    if (a > 0 && a < area) area = a;
  }
  return Number.isFinite(area) ? area * FIRST_VELOCITY_ms * packed.net.air.density_kgm3 : 0;
}

function startState(
  packed: PackedNet,
  activity: Activity,
  warm: NetState | null,
  held: Float64Array | null,
): NetState {
  const flow_kgs = new Float64Array(packed.elementCount);
  const pressure_Pa = new Float64Array(packed.nodeCount);
  for (let v = 0; v < packed.nodeCount; v++)
    if (!Number.isNaN(packed.given_Pa[v]!)) pressure_Pa[v] = packed.given_Pa[v]!;
  let typical = 0;
  let counted = 0;
  for (const e of activity.elements) {
    const m = firstFlow(packed, e);
    flow_kgs[e] = m;
    if (m > 0) {
      typical += m;
      counted++;
    }
  }
  typical = counted > 0 ? typical / counted : 0.1;
  for (const e of activity.elements) {
    const element = packed.net.elements[e]!;
    if (element.kind === FAN) {
      const points = element.fan!.curve.pressure.x;
      const middle = (points[0]! + points[points.length - 1]!) / 2;
      flow_kgs[e] = middle * element.fan!.speedRatio * packed.net.air.density_kgm3;
    } else if (flow_kgs[e] === 0) flow_kgs[e] = typical;
    if (held && !Number.isNaN(held[e]!)) flow_kgs[e] = held[e]!;
  }
  if (
    warm !== null &&
    warm.flow_kgs.length === flow_kgs.length &&
    warm.pressure_Pa.length === pressure_Pa.length
  ) {
    // an element that was shut a moment ago starts from its own first guess
    for (const e of activity.elements) {
      if (warm.flow_kgs[e] !== 0 && !(held && !Number.isNaN(held[e]!))) flow_kgs[e] = warm.flow_kgs[e]!;
    }
    for (const v of activity.nodes)
      pressure_Pa[v] = Number.isFinite(warm.pressure_Pa[v]!) ? warm.pressure_Pa[v]! : 0;
  }
  return { flow_kgs, pressure_Pa };
}

function scales(packed: PackedNet, activity: Activity, state: NetState): { Pa: number; kgs: number } {
  let low = Infinity;
  let high = -Infinity;
  for (const v of packed.given_Pa) {
    if (Number.isNaN(v)) continue;
    if (v < low) low = v;
    if (v > high) high = v;
  }
  let Pa = Number.isFinite(low) ? high - low : 0;
  const out = new Float64Array(3);
  let kgs = 0;
  const march = newMarch();
  for (const e of activity.elements) {
    const element = packed.net.elements[e]!;
    kgs = Math.max(kgs, Math.abs(state.flow_kgs[e]!));
    if (element.kind === FAN) {
      const density_kgm3 = densityAt(packed, 0);
      const speedRatio = element.fan!.speedRatio;
      const flow_m3s = element.fan!.curve.pressure.x[0]! * speedRatio;
      fanTotalPressure(element.fan!.curve, { flow_m3s, density_kgm3, speedRatio }, out);
      Pa = Math.max(Pa, Math.abs(out[0]!));
    }
  }
  if (Pa === 0) {
    for (const e of activity.elements) {
      marchElement(packed, e, state.flow_kgs[e]!, 0, march);
      Pa = Math.max(Pa, -march.total_Pa);
    }
  }
  return { Pa: Pa > 0 && Number.isFinite(Pa) ? Pa : 1, kgs: kgs > 0 && Number.isFinite(kgs) ? kgs : 0.1 };
}

/** Hands pressures out to the dead ends: no flow, so no loss; a fan there stands at shut-off. */
function finishDeadEnds(packed: PackedNet, activity: Activity, balance: Balance, state: NetState): void {
  const out = new Float64Array(3);
  for (let i = activity.deadEnds.length - 1; i >= 0; i--) {
    const { element: e, hangs } = activity.deadEnds[i]!;
    const atStart = packed.from[e] === hangs;
    let pressure = balance.endPressure(state, e, !atStart);
    const element = packed.net.elements[e]!;
    if (element.kind === FAN) {
      const speedRatio = element.fan!.speedRatio;
      const density_kgm3 = densityAt(packed, pressure);
      fanTotalPressure(element.fan!.curve, { flow_m3s: 0, density_kgm3, speedRatio }, out);
      pressure += atStart ? -out[0]! : out[0]!;
    }
    state.pressure_Pa[hangs] = pressure;
  }
  for (let v = 0; v < packed.nodeCount; v++) if (activity.afloat[v]) state.pressure_Pa[v] = NaN;
}
