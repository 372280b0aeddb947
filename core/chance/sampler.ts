import type { NetState } from '../network/balance.ts';
import { densityAt, marchElement, newMarch } from '../network/march.ts';
import { solveNet } from '../network/newton.ts';
import type { NetOutcome, PlanCache } from '../network/newton.ts';
import type { FanDrive } from '../network/net.ts';
import { fanReach } from '../network/operating-points.ts';
import type { Reason } from '../network/reasons.ts';
import type { SettingResult } from '../network/solution.ts';
import type { Draw, DrawList } from './draws.ts';
import type { OwnShop } from './own-shop.ts';
import { readRun, runReader } from './run-reader.ts';
import type { RunReading, RunReader } from './run-reader.ts';

type Balanced = Extract<NetOutcome, { converged: true }>;

/** What one sample came to; the readers' own objects, written anew by the next one. */
export interface FanReading {
  flow_m3s: number;
  staticPressure_Pa: number;
  totalPressure_Pa: number;
}

/** Share of normal draws below one standard deviation. */
const ONE_UP = 0.841;

/** Share of pressure and flow to which a sample is solved: far below what any number of samples could tell apart. */
const TOLERANCE = 1e-7;

const march = newMarch();

/**
 * Solves a shop again and again with its figures moved. Each sample is a full solve; only its start is guessed, from what each draw alone did to the balance as drawn.
 *
 * Held as drawn: which velocity each run asks for, the dust that travels and the loss that it adds. Of several operating
 * points of a fan with a hump, that in reach of the one as drawn is found.
 */
export class Sampler {
  readonly runs: readonly RunReading[];
  readonly fans: readonly FanReading[];
  private readonly readers: readonly RunReader[];
  private readonly forward: Float64Array;
  private readonly backward: Float64Array;
  private readonly factors: Float64Array;
  private readonly drives: readonly FanDrive[];
  private readonly devices: Int32Array;
  private readonly start: NetState;
  private readonly guess: NetState;
  /** Change of the balance by a unit of each draw: flows, then pressures. */
  private readonly slopes: readonly (Float64Array | null)[];

  constructor(
    private readonly own: OwnShop,
    private readonly plans: PlanCache,
    private readonly list: DrawList,
    nominal: SettingResult,
    state: NetState,
  ) {
    const { shop } = own;
    const { packed } = shop;
    this.forward = packed.forward.slice();
    this.backward = packed.backward.slice();
    this.factors = new Float64Array(list.draws.length);
    this.drives = list.draws.map(({ fan }) => (fan === null ? null : own.fans.get(fan)!.fan)!);
    // where nothing moves as drawn there is nothing to read, now or later
    const moving = shop.runs.filter((_, i) => nominal.runs[i]!.massFlow_kgs !== 0);
    this.readers = moving.map((run) => runReader(shop, run));
    this.runs = moving.map(() => ({ velocity_ms: 0, flow_m3s: 0, choked: false }));
    this.fans = shop.fans.map(() => ({ flow_m3s: 0, staticPressure_Pa: 0, totalPressure_Pa: 0 }));
    this.devices = Int32Array.from(shop.devices, (device) => device.element);
    this.start = state;
    this.guess = { flow_kgs: state.flow_kgs.slice(), pressure_Pa: state.pressure_Pa.slice() };
    const rest = Float64Array.from(list.draws, ({ curves }) => (curves === null ? 0 : -1));
    // without zeros for what is still, a solve need not look for its rounding again
    const first = this.balance(rest);
    if (first.converged) this.start = first.state;
    this.slopes = list.draws.map((draw, d) => {
      const moved = rest.slice();
      moved[d] = draw.curves === null ? 1 : Math.floor(ONE_UP * draw.curves.length);
      const unit = reachOf(draw, moved[d]);
      const outcome = unit === 0 ? first : this.balance(moved);
      if (!outcome.converged || unit === 0) return null;
      const { flow_kgs, pressure_Pa } = this.start;
      const slope = new Float64Array(flow_kgs.length + pressure_Pa.length);
      flow_kgs.forEach((m, e) => (slope[e] = (outcome.state.flow_kgs[e]! - m) / unit));
      pressure_Pa.forEach(
        (p, v) => (slope[flow_kgs.length + v] = (outcome.state.pressure_Pa[v]! - p) / unit),
      );
      return slope;
    });
  }

