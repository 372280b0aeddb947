import type { FanDesign } from '../document/schema-fans.ts';
import type { FanCurveInput } from '../fan/fan-points.ts';

/** The room's air as the bench needs it: that of a solution. */
export interface BenchAir {
  readonly density_kgm3: number;
  readonly viscosity_Pas: number;
  /** Null where the document gives density alone. */
  readonly temperature_K: number | null;
  readonly pressure_Pa: number | null;
}

/** The curve that a fan's readings give, or why there is none. */
export type DesignCurve =
  | { readonly ok: true; readonly input: FanCurveInput }
  | { readonly ok: false; readonly message: string; readonly remedy: string };

/**
 * Curve of a fan of the document from its readings, at its speed and the density of the room; without sampling, and
 * kept by the identity of the design, so that an edit elsewhere costs nothing.
 */
export function designCurve(design: FanDesign, air: BenchAir): DesignCurve {
  const points = design.readings
    .flatMap((reading) =>
      reading.kind === 'point' && reading.flow.si >= 0
        ? [{ flow_m3s: reading.flow.si, pressure_Pa: reading.pressure.si }]
        : [],
    )
    .sort((a, b) => a.flow_m3s - b.flow_m3s)
    .filter((point, i, all) => i === 0 || point.flow_m3s > all[i - 1]!.flow_m3s);
  if (points.length < 2) {
    return {
      ok: false,
      message: 'no reading of this fan can be used for a curve',
      remedy: 'add a sealed lift and a plate or two',
    };
  }
  return {
    ok: true,
    input: {
      pressureKind: 'static',
      outletArea_m2: (Math.PI / 4) * design.outletDiameter.si ** 2,
      points,
      ratedSpeed_rpm: design.speed?.si ?? null,
      ratedDensity_kgm3: air.density_kgm3,
    },
  };
}
