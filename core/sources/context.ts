import type { CompiledShop } from '../network/compile.ts';
import type { SettingResult } from '../network/solution.ts';
import type { SourceList } from './source-list.ts';

/** What every part of the gathering reads and writes to. */
export interface SourceContext {
  readonly shop: CompiledShop;
  /** Results of settings that have one; they tell which way air goes. Empty: the way that runs are drawn. */
  readonly settings: readonly SettingResult[];
  /** Mass flows of each run in those settings [kg/s]. */
  readonly flows: ReadonlyMap<string, readonly number[]>;
  readonly list: SourceList;
}

/** Mass flows by run, over the settings. */
export function flowsOf(settings: readonly SettingResult[]): Map<string, number[]> {
  const flows = new Map<string, number[]>();
  for (const { runs } of settings) {
    for (const { id, massFlow_kgs } of runs) {
      const known = flows.get(id);
      if (known) known.push(massFlow_kgs);
      else flows.set(id, [massFlow_kgs]);
    }
  }
  return flows;
}
