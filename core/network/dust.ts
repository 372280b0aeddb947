import { SOLIDS_LOSS_K } from '../conveying/solids-loss.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import { GRADE_MODELS } from '../separator/efficiency.ts';
import type { GradeCurve } from '../separator/efficiency.ts';
import { seriesCatch } from '../separator/catch.ts';
import type { NetState } from './balance.ts';
import type { CompiledDevice, CompiledShop } from './compile.ts';
import { densityAt } from './march.ts';
import { dustOf, portDustRate, WASTEFUL_RATIO } from './port-dust.ts';
import type { Dust } from './port-dust.ts';

/** Dust of one kind on its way: how much, and through what it has come. */
interface Stream {
  readonly dust: Dust;
  /** Velocity that carries it before any separator [m/s]. */
  readonly rawVelocity_ms: number;
  /** Separators passed, in the order of flow. */
  readonly passed: readonly CompiledDevice[];
  readonly rate_kgs: number;
  /** Whether it has gone through a filter: then it asks for nothing more. */
  readonly filtered: boolean;
}

/** What travels through one element. */
export interface Load {
  readonly dust_kgs: number;
  /** What a filter has let through; too little to be carried or to cost anything. */
  readonly filtered_kgs: number;
  /** Transport velocity that the most demanding dust asks for [m/s]; null where nothing asks. */
  readonly requiredVelocity_ms: number | null;
  /** Velocity above which the least demanding limit counts as wasteful [m/s]. */
  readonly highVelocity_ms: number | null;
  readonly dusts: readonly Dust[];
}

/** What a separator does with what arrives. */
export interface DeviceCatch {
  readonly dustIn_kgs: number;
  /** Share caught of all that arrives, by mass [-]; null where no dust arrives. */
  readonly catchShare: number | null;
  readonly catchByModel: Readonly<Record<string, number>> | null;
  readonly cutSize_m: number | null;
  /** Volume that the catch heaps up to [m3/s]. */
  readonly heap_m3s: number;
}

export interface DustResult {
  /** By element. */
  readonly loads: readonly Load[];
  /** By element; null for elements that are no separator or filter. */
  readonly catches: readonly (DeviceCatch | null)[];
}

/** Nothing is carried and nothing is asked. */
export const NO_LOAD: Load = {
  dust_kgs: 0,
  filtered_kgs: 0,
  requiredVelocity_ms: null,
  highVelocity_ms: null,
  dusts: [],
};

/**
 * Sends every port's dust along the flows, through separators and filters, in the order of flow.
 *
 * @param allModels - whether the catch is worked out by every model, as results show it, or by the chosen one alone
 */
