/** Result of calibrating a picture: its scale, or what is wrong. */
export type Calibration =
  { readonly ok: true; readonly metresPerPixel: number } | { readonly ok: false; readonly message: string };

/** Points closer than this cannot be told apart by hand [px]. */
const LEAST_APART_PX = 2;

/** Scale of a picture from two of its points, in its own pixels, and the distance between them in the building. */
export function calibrate(
  first: { readonly x: number; readonly y: number },
  second: { readonly x: number; readonly y: number },
  distance_m: number,
): Calibration {
  if (!Number.isFinite(distance_m) || distance_m <= 0) {
    return { ok: false, message: 'the distance must be above zero, such as 3.2 m' };
  }
  const pixels = Math.hypot(second.x - first.x, second.y - first.y);
  if (!(pixels >= LEAST_APART_PX))
    return { ok: false, message: 'the two points lie on each other; click two that are far apart' };
  return { ok: true, metresPerPixel: distance_m / pixels };
}
