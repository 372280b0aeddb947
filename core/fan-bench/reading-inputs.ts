import { READING_ERRORS } from '../catalogue/reading-errors.ts';
import type { UsualError } from '../catalogue/reading-errors.ts';
import type { Quantity } from '../document/quantity-field.ts';
import type { Reading, ReadingKind, ReadingOf } from '../document/schema-fans.ts';
import { holePlateFlow, SHARP_HOLE } from '../fan/tests/hole-plate.ts';
import { bellInletFlow, conicalInletFlow, INLET_ERRORS } from '../fan/tests/inlet-throat.ts';
import { orificeCoefficientError, orificeFlow } from '../fan/tests/orifice-plate.ts';
import type { OrificePlate, OrificeReading } from '../fan/tests/orifice-plate.ts';
import { fanStaticPressure } from '../fan/tests/tapped-suction.ts';
import { pitotMeanVelocity, traverseProfileError } from '../fan/tests/traverse.ts';
import { waterColumn } from '../fan/tests/water-gauge.ts';

/** One figure that a reading rests on, with its standard error and what other readings share it. */
export interface Input {
  readonly value: number;
  readonly error: number;
  /** Name of the cause that all readings of a kind have in common; null for an error of this reading alone. */
  readonly common: string | null;
}

export type Inputs = Readonly<Record<string, Input>>;
export type Values = Readonly<Record<string, number>>;

/** The room's air at the time of a reading. */
export interface TestAir {
  readonly density_kgm3: number;
  readonly viscosity_Pas: number;
  readonly temperature_K: number;
  /** Null where compression is left out. */
  readonly pressure_Pa: number | null;
}

/** What passes the fan in a test. */
export interface Passed {
  readonly flow_m3s: number;
  readonly staticPressure_Pa: number;
  /** At the inlet of the fan. */
  readonly density_kgm3: number;
}

/** A kind of reading: which figures it rests on, and how flow and pressure follow from them. */
export interface Measure {
  readonly inputs: Inputs;
  readonly passed: (values: Values) => Passed;
}

const usual = (row: UsualError, value: number) => (row.fixed + row.share * Math.abs(value)) / 2;
/** An error typed in the unit of the reading, or the usual one. */
export const own = (typed: Quantity | undefined, row: UsualError, value: number): Input => ({
  value,
  error: typed ? Math.abs(typed.si) / 2 : usual(row, value),
  common: null,
});
/** An error typed as a share of the reading, or the usual one. */
export const ownShare = (typed: Quantity | undefined, row: UsualError, value: number): Input => ({
  value,
  error: typed ? Math.abs(typed.si * value) / 2 : usual(row, value),
  common: null,
});
const factor = (error: number, common: string | null): Input => ({ value: 1, error, common });

const areaOf = (diameter_m: number) => (Math.PI / 4) * diameter_m ** 2;

/** Density at a suction below the room's pressure, at the room's temperature. */
function thinned(density_kgm3: number, suction_Pa: number, air: TestAir): number {
  return air.pressure_Pa === null ? density_kgm3 : density_kgm3 * (1 - suction_Pa / air.pressure_Pa);
}

/** Flow and pressure at the fan from the mass flow and the suction at the tap. */
function behindTap(
  massFlow_kgs: number,
  suction_Pa: number,
  tap: Quantity | undefined,
  density: number,
  air: TestAir,
): Passed {
  const density_kgm3 = thinned(density, suction_Pa, air);
  const duct_m = tap?.si ?? null;
  const staticPressure_Pa = fanStaticPressure({ suction_Pa, duct_m, massFlow_kgs, density_kgm3 });
  return { flow_m3s: massFlow_kgs / density_kgm3, staticPressure_Pa, density_kgm3 };
}

type Measures = { readonly [K in ReadingKind]: (reading: ReadingOf<K>, air: TestAir) => Measure };

const density = (air: TestAir): Input => ({
  value: air.density_kgm3,
  error: usual(READING_ERRORS.density, air.density_kgm3),
  common: 'density',
});

const suction = (r: { suction: Quantity; errors?: Reading['errors'] }) =>
  own(r.errors?.pressure, READING_ERRORS.pressure, r.suction.si);

