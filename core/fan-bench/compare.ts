import type { ShopDocument } from '../document/schema.ts';
import { fanCurve } from '../fan/fan-curve.ts';
import { scaleFan } from '../fan/scale-fan.ts';
import { benchFan } from './bench.ts';
import { fanInShop, placeOfDesign } from './in-shop.ts';
import type { FanInShop } from './in-shop.ts';
import type { BenchCurve, BenchCurvePoint, FanBenchResult } from './result.ts';

/** Fans of the list side by side. Plain data in SI; what does not apply is null. */
export interface Comparison {
  readonly setting: string;
  readonly fans: readonly ComparedFan[];
  /** Input power at which `equalPower` is drawn: the least that any fan takes at its best point [W]. */
  readonly power_W: number | null;
}

export interface ComparedFan {
  readonly id: string;
  readonly name: string;
  readonly curve: BenchCurve | null;
  /** Static pressure of the curve without flow [Pa]. */
  readonly lift_Pa: number | null;
  /** Sealed readings: what they lifted and what they took for it. */
  readonly lifts: readonly LiftPoint[];
  /** Point of the curve with the greatest efficiency. */
  readonly best: BenchCurvePoint | null;
  /** The curve at the speed at which its best point takes `power_W`, by the affinity laws. */
  readonly equalPower: EqualPower | null;
  readonly inShop: FanInShop | null;
}

export interface LiftPoint {
  readonly lift_Pa: number;
  readonly power_W: number | null;
  readonly current_A: number | null;
}

export interface EqualPower {
  readonly speedRatio: number;
  readonly points: readonly { readonly flow_m3s: number; readonly staticPressure_Pa: number }[];
}

/** Whole curves drawn for a band in a comparison. */
const SAMPLES = 200;

/** Compares every fan of the list, each in the place of the same fan of the plan where it does not stand there. */
export function compareFans(document: ShopDocument, setting: string, solvable: boolean): Comparison {
  const fans = document.fans.map(({ id }) => {
    const bench = benchFan(document, id, { samples: SAMPLES });
    const thing = placeOfDesign(document, id);
    const inShop =
      thing !== null && solvable && bench.curve !== null
        ? fanInShop({ document, design: id, thing, setting, curve: bench.curve }).result
        : null;
    return { bench, inShop, best: bestPoint(bench.curve) };
  });
  const powers = fans.flatMap(({ best }) => (best?.power_W ? [best.power_W] : []));
  const power_W = powers.length > 1 ? Math.min(...powers) : null;
  return {
    setting,
    power_W,
    fans: fans.map(({ bench, inShop, best }) => ({
      id: bench.id,
      name: bench.name,
      curve: bench.curve,
      lift_Pa: bench.curve?.points[0]?.staticPressure_Pa ?? null,
      lifts: liftsOf(document, bench),
      best,
      equalPower: power_W === null ? null : atPower(bench.curve, best, power_W),
      inShop,
    })),
  };
}

function bestPoint(curve: BenchCurve | null): BenchCurvePoint | null {
  let best: BenchCurvePoint | null = null;
  for (const point of curve?.points ?? []) {
    if (point.efficiency !== null && point.efficiency > (best?.efficiency ?? 0)) best = point;
  }
  return best;
}

/** The sealed readings that can be used; their current is what was typed. */
function liftsOf(document: ShopDocument, bench: FanBenchResult): LiftPoint[] {
  const design = document.fans.find(({ id }) => id === bench.id);
  return bench.readings.flatMap((reading): LiftPoint[] => {
    if (!reading.kind.startsWith('sealed') || !reading.used || reading.staticPressure_Pa === null) return [];
    const typed = design?.readings.find(({ id }) => id === reading.id);
    return [
      {
        lift_Pa: reading.staticPressure_Pa.value,
        power_W: reading.inputPower_W?.value ?? null,
        current_A: typed?.current?.si ?? null,
      },
    ];
  });
}

function atPower(curve: BenchCurve | null, best: BenchCurvePoint | null, power_W: number): EqualPower | null {
  if (curve === null || !best?.power_W) return null;
  // power goes with the cube of speed
  const speedRatio = Math.cbrt(power_W / best.power_W);
  const fan = fanCurve({
    pressureKind: 'static',
    outletArea_m2: curve.outletArea_m2,
    points: curve.points.map(({ flow_m3s, staticPressure_Pa }) => ({
      flow_m3s,
      pressure_Pa: staticPressure_Pa,
    })),
    ratedSpeed_rpm: curve.speed_rpm,
    ratedDensity_kgm3: curve.density_kgm3,
  });
  const { input } = scaleFan(fan, { speedRatio, diameterRatio: 1, densityRatio: 1 });
  return {
    speedRatio,
    points: input.points.map(({ flow_m3s, pressure_Pa }) => ({ flow_m3s, staticPressure_Pa: pressure_Pa })),
  };
}
