import type { NetState } from './balance.ts';
import type { CompiledShop } from './compile.ts';
import { roundArea } from './round-area.ts';

/** The run that carries most air at a node: its total pressure is said to be the node's. */
export interface MainLeg {
  readonly element: number;
  /** True where the run starts from the node. */
  readonly atStart: boolean;
  readonly area_m2: number;
  /** Without its sign [kg/s]. */
  readonly flow_kgs: number;
}

/** Flows closer than this are the same; then the junction's outlet stands for it [-]. */
const SAME_FLOW = 1e-9;

/** Main leg of each node that a run with a duct is joined to, by node. */
export function mainLegs(shop: CompiledShop, state: NetState): Map<number, MainLeg> {
  const { packed } = shop;
  const legs = new Map<number, MainLeg>();
  for (const { element, startDiameter_m, endDiameter_m, from, to } of shop.runs) {
    const flow_kgs = Math.abs(state.flow_kgs[element]!);
    const offer = (node: number, atStart: boolean, diameter_m: number | null, end: string) => {
      const before = legs.get(node);
      const least = (before?.flow_kgs ?? -1) * (end === 'out' ? 1 - SAME_FLOW : 1 + SAME_FLOW);
      if (diameter_m === null || (before && flow_kgs <= least)) return;
      legs.set(node, { element, atStart, area_m2: roundArea(diameter_m), flow_kgs });
    };
    offer(packed.from[element]!, true, startDiameter_m, from.end);
    offer(packed.to[element]!, false, endDiameter_m, to.end);
  }
  return legs;
}
