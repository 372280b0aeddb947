import type { MOTOR_MESSAGES } from '../../../core/checks/motor-messages.ts';
import type { SettingResult } from '../../../core/network/solution.ts';
import { BRUSHLESS, design, drivenShop, INDUCTION, RADIAL_ROWS } from '../network/driven-shop.ts';
import type * as s from '../network/shop.ts';
import { result } from './shops.ts';

const driven = (motor: s.Part, opening = 1) => result(drivenShop(design(RADIAL_ROWS, motor), [opening]));
const WEAK: s.Part = { ...INDUCTION, ratedPower: 180, ratedCurrent: 0.44 };
const NO_POWER = design(RADIAL_ROWS, BRUSHLESS);
const readings = (NO_POWER['readings'] as s.Part[]).map((reading) => ({ ...reading, power: undefined }));

/** A shop for every finding about motors, and the place that it must name. */
export const MOTOR_RAISED: Readonly<
  Record<keyof typeof MOTOR_MESSAGES, readonly [() => SettingResult, string]>
> = {
  'motor-over-current': [() => driven({ ...BRUSHLESS, continuousCurrent: 20 }), 'fan'],
  'motor-stalls': [() => driven(WEAK), 'fan'],
  'motor-too-small': [() => driven(WEAK), 'fan'],
  'motor-too-big': [() => driven({ ...BRUSHLESS, continuousCurrent: 200 }), 'fan'],
  'battery-short': [() => driven({ ...BRUSHLESS, batteryEnergy: '20 Wh' }), 'fan'],
  'motor-uncooled': [() => driven(BRUSHLESS, 0.002), 'fan'],
  'motor-not-reckoned': [() => result(drivenShop({ ...NO_POWER, readings })), 'fan'],
};
