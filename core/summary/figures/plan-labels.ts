import type { Things } from '../../document/route.ts';
import type { UnitSystem } from '../../quantities/dimensions.ts';
import { placeLabels } from './plan/label-layout.ts';
import type { Blocked, LabelWish, Paper } from './plan/label-layout.ts';
import type { RunView } from './plan/run-view.ts';
import type { ThingView } from './plan/thing-view.ts';
import { beside, legs, linesOf, longText, ringed, runWish, SIZE, thingWish, widthOf } from './plan-wishes.ts';
import type { Wanted } from './plan-wishes.ts';

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

/** Lines stand this far apart, over their size [-]. */
export const LINE = 1.15;
/** A label further from what it is about than this gets a leader [px]. */
const LEADER_FROM = 22;
/** A straight shorter than this on paper is not measured on it; the table has it [px]. */
const LEAST_LEG = 60;

/** Names of things, sizes and lengths of runs, heights of rises, and lengths of straights where there is room. */
export function planLabels(input: PlanLabelsInput): PlanLabel[] {
  const { runs, views, things, units, perMetre, at, frame } = input;
  const toX = (x: number) => at.x + x * perMetre;
  const toY = (y: number) => at.y + y * perMetre;
  const wanted = new Map<string, Wanted>();
  // a thing has room all round it, a run only beside it, and so the runs choose first
  for (const run of runs) wanted.set(`run ${run.id}`, runWish(run, units, { toX, toY, perMetre }));
  for (const view of views) wanted.set(`thing ${view.id}`, thingWish(view, { toX, toY, perMetre }));
  for (const run of runs) {
    run.verticals.forEach(({ x, y, way, to_m, diameter_m }, i) =>
      wanted.set(`rise ${run.id} ${i}`, {
        texts: [`${way === 'up' ? 'rises' : 'drops'} to ${longText(to_m, units)}`],
        size: SIZE.leg,
        bold: false,
        of: { x: toX(x), y: toY(y) },
        places: [ringed(toX(x), toY(y), (diameter_m * perMetre) / 2)],
      }),
    );
    legs(run, things).forEach(({ x, y, length_m, straight_m, half_m, direction_rad }, i) => {
      if (length_m * perMetre < LEAST_LEG) return;
      wanted.set(`leg ${run.id} ${i}`, {
        texts: [longText(straight_m, units)],
        size: SIZE.leg,
        bold: false,
        of: { x: toX(x), y: toY(y) },
        places: [beside(toX(x), toY(y), direction_rad, half_m * perMetre + 7, [0])],
      });
    });
  }
  const wishes = [...wanted].map(([id, want]): LabelWish => ({
    id,
    sizes: want.texts.map((text, i) => ({
      width_px: widthOf(text, want.size) + 2,
      height_px: want.size * (1 + LINE * (linesOf(text).length - 1)) + 1,
      places: (want.places[i] ?? want.places[0]!).map((place) => spread(want, place, text)),
    })),
  }));
  const placed = placeLabels(wishes, [...views.map(blockOf(toX, toY, perMetre))], ductBlocks(input), {
    left: frame.left + 3,
    right: frame.right - 3,
    top: frame.top + 3,
    bottom: frame.bottom - 3,
  });
  const boxes = [...placed].map(([id, { x, y, size }]) => {
    const { width_px, height_px } = wishes.find((wish) => wish.id === id)!.sizes[size]!;
    return { id, x, y, width_px, height_px };
  });
  return [...placed].map(([id, place]): PlanLabel => {
    const want = wanted.get(id)!;
    const text = want.texts[place.size]!;
    const far = Math.hypot(place.x - want.of.x, place.y - want.of.y);
    const halfWidth = widthOf(text, want.size) / 2;
    const lines = linesOf(text);
    const reach = Math.abs(place.y - want.of.y) > want.size ? want.size : halfWidth;
    const line = {
      x1: want.of.x,
      y1: want.of.y,
      x2: Math.min(Math.max(want.of.x, place.x - halfWidth), place.x + halfWidth),
      y2: place.y + (want.of.y > place.y ? 0.5 : -0.5) * want.size,
    };
    const away = id.startsWith('run') && far > LEADER_FROM + reach;
    const clear = boxes.every((box) => box.id === id || !crosses(line, box));
    const leader = away && clear ? line : null;
    const y = place.y + want.size * (0.36 - (LINE * (lines.length - 1)) / 2);
    return { lines, x: place.x, y, size: want.size, bold: want.bold, leader };
  });
}

/** Steps in which a leader is followed to see what lies under it. */
const STEPS = 24;

/** Whether a line runs through a box. */
function crosses(line: NonNullable<PlanLabel['leader']>, box: Blocked): boolean {
  return Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS).some((share) => {
    const x = line.x1 + (line.x2 - line.x1) * share;
    const y = line.y1 + (line.y2 - line.y1) * share;
    return Math.abs(x - box.x) < box.width_px / 2 && Math.abs(y - box.y) < box.height_px / 2;
  });
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
