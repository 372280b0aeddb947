import type { Rectangle } from 'electron';

/** Where the window was, in the screen's own points. */
export interface WindowState {
  readonly bounds: Rectangle;
  readonly maximized: boolean;
}

export const USUAL_SIZE = { width: 1360, height: 860 };
export const SMALLEST_SIZE = { width: 1100, height: 700 };
/** Part of the title bar that has to be in reach for the window to be moved. */
const REACH = 100;

/** A usable state out of what the settings file holds. */
export function checkWindowState(raw: unknown): WindowState | null {
  const { bounds, maximized } = (raw ?? {}) as Partial<WindowState>;
  const numbers = [bounds?.x, bounds?.y, bounds?.width, bounds?.height];
  if (!numbers.every((value) => Number.isInteger(value)) || typeof maximized !== 'boolean') return null;
  const { x, y, width, height } = bounds!;
  return width > 0 && height > 0 ? { bounds: { x, y, width, height }, maximized } : null;
}

/** Where to put the window: where it was if a screen still shows that place, else in the middle by default. */
export function placeWindow(state: WindowState | null, areas: readonly Rectangle[]): Partial<Rectangle> {
  const seen = state && areas.some((area) => inReach(state.bounds, area));
  const wanted: Partial<Rectangle> = seen ? { ...state.bounds } : { ...USUAL_SIZE };
  const room = areas.reduce((most, area) => Math.max(most, area.width), 0);
  const height = areas.reduce((most, area) => Math.max(most, area.height), 0);
  return {
    ...wanted,
    width: Math.min(Math.max(wanted.width!, SMALLEST_SIZE.width), room || SMALLEST_SIZE.width),
    height: Math.min(Math.max(wanted.height!, SMALLEST_SIZE.height), height || SMALLEST_SIZE.height),
  };
}

function inReach(window: Rectangle, area: Rectangle): boolean {
  const across = Math.min(window.x + window.width, area.x + area.width) - Math.max(window.x, area.x);
  return across >= REACH && window.y >= area.y && window.y + REACH <= area.y + area.height;
}
