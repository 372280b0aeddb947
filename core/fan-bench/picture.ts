import type { FanDesign } from '../document/schema-fans.ts';
import { coefficientScales } from '../fan/reduce/coefficients.ts';
import type { CoefficientScales } from '../fan/reduce/coefficients.ts';
import type { Estimate, FanBenchResult } from './result.ts';

/** What a picture of a fan's tests needs beside the result: every reading brought to the curve's speed and density. */
export interface BenchPicture {
  /** What flow and pressure of the curve are divided by to become coefficients; null where it has no speed. */
  readonly scales: CoefficientScales | null;
  readonly readings: readonly PicturedReading[];
}

export interface PicturedReading {
  readonly id: string;
  readonly used: boolean;
  readonly flow_m3s: Estimate;
  readonly staticPressure_Pa: Estimate;
  /** False where it has no speed, and so stands as it was read. */
  readonly brought: boolean;
}

const times = ({ value, error }: Estimate, scale: number): Estimate => ({
  value: value * scale,
  error: error * scale,
});

/** Brings readings to the curve by their coefficients, which are the same at every speed and density. */
export function benchPicture(design: FanDesign, { curve, readings }: FanBenchResult): BenchPicture {
  const scales =
    curve === null || curve.speed_rpm === null
      ? null
      : coefficientScales({
          wheelDiameter_m: design.wheelDiameter.si,
          speed_rpm: curve.speed_rpm,
          density_kgm3: curve.density_kgm3,
        });
  return {
    scales,
    readings: readings.flatMap((reading): PicturedReading[] => {
      const { id, used, flow_m3s, staticPressure_Pa, flowCoefficient, pressureCoefficient } = reading;
      if (flow_m3s === null || staticPressure_Pa === null) return [];
      if (scales === null || flowCoefficient === null || pressureCoefficient === null) {
        return [{ id, used, flow_m3s, staticPressure_Pa, brought: false }];
      }
      return [
        {
          id,
          used,
          flow_m3s: times(flowCoefficient, scales.flow_m3s),
          staticPressure_Pa: times(pressureCoefficient, scales.pressure_Pa),
          brought: true,
        },
      ];
    }),
  };
}