const MEASURES: Measures = {
  'sealed-lift': (r, air) => ({
    inputs: { lift: own(r.errors?.height, READING_ERRORS.height, r.lift.si), density: density(air) },
    passed: (v) => {
      const suction_Pa = waterColumn({
        rise_m: v.lift!,
        tube_m: r.tube?.si ?? null,
        vessel_m: r.vessel?.si ?? null,
        temperature_K: air.temperature_K,
      });
      return behindTap(0, suction_Pa, undefined, v.density!, air);
    },
  }),
  'sealed-suction': (r, air) => ({
    inputs: { suction: suction(r), density: density(air) },
    passed: (v) => behindTap(0, v.suction!, undefined, v.density!, air),
  }),
  'hole-plate': (r, air) => {
    const given = r.dischargeCoefficient?.si;
    const C = given ?? SHARP_HOLE.value;
    const common = r.errors?.flow ? Math.abs(r.errors.flow.si) / 2 : SHARP_HOLE.commonError;
    return {
      inputs: {
        suction: suction(r),
        hole: own(r.errors?.size, READING_ERRORS.size, r.hole.si),
        dischargeCoefficient: { value: C, error: C * common, common: 'discharge coefficient of the plates' },
        edge: factor(SHARP_HOLE.ownError, null),
        density: density(air),
      },
      passed: (v) => {
        const massFlow = holePlateFlow({
          hole_m: v.hole!,
          holes: r.holes ?? 1,
          dischargeCoefficient: v.dischargeCoefficient! * v.edge!,
          suction_Pa: v.suction!,
          frontPipe_m: r.box?.si ?? null,
          backPipe_m: r.tapDiameter?.si ?? null,
          density_kgm3: v.density!,
          roomPressure_Pa: air.pressure_Pa,
        });
        return behindTap(massFlow, v.suction!, r.tapDiameter, v.density!, air);
      },
    };
  },
  orifice: (r, air) => ({
    inputs: {
      suction: suction(r),
      bore: own(r.errors?.size, READING_ERRORS.size, r.bore.si),
      difference: own(r.errors?.pressure, READING_ERRORS.head, r.difference.si),
      coefficient: factor(orificeError(r), 'coefficient of the orifice plates'),
      density: density(air),
    },
    passed: (v) => {
      const reading = orificeReading(r, air, v);
      const massFlow = orificeFlow(reading).massFlow_kgs * v.coefficient!;
      return behindTap(massFlow, v.suction!, r.tapDiameter, v.density!, air);
    },
  }),
  'inlet-throat': (r, air) => ({
    inputs: {
      suction: suction(r),
      throat: own(r.errors?.size, READING_ERRORS.size, r.throat.si),
      difference: own(r.errors?.pressure, READING_ERRORS.head, r.difference.si),
      coefficient: factor(
        r.errors?.flow ? Math.abs(r.errors.flow.si) / 2 : INLET_ERRORS[r.inlet].commonError,
        `coefficient of the ${r.inlet}`,
      ),
      density: density(air),
    },
    passed: (v) => {
      const inlet = {
        throat_m: v.throat!,
        difference_Pa: v.difference!,
        density_kgm3: v.density!,
        viscosity_Pas: air.viscosity_Pas,
      };
      const massFlow = (r.inlet === 'cone' ? conicalInletFlow : bellInletFlow)(inlet) * v.coefficient!;
      return behindTap(massFlow, v.suction!, r.tapDiameter, v.density!, air);
    },
  }),
  'pitot-traverse': (r, air) => {
    const heads = r.heads.map((head) => head.si);
    return {
      inputs: {
        ...traverseInputs(r, heads.length),
        heads: factor(headError(heads, r.errors?.pressure), null),
        density: density(air),
      },
      passed: (v) => {
        const local = thinned(v.density!, v.suction!, air);
        const velocity = pitotMeanVelocity(heads, local) * v.heads! * v.profile!;
        return behindTap(local * velocity * areaOf(v.duct!), v.suction!, r.tapDiameter, v.density!, air);
      },
    };
  },
  'vane-traverse': (r, air) => {
    const mean = r.velocities.reduce((sum, velocity) => sum + velocity.si, 0) / r.velocities.length;
    return {
      inputs: {
        ...traverseInputs(r, r.velocities.length),
        velocity: {
          ...own(undefined, READING_ERRORS.velocity, mean),
          common: 'calibration of the vane wheel',
        },
        density: density(air),
      },
      passed: (v) => {
        const local = thinned(v.density!, v.suction!, air);
        const massFlow = local * v.velocity! * v.profile! * areaOf(v.duct!);
        return behindTap(massFlow, v.suction!, r.tapDiameter, v.density!, air);
      },
    };
  },
  point: (r) => {
    const { flow, pressure } = r.errors ?? {};
    const scatter = READING_ERRORS.table.share / 8;
    return {
      inputs: {
        flow: { value: r.flow.si, error: Math.abs(r.flow.si) * (flow ? flow.si / 2 : scatter), common: null },
        pressure: {
          value: r.pressure.si,
          error: pressure ? pressure.si / 2 : Math.abs(r.pressure.si) * scatter,
          common: null,
        },
        tableFlow: factor(flow ? 0 : READING_ERRORS.table.share / 2, 'flow scale of the table'),
        tablePressure: factor(pressure ? 0 : READING_ERRORS.table.share / 2, 'pressure scale of the table'),
      },
      passed: (v) => ({
        flow_m3s: v.flow! * v.tableFlow!,
        staticPressure_Pa: v.pressure! * v.tablePressure!,
        density_kgm3: r.density?.si ?? TABLE_DENSITY.value,
      }),
    };
  },
};

