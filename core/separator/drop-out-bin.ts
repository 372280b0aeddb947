import { BIN_BAFFLE_K, SHARP_OUTLET_K } from '../catalogue/separator-models.ts';
import { ImpossibleInput, requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';

/** Openings of a drop-out bin. */
export interface DropOutBin {
  /** Inlet opening [m2]. */
  readonly inletArea_m2: number;
  /** Outlet opening [m2]. */
  readonly outletArea_m2: number;
  /** Whether a baffle turns the jet. */
  readonly baffle: boolean;
  /** Cross-section of the chamber [m2]; absent: much larger than the openings, which gives the highest loss. */
  readonly chamberArea_m2?: number;
}

/**
 * Loss coefficient of a drop-out bin.
 *
 * The jet widens into the chamber, may strike a baffle, and is gathered by the outlet:
 * `K = (1 - A1/Ac)^2 + Kbaffle + 0.5 (1 - A2/Ac)(A1/A2)^2`.
 *
 * @param bin - openings [m2], chamber [m2], baffle
 * @returns `K` [-] on the inlet velocity pressure
 * @throws ImpossibleInput naming an area [m2] that is not above zero, or `chamberArea_m2` below an opening
 *
 * @remarks
 * Range: turbulent flow, openings with sharp edges, chamber long enough for the jet to mix.
 * Outside: the value is still returned.
 * Leaves out: a jet that shoots straight from inlet to outlet, which loses less; a full bin.
 * Limits: equal openings, a large chamber and no baffle give 1.5, the value of ACGIH for a settling chamber.
 * Basis: from-memory (Borda-Carnot and sudden contraction; the baffle is assumed, BIN_BAFFLE_K).
 * Source: ACGIH Industrial Ventilation, trap or settling chamber 1.5 VP; contraction law of many texts.
 * Checked: test/reference/drop-out-bin.test.ts.
 *
 * @example
 * ```ts
 * dropOutBinCoefficient({ inletArea_m2: 0.00785, outletArea_m2: 0.00785, baffle: false }); // 1.5
 * ```
 */
export function dropOutBinCoefficient(bin: DropOutBin): number {
  const A1 = requirePositive('inletArea_m2', bin.inletArea_m2);
  const A2 = requirePositive('outletArea_m2', bin.outletArea_m2);
  const chamber = bin.chamberArea_m2;
  if (chamber !== undefined) {
    requirePositive('chamberArea_m2', chamber);
    if (chamber < Math.max(A1, A2)) {
      throw new ImpossibleInput(
        'chamberArea_m2',
        chamber,
        `at least as large as both openings (${Math.max(A1, A2)})`,
      );
    }
  }
  const widening = chamber === undefined ? 1 : (1 - A1 / chamber) ** 2;
  const narrowing = SHARP_OUTLET_K.value * (chamber === undefined ? 1 : 1 - A2 / chamber);
  return widening + (bin.baffle ? BIN_BAFFLE_K.value : 0) + narrowing * (A1 / A2) ** 2;
}

/** How dust settles in a chamber: undisturbed, or stirred up all the way. */
export type SettlingModel = 'laminar' | 'mixed';

/** A chamber through which dust settles. */
export interface SettlingChamber {
  /** `vt`, terminal velocity of the particle [m/s]. */
  readonly terminalVelocity_ms: number;
  /** `A`, floor seen from above [m2]. */
  readonly planArea_m2: number;
  /** `Q` [m3/s]. */
  readonly flow_m3s: number;
}

/** Share that settles from `x = vt A/Q`, by model. */
const SETTLING: Readonly<Record<SettlingModel, (x: number) => number>> = {
  laminar: (x) => Math.min(1, x),
  mixed: (x) => -Math.expm1(-x),
};

/**
 * Share of one particle size that settles in a chamber.
 *
 * A particle falls `vt` times the time that the air stays, over the height of the chamber: `x = vt A/Q`. In undisturbed
 * flow the share is `min(1, x)`; in air that is mixed all the way it is `1 - exp(-x)`, which is the safer of the two
 * and the nearer to a bin with a jet in it.
 *
 * @param chamber - terminal velocity [m/s], floor [m2], flow [m3/s]
 * @param model - `laminar` or `mixed`
 * @returns share that settles [-], 0 to 1
 * @throws ImpossibleInput naming `terminalVelocity_ms` below zero, `planArea_m2` or `flow_m3s` not above zero
 *
 * @remarks
 * Range: air spread over the whole chamber; light dust load.
 * Outside: the value is still returned.
 * Leaves out: the throw of the jet, pick-up from the heap, a baffle, swirl in a round bin.
 * Limits: both models agree for `x` near 0; `mixed` never reaches 1.
 * Basis: from-memory (page not seen).
 * Source: Hinds, Aerosol Technology; Cooper and Alley, settling chambers.
 * Checked: test/reference/drop-out-bin.test.ts (many thin mixed slices; hand calculation).
 *
 * @example
 * ```ts
 * settledShare({ terminalVelocity_ms: 0.5, planArea_m2: 0.2, flow_m3s: 0.1 }, 'mixed'); // 0.6321
 * ```
 */
export function settledShare(chamber: SettlingChamber, model: SettlingModel): number {
  const vt = requireNotNegative('terminalVelocity_ms', chamber.terminalVelocity_ms);
  const area = requirePositive('planArea_m2', chamber.planArea_m2);
  return SETTLING[model]((vt * area) / requirePositive('flow_m3s', chamber.flow_m3s));
}

/** A drop-out bin as a separator: the grade curve needs the floor, the flow and how fast each size falls. */
export interface SettlingBin {
  /** Floor seen from above [m2]. */
  readonly planArea_m2: number;
  /** Flow [m3/s]. */
  readonly flow_m3s: number;
  readonly model: SettlingModel;
  /** Terminal velocity [m/s] of a size [m], such as `terminalVelocity` of core/conveying. */
  readonly terminalVelocity: (diameter_m: number) => number;
}

/**
 * Grade curve of a drop-out bin, for lognormalCatch and seriesCatch.
 *
 * settledShare at the terminal velocity of each size.
 *
 * @param bin - floor [m2], flow [m3/s], model and terminal velocity
 * @returns share caught [-] of each size [m]
 * @throws ImpossibleInput as settledShare, when the curve is called
 *
 * @remarks
 * Range: as settledShare.
 * Outside: as settledShare.
 * Leaves out: as settledShare.
 * Limits: as settledShare.
 * Basis: from-memory (as settledShare).
 * Source: as settledShare.
 * Checked: test/reference/drop-out-bin.test.ts.
 *
 * @example
 * ```ts
 * dropOutBinGrade({ planArea_m2: 0.2, flow_m3s: 0.1, model: 'laminar', terminalVelocity: () => 0.25 })(1e-4); // 0.5
 * ```
 */
export function dropOutBinGrade(bin: SettlingBin): (diameter_m: number) => number {
  const { planArea_m2, flow_m3s, model } = bin;
  return (diameter_m) =>
    settledShare({ terminalVelocity_ms: bin.terminalVelocity(diameter_m), planArea_m2, flow_m3s }, model);
}
