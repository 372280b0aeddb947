import { SUITED } from '../fan/motor/match.ts';
import type { MotorModel } from '../fan/motor/motor-model.ts';
import type { Finding } from '../network/solution.ts';
import { finding } from './finding.ts';
import type { Printer } from './finding.ts';

/** A motor at the points at which it may run. */
export interface MotorAtWork {
  readonly model: MotorModel;
  /** Torque [N m], winding current [A] and running time on the battery [s] at each point. */
  readonly points: readonly {
    readonly torque_Nm: number;
    readonly motorCurrent_A: number;
    readonly runTime_s: number | null;
  }[];
  /** Torque of the wheel at the motor's best speed over what the motor gives for ever [-]. */
  readonly loadRatio: number | null;
  readonly matchSpeed_rpm: number | null;
}

/** A battery that is empty sooner than this is worth a word [s]; assumed: a cut of a quarter of an hour. */
export const SHORT_RUN_s = 900;

const times = (ratio: number): string => ratio.toPrecision(2);

/** What is to be said of a motor by itself or in the shop; the worst point speaks. */
export function motorFindings(where: string, motor: MotorAtWork, print: Printer): Finding[] {
  const { model, points, loadRatio, matchSpeed_rpm } = motor;
  const found: Finding[] = [];
  if (points.length === 0) return found;
  const current = Math.max(...points.map((point) => point.motorCurrent_A));
  const lasting = model.continuousCurrent_A;
  if (lasting !== null && current > lasting) {
    found.push(
      finding(
        'motor-over-current',
        where,
        print(current, 'current'),
        print(lasting, 'current'),
        (current / lasting).toPrecision(3),
      ),
    );
  }
  const most = model.breakdownTorque_Nm;
  const torque = Math.max(...points.map((point) => point.torque_Nm));
  if (most !== null && torque > most) {
    const rated = model.lastingTorque_Nm;
    found.push(finding('motor-stalls', where, times(torque / rated), times(most / rated)));
  }
  if (loadRatio !== null && matchSpeed_rpm !== null) {
    const code = loadRatio > SUITED.high ? 'motor-too-small' : 'motor-too-big';
    if (loadRatio > SUITED.high || loadRatio < SUITED.low) {
      found.push(finding(code, where, times(loadRatio), print(matchSpeed_rpm, 'speed')));
    }
  }
  const shortest = Math.min(...points.map((point) => point.runTime_s ?? Infinity));
  if (shortest < SHORT_RUN_s) {
    found.push(finding('battery-short', where, print(shortest, 'time'), print(SHORT_RUN_s, 'time')));
  }
  return found;
}
