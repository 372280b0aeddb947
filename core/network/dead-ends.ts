import { fanTotalPressure } from '../fan/fan-curve.ts';
import type { Activity } from './activity.ts';
import type { Balance, NetState } from './balance.ts';
import { densityAt } from './march.ts';
import { FAN } from './net.ts';
import type { PackedNet } from './packed.ts';

/** Hands pressures out to the dead ends: no flow, so no loss; a fan there stands at shut-off. */
export function finishDeadEnds(
  packed: PackedNet,
  activity: Activity,
  balance: Balance,
  state: NetState,
): void {
  const out = new Float64Array(3);
  for (let i = activity.deadEnds.length - 1; i >= 0; i--) {
    const { element: e, hangs } = activity.deadEnds[i]!;
    const atStart = packed.from[e] === hangs;
    let pressure = balance.endPressure(state, e, !atStart);
    if (packed.net.elements[e]!.kind === FAN) pressure = beyondFan(packed, e, pressure, atStart, out);
    state.pressure_Pa[hangs] = pressure;
  }
  for (let v = 0; v < packed.nodeCount; v++) if (activity.afloat[v]) state.pressure_Pa[v] = NaN;
}

/** Pressure on the far side of a fan at shut-off; its density is that of its inlet [Pa]. */
function beyondFan(
  packed: PackedNet,
  e: number,
  near: number,
  farIsInlet: boolean,
  out: Float64Array,
): number {
  const { curve, speedRatio } = packed.net.elements[e]!.fan!;
  const rise = (inlet: number) => {
    fanTotalPressure(curve, { flow_m3s: 0, density_kgm3: densityAt(packed, inlet), speedRatio }, out);
    return out[0]!;
  };
  if (!farIsInlet) return near + rise(near);
  const room = packed.net.air.roomPressure_Pa;
  if (room === null) return near - rise(near);
  // rise goes with density and density with absolute pressure, so `inlet + rise(inlet) = near` is a straight line
  const perRoom = rise(0) / room;
  const inlet = (near + room) / (1 + perRoom) - room;
  return densityAt(packed, inlet) > densityAt(packed, -room) ? inlet : near - rise(-room);
}
