import { fanTotalPressure } from '../fan/fan-curve.ts';
import { junctionLegPressures } from '../fittings/junction.ts';
import { densityAt, marchElement, newMarch } from './march.ts';
import { FAN } from './net.ts';
import type { PackedNet } from './packed.ts';
import type { Plan } from './plan.ts';
import type { Sizes } from './start.ts';

/** Flows and pressures of a whole network; kept between solves for a warm start. */
export interface NetState {
  /** Signed mass flow of each element, positive along it [kg/s]. */
  readonly flow_kgs: Float64Array;
  /** Total pressure of each node, static at a mixing junction [Pa gauge]. */
  readonly pressure_Pa: Float64Array;
}

/** Least slope of an element's pressure balance against flow, as a share of the pressure scale over the flow scale. */
const SLOPE_FLOOR = 1e-5;

/**
 * The equations of a network and their derivatives.
 *
 * Along an element: total pressure at its start, less its losses (or plus its fan), less total pressure at its end, is
 * zero [Pa]. At a node: mass flows in less mass flows out are zero [kg/s].
 */
export class Balance {
  /** Residuals: the active elements' in Pa, then the active nodes' in kg/s. */
  readonly residual: Float64Array;
  /** Largest pressure in the problem [Pa] and typical flow of the elements [kg/s]; they scale the residuals. */
  readonly pressureScale_Pa: number;
  readonly flowScale_kgs: number;
  readonly packed: PackedNet;
  readonly plan: Plan;
  private readonly held: Float64Array | null;
  private readonly typical_kgs: Float64Array;
  private readonly march = newMarch();
  private readonly fanOut = new Float64Array(3);
  private readonly junctionFlows: Float64Array[];
  private readonly junctionRise: Float64Array[];
  private readonly junctionSlope: Float64Array[];
  private readonly junctionByPressure: Float64Array;

  /**
   * @param packed - network
   * @param plan - structure of its active part
   * @param held - for each element the mass flow it is held at [kg/s], NaN where it is free; null if none is held
   */
  constructor(packed: PackedNet, plan: Plan, held: Float64Array | null, sizes: Sizes) {
    this.packed = packed;
    this.plan = plan;
    this.held = held;
    this.residual = new Float64Array(plan.lu.size);
    this.pressureScale_Pa = sizes.pressure_Pa;
    this.flowScale_kgs = sizes.flow_kgs;
    this.typical_kgs = sizes.typical_kgs;
    this.junctionFlows = packed.junctions.map((j) => new Float64Array(j.legs.length));
    this.junctionRise = packed.junctions.map((j) => new Float64Array(j.legs.length));
    this.junctionSlope = packed.junctions.map((j) => new Float64Array(j.legs.length ** 2));
    this.junctionByPressure = new Float64Array(packed.junctions.length);
  }

  /** Leg pressures of every junction at a state. */
  private mixJunctions(state: NetState): void {
    const { packed } = this;
    const compressible = packed.net.air.roomPressure_Pa;
    packed.junctions.forEach((junction, j) => {
      const flows = this.junctionFlows[j]!;
      junction.legs.forEach((leg, k) => {
        const m = state.flow_kgs[leg.element]!;
        flows[k] = leg.ends ? m : -m;
      });
      const p = state.pressure_Pa[junction.node]!;
      const density = densityAt(packed, p);
      junctionLegPressures(junction.legs, flows, density, this.junctionRise[j]!, this.junctionSlope[j]!);
      // every rise goes with flow squared over density
      this.junctionByPressure[j] =
        compressible === null ? 0 : -1 / Math.max(p + compressible, 0.1 * compressible);
    });
  }

  /** Total pressure at the start (or end) of an element [Pa]. */
  endPressure(state: NetState, e: number, atStart: boolean): number {
    const { packed } = this;
    const node = atStart ? packed.from[e]! : packed.to[e]!;
    const j = atStart ? packed.junctionFrom[e]! : packed.junctionTo[e]!;
    const leg = atStart ? packed.legFrom[e]! : packed.legTo[e]!;
    return state.pressure_Pa[node]! + (j < 0 ? 0 : this.junctionRise[j]![leg]!);
  }

