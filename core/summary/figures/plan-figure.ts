import type { ShopDocument } from '../../document/schema.ts';
import type { UnitSystem } from '../../quantities/dimensions.ts';
import { el } from '../markup.ts';
import type { Markup } from '../markup.ts';
import { LONG_UNIT } from './charts/columns.ts';
import { INK, letters, PAPER, picture, PX_PER_M, straight, stroked } from './paper.ts';
import { flowArrows } from './plan/duct-outline.ts';
import { RunViews } from './plan/run-view.ts';
import type { RunView } from './plan/run-view.ts';
import { boxAround } from './plan/space.ts';
import type { PlanBox } from './plan/space.ts';
import { gateSymbol, verticalSymbol } from './plan/symbols.ts';
import type { PlanSymbol, SymbolPath } from './plan/symbols.ts';
import { ThingViews } from './plan/thing-view.ts';
import type { ThingView } from './plan/thing-view.ts';
import { LINE, planLabels } from './plan-labels.ts';

export interface PlanFigureInput {
  /** Most that the drawing may take [px]. */
  readonly width: number;
  readonly height: number;
  readonly units: UnitSystem;
}

export interface PlanFigure {
  readonly figure: Markup;
  /** The plan is this many times as large as the paper, printed at full size. */
  readonly scale: number;
  /** Things that have no place, and are not on it. */
  readonly leftOut: readonly string[];
}

/** Scales of drawings, the largest first. */
const SCALES: Readonly<Record<UnitSystem, readonly number[]>> = {
  si: [5, 10, 20, 25, 50, 75, 100, 150, 200, 250, 500, 1000, 2000, 5000, 10000],
  us: [6, 12, 16, 24, 32, 48, 64, 96, 128, 192, 384, 768, 1536, 3072, 12000],
};
/** Paper kept free about the drawing, for lettering, and below it for the scale bar [px]. */
const MARGIN = 46;
const FOOT = 36;
const STROKE_PX: Readonly<Record<SymbolPath['as'], number>> = { body: 1, line: 1, mark: 0, faint: 0.5 };

/** The shop from above, to scale; null where nothing has a place. There is no north: the drawing knows none. */
export function planFigure(document: ShopDocument, input: PlanFigureInput): PlanFigure | null {
  const placed = document.things.filter((thing) => thing.at !== undefined);
  const leftOut = document.things.filter((thing) => thing.at === undefined).map(({ id }) => id);
  if (placed.length === 0) return null;
  const things = new Map(placed.map((thing) => [thing.id, thing]));
  const runs = new RunViews().of(document.runs, things).filter(({ stations }) => stations.length > 1);
  const views = new ThingViews().of(placed, things, runs);
  const box = extent(runs, views);
  const scales = SCALES[input.units];
  const fits = (scale: number) =>
    (box.right - box.left) * (PX_PER_M / scale) + 2 * MARGIN <= input.width &&
    (box.bottom - box.top) * (PX_PER_M / scale) + 2 * MARGIN + FOOT <= input.height;
  const scale = scales.find(fits) ?? scales.at(-1)!;
  const perMetre = PX_PER_M / scale;
  const { width } = input;
  const height = (box.bottom - box.top) * perMetre + 2 * MARGIN + FOOT;
  const at = {
    x: (width - (box.right - box.left) * perMetre) / 2 - box.left * perMetre,
    y: MARGIN - box.top * perMetre,
  };
  const frame = { left: 1, top: 1, right: width - 1, bottom: height - FOOT };
  const px = (size: number) => size / perMetre;
  const says = `Plan of ${document.name} at a scale of 1 to ${scale}: ${runs.length} runs, ${views.length} things.`;
  const figure = picture(
    { width, height },
    says,
    el('rect', {
      x: frame.left,
      y: frame.top,
      width: frame.right - frame.left,
      height: frame.bottom - frame.top,
      stroke: INK,
      'stroke-width': 0.8,
    }),
    el(
      'g',
      { transform: `translate(${n(at.x)} ${n(at.y)}) scale(${Math.round(perMetre * 1e4) / 1e4})` },
      runs.map((run) => runShape(run, px)),
      views.map((view) => placeSymbol(view.symbol, view.x, view.y, view.turn_deg, px)),
      runs.flatMap((run) => runMarks(run, px)),
    ),
    planLabels({ runs, views, things, units: input.units, perMetre, at, frame }).map((label) => [
      label.leader === null
        ? null
        : straight(label.leader.x1, label.leader.y1, label.leader.x2, label.leader.y2, { width: 0.5 }),
      label.lines.map((text, i) =>
        letters(label.x, label.y + i * LINE * label.size, text, {
          anchor: 'middle',
          clear: true,
          bold: label.bold,
          size: label.size,
        }),
      ),
    ]),
    scaleBar(input.units, { perMetre, scale, width, top: height - FOOT }),
  );
  return { figure, scale, leftOut };
}

