import type { FanPoint } from '../../core/chance/chance.ts';
import type { FanInShop } from '../../core/fan-bench/in-shop.ts';
import type { BenchPicture, PicturedReading } from '../../core/fan-bench/picture.ts';
import type { BenchCurve, BenchCurvePoint, Estimate } from '../../core/fan-bench/result.ts';
import type { Dimension, UnitSystem } from '../../core/quantities/dimensions.ts';
import { printQuantity } from '../../core/quantities/print.ts';
import { placeLabels } from '../../core/summary/figures/charts/labels.ts';
import type { Label } from '../../core/summary/figures/charts/labels.ts';
import { bandPath, layPlot, linePath, pixel, readAt } from './plot.ts';
import type { Place, Plot } from './plot.ts';

/** Errors are drawn as they are typed: nineteen times in twenty. */
const NINETEEN_IN_TWENTY = 2;

export interface CurvePicture extends Plot {
  readonly band: string;
  readonly curve: string;
  readonly demand: string;
  /** The fan's curve with its own motor, where that turns it at another speed. */
  readonly driven: string;
  readonly readings: readonly ReadingMark[];
  readonly at: { readonly x: number; readonly y: number } | null;
  readonly atBand: {
    readonly x1: number;
    readonly y1: number;
    readonly x2: number;
    readonly y2: number;
  } | null;
  /** Where it may run, by all that may be off. */
  readonly cloud: readonly { readonly x: number; readonly y: number }[];
  readonly labels: readonly Label[];
}

