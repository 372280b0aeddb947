import type { CompiledRun } from './compile.ts';
import { densityAt, staticAt } from './march.ts';
import { roundArea } from './round-area.ts';
import type { PieceResult } from './solution.ts';
import type { SolvedNet } from './solved-net.ts';

/**
 * What a run loses where it meets others: between its own end and the leg of the junction that carries most. Negative
 * where a fast stream drags it along. Null where the run is that leg, is still, or ends at no mixing junction.
 */
export function junctionPiece(net: SolvedNet, compiled: CompiledRun, atStart: boolean): PieceResult | null {
  const { shop, state, balance } = net;
  const { packed } = shop;
  const e = compiled.element;
  const m = state.flow_kgs[e]!;
  const node = atStart ? packed.from[e]! : packed.to[e]!;
  const main = net.mainLegs.get(node);
  const diameter_m = atStart ? compiled.startDiameter_m : compiled.endDiameter_m;
  if (packed.net.nodes[node]!.legs === null || main === undefined || diameter_m === null || m === 0)
    return null;
  if (main.element === e && main.atStart === atStart) return null;

  const { thing, end } = atStart ? compiled.from : compiled.to;
  const own = balance.endPressure(state, e, atStart);
  const joined = balance.endPressure(state, main.element, main.atStart);
  const flow = Math.abs(m);
  const area_m2 = roundArea(diameter_m);
  const ownStatic = staticAt(packed, own, flow, area_m2);
  const density = densityAt(packed, ownStatic);
  const velocity_ms = flow / (density * area_m2);
  const velocityPressure_Pa = (density * velocity_ms * velocity_ms) / 2;
  // air passes from its own end into the junction where it arrives there
  const loss_Pa = m > 0 === atStart ? joined - own : own - joined;
  return {
    id: `${thing.id}.${end}`,
    kind: thing.kind,
    share: 'fittings',
    diameter_m,
    length_m: null,
    velocity_ms,
    velocityPressure_Pa,
    coefficient: velocityPressure_Pa > 0 ? loss_Pa / velocityPressure_Pa : null,
    frictionFactor: null,
    loss_Pa,
    solidsLoss_Pa: 0,
    totalPressureAfter_Pa: atStart ? own : joined,
    staticPressureAfter_Pa: atStart ? ownStatic : staticAt(packed, joined, main.flow_kgs, main.area_m2),
    source:
      'Idelchik, Handbook of Hydraulic Resistance, 3rd ed., ch. 7 (momentum theory after Levin and Taliev)',
    basis: 'from-memory',
  };
}
