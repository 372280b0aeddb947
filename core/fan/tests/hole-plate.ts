import { requireBetween, requirePositive } from '../../quantities/impossible-input.ts';
import type { Sourced } from '../../quantities/sourced.ts';
import type { ValidRange } from '../../quantities/range.ts';
import { plateExpansibility } from './expansibility.ts';

/** Where a drilled hole measures flow as a sharp edge does. */
export const HOLE_PLATE_RANGE: ValidRange = {
  'hole diameter': { low: 0.008, unit: 'm' },
  'hole area over pipe area in front': { high: 0.25, unit: '-' },
  'suction over room pressure': { high: 0.25, unit: '-' },
};

/** Discharge coefficient of a sharp hole and how far it may be off, as standard errors [-]. */
export interface DischargeCoefficient extends Sourced {
  readonly value: number;
  /** Of all plates of one hand together: edge, burr, thickness. */
  readonly commonError: number;
  /** Of one plate against the others. */
  readonly ownError: number;
}

export const SHARP_HOLE: DischargeCoefficient = {
  value: 0.6,
  commonError: 0.012,
  ownError: 0.005,
  source:
    'sharp-edged orifice, ISO 5167 as the diameter ratio tends to zero, 0.596, as quoted in an open library',
  basis: 'published',
};

/** What the errors of SHARP_HOLE rest on. */
export const SHARP_HOLE_ERRORS: Sourced = {
  source: 'no source; edge and burr of holes drilled at home',
  basis: 'assumed',
};

/** A plate with holes in front of a fan, and the suction behind it. */
export interface HolePlate {
  /** `d`, diameter of each hole [m]. */
  readonly hole_m: number;
  /** `n`, number of holes [-]. */
  readonly holes: number;
  /** `C`, discharge coefficient [-]. */
  readonly dischargeCoefficient: number;
  /** `s`, suction behind the plate, below the room [Pa]. */
  readonly suction_Pa: number;
  /** `D1`, pipe in front of the plate [m]; null for the open room. */
  readonly frontPipe_m: number | null;
  /** `D2`, pipe behind the plate in which the suction is read [m]; null for a still box. */
  readonly backPipe_m: number | null;
  /** `rho`, density in the room [kg/m3]. */
  readonly density_kgm3: number;
  /** `p1`, absolute pressure of the room [Pa]; null leaves compression out. */
  readonly roomPressure_Pa: number | null;
}

/**
 * Mass flow through sharp-edged holes in a thin plate.
 *
 * From the open room into a still box, `m = C epsilon n (pi/4) d^2 sqrt(2 rho s)`. A pipe in front brings air that
 * already moves; its total pressure is that of the room, so that the flow is larger by `1/sqrt(1 - b^2 (1 - C^2))` with
 * `b` the holes' area over that of the pipe. In a pipe behind the plate the jets spread out and win back pressure: with
 * `r` the pipe's area over that of the jets, `C epsilon A`, momentum gives `s = (rho v^2/2) (1 + (r - 1)^2)` for the
 * velocity `v` in the pipe, and the flow is larger by `1/sqrt(1 - 2/r + 2/r^2)`.
 *
 * @param plate - holes, coefficient, suction, pipes and air
 * @returns mass flow [kg/s]
 * @throws ImpossibleInput naming the field: a size, coefficient, suction or density not above zero, suction not below
 *   the room's pressure, or holes larger than a pipe
 *
 * @remarks
 * Range: as data in HOLE_PLATE_RANGE; an edge that is sharp on the side of the room, plate thinner than a fiftieth of
 *   the hole or bevelled behind, holes two diameters from each other and from walls, a tap in a pipe six diameters behind.
 * Outside: the value is still returned; `findOutside` reports it. A thick plate passes up to a third more.
 * Leaves out: rise of the coefficient below Re 10 000 (about 0.6 at 30 000, 0.62 at 8000); friction of the pipes.
 * Limits: pipes without bound give the plain formula. Twice the holes pass twice the air.
 * Basis: from-memory (pages not seen; the corrections for pipes follow from momentum).
 * Source: ISO 5167 orifice as the diameter ratio tends to zero; Borda-Carnot for the pipe behind.
 * Checked: test/reference/fan-tests.test.ts.
 *
 * @example
 * ```ts
 * const open = { frontPipe_m: null, backPipe_m: null, roomPressure_Pa: null, density_kgm3: 1.2 };
 * holePlateFlow({ hole_m: 0.03, holes: 1, dischargeCoefficient: 0.6, suction_Pa: 2000, ...open }); // 0.029384
 * ```
 */
export function holePlateFlow(plate: HolePlate): number {
  const C = requirePositive('dischargeCoefficient', plate.dischargeCoefficient);
  const suction = requirePositive('suction_Pa', plate.suction_Pa);
  const density = requirePositive('density_kgm3', plate.density_kgm3);
  const square = requirePositive('holes', plate.holes) * requirePositive('hole_m', plate.hole_m) ** 2;
  const area = (Math.PI / 4) * square;
  const upstreamPressure_Pa = plate.roomPressure_Pa;
  const epsilon = plateExpansibility(0, { difference_Pa: suction, upstreamPressure_Pa });
  let factor = 1;
  if (plate.frontPipe_m !== null) {
    const b = areaShare('hole_m', square, requirePositive('frontPipe_m', plate.frontPipe_m));
    factor /= Math.sqrt(1 - b ** 2 * (1 - Math.min(C, 1) ** 2));
  }
  if (plate.backPipe_m !== null) {
    const b = areaShare('hole_m', square, requirePositive('backPipe_m', plate.backPipe_m));
    const jets = Math.min(C * epsilon, 1) * b;
    factor /= Math.sqrt(1 - 2 * jets + 2 * jets ** 2);
  }
  return C * epsilon * area * factor * Math.sqrt(2 * density * suction);
}

function areaShare(field: string, square: number, pipe_m: number): number {
  return requireBetween(field, Math.sqrt(square), 0, pipe_m) ** 2 / pipe_m ** 2;
}
