import type { ShopDocument } from '../document/schema.ts';
import type { FanResult } from '../network/solution.ts';
import { openShop, solveSetting } from '../network/solve.ts';
import type { Workbench } from '../network/solve.ts';
import { systemCurve } from '../network/system-curve.ts';
import type { SystemCurve } from '../network/system-curve.ts';
import type { BenchCurve } from './result.ts';

/** A fan of the list as it runs, or would run, in the shop. Plain data in SI; what does not apply is null. */
export interface FanInShop {
  readonly design: string;
  /** Fan of the plan that it stands for. */
  readonly thing: string;
  readonly setting: string;
  /** What the shop asks and what the fan gives with its motor, as fan static pressure, over the flow through the fan. */
  readonly points: readonly ShopPoint[];
  /** Where it runs; null where it does not. */
  readonly at: FanResult | null;
  /** Flows between which it runs nine times in ten, from the band of its curve alone. */
  readonly band: ShopBand | null;
  /** Runs that something is asked of, and how many of them hold. */
  readonly asked: number;
  readonly held: number;
  /** Why there is no operating point, in words. */
  readonly reason: string | null;
}

export interface ShopPoint {
  readonly flow_m3s: number;
  readonly demand_Pa: number;
  /** Null beyond its curve. */
  readonly given_Pa: number | null;
}

export interface ShopBand {
  readonly low: { readonly flow_m3s: number; readonly pressure_Pa: number };
  readonly high: { readonly flow_m3s: number; readonly pressure_Pa: number };
}

/** The fan of the plan that a fan of the list stands for, or would: the one chosen, else the first. */
export function placeOfDesign(document: ShopDocument, design: string): string | null {
  const fans = document.things.flatMap((thing) => (thing.kind === 'fan' ? [thing] : []));
  return (fans.find((fan) => fan.design === design) ?? fans[0])?.id ?? null;
}

/** The same shop with a fan of the list in the place of one of the plan. */
export const withDesign = (document: ShopDocument, thing: string, design: string): ShopDocument => ({
  ...document,
  things: document.things.map((one) =>
    one.id === thing && one.kind === 'fan' && one.design !== design ? { ...one, design } : one,
  ),
});

export interface InShopInput {
  readonly document: ShopDocument;
  readonly design: string;
  readonly thing: string;
  readonly setting: string;
  /** Its curve with samples; without them there is no band. */
  readonly curve: BenchCurve | null;
  /** The shop with this fan as it was opened before, so that it starts warm. */
  readonly before?: Workbench | null;
}

/** Puts a fan of the list into the shop and solves one setting; the document given stays as it is. */
export function fanInShop(input: InShopInput): {
  readonly result: FanInShop;
  readonly bench: Workbench | null;
} {
  const { document, design, thing, setting, curve, before = null } = input;
  const none = { design, thing, setting, points: [], at: null, band: null, asked: 0, held: 0 };
  const opened = openShop(withDesign(document, thing, design), before);
  if (!opened.ok) {
    const [first] = opened.problems;
    return { result: { ...none, reason: first?.message ?? 'the shop cannot be solved' }, bench: null };
  }
  const { bench } = opened;
  const solved = solveSetting(bench, setting);
  const system = systemCurve(bench, setting, thing);
  const points = staticPoints(system);
  const at = solved.converged ? (solved.fans.find((fan) => fan.id === thing) ?? null) : null;
  const judged = solved.runs.filter(({ holds }) => holds !== null);
  return {
    bench,
    result: {
      ...none,
      points,
      at,
      band: curve === null ? null : bandOf(points, curve),
      asked: judged.length,
      held: judged.filter(({ holds }) => holds === true).length,
      reason: at === null ? (solved.reasonText ?? system.reason ?? 'fan and shop do not meet') : null,
    },
  };
}

/** A system curve in terms of fan static pressure: total less the velocity pressure at the outlet, on both sides. */
function staticPoints({ points }: SystemCurve): ShopPoint[] {
  return points.flatMap(({ flow_m3s, demand_Pa, fanTotal_Pa, fanStatic_Pa }) =>
    fanTotal_Pa === null || fanStatic_Pa === null
      ? []
      : [{ flow_m3s, demand_Pa: demand_Pa - (fanTotal_Pa - fanStatic_Pa), given_Pa: fanStatic_Pa }],
  );
}

/** Shares of the samples below and above the band, as of the curve itself. */
const TAIL = 0.05;
/** With fewer crossings a quantile of one in twenty means nothing. */
const LEAST_SAMPLES = 40;

/**
 * Each sampled curve, as a share of the curve that it was drawn round, is laid over what the fan gives in the shop, whose
 * speed its motor sets; the flows at which these meet the demand are the band. Null where the samples seldom meet it.
 */
function bandOf(points: readonly ShopPoint[], curve: BenchCurve): ShopBand | null {
  const flows = curve.points.map((point) => point.flow_m3s);
  const crossings: { flow_m3s: number; pressure_Pa: number }[] = [];
  for (const { staticPressure_Pa } of curve.samples) {
    const shares = curve.points.map((point, i) =>
      point.staticPressure_Pa > 0 ? staticPressure_Pa[i]! / point.staticPressure_Pa : 1,
    );
    const found = firstCrossing(points, (flow) => interpolate(flows, shares, flow));
    if (found) crossings.push(found);
  }
  if (crossings.length < Math.max(LEAST_SAMPLES, curve.samples.length / 2)) return null;
  crossings.sort((a, b) => a.flow_m3s - b.flow_m3s);
  const last = crossings.length - 1;
  return { low: crossings[Math.round(TAIL * last)]!, high: crossings[Math.round((1 - TAIL) * last)]! };
}

function firstCrossing(points: readonly ShopPoint[], share: (flow_m3s: number) => number) {
  let before: { flow: number; more: number; demand: number } | null = null;
  for (const { flow_m3s: flow, demand_Pa: demand, given_Pa } of points) {
    if (given_Pa === null) continue;
    const more = given_Pa * share(flow) - demand;
    if (before !== null && before.more > 0 && more <= 0) {
      const t = before.more / (before.more - more);
      return {
        flow_m3s: before.flow + t * (flow - before.flow),
        pressure_Pa: before.demand + t * (demand - before.demand),
      };
    }
    before = { flow, more, demand };
  }
  return null;
}

/** Between rows in a straight line, beyond them the end. */
function interpolate(xs: readonly number[], ys: readonly number[], x: number): number {
  const i = xs.findIndex((one) => one >= x);
  if (i < 0) return ys.at(-1) ?? 1;
  if (i === 0) return ys[0] ?? 1;
  const t = (x - xs[i - 1]!) / (xs[i]! - xs[i - 1]!);
  return ys[i - 1]! + t * (ys[i]! - ys[i - 1]!);
}
