import { fanCurve } from '../../../core/fan/fan-curve.ts';
import type { FanCurve, FanPoint } from '../../../core/fan/fan-curve.ts';
import { ductSegments, FAN, linearSegment, localSegment, PASSIVE } from '../../../core/network/net.ts';
import type { Element, Leg, Net, Node, Segment } from '../../../core/network/net.ts';
import { packNet } from '../../../core/network/packed.ts';
import type { PackedNet } from '../../../core/network/packed.ts';
import { seeded } from './seeded.ts';

/** What a random network may hold. */
export interface NetRecipe {
  readonly seed: number;
  /** Elements of the tree; loops, leaks and fans come on top. */
  readonly size: number;
  /** `sane`: what a shop builds. `absurd`: anything that passes the checks of input. */
  readonly sizes: 'sane' | 'absurd';
  readonly loops: number;
  readonly fans: number;
  readonly shutShare: number;
  readonly junctionShare: number;
  readonly compressible: boolean;
}

type Random = () => number;
const between = (random: Random, low: number, high: number) => low + (high - low) * random();
const spread = (random: Random, low: number, high: number) => low * (high / low) ** random();

/** A fan by its shut-off pressure and widest flow; every second one has a stall hump. */
export function randomFan(random: Random, shutOff_Pa: number, flow_m3s: number): FanCurve {
  const humped = random() < 0.5;
  const shape: readonly (readonly [number, number])[] = humped
    ? [
        [0, 0.8],
        [0.2, 0.72],
        [0.45, 1],
        [0.75, 0.7],
        [1, 0.05],
      ]
    : [
        [0, 1],
        [0.5, 0.85],
        [1, 0.1],
      ];
  const points: FanPoint[] = shape.map(([q, p]) => ({ flow_m3s: q * flow_m3s, pressure_Pa: p * shutOff_Pa }));
  return fanCurve({
    pressureKind: random() < 0.5 ? 'total' : 'static',
    outletArea_m2: flow_m3s / 20,
    points,
    ratedSpeed_rpm: null,
    ratedDensity_kgm3: 1.2,
  });
}

function randomDuct(random: Random, absurd: boolean): { segments: Segment[]; area_m2: number } {
  const diameter_m = absurd ? spread(random, 1e-3, 10) : between(random, 0.05, 0.3);
  const length_m = absurd ? (random() < 0.2 ? 0 : spread(random, 1e-3, 1e4)) : between(random, 0.5, 20);
  const roughness_m = random() < 0.3 ? 0 : Math.min(0.05 * diameter_m, spread(random, 1e-6, 2e-3));
  const coefficient = absurd ? (random() < 0.2 ? 0 : spread(random, 1e-4, 1e6)) : between(random, 0, 5);
  const segments = ductSegments({ length_m, diameter_m, roughness_m, coefficient });
  const area_m2 = (Math.PI / 4) * diameter_m ** 2;
  if (random() < 0.2) {
    const backward = coefficient * between(random, 0.3, 3);
    const on = random() < 0.5 ? 'upstream' : 'downstream';
    segments.push(localSegment(area_m2 * between(random, 0.5, 2), coefficient, backward, on));
  }
  if (random() < 0.1)
    segments.push(linearSegment(absurd ? spread(random, 1, 1e7) : between(random, 500, 5000)));
  return { segments, area_m2 };
}

