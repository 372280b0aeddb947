import * as z from 'zod';
import { quantity } from './quantity-field.ts';
import { CATALOGUE_ID, ID, MEASURED, PLACE } from './schema-common.ts';

const thing = {
  id: ID,
  name: z.string().max(80).optional(),
  at: PLACE.optional().describe('place on the plan'),
  turn: quantity('angle', 'any')
    .optional()
    .describe('how it is turned on the plan; changes no figure but lengths'),
};

export const HOOD = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('entry'), entry: CATALOGUE_ID.describe('entry id of the catalogue') }),
  z.strictObject({
    kind: z.literal('tapered'),
    angle: quantity('angle').describe('full included angle'),
    shape: z.enum(['round', 'rectangular']),
  }),
  z.strictObject({ kind: z.literal('slot'), slotArea: quantity('area') }),
  z.strictObject({
    kind: z.literal('brush-shoe'),
    gapArea: quantity('area').describe('open area under and through the bristles'),
    throat: quantity('coefficient', 'not-negative').optional(),
    bristle: quantity('coefficient', 'not-negative').optional(),
  }),
  z.strictObject({ kind: z.literal('given'), coefficient: quantity('coefficient', 'not-negative') }),
  z.strictObject({ kind: z.literal('measured'), loss: quantity('pressure'), flow: quantity('flow') }),
]);
export type Hood = z.output<typeof HOOD>;

export const CUT = z.strictObject({
  width: quantity('length'),
  depth: quantity('length'),
  feed: quantity('velocity'),
  density: quantity('density'),
  collected: quantity('fraction', 'share'),
});

export const PORT = z.strictObject({
  kind: z.literal('port'),
  ...thing,
  hood: HOOD,
  needs: z
    .strictObject({
      flow: quantity('flow').optional(),
      velocity: quantity('velocity').optional().describe('transport velocity; absent: from the dust class'),
      capture: z
        .strictObject({
          hood: z.enum(['plain', 'flanged']),
          velocity: quantity('velocity').describe('wanted at the source'),
          distance: quantity('length').describe('source to hood face'),
          faceArea: quantity('area'),
        })
        .optional()
        .describe('a flow worked out from the capture velocity at a distance'),
    })
    .optional(),
  dust: CATALOGUE_ID.optional().describe('dust id of the document or the catalogue'),
  dustRate: quantity('massFlow', 'not-negative').optional(),
  cut: CUT.optional().describe('the cut that makes the dust, where no rate is given'),
});

export const LEAK = z.strictObject({
  kind: z.literal('leak'),
  ...thing,
  area: quantity('area'),
  dischargeCoefficient: quantity('coefficient').optional(),
});

export const EXHAUST = z.strictObject({
  kind: z.literal('exhaust'),
  ...thing,
  outlet: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('open') }),
    z.strictObject({
      kind: z.literal('cap'),
      gapRatio: quantity('coefficient').describe('gap over diameter'),
    }),
    z.strictObject({ kind: z.literal('given'), coefficient: quantity('coefficient', 'not-negative') }),
  ]),
  to: z.enum(['room', 'outside']),
  pressure: quantity('pressure', 'any').optional().describe('outside relative to the room, such as wind'),
});

export const PRESSURE = z.strictObject({
  kind: z.literal('pressure'),
  ...thing,
  pressure: quantity('pressure', 'any').describe(
    'total pressure relative to the room, held whatever the flow',
  ),
});

export const JUNCTION = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('wye'),
    ...thing,
    angle: quantity('angle').describe('between branch and main; ends: main, branch, out'),
    mirrored: z
      .boolean()
      .optional()
      .describe('the branch comes in on the other side of the main; absent: no'),
  }),
  z.strictObject({ kind: z.literal('tee'), ...thing }),
  z.strictObject({
    kind: z.literal('breeches'),
    ...thing,
    angle: quantity('angle').describe('between each leg and the outlet; ends: left, right, out'),
  }),
  z.strictObject({ kind: z.literal('joint'), ...thing }),
]);

const DIMENSION_FIELDS = z.strictObject({
  inletHeight: quantity('length').optional(),
  inletWidth: quantity('length').optional(),
  outletDiameter: quantity('length').optional(),
  outletDepth: quantity('length').optional(),
  cylinderHeight: quantity('length').optional(),
  totalHeight: quantity('length').optional(),
  dustOutletDiameter: quantity('length').optional(),
});

export const CYCLONE = z.strictObject({
  kind: z.literal('cyclone'),
  ...thing,
  proportions: CATALOGUE_ID.describe('proportions id of the catalogue, or free'),
  bodyDiameter: quantity('length'),
  dimensions: DIMENSION_FIELDS.optional().describe('what differs from the proportions; all seven where free'),
  lossModel: CATALOGUE_ID.describe('pressure-drop model id of the catalogue'),
  gradeModel: CATALOGUE_ID.describe('grade-efficiency model id of the catalogue'),
  measured: MEASURED.optional(),
  maxSuction: quantity('pressure').optional().describe('what its bin stands'),
  binVolume: quantity('volume').optional(),
});

export const BIN = z.strictObject({
  kind: z.literal('bin'),
  ...thing,
  inletDiameter: quantity('length'),
  outletDiameter: quantity('length'),
  baffle: z.boolean(),
  catchShare: quantity('fraction', 'share').describe('share of the dust mass that stays in the bin'),
  measured: MEASURED.optional(),
  maxSuction: quantity('pressure').optional(),
  binVolume: quantity('volume').optional(),
});

export const FILTER = z.strictObject({
  kind: z.literal('filter'),
  ...thing,
  layers: z
    .array(
      z.strictObject({
        medium: CATALOGUE_ID.describe('filter medium id of the catalogue'),
        area: quantity('area'),
        load: quantity('arealDensity', 'not-negative').optional().describe('dust cake now on the medium'),
        drag: quantity('filterDrag').optional().describe('clean drag, where measured'),
        cakeResistance: quantity('cakeResistance').optional(),
        passedShare: quantity('fraction', 'share').optional().describe('share of the dust that goes through'),
      }),
    )
    .min(1)
    .max(8),
  maxSuction: quantity('pressure').optional(),
});

export const FAN = z.strictObject({
  kind: z.literal('fan'),
  ...thing,
  outletDiameter: quantity('length'),
  design: ID.optional().describe('fan of the list of fans that stands here, before the curve below'),
  speed: quantity('speed').optional().describe('speed at which it runs here; absent: that of the curve'),
  curve: z.strictObject({
    pressureKind: z.enum(['static', 'total']).describe('fan static or fan total pressure'),
    speed: quantity('speed').optional(),
    density: quantity('density'),
    points: z
      .array(
        z.strictObject({
          flow: quantity('flow', 'not-negative'),
          pressure: quantity('pressure', 'any'),
          power: quantity('power', 'not-negative').optional(),
          current: quantity('current', 'not-negative').optional(),
        }),
      )
      .min(2, 'a fan curve needs two points or more: add a measured point')
      .max(200),
    source: z.string().max(200).optional(),
  }),
});

export const THING = z.discriminatedUnion('kind', [
  PORT,
  LEAK,
  EXHAUST,
  PRESSURE,
  ...JUNCTION.options,
  CYCLONE,
  BIN,
  FILTER,
  FAN,
]);

/** Anything that a run starts from or ends at. */
export type Thing = z.output<typeof THING>;
export type ThingKind = Thing['kind'];
export type ThingOf<K extends ThingKind> = Extract<Thing, { kind: K }>;
