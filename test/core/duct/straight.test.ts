import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isothermalChokingFlow, isothermalOutletPressure } from '../../../core/duct/straight.ts';

const SEED = 20240612;

describe('isothermal run', () => {
  it('gives back the flow by the flow equation, up to choking', () => {
    const run = fc.record({
      inletPressure_Pa: fc.double({ min: 2e4, max: 2e5, noNaN: true }),
      area_m2: fc.double({ min: 1e-4, max: 0.1, noNaN: true }),
      temperature_K: fc.double({ min: 250, max: 330, noNaN: true }),
      fLoverD: fc.double({ min: 1e-3, max: 100, noNaN: true }),
    });
    const share = fc.double({ min: 1e-3, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(run, share, (given, part) => {
        const full = { ...given, gasConstant_JkgK: 287.05 };
        const massFlow_kgs = part * isothermalChokingFlow(full);
        const P1 = full.inletPressure_Pa;
        const P2 = isothermalOutletPressure({ ...full, massFlow_kgs });
        expect(P2).toBeGreaterThan(0);
        expect(P2).toBeLessThan(P1);
        const RT = 287.05 * full.temperature_K;
        const back =
          (full.area_m2 ** 2 * (P1 * P1 - P2 * P2)) / (RT * (full.fLoverD + 2 * Math.log(P1 / P2)));
        expect(Math.abs(Math.sqrt(back) / massFlow_kgs - 1)).toBeLessThan(1e-6);
        expect((massFlow_kgs * RT) / (P2 * full.area_m2)).toBeLessThan(Math.sqrt(RT) * 1.0001);
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });
});
