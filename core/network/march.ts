import { keptFriction } from './kept-friction.ts';
import { FRICTION, LINEAR, LOCAL_DOWNSTREAM, LOCAL_UPSTREAM } from './net.ts';
import type { PackedNet } from './packed.ts';

/** Absolute pressure below which the march holds density, so that a wild iterate stays finite; share of the room's. */
const PRESSURE_FLOOR = 0.1;
/**
 * Share of `P^2` that `G^2 R T / 2` may take before static pressure stays a fixed share of total pressure: the speed of
 * sound comes at 0.222, and only a wild iterate passes it.
 */
const SONIC_SHARE = 0.2;
const STATIC_SHARE = (1 + Math.sqrt(1 - 4 * SONIC_SHARE)) / 2;
/**
 * A duct chokes where `x + y - y ln y = 1` (see `frictionIsothermal`). Each tangent of that curve, drawn where `y = t`,
 * bounds a part of what does not choke: `x - y ln t < 1 - t`. Rows of `-ln t` and of `1 - t` less a margin.
 */
const CHOKE_MARGIN = 0.97;
const CHOKE_LINES = [0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.7].map((t) => ({
  byY: -Math.log(t),
  limit: CHOKE_MARGIN * (1 - t),
}));
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

const staticOut = new Float64Array(3);

/**
 * Static absolute pressure where total absolute is `P` and `c = G^2 R T / 2` (times a factor): root of `p + c/p = P`.
 * Writes `p` and its slopes against `P` and `c` into `staticOut`; true where the root was left.
 */
function staticAbsolute(P: number, c: number, floor: number): boolean {
  const below = P <= floor;
  const base = below ? floor : P;
  if (c > SONIC_SHARE * base * base) {
    staticOut[0] = STATIC_SHARE * base;
    staticOut[1] = below ? 0 : STATIC_SHARE;
    staticOut[2] = 0;
    return true;
  }
  const root = Math.sqrt(base * base - 4 * c);
  staticOut[0] = (base + root) / 2;
  staticOut[1] = below ? 0 : staticOut[0] / root;
  staticOut[2] = -1 / root;
  return below;
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
        keptFriction(packed.keptFriction, s, re, packed.relativeRoughness[s]!, frictionOut);
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
  if (staticAbsolute(absolute, load * c, floor)) march.choked = true;
  const p = staticOut[0]!;
  const loss = (k * c) / p;
  const lossByTotal = (-loss / p) * staticOut[1]!;
  const lossByFlow = (k / p - (loss / p) * load * staticOut[2]!) * cSlope;
  march.total_Pa -= loss;
  march.byFlow = march.byFlow * (1 - lossByTotal) - lossByFlow;
  march.byInlet *= 1 - lossByTotal;
}

/**
 * Isothermal duct with friction and acceleration: `P1^2 - P2^2 = G^2 R T (f L/D + 2 ln(P1/P2))` on static absolute
 * pressures, wrapped in the change from total to static at either end.
 *
 * With `r = P2/P1`, `x = f L/D G^2 R T / P1^2` and `y = G^2 R T / P1^2` it reads `1 - r^2 = x - 2 y ln r`. Close
 * to choking both are held in proportion and the drop goes on with the square of flow.
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
  const perArea = room / (air.density_kgm3 * area * area); // R T / A^2
  const floor = PRESSURE_FLOOR * room;
  const a = m * m * perArea;
  const aSlope = 2 * m * perArea;
  if (staticAbsolute(march.total_Pa + room, a / 2, floor)) march.choked = true;
  const p1 = staticOut[0]!;
  const square = p1 * p1;
  const fullX = (ldKinetic * m * perArea) / square;
  const fullY = a / square;
  let excess = Infinity;
  let line = CHOKE_LINES[0]!;
  for (const each of CHOKE_LINES) {
    const share = (fullX + each.byY * fullY) / each.limit;
    if (share < excess) {
      excess = share;
      line = each;
    }
    if (excess < 1) break;
  }
  const scale = excess > 1 ? excess : 1;
  if (excess > 1) march.choked = true;
  const x = fullX / scale;
  const y = fullY / scale;

  let r = Math.sqrt(1 - x);
  let log = Math.log(r);
  for (let i = 0; i < 20; i++) {
    const step = (1 - r * r + 2 * y * log - x) / (2 * r - (2 * y) / r);
    r += step;
    log = Math.log(r);
    if (Math.abs(step) < 1e-9) break; // the next one would be below rounding
  }
  // drop of total pressure over P1, and its slopes against x and y
  const rByX = 1 / ((2 * y) / r - 2 * r);
  const outByR = 1 - y / (2 * r * r);
  const drop = 1 - r - (y * (1 - r)) / (2 * r);
  const dropByX = -outByR * rByX;
  const dropByY = 0.5 - 0.5 / r + 2 * log * outByR * rByX;
  const beyond = excess > 1 ? (drop - x * dropByX - y * dropByY) / line.limit : 0;
  const dByX = dropByX + beyond;
  const dByY = dropByY + line.byY * beyond;

  const byP1 = scale * drop - 2 * (fullX * dByX + fullY * dByY);
  const xSlope = (ldKinetic + m * ldKineticSlope) * perArea;
  const direct = (dByX * xSlope + dByY * aSlope) / p1;
  const keep = 1 - byP1 * staticOut[1]!;
  march.total_Pa -= p1 * scale * drop;
  march.byFlow = march.byFlow * keep - (byP1 * staticOut[2]! * 0.5 * aSlope + direct);
  march.byInlet *= keep;
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
  staticAbsolute(total_Pa + room, c, PRESSURE_FLOOR * room);
  return staticOut[0]! - room;
}
