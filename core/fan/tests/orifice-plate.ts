import { ImpossibleInput, requirePositive } from '../../quantities/impossible-input.ts';
import type { ValidRange } from '../../quantities/range.ts';
import { plateExpansibility } from './expansibility.ts';

/** Where the difference over an orifice plate is read. */
export type OrificeTaps = 'corner' | 'flange' | 'one-and-half';

/** Tap distances in front of and behind the plate over the pipe's diameter, and whether 25.4 mm stands for both. */
export const ORIFICE_TAPS: Readonly<Record<OrificeTaps, { front: number; back: number; inch: boolean }>> = {
  corner: { front: 0, back: 0, inch: false },
  flange: { front: 0.0254, back: 0.0254, inch: true },
  'one-and-half': { front: 1, back: 0.47, inch: false },
};

/** Where the standard holds; the least Reynolds number also depends on the plate, see `leastOrificeReynolds`. */
export const ORIFICE_RANGE: ValidRange = {
  'diameter ratio': { low: 0.1, high: 0.75, unit: '-' },
  bore: { low: 0.0125, unit: 'm' },
  'pipe diameter': { low: 0.05, high: 1, unit: 'm' },
  'pressure ratio': { low: 0.75, high: 1, unit: '-' },
};

/** An orifice plate in its pipe. */
export interface OrificePlate {
  /** `d`, bore [m]. */
  readonly bore_m: number;
  /** `D`, inside diameter of the pipe [m]. */
  readonly pipe_m: number;
  readonly taps: OrificeTaps;
}

/** What an orifice plate reads. */
export interface OrificeReading extends OrificePlate {
  /** `dp`, difference over the taps [Pa]. */
  readonly difference_Pa: number;
  /** `rho1`, density in front of the plate [kg/m3]. */
  readonly density_kgm3: number;
  /** `mu`, dynamic viscosity [Pa s]. */
  readonly viscosity_Pas: number;
  /** `p1`, absolute pressure in front of the plate [Pa]; null leaves compression out. */
  readonly upstreamPressure_Pa: number | null;
}

/** Flow through an orifice plate with what it follows from. */
export interface OrificeFlow {
  readonly massFlow_kgs: number;
  readonly dischargeCoefficient: number;
  readonly expansibility: number;
  readonly pipeReynolds: number;
}

function ratioOf(plate: OrificePlate): number {
  const beta = requirePositive('bore_m', plate.bore_m) / requirePositive('pipe_m', plate.pipe_m);
  if (!(beta < 1)) throw new ImpossibleInput('bore_m', plate.bore_m, `below the pipe's ${plate.pipe_m} m`);
  return beta;
}

/**
 * Discharge coefficient of an orifice plate by Reader-Harris and Gallagher.
 *
 * The equation of ISO 5167-2: a coefficient of the bore, terms in the Reynolds number `(10^6 beta/Re)`, terms in the
 * distances of the taps (`L1` in front, `L2'` behind, `M2' = 2 L2'/(1 - beta)`), and one for pipes below 71.12 mm.
 *
 * @param plate - bore `bore_m` [m], pipe `pipe_m` [m] and taps
 * @param pipeReynolds - `Re`, of the pipe [-]
 * @returns `C` [-]
 * @throws ImpossibleInput naming the field: size or Reynolds number not above zero, bore not below the pipe
 *
 * @remarks
 * Range: as data in ORIFICE_RANGE and `leastOrificeReynolds`; straight pipe in front and behind as the standard says.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: bends close by, a burred or dusty edge, an eccentric plate.
 * Limits: about 0.596 as the diameter ratio tends to zero at a high Reynolds number.
 * Basis: published (read as quoted in an open library; agrees with 33 computed cases to rounding).
 * Source: ISO 5167-2:2003, 5.3.2.1; Reader-Harris, Orifice Plates and Venturi Tubes, Springer, 2015.
 * Checked: test/reference/fan-tests.test.ts.
 *
 * @example
 * ```ts
 * orificeCoefficient({ bore_m: 0.05, pipe_m: 0.1, taps: 'corner' }, 100000); // 0.60687
 * ```
 */