const n = (px: number): number => Math.round(px * 100) / 100;

function extent(runs: readonly RunView[], things: readonly ThingView[]): PlanBox {
  const corners = things.flatMap(({ box: { x, y, halfX, halfY } }) => [
    { x: x - halfX, y: y - halfY },
    { x: x + halfX, y: y + halfY },
  ]);
  const ducts = runs.flatMap(({ stations }) =>
    stations.flatMap(({ x, y, half_m }) => [
      { x: x - half_m, y: y - half_m },
      { x: x + half_m, y: y + half_m },
    ]),
  );
  return boxAround([...corners, ...ducts])!;
}

function runShape({ outline, stations, typed }: RunView, px: (size: number) => number): Markup {
  const line = { width: px(1) };
  const dashes = (...sizes: number[]) => sizes.map((size) => Number(px(size).toPrecision(3))).join(' ');
  return el(
    'g',
    {},
    el('path', { d: outline.fill, fill: PAPER }),
    stroked(`${outline.walls}${outline.hoseWalls}`, typed ? { ...line, dash: dashes(5, 3) } : line),
    stroked(outline.joints, { width: px(0.7) }),
    stroked(outline.centre, { width: px(0.4), dash: dashes(8, 2, 2, 2) }),
    el('path', { d: flowArrows(stations, 1.2, false), stroke: INK, 'stroke-width': px(0.9) }),
  );
}

function placeSymbol(
  symbol: PlanSymbol,
  x: number,
  y: number,
  turn_deg: number,
  px: (size: number) => number,
): Markup {
  return el(
    'g',
    {
      transform: `translate(${Math.round(x * 1e4) / 1e4} ${Math.round(y * 1e4) / 1e4}) rotate(${n(turn_deg)})`,
    },
    symbol.paths.map(({ d, as }) => {
      const width = STROKE_PX[as];
      return el('path', {
        d,
        fill: as === 'body' ? PAPER : as === 'mark' ? INK : null,
        stroke: width > 0 ? INK : null,
        'stroke-width': width > 0 ? px(width) : null,
      });
    }),
  );
}

function runMarks(run: RunView, px: (size: number) => number): Markup[] {
  const degrees = (angle: number) => (angle * 180) / Math.PI;
  return [
    ...run.verticals.map(({ x, y, way, diameter_m }) =>
      placeSymbol(verticalSymbol(diameter_m, way), x, y, 0, px),
    ),
    ...run.marks
      .filter(({ kind }) => kind === 'gate')
      .map(({ x, y, direction_rad, diameter_m, opening }) =>
        placeSymbol(gateSymbol(diameter_m, opening), x, y, degrees(direction_rad), px),
      ),
  ];
}

interface BarInput {
  readonly perMetre: number;
  readonly scale: number;
  readonly width: number;
  readonly top: number;
}

/** A bar of round lengths and the scale in words. */
function scaleBar(units: UnitSystem, { perMetre, scale, width, top }: BarInput): Markup {
  const { unit, perMetre: unitsPerMetre } = LONG_UNIT[units];
  const perUnit = perMetre / unitsPerMetre;
  const step = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200].find((size) => size * perUnit >= 34) ?? 500;
  const count = Math.max(1, Math.min(4, Math.floor((width - 260) / (step * perUnit))));
  const y = top + 10;
  const boxes = Array.from({ length: count }, (_, i) =>
    el('rect', {
      x: 4 + i * step * perUnit,
      y,
      width: step * perUnit,
      height: 6,
      fill: i % 2 === 0 ? INK : PAPER,
      stroke: INK,
      'stroke-width': 0.8,
    }),
  );
  const figure = (i: number) => String(Number((i * step).toPrecision(3)));
  return el(
    'g',
    {},
    boxes,
    Array.from({ length: count + 1 }, (_, i) =>
      letters(4 + i * step * perUnit, y + 18, i === count ? `${figure(i)} ${unit}` : figure(i), {
        anchor: i === 0 ? 'start' : 'middle',
      }),
    ),
    letters(width - 4, y + 6, `scale 1:${scale} when printed at full size`, { anchor: 'end' }),
  );
}
