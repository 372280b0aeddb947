import { frictionFactorWithSlope } from '../duct/friction.ts';
import { FRICTION, LINEAR, LOCAL_DOWNSTREAM, LOCAL_UPSTREAM } from './net.ts';
import type { PackedNet } from './packed.ts';

/** Absolute pressure below which the march holds density, so that a wild iterate stays finite; share of the room's. */
const PRESSURE_FLOOR = 0.1;
/** Share of `P1^2` that friction may use before the outlet pressure is continued by its tangent: a choked iterate. */
const CHOKE_SHARE = 0.75;
/** Reynolds number above which friction is held: no air moves so fast, but an iterate may. */
const HIGHEST_REYNOLDS = 1e14;
/** Solids loading above which the multiplier is held [kg/kg]; far beyond any shop, it keeps the limit of no flow. */
export const LOADING_CAP = 5;

/**
 * State of the air while it is marched along an element: total pressure and its slopes against mass flow and against
 * the total pressure at the upstream end. One object is reused; nothing is allocated in the loop.
 */
export interface March {
  /** Total pressure now [Pa gauge]. */
  total_Pa: number;
  /** d total / d |mass flow| [Pa s/kg]. */
  byFlow: number;
  /** d total / d upstream total [-]. */
  byInlet: number;
  /** Friction factor of the last friction segment [-]. */
  friction: number;
  /** True once the march left the range in which a subsonic answer exists. */
  choked: boolean;
}

export const newMarch = (): March => ({ total_Pa: 0, byFlow: 0, byInlet: 1, friction: 0, choked: false });

const frictionOut = new Float64Array(2);

/** Static absolute pressure where total absolute is `P` and `c = G^2 R T / 2`: root of `p + c/p = P`. */
function staticAbsolute(P: number, c: number, floor: number, march: March): number {
  const base = P > floor ? P : floor;
  const disc = base * base - 4 * c;
  if (P <= floor || disc <= 0) march.choked = true;
  return disc > 0 ? (base + Math.sqrt(disc)) / 2 : base / 2;
}

/**
 * Takes the air through one segment.
 *
 * @param packed - the network
 * @param s - segment index
 * @param m - mass flow along the direction of march, zero or more [kg/s]
 * @param reversed - true where the march goes against the run
 * @param march - state, changed in place
 */