export function orificeCoefficient(plate: OrificePlate, pipeReynolds: number): number {
  const b = ratioOf(plate);
  const Re = requirePositive('pipeReynolds', pipeReynolds);
  const tap = ORIFICE_TAPS[plate.taps];
  const per = tap.inch ? plate.pipe_m : 1;
  const L1 = tap.front / per;
  const L2 = tap.back / per;
  const A = ((19000 * b) / Re) ** 0.8;
  const M2 = (2 * L2) / (1 - b);
  const frontTerm = (0.043 + 0.08 * Math.exp(-10 * L1) - 0.123 * Math.exp(-7 * L1)) * (1 - 0.11 * A);
  const small = plate.pipe_m < 0.07112 ? 0.011 * (0.75 - b) * (2.8 - plate.pipe_m / 0.0254) : 0;
  return (
    0.5961 +
    0.0261 * b ** 2 -
    0.216 * b ** 8 +
    0.000521 * ((1e6 * b) / Re) ** 0.7 +
    (0.0188 + 0.0063 * A) * b ** 3.5 * (1e6 / Re) ** 0.3 +
    (frontTerm * b ** 4) / (1 - b ** 4) -
    0.031 * (M2 - 0.8 * M2 ** 1.1) * b ** 1.3 +
    small
  );
}

/**
 * Least Reynolds number of the pipe at which the standard's coefficient holds.
 *
 * Corner and D and D/2 taps: 5000 up to `beta = 0.56`, `16000 beta^2` above. Flange taps: the larger of 5000 and
 * `170 beta^2 D` with `D` in mm.
 *
 * @param plate - bore `bore_m` [m], pipe `pipe_m` [m] and taps
 * @returns Reynolds number of the pipe [-]
 * @throws ImpossibleInput naming the field: a size not above zero, bore not below the pipe
 *
 * @remarks
 * Range: as data in ORIFICE_RANGE.
 * Outside: the value is still returned.
 * Leaves out: none: it is a rule of the standard.
 * Limits: 5000 for every small plate.
 * Basis: published (read as quoted in an open library; page not seen).
 * Source: ISO 5167-2:2003, 5.3.1.
 * Checked: test/reference/fan-tests.test.ts.
 *
 * @example
 * ```ts
 * leastOrificeReynolds({ bore_m: 0.06, pipe_m: 0.1, taps: 'flange' }); // 6120
 * ```
 */
export function leastOrificeReynolds(plate: OrificePlate): number {
  const b = ratioOf(plate);
  if (plate.taps === 'flange') return Math.max(5000, 170 * b ** 2 * plate.pipe_m * 1000);
  return b <= 0.56 ? 5000 : 16000 * b ** 2;
}

/**
 * Standard error of an orifice plate's discharge coefficient, as a share of it.
 *
 * The standard's uncertainty (nineteen times in twenty), halved: `0.7 - beta` % below `beta = 0.2`, 0.5 % to 0.6,
 * `1.667 beta - 0.5` % above, more for a pipe below 71.12 mm and for `beta > 0.5` below Re 10 000.
 *
 * @param plate - bore `bore_m` [m], pipe `pipe_m` [m] and taps
 * @param pipeReynolds - `Re`, of the pipe [-]
 * @returns share of the coefficient, one standard error [-]
 * @throws ImpossibleInput naming the field: size or Reynolds number not above zero, bore not below the pipe
 *
 * @remarks
 * Range: as data in ORIFICE_RANGE.
 * Outside: the value is still returned, though nothing is known there.
 * Leaves out: a plate made at home, whose edge and fit are worse than the standard asks.
 * Limits: 0.25 % for the plates between 0.2 and 0.6 in a pipe of 71 mm or more.
 * Basis: from-memory (page not seen).
 * Source: ISO 5167-2:2003, 5.3.3.1.
 * Checked: test/reference/fan-tests.test.ts.
 *
 * @example
 * ```ts
 * orificeCoefficientError({ bore_m: 0.07, pipe_m: 0.1, taps: 'corner' }, 50000); // 0.003335
 * ```
 */
