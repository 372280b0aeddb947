import { requireBetween } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';

/** Where friction by laminar theory and Colebrook-White is well founded; between 2000 and 4000 it is a guess. */
export const FRICTION_RANGE: ValidRange = {
  'Reynolds number': { high: 1e8, unit: '-' },
  'relative roughness': { low: 0, high: 0.05, unit: '-' },
};

// With F = ln(10)/2 / sqrt(f) the Colebrook-White equation reads F + ln(X1 + F) = X2,
// X1 = eD Re ln(10) / (2 * 2.51 * 3.7), X2 = ln(Re ln(10) / (2 * 2.51)).
const HALF_LN10 = Math.LN10 / 2;
const ROUGH_SCALE = HALF_LN10 / (2.51 * 3.7);
const SMOOTH_OFFSET = Math.log(HALF_LN10 / 2.51);

/** `F` of the Colebrook-White equation in the form above; the inputs are already checked. */
function solveColebrook(reynolds: number, X1: number): number {
  const X2 = Math.log(reynolds) + SMOOTH_OFFSET;
  let F = X2 - 0.2;
  if (F < 0.1) F = 0.1;
  for (let step = 0; step < 2; step++) {
    const sum = X1 + F;
    const E = (Math.log(sum) + F - X2) / (1 + sum);
    F -= ((1 + sum + 0.5 * E) * E * sum) / (1 + sum + E * (1 + E / 3));
  }
  return F;
}

/**
 * Darcy friction factor of turbulent flow in a rough pipe: the Colebrook-White equation, solved.
 *
 * `1/sqrt(f) = -2 log10( eD/3.7 + 2.51/(Re sqrt(f)) )`. An explicit start and two steps of fourth order leave
 * only rounding.
 *
 * @param reynolds - `Re`, Reynolds number on the diameter [-], 100 or more
 * @param relativeRoughness - `eD`, roughness height over diameter [-], 0 (smooth) to 0.5
 * @returns Darcy friction factor `f` [-]
 * @throws ImpossibleInput naming the argument that is outside these limits
 *
 * @remarks
 * Range: Re 4000 and above, roughness up to 0.05; as data in FRICTION_RANGE.
 * Outside: the value is still returned; `findOutside` reports it. Below Re 4000 use `frictionFactor`.
 * Leaves out: corrugations (see `hawthorneFriction`), chips in the air, bends of the axis.
 * Limits: `eD = 0` is Prandtl's smooth pipe; `Re` without bound is Nikuradse's rough pipe.
 * Basis: published (equation read in an extract of White and on Clamond's own page; the iteration is after
 *   Clamond, from memory).
 * Source: Colebrook, Turbulent flow in pipes, J. ICE 11 (1939) no. 4, as in White, Fluid Mechanics, eq 6.64;
 *   Clamond, Ind. Eng. Chem. Res. 48 (2009).
 * Checked: test/reference/friction.test.ts.
 *
 * @example
 * ```ts
 * colebrookFriction(150000, 0.0015); // 0.0231272
 * ```
 */
export function colebrookFriction(reynolds: number, relativeRoughness: number): number {
  requireBetween('reynolds', reynolds, 100, 1e15);
  requireBetween('relativeRoughness', relativeRoughness, 0, 0.5);
  const ratio = HALF_LN10 / solveColebrook(reynolds, ROUGH_SCALE * relativeRoughness * reynolds);
  return ratio * ratio;
}

/**
 * The product `f Re^2` by Colebrook-White and its slope, for a caller that has checked its input.
 *
 * @param reynolds - `Re`, Reynolds number on the diameter [-], 100 or more
 * @param relativeRoughness - roughness height over diameter [-], 0 to 0.5
 * @param out - receives `f Re^2` in place 0 and `d(f Re^2)/dRe` in place 1 (pure numbers)
 * @returns nothing; the result is in `out`
 * @throws none: the inputs are already checked by `frictionGroup`, the one to call
 *
 * @remarks
 * Range: as data in FRICTION_RANGE.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: laminar and transitional flow.
 * Limits: in a fully rough pipe the slope tends to `2 f Re`.
 * Basis: published, as `colebrookFriction`; the slope is its derivative.
 * Source: as `colebrookFriction`.
 * Checked: test/core/duct/friction.test.ts, slope by finite differences.
 *
 * @example
 * ```ts
 * const out = new Float64Array(2);
 * turbulentGroup(150000, 0.0015, out);
 * out[0]! / 150000 ** 2; // 0.0231272
 * ```
 */
export function turbulentGroup(reynolds: number, relativeRoughness: number, out: Float64Array): void {
  const X1 = ROUGH_SCALE * relativeRoughness * reynolds;
  const F = solveColebrook(reynolds, X1);
  const ratio = HALF_LN10 / F;
  const fRe = ratio * ratio * reynolds;
  out[0] = fRe * reynolds;
  // From F + ln(X1 + F) = X2: Re dF/dRe = F/(1 + X1 + F), hence Re/f df/dRe = -2/(1 + X1 + F).
  out[1] = 2 * fRe * (1 - 1 / (1 + X1 + F));
}
