import { frictionFactorWithSlope, TURBULENT_ABOVE } from '../duct/friction.ts';

/** Numbers kept for each segment. */
export const KEPT = 5;
/** Change of Reynolds number [-] within which a kept expansion is used: `f` is then good to 1e-13 of itself. */
export const NEAR = 3e-3;
const HALF_LN10 = Math.LN10 / 2;

/**
 * Friction factor and its slope, from the last full solution of this segment where flow has hardly changed since.
 *
 * With `u = ln Re` and `F = ln(10) / (2 sqrt f)`, Colebrook-White gives `s = d ln f / du = -2 / (1 + X1 + F)` and
 * `ds/du = s^2 / 2 (X1 - F s / 2)`, `X1` being proportional to Re, and so on. A solver asks again and again at nearly
 * the same flow; a third-order expansion of `ln f` then gives the same digits without a logarithm.
 *
 * @param kept - `Re`, `f`, `s`, `ds/du` and `d2s/du2` of each segment, changed in place; `Re` 0 where nothing is kept
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
    const twist = kept[at + 4]!;
    const du = change * (1 - change * (1 / 2 - change * (1 / 3 - change * (1 / 4 - change / 5))));
    const w = du * (slope + du * (bend / 2 + (du * twist) / 6));
    const f = kept[at + 1]! * (1 + w * (1 + w * (1 / 2 + w * (1 / 6 + w / 24))));
    out[0] = f;
    out[1] = (f * (slope + du * (bend + (du * twist) / 2))) / reynolds;
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
  const turn = X1 - 0.5 * F * slope;
  const bend = 0.5 * slope * slope * turn;
  kept[at + 3] = bend;
  kept[at + 4] = slope * bend * turn + 0.5 * slope * slope * (X1 + 0.5 * F * (0.5 * slope * slope - bend));
}
