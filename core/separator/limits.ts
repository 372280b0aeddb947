import { RE_ENTRAINMENT_RATIO } from '../catalogue/separator-models.ts';
import { GRAVITY_MS2 } from '../conveying/gravity.ts';
import { ImpossibleInput, requirePositive } from '../quantities/impossible-input.ts';
import type { ValidRange } from '../quantities/range.ts';
import { checkSeparatorFlow } from './cut-size.ts';
import type { SeparatorFlow } from './cut-size.ts';
import { inletVelocity } from './proportions.ts';
import type { CycloneGeometry } from './proportions.ts';

export { INLET_VELOCITY_RANGE } from '../catalogue/separator-models.ts';

/** Kalen and Zenz's constant 2.055 in ft, lb, s turned into SI: `2.055 x 0.3048^-(0.067 + 2/3)` [1/(m^0.067 (m/s)^(2/3))]. */
const KALEN_ZENZ_SI = 2.055 * 0.3048 ** -(0.067 + 2 / 3);

/** Advisory only: for small bodies the upper bound falls well below ordinary practice. */
export const RE_ENTRAINMENT_RANGE: ValidRange = {
  'inlet velocity over saltation velocity': { high: RE_ENTRAINMENT_RATIO.value, unit: '-' },
};

/**
 * Inlet velocity at which dust on the wall of a cyclone is just carried along, by Kalen and Zenz.
 *
 * `vs = 4.913 w [ (b/D)^0.4/(1 - b/D)^(1/3) ] D^0.067 vi^(2/3)`, `w = [4 g mu rho_p/(3 rho^2)]^(1/3)`, in SI (2.055 in
 * ft, lb, s).
 *
 * @param geometry - dimensions [m]
 * @param flow - air and particle; the temperature is not used
 * @returns `vs` [m/s]
 * @throws ImpossibleInput naming a field that is not above zero, or `inletWidth_m` not below the body diameter [m]
 *
 * @remarks
 * Range: from saltation in horizontal pipe and cyclones of 0.3 m and more.
 * Outside: the value is still returned.
 * Leaves out: particle size, bounce, wall roughness.
 * Limits: goes as `vi^(2/3)`, so the ratio `vi/vs` grows with flow. At 0.2 m it flags 7 to 9 m/s, below all practice.
 * Basis: from-memory (page not seen; the SI constant follows from the units).
 * Source: Kalen and Zenz 1974, in Koch and Licht, Chem. Eng., 7 Nov 1977.
 * Checked: test/reference/cyclone-limits.test.ts (second route in feet and pounds).
 *
 * @example
 * ```ts
 * const cyclone = standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2);
 * const flow = { flow_m3s: 0.075, density_kgm3: 1.2, viscosity_Pas: 1.81e-5, temperature_K: 293.15, particleDensity_kgm3: 1000 };
 * saltationVelocityKalenZenz(cyclone, flow); // 9.290
 * ```
 */
export function saltationVelocityKalenZenz(geometry: CycloneGeometry, flow: SeparatorFlow): number {
  const { viscosity_Pas: mu, density_kgm3: rho, particleDensity_kgm3, flow_m3s } = checkSeparatorFlow(flow);
  const D = requirePositive('bodyDiameter_m', geometry.bodyDiameter_m);
  const width = requirePositive('inletWidth_m', geometry.inletWidth_m) / D;
  if (width >= 1)
    throw new ImpossibleInput('inletWidth_m', geometry.inletWidth_m, `narrower than the body (${D})`);
  const w = Math.cbrt((4 * GRAVITY_MS2 * mu * particleDensity_kgm3) / (3 * rho * rho));
  const shape = width ** 0.4 / Math.cbrt(1 - width);
  return KALEN_ZENZ_SI * w * shape * D ** 0.067 * inletVelocity(flow_m3s, geometry) ** (2 / 3);
}

/**
 * How near a cyclone is to picking up dust that it has caught.
 *
 * `vi/vs` with `vs` of saltationVelocityKalenZenz: best near 1.25, re-entrainment above 1.36. Advisory only.
 *
 * @param geometry - dimensions [m]
 * @param flow - air and particle
 * @returns `vi/vs` [-]
 * @throws ImpossibleInput as saltationVelocityKalenZenz
 *
 * @remarks
 * Range: as saltationVelocityKalenZenz; the advice as data in RE_ENTRAINMENT_RANGE.
 * Outside: the value is still returned.
 * Leaves out: as saltationVelocityKalenZenz.
 * Limits: grows as the cube root of the flow.
 * Basis: from-memory (page not seen).
 * Source: Kalen and Zenz 1974, in Koch and Licht, Chem. Eng., 7 Nov 1977.
 * Checked: test/reference/cyclone-limits.test.ts (second route in feet and pounds).
 *
 * @example
 * ```ts
 * const cyclone = standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2);
 * const flow = { flow_m3s: 0.075, density_kgm3: 1.2, viscosity_Pas: 1.81e-5, temperature_K: 293.15, particleDensity_kgm3: 1000 };
 * reEntrainmentRatio(cyclone, flow); // 1.615
 * ```
 */
export function reEntrainmentRatio(geometry: CycloneGeometry, flow: SeparatorFlow): number {
  return inletVelocity(flow.flow_m3s, geometry) / saltationVelocityKalenZenz(geometry, flow);
}