  /**
   * Solves one sample and leaves what came out in `runs` and `fans`; else the reason why nothing is known.
   *
   * @param values - of each draw: a standard normal number, or the number of a curve (below zero: as drawn)
   */
  sample(values: Float64Array): Reason | null {
    this.guessFrom(values);
    const outcome = this.balance(values);
    return outcome.converged ? this.read(outcome) : outcome.reason;
  }

  private guessFrom(values: Float64Array): void {
    const { flow_kgs, pressure_Pa } = this.guess;
    const { draws } = this.list;
    flow_kgs.set(this.start.flow_kgs);
    pressure_Pa.set(this.start.pressure_Pa);
    this.slopes.forEach((slope, d) => {
      if (slope === null) return;
      const x = reachOf(draws[d]!, values[d]!);
      const n = flow_kgs.length;
      for (let e = 0; e < n; e++) flow_kgs[e]! += x * slope[e]!;
      for (let v = 0; v < pressure_Pa.length; v++) pressure_Pa[v]! += x * slope[n + v]!;
    });
  }

  /** Puts the draws into the net and solves it from the guess. */
  private balance(values: Float64Array): NetOutcome {
    const { own, list, factors } = this;
    const { packed } = own.shop;
    list.draws.forEach((draw, d) => {
      const value = values[d]!;
      factors[d] = draw.curves === null ? Math.exp(draw.spread * value) : 1;
      if (draw.fan !== null) {
        own.fans.get(draw.fan)!.fan = movedDrive(this.drives[d]!, draw, factors[d]!, value);
      }
    });
    packed.forward.set(this.forward);
    packed.backward.set(this.backward);
    for (const { draw, segment, forward, backward } of list.effects) {
      const more = factors[draw]! - 1;
      packed.forward[segment]! += forward * more;
      packed.backward[segment]! += backward * more;
    }
    return solveNet(packed, { warm: this.guess, plans: this.plans, tolerance: TOLERANCE });
  }

  private read({ state, balance }: Balanced): Reason | null {
    const { shop } = this.own;
    const { packed } = shop;
    for (let i = 0; i < this.readers.length; i++) {
      const out = this.runs[i]!;
      readRun(packed, balance, state, this.readers[i]!, out);
      if (out.choked) return 'too-fast';
    }
    for (const e of this.devices) {
      const m = state.flow_kgs[e]!;
      if (m === 0) continue;
      marchElement(packed, e, m, balance.endPressure(state, e, m > 0), march);
      if (march.choked) return 'too-fast';
    }
    for (let i = 0; i < shop.fans.length; i++) {
      const { element: e } = shop.fans[i]!;
      const m = state.flow_kgs[e]!;
      const inlet_Pa = balance.endPressure(state, e, true);
      const density_kgm3 = densityAt(packed, Number.isFinite(inlet_Pa) ? inlet_Pa : 0);
      const flow_m3s = m / density_kgm3;
      if (m < 0) return 'fan-cannot-overcome';
      if (m > 0 && fanReach(packed, e, flow_m3s, density_kgm3) === 'beyond') return 'beyond-fan-curve';
      // in balance the fan's rise is just what stands between its ends
      const total_Pa = m > 0 ? balance.endPressure(state, e, false) - inlet_Pa : 0;
      const { outletArea_m2 } = packed.net.elements[e]!.fan!.curve.input;
      const out = this.fans[i]!;
      out.flow_m3s = flow_m3s;
      out.totalPressure_Pa = total_Pa;
      out.staticPressure_Pa = total_Pa - (density_kgm3 * (flow_m3s / outletArea_m2) ** 2) / 2;
    }
    return null;
  }
}

/** How far a draw reaches: its own number, or how far the curve that it picks lies over the nominal one. */
export const reachOf = ({ curves }: Draw, value: number): number =>
  curves === null ? value : value < 0 ? 0 : curves[value]!.over;

/** A drive with another curve: the one that is picked of a band, or its own with all pressures multiplied. */
function movedDrive(drive: FanDrive, { curves }: Draw, factor: number, value: number): FanDrive {
  const { curve } = drive;
  if (curves !== null) return value < 0 ? drive : { ...drive, curve: curves[value]!.curve };
  if (factor === 1) return drive;
  const { x, y, slopes } = curve.pressure;
  const pressure = { x, y: y.map((p) => p * factor), slopes: slopes.map((s) => s * factor) };
  return { ...drive, curve: { ...curve, pressure } };
}
