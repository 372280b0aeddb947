import { ImpossibleInput, requireFinite } from '../quantities/impossible-input.ts';
import { brentRoot, leastBetween } from './root.ts';

/** Two curves over a span of flow. */
export interface CrossingInput {
  /** Pressure that the fan gives, a continuous function of flow [Pa over m3/s]. */
  readonly fan: (flow_m3s: number) => number;
  /** Pressure that the system takes, a continuous function of flow [Pa over m3/s]. */
  readonly system: (flow_m3s: number) => number;
  /** Lowest flow searched [m3/s]. */
  readonly low: number;
  /** Highest flow searched [m3/s]. */
  readonly high: number;
  /** Number of equal steps in which the span is searched [-]. */
  readonly samples: number;
}

/** A flow at which a fan gives what the system takes. */
export interface Crossing {
  /** Volume flow [m3/s]. */
  readonly flow_m3s: number;
  /** Pressure of the fan there [Pa]. */
  readonly pressure_Pa: number;
  /** Slope of the fan's curve [Pa s/m3]. */
  readonly fanSlope: number;
  /** Slope of the system's curve [Pa s/m3]. */
  readonly systemSlope: number;
  /** A small disturbance dies away: the fan's curve falls against the system's. Never true at a touch. */
  readonly stable: boolean;
  /** The curves touch and part again: the least change of either removes the point or splits it in two. */
  readonly touch: boolean;
}

/** A gap below this share of the pressures there is a touch: rounding of the two curves. */
const TOUCH = 1e-9;

/** Half the step of the central difference, as a share of the span of flow. */
const DIFFERENCE = 1e-6;

/**
 * Every flow at which a fan's curve meets a system's curve, each with its stability.
 *
 * The difference fan less system is sampled in equal steps. A change of sign is closed in on by Brent's method; where
 * the difference dips towards zero without changing sign, its extreme is sought, which finds a touch or a close pair of
 * crossings. A crossing is stable where `d fan/dQ < d system/dQ`: more flow then meets more resistance than drive.
 *
 * @param input - the two curves, the span of flow and the number of steps
 * @returns crossings by rising flow; empty if the curves do not meet. Curves that coincide over a stretch are reported
 *   at the stretch's first sample, as a touch
 * @throws ImpossibleInput naming the field: a bound not finite, `high` not above `low`, `samples` not a whole number
 *   above one, or a curve that is not finite at some flow
 *
 * @remarks
 * Range: continuous curves; features wider than a step. With 200 steps nothing of a smooth fan curve is missed.
 * Outside: a pair of crossings that lies within one step and whose dip does not show in the samples may be missed.
 * Leaves out: dynamics: surge needs stored air as well as a rising curve, so `stable` is the static criterion only.
 * Limits: a falling fan curve against a rising system curve has exactly one crossing, stable.
 * Basis: from-memory (page not seen; static stability criterion).
 * Source: Brent, Algorithms for Minimization without Derivatives, 1973; AMCA 201 on stall and hunting.
 * Checked: test/reference/fan.test.ts, test/core/fan/intersections.test.ts.
 *
 * @example
 * ```ts
 * const curves = { fan: (q: number) => 2000 - 1e5 * q * q, system: (q: number) => 1e5 * q * q };
 * curveIntersections({ ...curves, low: 0, high: 0.15, samples: 20 })[0].flow_m3s; // 0.1000
 * ```
 */
export function curveIntersections(input: CrossingInput): Crossing[] {
  const { low, high, samples } = input;
  requireFinite('low', low);
  requireFinite('high', high);
  if (!(high > low)) throw new ImpossibleInput('high', high, `above low, ${low}`);
  if (!Number.isInteger(samples) || samples < 2)
    throw new ImpossibleInput('samples', samples, 'a whole number above one');
  const gap = (flow: number) => value(input, 'fan', flow) - value(input, 'system', flow);
  const flows = Array.from({ length: samples + 1 }, (_, i) =>
    i === samples ? high : low + ((high - low) * i) / samples,
  );
  const gaps = flows.map(gap);
  const found: Crossing[] = [];
  const meet = (flow: number, touch: boolean) => found.push(crossingAt(input, flow, touch));

  for (let i = 0; i <= samples; i++) {
    const here = gaps[i]!;
    if (here === 0) {
      if (i > 0 && gaps[i - 1] === 0) continue;
      const before = gaps[i - 1];
      const after = gaps[i + 1];
      // A sign kept on both sides is a touch; so is the start of a stretch where the curves coincide.
      meet(flows[i]!, after === 0 || (before !== undefined && after !== undefined && before * after > 0));
      continue;
    }
    const next = gaps[i + 1];
    const before = gaps[i - 1];
    if (before !== undefined && next !== undefined && dips(before, here, next)) {
      const sign = Math.sign(here);
      const at = leastBetween((flow) => sign * gap(flow), flows[i - 1]!, flows[i + 1]!);
      const least = sign * gap(at);
      if (least <= TOUCH * pressureScale(input, at) && least >= -TOUCH * pressureScale(input, at))
        meet(at, true);
      else if (least < 0) {
        meet(brentRoot(gap, flows[i - 1]!, at), false);
        meet(brentRoot(gap, at, flows[i + 1]!), false);
      }
    }
    if (next !== undefined && here * next < 0) meet(brentRoot(gap, flows[i]!, flows[i + 1]!), false);
  }
  return found.sort((a, b) => a.flow_m3s - b.flow_m3s);
}

/** Three samples of one sign whose middle lies nearest to zero (or level with the one before). */
function dips(before: number, here: number, next: number): boolean {
  const sameSign = before * here > 0 && here * next > 0;
  return sameSign && Math.abs(here) <= Math.abs(before) && Math.abs(here) < Math.abs(next);
}

function value(input: CrossingInput, which: 'fan' | 'system', flow: number): number {
  return requireFinite(`${which}(${flow})`, input[which](flow));
}

function pressureScale(input: CrossingInput, flow: number): number {
  return Math.abs(value(input, 'fan', flow)) + Math.abs(value(input, 'system', flow));
}

function crossingAt(input: CrossingInput, flow_m3s: number, touch: boolean): Crossing {
  const step = DIFFERENCE * (input.high - input.low);
  const below = Math.max(input.low, flow_m3s - step);
  const above = Math.min(input.high, flow_m3s + step);
  const slope = (which: 'fan' | 'system') =>
    (value(input, which, above) - value(input, which, below)) / (above - below);
  const fanSlope = slope('fan');
  const systemSlope = slope('system');
  const pressure_Pa = value(input, 'fan', flow_m3s);
  return { flow_m3s, pressure_Pa, fanSlope, systemSlope, stable: !touch && fanSlope < systemSlope, touch };
}
