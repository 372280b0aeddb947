import * as z from 'zod';
import { quantity } from './quantity-field.ts';
import { ID } from './schema-common.ts';
import { FAN_DESIGN, RANGES } from './schema-fans.ts';
import { PARTS } from './schema-parts.ts';
import { RUN } from './schema-pieces.ts';
import { UNDERLAY } from './schema-route.ts';
import { THING } from './schema-things.ts';
import { UPKEEP } from './schema-upkeep.ts';

/** Version of the document format that this code writes. */
export const FORMAT_VERSION = 2;

/** Most entries of the lists that grow while a shop is drawn. */
export const MOST = {
  things: 20000,
  runs: 20000,
  dusts: 100,
  settings: 200,
  fans: 100,
  values: 500,
} as const;

export const AIR = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('weather'),
    temperature: quantity('temperature'),
    humidity: quantity('fraction', 'share').describe('relative humidity'),
    altitude: quantity('length', 'any').optional(),
    barometer: quantity('pressure').optional().describe('absolute; stands before the altitude'),
  }),
  z.strictObject({
    kind: z.literal('given'),
    density: quantity('density'),
    viscosity: quantity('viscosity'),
  }),
]);

export const DUST = z.strictObject({
  id: ID,
  name: z.string().max(80).optional(),
  requiredVelocity: quantity('velocity'),
  fineVelocity: quantity('velocity').optional().describe('after a separator'),
  highVelocity: quantity('velocity').optional().describe('wastefully high above this'),
  particleDensity: quantity('density'),
  bulkDensity: quantity('density'),
  medianSize: quantity('length'),
  geometricDeviation: quantity('coefficient'),
  combustible: z.boolean(),
});

export const SETTING = z.strictObject({
  name: z.string().min(1).max(80),
  gates: z.record(ID, quantity('fraction', 'share')).describe('opening of each gate; others as drawn'),
  hours: quantity('fraction', 'share')
    .optional()
    .describe('share of the running hours; where no setting has one, all alike'),
});

/** The shop document: what the user made, saved and undone. Positions are on the plan, sizes inside. */
export const SHOP = z.strictObject({
  $schema: z.string().max(500).optional(),
  format: z.literal('chipdraft-shop'),
  version: z.literal(FORMAT_VERSION),
  name: z.string().min(1).max(120),
  note: z.string().max(4000).optional(),
  units: z.enum(['si', 'us']).default('si').describe('units shown; the file holds SI beside what was typed'),
  options: z
    .strictObject({
      compressible: z.boolean().default(true),
      solidsLoss: z.boolean().default(true).describe('loss added by the dust carried'),
    })
    .prefault({}),
  values: z
    .array(z.strictObject({ name: z.string().max(40), text: z.string().max(200) }))
    .max(MOST.values)
    .default([])
    .describe('named values that any field may use'),
  air: AIR,
  dusts: z.array(DUST).max(MOST.dusts).default([]),
  things: z.array(THING).max(MOST.things),
  runs: z.array(RUN).max(MOST.runs),
  settings: z.array(SETTING).max(MOST.settings).default([]),
  fans: z.array(FAN_DESIGN).max(MOST.fans).default([]).describe('fans that may be put into the shop'),
  ranges: RANGES.optional().describe('how far the figures may be off'),
  parts: PARTS.optional().describe('how parts are bought and cut'),
  upkeep: UPKEEP.optional().describe('how the shop is used and cleaned'),
  underlay: UNDERLAY.optional().describe('picture of the building under the plan'),
});

export type ShopDocument = z.output<typeof SHOP>;
export type ShopFile = z.input<typeof SHOP>;
export type Setting = ShopDocument['settings'][number];
export type UserDust = ShopDocument['dusts'][number];
