import { loadRatio, matchSpeed } from '../fan/motor/match.ts';
import { driveLargestFlow } from '../network/fan-drive.ts';
import type { Finding } from '../network/solution.ts';
import type { Check } from './check.ts';
import { finding } from './finding.ts';
import { motorFindings } from './motor-findings.ts';

/** Below this share of the fan's largest flow it moves no air worth speaking of [-]; common practice, no source. */
const NO_AIR_SHARE = 0.02;

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
    const torque_Nm = fan.drive.torque_Nm;
    // a wheel that asks nothing cannot be too large or too small
    const ratio = torque_Nm > 0 ? loadRatio({ torque_Nm, speed_rpm: fan.speed_rpm! }, model) : null;
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
