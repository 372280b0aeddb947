import {
  ImpossibleInput,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../quantities/impossible-input.ts';
import { monotoneCurve, type MonotoneCurve } from './monotone-curve.ts';

/** One point of a fan's curve, at the rated speed and density. */
export interface FanPoint {
  /** Volume flow at the inlet [m3/s]. */
  readonly flow_m3s: number;
  /** Rise of pressure of the kind that `pressureKind` names [Pa]. */
  readonly pressure_Pa: number;
  /** Shaft (or electrical) power [W], if known. */
  readonly power_W?: number | null;
  /** Motor current [A], if known. */
  readonly current_A?: number | null;
}

/** A fan as its data sheet or its tests give it. */
export interface FanCurveInput {
  /** `static`: outlet static less inlet total pressure, as most sheets print; `total`: outlet total less inlet total. */
  readonly pressureKind: 'static' | 'total';
  /** Area of the outlet, which carries the outlet's velocity pressure [m2]. */
  readonly outletArea_m2: number;
  /** At least two points, flow strictly increasing. */
  readonly points: readonly FanPoint[];
  /** Speed at which the points hold [rpm], if known. */
  readonly ratedSpeed_rpm: number | null;
  /** Density at which the points hold [kg/m3]; data sheets mostly mean 1.2. */
  readonly ratedDensity_kgm3: number;
}

/** A compiled fan; made by `fanCurve`. All curves are at the rated speed and density, over volume flow. */
export interface FanCurve {
  readonly input: FanCurveInput;
  /** The pressure as given, static or total, over flow [Pa over m3/s]. */
  readonly pressure: MonotoneCurve;
  /** Outlet velocity pressure over flow squared at rated density; zero if total pressure was given [Pa s2/m6]. */
  readonly velocityFactor: number;
  /** Power over flow [W over m3/s]; null if fewer than two points carry it. */
  readonly power: MonotoneCurve | null;
  /** Current over flow [A over m3/s]; null if fewer than two points carry it. */
  readonly current: MonotoneCurve | null;
}

/**
 * Compiles a fan's points into smooth curves of pressure, power and current over flow.
 *
 * The curve is laid through the pressure that was given. If that is static, the outlet's velocity pressure
 * `rho (Q/A2)^2/2` is added when the curve is read, so that interpolation never touches more than the points.
 *
 * @param input - points, kind of pressure, outlet area, rated speed and density
 * @returns the compiled fan; `power` and `current` are null where fewer than two points carry a figure
 * @throws ImpossibleInput naming the field or the point: fewer than two points, flow below zero or not strictly
 *   increasing, power or current below zero, area, speed or density not above zero, anything not finite
 *
 * @remarks
 * Range: the flows of the points; `extrapolation` tells how far beyond them a flow lies.
 * Outside: curves go on along their end slope; the caller refuses what lies beyond EXTRAPOLATION_MARGIN.
 * Leaves out: scatter of the tests (the curve passes through each point); swirl at the outlet.
 * Limits: two points give a straight line of the given pressure.
 * Basis: published (definitions of fan total and fan static pressure read, Burton in Occupational Health and
 *   Safety).
 * Source: AMCA 210 / ISO 5801, fan pressures; Burton, Occupational Health and Safety.
 * Checked: test/reference/fan.test.ts, test/core/fan/fan-curve.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ flow_m3s: 0, pressure_Pa: 2000 }, { flow_m3s: 0.1, pressure_Pa: 1000 }];
 * const rated = { ratedSpeed_rpm: 3450, ratedDensity_kgm3: 1.2 };
 * fanCurve({ pressureKind: 'static', outletArea_m2: 0.01, points, ...rated }).velocityFactor; // 6000
 * ```
 */
export function fanCurve(input: FanCurveInput): FanCurve {
  requirePositive('outletArea_m2', input.outletArea_m2);
  requirePositive('ratedDensity_kgm3', input.ratedDensity_kgm3);
  if (input.ratedSpeed_rpm !== null) requirePositive('ratedSpeed_rpm', input.ratedSpeed_rpm);
  const { points } = input;
  if (points.length < 2)
    throw new ImpossibleInput('points', `a list of ${points.length}`, 'at least two points');
  points.forEach((point, i) => {
    requireNotNegative(`points[${i}].flow_m3s`, point.flow_m3s);
    requireFinite(`points[${i}].pressure_Pa`, point.pressure_Pa);
    if (typeof point.power_W === 'number') requireNotNegative(`points[${i}].power_W`, point.power_W);
    if (typeof point.current_A === 'number') requireNotNegative(`points[${i}].current_A`, point.current_A);
    const before = points[i - 1];
    if (before && !(point.flow_m3s > before.flow_m3s)) {
      const rule = `above the flow of the point before it, ${before.flow_m3s}`;
      throw new ImpossibleInput(`points[${i}].flow_m3s`, point.flow_m3s, rule);
    }
  });
  return {
    input,
    pressure: monotoneCurve(
      points.map((point) => point.flow_m3s),
      points.map((point) => point.pressure_Pa),
    ),
    velocityFactor:
      input.pressureKind === 'static' ? input.ratedDensity_kgm3 / (2 * input.outletArea_m2 ** 2) : 0,
    power: optionalCurve(points, 'power_W'),
    current: optionalCurve(points, 'current_A'),
  };
}

/** Curve through the points that carry the figure; null if they are fewer than two. */
function optionalCurve(points: readonly FanPoint[], field: 'power_W' | 'current_A'): MonotoneCurve | null {
  const carrying = points.filter((point) => typeof point[field] === 'number');
  if (carrying.length < 2) return null;
  return monotoneCurve(
    carrying.map((point) => point.flow_m3s),
    carrying.map((point) => point[field]!),
  );
}
