import { staircaseFigure } from '../figures/staircase-figure.ts';
import type { SummaryFacts } from '../facts.ts';
import { el } from '../markup.ts';
import type { Markup } from '../markup.ts';

/** Pressure along the way that is furthest from holding. */
export function staircaseSection({ governing, units, width, nameOf }: SummaryFacts): Markup {
  const made = governing && staircaseFigure(governing, { width, height: 260, units, nameOf });
  if (governing === null || made === null) return el('p', {}, 'No air moves, so that there is no staircase.');
  return el(
    'figure',
    {},
    made.figure,
    el(
      'figcaption',
      {},
      `Setting “${governing.name}”, from ${nameOf(made.from)}: the way of the air that has the least to spare. ${made.sentence}`,
    ),
  );
}
