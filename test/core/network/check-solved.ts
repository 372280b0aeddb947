import { densityAt, marchElement, newMarch } from '../../../core/network/march.ts';
import { FAN } from '../../../core/network/net.ts';
import { MAX_ITERATIONS } from '../../../core/network/newton.ts';
import type { NetOutcome } from '../../../core/network/newton.ts';
import type { PackedNet } from '../../../core/network/packed.ts';
import { fanPower, fanTotalPressure } from '../../../core/fan/fan-curve.ts';
import { brentRoot } from '../../../core/fan/root.ts';
import type { FanDrive } from '../../../core/network/net.ts';

const REASONS = ['no-open-path', 'sealed-ring', 'did-not-settle'];

/** Speed over that of the curve: as held, or where the torques of motor and wheel meet, by halving. */
function speedRatioOf(
  { curve, speedRatio, motor }: FanDrive,
  flow_m3s: number,
  density_kgm3: number,
): number {
  if (motor === undefined) return speedRatio;
  const rated = curve.input.ratedSpeed_rpm!;
  const rest = (ratio: number): number => {
    const asked = fanPower(curve, { flow_m3s, density_kgm3, speedRatio: ratio })!;
    return motor.model.at(ratio * rated).torque_Nm - asked / (ratio * rated * (Math.PI / 30));
  };
  return brentRoot(rest, 1e-6, (motor.model.noLoadSpeed_rpm / rated) * (1 + 1e-12));
}

/**
 * What is wrong with an outcome, in words; empty when nothing is. It works from the state alone: mass at every node,
 * pressure along every element, no flow and no loss in dead ends.
 */
export function faultsOf(packed: PackedNet, outcome: NetOutcome): string[] {
  const faults: string[] = [];
  if (outcome.iterations > MAX_ITERATIONS) faults.push(`${outcome.iterations} iterations`);
  if (!Number.isFinite(outcome.massResidual) || !Number.isFinite(outcome.pressureResidual_Pa))
    faults.push('a residual is not finite');
  if (!outcome.converged) {
    if (!REASONS.includes(outcome.reason)) faults.push(`reason ${String(outcome.reason)}`);
    return faults;
  }
  const { state, activity, balance } = outcome;
  if (!(outcome.massResidual < 1e-9)) faults.push(`mass residual ${outcome.massResidual}`);
  for (let v = 0; v < packed.nodeCount; v++) {
    const p = state.pressure_Pa[v]!;
    if (activity.afloat[v] ? !Number.isNaN(p) : !Number.isFinite(p))
      faults.push(`pressure of node ${v} is ${p}`);
  }
  const inflow = new Float64Array(packed.nodeCount);
  let total = 0;
  for (let e = 0; e < packed.elementCount; e++) {
    const m = state.flow_kgs[e]!;
    if (!Number.isFinite(m)) faults.push(`flow of element ${e} is ${m}`);
    inflow[packed.to[e]!]! += m;
    inflow[packed.from[e]!]! -= m;
    total = Math.max(total, Math.abs(m));
  }
  for (let v = 0; v < packed.nodeCount; v++) {
    if (Number.isNaN(packed.given_Pa[v]!) && Math.abs(inflow[v]!) > 1e-9 * total + 1e-300)
      faults.push(`mass at node ${v} off by ${inflow[v]}`);
    if (!Number.isNaN(packed.given_Pa[v]!) && state.pressure_Pa[v] !== packed.given_Pa[v])
      faults.push(`given pressure of node ${v} moved`);
  }
  const active = new Set(activity.elements);
  const march = newMarch();
  const out = new Float64Array(3);
  for (let e = 0; e < packed.elementCount; e++) {
    const m = state.flow_kgs[e]!;
    const hangs = activity.deadEnds.some((end) => end.element === e);
    if (!active.has(e) && m !== 0) faults.push(`dead element ${e} carries ${m}`);
    if (!active.has(e) && !hangs) continue;
    const start = balance.endPressure(state, e, true);
    const end = balance.endPressure(state, e, false);
    const { fan } = packed.net.elements[e]!;
    let off: number;
    if (packed.net.elements[e]!.kind === FAN) {
      const density_kgm3 = densityAt(packed, start);
      const speedRatio = speedRatioOf(fan!, m / density_kgm3, density_kgm3);
      fanTotalPressure(fan!.curve, { flow_m3s: m / density_kgm3, density_kgm3, speedRatio }, out);
      off = start + out[0]! - end;
    } else {
      marchElement(packed, e, m, m < 0 ? end : start, march);
      off = march.total_Pa - (m < 0 ? start : end);
    }
    if (!(Math.abs(off) < 1e-6))
      faults.push(`pressure along ${hangs ? 'dead ' : ''}element ${e} off by ${off}`);
  }
  return faults;
}
