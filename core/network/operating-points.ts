import { curveIntersections } from '../fan/intersections.ts';
import type { NetState } from './balance.ts';
import { driveHasHump, driveLargestFlow, driveReach, driveRise } from './fan-drive.ts';
import { densityAt } from './march.ts';
import { solveNet } from './newton.ts';
import type { NetOutcome, PlanCache } from './newton.ts';
import type { PackedNet } from './packed.ts';
import type { OperatingPoint } from './solution.ts';

/** Steps in which the span of a fan's flow is searched for crossings. */
const SEARCH_STEPS = 48;
/** The search starts at this share of the fan's largest flow; below it the two curves are their shut-off values. */
const SEARCH_FROM = 1e-3;

/** Where the largest flow has no balance, the search goes down by this factor, so many times at most. */
const SEARCH_CUT = 0.8;
const SEARCH_CUTS = 20;

/** What a fan must do at one flow held through it, the rest of the network finding its own balance. */
export interface HeldPoint {
  readonly flow_m3s: number;
  readonly massFlow_kgs: number;
  /** Rise that the system asks of the fan, outlet total less inlet total [Pa]. */
  readonly demand_Pa: number;
  /** Density at the fan's inlet [kg/m3]. */
  readonly density_kgm3: number;
  readonly state: NetState;
}

/** Holds a mass flow through a fan and solves the rest; null where that has no balance. */
export function holdFlow(
  packed: PackedNet,
  element: number,
  flow_kgs: number,
  warm: NetState | null,
  plans: PlanCache,
): HeldPoint | null {
  const held = new Float64Array(packed.elementCount).fill(NaN);
  held[element] = flow_kgs;
  const solved = solveNet(packed, { held, warm, plans });
  return solved.converged ? heldPoint(packed, element, flow_kgs, solved) : null;
}

/** Reads what a fan must do off a network that was solved with a flow held through it. */
export function heldPoint(
  packed: PackedNet,
  element: number,
  flow_kgs: number,
  solved: Extract<NetOutcome, { converged: true }>,
): HeldPoint {
  const inlet = solved.balance.endPressure(solved.state, element, true);
  const outlet = solved.balance.endPressure(solved.state, element, false);
  const density_kgm3 = densityAt(packed, inlet);
  return {
    flow_m3s: flow_kgs / density_kgm3,
    massFlow_kgs: flow_kgs,
    demand_Pa: outlet - inlet,
    density_kgm3,
    state: solved.state,
  };
}

/** Every crossing of one fan's curve with what the rest of the shop asks, each with its stability and its state. */
export function allOperatingPoints(
  packed: PackedNet,
  element: number,
  plans: PlanCache,
): { readonly point: OperatingPoint; readonly state: NetState }[] {
  const drive = packed.net.elements[element]!.fan!;
  const { density_kgm3: room_kgm3 } = packed.net.air;
  let high = driveLargestFlow(drive, room_kgm3) * 1.05 * room_kgm3;
  const known = new Map<number, HeldPoint | null>();
  let warm: NetState | null = null;
  const at = (flow_kgs: number): HeldPoint | null => {
    const before = known.get(flow_kgs);
    if (before !== undefined) return before;
    const point = holdFlow(packed, element, flow_kgs, warm, plans);
    if (point !== null) warm = point.state;
    known.set(flow_kgs, point);
    return point;
  };
  const out = new Float64Array(3);
  const low = SEARCH_FROM * high;
  if (at(low) === null) return [];
  // a throttled shop may have no balance at the fan's largest flow; its crossings then lie below what it has
  for (let cut = 0; at(high) === null; cut++) {
    if (cut === SEARCH_CUTS) return [];
    high *= SEARCH_CUT;
  }
  const need = (m: number): HeldPoint => {
    const point = at(m);
    if (point === null) throw new NoBalance();
    return point;
  };
  try {
    const crossings = curveIntersections({
      // the search variable is mass flow, which does not change with the density at the inlet
      fan: (m) => {
        const { flow_m3s, density_kgm3 } = need(m);
        driveRise(drive, flow_m3s, density_kgm3, out);
        return out[0]!;
      },
      system: (m) => need(m).demand_Pa,
      low,
      high,
      samples: SEARCH_STEPS,
    });
    return crossings.map((crossing) => {
      const held = need(crossing.flow_m3s);
      return {
        point: {
          flow_m3s: held.flow_m3s,
          massFlow_kgs: held.massFlow_kgs,
          totalPressure_Pa: crossing.pressure_Pa,
          stable: crossing.stable,
        },
        state: held.state,
      };
    });
  } catch (error) {
    if (error instanceof NoBalance) return [];
    throw error;
  }
}

/** Raised inside the search where a held flow has no balance. */
class NoBalance extends Error {}

/** Fans whose curve has a hump and so may cross the system more than once. */
export function humpedFans(packed: PackedNet): number[] {
  return packed.fans.filter((e) => driveHasHump(packed.net.elements[e]!.fan!));
}

/** Where a fan's flow [m3/s] lies on its curve; the density there [kg/m3] tells the speed that a motor takes. */
export function fanReach(
  packed: PackedNet,
  element: number,
  flow_m3s: number,
  density_kgm3 = packed.net.air.density_kgm3,
) {
  return driveReach(packed.net.elements[element]!.fan!, flow_m3s, density_kgm3);
}
