import { velocityPressure } from '../duct/straight.ts';
import { applySetting, findSetting } from './apply-setting.ts';
import type { NetState } from './balance.ts';
import type { CompiledShop } from './compile.ts';
import { carryDust, NO_LOAD, takeDust } from './dust.ts';
import { driveLargestFlow, driveRise } from './fan-drive.ts';
import { solveNet } from './newton.ts';
import { heldPoint } from './operating-points.ts';
import { LOSS_SHARES } from './solution.ts';
import type { LossShare, OperatingPoint } from './solution.ts';
import { solvedNet } from './solved-net.ts';
import { runResult } from './run-results.ts';
import { solveSetting } from './solve.ts';
import type { Workbench } from './solve.ts';

/** One point of a system curve. */
export interface SystemPoint {
  /** Flow through the fan, at the density there [m3/s]. */
  readonly flow_m3s: number;
  readonly massFlow_kgs: number;
  /** Rise of total pressure that the shop asks of the fan [Pa]. */
  readonly demand_Pa: number;
  /** What the fan gives at this flow, at the speed that its motor then takes [Pa]; null beyond its curve. */
  readonly fanTotal_Pa: number | null;
  readonly fanStatic_Pa: number | null;
  /** Parts of the demand [Pa]: the power lost in each kind of piece, over the flow through the fan. */
  readonly shares_Pa: Readonly<Record<LossShare, number>>;
  /** What given pressures and other fans add or take [Pa]; zero in a shop with one fan and the room's pressure. */
  readonly otherShare_Pa: number;
}

export interface SystemCurve {
  readonly document: string;
  readonly setting: string;
  readonly fan: string;
  readonly points: readonly SystemPoint[];
  readonly operatingPoints: readonly OperatingPoint[];
  readonly reason: string | null;
}

/** Points of a system curve, evenly spread. */
export const CURVE_POINTS = 41;
/** A system curve goes on to this share of the fan's largest flow. */
const CURVE_REACH = 1.05;

/**
 * The system curve of one fan in one setting: the fan is taken out, a flow is held in its place, and the rest of the
 * shop finds its own balance.
 *
 * @throws RangeError where the document has no such setting or fan
 */
export function systemCurve(
  bench: Workbench,
  settingName: string,
  fanId: string,
  count = CURVE_POINTS,
): SystemCurve {
  const { shop, plans } = bench;
  const setting = findSetting(shop.document, settingName);
  const fan = shop.fans.find((f) => f.thing.id === fanId);
  if (setting === null) throw new RangeError(`no setting is named "${settingName}"`);
  if (fan === undefined) throw new RangeError(`no fan is named "${fanId}"`);
  const solved = solveSetting(bench, settingName);
  const result = solved.fans.find((f) => f.id === fanId);

  applySetting(shop, setting);
  const { packed } = shop;
  const element = fan.element;
  const drive = packed.net.elements[element]!.fan!;
  const top = driveLargestFlow(drive, packed.net.air.density_kgm3);
  const held = new Float64Array(packed.elementCount).fill(NaN);
  const out = new Float64Array(3);
  const points: SystemPoint[] = [];
  let warm: NetState | null = null;
  for (let i = 1; i < count; i++) {
    held[element] = (packed.net.air.density_kgm3 * CURVE_REACH * top * i) / (count - 1);
    const outcome = solveWithDust(shop, held, warm, plans);
    if (!outcome.converged) continue;
    const point = heldPoint(packed, element, held[element]!, outcome);
    const { flow_m3s, massFlow_kgs, demand_Pa, density_kgm3 } = point;
    warm = point.state;
    const shares_Pa = lossShares(shop, outcome, massFlow_kgs);
    const named = LOSS_SHARES.reduce((sum, share) => sum + shares_Pa[share], 0);
    driveRise(drive, flow_m3s, density_kgm3, out);
    const onCurve = flow_m3s <= driveLargestFlow(drive, density_kgm3) * (1 + 1e-9);
    const outlet_Pa = velocityPressure(density_kgm3, flow_m3s / drive.curve.input.outletArea_m2);
    points.push({
      flow_m3s,
      massFlow_kgs,
      demand_Pa,
      fanTotal_Pa: onCurve ? out[0]! : null,
      fanStatic_Pa: onCurve ? out[0]! - outlet_Pa : null,
      shares_Pa,
      otherShare_Pa: demand_Pa - named,
    });
  }
  return {
    document: shop.document.name,
    setting: settingName,
    fan: fanId,
    points,
    operatingPoints: result?.allOperatingPoints ?? [],
    reason:
      solved.reasonText ??
      (points.length === 0 ? 'no flow can be held through the fan in this setting' : null),
  };
}

/** One held flow, with the dust that it carries. */
function solveWithDust(
  shop: CompiledShop,
  held: Float64Array,
  warm: NetState | null,
  plans: Workbench['plans'],
) {
  const { packed } = shop;
  packed.solids_kgs.fill(0);
  const clean = solveNet(packed, { held, warm, plans });
  if (!clean.converged || !shop.document.options.solidsLoss) return clean;
  const dust = carryDust(shop, clean.state, clean.activity.elements, false);
  takeDust(shop, dust);
  return solveNet(packed, { held, warm: clean.state, plans });
}

/** Power lost in each kind of piece over the mass flow of the fan [Pa]. */
function lossShares(
  shop: CompiledShop,
  outcome: Extract<ReturnType<typeof solveNet>, { converged: true }>,
  fanFlow_kgs: number,
): Record<LossShare, number> {
  const { state, balance } = outcome;
  const net = solvedNet(shop, state, balance);
  const shares = Object.fromEntries(LOSS_SHARES.map((share) => [share, 0])) as Record<LossShare, number>;
  for (const run of shop.runs) {
    const m = state.flow_kgs[run.element]!;
    if (m === 0) continue;
    for (const piece of runResult(net, run, NO_LOAD).pieces) {
      shares[piece.share] += (Math.abs(m) * (piece.loss_Pa - piece.solidsLoss_Pa)) / fanFlow_kgs;
      shares.solids += (Math.abs(m) * piece.solidsLoss_Pa) / fanFlow_kgs;
    }
  }
  for (const device of shop.devices) {
    const e = device.element;
    const loss = balance.endPressure(state, e, true) - balance.endPressure(state, e, false);
    shares[device.built.kind === 'filter' ? 'filter' : 'separator'] +=
      (state.flow_kgs[e]! * loss) / fanFlow_kgs;
  }
  return shares;
}
