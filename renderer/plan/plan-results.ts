import type {
  DeviceResult,
  FanResult,
  NodeResult,
  RunResult,
  SettingResult,
} from '../../core/network/solution.ts';
import { thingFigures } from './result-text.ts';
import type { Print } from './result-text.ts';
import { runStatus, speedFindings } from './run-status.ts';
import type { RunStatus, SpeedFindings } from './run-status.ts';
import type { ThingView } from '../../core/summary/figures/plan/thing-view.ts';

const byId = <T extends { readonly id: string }>(list: readonly T[]): ReadonlyMap<string, T> =>
  new Map(list.map((item) => [item.id, item]));

/** A result of the setting on screen, as the plan looks things up in it. */
export class PlanResults {
  private readonly runs: ReadonlyMap<string, RunResult>;
  private readonly devices: ReadonlyMap<string, DeviceResult>;
  private readonly fans: ReadonlyMap<string, FanResult>;
  private readonly nodes: ReadonlyMap<string, NodeResult>;
  private readonly speeds: SpeedFindings;

  constructor(result: SettingResult) {
    this.runs = byId(result.runs);
    this.devices = byId(result.devices);
    this.fans = byId(result.fans);
    this.nodes = byId(result.nodes);
    this.speeds = speedFindings(result.findings);
  }

  run(id: string): RunResult | undefined {
    return this.runs.get(id);
  }

  status(result: RunResult): RunStatus {
    return runStatus(result, this.speeds);
  }

  /** What is said of a thing; `run` is the run at a thing that has one end only. */
  lines(view: ThingView, run: string | undefined, print: Print): readonly string[] {
    const results = {
      run: run === undefined ? undefined : this.runs.get(run),
      device: this.devices.get(view.id),
      fan: this.fans.get(view.id),
      node: this.nodes.get(view.id),
    };
    return thingFigures(view, results, print);
  }
}

/** Nothing where there is no result that can be shown. */
export function planResults(result: SettingResult | null, incomplete: boolean): PlanResults | null {
  return incomplete || result === null || !result.converged ? null : new PlanResults(result);
}
