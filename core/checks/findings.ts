import type { Finding, Severity } from '../network/solution.ts';
import { cautions } from './cautions.ts';
import type { Check, CheckInput } from './check.ts';
import { checkDevices } from './device-checks.ts';
import { checkFans } from './fan-checks.ts';
import { printerFor } from './finding.ts';
import { checkMotors } from './motor-checks.ts';
import { checkRuns } from './run-checks.ts';

const CHECKS: readonly Check[] = [checkRuns, checkDevices, checkFans, checkMotors, cautions];

/** Gravest first. */
export const SEVERITY_ORDER: readonly Severity[] = ['danger', 'fault', 'warning', 'advice', 'caution'];

/** Everything that a solved setting has to say, gravest first and otherwise in the order of flow. */
export function findingsOf(input: CheckInput): Finding[] {
  const print = printerFor(input.shop.document.units);
  const all = CHECKS.flatMap((check) => check(input, print));
  return SEVERITY_ORDER.flatMap((severity) => all.filter((f) => f.severity === severity));
}
