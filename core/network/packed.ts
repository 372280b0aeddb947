import { KEPT } from './kept-friction.ts';
import { FAN } from './net.ts';
import type { Leg, Net } from './net.ts';

/** Junction in packed form: what the momentum balance needs, and which elements meet there. */
export interface PackedJunction {
  readonly node: number;
  readonly legs: readonly Leg[];
}

/** Numbers in `KeptDrops` for each element. */
export const KEPT_DROP = 6;

/** What `keepDrop` left of each element, and the settings that it was true for. */
export interface KeptDrops {
  /** `1/m0` (0 where nothing is kept), then the drop at `m0` and its four derivatives over `i!` by `m/m0`. */
  readonly values: Float64Array;
  readonly forward: Float64Array;
  readonly backward: Float64Array;
  readonly solids_kgs: Float64Array;
}

/**
 * A net as flat arrays, so that the solver's inner loops touch no objects. Made once for a document; a setting only
 * rewrites `forward`, `backward`, `shut` and `solids_kgs`.
 */
export interface PackedNet {
  readonly net: Net;
  readonly elementCount: number;
  readonly nodeCount: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Segments of element `e` are `segmentStart[e] .. segmentStart[e + 1] - 1`. */
  readonly segmentStart: Int32Array;
  readonly type: Uint8Array;
  readonly area_m2: Float64Array;
  readonly forward: Float64Array;
  readonly backward: Float64Array;
  readonly diameter_m: Float64Array;
  readonly relativeRoughness: Float64Array;
  readonly fixedFriction: Float64Array;
  /** Friction of each segment at the flow where it was last solved in full; see `keptFriction`. */
  readonly keptFriction: Float64Array;
  /** Drop of each element near the flow where it was last settled; see `keepDrop`. */
  readonly keptDrops: KeptDrops;
  /** Indices of the elements that are fans. */
  readonly fans: readonly number[];
  /** 1 where an element is a fan. */
  readonly isFan: Uint8Array;
  /** 1 where an element is shut. */
  readonly shut: Uint8Array;
  /** Solids multiplier `K` times the dust carried [kg/s], for each element. */
  readonly solids_kgs: Float64Array;
  /** Given total pressure of a node [Pa], NaN where the solver finds it. */
  readonly given_Pa: Float64Array;
  readonly junctions: readonly PackedJunction[];
  /** Junction (index into `junctions`) and leg number at either end of an element; -1 where there is none. */
  readonly junctionFrom: Int32Array;
  readonly legFrom: Int32Array;
  readonly junctionTo: Int32Array;
  readonly legTo: Int32Array;
}

/** Lays a net out in flat arrays. */
export function packNet(net: Net): PackedNet {
  const n = net.elements.length;
  const segmentStart = new Int32Array(n + 1);
  net.elements.forEach((element, e) => {
    segmentStart[e + 1] = segmentStart[e]! + element.segments.length;
  });
  const total = segmentStart[n]!;
  const packed: PackedNet = {
    net,
    elementCount: n,
    nodeCount: net.nodes.length,
    from: Int32Array.from(net.elements, (element) => element.from),
    to: Int32Array.from(net.elements, (element) => element.to),
    segmentStart,
    type: new Uint8Array(total),
    area_m2: new Float64Array(total),
    forward: new Float64Array(total),
    backward: new Float64Array(total),
    diameter_m: new Float64Array(total),
    relativeRoughness: new Float64Array(total),
    fixedFriction: new Float64Array(total),
    keptFriction: new Float64Array(KEPT * total),
    keptDrops: {
      values: new Float64Array(KEPT_DROP * n),
      forward: new Float64Array(total),
      backward: new Float64Array(total),
      solids_kgs: new Float64Array(n),
    },
    fans: net.elements.flatMap((element, e) => (element.kind === FAN ? [e] : [])),
    isFan: Uint8Array.from(net.elements, (element) => (element.kind === FAN ? 1 : 0)),
    shut: new Uint8Array(n),
    solids_kgs: new Float64Array(n),
    given_Pa: Float64Array.from(net.nodes, (node) => node.pressure_Pa ?? NaN),
    junctions: net.nodes.flatMap((node, v) => (node.legs ? [{ node: v, legs: node.legs }] : [])),
    junctionFrom: new Int32Array(n).fill(-1),
    legFrom: new Int32Array(n).fill(-1),
    junctionTo: new Int32Array(n).fill(-1),
    legTo: new Int32Array(n).fill(-1),
  };
  let s = 0;
  for (const element of net.elements) {
    for (const segment of element.segments) {
      packed.type[s] = segment.type;
      packed.area_m2[s] = segment.area_m2;
      packed.forward[s] = segment.forward;
      packed.backward[s] = segment.backward;
      packed.diameter_m[s] = segment.diameter_m;
      packed.relativeRoughness[s] = segment.relativeRoughness;
      packed.fixedFriction[s] = segment.fixedFriction;
      s++;
    }
  }
  packed.junctions.forEach((junction, j) => {
    junction.legs.forEach((leg, k) => {
      (leg.ends ? packed.junctionTo : packed.junctionFrom)[leg.element] = j;
      (leg.ends ? packed.legTo : packed.legFrom)[leg.element] = k;
    });
  });
  return packed;
}
