import * as z from 'zod';
import { quantity } from './quantity-field.ts';

/** How the shop is used and looked after, for the reckoning over running hours. */
export const UPKEEP = z.strictObject({
  cuttingShare: quantity('fraction', 'share')
    .optional()
    .describe('of the running hours, with machines at work'),
  cleaningRestores: quantity('fraction', 'share')
    .optional()
    .describe('share of the cake that cleaning takes off'),
  binFull: quantity('fraction', 'share').optional().describe('share of its volume at which a bin is full'),
  motorEfficiency: quantity('fraction', 'share')
    .optional()
    .describe('shaft power over power drawn, where the fan has no motor here'),
  electricityPrice: quantity('coefficient', 'not-negative').optional().describe('of a kWh, in your money'),
});
