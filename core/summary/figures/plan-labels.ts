import { isDrawn, measureRoute } from '../../document/route.ts';
import type { Things } from '../../document/route.ts';
import type { UnitSystem } from '../../quantities/dimensions.ts';
import { printQuantity } from '../../quantities/print.ts';
import { fixed, LONG_UNIT } from './charts/columns.ts';
import { placeLabels } from './plan/label-layout.ts';
import type { Blocked, LabelWish, Paper } from './plan/label-layout.ts';
import type { RunView } from './plan/run-view.ts';
import type { ThingView } from './plan/thing-view.ts';

export interface PlanLabelsInput {
  readonly runs: readonly RunView[];
  readonly views: readonly ThingView[];
  readonly things: Things;
  readonly units: UnitSystem;
  readonly perMetre: number;
  /** Where the plan's origin lies on the paper [px]. */
  readonly at: { readonly x: number; readonly y: number };
  readonly frame: Paper;
}

/** Lines of letters on the plan, their middle at `x`. */
export interface PlanLabel {
  readonly lines: readonly string[];
  readonly x: number;
  /** Base line of the first. */
  readonly y: number;
  readonly size: number;
  readonly bold: boolean;
  readonly leader: {
    readonly x1: number;
    readonly y1: number;
    readonly x2: number;
    readonly y2: number;
  } | null;
}

const SIZE = { thing: 10, run: 10, leg: 8.5 } as const;
/** Width of a letter over its height, on the safe side [-]. */
const LETTER = 0.58;
/** Lines stand this far apart, over their size [-]. */
export const LINE = 1.15;
/** A name of more letters may be broken into two lines. */
const BROKEN_FROM = 16;
/** A label further from what it is about than this gets a leader [px]. */
const LEADER_FROM = 22;
/** A straight shorter than this on paper is not measured on it; the table has it [px]. */
const LEAST_LEG = 60;

