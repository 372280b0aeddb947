import { anchorOf, bodyLength } from '../../../document/anchors.ts';
import { ENDS, findEnd, MIXING_KINDS } from '../../../document/ends.ts';
import { coordinate } from '../../../document/quantity-of.ts';
import type { Thing, ThingKind } from '../../../document/schema-things.ts';
import type { PlanPoint } from './space.ts';
import * as symbols from './symbols.ts';
import type { PlanSymbol, WyeLeg } from './symbols.ts';
import type { RunView } from './run-view.ts';

/** What a kind of thing is called. */
export const KIND_WORDS: Readonly<Record<ThingKind, string>> = {
  port: 'Machine port',
  leak: 'Leak',
  exhaust: 'Exhaust',
  pressure: 'Given pressure',
  wye: 'Wye',
  tee: 'Tee',
  breeches: 'Breeches',
  joint: 'Joint',
  cyclone: 'Cyclone',
  bin: 'Drop-out bin',
  filter: 'Filter',
  fan: 'Fan',
};

/** An end of a thing, where a run may be joined. */
export interface EndView extends PlanPoint {
  readonly thing: string;
  readonly end: string;
  readonly z: number;
  readonly heading_rad: number;
  /** No run is joined yet. */
  readonly free: boolean;
  /** Whether air goes into the thing here, comes out of it, or either. */
  readonly air: 'into' | 'out of' | 'either';
}

/** A thing as the plan shows it; kept as long as it and the sizes of its runs stay as they are. */
export interface ThingView {
  readonly id: string;
  readonly thing: Thing;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly turn_deg: number;
  readonly name: string;
  /** The document gives it no place; it stands where there was room. */
  readonly unplaced: boolean;
  readonly symbol: PlanSymbol;
  readonly ends: readonly EndView[];
  /** Box about the symbol as it is turned: middle and half its size along the paper [m]. */
  readonly box: { readonly x: number; readonly y: number; readonly halfX: number; readonly halfY: number };
}

/** Entries of a mouth that stands open to the room; a port that takes no dust is one too. */
const OPEN_ENTRIES: ReadonlySet<string> = new Set(['flanged', 'bell']);
function isOpenMouth(port: Extract<Thing, { kind: 'port' }>): boolean {
  if (port.dust === undefined && port.cut === undefined) return true;
  return port.hood.kind === 'entry' && OPEN_ENTRIES.has(port.hood.entry);
}

function symbolOf(thing: Thing, bore: (end: string) => number, legs: readonly WyeLeg[]): PlanSymbol {
  switch (thing.kind) {
    case 'port':
      return isOpenMouth(thing) ? symbols.sweepSymbol(bore('')) : symbols.portSymbol(bore(''));
    case 'leak':
      return symbols.leakSymbol();
    case 'exhaust':
      return symbols.exhaustSymbol(bore(''));
    case 'pressure':
      return symbols.pressureSymbol();
    case 'wye':
    case 'tee':
    case 'breeches':
      return symbols.wyeSymbol(legs);
    case 'joint':
      return symbols.jointSymbol(bore(''));
    case 'cyclone':
      return symbols.cycloneSymbol(bodyLength(thing));
    case 'bin':
      return symbols.binSymbol(bodyLength(thing));
    case 'filter':
      return symbols.filterSymbol(bodyLength(thing));
    case 'fan':
      return symbols.fanSymbol(bodyLength(thing), thing.outletDiameter.si);
  }
}

const AIR: Readonly<Record<string, EndView['air']>> = {
  in: 'into',
  main: 'into',
  branch: 'into',
  left: 'into',
  right: 'into',
  out: 'out of',
};
function airOf(kind: ThingKind, end: string): EndView['air'] {
  if (kind === 'port' || kind === 'leak') return 'out of';
  return kind === 'exhaust' ? 'into' : (AIR[end] ?? 'either');
}

/** Bore that is drawn where no run says [m]. */
const UNKNOWN_BORE_M = 0.1;
/** Things without a place stand in a row this far apart, below the others [m]. */
const ROW_STEP_M = 1.2;

/** Makes views of things, and hands out the same view while nothing it shows has changed. */
export class ThingViews {
  private kept = new Map<string, { thing: Thing; key: string; view: ThingView }>();
  private readonly placed = new WeakMap<Thing, { key: string; thing: Thing }>();

