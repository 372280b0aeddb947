import { resultant, SHEET_PRACTICE, type Practice, type Stream } from './worked-shop.ts';
import { FPM_ms, INCH_WATER_Pa, STANDARD_DENSITY_kgm3 } from './worked-shop-solved.ts';

/** The method with the density itself in place of 4005 fpm and nothing rounded. */
export const UNROUNDED: Practice = {
  ...SHEET_PRACTICE,
  round: (value) => value,
  standardVelocity_fpm: Math.sqrt((2 * INCH_WATER_Pa) / STANDARD_DENSITY_kgm3) / FPM_ms,
};

/** What streams of unlike speed lose as they become one: mean square of their difference, in velocity pressures. */
const unlikeSpeeds = (streams: readonly Stream[], velocity_fpm: number): number => {
  const flow = streams.reduce((sum, s) => sum + s.flow_cfm, 0);
  return streams.reduce((sum, s) => sum + (s.flow_cfm / flow) * (s.velocity_fpm / velocity_fpm - 1) ** 2, 0);
};

/** Unrounded, and streams that run side by side mix: momentum at no angle. */
export const SIDE_BY_SIDE: Practice = {
  ...UNROUNDED,
  mixing: (streams, velocity_fpm, pressure_inH2O) =>
    Math.max(0, pressure_inH2O - resultant(streams)) + pressure_inH2O * unlikeSpeeds(streams, velocity_fpm),
};

/** Kinematic viscosity of the air [m2/s] and roughness of galvanised duct with a joint every 30 in [in]. */
const VISCOSITY_m2s = 1.82e-5 / STANDARD_DENSITY_kgm3;
const ROUGHNESS_in = 0.15 / 25.4;

/** Colebrook and White, solved by putting it into itself. */
function colebrook(velocity_fpm: number, diameter_in: number): number {
  const reynolds = (velocity_fpm * FPM_ms * diameter_in * 0.0254) / VISCOSITY_m2s;
  let root = 8;
  for (let i = 0; i < 40; i++)
    root = -2 * Math.log10(ROUGHNESS_in / diameter_in / 3.7 + (2.51 * root) / reynolds);
  return 1 / root ** 2;
}

/** The sheet with the relations that the program has in place of the method's. */
export const MOMENTUM_PRACTICE: Practice = {
  ...UNROUNDED,
  frictionPerFoot: (velocity_fpm, _, diameter_in) =>
    (12 / diameter_in) * colebrook(velocity_fpm, diameter_in),
  // 60 degrees are 0.78 of an elbow in air-conditioning practice, two thirds in exhaust practice
  elbow: (angle_deg) => (angle_deg === 60 ? 0.78 : angle_deg / 90) * 0.24,
  branchEntry: () => 0,
  mixing: (streams, velocity_fpm, pressure_inH2O) => {
    const flow = streams.reduce((sum, s) => sum + s.flow_cfm, 0);
    const thrust = streams.reduce((sum, { flow_cfm, velocity_fpm: speed, angle_deg }) => {
      const along = Math.cos((angle_deg * Math.PI) / 180);
      return sum + ((flow_cfm / flow) * speed * along) / velocity_fpm;
    }, 0);
    return 2 * pressure_inH2O * (1 - thrust);
  },
};
