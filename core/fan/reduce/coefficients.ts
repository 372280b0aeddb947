import { requireNotNegative, requirePositive } from '../../quantities/impossible-input.ts';

/** A wheel as it turns. */
export interface WheelState {
  /** `D`, wheel diameter [m]. */
  readonly wheelDiameter_m: number;
  /** `n`, speed [rpm]. */
  readonly speed_rpm: number;
  /** `rho`, density at the inlet [kg/m3]. */
  readonly density_kgm3: number;
}

/** What flow, pressure and power are divided by to become coefficients. */
export interface CoefficientScales {
  readonly flow_m3s: number;
  readonly pressure_Pa: number;
  readonly power_W: number;
}

/**
 * Flow, pressure and power of which a fan's coefficients are the shares.
 *
 * With the tip speed `u = pi D n/60` and the disc `A = pi D^2/4`: flow `A u`, pressure `rho u^2/2`, power
 * `rho A u^3/2`. So `phi = Q/(A u)`, `psi = p/(rho u^2/2)`, `lambda = P/(rho A u^3/2)`, and efficiency is
 * `phi psi/lambda`. At every speed and density one fan has one curve of `psi` and `lambda` over `phi`.
 *
 * @param state - wheel `wheelDiameter_m` [m], speed `speed_rpm` [rpm] and density `density_kgm3` [kg/m3]
 * @returns the three scales
 * @throws ImpossibleInput naming the field that is not above zero
 *
 * @remarks
 * Range: one fan at speeds within about a factor of two of each other; air that is nearly incompressible in it.
 * Outside: the values are still returned; a slow wheel does somewhat worse than a fast one (Reynolds number).
 * Leaves out: Reynolds number, compression, running clearances that open with speed.
 * Limits: these are the affinity laws in another form: `Q ~ n D^3`, `p ~ rho n^2 D^2`, `P ~ rho n^3 D^5`.
 * Basis: from-memory (page not seen).
 * Source: Eck, Fans, Pergamon, 1973 (flow, pressure and power coefficients); fan laws of AMCA 210 / ISO 5801.
 * Checked: test/reference/fan-reduction.test.ts.
 *
 * @example
 * ```ts
 * coefficientScales({ wheelDiameter_m: 0.2, speed_rpm: 6000, density_kgm3: 1.2 }).pressure_Pa; // 2368.7
 * ```
 */
export function coefficientScales(state: WheelState): CoefficientScales {
  const D = requirePositive('wheelDiameter_m', state.wheelDiameter_m);
  const tip = (Math.PI * D * requirePositive('speed_rpm', state.speed_rpm)) / 60;
  const dynamic = (requirePositive('density_kgm3', state.density_kgm3) * tip ** 2) / 2;
  const flow_m3s = (Math.PI / 4) * D ** 2 * tip;
  return { flow_m3s, pressure_Pa: dynamic, power_W: flow_m3s * dynamic };
}

/**
 * Velocity pressure in the outlet of a fan: what fan total pressure has over fan static pressure.
 *
 * `p_v2 = rho (Q/A2)^2/2`.
 *
 * @param flow_m3s - `Q`, volume flow [m3/s]
 * @param outletDiameter_m - of the outlet with the area `A2` [m]
 * @param density_kgm3 - `rho` [kg/m3]
 * @returns velocity pressure [Pa]
 * @throws ImpossibleInput naming the parameter: flow below zero, diameter or density not above zero
 *
 * @remarks
 * Range: a round outlet of that area, mean velocity.
 * Outside: the value is still returned.
 * Leaves out: the uneven jet at an outlet without a duct.
 * Limits: no flow gives zero.
 * Basis: from-memory (page not seen; the definition).
 * Source: AMCA 210 / ISO 5801, fan velocity pressure.
 * Checked: test/reference/fan-reduction.test.ts.
 *
 * @example
 * ```ts
 * outletVelocityPressure(0.1, 0.1, 1.2); // 97.27
 * ```
 */
export function outletVelocityPressure(
  flow_m3s: number,
  outletDiameter_m: number,
  density_kgm3: number,
): number {
  const area = (Math.PI / 4) * requirePositive('outletDiameter_m', outletDiameter_m) ** 2;
  const density = requirePositive('density_kgm3', density_kgm3);
  return (density * (requireNotNegative('flow_m3s', flow_m3s) / area) ** 2) / 2;
}
