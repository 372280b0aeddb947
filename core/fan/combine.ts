import { ImpossibleInput } from '../quantities/impossible-input.ts';
import { fanTotalPressure } from './fan-curve.ts';
import { fallingFrom } from './curve-shape.ts';
import type { FanCurve } from './fan-points.ts';

/** A fan as it runs: its curve, the density of its air, its speed. */
export interface RunningFan {
  readonly curve: FanCurve;
  /** Density of the air in the fan [kg/m3]. */
  readonly density_kgm3: number;
  /** Speed over the speed at which the points hold [-]. */
  readonly speedRatio: number;
}

/** A sampled curve of total pressure over flow, flow rising. */
export interface CombinedCurve {
  /** Volume flow [m3/s]. */
  readonly flow_m3s: readonly number[];
  /** Rise of total pressure [Pa]. */
  readonly pressure_Pa: readonly number[];
}

const out = new Float64Array(3);

function pressureAt(fan: RunningFan, flow_m3s: number): number {
  fanTotalPressure(fan.curve, { flow_m3s, density_kgm3: fan.density_kgm3, speedRatio: fan.speedRatio }, out);
  return out[0]!;
}

function requireSamples(fans: readonly RunningFan[], samples: number): void {
  if (fans.length === 0) throw new ImpossibleInput('fans', 'an empty list', 'at least one fan');
  if (!Number.isInteger(samples) || samples < 2)
    throw new ImpossibleInput('samples', samples, 'a whole number above one');
}

/**
 * Curve of fans that stand one behind the other: the same flow through each, their pressures added.
 *
 * `p(Q) = p1(Q) + p2(Q) + ...`, sampled evenly over the flows that all fans have points for. For display and as a check
 * on the network, which knows what each fan really sees.
 *
 * @param fans - at least one
 * @param samples - number of points of the result [-], at least two
 * @returns sampled curve
 * @throws ImpossibleInput naming `fans` (none, or no flow that all of them cover) or `samples`
 *
 * @remarks
 * Range: flows among the points of every fan; it ends where the smallest fan's points end.
 * Outside: nothing is returned there: past its free delivery the smaller fan is a resistance.
 * Leaves out: compression by the first fan (the second sees less volume), swirl from one wheel into the next.
 * Limits: one fan gives its own curve; two equal fans give twice the pressure at the same flow.
 * Basis: from-memory (page not seen; energy added twice to the same air).
 * Source: AMCA 201, fans in series.
 * Checked: test/reference/fan.test.ts, test/core/fan/combine.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ flow_m3s: 0, pressure_Pa: 2000 }, { flow_m3s: 0.1, pressure_Pa: 1000 }];
 * const rated = { ratedSpeed_rpm: null, ratedDensity_kgm3: 1.2 };
 * const curve = fanCurve({ pressureKind: 'total', outletArea_m2: 0.01, points, ...rated });
 * const fan = { curve, density_kgm3: 1.2, speedRatio: 1 };
 * fansInSeries([fan, fan], 3).pressure_Pa[1]; // 3000
 * ```
 */
export function fansInSeries(fans: readonly RunningFan[], samples: number): CombinedCurve {
  requireSamples(fans, samples);
  const low = Math.max(...fans.map((fan) => fan.speedRatio * fan.curve.pressure.x[0]!));
  const high = Math.min(...fans.map((fan) => fan.speedRatio * fan.curve.pressure.x.at(-1)!));
  if (!(high > low)) throw new ImpossibleInput('fans', `${low} to ${high} m3/s`, 'fans whose flows overlap');
  const flow_m3s = evenly(low, high, samples);
  const pressure_Pa = flow_m3s.map((flow) => fans.reduce((sum, fan) => sum + pressureAt(fan, flow), 0));
  return { flow_m3s, pressure_Pa };
}

/**
 * Curve of fans that stand side by side: the same pressure over each, their flows added.
 *
 * `Q(p) = Q1(p) + Q2(p) + ...`, each flow read on the falling part of its fan's curve by bisection, sampled evenly in
 * pressure. For display and as a check on the network, which knows what each fan really sees.
 *
 * @param fans - at least one
 * @param samples - number of points of the result [-], at least two
 * @returns sampled curve, flow rising
 * @throws ImpossibleInput naming `fans` (none, or no pressure that all of them reach) or `samples`
 *
 * @remarks
 * Range: pressures that every fan reaches on the falling part of its curve.
 * Outside: nothing is returned there: above it the weaker fan would be blown backwards.
 * Leaves out: the part left of a stall hump, where one pressure has two flows and the fans may hunt against each other.
 * Limits: one fan gives its own falling part; two equal fans give twice the flow at the same pressure.
 * Basis: from-memory (page not seen; continuity).
 * Source: AMCA 201, fans in parallel.
 * Checked: test/reference/fan.test.ts, test/core/fan/combine.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ flow_m3s: 0, pressure_Pa: 2000 }, { flow_m3s: 0.1, pressure_Pa: 1000 }];
 * const rated = { ratedSpeed_rpm: null, ratedDensity_kgm3: 1.2 };
 * const curve = fanCurve({ pressureKind: 'total', outletArea_m2: 0.01, points, ...rated });
 * const fan = { curve, density_kgm3: 1.2, speedRatio: 1 };
 * fansInParallel([fan, fan], 3).flow_m3s[1]; // 0.1
 * ```
 */
export function fansInParallel(fans: readonly RunningFan[], samples: number): CombinedCurve {
  requireSamples(fans, samples);
  const branches = fans.map((fan) => {
    const first = fan.speedRatio * fallingFrom(fan.curve);
    const last = fan.speedRatio * fan.curve.pressure.x.at(-1)!;
    return { fan, first, last, peak: pressureAt(fan, first), end: pressureAt(fan, last) };
  });
  const high = Math.min(...branches.map((branch) => branch.peak));
  const low = Math.max(...branches.map((branch) => branch.end));
  if (!(high > low))
    throw new ImpossibleInput('fans', `${low} to ${high} Pa`, 'fans whose pressures overlap');
  const pressure_Pa = evenly(low, high, samples).reverse();
  const flow_m3s = pressure_Pa.map((pressure) =>
    branches.reduce((sum, { fan, first, last }) => sum + flowAt(fan, pressure, first, last), 0),
  );
  return { flow_m3s, pressure_Pa };
}

/** Flow at which a falling branch passes a pressure; halves until the bounds meet. */
function flowAt(fan: RunningFan, pressure: number, first: number, last: number): number {
  let [low, high] = [first, last];
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (pressureAt(fan, middle) >= pressure) low = middle;
    else high = middle;
  }
}

function evenly(low: number, high: number, samples: number): number[] {
  return Array.from({ length: samples }, (_, i) => low + ((high - low) * i) / (samples - 1));
}
