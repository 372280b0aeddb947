import type { RunResult } from '../network/solution.ts';
import type { StateLayout } from './layout.ts';
import type { Moment } from './rates.ts';
import type { UpkeepEventKind } from './result.ts';

/** Something that comes due: when its margin falls below zero. */
export interface Condition {
  readonly kind: Extract<UpkeepEventKind, 'run-lost' | 'filter-limit'>;
  readonly where: string;
  readonly setting: string;
  readonly margin: number;
}

/** What a run has over what it needs, of velocity and flow the lesser [-]; null where nothing is asked or it is still. */
export function runMargin(run: RunResult): number | null {
  if (run.holds === null) return null;
  const velocity =
    run.requiredVelocity_ms === null ? Infinity : (run.velocity_ms ?? 0) / run.requiredVelocity_ms - 1;
  const flow = run.requiredFlow_m3s === null ? Infinity : run.flow_m3s / run.requiredFlow_m3s - 1;
  const margin = Math.min(velocity, flow);
  // air that goes the wrong way may be fast enough
  return run.holds ? margin : Math.min(margin, -Number.EPSILON);
}

const keyOf = ({ kind, where, setting }: Omit<Condition, 'margin'>) => `${kind} ${where} ${setting}`;

/** Conditions that are watched: runs that held at the start, limits of filters. */
export class Watch {
  private readonly held: ReadonlySet<string>;
  private readonly dropped = new Set<string>();

  constructor(
    private readonly layout: StateLayout,
    start: Moment,
  ) {
    this.held = new Set(
      start.settings.flatMap(({ name, runs }) =>
        runs.flatMap((run) =>
          run.holds === true ? [keyOf({ kind: 'run-lost', where: run.id, setting: name })] : [],
        ),
      ),
    );
  }

  /** Whether a run held at the start, in a setting. */
  heldAtStart(run: string, setting: string): boolean {
    return this.held.has(keyOf({ kind: 'run-lost', where: run, setting }));
  }

  /** No longer watches a condition that nothing mends. */
  drop(condition: Condition): void {
    this.dropped.add(keyOf(condition));
  }

  /** The watched condition with the least margin; null where nothing is watched. */
  next(moment: Moment): Condition | null {
    let least: Condition | null = null;
    const consider = (condition: Condition) => {
      if (this.dropped.has(keyOf(condition))) return;
      if (least === null || condition.margin < least.margin) least = condition;
    };
    for (const { name, runs, limitShares } of moment.settings) {
      for (const run of runs) {
        if (!this.heldAtStart(run.id, name)) continue;
        consider({ kind: 'run-lost', where: run.id, setting: name, margin: runMargin(run) ?? -1 });
      }
      limitShares.forEach((share, f) => {
        const where = this.layout.filters[f]!.device.thing.id;
        consider({ kind: 'filter-limit', where, setting: name, margin: 1 - share });
      });
    }
    return least;
  }
}
