import { isDrawn, measureRoute } from '../../document/route.ts';
import type { Things } from '../../document/route.ts';
import type { UnitSystem } from '../../quantities/dimensions.ts';
import { printQuantity } from '../../quantities/print.ts';
import { fixed, LONG_UNIT } from './charts/columns.ts';
import type { RunView } from './plan/run-view.ts';
import type { ThingView } from './plan/thing-view.ts';

export const SIZE = { thing: 10, run: 10, leg: 8.5 } as const;
/** Width of a letter over its height, on the safe side [-]. */
const LETTER = 0.58;
/** A name of more letters may be broken into two lines. */
const BROKEN_FROM = 16;

/** Lettering that wants a place; the text that says most stands first. */
export interface Wanted {
  readonly texts: readonly string[];
  readonly size: number;
  readonly bold: boolean;
  /** What it is about [px], and how far its middle keeps from there at least. */
  readonly of: { readonly x: number; readonly y: number };
  /** Where the middle of each text may stand, best first; one list where it is the same for all. */
  readonly places: readonly (readonly WantedPlace[])[];
}

export interface WantedPlace {
  readonly x: number;
  readonly y: number;
  /** Share of half the text's width by which it moves on, so that its near edge keeps the distance [-]. */
  readonly off: number;
}

/** A length as it is told along a duct. */
export function longText(length_m: number, units: UnitSystem): string {
  const { unit, perMetre } = LONG_UNIT[units];
  return `${fixed(length_m * perMetre, 2)} ${unit}`;
}

/** Inside diameters of a run in the order of flow, each once. */
export function diametersText(run: RunView, units: UnitSystem): string {
  const sizes = [...new Set(run.stations.map(({ half_m }) => Math.round(2e4 * half_m) / 1e4))].filter(
    (size) => size > 0,
  );
  return sizes.map((size) => printQuantity(size, 'length', units)).join(' / ');
}

export const linesOf = (text: string): string[] => text.split('\n');
export const widthOf = (text: string, size: number): number =>
  Math.max(...linesOf(text).map((line) => line.length)) * size * LETTER;

/** A long name in two lines of about the same length; as it is where it has one word only. */
function broken(name: string): string {
  const spaces = [...name.matchAll(/ /g)].map(({ index }) => index);
  if (name.length < BROKEN_FROM || spaces.length === 0) return name;
  const middle = name.length / 2;
  const at = spaces.reduce((a, b) => (Math.abs(b - middle) < Math.abs(a - middle) ? b : a));
  return `${name.slice(0, at)}\n${name.slice(at + 1)}`;
}

/** Plan metres to paper [px]. */
export interface Way {
  readonly toX: (x: number) => number;
  readonly toY: (y: number) => number;
  readonly perMetre: number;
}

export function thingWish(view: ThingView, { toX, toY, perMetre }: Way): Wanted {
  const { box } = view;
  const x = toX(box.x);
  const y = toY(box.y);
  const across = box.halfX * perMetre + 3;
  const down = box.halfY * perMetre + 8;
  const places = [
    { x, y: y + down, off: 0 },
    { x, y: y - down, off: 0 },
    { x: x + across, y, off: 1 },
    { x: x - across, y, off: 1 },
    ...[12, 24, 40].flatMap((more) => [
      { x, y: y + down + more, off: 0 },
      { x, y: y - down - more, off: 0 },
      { x: x + across, y: y + down + more - 12, off: 1 },
      { x: x - across, y: y + down + more - 12, off: 1 },
      { x: x + across, y: y - down - more + 12, off: 1 },
      { x: x - across, y: y - down - more + 12, off: 1 },
    ]),
  ];
  const name = view.name.replaceAll('\n', ' ');
  const texts = [...new Set([name, broken(name), view.id])];
  return { texts, size: SIZE.thing, bold: true, of: { x, y }, places: [places] };
}

export function runWish(run: RunView, units: UnitSystem, { toX, toY, perMetre }: Way): Wanted {
  const size = diametersText(run, units);
  const half = (Math.max(...run.stations.map(({ half_m }) => half_m)) || 0) * perMetre + 9;
  const start = { x: run.stations[0]!.x, y: run.stations[0]!.y, direction_rad: 0 };
  const all = run.labelPlaces.length > 0 ? run.labelPlaces : [start];
  const first = all[0]!;
  const along = (some: typeof all, more: readonly number[]) =>
    some.flatMap(({ x, y, direction_rad }) => beside(toX(x), toY(y), direction_rad, half, more));
  // a shorter text beside the longest leg says more than a longer one that stands by another run
  const near = along(all.slice(0, LONGEST_LEG), [0, 12]);
  const far = along(all, [0, 12, 24, 40]);
  const whole = `${run.id}: ${size}, ${longText(run.length_m, units)}`;
  const some = `${run.id}: ${size}`;
  return {
    texts: [whole, some, whole, some, run.id],
    size: SIZE.run,
    bold: false,
    of: { x: toX(first.x), y: toY(first.y) },
    places: [near, near, far, far, far],
  };
}

/** Label places of a run that stand on its longest leg. */
const LONGEST_LEG = 3;

/** Both sides of a line, at its edge and further off. */
export function beside(x: number, y: number, direction_rad: number, away: number, more: readonly number[]) {
  const across = { x: Math.sin(direction_rad), y: -Math.cos(direction_rad) };
  return more.flatMap((further) =>
    [1, -1].map((side) => ({
      x: x + side * across.x * (away + further),
      y: y + side * across.y * (away + further),
      off: Math.abs(across.x) > 0.5 ? 1 : 0,
    })),
  );
}

export function ringed(x: number, y: number, half: number) {
  return [6, 16, 28].flatMap((more) =>
    [1, 3, 5, 7].map((eighth) => {
      const angle = (eighth * Math.PI) / 4;
      return { x: x + Math.cos(angle) * (half + more), y: y + Math.sin(angle) * (half + more), off: 1 };
    }),
  );
}

/** Legs of a drawn run on the plan, with their middles and the straight length in use. */
export function legs({ run, diameter_m }: RunView, things: Things) {
  if (!isDrawn(run)) return [];
  return measureRoute(run, things).legs.map(({ from, to, straight_m }) => ({
    x: (from.x + to.x) / 2,
    y: (from.y + to.y) / 2,
    length_m: Math.hypot(to.x - from.x, to.y - from.y),
    straight_m,
    half_m: diameter_m / 2,
    direction_rad: Math.atan2(to.y - from.y, to.x - from.x),
  }));
}
