import { howLikely } from '../chance/holds.ts';
import type { Chance } from '../chance/chance.ts';
import { benchFan } from '../fan-bench/bench.ts';
import type { FanBenchResult } from '../fan-bench/result.ts';
import type { ShopDocument } from '../document/schema.ts';
import type { CompiledShop } from '../network/compile.ts';
import { settingNames } from '../network/apply-setting.ts';
import { solveSetting } from '../network/solve.ts';
import type { Workbench } from '../network/solve.ts';
import type { SettingResult, Solution } from '../network/solution.ts';
import { systemCurve } from '../network/system-curve.ts';
import type { SystemCurve } from '../network/system-curve.ts';
import type { UnitSystem } from '../quantities/dimensions.ts';
import { upkeep } from '../upkeep/upkeep.ts';
import type { UpkeepOutcome } from '../upkeep/upkeep.ts';
import { marginOf } from './figures/charts/status.ts';
import { namesOf } from './figures/charts/names.ts';
import { partsList } from './parts/parts-list.ts';
import type { PartsList } from './parts/result.ts';

/** What the sections of a summary print. Each part is worked out when a section asks for it, and once. */
export interface SummaryFacts {
  readonly document: ShopDocument;
  readonly units: UnitSystem;
  /** Room for a figure [CSS px]. */
  readonly width: number;
  readonly shop: CompiledShop;
  readonly solution: Solution;
  /** Setting with the least to spare; null where none has a result. */
  readonly governing: SettingResult | null;
  readonly nameOf: (id: string) => string;
  readonly hours: number;
  /** System curve of each fan in the governing setting. */
  readonly curves: () => readonly SystemCurve[];
  /** One for each setting. */
  readonly chances: () => readonly Chance[];
  /** Fans of the list on their bench. */
  readonly benches: () => readonly FanBenchResult[];
  readonly parts: () => PartsList;
  readonly upkeep: () => UpkeepOutcome;
}

export interface FactsInput {
  readonly document: ShopDocument;
  readonly bench: Workbench;
  readonly units: UnitSystem;
  readonly width: number;
  readonly hours: number;
}

export function summaryFacts({ document, bench, units, width, hours }: FactsInput): SummaryFacts {
  const names = settingNames(document);
  const settings = names.map((name) => solveSetting(bench, name));
  const solution: Solution = { document: document.name, air: bench.shop.air, settings };
  const governing = governingOf(settings);
  return {
    document,
    units,
    width,
    shop: bench.shop,
    solution,
    governing,
    nameOf: namesOf(document),
    hours,
    curves: once(() =>
      governing === null ? [] : governing.fans.map(({ id }) => systemCurve(bench, governing.name, id)),
    ),
    chances: once(() => names.map((setting) => howLikely(bench, { setting }))),
    benches: once(() => document.fans.map(({ id }) => benchFan(document, id))),
    parts: once(() => partsList(document)),
    upkeep: once(() => upkeep(document, hours)),
  };
}

function once<T>(work: () => T): () => T {
  let done: { readonly value: T } | null = null;
  return () => (done ??= { value: work() }).value;
}

/** Least that any run has to spare [-]; null where nothing is asked. */
export function leastMargin(
  setting: SettingResult,
): { readonly run: string; readonly margin: number } | null {
  let least: { run: string; margin: number } | null = null;
  for (const run of setting.runs) {
    const margin = marginOf(run);
    if (margin !== null && (least === null || margin < least.margin)) least = { run: run.id, margin };
  }
  return least;
}

/** The setting with the least to spare; the first that has a result where nothing is asked of any. */
export function governingOf(settings: readonly SettingResult[]): SettingResult | null {
  let found: SettingResult | null = null;
  let least = Infinity;
  for (const setting of settings) {
    if (!setting.converged) continue;
    const margin = leastMargin(setting)?.margin ?? Infinity;
    if (found === null || margin < least) [found, least] = [setting, margin];
  }
  return found;
}
