import type { DocumentProblem } from '../document/problem.ts';
import type { ShopDocument } from '../document/schema.ts';
import { solve } from '../network/solve.ts';
import type { FanResult, SettingResult } from '../network/solution.ts';
import type { UnitSystem } from '../quantities/dimensions.ts';
import { compareValues } from './compare-values.ts';
import type { ValueComparison } from './compare-values.ts';
import { marginOf } from './figures/charts/status.ts';
import { partsList } from './parts/parts-list.ts';
import type { PartRow } from './parts/result.ts';

export type { ItemChange, ItemKind, ValueChange } from './compare-values.ts';

/**
 * Two documents, or two states of one, side by side. Plain data in SI; what does not apply, or is in one of the two
 * alone, is null.
 */
export interface ShopComparison extends ValueComparison {
  readonly before: string;
  readonly after: string;
  /** Parts of which another number or length is needed. */
  readonly parts: readonly PartChange[];
  readonly price: Pair<number | null>;
  readonly weight_kg: Pair<number | null>;
  readonly settings: readonly SettingComparison[];
}

export interface Pair<T> {
  readonly before: T;
  readonly after: T;
}

export interface PartChange {
  readonly key: string;
  readonly row: Pair<PartRow | null>;
}

export interface SettingComparison {
  readonly name: string;
  /** Why there is no solution; null where there is one, or no such setting. */
  readonly reason: Pair<string | null>;
  readonly solved: Pair<boolean>;
  readonly runs: readonly { readonly id: string; readonly sides: Pair<RunSide | null> }[];
  readonly devices: readonly {
    readonly id: string;
    readonly sides: Pair<{ readonly loss_Pa: number } | null>;
  }[];
  readonly fans: readonly { readonly id: string; readonly sides: Pair<FanSide | null> }[];
}

export interface RunSide {
  /** Null where it is shut. */
  readonly velocity_ms: number | null;
  readonly flow_m3s: number;
  readonly loss_Pa: number;
  /** What it has over what it needs [-]; null where nothing is asked. */
  readonly margin: number | null;
  readonly holds: boolean | null;
}

export interface FanSide {
  readonly flow_m3s: number;
  readonly staticPressure_Pa: number;
  readonly totalPressure_Pa: number;
  readonly speed_rpm: number | null;
  /** Drawn from the supply where its motor is known, else that of its curve [W]. */
  readonly power_W: number | null;
}

export type Compared =
  | { readonly ok: true; readonly comparison: ShopComparison }
  | { readonly ok: false; readonly which: 'before' | 'after'; readonly problems: readonly DocumentProblem[] };

/** Compares two documents: what changed, what to buy, and what the air does in each setting of either. */
export function compareShops(before: ShopDocument, after: ShopDocument, units: UnitSystem): Compared {
  const [old, now] = [solve(before), solve(after)];
  if (!old.ok) return { ok: false, which: 'before', problems: old.problems };
  if (!now.ok) return { ok: false, which: 'after', problems: now.problems };
  const [oldParts, nowParts] = [partsList(before), partsList(after)];
  const names = [...old.solution.settings, ...now.solution.settings].map(({ name }) => name);
  const settingOf = (settings: readonly SettingResult[], name: string) =>
    settings.find((setting) => setting.name === name) ?? null;
  return {
    ok: true,
    comparison: {
      before: before.name,
      after: after.name,
      ...compareValues(before, after, units),
      parts: partChanges(oldParts.rows, nowParts.rows),
      price: { before: oldParts.totalPrice, after: nowParts.totalPrice },
      weight_kg: { before: oldParts.totalWeight_kg, after: nowParts.totalWeight_kg },
      settings: [...new Set(names)].map((name) =>
        compareSetting(name, {
          before: settingOf(old.solution.settings, name),
          after: settingOf(now.solution.settings, name),
        }),
      ),
    },
  };
}

/** Lengths closer than this are the same [m]. */
const SAME_M = 1e-4;

function partChanges(before: readonly PartRow[], after: readonly PartRow[]): PartChange[] {
  const keys = [...new Set([...before, ...after].map(({ key }) => key))];
  return keys.flatMap((key): PartChange[] => {
    const find = (rows: readonly PartRow[]) => rows.find((row) => row.key === key) ?? null;
    const row = { before: find(before), after: find(after) };
    const { before: a, after: b } = row;
    const same =
      a !== null &&
      b !== null &&
      a.count === b.count &&
      a.buy === b.buy &&
      Math.abs((a.length_m ?? 0) - (b.length_m ?? 0)) < SAME_M;
    return same ? [] : [{ key, row }];
  });
}

function compareSetting(name: string, setting: Pair<SettingResult | null>): SettingComparison {
  const { before, after } = setting;
  /** Both sides of everything that either has, in the order of the first that has it. */
  const both = <T extends { readonly id: string }, S>(
    of: (result: SettingResult) => readonly T[],
    side: (item: T) => S,
  ) => {
    const [old, now] = [before, after].map((result) => (result === null ? [] : of(result)));
    const ids = [...new Set([...old!, ...now!].map(({ id }) => id))];
    const find = (items: readonly T[], id: string) => {
      const item = items.find((one) => one.id === id);
      return item === undefined ? null : side(item);
    };
    return ids.map((id) => ({ id, sides: { before: find(old!, id), after: find(now!, id) } }));
  };
  return {
    name,
    reason: { before: before?.reasonText ?? null, after: after?.reasonText ?? null },
    solved: { before: before?.converged ?? false, after: after?.converged ?? false },
    runs: both(
      ({ runs }) => runs,
      (run): RunSide => ({
        velocity_ms: run.massFlow_kgs === 0 ? null : run.velocity_ms,
        flow_m3s: run.flow_m3s,
        loss_Pa: run.lossTotal_Pa,
        margin: marginOf(run),
        holds: run.holds,
      }),
    ),
    devices: both(
      ({ devices }) => devices,
      ({ loss_Pa }) => ({ loss_Pa }),
    ),
    fans: both(({ fans }) => fans, fanSide),
  };
}

const fanSide = (fan: FanResult): FanSide => ({
  flow_m3s: fan.flow_m3s,
  staticPressure_Pa: fan.staticPressure_Pa,
  totalPressure_Pa: fan.totalPressure_Pa,
  speed_rpm: fan.speed_rpm,
  power_W: fan.drive?.inputPower_W ?? fan.power_W,
});
