import { BARTH_FRICTION, SHEPHERD_LAPPLE_K, STAIRMAND_FRICTION } from '../catalogue/separator-models.ts';
import { ImpossibleInput, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { Sourced } from '../quantities/sourced.ts';
import {
  barthCoefficient,
  casalMartinezBenetCoefficient,
  cokerCoefficient,
  dirgoCoefficient,
  shepherdLappleCoefficient,
  stairmandCoefficient,
} from './loss-coefficients.ts';
import type { CycloneLossContext } from './loss-coefficients.ts';

export { PLAIN_CYCLONE } from './loss-coefficients.ts';
export type { CycloneLossContext } from './loss-coefficients.ts';
import type { CycloneGeometry } from './proportions.ts';

/** Pressure-drop models of a cyclone. */
export type CycloneLossModel =
  'shepherd-lapple' | 'casal-martinez-benet' | 'coker' | 'dirgo' | 'stairmand' | 'barth';

/** One pressure-drop model: its relation, where it holds and what it rests on. */
export interface CycloneLossRow extends Sourced {
  readonly label: string;
  readonly range: ValidRange;
  /** `xi` [-] on the inlet velocity pressure, `dP = xi rho vi^2/2`. */
  readonly coefficient: (geometry: CycloneGeometry, context: CycloneLossContext) => number;
}

/** Quantities by which CYCLONE_LOSS_RANGE speaks of a cyclone. */
export const CYCLONE_LOSS_RANGE: ValidRange = {
  'inlet velocity': { low: 5, high: 30, unit: 'm/s' },
  'body diameter': { low: 0.1, unit: 'm' },
};

/** Every pressure-drop model, side by side; which one counts is the document's choice. */
export const CYCLONE_LOSS_MODELS: Readonly<Record<CycloneLossModel, CycloneLossRow>> = {
  'shepherd-lapple': {
    label: 'Shepherd and Lapple',
    range: CYCLONE_LOSS_RANGE,
    source: SHEPHERD_LAPPLE_K.plain.source,
    basis: SHEPHERD_LAPPLE_K.plain.basis,
    coefficient: shepherdLappleCoefficient,
  },
  'casal-martinez-benet': {
    label: 'Casal and Martinez-Benet',
    range: CYCLONE_LOSS_RANGE,
    source: 'Casal and Martinez-Benet 1983',
    basis: 'from-memory',
    coefficient: casalMartinezBenetCoefficient,
  },
  coker: {
    label: 'Coker',
    range: CYCLONE_LOSS_RANGE,
    source: 'Coker 1993',
    basis: 'from-memory',
    coefficient: cokerCoefficient,
  },
  dirgo: {
    label: 'Dirgo; Ramachandran and others',
    range: CYCLONE_LOSS_RANGE,
    source:
      'Dirgo 1988; Ramachandran, Leith, Dirgo and Feldman 1991, in Wang, Pereira and Hung, Air Pollution Control Engineering, 2004',
    basis: 'published',
    coefficient: dirgoCoefficient,
  },
  stairmand: {
    label: 'Stairmand',
    range: CYCLONE_LOSS_RANGE,
    source: STAIRMAND_FRICTION.source,
    basis: 'from-memory',
    coefficient: stairmandCoefficient,
  },
  barth: {
    label: 'Barth',
    range: CYCLONE_LOSS_RANGE,
    source: BARTH_FRICTION.source,
    basis: 'from-memory',
    coefficient: barthCoefficient,
  },
};

/** What the models say of one cyclone, so that their spread is seen. */
export interface CycloneLossSpread {
  /** Smallest `xi` [-]. */
  readonly lowest: number;
  /** Largest `xi` [-]. */
  readonly highest: number;
  /** Middle `xi` [-]; the mean of the two middle ones where they are even in number. */
  readonly median: number;
  /** `xi` [-] of each model that has a value for this shape. */
  readonly byModel: Readonly<Partial<Record<CycloneLossModel, number>>>;
}

/**
 * Loss coefficients of one cyclone by every model.
 *
 * The models were fitted to different cyclones and differ by half and more; measured losses usually lie between.
 * A model that has no value for the shape is left out of `byModel`.
 *
 * @param geometry - dimensions [m] that passed checkCycloneGeometry
 * @param context - inlet and outlet rim
 * @returns lowest, highest, median and each `xi` [-] on the inlet velocity pressure
 * @throws ImpossibleInput naming a dimension [m] that cannot be
 *
 * @remarks
 * Range: that of the models, CYCLONE_LOSS_RANGE.
 * Outside: the values are still returned.
 * Leaves out: dust load.
 * Limits: none; a summary of models.
 * Basis: from-memory (as its models).
 * Source: the rows of CYCLONE_LOSS_MODELS.
 * Checked: test/reference/stairmand.test.ts (two measured cyclones, median within 3 %).
 *
 * @example
 * ```ts
 * cycloneLossSpread(standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2), PLAIN_CYCLONE).highest; // 8
 * ```
 */
export function cycloneLossSpread(geometry: CycloneGeometry, context: CycloneLossContext): CycloneLossSpread {
  const byModel: Partial<Record<CycloneLossModel, number>> = {};
  const refusals: ImpossibleInput[] = [];
  for (const [model, row] of Object.entries(CYCLONE_LOSS_MODELS)) {
    try {
      byModel[model as CycloneLossModel] = row.coefficient(geometry, context);
    } catch (error) {
      if (!(error instanceof ImpossibleInput)) throw error;
      refusals.push(error);
    }
  }
  const sorted = Object.values(byModel).sort((p, q) => p - q);
  const lowest = sorted[0];
  if (lowest === undefined) throw refusals[0]!;
  const middle = (sorted.length - 1) / 2;
  const median = (sorted[Math.floor(middle)]! + sorted[Math.ceil(middle)]!) / 2;
  return { lowest, highest: sorted[sorted.length - 1]!, median, byModel };
}

/** A loss that the user measured across a separator. */
export interface MeasuredLoss {
  /** Loss of total pressure [Pa]. */
  readonly loss_Pa: number;
  /** Flow through it during the reading [m3/s]. */
  readonly flow_m3s: number;
  /** Density of the air there [kg/m3]. */
  readonly density_kgm3: number;
}

/**
 * Resistance of a separator from a measured loss; it takes the place of a model.
 *
 * Turbulent loss goes as density times flow squared, `dP = r rho Q^2`, so one reading gives `r = dP/(rho Q^2)`. On the
 * velocity pressure in an area `A` the same resistance is the coefficient `2 r A^2`.
 *
 * @param measured - loss, flow and density of one reading
 * @returns `r` [1/m4]
 * @throws ImpossibleInput naming `loss_Pa`, `flow_m3s` or `density_kgm3`: not finite or not above zero
 *
 * @remarks
 * Range: readings of tens of pascals and more, so that the loss is turbulent.
 * Outside: the value is still returned.
 * Leaves out: errors of the reading; dust load at the time.
 * Limits: twice the flow with the same loss gives a quarter of the resistance.
 * Basis: measured-by-user.
 * Source: none, quadratic loss.
 * Checked: test/core/separator/pressure-drop.test.ts (round trip through a coefficient).
 *
 * @example
 * ```ts
 * sectionLossMeasured({ loss_Pa: 600, flow_m3s: 0.1, density_kgm3: 1.2 }); // 50000
 * ```
 */
export function sectionLossMeasured(measured: MeasuredLoss): number {
  const { loss_Pa, flow_m3s, density_kgm3 } = measured;
  requirePositive('loss_Pa', loss_Pa);
  requirePositive('density_kgm3', density_kgm3);
  return loss_Pa / (density_kgm3 * requirePositive('flow_m3s', flow_m3s) ** 2);
}
