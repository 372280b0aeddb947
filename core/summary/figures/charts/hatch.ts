import type { Share } from './curve-chart.ts';

/**
 * How the area of a share is drawn, as an SVG path in a tile of 8 by 8: told apart by its hatch alone, so that
 * black-and-white paper serves.
 */
export const HATCH_PATHS: Readonly<Record<Share, string>> = {
  hood: 'M0 8 L8 0 M-2 2 L2 -2 M6 10 L10 6',
  duct: 'M0 4 H8',
  hose: 'M0 2 Q2 0 4 2 T8 2 M0 6 Q2 4 4 6 T8 6',
  fittings: 'M0 0 L8 8 M0 8 L8 0',
  separator: 'M0 0 L8 8 M-2 6 L2 10 M6 -2 L10 2',
  filter: 'M4 0 V8 M0 4 H8',
  solids: 'M2 2 h1.4 M6 6 h1.4',
  other: 'M4 0 V8',
};
