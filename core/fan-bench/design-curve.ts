import { printerFor } from '../checks/finding.ts';
import type { Printer } from '../checks/finding.ts';
import type { FanDesign } from '../document/schema-fans.ts';
import { fanCurve } from '../fan/fan-points.ts';
import type { FanCurveInput } from '../fan/fan-points.ts';
import type { UnitSystem } from '../quantities/dimensions.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import { fitCurve, fittedPowers, fittedPressures } from './curve-fit.ts';
import type { CurveFit } from './curve-fit.ts';
import { reduceReadings } from './reduction.ts';
import type { Reduction } from './reduction.ts';
import type { BenchAir } from './room.ts';

export type { BenchAir } from './room.ts';

/** The curve that a fan's readings give, or why there is none. */
export type DesignCurve =
  | { readonly ok: true; readonly input: FanCurveInput }
  | { readonly ok: false; readonly message: string; readonly remedy: string };

/** All that follows from the readings of a fan in one room, without sampling. */
export interface ReducedDesign {
  readonly reduction: Reduction;
  /** Null where `curve` is refused. */
  readonly fit: CurveFit | null;
  readonly curve: DesignCurve;
}

const kept = new WeakMap<FanDesign, Map<string, ReducedDesign>>();
/** Rooms and units in which one design is looked at at a time. */
const MOST_KEPT = 4;

/**
 * Reduces a fan's readings; kept by the identity of the design, so that an edit elsewhere costs nothing.
 *
 * @param units - in which problems are worded
 */
export function reduceDesign(design: FanDesign, air: BenchAir, units: UnitSystem = 'si'): ReducedDesign {
  const key = [units, air.density_kgm3, air.viscosity_Pas, air.temperature_K, air.pressure_Pa].join(' ');
  const known = kept.get(design) ?? new Map<string, ReducedDesign>();
  kept.set(design, known);
  let reduced = known.get(key);
  if (reduced === undefined) {
    if (known.size >= MOST_KEPT) known.clear();
    reduced = reduceAnew(design, air, printerFor(units));
    known.set(key, reduced);
  }
  return reduced;
}

/** Lift below which nothing blows; keeps speeds out at which figures vanish. */
const LEAST_PRESSURE_PA = 1e-6;

const NO_READING = {
  ok: false,
  message: 'no reading of this fan can be used for a curve',
  remedy: 'measure a sealed lift, and a plate or two',
} as const;

function reduceAnew(design: FanDesign, air: BenchAir, print: Printer): ReducedDesign {
  const reduction = reduceReadings(design, air, print);
  try {
    const fit = fitCurve(design, air, reduction);
    if (fit === null) return { reduction, fit, curve: NO_READING };
    const pressures = fittedPressures(fit);
    if (!(pressures[0]! > LEAST_PRESSURE_PA))
      throw new ImpossibleInput('speed', fit.speed_rpm ?? 0, 'high enough for the fan to lift anything');
    const powers = fittedPowers(fit);
    const input: FanCurveInput = {
      pressureKind: 'static',
      outletArea_m2: (Math.PI / 4) * design.outletDiameter.si ** 2,
      points: fit.flows.map((flow, i) => ({
        flow_m3s: flow * fit.scales.flow_m3s,
        pressure_Pa: pressures[i]!,
        // power of the supply is not what a wheel asks of the motor that is described with it
        power_W: design.motor && fit.powerIs === 'input' ? null : (powers?.[i] ?? null),
      })),
      ratedSpeed_rpm: fit.speed_rpm,
      ratedDensity_kgm3: fit.density_kgm3,
    };
    // what cannot be compiled is no curve, and is told here rather than in the middle of a solve
    fanCurve(input);
    return { reduction, fit, curve: { ok: true, input } };
  } catch (error) {
    if (!(error instanceof ImpossibleInput)) throw error;
    const message = `the readings of this fan give no curve: ${error.message}`;
    return { reduction, fit: null, curve: { ok: false, message, remedy: 'check sizes and readings' } };
  }
}

/**
 * Curve of a fan of the document from its readings, at its speed and the density of the room; without sampling, and
 * kept by the identity of the design, so that an edit elsewhere costs nothing. Power is that at the shaft where the
 * motor or the readings tell it, else that of the supply.
 */
export function designCurve(design: FanDesign, air: BenchAir): DesignCurve {
  return reduceDesign(design, air).curve;
}