export function marchSegment(packed: PackedNet, s: number, m: number, reversed: boolean, march: March): void {
  const air = packed.net.air;
  const room = air.roomPressure_Pa;
  const area = packed.area_m2[s]!;
  let type = packed.type[s]!;
  if (reversed && type === LOCAL_DOWNSTREAM) type = LOCAL_UPSTREAM;
  else if (reversed && type === LOCAL_UPSTREAM) type = LOCAL_DOWNSTREAM;

  if (type === FRICTION) {
    const ld = packed.forward[s]!;
    const fixed = packed.fixedFriction[s]!;
    let f = fixed;
    let fSlope = 0;
    let kinetic = m; // f m, so that zero flow needs no division
    let kineticSlope = 1;
    if (fixed < 0) {
      const perFlow = packed.diameter_m[s]! / (area * air.viscosity_Pas);
      const re = Math.min(m * perFlow, HIGHEST_REYNOLDS);
      if (re > 1) {
        frictionFactorWithSlope(re, packed.relativeRoughness[s]!, frictionOut);
        f = frictionOut[0]!;
        fSlope = frictionOut[1]! * perFlow;
        kinetic = f * m;
        kineticSlope = f + m * fSlope;
      } else {
        f = re > 0 ? 64 / re : 0;
        kinetic = 64 / perFlow;
        kineticSlope = 0;
      }
    } else {
      kinetic = f * m;
      kineticSlope = f;
    }
    march.friction = f;
    if (room === null) {
      const c = ld / (2 * air.density_kgm3 * area * area);
      march.total_Pa -= c * kinetic * m;
      march.byFlow -= c * (kinetic + m * kineticSlope);
      return;
    }
    frictionIsothermal(packed, area, ld * kinetic, ld * kineticSlope, m, march);
    return;
  }

  const k = reversed ? packed.backward[s]! : packed.forward[s]!;
  if (type === LINEAR) {
    if (room === null) {
      march.total_Pa -= (k * m) / air.density_kgm3;
      march.byFlow -= k / air.density_kgm3;
      return;
    }
    const rt = room / air.density_kgm3;
    const floor = PRESSURE_FLOOR * room;
    const absolute = Math.max(march.total_Pa + room, floor);
    const drop = (k * m * rt) / absolute;
    const slope = absolute > floor ? drop / absolute : 0;
    march.total_Pa -= drop;
    march.byFlow = march.byFlow * (1 + slope) - (k * rt) / absolute;
    march.byInlet *= 1 + slope;
    return;
  }

  if (room === null) {
    const c = k / (2 * air.density_kgm3 * area * area);
    march.total_Pa -= c * m * m;
    march.byFlow -= 2 * c * m;
    return;
  }
  // local loss: K times the velocity pressure at the static pressure on its own side
  const rt = room / air.density_kgm3;
  const c = (m * m * rt) / (2 * area * area);
  const cSlope = (m * rt) / (area * area);
  const load = type === LOCAL_DOWNSTREAM ? 1 + k : 1;
  const floor = PRESSURE_FLOOR * room;
  const absolute = march.total_Pa + room;
  const p = staticAbsolute(absolute, load * c, floor, march);
  const disc = 2 * p - Math.max(absolute, floor);
  const loss = (k * c) / p;
  // p^2 - P p + load c = 0
  const pByTotal = absolute > floor && disc > 0 ? p / disc : 0;
  const pByC = disc > 0 ? -load / disc : 0;
  const lossByTotal = (-loss / p) * pByTotal;
  const lossByFlow = (k / p - (loss / p) * pByC) * cSlope;
  march.total_Pa -= loss;
  march.byFlow = march.byFlow * (1 - lossByTotal) - lossByFlow;
  march.byInlet *= 1 - lossByTotal;
}

/**
 * Isothermal duct with friction and acceleration: `P1^2 - P2^2 = G^2 R T (f L/D + 2 ln(P1/P2))` on static absolute
 * pressures, wrapped in the change from total to static at either end.
 */
function frictionIsothermal(
  packed: PackedNet,
  area: number,
  ldKinetic: number,
  ldKineticSlope: number,
  m: number,
  march: March,
): void {
  const air = packed.net.air;
  const room = air.roomPressure_Pa!;
  const rt = room / air.density_kgm3;
  const floor = PRESSURE_FLOOR * room;
  const a = (m * m * rt) / (area * area);
  const aSlope = (2 * m * rt) / (area * area);
  const fa = (ldKinetic * m * rt) / (area * area); // f L/D G^2 R T
  const faSlope = ((ldKinetic + m * ldKineticSlope) * rt) / (area * area);
  const total = march.total_Pa + room;
  const p1 = staticAbsolute(total, a / 2, floor, march);
  const disc = 2 * p1 - Math.max(total, floor);
  const p1ByTotal = total > floor && disc > 0 ? p1 / disc : 0;
  const p1ByFlow = disc > 0 ? (-0.5 * aSlope) / disc : 0;

  let p2: number;
  let p2ByP1: number;
  let p2ByFlow: number;
  const share = fa / (p1 * p1);
  if (share > CHOKE_SHARE || a > 0.2 * p1 * p1) {
    march.choked = true;
    const start = Math.sqrt(1 - CHOKE_SHARE);
    p2 = p1 * (start - (share - CHOKE_SHARE) / (2 * start));
    p2ByP1 = start + CHOKE_SHARE / (2 * start) + share / (2 * start);
    p2ByFlow = -faSlope / (2 * start * p1);
  } else {
    p2 = Math.sqrt(p1 * p1 - fa);
    for (let i = 0; i < 20; i++) {
      const h = p1 * p1 - p2 * p2 - fa - 2 * a * Math.log(p1 / p2);
      const step = h / (-2 * p2 + (2 * a) / p2);
      p2 -= step;
      if (Math.abs(step) < 1e-11 * p1) break;
    }
    const h2 = -2 * p2 + (2 * a) / p2;
    p2ByP1 = -(2 * p1 - (2 * a) / p1) / h2;
    p2ByFlow = (faSlope + 2 * aSlope * Math.log(p1 / p2)) / h2;
  }
  const p2Safe = Math.max(p2, floor);
  const out = p2 + a / (2 * p2Safe);
  const outByP2 = 1 - (p2 > floor ? a / (2 * p2Safe * p2Safe) : 0);
  const drop = p1 + a / (2 * p1) - out;
  const outByP1 = outByP2 * p2ByP1;
  const outByFlow = outByP2 * (p2ByFlow + p2ByP1 * p1ByFlow) + aSlope / (2 * p2Safe);
  march.total_Pa -= drop;
  march.byFlow = outByFlow + outByP1 * p1ByTotal * march.byFlow;
  march.byInlet *= outByP1 * p1ByTotal;
}

