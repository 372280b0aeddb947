import type { FanDesign } from '../document/schema-fans.ts';
import { curveBand } from '../fan/reduce/band.ts';
import { outletVelocityPressure } from '../fan/reduce/coefficients.ts';
import { fittedPowers, fittedPressures } from './curve-fit.ts';
import type { CurveFit } from './curve-fit.ts';
import { fanShapeOf } from './fan-shape.ts';
import type { BenchCurve } from './result.ts';

/** The curve of a fit in flow and pressure, with its band and the whole curves that the band was taken from. */
export function benchCurve(design: FanDesign, fit: CurveFit, samples: number, seed: number): BenchCurve {
  const { scales, density_kgm3, rows, shapeAssumed } = fit;
  const pressures = fittedPressures(fit);
  const powers = fittedPowers(fit);
  const band = curveBand(fit.pressure, fit.flows, samples, seed);
  const points = fit.flows.map((coefficient, i) => {
    const flow_m3s = coefficient * scales.flow_m3s;
    const staticPressure_Pa = pressures[i]!;
    const outlet = outletVelocityPressure(flow_m3s, design.outletDiameter.si, density_kgm3);
    const totalPressure_Pa = staticPressure_Pa + outlet;
    const power_W = powers?.[i] ?? null;
    return {
      flow_m3s,
      staticPressure_Pa,
      // a faint rise laid flat must not leave its own band
      // where the low edge has come to nothing the fan blows no more; how far below zero a pump would pull it says nothing
      low_Pa: Math.min(Math.max(band.low[i]! * scales.pressure_Pa, 0), staticPressure_Pa),
      high_Pa: Math.max(band.high[i]! * scales.pressure_Pa, staticPressure_Pa),
      totalPressure_Pa,
      power_W,
      efficiency: power_W === null || power_W <= 0 ? null : (flow_m3s * totalPressure_Pa) / power_W,
    };
  });
  const sum = (of: (point: (typeof points)[number]) => number) =>
    points.reduce((all, point) => all + of(point), 0);
  const shape = fanShapeOf(design);
  const measured = `${rows.length} ${rows.length === 1 ? 'reading' : 'readings'} of this document`;
  return {
    speed_rpm: fit.speed_rpm,
    density_kgm3,
    outletArea_m2: (Math.PI / 4) * design.outletDiameter.si ** 2,
    points,
    shapeAssumed,
    bandShare:
      sum((point) => point.high_Pa - point.low_Pa) / 2 / sum((point) => Math.abs(point.staticPressure_Pa)),
    samples: band.samples.map((sample) => ({
      staticPressure_Pa: sample.map((value) => value * scales.pressure_Pa),
    })),
    source: shapeAssumed ? `height from ${measured}; shape usual for a ${shape.label}, assumed` : measured,
    basis: shapeAssumed ? shape.basis : 'measured-by-user',
  };
}
