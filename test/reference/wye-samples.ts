import { junctionLegPressures } from '../../core/fittings/junction.ts';
import type { JunctionLeg, WyeGeometry } from '../../core/fittings/junction.ts';

export const radians = (angle_deg: number): number => (angle_deg * Math.PI) / 180;
/** Air in every sample [kg/m3]. */
export const DENSITY = 1.2;

/** Losses of a wye from the junction itself, on the velocity pressure after the join. */
export function fromJunction(wye: WyeGeometry, role?: 'branch'): { branch: number; straight: number } {
  const legs: JunctionLeg[] = [
    { area_m2: wye.straightArea_m2, direction_rad: Math.PI },
    { area_m2: wye.branchArea_m2, direction_rad: Math.PI + wye.angle_rad, ...(role ? { role } : {}) },
    { area_m2: wye.commonArea_m2, direction_rad: 0 },
  ];
  const flow = 0.3;
  const e = new Float64Array(3);
  const flows = [flow * (1 - wye.flowRatio), flow * wye.flowRatio, -flow];
  junctionLegPressures(legs, flows, DENSITY, e, new Float64Array(9));
  const pressure = (flow / wye.commonArea_m2) ** 2 / (2 * DENSITY);
  return { straight: (e[0]! - e[2]!) / pressure, branch: (e[1]! - e[2]!) / pressure };
}

/** A branch of the given share of the main's area on a main that keeps its size. */
export const onMain = (flowRatio: number, branchShare: number, angle_deg: number): WyeGeometry => ({
  flowRatio,
  branchArea_m2: 0.02 * branchShare,
  straightArea_m2: 0.02,
  commonArea_m2: 0.02,
  angle_rad: radians(angle_deg),
});
