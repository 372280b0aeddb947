import type { CompiledShop } from '../network/compile.ts';
import type { SettingResult } from '../network/solution.ts';
import type { SourceList } from './source-list.ts';

/** What every part of the gathering reads and writes to. */
export interface SourceContext {
  readonly shop: CompiledShop;
  /** Results of settings that have one; they tell which way air goes. Empty: the way that runs are drawn. */
  readonly settings: readonly SettingResult[];
  readonly list: SourceList;
}
