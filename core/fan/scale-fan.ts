import { requirePositive } from '../quantities/impossible-input.ts';
import { fanCurve, type FanCurve } from './fan-points.ts';

/** What changes between a tested fan and another of the same design. */
export interface FanScale {
  /** New over old speed [-]. */
  readonly speedRatio: number;
  /** New over old wheel diameter, every other dimension along with it [-]. */
  readonly diameterRatio: number;
  /** New over old density of air [-]. */
  readonly densityRatio: number;
}

/**
 * The curve of another size of the same design, at another speed and density.
 *
 * Affinity laws for geometrically similar fans: `Q ~ n D^3`, `p ~ rho n^2 D^2`, `P ~ rho n^3 D^5`; the outlet area
 * goes with `D^2`. Current goes with power, as in `fanCurrent`.
 *
 * @param curve - made by `fanCurve`
 * @param scale - ratios of speed, diameter and density
 * @returns a new compiled fan whose rated speed and density are the new ones
 * @throws ImpossibleInput naming a ratio that is not finite or not above zero
 *
 * @remarks
 * Range: sizes and speeds within about a factor of two, running clearance scaled along (common practice).
 * Outside: the value is still returned.
 * Leaves out: Reynolds number, clearance and surface that do not scale: a smaller fan does worse than this says. Rotor
 *   stress goes with tip speed squared: a faster or larger wheel must be checked for burst before it is run.
 * Limits: all ratios 1 give the same curve; scaling there and back gives the same curve.
 * Basis: published (fan laws read in Process Heating, a trade journal).
 * Source: fan laws, AMCA 210 / ISO 5801, as in the journal Process Heating.
 * Checked: test/reference/fan.test.ts, test/core/fan/fan-curve.test.ts.
 *
 * @example
 * ```ts
 * const points = [{ flow_m3s: 0, pressure_Pa: 2000 }, { flow_m3s: 0.1, pressure_Pa: 1000 }];
 * const rated = { ratedSpeed_rpm: 3000, ratedDensity_kgm3: 1.2 };
 * const fan = fanCurve({ pressureKind: 'total', outletArea_m2: 0.01, points, ...rated });
 * const larger = scaleFan(fan, { speedRatio: 1, diameterRatio: 1.1, densityRatio: 1 });
 * larger.input.points[1].flow_m3s; // 0.1331
 * larger.input.points[1].pressure_Pa; // 1210
 * ```
 */
export function scaleFan(curve: FanCurve, scale: FanScale): FanCurve {
  const n = requirePositive('speedRatio', scale.speedRatio);
  const d = requirePositive('diameterRatio', scale.diameterRatio);
  const rho = requirePositive('densityRatio', scale.densityRatio);
  const power = rho * n ** 3 * d ** 5;
  const { input } = curve;
  const scaled = (value: number | null | undefined) => (typeof value === 'number' ? value * power : null);
  return fanCurve({
    pressureKind: input.pressureKind,
    outletArea_m2: input.outletArea_m2 * d ** 2,
    points: input.points.map((point) => ({
      flow_m3s: point.flow_m3s * n * d ** 3,
      pressure_Pa: point.pressure_Pa * rho * n ** 2 * d ** 2,
      power_W: scaled(point.power_W),
      current_A: scaled(point.current_A),
    })),
    ratedSpeed_rpm: input.ratedSpeed_rpm === null ? null : input.ratedSpeed_rpm * n,
    ratedDensity_kgm3: input.ratedDensity_kgm3 * rho,
  });
}
