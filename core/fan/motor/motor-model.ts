/** What a motor does at one speed. All of it is at the shaft that carries the wheel, behind a belt where there is one. */
export interface MotorState {
  /** Torque at the shaft [N m]; below zero where the motor would have to be driven. */
  readonly torque_Nm: number;
  /** Shaft power [W]. */
  readonly shaftPower_W: number;
  /** Current in the winding, which heats it [A]. */
  readonly motorCurrent_A: number;
  /** Current in the supply lead [A]. */
  readonly supplyCurrent_A: number;
  /** Power drawn at the supply's terminals [W]. */
  readonly inputPower_W: number;
  /** Power that heats the winding [W]. */
  readonly copperLoss_W: number;
  /** Iron, friction, controller and belt [W]: with the two above it makes up the input. */
  readonly otherLoss_W: number;
}

/** What meters say of a motor while it turns a fan. */
export interface SupplyReading {
  /** At the supply's terminals [V]. */
  readonly voltage_V: number;
  /** In the supply lead [A]. */
  readonly supplyCurrent_A: number;
  /** Duty of the controller [-]; null is that of the motor. */
  readonly throttle: number | null;
}

/** What a supply reading comes to. */
export interface MotorReading {
  readonly speed_rpm: number;
  readonly torque_Nm: number;
  readonly shaftPower_W: number;
  /** True power, which is less than volts times amps on alternating current [W]. */
  readonly inputPower_W: number;
}

export type MotorKind = 'brushless' | 'series' | 'induction';

/**
 * A motor on its supply. Its torque falls with speed at every speed, without bound to either side, so that a rotor
 * whose torque does not fall meets it at one speed.
 */
export interface MotorModel {
  readonly kind: MotorKind;
  /** State at a speed [rpm], zero or more. */
  at(speed_rpm: number): MotorState;
  /** Torque [N m] into `out[0]` and its slope over speed [N m/rpm] into `out[1]`; allocates nothing. */
  turn(speed_rpm: number, out: Float64Array): void;
  /** Speed at which torque is zero [rpm]. */
  readonly noLoadSpeed_rpm: number;
  /** Speed at which the largest share of the input becomes shaft power [rpm]. */
  readonly bestSpeed_rpm: number;
  /** Winding current that it bears for ever [A]; null where nobody said. */
  readonly continuousCurrent_A: number | null;
  /** Torque at that current, or at the best speed where nobody said [N m]. */
  readonly lastingTorque_Nm: number;
  /** Torque beyond which it stalls [N m]; null where it only slows down. */
  readonly breakdownTorque_Nm: number | null;
  /** What the battery gives [J]; null without one. */
  readonly batteryEnergy_J: number | null;
  /** Speed, torque and power from meters; null where the model has no answer for such a reading. */
  fromSupply(reading: SupplyReading): MotorReading | null;
  readonly source: string;
  readonly basis: string;
}

/** Angular speed over speed of rotation: 2 pi / 60 [(rad/s)/rpm]. */
export const RADS_PER_RPM = Math.PI / 30;
