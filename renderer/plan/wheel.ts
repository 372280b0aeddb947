/** A wheel turns in whole notches and one way at a time; fingers on a touchpad do neither. */
const NOTCH_LEAST_PX = 40;
const ZOOM_PER_PX = 0.0016;
/** A pinch comes as a wheel with Ctrl and small steps. */
const PINCH_PER_PX = 0.011;
const LINE_PX = 32;

type Wheel = Pick<WheelEvent, 'deltaX' | 'deltaY' | 'deltaMode' | 'ctrlKey'>;

/** Whether a wheel event comes from two fingers on a touchpad. */
export function isTouchpad({ deltaX, deltaY, deltaMode }: Wheel): boolean {
  return deltaMode === 0 && (deltaX !== 0 || !Number.isInteger(deltaY) || Math.abs(deltaY) < NOTCH_LEAST_PX);
}

/** Factor by which a wheel event zooms. */
export function wheelFactor(event: Wheel): number {
  const pixels = event.deltaMode === 0 ? event.deltaY : event.deltaY * LINE_PX;
  const pinch = event.ctrlKey && Math.abs(pixels) < NOTCH_LEAST_PX;
  return Math.exp(-pixels * (pinch ? PINCH_PER_PX : ZOOM_PER_PX));
}