export function carryDust(
  shop: CompiledShop,
  state: NetState,
  carrying: Int32Array,
  allModels: boolean,
): DustResult {
  const { packed } = shop;
  const loads: Load[] = new Array<Load>(packed.elementCount).fill(NO_LOAD);
  const catches: (DeviceCatch | null)[] = new Array<DeviceCatch | null>(packed.elementCount).fill(null);
  const devices = new Map(shop.devices.map((device) => [device.element, device]));

  // elements by the node that they leave, and how many flow into each node
  const leaving: number[][] = Array.from({ length: packed.nodeCount }, () => []);
  const waiting = new Int32Array(packed.nodeCount);
  for (const e of carrying) {
    const m = state.flow_kgs[e]!;
    if (m === 0) continue;
    leaving[m > 0 ? packed.from[e]! : packed.to[e]!]!.push(e);
    waiting[m > 0 ? packed.to[e]! : packed.from[e]!]!++;
  }
  const arrived: Map<string, Stream>[] = Array.from({ length: packed.nodeCount }, () => new Map());
  for (const thing of shop.things.values()) {
    if (thing.kind !== 'port' || (thing.dust === undefined && !thing.needs?.velocity)) continue;
    const dust = dustOf(shop.document, thing.dust ?? 'very-light-dust');
    const rawVelocity_ms = thing.needs?.velocity?.si ?? dust.requiredVelocity_ms;
    addStream(arrived[shop.nodeIndex.get(thing.id)!]!, {
      dust,
      rawVelocity_ms,
      passed: [],
      rate_kgs: thing.dust === undefined ? 0 : portDustRate(thing),
      filtered: false,
    });
  }

  const queue: number[] = [];
  for (let v = 0; v < packed.nodeCount; v++) if (waiting[v] === 0 && leaving[v]!.length > 0) queue.push(v);
  for (let head = 0; head < queue.length; head++) {
    const v = queue[head]!;
    const out = leaving[v]!.reduce((sum, e) => sum + Math.abs(state.flow_kgs[e]!), 0);
    for (const e of leaving[v]!) {
      const m = state.flow_kgs[e]!;
      const share = Math.abs(m) / out;
      const streams = [...arrived[v]!.values()].map((s) => ({ ...s, rate_kgs: s.rate_kgs * share }));
      loads[e] = loadOf(streams);
      const device = devices.get(e);
      const w = m > 0 ? packed.to[e]! : packed.from[e]!;
      const passing = device ? passDevice(shop, state, device, streams, catches, allModels) : streams;
      for (const stream of passing) addStream(arrived[w]!, stream);
      if (--waiting[w]! === 0) queue.push(w);
    }
  }
  return { loads, catches };
}

/** Dust loads closer than this leave the flow as it is [-]. */
const DUST_TOLERANCE = 1e-9;

/** Puts the dust loads into the net; false where they stand there already. */
export function takeDust(shop: CompiledShop, dust: DustResult): boolean {
  const { solids_kgs } = shop.packed;
  let changed = false;
  for (const { element } of shop.runs) {
    const wanted = SOLIDS_LOSS_K.value * dust.loads[element]!.dust_kgs;
    if (Math.abs(wanted - solids_kgs[element]!) > DUST_TOLERANCE * Math.max(wanted, 1e-6)) changed = true;
    solids_kgs[element] = wanted;
  }
  return changed;
}

function addStream(streams: Map<string, Stream>, stream: Stream): void {
  const key = `${stream.filtered ? 'filtered ' : ''}${stream.dust.id}|${stream.rawVelocity_ms}|${stream.passed.map((d) => d.element).join(',')}`;
  const before = streams.get(key);
  streams.set(key, before ? { ...before, rate_kgs: before.rate_kgs + stream.rate_kgs } : stream);
}

const rateOf = (streams: readonly Stream[]) => streams.reduce((sum, stream) => sum + stream.rate_kgs, 0);

function loadOf(streams: readonly Stream[]): Load {
  const filtered_kgs = rateOf(streams.filter((stream) => stream.filtered));
  const carried = streams.filter((stream) => !stream.filtered);
  if (carried.length === 0) return { ...NO_LOAD, filtered_kgs };
  let required = 0;
  let high = Infinity;
  for (const stream of carried) {
    const fine = stream.passed.length > 0;
    const need = fine ? stream.dust.fineVelocity_ms : stream.rawVelocity_ms;
    required = Math.max(required, need);
    high = Math.min(high, Math.max(stream.dust.highVelocity_ms, WASTEFUL_RATIO * need));
  }
  return {
    dust_kgs: rateOf(carried),
    filtered_kgs,
    requiredVelocity_ms: required,
    highVelocity_ms: Math.max(high, required),
    dusts: [...new Set(carried.map((stream) => stream.dust))],
  };
}

