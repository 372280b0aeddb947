import type { FanCurve } from '../fan/fan-curve.ts';
import { loadRatio, matchSpeed } from '../fan/motor/match.ts';
import { RADS_PER_RPM } from '../fan/motor/motor-model.ts';
import type { MotorModel } from '../fan/motor/motor-model.ts';
import { driveLargestFlow } from '../network/fan-drive.ts';
import type { Finding } from '../network/solution.ts';
import type { Check } from './check.ts';
import { finding } from './finding.ts';
import { motorFindings } from './motor-findings.ts';

/** Below this share of the fan's largest flow it moves no air worth speaking of [-]; common practice, no source. */
const NO_AIR_SHARE = 0.02;

/** Load ratio at the heaviest point of the curve, so that a shut gate does not make a motor look too big. */
function heaviestRatio(curve: FanCurve, model: MotorModel, density_kgm3: number): number | null {
  const speed_rpm = curve.input.ratedSpeed_rpm!;
  const power = Math.max(...curve.power!.y) * (density_kgm3 / curve.input.ratedDensity_kgm3);
  // a wheel that asks nothing cannot be too large or too small
  return power > 0 ? loadRatio({ torque_Nm: power / (speed_rpm * RADS_PER_RPM), speed_rpm }, model) : null;
}

/** Motors of the fans: current, stall, size, battery, cooling. */
export const checkMotors: Check = ({ shop, result }, print) =>
  shop.fans.flatMap(({ element, thing, design }, i): Finding[] => {
    const drive = shop.packed.net.elements[element]!.fan!;
    const fan = result.fans[i]!;
    const { motor } = drive;
    if (motor === undefined || fan.drive === null) {
      if (!design?.motor || thing.speed !== undefined) return [];
      const lacks = drive.curve.input.ratedSpeed_rpm === null ? 'speed' : 'power at the shaft';
      return [finding('motor-not-reckoned', fan.id, lacks)];
    }
    const { model } = motor;
    const ratio = heaviestRatio(drive.curve, model, shop.air.density_kgm3);
    const found = motorFindings(
      fan.id,
      {
        model,
        points: [fan.drive],
        loadRatio: ratio,
        matchSpeed_rpm: ratio === null ? null : matchSpeed(model.bestSpeed_rpm, ratio),
      },
      print,
    );
    const still = fan.flow_m3s < NO_AIR_SHARE * driveLargestFlow(drive, shop.air.density_kgm3);
    // an induction motor carries a fan of its own
    if (still && model.kind !== 'induction') found.push(finding('motor-uncooled', fan.id));
    return found;
  });
