import { area, line } from 'd3-shape';
import type { Dimension, UnitSystem } from '../../core/quantities/dimensions.ts';
import { axis, titleFor } from '../../core/summary/figures/charts/axes.ts';
import type { Axis } from '../../core/summary/figures/charts/axes.ts';
import { plotBox, tenth } from '../../core/summary/figures/charts/plot-box.ts';
import type { PlotBox } from '../../core/summary/figures/charts/plot-box.ts';

/** A place in a picture, in SI along either axis. */
export type Place = readonly [x: number, y: number];

export interface PlotInput {
  readonly width: number;
  readonly height: number;
  readonly units: UnitSystem;
  readonly x: { readonly dimension: Dimension; readonly title: string; readonly high: number };
  readonly y: {
    readonly dimension: Dimension;
    readonly title: string;
    readonly low: number;
    readonly high: number;
  };
  /** Without figures under it, as where another picture with the same flows stands beneath. */
  readonly bare?: boolean;
}

export interface Plot {
  readonly plot: PlotBox;
  readonly x: Axis;
  readonly y: Axis;
  readonly xTitle: string;
  readonly yTitle: string;
}

const MARGIN = { left: 62, right: 16, top: 10, bottom: 38 } as const;
/** Margin under a plot without figures [px]. */
const BARE = 8;

/** Room and axes of a picture. */
export function layPlot({ width, height, units, x, y, bare = false }: PlotInput): Plot {
  const plot = plotBox(width, height, bare ? { ...MARGIN, bottom: BARE } : MARGIN);
  const across = axis({
    domain: [0, x.high > 0 ? x.high : 1],
    range: [plot.left, plot.right],
    dimension: x.dimension,
    units,
    side: 'bottom',
  });
  const up = axis({
    domain: [Math.min(0, y.low), y.high > 0 ? y.high : 1],
    range: [plot.bottom, plot.top],
    dimension: y.dimension,
    units,
    side: 'left',
    nice: true,
  });
  const unit = up.unit === '' ? '' : ` [${up.unit}]`;
  return {
    plot,
    x: across,
    y: up,
    xTitle: across.unit === '' ? x.title : `${x.title} [${across.unit}]`,
    yTitle: titleFor([`${y.title}${unit}`, unit.trim()], plot.bottom - plot.top),
  };
}

/** Line through places. */
export const linePath = ({ x, y }: Plot, places: readonly Place[]): string =>
  line<Place>(
    (p) => tenth(x.scale(p[0])),
    (p) => tenth(y.scale(p[1])),
  )(places) ?? '';

/** Area between two heights over the same places. */
export const bandPath = (
  { x, y }: Plot,
  places: readonly (readonly [x: number, low: number, high: number])[],
): string =>
  area<(typeof places)[number]>()
    .x((p) => tenth(x.scale(p[0])))
    .y0((p) => tenth(y.scale(p[1])))
    .y1((p) => tenth(y.scale(p[2])))(places) ?? '';

/** A value between places, in a straight line; null beyond them. */
export function readAt(places: readonly Place[], x: number): number | null {
  const i = places.findIndex((p) => p[0] >= x);
  if (i < 0) return null;
  const [bx, by] = places[i]!;
  if (i === 0) return bx === x ? by : null;
  const [ax, ay] = places[i - 1]!;
  return bx > ax ? ay + ((x - ax) / (bx - ax)) * (by - ay) : by;
}

export const pixel = ({ x, y }: Plot, [px, py]: Place): { x: number; y: number } => ({
  x: tenth(x.scale(px)),
  y: tenth(y.scale(py)),
});
