import * as z from 'zod';
import { quantity } from './quantity-field.ts';
import { CATALOGUE_ID } from './schema-common.ts';

/** How an elbow is built. */
export const ELBOW_STYLE = z.enum(['smooth', 'five-piece', 'four-piece', 'three-piece', 'mitre']);
export type ElbowStyle = z.output<typeof ELBOW_STYLE>;

/** Most corners of one run. */
export const MOST_CORNERS = 500;

/** Point at which a drawn run turns; what is typed beside it stands in place of what the drawing gives. */
export const CORNER = z.strictObject({
  x: quantity('length', 'any'),
  y: quantity('length', 'any'),
  z: quantity('length', 'any')
    .optional()
    .describe('height above the floor; absent: that of the point before it'),
  style: ELBOW_STYLE.optional().describe('absent: that of the route'),
  radiusRatio: quantity('coefficient').optional().describe('absent: that of the route'),
  angle: quantity('angle').optional().describe('angle turned through; absent: as drawn'),
});
export type Corner = z.output<typeof CORNER>;

/** What is typed for one leg of a drawn run; leg 0 leads to corner 0. */
export const LEG = z.strictObject({
  length: quantity('length', 'not-negative')
    .optional()
    .describe('straight length of the leg without its bends; absent: as drawn'),
  diameter: quantity('length').optional().describe('inside diameter; absent: that of the leg before it'),
  material: CATALOGUE_ID.optional().describe('material id of the catalogue; absent: that of the run'),
  compression: quantity('fraction', 'share')
    .optional()
    .describe('hose only: 1 minus laid length over fully stretched length'),
});
export type Leg = z.output<typeof LEG>;

/** The way of a drawn run over the plan: its straights and bends follow from it. */
export const ROUTE = z.strictObject({
  corners: z.array(CORNER).max(MOST_CORNERS),
  bend: z
    .strictObject({
      style: ELBOW_STYLE,
      radiusRatio: quantity('coefficient').describe(
        'centre-line radius over diameter, of elbows and of hose',
      ),
    })
    .describe('how the run turns at its corners'),
  legs: z
    .array(LEG)
    .max(MOST_CORNERS + 1)
    .optional()
    .describe('one for each leg; leg i ends at corner i'),
});
export type Route = z.output<typeof ROUTE>;

/** Place of a piece on a drawn run. */
export const ALONG = z.strictObject({
  leg: z.number().int().min(0).max(MOST_CORNERS),
  at: z.number().min(0).max(1).describe('share of the leg, 0 at its start'),
});

/** Picture of the building that lies under the plan. */
export const UNDERLAY = z.strictObject({
  name: z.string().max(200),
  width_px: z.number().int().min(1).max(100_000),
  height_px: z.number().int().min(1).max(100_000),
  at: z
    .strictObject({ x: quantity('length', 'any'), y: quantity('length', 'any') })
    .describe('where the upper left corner lies'),
  metresPerPixel: quantity('coefficient').describe('width of one pixel on the plan, in metres'),
  opacity: z.number().min(0).max(1).optional(),
  data: z
    .string()
    .max(5_000_000)
    .regex(
      /^data:image\/(png|jpeg|webp|gif);base64,[A-Za-z0-9+/=]+$/,
      'a PNG, JPEG, WebP or GIF picture is meant',
    )
    .optional()
    .describe('the picture as a data URL'),
});
export type Underlay = z.output<typeof UNDERLAY>;
