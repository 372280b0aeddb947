import * as z from 'zod';
import { quantity } from './quantity-field.ts';

/** Names of things, runs and pieces: a letter first; no point, which separates a thing from its end. */
export const ID = z
  .string()
  .max(40)
  .regex(/^[A-Za-z][A-Za-z0-9_-]*$/, 'a name starts with a letter and has letters, digits, - and _ only');

/** Id of a row of the catalogue; which ones there are is looked up when the shop is put together. */
export const CATALOGUE_ID = z.string().max(80);

/** Place on the plan; `z` is the height above the floor. */
export const PLACE = z.strictObject({
  x: quantity('length', 'any'),
  y: quantity('length', 'any'),
  z: quantity('length', 'any').optional(),
});
export type Place = z.output<typeof PLACE>;

/** A loss that the user measured on the real thing; it stands before any model. */
export const MEASURED = z.strictObject({ loss: quantity('pressure'), flow: quantity('flow') });
