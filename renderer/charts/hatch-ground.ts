import type { Share } from '../../core/summary/figures/charts/curve-chart.ts';

interface Tint {
  readonly of: '--accent' | '--ink' | '--focus';
  /** Share of that in the ground [%]. */
  readonly percent: number;
}

/** Ground under the hatch of a share; it helps on screen, the hatch alone tells them apart. */
const TINTS: Readonly<Record<Share, Tint>> = {
  hood: { of: '--accent', percent: 32 },
  duct: { of: '--ink', percent: 8 },
  hose: { of: '--focus', percent: 16 },
  fittings: { of: '--ink', percent: 16 },
  separator: { of: '--accent', percent: 14 },
  filter: { of: '--focus', percent: 30 },
  solids: { of: '--ink', percent: 34 },
  other: { of: '--ink', percent: 4 },
};

/** CSS colour of a hatch's ground. */
export function groundOf(share: Share): string {
  const { of, percent } = TINTS[share];
  return `color-mix(in srgb, var(${of}) ${percent}%, var(--paper))`;
}