/**
 * Takes the air through a whole element, dust and all.
 *
 * @param packed - the network
 * @param e - element index
 * @param flow_kgs - signed mass flow, positive along the run [kg/s]
 * @param inlet_Pa - total pressure at the upstream end [Pa gauge]
 * @param march - result: total pressure at the downstream end and its slopes
 */
export function marchElement(
  packed: PackedNet,
  e: number,
  flow_kgs: number,
  inlet_Pa: number,
  march: March,
): void {
  const m = Math.abs(flow_kgs);
  const reversed = flow_kgs < 0;
  march.total_Pa = inlet_Pa;
  march.byFlow = 0;
  march.byInlet = 1;
  march.choked = false;
  const first = packed.segmentStart[e]!;
  const last = packed.segmentStart[e + 1]!;
  if (reversed) for (let s = last - 1; s >= first; s--) marchSegment(packed, s, m, true, march);
  else for (let s = first; s < last; s++) marchSegment(packed, s, m, false, march);

  const solids = packed.solids_kgs[e]!;
  if (solids > 0) {
    // every loss of the element is multiplied by 1 + K Ms/Ma
    const capped = solids > LOADING_CAP * m;
    const loading = capped ? LOADING_CAP : solids / m;
    const drop = inlet_Pa - march.total_Pa;
    march.total_Pa -= drop * loading;
    const dropByFlow = -march.byFlow;
    march.byFlow -= dropByFlow * loading - (capped ? 0 : (drop * loading) / m);
    march.byInlet -= (1 - march.byInlet) * loading;
  }
}

/** Density at a place where the static pressure is `static_Pa` gauge [kg/m3]. */
export function densityAt(packed: PackedNet, static_Pa: number): number {
  const air = packed.net.air;
  if (air.roomPressure_Pa === null) return air.density_kgm3;
  const absolute = Math.max(static_Pa + air.roomPressure_Pa, PRESSURE_FLOOR * air.roomPressure_Pa);
  return (air.density_kgm3 * absolute) / air.roomPressure_Pa;
}

/** Static gauge pressure where the total is `total_Pa` and `flow_kgs` passes `area_m2` [Pa]. */
export function staticAt(packed: PackedNet, total_Pa: number, flow_kgs: number, area_m2: number): number {
  const air = packed.net.air;
  const room = air.roomPressure_Pa;
  const square = (flow_kgs * flow_kgs) / (area_m2 * area_m2);
  if (room === null) return total_Pa - square / (2 * air.density_kgm3);
  const c = (square * room) / (2 * air.density_kgm3);
  return staticAbsolute(total_Pa + room, c, PRESSURE_FLOOR * room, newMarch()) - room;
}
