import type { NetState } from './balance.ts';
import { driveLargestFlow, driveRise } from './fan-drive.ts';
import { densityAt, marchElement, newMarch } from './march.ts';
import { linearStep } from './linear-step.ts';
import type { Slopes } from './linear-step.ts';
import type { PackedNet } from './packed.ts';
import type { Plan, Sizes } from './plan.ts';

/** Speed of air in a run before anything is known [m/s]. */
const FIRST_VELOCITY_ms = 15;
/** Mass flow where nothing gives a better one [kg/s]. */
const FIRST_FLOW_kgs = 0.1;
/** Sweeps with straight-line losses before Newton's method takes over. */
const SWEEPS = 2;
/** Least flow at which a sweep draws its chord, as a share of the flow that the whole pressure would drive. */
const CHORD_SHARE = 1e-6;

/** Mass flow of an element at the first velocity, by its narrowest segment [kg/s]. */
function firstFlow(packed: PackedNet, e: number): number {
  let area = Infinity;
  for (let s = packed.segmentStart[e]!; s < packed.segmentStart[e + 1]!; s++) {
    const a = packed.area_m2[s]!;
    if (a > 0 && a < area) area = a;
  }
  return Number.isFinite(area) ? area * FIRST_VELOCITY_ms * packed.net.air.density_kgm3 : FIRST_FLOW_kgs;
}

/** Largest flow of a fan's points [kg/s], and its pressure at no flow and there [Pa], in `out`. */
function fanEnds(packed: PackedNet, e: number, out: Float64Array): void {
  const drive = packed.net.elements[e]!.fan!;
  const density_kgm3 = densityAt(packed, 0);
  const widest = driveLargestFlow(drive, density_kgm3);
  driveRise(drive, 0, density_kgm3, out);
  const shutOff = out[0]!;
  driveRise(drive, widest, density_kgm3, out);
  out[1] = shutOff;
  out[2] = out[0]!;
  out[0] = widest * density_kgm3;
}

/** Finds the sizes of the active part of a network; typical flows that are known already are taken over. */
export function sizesOf(packed: PackedNet, elements: Int32Array, known_kgs: Float64Array | null): Sizes {
  let low = Infinity;
  let high = -Infinity;
  for (const v of packed.given_Pa) {
    if (v < low) low = v;
    if (v > high) high = v;
  }
  let pressure_Pa = high > low ? high - low : 0;
  const out = new Float64Array(3);
  for (const e of packed.fans) {
    fanEnds(packed, e, out);
    pressure_Pa = Math.max(pressure_Pa, Math.abs(out[1]!));
  }
  if (!(pressure_Pa > 0 && Number.isFinite(pressure_Pa))) pressure_Pa = 1;
  const typical_kgs = known_kgs ?? typicalFlows(packed, elements, pressure_Pa);
  let flow_kgs = 0;
  for (const m of typical_kgs) if (m > flow_kgs) flow_kgs = m;
  return { pressure_Pa, flow_kgs: flow_kgs > 0 ? flow_kgs : FIRST_FLOW_kgs, typical_kgs };
}

/** Flow of each element under the whole pressure, by its loss at the first velocity and a square law [kg/s]. */
function typicalFlows(packed: PackedNet, elements: Int32Array, pressure_Pa: number): Float64Array {
  const typical_kgs = new Float64Array(elements.length);
  const out = new Float64Array(3);
  const march = newMarch();
  for (let i = 0; i < elements.length; i++) {
    const e = elements[i]!;
    let m = firstFlow(packed, e);
    if (packed.isFan[e]) {
      fanEnds(packed, e, out);
      m = out[0]!;
    } else {
      marchElement(packed, e, m, 0, march);
      const drop = -march.total_Pa;
      // an element without loss says nothing; its first flow stands
      if (drop > 1e-9 * pressure_Pa) m *= Math.sqrt(pressure_Pa / drop);
    }
    typical_kgs[i] = m;
  }
  return typical_kgs;
}

/**
 * A state near the answer for the price of two linear solves. Each sweep puts a chord in the place of each loss; of the
 * flow that the chord was drawn at and the flow that comes out, the geometric mean goes on. With losses in square of
 * flow that mean is exact for elements in series that take equal shares.
 */
