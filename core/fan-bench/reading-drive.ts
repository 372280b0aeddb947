import { READING_ERRORS } from '../catalogue/reading-errors.ts';
import type { FanDesign, Reading } from '../document/schema-fans.ts';
import type { MotorModel } from '../fan/motor/motor-model.ts';
import { own, ownShare } from './reading-inputs.ts';
import type { Inputs, Values } from './reading-inputs.ts';

/** What turned the fan during a reading. */
export interface Driven {
  /** Null where nothing tells it. */
  readonly speed_rpm: number | null;
  /** Drawn from the supply. */
  readonly inputPower_W: number | null;
  readonly shaftPower_W: number | null;
}

export interface Drive {
  readonly inputs: Inputs;
  readonly speedFrom: 'read' | 'motor' | 'given' | null;
  readonly driven: (values: Values) => Driven;
}

/** Standard error of a speed that was given for all readings [-]. */
export const GIVEN_SPEED_ERROR = {
  value: 0.015,
  source: 'no source; a fan slows and hurries with its load',
  basis: 'assumed',
} as const;
/** The same in a table of points, which is reckoned to one speed [-]. */
export const TABLE_SPEED_ERROR = {
  value: 0.0025,
  source: 'no source; a table is reckoned to one speed',
  basis: 'assumed',
} as const;

const above = (value: number | undefined): value is number => value !== undefined && value > 0;

/** Speed and power of a reading: from what was read, else from the motor's model, else from the design. */
export function driveOf(design: FanDesign, reading: Reading, motor: MotorModel | null): Drive {
  const { errors } = reading;
  const speed = reading.speed?.si;
  const volts = reading.voltage?.si;
  const amps = reading.current?.si;
  const throttle = reading.throttle?.si;
  const dutyFits = throttle === undefined || (throttle > 0 && throttle <= 1);
  const metered = above(volts) && amps !== undefined && amps >= 0;
  const inputs: Record<string, Inputs[string]> = {};
  if (metered) {
    inputs['voltage'] = ownShare(errors?.voltage, READING_ERRORS.voltage, volts);
    inputs['current'] = ownShare(errors?.current, READING_ERRORS.current, amps);
    if (throttle !== undefined && dutyFits && throttle < 1)
      inputs['throttle'] = own(undefined, READING_ERRORS.throttle, throttle);
  }
  const askMotor = (v: Values) =>
    motor === null || !metered || !dutyFits
      ? null
      : motor.fromSupply({
          voltage_V: v['voltage']!,
          supplyCurrent_A: v['current']!,
          throttle: throttle === undefined ? null : (v['throttle'] ?? throttle),
        });
  const byMotor = askMotor({ voltage: volts ?? 0, current: amps ?? 0 }) !== null;
  if (byMotor)
    inputs['motor'] = { value: 1, error: READING_ERRORS.motor.share / 2, common: 'figures of the motor' };

  let speedFrom: Drive['speedFrom'] = null;
  if (above(speed)) {
    speedFrom = 'read';
    inputs['speed'] = ownShare(errors?.speed, READING_ERRORS.speed, speed);
  } else if (byMotor) speedFrom = 'motor';
  else if (design.speed) {
    speedFrom = 'given';
    const share = reading.kind === 'point' ? TABLE_SPEED_ERROR.value : GIVEN_SPEED_ERROR.value;
    inputs['speed'] = { value: design.speed.si, error: share * design.speed.si, common: null };
  }

  const energy = reading.energy?.si;
  const time = reading.time?.si;
  const battery = !metered && above(energy) && above(time) ? energy / time : null;
  if (battery !== null) inputs['battery'] = ownShare(errors?.power, READING_ERRORS.battery, battery);
  const shaft = reading.kind === 'point' ? reading.power?.si : undefined;
  if (above(shaft)) inputs['shaft'] = ownShare(errors?.power, READING_ERRORS.tablePower, shaft);

  return {
    inputs,
    speedFrom,
    driven: (v) => {
      const state = byMotor ? askMotor(v) : null;
      const turned = state === null ? null : state.speed_rpm * v['motor']!;
      return {
        speed_rpm: speedFrom === null ? null : speedFrom === 'motor' ? turned : v['speed']!,
        inputPower_W:
          state?.inputPower_W ?? (metered ? v['voltage']! * v['current']! : (v['battery'] ?? null)),
        shaftPower_W: v['shaft'] ?? (state === null ? null : state.shaftPower_W * v['motor']!),
      };
    },
  };
}