  /** Things with a place each: where the document gives none, one is found, so that old documents show too. */
  withPlaces(things: readonly Thing[]): Map<string, Thing> {
    const lost = things.filter((thing) => thing.at === undefined).length;
    if (lost === 0) return new Map(things.map((thing) => [thing.id, thing]));
    const ys = things.flatMap((thing) => (thing.at ? [thing.at.y.si] : []));
    const y = ys.length > 0 ? Math.max(...ys) + ROW_STEP_M : 1;
    let next = 0;
    return new Map(
      things.map((thing) => {
        if (thing.at !== undefined) return [thing.id, thing];
        const x = 1 + ROW_STEP_M * next++;
        const key = `${x} ${y}`;
        const old = this.placed.get(thing);
        if (old?.key === key) return [thing.id, old.thing];
        const put = { ...thing, at: { x: coordinate(x), y: coordinate(y) } } as Thing;
        this.placed.set(thing, { key, thing: put });
        return [thing.id, put];
      }),
    );
  }

  of(things: readonly Thing[], placed: ReadonlyMap<string, Thing>, runs: readonly RunView[]): ThingView[] {
    const joined = joinedDucts(placed, runs);
    const next = new Map<string, { thing: Thing; key: string; view: ThingView }>();
    const views = things.map((thing) => {
      const shown = placed.get(thing.id)!;
      const mixes = MIXING_KINDS.has(thing.kind);
      const key = ENDS[thing.kind].all
        .map((end) => {
          const duct = joined.get(`${thing.id}.${end}`);
          return duct === undefined ? '-' : mixes ? `${duct.bore_m} ${duct.direction_rad}` : `${duct.bore_m}`;
        })
        .join();
      const old = this.kept.get(thing.id);
      const view = old && old.thing === shown && old.key === key ? old.view : makeView(thing, shown, joined);
      next.set(thing.id, { thing: shown, key, view });
      return view;
    });
    this.kept = next;
    return views;
  }
}

/** The duct at each end that has one, by `thing.end`, as it leaves the thing. */
function joinedDucts(things: ReadonlyMap<string, Thing>, runs: readonly RunView[]): Map<string, WyeLeg> {
  const ducts = new Map<string, WyeLeg>();
  for (const { run, stations, diameter_m } of runs) {
    for (const side of ['from', 'to'] as const) {
      const end = findEnd(things, run[side], side);
      if (typeof end === 'string') continue;
      const [near, far] = side === 'from' ? [stations[0], stations[1]] : [stations.at(-1), stations.at(-2)];
      const direction_rad = near && far ? Math.atan2(far.y - near.y, far.x - near.x) : 0;
      ducts.set(`${end.thing.id}.${end.end}`, { bore_m: diameter_m, direction_rad });
    }
  }
  return ducts;
}

function boxOf({ middle_m, halfLength_m, halfWidth_m }: PlanSymbol, x: number, y: number, turn_rad: number) {
  const [c, s] = [Math.cos(turn_rad), Math.sin(turn_rad)];
  return {
    x: x + c * middle_m.x - s * middle_m.y,
    y: y + s * middle_m.x + c * middle_m.y,
    halfX: Math.abs(c) * halfLength_m + Math.abs(s) * halfWidth_m,
    halfY: Math.abs(s) * halfLength_m + Math.abs(c) * halfWidth_m,
  };
}

function makeView(thing: Thing, shown: Thing, joined: ReadonlyMap<string, WyeLeg>): ThingView {
  const bore = (end: string) => joined.get(`${thing.id}.${end}`)?.bore_m ?? UNKNOWN_BORE_M;
  const at = shown.at!;
  const legs = ENDS[thing.kind].all.map(
    (end): WyeLeg =>
      joined.get(`${thing.id}.${end}`) ?? {
        bore_m: UNKNOWN_BORE_M,
        direction_rad: anchorOf(shown, end)!.heading_rad,
      },
  );
  const symbol = symbolOf(thing, bore, legs);
  const turn = MIXING_KINDS.has(thing.kind) ? 0 : (thing.turn?.si ?? 0);
  return {
    id: thing.id,
    thing,
    x: at.x.si,
    y: at.y.si,
    z: at.z?.si ?? 0,
    // legs of a junction follow the ducts, whatever way it is turned
    turn_deg: (turn * 180) / Math.PI,
    name: thing.name ?? `${KIND_WORDS[thing.kind]} ${thing.id}`,
    unplaced: thing.at === undefined,
    symbol,
    box: boxOf(symbol, at.x.si, at.y.si, turn),
    ends: ENDS[thing.kind].all.map((end) => {
      const { x, y, z, heading_rad } = anchorOf(shown, end)!;
      const free = !joined.has(`${thing.id}.${end}`);
      return { thing: thing.id, end, x, y, z, heading_rad, free, air: airOf(thing.kind, end) };
    }),
  };
}
