import { PASSIVE } from '../../../core/network/net.ts';
import type { NetAir, Segment } from '../../../core/network/net.ts';
import { packNet } from '../../../core/network/packed.ts';
import type { PackedNet } from '../../../core/network/packed.ts';

export const STILL_AIR: NetAir = { density_kgm3: 1.2, viscosity_Pas: 1.81e-5, roomPressure_Pa: null };
export const ROOM_AIR: NetAir = { ...STILL_AIR, roomPressure_Pa: 101325 };

/** One element from the room to a given total pressure [Pa gauge]. */
export function onePath(air: NetAir, segments: readonly Segment[], end_Pa = -1000): PackedNet {
  return packNet({
    air,
    nodes: [
      { id: 'room', pressure_Pa: 0, legs: null },
      { id: 'end', pressure_Pa: end_Pa, legs: null },
    ],
    elements: [{ id: 'run', from: 0, to: 1, kind: PASSIVE, segments, fan: null }],
  });
}
