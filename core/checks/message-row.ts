import type { Severity } from '../network/solution.ts';

/** One kind of finding: how grave it is and what it says. `{}` are filled in, in order, with figures and names. */
export interface MessageRow {
  readonly severity: Severity;
  readonly message: string;
  readonly remedy: string;
}
