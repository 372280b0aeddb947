import type { Share } from './curve-chart.ts';

/** How the area of a share is drawn: told apart by its hatch alone, for black-and-white paper; the tint helps on screen. */
export interface Hatch {
  /** SVG path in a tile of 8 by 8. */
  readonly path: string;
  /** Share of the accent or the ink in the ground [%]. */
  readonly tint: { readonly of: '--accent' | '--ink' | '--focus'; readonly percent: number };
}

export const HATCHES: Readonly<Record<Share, Hatch>> = {
  hood: { path: 'M0 8 L8 0 M-2 2 L2 -2 M6 10 L10 6', tint: { of: '--accent', percent: 32 } },
  duct: { path: 'M0 4 H8', tint: { of: '--ink', percent: 8 } },
  hose: { path: 'M0 2 Q2 0 4 2 T8 2 M0 6 Q2 4 4 6 T8 6', tint: { of: '--focus', percent: 16 } },
  fittings: { path: 'M0 0 L8 8 M0 8 L8 0', tint: { of: '--ink', percent: 16 } },
  separator: { path: 'M0 0 L8 8 M-2 6 L2 10 M6 -2 L10 2', tint: { of: '--accent', percent: 14 } },
  filter: { path: 'M4 0 V8 M0 4 H8', tint: { of: '--focus', percent: 30 } },
  solids: { path: 'M2 2 h1.4 M6 6 h1.4', tint: { of: '--ink', percent: 34 } },
  other: { path: 'M4 0 V8', tint: { of: '--ink', percent: 4 } },
};

/** CSS colour of a hatch's ground. */
export const groundOf = ({ tint }: Hatch): string =>
  `color-mix(in srgb, var(${tint.of}) ${tint.percent}%, var(--paper))`;
