import type { DeviceResult, FanResult, NodeResult, RunResult } from '../../core/network/solution.ts';
import type { Dimension } from '../../core/quantities/dimensions.ts';
import type { RunView } from '../../core/summary/figures/plan/run-view.ts';
import { STATUS_WORDS } from './run-status.ts';
import type { RunStatus } from './run-status.ts';
import { KIND_WORDS } from '../../core/summary/figures/plan/thing-view.ts';
import type { ThingView } from '../../core/summary/figures/plan/thing-view.ts';

export type Print = (si: number | null | undefined, dimension: Dimension) => string;

/** Number of a quantity that is printed with its unit beside another. */
const bare = (text: string): string => text.replace(/ .*$/, '');

/** Velocity over what is needed, short enough to stand on the drawing. */
export function runFigures(result: RunResult, print: Print): string {
  const v = print(result.velocity_ms, 'velocity');
  if (result.requiredVelocity_ms === null || result.requiredVelocity_ms === 0) return v;
  return `${bare(v)} / ${print(result.requiredVelocity_ms, 'velocity')}`;
}

/** A run as it is read out. */
export function runName(
  view: RunView,
  result: RunResult | undefined,
  status: RunStatus | null,
  print: Print,
): string {
  const parts = [`Run ${view.id}${view.run.name ? ` ${view.run.name}` : ''}`];
  if (view.typed) parts.push('typed lengths');
  if (!result || status === null) return [...parts, 'no result yet'].join(', ');
  if (status !== 'shut') {
    parts.push(print(result.velocity_ms, 'velocity'));
    if (result.requiredVelocity_ms) parts.push(`needs ${print(result.requiredVelocity_ms, 'velocity')}`);
  }
  return [...parts, STATUS_WORDS[status]].join(', ');
}

export interface ThingResults {
  /** Run that starts or ends at the thing, where it has one only. */
  readonly run: RunResult | undefined;
  readonly device: DeviceResult | undefined;
  readonly fan: FanResult | undefined;
  readonly node: NodeResult | undefined;
}

/** What a result says of a thing: flow at a port, pressure at a device. */
export function thingFigures(view: ThingView, results: ThingResults, print: Print): string[] {
  const { run, device, fan, node } = results;
  if (fan) return [`${print(fan.flow_m3s, 'flow')} at ${print(fan.staticPressure_Pa, 'pressure')}`];
  if (device) {
    const inlet = device.inletTotalPressure_Pa;
    return [
      `loses ${print(device.loss_Pa, 'pressure')}`,
      ...(inlet === null ? [] : [`inlet ${print(inlet, 'pressure')}`]),
    ];
  }
  if (view.thing.kind === 'port' && run) {
    const need = run.requiredFlow_m3s;
    const flow = print(run.flow_m3s, 'flow');
    return [need === null ? flow : `${bare(flow)} / ${print(need, 'flow')}`];
  }
  if ((view.thing.kind === 'exhaust' || view.thing.kind === 'leak') && run)
    return [print(run.flow_m3s, 'flow')];
  if (view.thing.kind === 'joint' || view.thing.kind === 'pressure') {
    return node === undefined || node.staticPressure_Pa === null
      ? []
      : [print(node.staticPressure_Pa, 'pressure')];
  }
  return [];
}

/** A thing as it is read out. */
export function thingName(view: ThingView, figures: readonly string[], wanting: boolean): string {
  const kind = KIND_WORDS[view.thing.kind];
  const name = view.thing.name ? `${kind} ${view.id}, ${view.thing.name}` : `${kind} ${view.id}`;
  return [
    name,
    ...figures.map((f) => f.replace(' / ', ' of ')),
    ...(wanting ? ['not joined up yet'] : []),
  ].join(', ');
}
