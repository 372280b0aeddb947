import { requirePositive } from '../quantities/impossible-input.ts';

/** How a run lies. */
export type RunOrientation = 'horizontal' | 'vertical' | 'flexible-hose';

/** Factor on the required velocity for lifts and flexible hose, which need the higher end of the published spans. */
export const ORIENTATION_FACTOR: Readonly<Record<RunOrientation, number>> = {
  horizontal: 1,
  vertical: 1.15, // common practice: "the higher end"; 23 over 20 m/s, the ends of ACGIH's span for heavy dust
  'flexible-hose': 1.15,
};

/**
 * Air velocity that a dust needs so that it is carried and does not settle.
 *
 * The velocity of its class, times 1.15 for a lift or a flexible hose.
 *
 * @param dust - `requiredVelocity_ms` of a row of DUST_CLASSES or of the user's own dust [m/s]
 * @param orientation - how the run lies; horizontal where it is left out
 * @returns the velocity [m/s]
 * @throws ImpossibleInput naming `requiredVelocity_ms`: not finite or not above zero
 *
 * @remarks
 * Range: none; a rule of the trade.
 * Outside: not applicable.
 * Leaves out: how much dust is carried; saltation is the second opinion.
 * Limits: none; a factor.
 * Basis: common-practice (each row of DUST_CLASSES says more).
 * Source: ACGIH Industrial Ventilation, minimum duct velocities; HSG258; ISO 19085-1.
 * Checked: test/reference/dusts.test.ts.
 *
 * @example
 * ```ts
 * requiredVelocity({ requiredVelocity_ms: 20 }, 'vertical'); // 23
 * ```
 */
export function requiredVelocity(
  dust: { readonly requiredVelocity_ms: number },
  orientation: RunOrientation = 'horizontal',
): number {
  return requirePositive('requiredVelocity_ms', dust.requiredVelocity_ms) * ORIENTATION_FACTOR[orientation];
}
