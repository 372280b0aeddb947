import type { ShopDocument } from '../document/schema.ts';
import { benchFan } from '../fan-bench/bench.ts';
import type { BenchCurve } from '../fan-bench/result.ts';
import { fanCurve } from '../fan/fan-curve.ts';
import type { FanCurve } from '../fan/fan-curve.ts';
import type { CompiledShop } from '../network/compile.ts';
import type { FanResult } from '../network/solution.ts';

/** How the curve of one fan in the shop may lie. */
export interface FanSpread {
  /** Id of the fan thing. */
  readonly fan: string;
  readonly element: number;
  /** Curves to draw from, each as likely as the other, the lowest first; null where a share of the pressure is drawn. */
  readonly curves: readonly SpreadCurve[] | null;
}

/** One curve of a band, and how far its pressure lies over the nominal one at the flow as drawn [-]. */
export interface SpreadCurve {
  readonly curve: FanCurve;
  readonly over: number;
}

/** Whole curves drawn for a fan with tests. */
const CURVES = 400;
/** Benches kept, since a worker gets each document as a copy and identity tells nothing there. */
const KEPT = 8;
const benches = new Map<string, BenchCurve | null>();

/** The bench's curve of a design, from the last time where nothing that it rests on has changed. */
function benchCurve(document: ShopDocument, id: string, seed: number): BenchCurve | null {
  const design = document.fans.find((fan) => fan.id === id);
  if (design === undefined) return null;
  const key = JSON.stringify([design, document.air, seed]);
  let curve = benches.get(key);
  if (curve === undefined) {
    curve = benchFan(document, id, { samples: CURVES, seed }).curve;
    if (benches.size >= KEPT) benches.delete(benches.keys().next().value!);
    benches.set(key, curve);
  }
  return curve;
}

/**
 * How the curves of a shop's fans may lie: by their tests where they have any, else by a share of the pressure.
 *
 * @param nominal - what each fan does as drawn, in the order of the shop's
 */
export function fanSpreads(shop: CompiledShop, nominal: readonly FanResult[], seed: number): FanSpread[] {
  return shop.fans.map(({ thing, element }, i) => {
    const bench = thing.design === undefined ? null : benchCurve(shop.document, thing.design, seed);
    const { curve } = shop.packed.net.elements[element]!.fan!;
    const { flow_m3s, speed_rpm } = nominal[i]!;
    const rated = curve.input.ratedSpeed_rpm;
    const speedRatio = rated === null || speed_rpm === null ? 1 : speed_rpm / rated;
    const curves =
      bench === null || bench.samples.length < 2 ? null : spreadCurves(curve, bench, flow_m3s / speedRatio);
    return { fan: thing.id, element, curves };
  });
}

/**
 * The band's curves, brought to the speed and density of the shop's curve as differences from the middle of the band.
 *
 * @param flow_m3s - flow as drawn, brought to the speed of the shop's curve
 */
export function spreadCurves(nominal: FanCurve, bench: BenchCurve, flow_m3s: number): SpreadCurve[] {
  const { input } = nominal;
  const speed =
    bench.speed_rpm !== null && input.ratedSpeed_rpm !== null ? input.ratedSpeed_rpm / bench.speed_rpm : 1;
  const pressure = (speed * speed * input.ratedDensity_kgm3) / bench.density_kgm3;
  const flows = bench.points.map((point) => point.flow_m3s * speed);
  const curves = bench.samples.map((sample): SpreadCurve => {
    const off = sample.staticPressure_Pa.map((p, i) => (p - bench.points[i]!.staticPressure_Pa) * pressure);
    const points = input.points.map((point) => ({
      ...point,
      pressure_Pa: point.pressure_Pa + between(flows, off, point.flow_m3s),
    }));
    return { curve: fanCurve({ ...input, points }), over: between(flows, off, flow_m3s) };
  });
  const scale = Math.max(...input.points.map((point) => Math.abs(point.pressure_Pa)), 1e-9);
  return curves.map(({ curve, over }) => ({ curve, over: over / scale })).sort((a, b) => a.over - b.over);
}

/** Straight-line interpolation, held at the ends. */
function between(xs: readonly number[], ys: readonly number[], x: number): number {
  let i = 0;
  while (i + 2 < xs.length && xs[i + 1]! < x) i++;
  const [x0, x1] = [xs[i]!, xs[i + 1] ?? xs[i]!];
  const [y0, y1] = [ys[i]!, ys[i + 1] ?? ys[i]!];
  const t = x1 > x0 ? Math.min(1, Math.max(0, (x - x0) / (x1 - x0))) : 0;
  return y0 + t * (y1 - y0);
}
