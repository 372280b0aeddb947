import { requirePositive } from '../../quantities/impossible-input.ts';
import type { Sourced } from '../../quantities/sourced.ts';
import type { ValidRange } from '../../quantities/range.ts';

/** Where the coefficient of a conical inlet was fitted. */
export const CONICAL_INLET_RANGE: ValidRange = { 'Reynolds number': { low: 20_000, unit: '-' } };

/** Standard errors of the flow by a shaped inlet, as a share of it [-]. */
export interface InletError extends Sourced {
  readonly commonError: number;
}

export const INLET_ERRORS: Readonly<Record<'cone' | 'bell', InletError>> = {
  cone: {
    commonError: 0.01,
    source: 'ISO 5801 gives 1.5 to 2 % with a standard cone; a home-made one is assumed not much worse',
    basis: 'from-memory',
  },
  bell: {
    commonError: 0.0075,
    source: 'span 0.97 to 0.99 of rounded inlets, ISO 5801',
    basis: 'from-memory',
  },
};

/** A shaped inlet from the open room and the suction at the wall of its throat. */
export interface InletThroat {
  /** `d`, throat [m]. */
  readonly throat_m: number;
  /** `dp`, static suction at the wall of the throat [Pa]. */
  readonly difference_Pa: number;
  /** `rho`, density in the room [kg/m3]. */
  readonly density_kgm3: number;
  /** `mu`, dynamic viscosity [Pa s]. */
  readonly viscosity_Pas: number;
}

function idealFlow(inlet: InletThroat): number {
  const area = (Math.PI / 4) * requirePositive('throat_m', inlet.throat_m) ** 2;
  const density = requirePositive('density_kgm3', inlet.density_kgm3);
  return area * Math.sqrt(2 * density * requirePositive('difference_Pa', inlet.difference_Pa));
}

/**
 * Mass flow into a conical inlet of 60 degrees.
 *
 * `m = a (pi/4) d^2 sqrt(2 rho dp)`, where `a` holds discharge and expansion together: `a = 1 - 0.5 Re^-0.2` up to
 * Re 300 000, 0.96 above, with the Reynolds number of the throat; repeated until the flow stands still.
 *
 * @param inlet - throat `throat_m` [m], suction `difference_Pa` [Pa] and air
 * @returns mass flow [kg/s]
 * @throws ImpossibleInput naming the field that is not above zero
 *
 * @remarks
 * Range: as data in CONICAL_INLET_RANGE; four wall taps half a throat behind the cone, no obstacle near it.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: draughts across the inlet, a screen in it.
 * Limits: the two parts meet at Re 300 000 within 0.0002.
 * Basis: from-memory (page not seen).
 * Source: ISO 5801, conical inlet.
 * Checked: test/reference/fan-tests.test.ts.
 *
 * @example
 * ```ts
 * conicalInletFlow({ throat_m: 0.1, difference_Pa: 100, density_kgm3: 1.2, viscosity_Pas: 1.81e-5 }); // 0.11533
 * ```
 */
export function conicalInletFlow(inlet: InletThroat): number {
  const ideal = idealFlow(inlet);
  const perReynolds = 4 / (Math.PI * inlet.throat_m * requirePositive('viscosity_Pas', inlet.viscosity_Pas));
  let a = 0.95;
  for (let step = 0; step < 60; step++) {
    const Re = a * ideal * perReynolds;
    const next = Re > 3e5 ? 0.96 : 1 - 0.5 * Math.max(Re, 100) ** -0.2;
    if (Math.abs(next - a) < 1e-14) break;
    a = next;
  }
  return a * ideal;
}

/** Share of the ideal flow that a well-rounded inlet passes [-]. */
export const BELL_COEFFICIENT = 0.98;

/**
 * Mass flow into a well-rounded inlet (bell).
 *
 * `m = a (pi/4) d^2 sqrt(2 rho dp)` with `a = 0.98`: the air follows the wall, and only its boundary layer is missing.
 *
 * @param inlet - throat `throat_m` [m], suction `difference_Pa` [Pa] and air
 * @returns mass flow [kg/s]
 * @throws ImpossibleInput naming the field that is not above zero
 *
 * @remarks
 * Range: radius of the rounding a quarter of the throat or more, Re above 50 000; below it the layer is thicker.
 * Outside: the value is still returned.
 * Leaves out: draughts, a screen, expansion of the air (0.2 % at 500 Pa).
 * Limits: the coefficient lies between 0.97 and 0.99.
 * Basis: from-memory (page not seen).
 * Source: ISO 5801, inlet nozzle.
 * Checked: test/reference/fan-tests.test.ts.
 *
 * @example
 * ```ts
 * bellInletFlow({ throat_m: 0.1, difference_Pa: 100, density_kgm3: 1.2, viscosity_Pas: 1.81e-5 }); // 0.11924
 * ```
 */
export function bellInletFlow(inlet: InletThroat): number {
  return BELL_COEFFICIENT * idealFlow(inlet);
}
