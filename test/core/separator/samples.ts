import fc from 'fast-check';
import { CYCLONE_PROPORTIONS } from '../../../core/catalogue/cyclones.ts';
import type { SeparatorFlow } from '../../../core/separator/efficiency.ts';
import { standardCyclone } from '../../../core/separator/proportions.ts';
import type { CycloneGeometry } from '../../../core/separator/proportions.ts';

/** Room air and wood-like dust through a cyclone of 0.2 m at 15 m/s in the inlet. */
export function smallFlow(flow_m3s: number): SeparatorFlow {
  return {
    flow_m3s,
    density_kgm3: 1.2,
    viscosity_Pas: 1.81e-5,
    temperature_K: 293.15,
    particleDensity_kgm3: 1000,
  };
}

/** The two small cyclones of the regression vectors. */
export const SMALL_LAPPLE = standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2);
export const SMALL_STAIRMAND = standardCyclone(CYCLONE_PROPORTIONS['stairmand-high-efficiency'], 0.2);

/** Any standard shape, from thimble to silo. */
export const anyCyclone: fc.Arbitrary<CycloneGeometry> = fc
  .tuple(
    fc.constantFrom(...Object.values(CYCLONE_PROPORTIONS)),
    fc.double({ min: -2, max: 1.3, noNaN: true }),
  )
  .map(([proportions, log]) => standardCyclone(proportions, 10 ** log));

/** Any flow, dust and air that can be, however absurd. */
export const anyFlow: fc.Arbitrary<SeparatorFlow> = fc
  .record({
    flow: fc.double({ min: -6, max: 3, noNaN: true }),
    density_kgm3: fc.double({ min: 0.1, max: 5, noNaN: true }),
    viscosity_Pas: fc.double({ min: 5e-6, max: 1e-4, noNaN: true }),
    temperature_K: fc.double({ min: 150, max: 1500, noNaN: true }),
    particleDensity_kgm3: fc.double({ min: 10, max: 20000, noNaN: true }),
  })
  .map(({ flow, ...rest }) => ({ flow_m3s: 10 ** flow, ...rest }));

/** Particle sizes from a nanometre to a metre [m]. */
export const anySize = fc.double({ min: -9, max: 0, noNaN: true }).map((log) => 10 ** log);
