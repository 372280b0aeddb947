import type { RunResult, SettingResult } from '../../../network/solution.ts';
import type { UnitSystem } from '../../../quantities/dimensions.ts';
import { figure, unitOf } from './columns.ts';
import { marginOf, marginText, statusesOf } from './status.ts';
import type { RunStatus } from './status.ts';

/** One figure of the table; `status` is null in the rows of a fan. */
export interface SettingCell {
  readonly text: string;
  readonly status: RunStatus | null;
}

export interface SettingRow {
  /** Id of the run or fan. */
  readonly id: string;
  readonly kind: 'run' | 'fan';
  /** Name; of a fan's figure with its unit. */
  readonly label: string;
  /** One for each setting; null where it is not solved. */
  readonly cells: readonly (SettingCell | null)[];
}

export interface SettingColumn {
  readonly name: string;
  readonly state: 'solved' | 'no solution' | 'waiting';
  readonly reason: string | null;
  readonly margin: number | null;
  readonly marginText: string;
  /** Run with the least in hand. */
  readonly worstRun: string | null;
  readonly worstStatus: RunStatus | null;
}

export interface SettingTable {
  /** Unit of the velocities. */
  readonly unit: string;
  readonly columns: readonly SettingColumn[];
  readonly rows: readonly SettingRow[];
}

export interface SettingTableInput {
  readonly settings: readonly string[];
  readonly solutions: ReadonlyMap<string, SettingResult>;
  readonly units: UnitSystem;
  readonly nameOf: (id: string) => string;
}

/** Every run that something is asked of, in every setting, and what the fans do there. */
export function settingTable(input: SettingTableInput): SettingTable {
  const { settings, units, nameOf } = input;
  const results = settings.map((name) => input.solutions.get(name) ?? null);
  const solved = results.filter((r) => r !== null && r.converged);
  const asked = (run: RunResult) => run.requiredVelocity_ms !== null || run.requiredFlow_m3s !== null;
  const runIds = unique(solved.flatMap((r) => r!.runs.map((run) => run.id))).filter((id) =>
    solved.some((r) => r!.runs.some((run) => run.id === id && asked(run))),
  );
  const statuses = results.map((r) => (r ? statusesOf(r) : new Map<string, RunStatus>()));
  const rows = runIds.map((id): SettingRow => ({
    id,
    kind: 'run',
    label: nameOf(id),
    cells: results.map((r, i) => {
      const run = r?.runs.find((x) => x.id === id);
      if (!run) return null;
      return {
        text: run.massFlow_kgs === 0 ? '' : figure(run.velocity_ms, 'velocity', units),
        status: statuses[i]!.get(id) ?? 'none',
      };
    }),
  }));
  for (const id of unique(solved.flatMap((r) => r!.fans.map((fan) => fan.id)))) {
    const fan = (pick: 'flow' | 'pressure'): SettingRow => ({
      id,
      kind: 'fan',
      label: `${pick === 'flow' ? 'flow' : 'static'}, ${unitOf(pick, units)}`,
      cells: results.map((r) => {
        const found = r?.fans.find((f) => f.id === id);
        if (!found) return null;
        return {
          text: figure(pick === 'flow' ? found.flow_m3s : found.staticPressure_Pa, pick, units),
          status: null,
        };
      }),
    });
    rows.push(fan('flow'), fan('pressure'));
  }
  return {
    unit: unitOf('velocity', units),
    columns: settings.map((name, i) => column(name, results[i]!, statuses[i]!)),
    rows,
  };
}

const unique = (ids: readonly string[]): string[] => [...new Set(ids)];

function column(
  name: string,
  result: SettingResult | null,
  statuses: ReadonlyMap<string, RunStatus>,
): SettingColumn {
  let margin: number | null = null;
  let worstRun: string | null = null;
  for (const run of result?.runs ?? []) {
    const own = marginOf(run);
    if (own === null || (margin !== null && own >= margin)) continue;
    margin = own;
    worstRun = run.id;
  }
  return {
    name,
    state: result === null ? 'waiting' : result.converged ? 'solved' : 'no solution',
    reason: result?.reasonText ?? null,
    margin,
    marginText: marginText(margin),
    worstRun,
    worstStatus: worstRun === null ? null : (statuses.get(worstRun) ?? null),
  };
}
