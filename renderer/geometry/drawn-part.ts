import type { PlanBox } from './space.ts';

/** The part of the plan that is drawn, and the scale at which it was chosen. */
export interface DrawnPart {
  readonly box: PlanBox;
  readonly pixelsPerMetre: number;
}

/** Paper drawn beyond each edge of the window, as a share of the window [-]. */
const MARGIN = 0.5;
/** A part chosen at another scale than this serves no longer: too much of it lies outside the window, or too little [-]. */
const OTHER_SCALE = 1.5;

const holds = (outer: PlanBox, inner: PlanBox): boolean =>
  inner.left >= outer.left &&
  inner.right <= outer.right &&
  inner.top >= outer.top &&
  inner.bottom <= outer.bottom;

/**
 * Chooses what to draw for a window: the window with a margin. What was chosen before is kept while the window stays
 * inside, so that moving the paper chooses afresh now and then and not at every step.
 */
export function drawnPart(old: DrawnPart | null, window: PlanBox, pixelsPerMetre: number): DrawnPart {
  if (old !== null && holds(old.box, window)) {
    const ratio = pixelsPerMetre / old.pixelsPerMetre;
    if (ratio < OTHER_SCALE && ratio > 1 / OTHER_SCALE) return old;
  }
  const x = (window.right - window.left) * MARGIN;
  const y = (window.bottom - window.top) * MARGIN;
  const box = {
    left: window.left - x,
    right: window.right + x,
    top: window.top - y,
    bottom: window.bottom + y,
  };
  return { box, pixelsPerMetre };
}

/** Whether two rectangles have a point in common, the second widened on all sides [m]. */
export function meetsBox(a: PlanBox, b: PlanBox, by_m = 0): boolean {
  return (
    b.left - by_m <= a.right &&
    b.right + by_m >= a.left &&
    b.top - by_m <= a.bottom &&
    b.bottom + by_m >= a.top
  );
}
