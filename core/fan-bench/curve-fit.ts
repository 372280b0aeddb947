import type { FanDesign } from '../document/schema-fans.ts';
import { coefficientScales } from '../fan/reduce/coefficients.ts';
import type { CoefficientScales } from '../fan/reduce/coefficients.ts';
import { curveError, estimateCurve } from '../fan/reduce/estimate.ts';
import type { CurveEstimate, MeasuredPoint } from '../fan/reduce/estimate.ts';
import { powerFamily, pressureFamily } from '../fan/reduce/families.ts';
import { withoutFaintRise } from '../fan/reduce/faint-rise.ts';
import { fanShapeOf, outletShareOf } from './fan-shape.ts';
import type { Outcome, OutcomeField, ReducedReading } from './reading-values.ts';
import type { Reduction } from './reduction.ts';
import type { BenchAir } from './room.ts';

/** Spans between the points of a curve. */
const SPANS = 20;
/** Flow coefficients closer than this, as a share of free delivery, are one and the same place on the curve. */
const SAME_PLACE = 0.05;

/** The curve of a fan in coefficients, and what turns it back into flow and pressure. */
export interface CurveFit {
  readonly pressure: CurveEstimate;
  /** Power as shaft power where the motor is known, else as that of the supply. */
  readonly power: CurveEstimate | null;
  readonly powerIs: 'shaft' | 'input' | null;
  /** Flow coefficients of the points, from the blocked inlet to free delivery. */
  readonly flows: readonly number[];
  readonly scales: CoefficientScales;
  /** Speed at which the curve is given [rpm]; null where nobody read one. */
  readonly speed_rpm: number | null;
  readonly density_kgm3: number;
  /** Readings of the curve, in the order of `pressure.distances`. */
  readonly rows: readonly ReducedReading[];
  /** Fewer than two places of the curve were measured. */
  readonly shapeAssumed: boolean;
}

/** Lays the curve through the readings that are used; null where there is none. */
export function fitCurve(design: FanDesign, air: BenchAir, reduction: Reduction): CurveFit | null {
  const rows = reduction.readings.filter((row) => row.used);
  const sealed = rows.map((row) => row.worked!.nominal.staticPressure_Pa);
  const highest = Math.max(...sealed);
  if (rows.length === 0 || !(highest > 0)) return null;
  const shape = fanShapeOf(design);
  const speeds = rows.flatMap(({ worked }) => worked!.nominal.speed_rpm ?? []).sort((a, b) => a - b);
  const known = speeds.length > 0;
  // without any speed, one at which the highest pressure is what such a wheel gives: it drops out again below
  const stand = (speed_rpm: number) =>
    coefficientScales({
      wheelDiameter_m: design.wheelDiameter.si,
      speed_rpm,
      density_kgm3: air.density_kgm3,
    });
  const guess = 1000 * Math.sqrt(highest / (shape.shutOff.median * stand(1000).pressure_Pa));
  const scales = stand(known ? (design.speed?.si ?? speeds[speeds.length >> 1]!) : guess);

  const asPoints = (value: 'pressure' | 'shaft' | 'input') =>
    measuredPoints(rows, value, known ? null : scales);
  const family = pressureFamily(shape, outletShareOf(design));
  const pressure = estimateCurve(
    family,
    asPoints('pressure').map(({ point }) => point),
  );
  const freeFlow = family.freeFlow(pressure.unknowns);
  const shafts = asPoints('shaft');
  const chosen = shafts.length > 0 ? shafts : asPoints('input');
  const power =
    chosen.length === 0
      ? null
      : estimateCurve(
          powerFamily(shape, freeFlow),
          chosen.map(({ point }) => point),
        );
  const places: number[] = [];
  for (const { point } of asPoints('pressure')) {
    if (places.every((place) => Math.abs(place - point.flow) > SAME_PLACE * freeFlow))
      places.push(point.flow);
  }
  return {
    pressure,
    power,
    powerIs: power === null ? null : shafts.length > 0 ? 'shaft' : 'input',
    flows: Array.from({ length: SPANS + 1 }, (_, i) => (freeFlow * i) / SPANS),
    scales,
    speed_rpm: known ? (design.speed?.si ?? speeds[speeds.length >> 1]!) : null,
    density_kgm3: air.density_kgm3,
    rows,
    shapeAssumed: places.length < 2,
  };
}

const FIELDS = {
  pressure: { coefficient: 'pressureCoefficient', plain: 'staticPressure_Pa', scale: 'pressure_Pa' },
  shaft: { coefficient: 'shaftCoefficient', plain: 'shaftPower_W', scale: 'power_W' },
  input: { coefficient: 'inputCoefficient', plain: 'inputPower_W', scale: 'power_W' },
} as const;

/**
 * Readings as points in coefficients, errors of their own apart from those that they share. Without a speed all are
 * taken at one and the same, `stand`.
 */
function measuredPoints(
  rows: readonly ReducedReading[],
  what: keyof typeof FIELDS,
  stand: CoefficientScales | null,
): { row: ReducedReading; point: MeasuredPoint }[] {
  const { coefficient, plain, scale } = FIELDS[what];
  const flowField: OutcomeField = stand === null ? 'flowCoefficient' : 'flow_m3s';
  const valueField: OutcomeField = stand === null ? coefficient : plain;
  const flowOf = (o: Outcome) => (o[flowField] ?? 0) / (stand?.flow_m3s ?? 1);
  const valueOf = (o: Outcome) => (o[valueField] ?? 0) / (stand?.[scale] ?? 1);
  const carrying = rows.filter(({ worked }) => worked!.nominal[valueField] !== null);
  const sources = [
    ...new Set(carrying.flatMap(({ worked }) => worked!.shifts.flatMap(({ common }) => common ?? []))),
  ];
  return carrying.map((row) => {
    const { nominal, shifts } = row.worked!;
    const shift = (by: Outcome) => ({ flow: flowOf(by), value: valueOf(by) });
    return {
      row,
      point: {
        flow: flowOf(nominal),
        value: valueOf(nominal),
        own: shifts.filter(({ common }) => common === null).map(({ by }) => shift(by)),
        common: sources.map((source) => {
          const same = shifts.find(({ common }) => common === source);
          return same === undefined ? { flow: 0, value: 0 } : shift(same.by);
        }),
      },
    };
  });
}

/** Most likely pressures at the points of the curve [Pa], a rise that the errors do not carry laid flat. */
export function fittedPressures(fit: CurveFit): number[] {
  const { pressure, flows, scales } = fit;
  const out = new Float64Array(pressure.family.unknowns + 1);
  const raw = flows.map((flow) => pressure.family.evaluate(flow, pressure.unknowns, out));
  const errorOfRise = (from: number, to: number) => curveError(pressure, flows[to]!, flows[from]!);
  return withoutFaintRise(raw, errorOfRise).map((value) => value * scales.pressure_Pa);
}

/** Most likely powers at the points of the curve [W]; null where no reading tells one. */
export function fittedPowers(fit: CurveFit): number[] | null {
  const { power, flows, scales } = fit;
  if (power === null) return null;
  const out = new Float64Array(power.family.unknowns + 1);
  return flows.map((flow) => Math.max(0, power.family.evaluate(flow, power.unknowns, out)) * scales.power_W);
}

/** Distance of a reading from the curve through the others, in standard errors; null where it is not of the curve. */
export function fitOfReading(fit: CurveFit, row: ReducedReading): number | null {
  const place = fit.rows.indexOf(row);
  return place < 0 || fit.rows.length < 2 ? null : fit.pressure.distances[place]!;
}
