import { extrapolation, fanCurrent, fanPower, fanTotalPressure, hasHump } from '../fan/fan-curve.ts';
import type { Extrapolation } from '../fan/fan-curve.ts';
import { HUMP_SHARE } from '../fan/curve-shape.ts';
import { airPower } from '../fan/air-power.ts';
import { curveValueAndSlope } from '../fan/monotone-curve.ts';
import {
  drivenLargestFlow,
  drivenSpeed,
  drivenSpeedAt,
  drivenTotalPressure,
} from '../fan/motor/driven-fan.ts';
import type { DrivenFan } from '../fan/motor/driven-fan.ts';
import type { FanDrive, TurningMotor } from './net.ts';
import type { DriveResult, FanResult } from './solution.ts';

/*
 * The one place that reads a fan's curve in the network. At a held speed it is the curve of its points; on a motor it is
 * the driven curve, whose speed is what motor and wheel agree on at the flow and density of the moment. Balance, start, dead
 * ends, shut-off suction, hump search, system curve and results all read it here.
 */

const driven = new Float64Array(4);
const state = { flow_m3s: 0, density_kgm3: 0, guess_rpm: 0 };

/** The state in which the driven fan is asked; one object, so that the solver's loop allocates nothing. */
function asked(motor: TurningMotor, flow_m3s: number, density_kgm3: number) {
  state.flow_m3s = flow_m3s;
  state.density_kgm3 = density_kgm3;
  state.guess_rpm = motor.guess_rpm[0]!;
  return state;
}

/** The curve and its motor, made once for each drive. */
const pairs = new WeakMap<FanDrive, DrivenFan>();
function pair(drive: FanDrive, motor: TurningMotor): DrivenFan {
  let fan = pairs.get(drive);
  if (fan === undefined) pairs.set(drive, (fan = { curve: drive.curve, motor: motor.model }));
  return fan;
}

/**
 * Rise of total pressure over a fan as it turns here.
 *
 * @param out - receives pressure [Pa], its slope over flow [Pa s/m3] and over density [Pa m3/kg]
 */
export function driveRise(drive: FanDrive, flow_m3s: number, density_kgm3: number, out: Float64Array): void {
  const { curve, speedRatio, motor } = drive;
  if (motor === undefined) {
    fanTotalPressure(curve, { flow_m3s, density_kgm3, speedRatio }, out);
    return;
  }
  drivenTotalPressure(pair(drive, motor), asked(motor, flow_m3s, density_kgm3), driven);
  out[0] = driven[0]!;
  out[1] = driven[1]!;
  out[2] = driven[2]!;
  motor.guess_rpm[0] = driven[3]!;
}

/** Speed over that of the curve at a flow [m3/s] and density [kg/m3]. */
export function driveSpeedRatio(drive: FanDrive, flow_m3s: number, density_kgm3: number): number {
  const { curve, speedRatio, motor } = drive;
  if (motor === undefined) return speedRatio;
  const speed = drivenSpeed(pair(drive, motor), asked(motor, flow_m3s, density_kgm3));
  return speed / curve.input.ratedSpeed_rpm!;
}

/** Flow at the last point of the curve, as the fan turns there [m3/s]. */
export function driveLargestFlow(drive: FanDrive, density_kgm3: number): number {
  const { curve, speedRatio, motor } = drive;
  if (motor === undefined) return curve.pressure.x[curve.pressure.x.length - 1]! * speedRatio;
  return drivenLargestFlow(pair(drive, motor), density_kgm3);
}

/** Where a flow [m3/s] lies on the curve. */
export function driveReach(drive: FanDrive, flow_m3s: number, density_kgm3: number): Extrapolation {
  return extrapolation(drive.curve, flow_m3s, driveSpeedRatio(drive, flow_m3s, density_kgm3));
}

/** Places on each span at which the driven curve is looked at for a hump. */
const HUMP_LOOKS = 4;
const humped = new WeakMap<FanDrive, boolean>();

/** Whether the fan, as it turns here, may cross a system more than once. */
export function driveHasHump(drive: FanDrive): boolean {
  const { motor } = drive;
  if (motor === undefined) return hasHump(drive.curve);
  let found = humped.get(drive);
  if (found === undefined) humped.set(drive, (found = drivenHump(drive, pair(drive, motor))));
  return found;
}

/** As `hasHump`, on the pressure that is left when the speed gives way. */
function drivenHump({ curve }: FanDrive, fan: DrivenFan): boolean {
  const { x } = curve.pressure;
  const rated = curve.input.ratedSpeed_rpm!;
  const out = new Float64Array(2);
  let [lowest, rise, largest] = [Infinity, 0, 0];
  for (let k = 0; k <= HUMP_LOOKS * (x.length - 1); k++) {
    const i = Math.min(Math.floor(k / HUMP_LOOKS), x.length - 2);
    const flow = x[i]! + (k / HUMP_LOOKS - i) * (x[i + 1]! - x[i]!);
    const ratio = drivenSpeedAt(fan, flow, curve.input.ratedDensity_kgm3) / rated;
    curveValueAndSlope(curve.pressure, flow, out);
    const pressure = ratio * ratio * out[0]!;
    lowest = Math.min(lowest, pressure);
    rise = Math.max(rise, pressure - lowest);
    largest = Math.max(largest, Math.abs(pressure));
  }
  return rise > HUMP_SHARE * largest;
}

/** What turns a fan at a flow [m3/s] and density [kg/m3] where it raises `total_Pa`. */
export function driveFigures(
  drive: FanDrive,
  at: { readonly flow_m3s: number; readonly density_kgm3: number; readonly total_Pa: number },
): Pick<FanResult, 'speed_rpm' | 'power_W' | 'current_A' | 'efficiency' | 'drive'> {
  const { flow_m3s, density_kgm3, total_Pa } = at;
  const { curve, motor } = drive;
  const speedRatio = driveSpeedRatio(drive, flow_m3s, density_kgm3);
  const rated = curve.input.ratedSpeed_rpm;
  const speed_rpm = rated === null ? null : rated * speedRatio;
  const turning = motor === undefined ? null : driveResult(motor, speed_rpm!);
  const held = { flow_m3s, density_kgm3, speedRatio };
  const power_W = turning === null ? fanPower(curve, held) : turning.inputPower_W;
  return {
    speed_rpm,
    power_W,
    current_A: turning === null ? fanCurrent(curve, held) : turning.supplyCurrent_A,
    drive: turning,
    efficiency: power_W !== null && power_W > 0 ? airPower(flow_m3s, total_Pa) / power_W : null,
  };
}

function driveResult({ model }: TurningMotor, speed_rpm: number): DriveResult {
  const at = model.at(speed_rpm);
  const { continuousCurrent_A: lasting, batteryEnergy_J: energy } = model;
  return {
    motor: model.kind,
    torque_Nm: at.torque_Nm,
    shaftPower_W: at.shaftPower_W,
    inputPower_W: at.inputPower_W,
    supplyCurrent_A: at.supplyCurrent_A,
    motorCurrent_A: at.motorCurrent_A,
    copperLoss_W: at.copperLoss_W,
    currentShare: lasting === null ? null : at.motorCurrent_A / lasting,
    runTime_s: energy === null || !(at.inputPower_W > 0) ? null : energy / at.inputPower_W,
  };
}