export interface ReadingMark {
  readonly id: string;
  readonly used: boolean;
  readonly x: number;
  readonly y: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface PictureInput {
  readonly width: number;
  readonly height: number;
  readonly units: UnitSystem;
  readonly curve: BenchCurve;
  readonly picture: BenchPicture | null;
  /** Null as coefficients, which no shop has. */
  readonly shop: FanInShop | null;
  readonly cloud: readonly FanPoint[];
  readonly coefficients: boolean;
}

/** What an axis is divided by, and what it then shows. */
export function sizesOf({ picture, coefficients }: Pick<PictureInput, 'picture' | 'coefficients'>): {
  readonly flow: number;
  readonly pressure: number;
  readonly flowDimension: Dimension;
  readonly pressureDimension: Dimension;
} {
  const scales = coefficients ? picture?.scales : null;
  return scales
    ? {
        flow: scales.flow_m3s,
        pressure: scales.pressure_Pa,
        flowDimension: 'coefficient',
        pressureDimension: 'coefficient',
      }
    : { flow: 1, pressure: 1, flowDimension: 'flow', pressureDimension: 'pressure' };
}

/** Lays the curve with its band, the readings, and what the shop asks. */
export function layCurvePicture(input: PictureInput): CurvePicture {
  const { curve, shop, units, picture, coefficients } = input;
  const size = sizesOf(input);
  const readings = picture?.readings ?? [];
  const last = curve.points.at(-1)?.flow_m3s ?? 0;
  const flows = [last, ...readings.map(({ flow_m3s }) => high(flow_m3s)), shop?.at?.flow_m3s ?? 0];
  const pressures = [
    ...curve.points.map(({ high_Pa }) => high_Pa),
    ...readings.map(({ staticPressure_Pa }) => high(staticPressure_Pa)),
    shop?.at?.staticPressure_Pa ?? 0,
  ];
  const lows = readings.map(({ staticPressure_Pa }) => staticPressure_Pa.value);
  const frame = layPlot({
    width: input.width,
    height: input.height,
    units,
    x: {
      dimension: size.flowDimension,
      title: coefficients ? 'flow coefficient' : 'flow through the fan',
      high: (Math.max(...flows) / size.flow) * 1.03,
    },
    y: {
      dimension: size.pressureDimension,
      title: coefficients ? 'pressure coefficient' : 'fan static pressure',
      low: Math.min(0, ...lows) / size.pressure,
      high: (Math.max(...pressures) / size.pressure) * 1.06,
    },
  });
  const place = (flow: number, pressure: number): Place => [flow / size.flow, pressure / size.pressure];
  const demand = (shop?.points ?? []).map((p) => place(p.flow_m3s, p.demand_Pa));
  const driven = isDriven(shop, curve)
    ? shop!.points.flatMap((p) => (p.given_Pa === null ? [] : [place(p.flow_m3s, p.given_Pa)]))
    : [];
  const main = curve.points.map((p) => place(p.flow_m3s, p.staticPressure_Pa));
  const at = shop?.at ? place(shop.at.flow_m3s, shop.at.staticPressure_Pa) : null;
  const band = shop?.band ?? null;
  const ends = band && [
    pixel(frame, place(band.low.flow_m3s, band.low.pressure_Pa)),
    pixel(frame, place(band.high.flow_m3s, band.high.pressure_Pa)),
  ];
  return {
    ...frame,
    band: bandPath(
      frame,
      curve.points.map((p) => [p.flow_m3s / size.flow, p.low_Pa / size.pressure, p.high_Pa / size.pressure]),
    ),
    curve: linePath(frame, main),
    demand: linePath(frame, demand),
    driven: linePath(frame, driven),
    readings: readings.map((reading) => markOf(frame, reading, size)),
    at: at && pixel(frame, at),
    atBand: ends && { x1: ends[0]!.x, y1: ends[0]!.y, x2: ends[1]!.x, y2: ends[1]!.y },
    cloud: input.cloud.map((p) => pixel(frame, place(p.flow_m3s, p.staticPressure_Pa))),
    labels: labelsOf(frame, { main, demand, driven, at }),
  };
}

const high = ({ value, error }: Estimate): number => value + NINETEEN_IN_TWENTY * error;

/** Speeds nearer than this share of each other draw one line over the other. */
const SAME_SPEED = 0.005;

function isDriven(shop: FanInShop | null, curve: BenchCurve): boolean {
  const speed = shop?.at?.speed_rpm ?? null;
  if (speed === null || curve.speed_rpm === null) return false;
  return Math.abs(speed / curve.speed_rpm - 1) > SAME_SPEED;
}

function markOf(
  frame: Plot,
  reading: PicturedReading,
  size: { flow: number; pressure: number },
): ReadingMark {
  const { flow_m3s: flow, staticPressure_Pa: pressure, id, used } = reading;
  const at = (side: number): Place => [
    (flow.value + side * NINETEEN_IN_TWENTY * flow.error) / size.flow,
    (pressure.value + side * NINETEEN_IN_TWENTY * pressure.error) / size.pressure,
  ];
  const [low, middle, top] = [pixel(frame, at(-1)), pixel(frame, at(0)), pixel(frame, at(1))];
  return { id, used, x: middle.x, y: middle.y, left: low.x, right: top.x, top: top.y, bottom: low.y };
}

function labelsOf(
  frame: Plot,
  { main, demand, driven, at }: Record<'main' | 'demand' | 'driven', readonly Place[]> & { at: Place | null },
): Label[] {
  const { plot } = frame;
  const lines = [main, demand, driven].map((places) => places.map((p) => pixel(frame, p)));
  const on = (i: number, share: number, text: string) => {
    const seen = lines[i]!.filter((p) => p.y >= plot.top && p.y <= plot.bottom && p.x <= plot.right);
    const point = seen[Math.round((seen.length - 1) * share)];
    return point ? [{ id: text, text, at: point, onlyFree: true }] : [];
  };
  return placeLabels(
    [
      ...(at ? [{ id: 'at', text: 'runs here', at: pixel(frame, at) }] : []),
      ...on(0, 0.25, 'this fan'),
      ...on(1, 0.75, 'what the shop asks'),
      ...on(2, 0.4, 'on its motor'),
    ],
    { lines, plot },
  );
}

/** What the curve says at one flow. */
export interface CurveReadout {
  readonly flow_m3s: number;
  readonly static_Pa: number | null;
  readonly low_Pa: number | null;
  readonly high_Pa: number | null;
  readonly total_Pa: number | null;
  readonly power_W: number | null;
  readonly efficiency: number | null;
  readonly demand_Pa: number | null;
}

export function readCurve(curve: BenchCurve, shop: FanInShop | null, flow_m3s: number): CurveReadout {
  const of = (value: (point: BenchCurvePoint) => number | null): number | null =>
    readAt(
      curve.points.flatMap((point): Place[] => {
        const y = value(point);
        return y === null ? [] : [[point.flow_m3s, y]];
      }),
      flow_m3s,
    );
  return {
    flow_m3s,
    static_Pa: of((p) => p.staticPressure_Pa),
    low_Pa: of((p) => p.low_Pa),
    high_Pa: of((p) => p.high_Pa),
    total_Pa: of((p) => p.totalPressure_Pa),
    power_W: of((p) => p.power_W),
    efficiency: of((p) => p.efficiency),
    demand_Pa: readAt(
      (shop?.points ?? []).map((p): Place => [p.flow_m3s, p.demand_Pa]),
      flow_m3s,
    ),
  };
}

/** The read-out in words, for the line beneath the picture and for the ear. */
export function readoutText(read: CurveReadout, units: UnitSystem): string {
  const say = (value: number | null, dimension: Dimension) => printQuantity(value, dimension, units);
  const parts = [
    `at ${say(read.flow_m3s, 'flow')}: fan static ${say(read.static_Pa, 'pressure')}`,
    `band ${say(read.low_Pa, 'pressure')} to ${say(read.high_Pa, 'pressure')}`,
    `total ${say(read.total_Pa, 'pressure')}`,
    ...(read.power_W === null ? [] : [`power ${say(read.power_W, 'power')}`]),
    ...(read.efficiency === null ? [] : [`efficiency ${say(read.efficiency, 'fraction')}`]),
    ...(read.demand_Pa === null ? [] : [`the shop asks ${say(read.demand_Pa, 'pressure')}`]),
  ];
  return parts.join(', ');
}