export function orificeCoefficientError(plate: OrificePlate, pipeReynolds: number): number {
  const b = ratioOf(plate);
  requirePositive('pipeReynolds', pipeReynolds);
  let percent = b < 0.2 ? 0.7 - b : b <= 0.6 ? 0.5 : 1.667 * b - 0.5;
  if (plate.pipe_m < 0.07112) percent += 0.9 * Math.max(0.75 - b, 0) * (2.8 - plate.pipe_m / 0.0254);
  if (b > 0.5 && pipeReynolds < 10000) percent += 0.5;
  return percent / 200;
}

const MOST_STEPS = 60;

/**
 * Mass flow through an orifice plate by ISO 5167-2.
 *
 * `m = C epsilon (pi/4) d^2 sqrt(2 rho1 dp) / sqrt(1 - beta^4)`, with the coefficient at the Reynolds number that the
 * flow itself has; repeated until the flow stands still to rounding.
 *
 * @param reading - plate, difference and air in front of it
 * @returns mass flow [kg/s], coefficient, expansibility and Reynolds number of the pipe [-]
 * @throws ImpossibleInput naming the field: any figure not above zero, bore not below the pipe, difference not below
 *   the pressure in front
 *
 * @remarks
 * Range: as data in ORIFICE_RANGE and `leastOrificeReynolds`.
 * Outside: the value is still returned; `findOutside` reports it.
 * Leaves out: what `orificeCoefficient` leaves out.
 * Limits: at a high Reynolds number the flow goes with the root of the difference.
 * Basis: published (read as quoted in an open library; agrees with 33 computed cases to 1e-6).
 * Source: ISO 5167-2:2003; iteration as in ISO 5167-1.
 * Checked: test/reference/fan-tests.test.ts.
 *
 * @example
 * ```ts
 * const air = { density_kgm3: 1.2, viscosity_Pas: 1.81e-5, upstreamPressure_Pa: 101325 };
 * orificeFlow({ bore_m: 0.05, pipe_m: 0.1, taps: 'corner', difference_Pa: 1000, ...air }).massFlow_kgs; // 0.060386
 * ```
 */
export function orificeFlow(reading: OrificeReading): OrificeFlow {
  const b = ratioOf(reading);
  const difference_Pa = requirePositive('difference_Pa', reading.difference_Pa);
  const density = requirePositive('density_kgm3', reading.density_kgm3);
  const viscosity = requirePositive('viscosity_Pas', reading.viscosity_Pas);
  const { upstreamPressure_Pa } = reading;
  const expansibility = plateExpansibility(b, { difference_Pa, upstreamPressure_Pa });
  const area = (Math.PI / 4) * reading.bore_m ** 2;
  const perC = (expansibility * area * Math.sqrt(2 * density * difference_Pa)) / Math.sqrt(1 - b ** 4);
  const perReynolds = 4 / (Math.PI * reading.pipe_m * viscosity);
  let C = 0.6;
  for (let step = 0; step < MOST_STEPS; step++) {
    const next = orificeCoefficient(reading, C * perC * perReynolds);
    // at creeping flow the terms in Re grow without bound and a full step swings: half of it settles
    const settled = Math.abs(next - C) <= 1e-14 * next;
    C = step < 20 ? next : (C + next) / 2;
    if (settled) break;
  }
  if (!(C > 0 && C < Infinity))
    throw new ImpossibleInput('difference_Pa', difference_Pa, 'large enough for an orifice plate to measure');
  return {
    massFlow_kgs: C * perC,
    dischargeCoefficient: C,
    expansibility,
    pipeReynolds: C * perC * perReynolds,
  };
}
