import { BARTH_FRICTION } from '../catalogue/separator-models.ts';
import { ImpossibleInput, requirePositive } from '../quantities/impossible-input.ts';
import type { CycloneGeometry } from './proportions.ts';

/** Velocities in a cyclone by Barth's model. */
export interface BarthSwirl {
  /** `vw`, tangential at the wall [m/s]. */
  readonly wall_ms: number;
  /** `vcs`, tangential on the control surface below the outlet pipe [m/s]. */
  readonly core_ms: number;
  /** `vx`, mean along the axis in the outlet pipe [m/s]. */
  readonly axial_ms: number;
  /** `Hcs`, height of the control surface [m]. */
  readonly surfaceHeight_m: number;
}

/**
 * Velocities in a cyclone by Barth.
 *
 * The inlet jet is squeezed to `al = 1 - 0.4 (b/R)^0.794` of its width, which gives the wall velocity
 * `vw = vi Rin/(al R)`, `Rin = R - b/2`. Angular momentum less wall friction gives the core
 * `vcs = vw (R/Rx)/(1 + Hcs R pi f vw/Q)`, `f = 0.02`. `Hcs` runs down to the dust outlet, or to where the cone gets
 * as narrow as the outlet pipe.
 *
 * @param geometry - dimensions [m]
 * @param flow_m3s - `Q`, above zero [m3/s]
 * @returns wall, core and axial velocity [m/s] and the height of the control surface [m]
 * @throws ImpossibleInput naming `flow_m3s`, a dimension [m] that is not above zero, or `outletDepth_m` where the pipe
 * touches the cone
 *
 * @remarks
 * Range: slot inlet with `b/R` up to 0.5; smooth walls.
 * Outside: the value is still returned.
 * Leaves out: dust load, which adds friction.
 * Limits: without friction the core keeps the angular momentum of the wall.
 * Basis: from-memory (page not seen).
 * Source: Barth 1956, in Hoffmann and Stein, Gas Cyclones and Swirl Tubes, ch. 4-6.
 * Checked: test/reference/cyclone-swirl.test.ts (momentum balance, hand calculation), no outside value found.
 *
 * @example
 * ```ts
 * barthSwirl(standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2), 0.075).core_ms; // 17.58
 * ```
 */
export function barthSwirl(geometry: CycloneGeometry, flow_m3s: number): BarthSwirl {
  const { bodyDiameter_m: D, outletDiameter_m: De, outletDepth_m: S, dustOutletDiameter_m: B } = geometry;
  const { inletHeight_m: a, inletWidth_m: b, cylinderHeight_m: h, totalHeight_m: H } = geometry;
  const Q = requirePositive('flow_m3s', flow_m3s);
  const R = requirePositive('bodyDiameter_m', D) / 2;
  const Rx = requirePositive('outletDiameter_m', De) / 2;
  const inlet_ms = Q / (requirePositive('inletHeight_m', a) * requirePositive('inletWidth_m', b));
  const squeeze = 1 - 0.4 * (b / R) ** 0.794;
  if (!(b < R && squeeze > 0))
    throw new ImpossibleInput('inletWidth_m', b, `narrower than the radius (${R})`);
  const wall_ms = (inlet_ms * (R - b / 2)) / (squeeze * R);
  const surfaceHeight_m = De <= B ? H - S : ((H - h) * (D - De)) / (D - B) + h - S;
  if (!(surfaceHeight_m > 0)) {
    throw new ImpossibleInput(
      'outletDepth_m',
      S,
      'short enough that the outlet pipe stays clear of the cone',
    );
  }
  const friction = (surfaceHeight_m * R * Math.PI * BARTH_FRICTION.value * wall_ms) / Q;
  return {
    wall_ms,
    core_ms: (wall_ms * (R / Rx)) / (1 + friction),
    axial_ms: Q / (Math.PI * Rx * Rx),
    surfaceHeight_m,
  };
}