/** What of each stream leaves a device; the catch is noted by the way. */
function passDevice(
  shop: CompiledShop,
  state: NetState,
  device: CompiledDevice,
  streams: readonly Stream[],
  catches: (DeviceCatch | null)[],
  allModels: boolean,
): Stream[] {
  const dustIn_kgs = rateOf(streams);
  const { built, element } = device;
  if (built.kind === 'filter') {
    catches[element] = { dustIn_kgs, catchShare: null, catchByModel: null, cutSize_m: null, heap_m3s: 0 };
    const through = built.layers.reduce((share, { medium }) => share * medium.passedShare, 1);
    // what it lets through is a matter of health, not of flow
    return streams.map((stream) => ({ ...stream, filtered: true, rate_kgs: stream.rate_kgs * through }));
  }
  const chosen = built.kind === 'cyclone' ? built.gradeModel : 'share';
  const models = built.kind === 'cyclone' && allModels ? Object.keys(GRADE_MODELS) : [chosen];
  const caught = new Map<string, number>(models.map((model) => [model, 0]));
  const weight = (stream: Stream) => (dustIn_kgs > 0 ? stream.rate_kgs / dustIn_kgs : 1 / streams.length);
  let heap_m3s = 0;
  const passing = streams.map((stream) => {
    let own = 0;
    for (const model of models) {
      const share = catchOf(shop, state, device, stream, model);
      // a model that has no value for this shape or dust is left out, and catches nothing
      const before = caught.get(model);
      if (share === null) caught.delete(model);
      else if (before !== undefined) caught.set(model, before + share * weight(stream));
      if (model === chosen) own = share ?? 0;
    }
    heap_m3s += (stream.rate_kgs * own) / stream.dust.bulkDensity_kgm3;
    return { ...stream, passed: [...stream.passed, device], rate_kgs: stream.rate_kgs * (1 - own) };
  });
  const first = streams[0];
  catches[element] = {
    dustIn_kgs,
    catchShare: first ? (caught.get(chosen) ?? null) : null,
    catchByModel: first && built.kind === 'cyclone' ? Object.fromEntries(caught) : null,
    cutSize_m:
      first && built.kind === 'cyclone' && caught.has(chosen)
        ? GRADE_MODELS[built.gradeModel].cutSize(
            built.geometry,
            separatorFlow(shop, state, device, first.dust),
          )
        : null,
    heap_m3s,
  };
  return passing;
}

/** Share of what arrives of a stream that a separator keeps, after what the ones before it have kept. */
function catchOf(
  shop: CompiledShop,
  state: NetState,
  device: CompiledDevice,
  stream: Stream,
  model: string,
): number | null {
  const curve = (d: CompiledDevice): GradeCurve => {
    const { built } = d;
    if (built.kind === 'bin') return () => built.catchShare;
    if (built.kind === 'filter') return () => 0;
    const grade = d === device ? (model as keyof typeof GRADE_MODELS) : built.gradeModel;
    return GRADE_MODELS[grade].curve(built.geometry, separatorFlow(shop, state, d, stream.dust));
  };
  const size = { median_m: stream.dust.medianSize_m, geometricDeviation: stream.dust.geometricDeviation };
  let byStage: readonly number[];
  try {
    byStage = seriesCatch([...stream.passed, device].map(curve), size).byStage;
  } catch (error) {
    if (error instanceof ImpossibleInput) return null;
    throw error;
  }
  const own = byStage.at(-1)!;
  const before = byStage.slice(0, -1).reduce((sum, share) => sum + share, 0);
  return before < 1 ? Math.min(1, Math.max(0, own / (1 - before))) : 1;
}

/** State of the air in a separator; where no temperature is given, that of 20 degrees Celsius. */
function separatorFlow(shop: CompiledShop, state: NetState, device: CompiledDevice, dust: Dust) {
  const { packed, air } = shop;
  const e = device.element;
  const m = state.flow_kgs[e]!;
  const density_kgm3 = densityAt(packed, state.pressure_Pa[m >= 0 ? packed.from[e]! : packed.to[e]!]!);
  return {
    flow_m3s: Math.max(Math.abs(m) / density_kgm3, 1e-9),
    density_kgm3,
    viscosity_Pas: air.viscosity_Pas,
    temperature_K: air.temperature_K ?? 293.15,
    particleDensity_kgm3: dust.particleDensity_kgm3,
  };
}