/** Makes a random network from a recipe; the same recipe makes the same network. */
export function randomNet(recipe: NetRecipe): PackedNet {
  const random = seeded(recipe.seed);
  const absurd = recipe.sizes === 'absurd';
  const pressures: (number | null)[] = [null];
  const ends: { from: number; to: number; segments: Segment[]; area_m2: number; fan: Element['fan'] }[] = [];
  const addNode = (pressure_Pa: number | null) => pressures.push(pressure_Pa) - 1;
  const pick = (count: number) => Math.min(count - 1, Math.floor(random() * count));

  // a tree: each new run starts at a node that is there, most often a young one
  for (let i = 0; i < recipe.size; i++) {
    const old = random() < 0.5 ? pick(pressures.length) : Math.max(0, pressures.length - 1 - pick(5));
    const fresh = addNode(null);
    const turned = random() < 0.5;
    const duct = randomDuct(random, absurd);
    ends.push({ from: turned ? fresh : old, to: turned ? old : fresh, ...duct, fan: null });
  }
  const nodes = pressures.length;
  const degree = new Array<number>(nodes).fill(0);
  for (const { from, to } of ends) for (const v of [from, to]) degree[v]!++;
  for (let v = 0; v < nodes; v++) {
    if (degree[v] !== 1 || random() < 0.1) continue; // a few dead ends stay
    const open = random() < 0.8;
    pressures[v] = open ? 0 : absurd ? between(random, -1e5, 1e5) * random() : between(random, -5000, 1000);
  }
  for (let i = 0; i < recipe.loops; i++) {
    const from = pick(nodes);
    const to = pick(nodes);
    if (from !== to) ends.push({ from, to, ...randomDuct(random, absurd), fan: null });
  }
  // fans stand behind runs, or in their place, so they stand in series, in parallel, anywhere
  for (let i = 0; i < recipe.fans; i++) {
    const e = ends[pick(recipe.size)]!;
    const shutOff_Pa = absurd ? spread(random, 1, 1e5) : spread(random, 500, 20000);
    const flow_m3s = absurd ? spread(random, 1e-4, 100) : spread(random, 0.05, 2);
    const fan = { curve: randomFan(random, shutOff_Pa, flow_m3s), speedRatio: between(random, 0.6, 1.2) };
    const area_m2 = flow_m3s / 20;
    if (absurd) Object.assign(e, { fan, segments: [], area_m2 });
    else {
      // a fan blown backwards has no resistance of its own here, so a shop's fan keeps the run before it
      const middle = addNode(null);
      ends.push({ from: middle, to: e.to, segments: [], area_m2, fan });
      e.to = middle;
    }
  }
  // leaks: thin slits to the room
  for (let i = 0; i < recipe.size / 10; i++) {
    const area_m2 = spread(random, 1e-6, 1e-3);
    ends.push({
      from: addNode(0),
      to: pick(nodes),
      segments: [localSegment(area_m2, 2.7)],
      area_m2,
      fan: null,
    });
  }

  const around = pressures.map((): number[] => []);
  ends.forEach(({ from, to }, e) => {
    around[from]!.push(e);
    around[to]!.push(e);
  });
  const legsOf = (v: number): Leg[] | null => {
    const touching = around[v]!;
    if (pressures[v] !== null || random() >= recipe.junctionShare) return null;
    if (touching.length < 3 || touching.length > 4) return null;
    const angle = [Math.PI / 6, Math.PI / 4, Math.PI / 2][pick(3)]!;
    const directions = [0, Math.PI, Math.PI + angle, Math.PI - angle];
    const breeches = random() < 0.15;
    const turn = pick(touching.length);
    return touching.map((element, k): Leg => {
      const place = (k + turn) % touching.length;
      const { area_m2, to } = ends[element]!;
      const leg = { element, ends: to === v, area_m2, direction_rad: directions[place]! };
      return breeches ? leg : { ...leg, role: place < 2 ? 'through' : 'branch' };
    });
  };
  const net: Net = {
    air: { density_kgm3: 1.2, viscosity_Pas: 1.81e-5, roomPressure_Pa: recipe.compressible ? 101325 : null },
    nodes: pressures.map((pressure_Pa, v): Node => ({ id: `N${v}`, pressure_Pa, legs: legsOf(v) })),
    elements: ends.map(({ from, to, segments, fan }, e): Element => ({
      id: `E${e}`,
      from,
      to,
      kind: fan ? FAN : PASSIVE,
      segments,
      fan,
    })),
  };
  const packed = packNet(net);
  for (let e = 0; e < ends.length; e++) {
    if (random() < recipe.shutShare) packed.shut[e] = 1;
    if (ends[e]!.fan === null && random() < 0.1) packed.solids_kgs[e] = spread(random, 1e-4, 0.02);
  }
  return packed;
}
