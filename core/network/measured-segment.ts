import { localSegment } from './net.ts';
import type { Segment } from './net.ts';

/** A loss read at one flow, as a coefficient on the velocity in `area_m2`; density is put in when the net is made. */
export interface MeasuredSegment extends Segment {
  /** Loss over flow squared [Pa s2/m6]. */
  readonly perFlowSquared: number;
}

export function measuredSegment(area_m2: number, loss_Pa: number, flow_m3s: number): MeasuredSegment {
  return { ...localSegment(area_m2, 0), perFlowSquared: loss_Pa / (flow_m3s * flow_m3s) };
}

/** Puts the room's density into measured losses. */
export function settleMeasured(segment: Segment, density_kgm3: number): Segment {
  if (!('perFlowSquared' in segment)) return segment;
  const { perFlowSquared, ...plain } = segment as MeasuredSegment;
  const k = (2 * perFlowSquared * segment.area_m2 ** 2) / density_kgm3;
  return { ...plain, forward: k, backward: k };
}