/** Density that a table of points means where it does not say [kg/m3]. */
export const TABLE_DENSITY = {
  value: 1.2,
  source: 'standard air of AMCA 210 and ISO 5801',
  basis: 'from-memory',
} as const;

function traverseInputs(r: ReadingOf<'pitot-traverse'> | ReadingOf<'vane-traverse'>, count: number): Inputs {
  const profile = r.errors?.flow ? Math.abs(r.errors.flow.si) / 2 : traverseProfileError(count);
  return {
    suction: suction(r),
    duct: own(r.errors?.size, READING_ERRORS.size, r.duct.si),
    profile: factor(profile, null),
  };
}

/** Standard error of the mean velocity from that of each head, as a share of it. */
function headError(heads: readonly number[], typed: Quantity | undefined): number {
  let [sum, squares] = [0, 0];
  for (const head of heads) {
    const root = Math.sqrt(Math.max(head, 0));
    const { error } = own(typed, READING_ERRORS.head, head);
    sum += root;
    squares += (error / Math.max(2 * root, Math.sqrt(error))) ** 2 || 0;
  }
  return sum > 0 ? Math.sqrt(squares) / sum : 0;
}

export function orificePlate(r: ReadingOf<'orifice'>): OrificePlate {
  return { bore_m: r.bore.si, pipe_m: r.pipe.si, taps: r.taps };
}

export function orificeReading(r: ReadingOf<'orifice'>, air: TestAir, v: Values): OrificeReading {
  const before = r.upstreamSuction?.si ?? 0;
  return {
    ...orificePlate(r),
    bore_m: v.bore!,
    difference_Pa: v.difference!,
    density_kgm3: thinned(v.density!, before, air),
    viscosity_Pas: air.viscosity_Pas,
    upstreamPressure_Pa: air.pressure_Pa === null ? null : air.pressure_Pa - before,
  };
}

/** By the standard at a turbulent flow; a bore that does not fit is told elsewhere. */
function orificeError(r: ReadingOf<'orifice'>): number {
  if (r.errors?.flow) return Math.abs(r.errors.flow.si) / 2;
  return r.bore.si < r.pipe.si ? orificeCoefficientError(orificePlate(r), 10_000) : 0;
}

/** Figures of a reading and how flow and pressure follow from them. */
export function measureOf(reading: Reading, air: TestAir): Measure {
  return (MEASURES[reading.kind] as (reading: Reading, air: TestAir) => Measure)(reading, air);
}
