import type { RunStatus } from '../../core/summary/figures/charts/status.ts';

/** CSS variable of the ink of a status, beside its word and mark. */
export const STATUS_INKS: Readonly<Record<RunStatus, string>> = {
  holds: '--holds',
  slim: '--slim',
  'too slow': '--too-slow',
  short: '--too-slow',
  fast: '--fast',
  backwards: '--too-slow',
  shut: '--ink-2',
  none: '--ink-2',
};