  /** Writes the residuals at a state, and their derivatives into the values of the plan's factors. */
  evaluate(state: NetState): void {
    const { packed, plan, residual, march } = this;
    const { elements } = plan.activity;
    const values = plan.lu.values;
    const own = plan.own;
    values.fill(0);
    residual.fill(0);
    this.mixJunctions(state);
    const floor = (SLOPE_FLOOR * this.pressureScale_Pa) / this.flowScale_kgs;

    for (let i = 0; i < elements.length; i++) {
      const e = elements[i]!;
      const m = state.flow_kgs[e]!;
      const f = plan.pressureUnknown[packed.from[e]!]!;
      const t = plan.pressureUnknown[packed.to[e]!]!;
      if (f >= 0) residual[f]! -= m;
      if (t >= 0) residual[t]! += m;
      if (f >= 0) values[own[5 * i + 3]!]! -= 1;
      if (t >= 0) values[own[5 * i + 4]!]! += 1;
      const held = this.held ? this.held[e]! : NaN;
      if (!Number.isNaN(held)) {
        // scaled like a pressure, so that one measure of the residual serves all
        const slope = this.pressureScale_Pa / this.flowScale_kgs;
        residual[i] = (held - m) * slope;
        values[own[5 * i]!] = -slope;
        continue;
      }

      const start = this.endPressure(state, e, true);
      const end = this.endPressure(state, e, false);
      let byStart = 1;
      let byEnd = -1;
      let byFlow: number;
      if (packed.net.elements[e]!.kind === FAN) {
        const drive = packed.net.elements[e]!.fan!;
        const density = densityAt(packed, start);
        const flow = m / density;
        const out = this.fanOut;
        fanTotalPressure(
          drive.curve,
          { flow_m3s: flow, density_kgm3: density, speedRatio: drive.speedRatio },
          out,
        );
        residual[i] = start + out[0]! - end;
        byFlow = out[1]! / density;
        const room = packed.net.air.roomPressure_Pa;
        if (room !== null) {
          byStart += (out[2]! - (out[1]! * flow) / density) * (packed.net.air.density_kgm3 / room);
        }
      } else if (m >= 0) {
        marchElement(packed, e, m, start, march);
        residual[i] = march.total_Pa - end;
        byStart = march.byInlet;
        byFlow = march.byFlow;
      } else {
        marchElement(packed, e, m, end, march);
        residual[i] = start - march.total_Pa;
        byEnd = -march.byInlet;
        byFlow = march.byFlow; // d(-total)/dm = byFlow, as |m| falls where m rises
      }
      if (Math.abs(byFlow) < floor) byFlow = byFlow > 0 ? floor : -floor;
      values[own[5 * i]!]! += byFlow;
      if (f >= 0)
        values[own[5 * i + 1]!]! +=
          byStart * this.byNodePressure(packed.junctionFrom[e]!, packed.legFrom[e]!);
      if (t >= 0)
        values[own[5 * i + 2]!]! += byEnd * this.byNodePressure(packed.junctionTo[e]!, packed.legTo[e]!);
      this.couple(plan.couplingFrom[i]!, byStart, values);
      this.couple(plan.couplingTo[i]!, byEnd, values);
    }
  }

  /**
   * Holds flows back, as the inertia of the air would over a short time: takes `share` of each element's own slope, or
   * of its mean slope up to the typical flow where that is more, off the slope.
   */
  damp(share: number): void {
    const { plan } = this;
    const values = plan.lu.values;
    const n = plan.activity.elements.length;
    for (let i = 0; i < n; i++) {
      const at = plan.own[5 * i]!;
      const slope = values[at]!;
      values[at] = slope - share * Math.max(Math.abs(slope), this.pressureScale_Pa / this.typical_kgs[i]!);
    }
  }

  /** Slope of a leg's total pressure against the pressure of its junction [-]. */
  private byNodePressure(j: number, leg: number): number {
    return j < 0 ? 1 : 1 + this.junctionRise[j]![leg]! * this.junctionByPressure[j]!;
  }

  /** Adds the slopes of a leg's pressure against the flows of all legs of its junction. */
  private couple(coupling: Plan['couplingFrom'][number], factor: number, values: Float64Array): void {
    if (coupling === null) return;
    const { positions } = coupling;
    const n = positions.length;
    const slopes = this.junctionSlope[coupling.junction]!;
    const legs = this.packed.junctions[coupling.junction]!.legs;
    for (let k = 0; k < n; k++) {
      const at = positions[k]!;
      if (at < 0) continue;
      // leg flows count inwards
      const sign = legs[k]!.ends ? 1 : -1;
      values[at]! += factor * sign * slopes[coupling.leg * n + k]!;
    }
  }

  /** Sum of squares of the scaled residuals. */
  measure(): number {
    const { residual } = this;
    const ne = this.plan.activity.elements.length;
    let sum = 0;
    for (let i = 0; i < ne; i++) {
      const r = residual[i]! / this.pressureScale_Pa;
      sum += r * r;
    }
    for (let i = ne; i < residual.length; i++) {
      const r = residual[i]! / this.flowScale_kgs;
      sum += r * r;
    }
    return sum;
  }

  /** Largest pressure residual [Pa], and largest mass residual [kg/s]. */
  largest(): { pressure_Pa: number; mass_kgs: number; worstElement: number } {
    const { residual } = this;
    const ne = this.plan.activity.elements.length;
    let pressure_Pa = 0;
    let mass_kgs = 0;
    let worst = 0;
    for (let i = 0; i < ne; i++) {
      const r = Math.abs(residual[i]!);
      if (r > pressure_Pa) {
        pressure_Pa = r;
        worst = i;
      }
    }
    for (let i = ne; i < residual.length; i++) mass_kgs = Math.max(mass_kgs, Math.abs(residual[i]!));
    return { pressure_Pa, mass_kgs, worstElement: this.plan.activity.elements[worst] ?? -1 };
  }
}
