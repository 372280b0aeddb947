import { area, line } from 'd3-shape';
import type { LossShare, OperatingPoint } from '../../../network/solution.ts';
import { LOSS_SHARES } from '../../../network/solution.ts';
import type { SystemCurve, SystemPoint } from '../../../network/system-curve.ts';
import type { UnitSystem } from '../../../quantities/dimensions.ts';
import { printQuantity } from '../../../quantities/print.ts';
import { axis, titleFor } from './axes.ts';
import type { Axis } from './axes.ts';
import { placeLabels } from './labels.ts';
import type { Label, Point } from './labels.ts';
import { plotBox, tenth } from './plot-box.ts';
import type { PlotBox } from './plot-box.ts';
import { SHARE_WORDS } from './words.ts';

export type Share = LossShare | 'other';

export interface CurveInput {
  readonly width: number;
  readonly height: number;
  readonly units: UnitSystem;
  /** Curve of another setting, or of another fan in this one. */
  readonly overlay: SystemCurve | null;
  /** What the one laid over is called: its setting, its fan, or the speed of that. */
  readonly overlayName: string;
  /** Name of a fan by id. */
  readonly nameOf: (id: string) => string;
}

export interface ShareArea {
  readonly share: Share;
  readonly path: string;
}

export interface PointMark {
  readonly x: number;
  readonly y: number;
  readonly stable: boolean;
  readonly point: OperatingPoint;
  readonly overlay: boolean;
}

export interface CurveMarks {
  readonly width: number;
  readonly height: number;
  readonly plot: PlotBox;
  readonly x: Axis;
  readonly y: Axis;
  readonly xTitle: string;
  readonly yTitle: string;
  /** Shares from the axis upwards. */
  readonly areas: readonly ShareArea[];
  readonly system: string;
  readonly fan: string;
  readonly otherSystem: string;
  readonly otherFan: string;
  readonly points: readonly PointMark[];
  readonly labels: readonly Label[];
  readonly sentence: string;
}

const MARGIN = { left: 62, right: 18, top: 14, bottom: 40 } as const;
/** Below this, what other fans and given pressures add is rounding [Pa]. */
const LEAST_OTHER_Pa = 0.01;

export const shareOf = (point: SystemPoint, share: Share): number =>
  share === 'other' ? point.otherShare_Pa : point.shares_Pa[share];

/** Shares that a curve has at all, in their fixed order. */
export function sharesIn(curve: SystemCurve): Share[] {
  const all: Share[] = [...LOSS_SHARES, 'other'];
  return all.filter((share) => curve.points.some((p) => Math.abs(shareOf(p, share)) > LEAST_OTHER_Pa));
}

/** Lays out system curve, fan curve, operating points and shares. */
export function layCurve(curve: SystemCurve, input: CurveInput): CurveMarks {
  const { width, height, units, overlay } = input;
  const plot = plotBox(width, height, MARGIN);
  const curves = overlay ? [curve, overlay] : [curve];
  const x = axis({
    domain: [0, Math.max(1e-6, ...curves.flatMap((c) => c.points.map((p) => p.flow_m3s)))],
    range: [plot.left, plot.right],
    dimension: 'flow',
    units,
    side: 'bottom',
  });
  const y = axis({
    domain: pressureSpan(curves),
    range: [plot.bottom, plot.top],
    dimension: 'pressure',
    units,
    side: 'left',
    nice: true,
  });
  const across = (p: SystemPoint) => tenth(x.scale(p.flow_m3s));
  const draw = (points: readonly SystemPoint[], value: (p: SystemPoint) => number | null) =>
    line<SystemPoint>(across, (p) => tenth(y.scale(value(p)!))).defined((p) => value(p) !== null)(points) ??
    '';
  const points = curves.flatMap((c) =>
    c.operatingPoints.map((point): PointMark => ({
      x: tenth(x.scale(point.flow_m3s)),
      y: tenth(y.scale(point.totalPressure_Pa)),
      stable: point.stable,
      point,
      overlay: c !== curve,
    })),
  );
  const lineOf = (c: SystemCurve, value: (p: SystemPoint) => number | null): Point[] =>
    c.points.flatMap((p) => {
      const si = value(p);
      return si === null ? [] : [{ x: x.scale(p.flow_m3s), y: y.scale(si) }];
    });
  const demand = (p: SystemPoint) => p.demand_Pa;
  const given = (p: SystemPoint) => p.fanTotal_Pa;
  const lines = curves.flatMap((c) => [lineOf(c, demand), lineOf(c, given)]);
  return {
    width,
    height,
    plot,
    x,
    y,
    xTitle: `flow through the fan [${x.unit}]`,
    yTitle: titleFor([`total pressure [${y.unit}]`, `[${y.unit}]`], plot.bottom - plot.top),
    areas: stackShares(curve, across, y),
    system: draw(curve.points, demand),
    fan: draw(curve.points, given),
    otherSystem: overlay ? draw(overlay.points, demand) : '',
    // another setting has the same fan, whose curve is there already
    otherFan: overlay && overlay.setting === curve.setting ? draw(overlay.points, given) : '',
    points,
    labels: placeLabels(wanted(curve, input, points, lines, plot), { lines, plot }),
    sentence: sentence(curve, input),
  };
}

