import { boldWidth, TEXT } from './axes.ts';
import type { PlotBox } from './plot-box.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A piece of lettering that points at a place. */
export interface WantedLabel {
  readonly id: string;
  readonly text: string;
  readonly at: Point;
  /** Left out where it cannot stand close by and clear of every line; something else says the same. */
  readonly onlyFree?: boolean;
}

export interface Label extends WantedLabel {
  /** Left end and base line of the text. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** Where the leader meets the text. */
  readonly leader: Point;
}

export interface Obstacles {
  /** Lines that lettering should not cross. */
  readonly lines: readonly (readonly Point[])[];
  readonly plot: PlotBox;
}

const HIGH = TEXT.height + 4;
/** How far beside and above or below its place a label may stand [px]. */
const BESIDE = [8, 20, 34, 52, 74, 100] as const;
const BEYOND = [8, 20, 34, 52, 74, 100, 130] as const;
/** What crossing a line, and a leader under another label, count for in that [px]. */
const CROSSING = 60;
const UNDER = 80;
/** How far a label may stand that is left out else [px]. */
const FREE_WITHIN = 26;

interface Place {
  readonly left: number;
  readonly middle: number;
  readonly away: number;
}

/** Places round a point, the nearest first. */
function* placesRound(at: Point, width: number, plot: PlotBox): Generator<Place> {
  // above or below, pushed in from the edge
  const over = Math.min(Math.max(at.x - width / 2, plot.left + 2), plot.right - width);
  for (const down of BEYOND) {
    for (const sign of [-1, 1]) {
      const middle = at.y + sign * down;
      yield { left: over, middle, away: down + 6 };
      for (const beside of BESIDE) {
        const away = Math.max(down, beside) + Math.min(down, beside) / 4;
        yield { left: at.x + beside, middle, away };
        yield { left: at.x - beside - width, middle, away };
      }
    }
  }
}

/**
 * Finds a place for each label near what it points at: never on another label or outside the plot, and off the lines
 * where there is room. One that has no place at all is left out; the table says what it would have said.
 */
export function placeLabels(wanted: readonly WantedLabel[], { lines, plot }: Obstacles): Label[] {
  const placed: { label: Label; box: PlotBox }[] = [];
  for (const want of wanted) {
    const width = boldWidth(want.text);
    let best: { cost: number; box: PlotBox } | null = null;
    for (const { left, middle, away } of placesRound(want.at, width, plot)) {
      if (best !== null && away >= best.cost) continue;
      const box = { left, right: left + width, top: middle - HIGH / 2, bottom: middle + HIGH / 2 };
      if (
        box.left < plot.left + 2 ||
        box.right > plot.right ||
        box.top < plot.top ||
        box.bottom > plot.bottom
      )
        continue;
      if (placed.some((p) => meet(p.box, box))) continue;
      const crossed = lines.reduce((sum, points) => sum + crossings(points, box), 0);
      if (want.onlyFree && (crossed > 0 || away > FREE_WITHIN)) continue;
      const under = placed.filter((p) => segmentMeets(want.at, centre(box), p.box)).length;
      const cost = crossed * CROSSING + under * UNDER + away;
      if (best === null || cost < best.cost) best = { cost, box };
    }
    if (best === null) continue;
    const { box } = best;
    const leader = {
      x: Math.min(Math.max(want.at.x, box.left), box.right),
      y: Math.min(Math.max(want.at.y, box.top), box.bottom),
    };
    placed.push({ box, label: { ...want, x: box.left, y: box.bottom - 4, width, leader } });
  }
  return placed.map((p) => p.label);
}

const centre = (box: PlotBox): Point => ({ x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 });

const meet = (a: PlotBox, b: PlotBox): boolean =>
  a.left < b.right + 3 && b.left < a.right + 3 && a.top < b.bottom && b.top < a.bottom;

function crossings(points: readonly Point[], box: PlotBox): number {
  let count = 0;
  for (let i = 1; i < points.length; i++) if (segmentMeets(points[i - 1]!, points[i]!, box)) count++;
  return count;
}

/** Whether a straight line enters a box: clips it to each side in turn. */
function segmentMeets(a: Point, b: Point, box: PlotBox): boolean {
  let from = 0;
  let to = 1;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  for (const [step, room] of [
    [-dx, a.x - box.left],
    [dx, box.right - a.x],
    [-dy, a.y - box.top],
    [dy, box.bottom - a.y],
  ] as const) {
    if (step === 0) {
      if (room < 0) return false;
      continue;
    }
    const t = room / step;
    if (step < 0) from = Math.max(from, t);
    else to = Math.min(to, t);
    if (from > to) return false;
  }
  return true;
}
