import * as z from 'zod';
import { quantity } from './quantity-field.ts';
import { CATALOGUE_ID, ID } from './schema-common.ts';
import { ALONG, ELBOW_STYLE, ROUTE } from './schema-route.ts';

const along = { along: ALONG.optional().describe('place on a drawn run; absent: at its start') };
const piece = {
  id: ID.optional().describe('needed where a setting or a finding must name the piece'),
  ...along,
};
const sized = {
  diameter: quantity('length').optional().describe('inside diameter; absent: that of the piece before it'),
};

/** Straight rigid duct or straight hose. */
export const STRAIGHT = z.strictObject({
  kind: z.literal('straight'),
  ...piece,
  ...sized,
  length: quantity('length', 'not-negative'),
  material: CATALOGUE_ID.optional().describe('material id of the catalogue; absent: that of the run'),
  compression: quantity('fraction', 'share')
    .optional()
    .describe('hose only: 1 minus laid length over fully stretched length'),
});

export const ELBOW = z.strictObject({
  kind: z.literal('elbow'),
  ...piece,
  ...sized,
  style: ELBOW_STYLE,
  angle: quantity('angle'),
  radiusRatio: quantity('coefficient')
    .optional()
    .describe('centre-line radius over diameter; not for a mitre'),
});

export const HOSE_BEND = z.strictObject({
  kind: z.literal('hose-bend'),
  ...piece,
  ...sized,
  angle: quantity('angle'),
  radius: quantity('length').describe('centre-line radius'),
  material: CATALOGUE_ID.optional(),
});

export const REDUCER = z.strictObject({
  kind: z.literal('reducer'),
  ...piece,
  to: quantity('length').describe('inside diameter after the piece, in the direction of the run'),
  angle: quantity('angle').optional().describe('full included angle; absent: abrupt'),
});

export const GATE = z.strictObject({
  kind: z.literal('gate'),
  id: ID,
  ...along,
  ...sized,
  opening: quantity('fraction', 'share')
    .optional()
    .describe('open height over diameter, where a setting does not say; absent: fully open'),
});

export const GIVEN_LOSS = z.strictObject({
  kind: z.literal('given'),
  ...piece,
  ...sized,
  name: z.string().max(80).optional(),
  coefficient: quantity('coefficient', 'not-negative').describe(
    'loss over velocity pressure in this diameter',
  ),
});

export const MEASURED_LOSS = z.strictObject({
  kind: z.literal('measured'),
  ...piece,
  ...sized,
  name: z.string().max(80).optional(),
  loss: quantity('pressure'),
  flow: quantity('flow').describe('flow at which the loss was measured, at the density of this document'),
});

export const BARE = z.strictObject({
  kind: z.literal('bare'),
  ...piece,
  length: quantity('length', 'not-negative'),
  diameter: quantity('length'),
  roughness: quantity('length', 'not-negative'),
  coefficient: quantity('coefficient', 'not-negative').describe('all local losses of the run in one number'),
});

export const PIECE = z.discriminatedUnion('kind', [
  STRAIGHT,
  ELBOW,
  HOSE_BEND,
  REDUCER,
  GATE,
  GIVEN_LOSS,
  MEASURED_LOSS,
  BARE,
]);

/** One piece of a run, in the order of flow. */
export type Piece = z.output<typeof PIECE>;
export type PieceKind = Piece['kind'];

/** Most pieces of one run. */
export const MOST_PIECES = 2000;

export const RUN = z.strictObject({
  id: ID,
  name: z.string().max(80).optional(),
  from: z.string().max(80).describe('a thing, or one end of it such as S1.out or W1.branch'),
  to: z.string().max(80).describe('a thing, or one end of it such as S1.in or W1.branch'),
  diameter: quantity('length').optional().describe('inside diameter at the start of the run'),
  material: CATALOGUE_ID.optional().describe('material id of the catalogue'),
  requiredVelocity: quantity('velocity', 'not-negative')
    .optional()
    .describe('transport velocity wanted; absent: from the dust of the ports upstream'),
  maxSuction: quantity('pressure').optional().describe('what the weakest hose or duct of the run stands'),
  route: ROUTE.optional().describe('the run as drawn; its straights and bends then follow from the drawing'),
  pieces: z
    .array(PIECE)
    .max(MOST_PIECES)
    .describe('in the order of flow; of a drawn run, those placed on it by hand'),
});
/** A line of pieces between two things. */
export type Run = z.output<typeof RUN>;