/** Room for the fan's curve and every operating point; a system curve that climbs out of the picture is cut there. */
function pressureSpan(curves: readonly SystemCurve[]): [number, number] {
  const seen = curves.flatMap((c) => [
    ...c.points.flatMap((p) => (p.fanTotal_Pa === null ? [] : [p.fanTotal_Pa])),
    ...c.operatingPoints.map((p) => p.totalPressure_Pa),
  ]);
  const demands = curves.flatMap((c) => c.points.map((p) => p.demand_Pa));
  const high = seen.length > 0 ? Math.max(...seen) : Math.max(1, ...demands);
  return [Math.min(0, ...demands), high * 1.12];
}

/** Shares on each other from the axis; what gives back pressure hangs below the axis. */
function stackShares(curve: SystemCurve, across: (p: SystemPoint) => number, y: Axis): ShareArea[] {
  const up = curve.points.map(() => 0);
  const down = curve.points.map(() => 0);
  return sharesIn(curve).map((share) => {
    const bands = curve.points.map((p, i) => {
      const part = shareOf(p, share);
      const side = part >= 0 ? up : down;
      const from = side[i]!;
      side[i] = from + part;
      return { p, from, to: from + part };
    });
    const path = area<(typeof bands)[number]>()
      .x((b) => across(b.p))
      .y0((b) => tenth(y.scale(b.from)))
      .y1((b) => tenth(y.scale(b.to)))(bands);
    return { share, path: path ?? '' };
  });
}

function wanted(
  curve: SystemCurve,
  { overlayName, nameOf }: CurveInput,
  points: readonly PointMark[],
  lines: readonly (readonly Point[])[],
  plot: PlotBox,
) {
  const on = (points: readonly Point[], share: number): Point | null => {
    const seen = points.filter((p) => p.y >= plot.top && p.y <= plot.bottom);
    return seen[Math.round((seen.length - 1) * share)] ?? null;
  };
  const label = (id: string, text: string, at: Point | null) =>
    at ? [{ id, text, at, onlyFree: true }] : [];
  return [
    ...points.map((mark, i) => ({
      id: `point-${i}`,
      text: `${mark.overlay ? `${overlayName} ` : ''}${mark.stable ? 'runs here' : 'unstable'}`,
      at: { x: mark.x, y: mark.y },
    })),
    ...label('fan', nameOf(curve.fan), on(lines[1]!, 0.12)),
    ...label('system', `system, ${curve.setting}`, on(lines[0]!, 0.6)),
  ];
}

/** What the curves say at one flow. */
export interface CurveReading {
  readonly flow_m3s: number;
  readonly demand_Pa: number;
  readonly fanTotal_Pa: number | null;
  readonly fanStatic_Pa: number | null;
  readonly shares: readonly { readonly share: Share; readonly loss_Pa: number }[];
}

/** Reads the curves at a flow between their points; null outside them. */
export function readCurve(curve: SystemCurve, flow_m3s: number): CurveReading | null {
  const { points } = curve;
  const i = points.findIndex((p) => p.flow_m3s >= flow_m3s);
  if (i < 0) return null;
  const b = points[i]!;
  const a = points[i - 1] ?? b;
  if (i === 0 && flow_m3s < b.flow_m3s) return null;
  const t = b.flow_m3s > a.flow_m3s ? (flow_m3s - a.flow_m3s) / (b.flow_m3s - a.flow_m3s) : 0;
  // losses go nearly with the square of flow, and so between two points they are read on that
  const square = (flow: number) => flow * flow;
  const span = square(b.flow_m3s) - square(a.flow_m3s);
  const t2 = span > 0 ? (square(flow_m3s) - square(a.flow_m3s)) / span : 0;
  const asked = (from: number, to: number) => from + t2 * (to - from);
  const given = (from: number | null, to: number | null) =>
    from === null || to === null ? null : from + t * (to - from);
  return {
    flow_m3s,
    demand_Pa: asked(a.demand_Pa, b.demand_Pa),
    fanTotal_Pa: given(a.fanTotal_Pa, b.fanTotal_Pa),
    fanStatic_Pa: given(a.fanStatic_Pa, b.fanStatic_Pa),
    shares: sharesIn(curve).map((share) => ({ share, loss_Pa: asked(shareOf(a, share), shareOf(b, share)) })),
  };
}

/** The point at which the fan runs: the first that is stable. */
export const runningPoint = (curve: SystemCurve): OperatingPoint | null =>
  curve.operatingPoints.find((p) => p.stable) ?? curve.operatingPoints[0] ?? null;

function sentence(curve: SystemCurve, { units, nameOf }: CurveInput): string {
  const at = runningPoint(curve);
  if (at === null) return `Setting "${curve.setting}", ${nameOf(curve.fan)}: fan and system do not meet.`;
  const flow = printQuantity(at.flow_m3s, 'flow', units);
  const pressure = printQuantity(at.totalPressure_Pa, 'pressure', units);
  const largest = [...(readCurve(curve, at.flow_m3s)?.shares ?? [])]
    .sort((a, b) => b.loss_Pa - a.loss_Pa)
    .slice(0, 2)
    .map(({ share, loss_Pa }) => `${SHARE_WORDS[share]} ${printQuantity(loss_Pa, 'pressure', units)}`);
  const others = curve.operatingPoints.length - 1;
  return [
    `Setting "${curve.setting}", ${nameOf(curve.fan)}: fan and system meet at ${flow} and ${pressure}, ${at.stable ? 'stable' : 'unstable'}.`,
    ...(others > 0 ? [`It could also run at ${others} other ${others > 1 ? 'points' : 'point'}.`] : []),
    ...(largest.length > 0 ? [`Most of that goes to ${largest.join(' and ')}.`] : []),
  ].join(' ');
}
