import type { FanCurve } from '../fan/fan-curve.ts';
import type { MotorModel } from '../fan/motor/motor-model.ts';
import type { JunctionLeg } from '../fittings/junction.ts';
import { roundArea } from './round-area.ts';

/** Kinds of segment: the smallest thing that takes total pressure from the air. */
export const FRICTION = 0;
export const LOCAL_UPSTREAM = 1;
export const LOCAL_DOWNSTREAM = 2;
export const LINEAR = 3;

/** One segment while a net is built; the solver reads the packed form. */
export interface Segment {
  readonly type: typeof FRICTION | typeof LOCAL_UPSTREAM | typeof LOCAL_DOWNSTREAM | typeof LINEAR;
  /** Area whose velocity pressure the coefficient multiplies [m2]. */
  readonly area_m2: number;
  /** Friction: `L/D` with every multiplier on it [-]. Local: `K` with the run [-]. Linear: drop over flow [Pa s/m3]. */
  readonly forward: number;
  /** Local: `K` against the run [-]; equals `forward` for the other types. */
  readonly backward: number;
  /** Friction only: inside diameter [m]. */
  readonly diameter_m: number;
  /** Friction only: roughness over diameter [-]. */
  readonly relativeRoughness: number;
  /** Friction only: a friction factor that does not depend on flow [-]; below zero means Colebrook-White. */
  readonly fixedFriction: number;
}

export const PASSIVE = 0;
export const FAN = 1;

/** One element between two nodes. */
export interface Element {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly kind: typeof PASSIVE | typeof FAN;
  readonly segments: readonly Segment[];
  /** Fan only. */
  readonly fan: FanDrive | null;
}

/** A fan curve with what makes it turn here; read by `fan-drive.ts` alone. */
export interface FanDrive {
  readonly curve: FanCurve;
  /** Speed over the speed of the curve [-], where it is held. */
  readonly speedRatio: number;
  /** What turns it; absent where its speed is held. Its curve then carries shaft power and a rated speed. */
  readonly motor?: TurningMotor;
}

/** A motor that turns a fan of the network. */
export interface TurningMotor {
  readonly model: MotorModel;
  /** Speed that was found last, from which the next search starts; one number [rpm]. */
  readonly guess_rpm: Float64Array;
}

/** Leg of a junction whose streams mix by momentum. */
export interface Leg extends JunctionLeg {
  readonly element: number;
  /** True where the element ends at the junction, false where it starts from it. */
  readonly ends: boolean;
}

/** A node: its total pressure is given, or found by the solver. */
export interface Node {
  readonly id: string;
  /** Total pressure [Pa gauge] where it is given, else null. */
  readonly pressure_Pa: number | null;
  /** Legs of a mixing junction; null for a node where total pressure is common to all legs. */
  readonly legs: readonly Leg[] | null;
}

/** Air as the network sees it. */
export interface NetAir {
  readonly density_kgm3: number;
  readonly viscosity_Pas: number;
  /** Absolute room pressure [Pa]; null holds density constant. */
  readonly roomPressure_Pa: number | null;
}

/** A whole network, free of any document. */
export interface Net {
  readonly air: NetAir;
  readonly nodes: readonly Node[];
  readonly elements: readonly Element[];
}

/** Straight duct with one roughness and one total local coefficient; both on the duct's own velocity. */
export function ductSegments(duct: {
  readonly length_m: number;
  readonly diameter_m: number;
  readonly roughness_m: number;
  readonly coefficient: number;
}): Segment[] {
  const area_m2 = roundArea(duct.diameter_m);
  const segments: Segment[] = [];
  if (duct.length_m > 0) {
    segments.push({
      type: FRICTION,
      area_m2,
      forward: duct.length_m / duct.diameter_m,
      backward: duct.length_m / duct.diameter_m,
      diameter_m: duct.diameter_m,
      relativeRoughness: duct.roughness_m / duct.diameter_m,
      fixedFriction: -1,
    });
  }
  if (duct.coefficient > 0) segments.push(localSegment(area_m2, duct.coefficient));
  return segments;
}

/** Local loss on the velocity pressure in one area, before or after the loss. */
export function localSegment(
  area_m2: number,
  forward: number,
  backward = forward,
  on: 'upstream' | 'downstream' = 'upstream',
): Segment {
  return {
    type: on === 'upstream' ? LOCAL_UPSTREAM : LOCAL_DOWNSTREAM,
    area_m2,
    forward,
    backward,
    diameter_m: 0,
    relativeRoughness: 0,
    fixedFriction: -1,
  };
}

/** Drop in proportion to flow, as through a filter. */
export function linearSegment(resistance_Pasm3: number): Segment {
  return {
    type: LINEAR,
    area_m2: 0,
    forward: resistance_Pasm3,
    backward: resistance_Pasm3,
    diameter_m: 0,
    relativeRoughness: 0,
    fixedFriction: -1,
  };
}
