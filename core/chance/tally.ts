import type { CompiledRun, CompiledShop } from '../network/compile.ts';
import type { Reason } from '../network/reasons.ts';
import { reaches, runsWrongWay } from '../network/run-results.ts';
import type { FanResult, RunResult, SettingResult } from '../network/solution.ts';
import type { DrawList } from './draws.ts';
import { reachOf } from './sampler.ts';
import type { Sampler } from './sampler.ts';

/** What is kept of one run, a number for each sample. */
export interface RunTally {
  readonly compiled: CompiledRun;
  readonly nominal: RunResult;
  readonly velocity_ms: Float64Array;
  readonly flow_m3s: Float64Array;
  /** Samples in which it holds. */
  held: number;
}

/** What is kept of one fan, a number for each sample. */
export interface FanTally {
  readonly nominal: FanResult;
  readonly flow_m3s: Float64Array;
  readonly staticPressure_Pa: Float64Array;
  readonly totalPressure_Pa: Float64Array;
}

/** Keeps what the samples come to. */
export class Tally {
  /** Runs through which air moves. */
  readonly runs: readonly RunTally[];
  readonly fans: readonly FanTally[];
  /** How far each draw reached in each sample, for the shares. */
  readonly reach: readonly Float64Array[];
  readonly failed = new Map<Reason, number>();
  /** Samples that have a balance. */
  private readonly balanced: Int32Array;
  private balancedCount = 0;

  constructor(
    readonly shop: CompiledShop,
    readonly nominal: SettingResult,
    readonly list: DrawList,
    readonly samples: number,
  ) {
    const numbers = () => new Float64Array(samples);
    this.runs = shop.runs.flatMap((compiled, i): RunTally[] => {
      const result = nominal.runs[i]!;
      if (result.massFlow_kgs === 0) return [];
      return [{ compiled, nominal: result, velocity_ms: numbers(), flow_m3s: numbers(), held: 0 }];
    });
    this.fans = nominal.fans.map((fan) => ({
      nominal: fan,
      flow_m3s: numbers(),
      staticPressure_Pa: numbers(),
      totalPressure_Pa: numbers(),
    }));
    this.reach = list.draws.map(numbers);
    this.balanced = new Int32Array(samples);
  }

  get used(): Int32Array {
    return this.balanced.subarray(0, this.balancedCount);
  }

  /** Takes one sample that was just solved; one without a balance counts as not held in any run. */
  take(k: number, failure: Reason | null, sampler: Sampler, values: Float64Array): void {
    this.list.draws.forEach((draw, d) => (this.reach[d]![k] = reachOf(draw, values[d]!)));
    if (failure !== null) {
      this.failed.set(failure, (this.failed.get(failure) ?? 0) + 1);
      return;
    }
    this.balanced[this.balancedCount++] = k;
    for (let i = 0; i < this.runs.length; i++) {
      const { velocity_ms, flow_m3s } = sampler.runs[i]!;
      this.takeRun(this.runs[i]!, k, velocity_ms, flow_m3s);
    }
    for (let i = 0; i < this.fans.length; i++) {
      const tally = this.fans[i]!;
      const reading = sampler.fans[i]!;
      tally.flow_m3s[k] = reading.flow_m3s;
      tally.staticPressure_Pa[k] = reading.staticPressure_Pa;
      tally.totalPressure_Pa[k] = reading.totalPressure_Pa;
    }
  }

  /** Nothing is spread, so every sample is the shop as drawn. */
  allNominal(): void {
    for (let k = 0; k < this.samples; k++) {
      this.balanced[this.balancedCount++] = k;
      for (const run of this.runs) this.takeRun(run, k, run.nominal.velocity_ms ?? NaN, run.nominal.flow_m3s);
    }
    for (const { nominal, ...tally } of this.fans) {
      tally.flow_m3s.fill(nominal.flow_m3s);
      tally.staticPressure_Pa.fill(nominal.staticPressure_Pa);
      tally.totalPressure_Pa.fill(nominal.totalPressure_Pa);
    }
  }

  private takeRun(run: RunTally, k: number, velocity_ms: number, flow_m3s: number): void {
    const { compiled, nominal } = run;
    run.velocity_ms[k] = velocity_ms;
    run.flow_m3s[k] = flow_m3s;
    const required = { velocity_ms: nominal.requiredVelocity_ms, flow_m3s: nominal.requiredFlow_m3s };
    const known = Number.isNaN(velocity_ms) ? 0 : velocity_ms;
    if (!runsWrongWay(compiled, flow_m3s) && reaches(required, known, flow_m3s)) run.held++;
  }
}