export function coldState(packed: PackedNet, plan: Plan, sizes: Sizes, held: Float64Array | null): NetState {
  const { elements, nodes } = plan.activity;
  const ne = elements.length;
  const state = restState(packed);
  const flow = sizes.typical_kgs.slice();
  const right = new Float64Array(ne + nodes.length);
  const slopes = { byFlow: new Float64Array(ne), byStart: new Float64Array(ne), byEnd: new Float64Array(ne) };
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    chords(packed, plan, sizes, held, flow, slopes, right);
    linearStep(plan, slopes, right, null);
    for (let i = 0; i < ne; i++) {
      const next = right[i]!;
      const e = elements[i]!;
      if (packed.isFan[e] || (held && !Number.isNaN(held[e]!))) flow[i] = next;
      else flow[i] = Math.sign(next) * Math.sqrt(Math.abs(flow[i]! * next));
    }
  }
  for (let i = 0; i < ne; i++) state.flow_kgs[elements[i]!] = flow[i]!;
  for (let i = 0; i < nodes.length; i++) state.pressure_Pa[nodes[i]!] = right[ne + i]!;
  return state;
}

/** Lays out the linear system of one sweep. */
function chords(
  packed: PackedNet,
  plan: Plan,
  sizes: Sizes,
  held: Float64Array | null,
  flow: Float64Array,
  slopes: Slopes,
  right: Float64Array,
): void {
  const { elements } = plan.activity;
  const march = newMarch();
  const out = new Float64Array(3);
  const least = (1e-6 * sizes.pressure_Pa) / sizes.flow_kgs;
  right.fill(0);
  slopes.byStart.fill(1);
  slopes.byEnd.fill(-1);
  for (let i = 0; i < elements.length; i++) {
    const e = elements[i]!;
    if (held && !Number.isNaN(held[e]!)) {
      slopes.byFlow[i] = -1;
      slopes.byStart[i] = slopes.byEnd[i] = 0;
      right[i] = -held[e]!;
      continue;
    }
    let slope: number;
    if (packed.isFan[e]) {
      fanEnds(packed, e, out);
      right[i] = -out[1]!;
      slope = (out[1]! - out[2]!) / out[0]!;
    } else {
      const m = Math.max(Math.abs(flow[i]!), CHORD_SHARE * sizes.typical_kgs[i]!);
      marchElement(packed, e, m, 0, march);
      slope = -march.total_Pa / m;
    }
    slopes.byFlow[i] = -Math.max(slope, least);
    if (plan.startNode[i]! < 0) right[i]! -= packed.given_Pa[packed.from[e]!]!;
    if (plan.endNode[i]! < 0) right[i]! += packed.given_Pa[packed.to[e]!]!;
  }
}

/** Given pressures at their nodes, all else at rest. */
function restState(packed: PackedNet): NetState {
  const pressure_Pa = new Float64Array(packed.nodeCount);
  for (let v = 0; v < packed.nodeCount; v++) {
    const given = packed.given_Pa[v]!;
    if (!Number.isNaN(given)) pressure_Pa[v] = given;
  }
  return { flow_kgs: new Float64Array(packed.elementCount), pressure_Pa };
}

/** A state to go on from, brought into the shape of the present activity; null where it is another network's. */
export function warmState(
  packed: PackedNet,
  plan: Plan,
  sizes: Sizes,
  held: Float64Array | null,
  warm: NetState,
): NetState | null {
  if (warm.flow_kgs.length !== packed.elementCount || warm.pressure_Pa.length !== packed.nodeCount)
    return null;
  const state = restState(packed);
  const { elements, nodes } = plan.activity;
  for (let i = 0; i < elements.length; i++) {
    const e = elements[i]!;
    const before = warm.flow_kgs[e]!;
    const fixed = held ? held[e]! : NaN;
    // an element that was shut a moment ago starts from a first guess
    if (!Number.isNaN(fixed)) state.flow_kgs[e] = fixed;
    else if (before !== 0 && Number.isFinite(before)) state.flow_kgs[e] = before;
    else state.flow_kgs[e] = Math.min(firstFlow(packed, e), sizes.typical_kgs[i]!);
  }
  for (const v of nodes)
    state.pressure_Pa[v] = Number.isFinite(warm.pressure_Pa[v]!) ? warm.pressure_Pa[v]! : 0;
  return state;
}

/**
 * Flow of elements whose coefficients have just changed: what the pressures at their ends, as they still stand, would
 * drive through them by a square law. Newton's method then has to correct less.
 */
export function turnFlows(packed: PackedNet, elements: readonly number[], state: NetState): void {
  const march = newMarch();
  for (const e of elements) {
    const m = state.flow_kgs[e]!;
    if (m === 0 || packed.isFan[e] || packed.junctionFrom[e]! >= 0 || packed.junctionTo[e]! >= 0) continue;
    const start = state.pressure_Pa[m > 0 ? packed.from[e]! : packed.to[e]!]!;
    const end = state.pressure_Pa[m > 0 ? packed.to[e]! : packed.from[e]!]!;
    marchElement(packed, e, m, start, march);
    const share = (start - end) / (start - march.total_Pa);
    if (share > 0.25 && share < 4) state.flow_kgs[e] = m * Math.sqrt(share);
  }
}
