import type { Setting } from '../document/schema.ts';
import type { CompiledShop } from '../network/compile.ts';
import type { DustResult } from '../network/dust.ts';
import type { Finding, SettingResult } from '../network/solution.ts';
import type { Printer } from './finding.ts';

/** What a check may look at. */
export interface CheckInput {
  readonly shop: CompiledShop;
  readonly setting: Setting;
  readonly result: SettingResult;
  readonly dust: DustResult;
}

/** One group of checks. */
export type Check = (input: CheckInput, print: Printer) => Finding[];