interface Wanted {
  readonly texts: readonly string[];
  readonly size: number;
  readonly bold: boolean;
  /** What it is about [px], and how far its middle keeps from there at least. */
  readonly of: { readonly x: number; readonly y: number };
  readonly places: readonly { readonly x: number; readonly y: number; readonly off: number }[];
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

/** Names of things, sizes and lengths of runs, heights of rises, and lengths of straights where there is room. */
export function planLabels(input: PlanLabelsInput): PlanLabel[] {
  const { runs, views, things, units, perMetre, at, frame } = input;
  const toX = (x: number) => at.x + x * perMetre;
  const toY = (y: number) => at.y + y * perMetre;
  const wanted = new Map<string, Wanted>();
  for (const view of views) wanted.set(`thing ${view.id}`, thingWish(view, { toX, toY, perMetre }));
  for (const run of runs) wanted.set(`run ${run.id}`, runWish(run, units, { toX, toY, perMetre }));
  for (const run of runs) {
    run.verticals.forEach(({ x, y, way, to_m, diameter_m }, i) =>
      wanted.set(`rise ${run.id} ${i}`, {
        texts: [`${way === 'up' ? 'rises' : 'drops'} to ${longText(to_m, units)}`],
        size: SIZE.leg,
        bold: false,
        of: { x: toX(x), y: toY(y) },
        places: ringed(toX(x), toY(y), (diameter_m * perMetre) / 2),
      }),
    );
    legs(run, things).forEach(({ x, y, length_m, straight_m, half_m, direction_rad }, i) => {
      if (length_m * perMetre < LEAST_LEG) return;
      wanted.set(`leg ${run.id} ${i}`, {
        texts: [longText(straight_m, units)],
        size: SIZE.leg,
        bold: false,
        of: { x: toX(x), y: toY(y) },
        places: beside(toX(x), toY(y), direction_rad, half_m * perMetre + 7, [0]),
      });
    });
  }
  const wishes = [...wanted].map(([id, want]): LabelWish => ({
    id,
    sizes: want.texts.map((text) => ({
      width_px: widthOf(text, want.size) + 2,
      height_px: want.size * (1 + LINE * (linesOf(text).length - 1)) + 1,
      places: want.places.map((place) => spread(want, place, text)),
    })),
  }));
  const placed = placeLabels(wishes, [...views.map(blockOf(toX, toY, perMetre))], ductBlocks(input), {
    left: frame.left + 3,
    right: frame.right - 3,
    top: frame.top + 3,
    bottom: frame.bottom - 3,
  });
  return [...placed].map(([id, place]): PlanLabel => {
    const want = wanted.get(id)!;
    const text = want.texts[place.size]!;
    const far = Math.hypot(place.x - want.of.x, place.y - want.of.y);
    const halfWidth = widthOf(text, want.size) / 2;
    const lines = linesOf(text);
    const reach = Math.abs(place.y - want.of.y) > want.size ? want.size : halfWidth;
    const leader =
      id.startsWith('run') && far > LEADER_FROM + reach
        ? {
            x1: want.of.x,
            y1: want.of.y,
            x2: Math.min(Math.max(want.of.x, place.x - halfWidth), place.x + halfWidth),
            y2: place.y + (want.of.y > place.y ? 0.5 : -0.5) * want.size,
          }
        : null;
    const y = place.y + want.size * (0.36 - (LINE * (lines.length - 1)) / 2);
    return { lines, x: place.x, y, size: want.size, bold: want.bold, leader };
  });
}

const linesOf = (text: string): string[] => text.split('\n');
const widthOf = (text: string, size: number): number =>
  Math.max(...linesOf(text).map((line) => line.length)) * size * LETTER;

/** A long name in two lines of about the same length; as it is where it has one word only. */
function broken(name: string): string {
  const spaces = [...name.matchAll(/ /g)].map(({ index }) => index);
  if (name.length < BROKEN_FROM || spaces.length === 0) return name;
  const middle = name.length / 2;
  const at = spaces.reduce((a, b) => (Math.abs(b - middle) < Math.abs(a - middle) ? b : a));
  return `${name.slice(0, at)}\n${name.slice(at + 1)}`;
}

/** Moves a place sideways by half of the text, so that its near edge and not its middle keeps the distance. */
function spread(want: Wanted, place: { x: number; y: number; off: number }, text: string) {
  const dx = place.x - want.of.x;
  const dy = place.y - want.of.y;
  const length = Math.hypot(dx, dy) || 1;
  const taller = ((linesOf(text).length - 1) * LINE * want.size) / 2;
  return {
    x: place.x + (dx / length) * (widthOf(text, want.size) / 2) * place.off,
    y: place.y + Math.sign(dy) * taller * (1 - place.off),
  };
}

interface Way {
  readonly toX: (x: number) => number;
  readonly toY: (y: number) => number;
  readonly perMetre: number;
}

function thingWish(view: ThingView, { toX, toY, perMetre }: Way): Wanted {
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
    ...[12, 24].flatMap((more) => [
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
  return { texts, size: SIZE.thing, bold: true, of: { x, y }, places };
}

function runWish(run: RunView, units: UnitSystem, { toX, toY, perMetre }: Way): Wanted {
  const size = diametersText(run, units);
  const texts = [`${run.id}: ${size}, ${longText(run.length_m, units)}`, `${run.id}: ${size}`, run.id];
  const half = (Math.max(...run.stations.map(({ half_m }) => half_m)) || 0) * perMetre + 9;
  const first = run.labelPlaces[0] ?? { x: run.stations[0]!.x, y: run.stations[0]!.y, direction_rad: 0 };
  const places = [first, ...run.labelPlaces].flatMap(({ x, y, direction_rad }) =>
    beside(toX(x), toY(y), direction_rad, half, [0, 12, 24, 40]),
  );
  return { texts, size: SIZE.run, bold: false, of: { x: toX(first.x), y: toY(first.y) }, places };
}

/** Both sides of a line, at its edge and further off. */
function beside(x: number, y: number, direction_rad: number, away: number, more: readonly number[]) {
  const across = { x: Math.sin(direction_rad), y: -Math.cos(direction_rad) };
  return more.flatMap((further) =>
    [1, -1].map((side) => ({
      x: x + side * across.x * (away + further),
      y: y + side * across.y * (away + further),
      off: Math.abs(across.x) > 0.5 ? 1 : 0,
    })),
  );
}

function ringed(x: number, y: number, half: number) {
  return [6, 16, 28].flatMap((more) =>
    [1, 3, 5, 7].map((eighth) => {
      const angle = (eighth * Math.PI) / 4;
      return { x: x + Math.cos(angle) * (half + more), y: y + Math.sin(angle) * (half + more), off: 1 };
    }),
  );
}

/** Legs of a drawn run on the plan, with their middles and the straight length in use. */
function legs({ run, diameter_m }: RunView, things: Things) {
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

const blockOf =
  (toX: (x: number) => number, toY: (y: number) => number, perMetre: number) =>
  ({ box: { x, y, halfX, halfY } }: ThingView): Blocked => ({
    x: toX(x),
    y: toY(y),
    width_px: 2 * halfX * perMetre,
    height_px: 2 * halfY * perMetre,
  });

/** Ducts as squares along their centre lines, which lettering keeps clear of where it can. */
function* ductBlocks({ runs, perMetre, at }: PlanLabelsInput): Generator<Blocked> {
  for (const { stations } of runs) {
    for (let i = 1; i < stations.length; i++) {
      const [a, b] = [stations[i - 1]!, stations[i]!];
      const size = Math.max(2 * a.half_m * perMetre, 4);
      const length = Math.hypot(b.x - a.x, b.y - a.y) * perMetre;
      const count = Math.min(200, Math.max(1, Math.ceil(length / size)));
      for (let k = 0; k <= count; k++) {
        const x = at.x + (a.x + ((b.x - a.x) * k) / count) * perMetre;
        const y = at.y + (a.y + ((b.y - a.y) * k) / count) * perMetre;
        yield { x, y, width_px: size, height_px: size };
      }
    }
  }
}
