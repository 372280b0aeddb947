import { junctionLegPressures } from '../fittings/junction.ts';
import { driveRise } from './fan-drive.ts';
import { keepDrop } from './kept-drop.ts';
import { NEAR } from './kept-friction.ts';
import { densityAt, marchElement, newMarch } from './march.ts';
import { linearStep } from './linear-step.ts';
import { KEPT_DROP } from './packed.ts';
import type { PackedNet } from './packed.ts';
import type { Coupling, Plan, Sizes, SparseSystem, Work } from './plan.ts';

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
  /** Sum of squares of the scaled residuals. */
  measure = 0;
  /** Largest pressure residual [Pa] and the element where it stands; largest mass residual [kg/s]. */
  pressure_Pa = 0;
  worstElement = -1;
  mass_kgs = 0;
  /** Sum of the flows that cross the given pressures, or the largest flow where none does [kg/s]. */
  throughput_kgs = 0;
  private readonly work: Work;
  /** How many elements the last evaluation marched along. */
  private marchedCount = 0;
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
    this.work = plan.work;
    this.residual = plan.work.residual;
    if (plan.plain) {
      plan.work.byStart.fill(1);
      plan.work.byEnd.fill(-1);
    }
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

  /** Writes residuals and slopes at a state. */
  evaluate(state: NetState): void {
    const { packed, plan, residual } = this;
    const { byFlow } = this.work;
    const { startNode, endNode, plain } = plan;
    const { from, to } = packed;
    const kept = packed.keptDrops.values;
    const { flow_kgs, pressure_Pa } = state;
    const { elements } = plan.activity;
    const ne = elements.length;
    residual.fill(0, ne);
    if (packed.junctions.length > 0) this.mixJunctions(state);
    this.marchedCount = 0;
    const floor = (SLOPE_FLOOR * this.pressureScale_Pa) / this.flowScale_kgs;
    let sum = 0;
    let largest_Pa = 0;
    let worst = 0;
    let crossing_kgs = 0;
    let most_kgs = 0;
    for (let i = 0; i < ne; i++) {
      const e = elements[i]!;
      const m = flow_kgs[e]!;
      const f = startNode[i]!;
      const t = endNode[i]!;
      const size = Math.abs(m);
      if (size > most_kgs) most_kgs = size;
      if (f >= 0) residual[ne + f]! -= m;
      else crossing_kgs += size;
      if (t >= 0) residual[ne + t]! += m;
      else crossing_kgs += size;

      let off_Pa: number;
      let slope: number;
      const at = KEPT_DROP * e;
      const perFlow = kept[at]!;
      const x = m * perFlow - 1;
      if (plain && x < NEAR && x > -NEAR) {
        const first = kept[at + 2]!;
        const second = kept[at + 3]!;
        const third = kept[at + 4]!;
        const fourth = kept[at + 5]!;
        const drop_Pa = kept[at + 1]! + x * (first + x * (second + x * (third + x * fourth)));
        off_Pa = pressure_Pa[from[e]!]! - drop_Pa - pressure_Pa[to[e]!]!;
        slope = -perFlow * (first + x * (2 * second + x * (3 * third + 4 * x * fourth)));
      } else {
        off_Pa = this.evaluateElement(i, state);
        slope = byFlow[i]!;
      }
      if (slope > -floor && slope < floor) slope = slope > 0 ? floor : -floor;
      residual[i] = off_Pa;
      byFlow[i] = slope;
      sum += off_Pa * off_Pa;
      const apart_Pa = Math.abs(off_Pa);
      if (apart_Pa > largest_Pa) {
        largest_Pa = apart_Pa;
        worst = i;
      }
    }
    this.throughput_kgs = Math.max(crossing_kgs / 2, most_kgs);
    this.sumUp(sum, largest_Pa, worst);
  }

  /** Residual of one active element, through its fan or by a march [Pa]; writes its slopes. */
  private evaluateElement(i: number, state: NetState): number {
    const { packed, march } = this;
    const { byFlow, byStart, byEnd, marched } = this.work;
    const e = this.plan.activity.elements[i]!;
    const m = state.flow_kgs[e]!;
    const held = this.held === null ? NaN : this.held[e]!;
    if (!Number.isNaN(held)) {
      // scaled like a pressure, so that one measure of the residual serves all
      const unit = this.pressureScale_Pa / this.flowScale_kgs;
      byFlow[i] = -unit;
      byStart[i] = 0;
      byEnd[i] = 0;
      return (held - m) * unit;
    }
    const start = this.endPressure(state, e, true);
    const end = this.endPressure(state, e, false);
    byStart[i] = 1;
    byEnd[i] = -1;
    if (packed.isFan[e]) {
      const rise = this.fanRise(e, m, start);
      byStart[i] = 1 + this.fanOut[2]!;
      byFlow[i] = this.fanOut[1]!;
      return start + rise - end;
    }
    marched[this.marchedCount++] = i;
    marchElement(packed, e, m, m >= 0 ? start : end, march);
    byFlow[i] = march.byFlow; // against the run d(-total)/dm is the same, as |m| falls where m rises
    if (m >= 0) byStart[i] = march.byInlet;
    else byEnd[i] = -march.byInlet;
    return m >= 0 ? march.total_Pa - end : start - march.total_Pa;
  }

  /** Keeps the drops that the last evaluation had to march for, at the state that it saw. */
  keepDrops(state: NetState): void {
    if (!this.plan.plain) return;
    for (let k = 0; k < this.marchedCount; k++) {
      const e = this.plan.activity.elements[this.work.marched[k]!]!;
      keepDrop(this.packed, e, state.flow_kgs[e]!, this.march);
    }
  }

  /** Rise of total pressure over a fan [Pa]; leaves its slopes by mass flow and by inlet pressure in `fanOut`. */
  private fanRise(e: number, m: number, inlet_Pa: number): number {
    const { packed, fanOut } = this;
    const density_kgm3 = densityAt(packed, inlet_Pa);
    const flow_m3s = m / density_kgm3;
    driveRise(packed.net.elements[e]!.fan!, flow_m3s, density_kgm3, fanOut);
    const byFlow = fanOut[1]! / density_kgm3;
    const { roomPressure_Pa: room, density_kgm3: roomDensity } = packed.net.air;
    fanOut[2] = room === null ? 0 : (fanOut[2]! - byFlow * flow_m3s) * (roomDensity / room);
    fanOut[1] = byFlow;
    return fanOut[0]!;
  }

  private sumUp(squares: number, largest_Pa: number, worst: number): void {
    const { residual, plan } = this;
    const ne = plan.activity.elements.length;
    let mass = 0;
    let massSquares = 0;
    for (let i = ne; i < residual.length; i++) {
      const r = Math.abs(residual[i]!);
      massSquares += r * r;
      if (r > mass) mass = r;
    }
    this.measure =
      squares / (this.pressureScale_Pa * this.pressureScale_Pa) +
      massSquares / (this.flowScale_kgs * this.flowScale_kgs);
    this.pressure_Pa = largest_Pa;
    this.mass_kgs = mass;
    this.worstElement = plan.activity.elements[worst] ?? -1;
  }

  /**
   * Newton step from the state that was evaluated last.
   *
   * @param damping - holds flows back, as the inertia of the air would over a short time: this share of each element's
   *   own slope, or of its mean slope up to the typical flow where that is more, is taken off the slope [-]
   * @param step - receives flows of the active elements [kg/s], then pressures of the active nodes [Pa]
   */
  newtonStep(damping: number, step: Float64Array): void {
    const { residual, plan, work } = this;
    for (let i = 0; i < residual.length; i++) step[i] = -residual[i]!;
    const { system } = plan;
    const couple =
      system.kind === 'sparse' && system.coupled.length > 0
        ? (values: Float64Array) => this.couple(system, values)
        : null;
    if (damping === 0) {
      linearStep(plan, work, step, couple);
      return;
    }
    const { byFlow, byStart, byEnd, damped_byFlow } = work;
    for (let i = 0; i < byFlow.length; i++) {
      const slope = byFlow[i]!;
      const mean = this.pressureScale_Pa / this.typical_kgs[i]!;
      damped_byFlow[i] = slope - damping * Math.max(Math.abs(slope), mean);
    }
    linearStep(plan, { byFlow: damped_byFlow, byStart, byEnd }, step, couple);
  }

  /** Adds what the mixing junctions put into the rows of coupled flows. */
  private couple({ coupled, own }: SparseSystem, values: Float64Array): void {
    const { byStart, byEnd } = this.work;
    for (const { element: i, from, to } of coupled) {
      const at = 5 * i;
      if (from !== null) this.coupleEnd(from, byStart[i]!, own[at + 1]!, values);
      if (to !== null) this.coupleEnd(to, byEnd[i]!, own[at + 2]!, values);
    }
  }

  /** Adds the slopes of a leg's total pressure against the junction's own and against the flows of all its legs. */
  private coupleEnd(coupling: Coupling, factor: number, ownNode: number, values: Float64Array): void {
    const { junction: j, leg, positions } = coupling;
    const n = positions.length;
    if (ownNode >= 0) values[ownNode]! += factor * this.junctionRise[j]![leg]! * this.junctionByPressure[j]!;
    const slopes = this.junctionSlope[j]!;
    const legs = this.packed.junctions[j]!.legs;
    for (let k = 0; k < n; k++) {
      if (positions[k]! < 0) continue;
      // leg flows count inwards
      const sign = legs[k]!.ends ? 1 : -1;
      values[positions[k]!]! += factor * sign * slopes[leg * n + k]!;
    }
  }
}
