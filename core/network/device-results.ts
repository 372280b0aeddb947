import { velocityPressure } from '../duct/straight.ts';
import { faceVelocity } from '../filter/media.ts';
import { cycloneLossSpread, PLAIN_CYCLONE } from '../separator/pressure-drop.ts';
import type { CompiledDevice, CompiledFan } from './compile.ts';
import type { DeviceCatch } from './dust.ts';
import { driveFigures, driveRise } from './fan-drive.ts';
import { densityAt, staticAt } from './march.ts';
import type { DeviceResult, FanResult, NodeResult, OperatingPoint } from './solution.ts';
import type { SolvedNet } from './solved-net.ts';

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** What is said of a separator or filter. */
export function deviceResult(
  net: SolvedNet,
  device: CompiledDevice,
  caught: DeviceCatch | null,
): DeviceResult {
  const { shop, state, balance } = net;
  const e = device.element;
  const m = state.flow_kgs[e]!;
  const inlet = balance.endPressure(state, e, true);
  const outlet = balance.endPressure(state, e, false);
  const density = densityAt(shop.packed, Number.isFinite(inlet) ? inlet : 0);
  const flow_m3s = m / density;
  const { built } = device;
  const inletVelocity_ms = built.kind === 'filter' ? null : Math.abs(flow_m3s) / built.inletArea_m2;
  let lossByModel_Pa: Record<string, number> | null = null;
  if (built.kind === 'cyclone') {
    const pressure = (density * inletVelocity_ms! ** 2) / 2;
    const { byModel } = cycloneLossSpread(built.geometry, PLAIN_CYCLONE);
    lossByModel_Pa = Object.fromEntries(Object.entries(byModel).map(([id, xi]) => [id, xi * pressure]));
  }
  return {
    id: device.thing.id,
    kind: built.kind,
    flow_m3s,
    loss_Pa: finite(inlet - outlet) ?? 0,
    inletTotalPressure_Pa: finite(inlet),
    inletVelocity_ms,
    lossByModel_Pa,
    cutSize_m: caught?.cutSize_m ?? null,
    catchShare: caught?.catchShare ?? null,
    catchByModel: caught?.catchByModel ?? null,
    faceVelocity_ms:
      built.kind === 'filter'
        ? built.layers.map((layer) => faceVelocity(Math.abs(flow_m3s), layer.area_m2))
        : null,
    dustIn_kgs: caught?.dustIn_kgs ?? 0,
    model: built.model,
    source: built.source,
    basis: built.basis,
  };
}

const out = new Float64Array(3);

/** What is said of a fan. */
export function fanResult(
  net: SolvedNet,
  fan: CompiledFan,
  points: readonly OperatingPoint[] | null,
): FanResult {
  const { shop, state, balance } = net;
  const e = fan.element;
  const drive = shop.packed.net.elements[e]!.fan!;
  const m = state.flow_kgs[e]!;
  const inlet = balance.endPressure(state, e, true);
  const density_kgm3 = densityAt(shop.packed, Number.isFinite(inlet) ? inlet : 0);
  const flow_m3s = m / density_kgm3;
  driveRise(drive, flow_m3s, density_kgm3, out);
  const total_Pa = out[0]!;
  const outletPressure = velocityPressure(density_kgm3, flow_m3s / drive.curve.input.outletArea_m2);
  const own: OperatingPoint = { flow_m3s, massFlow_kgs: m, totalPressure_Pa: total_Pa, stable: true };
  const all = points ?? [own];
  const nearest = all.reduce((a, b) => (Math.abs(b.massFlow_kgs - m) < Math.abs(a.massFlow_kgs - m) ? b : a));
  return {
    id: fan.thing.id,
    flow_m3s,
    massFlow_kgs: m,
    staticPressure_Pa: total_Pa - outletPressure,
    totalPressure_Pa: total_Pa,
    ...driveFigures(drive, { flow_m3s, density_kgm3, total_Pa }),
    stable: nearest.stable,
    allOperatingPoints: all,
  };
}

/** Pressures of every node; the total at a junction is that of the leg which carries most. */
export function nodeResults(net: SolvedNet): NodeResult[] {
  const { shop, state, balance } = net;
  const { packed } = shop;
  return packed.net.nodes.map((node, v) => {
    const leg = net.mainLegs.get(v);
    const total = leg ? balance.endPressure(state, leg.element, leg.atStart) : state.pressure_Pa[v]!;
    if (!Number.isFinite(total)) return { id: node.id, totalPressure_Pa: null, staticPressure_Pa: null };
    // the room's air stands still before it enters
    const still = shop.things.get(node.id)?.kind;
    const outside = still === 'port' || still === 'leak' || still === 'exhaust';
    const staticPressure_Pa = outside
      ? total
      : node.legs !== null
        ? state.pressure_Pa[v]!
        : leg
          ? staticAt(packed, total, leg.flow_kgs, leg.area_m2)
          : null;
    return { id: node.id, totalPressure_Pa: total, staticPressure_Pa };
  });
}
