import type { Setting } from '../document/schema.ts';
import type { CompiledShop } from '../network/compile.ts';
import type { DustResult } from '../network/dust.ts';
import type { Finding, SettingResult, Severity } from '../network/solution.ts';
import { cautions } from './cautions.ts';
import { checkDevices } from './device-checks.ts';
import { checkFans } from './fan-checks.ts';
import { printerFor } from './finding.ts';
import type { Printer } from './finding.ts';
import { checkRuns } from './run-checks.ts';

/** What a check may look at. */
export interface CheckInput {
  readonly shop: CompiledShop;
  readonly setting: Setting;
  readonly result: SettingResult;
  readonly dust: DustResult;
}

/** One group of checks. */
export type Check = (input: CheckInput, print: Printer) => Finding[];

const CHECKS: readonly Check[] = [checkRuns, checkDevices, checkFans, cautions];

/** Gravest first. */
export const SEVERITY_ORDER: readonly Severity[] = ['danger', 'fault', 'warning', 'advice', 'caution'];

/** Everything that a solved setting has to say, gravest first and otherwise in the order of flow. */
export function findingsOf(input: CheckInput): Finding[] {
  const print = printerFor(input.shop.document.units);
  const all = CHECKS.flatMap((check) => check(input, print));
  return SEVERITY_ORDER.flatMap((severity) => all.filter((f) => f.severity === severity));
}
