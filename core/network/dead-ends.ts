import type { Activity } from './activity.ts';
import type { Balance, NetState } from './balance.ts';
import { driveRise } from './fan-drive.ts';
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

/** Newton steps that bring a driven fan's far side to rounding. */
const DRIVEN_STEPS = 5;

/** Pressure on the far side of a fan at shut-off; its density is that of its inlet [Pa]. */
function beyondFan(
  packed: PackedNet,
  e: number,
  near: number,
  farIsInlet: boolean,
  out: Float64Array,
): number {
  const drive = packed.net.elements[e]!.fan!;
  const rise = (inlet: number) => {
    driveRise(drive, 0, densityAt(packed, inlet), out);
    return out[0]!;
  };
  if (!farIsInlet) return near + rise(near);
  const room = packed.net.air.roomPressure_Pa;
  if (room === null) return near - rise(near);
  // at a held speed rise goes with density and density with absolute pressure, so `inlet + rise(inlet) = near` is a
  // straight line and the first step is exact; a motor bends it a little
  let inlet = (near + room) / (1 + rise(0) / room) - room;
  const perPressure = packed.net.air.density_kgm3 / room;
  for (let i = 0; drive.motor !== undefined && i < DRIVEN_STEPS; i++) {
    inlet -= (inlet + rise(inlet) - near) / (1 + out[2]! * perPressure);
  }
  return densityAt(packed, inlet) > densityAt(packed, -room) ? inlet : near - rise(-room);
}
