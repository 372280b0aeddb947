import { describe, expect, it } from 'vitest';
import { FAN_SHAPES } from '../../../../core/catalogue/fan-shapes.ts';
import { coefficientScales } from '../../../../core/fan/reduce/coefficients.ts';
import { holePlateFlow } from '../../../../core/fan/tests/hole-plate.ts';
import { plateSizes } from '../../../../core/fan/tests/plate-sizes.ts';
import { monotoneCurve, curveValueAndSlope } from '../../../../core/fan/monotone-curve.ts';
import { brentRoot } from '../../../../core/fan/root.ts';

describe.each(Object.values(FAN_SHAPES))('$label', (shape) => {
  it('the points of its plates lie evenly between blocked and open, at any speed', () => {
    const fan = {
      wheelDiameter_m: 0.4,
      outletDiameter_m: 0.2,
      shutOffCoefficient: 0.9,
      freeFlowCoefficient: 0.2,
    };
    const sizes = plateSizes(shape, fan, 4);
    const curve = monotoneCurve(shape.flow, shape.pressure);
    const out = new Float64Array(2);
    for (const speed_rpm of [1500, 6000]) {
      const scales = coefficientScales({ wheelDiameter_m: 0.4, speed_rpm, density_kgm3: 1.2 });
      const free = 0.2 * scales.flow_m3s;
      sizes.forEach((hole_m, i) => {
        // second route: where the fan's curve and the hole's flow cross
        const flow = brentRoot(
          (q) => {
            curveValueAndSlope(curve, q / free, out);
            const plate = { hole_m, holes: 1, dischargeCoefficient: 0.6, density_kgm3: 1.2 };
            const open = { frontPipe_m: null, backPipe_m: null, roomPressure_Pa: null };
            const suction_Pa = Math.max(0.9 * scales.pressure_Pa * out[0]!, 1e-9);
            return holePlateFlow({ ...plate, ...open, suction_Pa }) / 1.2 - q;
          },
          free * 1e-6,
          free,
        );
        expect(Math.abs(flow / free - (i + 1) / 5)).toBeLessThan(0.01);
      });
    }
  });
  it('grow with each plate', () => {
    const fan = {
      wheelDiameter_m: 0.2,
      outletDiameter_m: 0.1,
      shutOffCoefficient: null,
      freeFlowCoefficient: null,
    };
    const sizes = plateSizes(shape, fan, 5);
    sizes.slice(1).forEach((size, i) => expect(size).toBeGreaterThan(sizes[i]!));
  });
});
