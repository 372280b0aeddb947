import * as z from 'zod';
import { quantity } from './quantity-field.ts';

/** How parts are bought and cut. */
export const PARTS = z.strictObject({
  stock: z
    .array(
      z.strictObject({
        material: z.string().max(80).describe('material id of the catalogue'),
        length: quantity('length').describe('in which it is sold'),
      }),
    )
    .max(100)
    .optional(),
  kerf: quantity('length', 'not-negative').optional().describe('lost at each cut'),
  spare: quantity('fraction', 'share').optional().describe('bought on top of duct, hose, clamps and joints'),
  money: z.string().max(12).optional().describe('name of your money, such as EUR'),
  prices: z
    .array(
      z.strictObject({
        part: z.string().min(1).max(160).describe('key of the part in the parts list'),
        price: quantity('coefficient', 'not-negative')
          .optional()
          .describe('of one, or of the unit it is sold in'),
        weight: quantity('mass', 'not-negative').optional().describe('of one, or of the unit it is sold in'),
      }),
    )
    .max(1000)
    .optional(),
});
export type PartsOptions = z.output<typeof PARTS>;
