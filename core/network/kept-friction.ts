import { frictionFactorWithSlope, TURBULENT_ABOVE } from '../duct/friction.ts';

/** Numbers kept for each segment. */
export const KEPT = 4;
/** Change of Reynolds number [-] within which the kept expansion is used: `f` is then good to 1e-13 of itself. */
const NEAR = 2e-4;
const HALF_LN10 = Math.LN10 / 2;

/**
 * Friction factor and its slope, from the last full solution of this segment where flow has hardly changed since.
 *
 * With `u = ln Re` and `F = ln(10) / (2 sqrt f)`, Colebrook-White gives `s = d ln f / du = -2 / (1 + X1 + F)` and
 * `ds/du = s^2 / 2 (X1 - F s / 2)`, `X1` being proportional to Re. A solver asks again and again at nearly the same
 * flow; a second-order expansion of `ln f` then gives the same digits without a logarithm.
 *
 * @param kept - `Re`, `f`, `s` and `ds/du` of each segment, changed in place; `Re` 0 where nothing is kept
 * @param segment - index of the segment
 * @param reynolds - Reynolds number, above 0 [-]
 * @param relativeRoughness - roughness over diameter [-]
 * @param out - receives `f` and `df/dRe`
 */
export function keptFriction(
  kept: Float64Array,
  segment: number,
  reynolds: number,
  relativeRoughness: number,
  out: Float64Array,
): void {
  const at = KEPT * segment;
  const change = reynolds / kept[at]! - 1;
  if (change < NEAR && change > -NEAR && reynolds > TURBULENT_ABOVE) {
    const slope = kept[at + 2]!;
    const bend = kept[at + 3]!;
    const du = change * (1 - change * (0.5 - change / 3));
    const w = du * (slope + 0.5 * bend * du);
    const f = kept[at + 1]! * (1 + w * (1 + w * (0.5 + w / 6)));
    out[0] = f;
    out[1] = (f * (slope + bend * du)) / reynolds;
    return;
  }
  frictionFactorWithSlope(reynolds, relativeRoughness, out);
  if (reynolds <= TURBULENT_ABOVE) {
    kept[at] = 0;
    return;
  }
  const f = out[0]!;
  const slope = (out[1]! * reynolds) / f;
  const F = HALF_LN10 / Math.sqrt(f);
  const X1 = -2 / slope - 1 - F;
  kept[at] = reynolds;
  kept[at + 1] = f;
  kept[at + 2] = slope;
  kept[at + 3] = 0.5 * slope * slope * (X1 - 0.5 * F * slope);
}
