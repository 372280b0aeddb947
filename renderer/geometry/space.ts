import { planPoint } from '../../core/summary/figures/plan/space.ts';
import type { PlanBox, PlanPoint } from '../../core/summary/figures/plan/space.ts';

export { apart, boxAround, inBox, planPoint } from '../../core/summary/figures/plan/space.ts';
export type { PlanBox, PlanPoint } from '../../core/summary/figures/plan/space.ts';

declare const SCREEN: unique symbol;

/** Place in the window of the plan [px]; from its upper left corner. */
export interface ScreenPoint {
  readonly x: number;
  readonly y: number;
  readonly [SCREEN]: true;
}

/** What part of the plan the window shows: where the plan's origin lies [px], and the scale. */
export interface View {
  readonly x: number;
  readonly y: number;
  readonly pixelsPerMetre: number;
}

export const screenPoint = (x: number, y: number): ScreenPoint => ({ x, y }) as ScreenPoint;

export function toScreen(view: View, point: PlanPoint): ScreenPoint {
  return screenPoint(view.x + point.x * view.pixelsPerMetre, view.y + point.y * view.pixelsPerMetre);
}

export function toPlan(view: View, point: ScreenPoint): PlanPoint {
  return planPoint((point.x - view.x) / view.pixelsPerMetre, (point.y - view.y) / view.pixelsPerMetre);
}

/** Largest scale at which a box with a margin fits the window, and the view that centres it. */
export function viewOf(
  box: PlanBox,
  size: { readonly width_px: number; readonly height_px: number },
  margin_px: { readonly x: number; readonly y: number },
  limits: { readonly least: number; readonly most: number },
): View {
  const room = (all: number, margin: number) => Math.max(all - 2 * margin, 20);
  const scale = Math.min(
    room(size.width_px, margin_px.x) / Math.max(box.right - box.left, 1e-6),
    room(size.height_px, margin_px.y) / Math.max(box.bottom - box.top, 1e-6),
  );
  const pixelsPerMetre = Math.min(Math.max(scale, limits.least), limits.most);
  return {
    x: size.width_px / 2 - ((box.left + box.right) / 2) * pixelsPerMetre,
    y: size.height_px / 2 - ((box.top + box.bottom) / 2) * pixelsPerMetre,
    pixelsPerMetre,
  };
}

/** The view after zooming by a factor about a point of the window, which stays where it is. */
export function zoomAbout(
  view: View,
  about: ScreenPoint,
  factor: number,
  limits: { readonly least: number; readonly most: number },
): View {
  const pixelsPerMetre = Math.min(Math.max(view.pixelsPerMetre * factor, limits.least), limits.most);
  const ratio = pixelsPerMetre / view.pixelsPerMetre;
  return { x: about.x - (about.x - view.x) * ratio, y: about.y - (about.y - view.y) * ratio, pixelsPerMetre };
}
