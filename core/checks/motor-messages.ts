import type { MessageRow } from './message-row.ts';

/** Findings about the motor that turns a fan. */
export const MOTOR_MESSAGES = {
  'motor-over-current': {
    severity: 'danger',
    message:
      'the motor takes {} where {} is what it bears for ever, {} times as much: it overheats and may catch fire',
    remedy:
      'lower throttle or speed, fit a smaller wheel or a larger motor; do not leave it running, and keep dust and hands off hot motors and batteries',
  },
  'motor-stalls': {
    severity: 'danger',
    message:
      'the wheel asks {} times the rated torque, and motors like this may stall from {} on: it slows down, hums and burns out',
    remedy:
      'use a larger motor, a smaller wheel or another belt ratio, behind a motor protection switch that a licensed electrician fits',
  },
  'motor-too-small': {
    severity: 'warning',
    message:
      'the motor is too small: at its best speed the wheel asks {} times the torque that it gives for ever; they match at {}',
    remedy:
      'run it slower, use a smaller wheel of the same shape or a larger motor; check the rotor before any higher speed',
  },
  'motor-too-big': {
    severity: 'advice',
    message:
      'the motor is larger than need be: at its best speed the wheel asks {} times the torque that it gives for ever; they match at {}',
    remedy:
      'a smaller motor will do, or a larger wheel of the same shape; never speed a wheel up before its rotor is checked',
  },
  'battery-short': {
    severity: 'advice',
    message: 'the battery lasts {} at this draw, less than {}',
    remedy: 'lower the throttle, or use a larger battery; let a hot battery cool before it is charged',
  },
  'motor-uncooled': {
    severity: 'caution',
    message:
      'Next to no air passes this fan. A motor that is cooled by that air has no cooling now, however low its current.',
    remedy: 'Do not let it run blocked, or lead cooling air to the motor on another way.',
  },
  'motor-not-reckoned': {
    severity: 'advice',
    message: 'its motor is left out: the readings of this fan tell no {}, so it is shown at a held speed',
    remedy: 'add speed, volts and amps to the readings of the fan',
  },
} as const satisfies Record<string, MessageRow>;
