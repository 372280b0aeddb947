import { choiceRow, flagRow, quantityRow, textRow } from './field.ts';
import type { FieldRow } from './field.ts';
import {
  dustOptions,
  ENTRY_OPTIONS,
  GRADE_MODEL_OPTIONS,
  LOSS_MODEL_OPTIONS,
  MEDIUM_OPTIONS,
  plain,
  PROPORTION_OPTIONS,
} from './field-options.ts';
import type { ShopDocument } from './schema.ts';
import type { Hood, Thing, ThingKind, ThingOf } from './schema-things.ts';

const MEASURED: readonly FieldRow[] = [
  quantityRow('Measured loss', 'measured.loss', 'Measured loss', 'pressure'),
  quantityRow('Measured loss', 'measured.flow', 'Flow at that loss', 'flow'),
];
const measured = (thing: { readonly measured?: unknown }): FieldRow[] => [
  flagRow('Measured loss', 'measured', 'Use a measured loss', {
    optional: true,
    hint: 'stands before any model',
  }),
  ...(thing.measured === undefined ? [] : MEASURED),
];
const maxSuction = quantityRow('Rating', 'maxSuction', 'Suction that it stands', 'pressure', {
  optional: true,
});
const binVolume = quantityRow('Rating', 'binVolume', 'Bin volume', 'volume', { optional: true });

const HOOD_KINDS = plain({
  entry: 'duct opening',
  tapered: 'tapered hood',
  slot: 'slot',
  'brush-shoe': 'spindle shoe with brush',
  given: 'given loss coefficient',
  measured: 'measured loss',
});

const HOOD_FIELDS: Readonly<Record<Hood['kind'], readonly FieldRow[]>> = {
  entry: [choiceRow('Hood', 'hood.entry', 'Entry', ENTRY_OPTIONS)],
  tapered: [
    quantityRow('Hood', 'hood.angle', 'Included angle', 'angle'),
    choiceRow('Hood', 'hood.shape', 'Hood shape', plain({ round: 'round', rectangular: 'rectangular' })),
  ],
  slot: [quantityRow('Hood', 'hood.slotArea', 'Slot area', 'area')],
  'brush-shoe': [
    quantityRow('Hood', 'hood.gapArea', 'Open area under the brush', 'area'),
    quantityRow('Hood', 'hood.throat', 'Take-off coefficient', 'coefficient', {
      optional: true,
      rule: 'not-negative',
    }),
    quantityRow('Hood', 'hood.bristle', 'Brush gap coefficient', 'coefficient', {
      optional: true,
      rule: 'not-negative',
    }),
  ],
  given: [
    quantityRow('Hood', 'hood.coefficient', 'Entry loss coefficient', 'coefficient', {
      rule: 'not-negative',
    }),
  ],
  measured: [
    quantityRow('Hood', 'hood.loss', 'Measured entry loss', 'pressure'),
    quantityRow('Hood', 'hood.flow', 'Flow at that loss', 'flow'),
  ],
};

const CAPTURE: readonly FieldRow[] = [
  choiceRow(
    'Needs',
    'needs.capture.hood',
    'Capture hood',
    plain({ plain: 'plain opening', flanged: 'flanged opening' }),
  ),
  quantityRow('Needs', 'needs.capture.velocity', 'Capture velocity', 'velocity', {
    hint: 'wanted at the source of the dust',
  }),
  quantityRow('Needs', 'needs.capture.distance', 'Source to hood face', 'length'),
  quantityRow('Needs', 'needs.capture.faceArea', 'Hood face area', 'area'),
];

const CUT: readonly FieldRow[] = [
  quantityRow('Dust', 'cut.width', 'Width of cut', 'length'),
  quantityRow('Dust', 'cut.depth', 'Depth of cut', 'length'),
  quantityRow('Dust', 'cut.feed', 'Feed speed', 'velocity'),
  quantityRow('Dust', 'cut.density', 'Density of the stock', 'density'),
  quantityRow('Dust', 'cut.collected', 'Share collected', 'fraction', { rule: 'share' }),
];

const DIMENSION_LABELS = [
  ['inletHeight', 'Inlet height'],
  ['inletWidth', 'Inlet width'],
  ['outletDiameter', 'Outlet pipe diameter'],
  ['outletDepth', 'Outlet pipe depth below the roof'],
  ['cylinderHeight', 'Height of the straight part'],
  ['totalHeight', 'Height from roof to dust outlet'],
  ['dustOutletDiameter', 'Dust outlet diameter'],
] as const;

/** Own dimensions of a cyclone; without proportions behind them none may be left out. */
const dimensionRows = (free: boolean): FieldRow[] =>
  DIMENSION_LABELS.map(([path, label]) =>
    quantityRow(
      'Own dimensions',
      `dimensions.${path}`,
      label,
      'length',
      free ? {} : { optional: true, hint: 'empty: by the proportions' },
    ),
  );

const OUTLET_KINDS = plain({ open: 'open end', cap: 'weather cap', given: 'given loss coefficient' });

function fanRows(fan: ThingOf<'fan'>, { fans }: ShopDocument): FieldRow[] {
  const designs = fans.map((design) => ({ value: design.id, label: design.name ?? design.id }));
  return [
    choiceRow('Fan', 'design', 'Fan of the bench', designs, {
      optional: true,
      hint: 'empty: none, the curve below',
    }),
    quantityRow('Size', 'outletDiameter', 'Outlet diameter', 'length'),
    quantityRow('Speed', 'speed', 'Speed here', 'speed', {
      optional: true,
      hint: 'empty: the speed of the curve',
    }),
    choiceRow(
      'Curve',
      'curve.pressureKind',
      'Curve shows',
      plain({ static: 'fan static pressure', total: 'fan total pressure' }),
    ),
    quantityRow('Curve', 'curve.speed', 'Speed of the curve', 'speed', { optional: true }),
    quantityRow('Curve', 'curve.density', 'Air density of the curve', 'density'),
    textRow('Curve', 'curve.source', 'Where the curve comes from', { optional: true }),
    ...fan.curve.points.flatMap((_, i) => [
      quantityRow('Curve points', `curve.points.${i}.flow`, `Flow ${i + 1}`, 'flow', {
        rule: 'not-negative',
      }),
      quantityRow('Curve points', `curve.points.${i}.pressure`, `Pressure ${i + 1}`, 'pressure', {
        rule: 'any',
      }),
      quantityRow('Curve points', `curve.points.${i}.power`, `Shaft power ${i + 1}`, 'power', {
        optional: true,
        rule: 'not-negative',
      }),
      quantityRow('Curve points', `curve.points.${i}.current`, `Current ${i + 1}`, 'current', {
        optional: true,
        rule: 'not-negative',
      }),
    ]),
  ];
}

function filterRows(filter: ThingOf<'filter'>): FieldRow[] {
  return [
    ...filter.layers.flatMap((_, i) => {
      const group = filter.layers.length > 1 ? `Layer ${i + 1}` : 'Medium';
      return [
        choiceRow(group, `layers.${i}.medium`, 'Filter medium', MEDIUM_OPTIONS),
        quantityRow(group, `layers.${i}.area`, 'Filter area', 'area'),
        quantityRow(group, `layers.${i}.load`, 'Dust cake now', 'arealDensity', {
          optional: true,
          rule: 'not-negative',
        }),
        quantityRow(group, `layers.${i}.drag`, 'Clean drag', 'filterDrag', {
          optional: true,
          hint: 'empty: that of the medium',
        }),
        quantityRow(group, `layers.${i}.cakeResistance`, 'Cake resistance', 'cakeResistance', {
          optional: true,
        }),
        quantityRow(group, `layers.${i}.passedShare`, 'Dust let through', 'fraction', {
          optional: true,
          rule: 'share',
          hint: 'empty: that of the medium',
        }),
      ];
    }),
    maxSuction,
  ];
}

const ROWS: { readonly [K in ThingKind]: (thing: ThingOf<K>, document: ShopDocument) => FieldRow[] } = {
  port: (port, document) => [
    choiceRow('Hood', 'hood.kind', 'Hood', HOOD_KINDS),
    ...HOOD_FIELDS[port.hood.kind],
    quantityRow('Needs', 'needs.flow', 'Required flow', 'flow', { optional: true }),
    quantityRow('Needs', 'needs.velocity', 'Required velocity', 'velocity', {
      optional: true,
      hint: 'empty: that of the dust class',
    }),
    flagRow('Needs', 'needs.capture', 'Flow from a capture velocity', { optional: true }),
    ...(port.needs?.capture === undefined ? [] : CAPTURE),
    choiceRow('Dust', 'dust', 'Dust class', dustOptions(document), { optional: true }),
    quantityRow('Dust', 'dustRate', 'Dust rate', 'massFlow', { optional: true, rule: 'not-negative' }),
    flagRow('Dust', 'cut', 'Dust rate from the cut', { optional: true }),
    ...(port.cut === undefined ? [] : CUT),
  ],
  leak: () => [
    quantityRow('Size', 'area', 'Open area', 'area'),
    quantityRow('Size', 'dischargeCoefficient', 'Discharge coefficient', 'coefficient', { optional: true }),
  ],
  exhaust: ({ outlet }) => [
    choiceRow('Outlet', 'outlet.kind', 'Outlet', OUTLET_KINDS),
    ...(outlet.kind === 'cap'
      ? [quantityRow('Outlet', 'outlet.gapRatio', 'Cap gap over diameter', 'coefficient')]
      : outlet.kind === 'given'
        ? [
            quantityRow('Outlet', 'outlet.coefficient', 'Exit loss coefficient', 'coefficient', {
              rule: 'not-negative',
            }),
          ]
        : []),
    choiceRow('Outlet', 'to', 'Blows', plain({ room: 'back into the room', outside: 'to the outside' })),
    quantityRow('Outlet', 'pressure', 'Pressure outside', 'pressure', {
      optional: true,
      rule: 'any',
      hint: 'relative to the room, such as wind',
    }),
  ],
  pressure: () => [
    quantityRow('Pressure', 'pressure', 'Total pressure held', 'pressure', {
      rule: 'any',
      hint: 'relative to the room',
    }),
  ],
  wye: () => [
    quantityRow('Size', 'angle', 'Entry angle', 'angle', { hint: 'between branch and main' }),
    flagRow('Size', 'mirrored', 'Branch on the other side'),
  ],
  tee: () => [],
  breeches: () => [
    quantityRow('Size', 'angle', 'Leg angle', 'angle', { hint: 'between each leg and the outlet' }),
  ],
  joint: () => [],
  cyclone: (cyclone) => [
    choiceRow('Size', 'proportions', 'Proportions', PROPORTION_OPTIONS),
    quantityRow('Size', 'bodyDiameter', 'Body diameter', 'length'),
    ...(cyclone.proportions === 'free'
      ? dimensionRows(true)
      : [
          flagRow('Own dimensions', 'dimensions', 'Give own dimensions', { optional: true }),
          ...(cyclone.dimensions === undefined ? [] : dimensionRows(false)),
        ]),
    choiceRow('Models', 'lossModel', 'Pressure drop model', LOSS_MODEL_OPTIONS),
    choiceRow('Models', 'gradeModel', 'Grade efficiency model', GRADE_MODEL_OPTIONS),
    ...measured(cyclone),
    maxSuction,
    binVolume,
  ],
  bin: (bin) => [
    quantityRow('Size', 'inletDiameter', 'Inlet diameter', 'length'),
    quantityRow('Size', 'outletDiameter', 'Outlet diameter', 'length'),
    flagRow('Size', 'baffle', 'Baffle'),
    quantityRow('Dust', 'catchShare', 'Share caught', 'fraction', {
      rule: 'share',
      hint: 'share of the dust mass that stays in the bin',
    }),
    ...measured(bin),
    maxSuction,
    binVolume,
  ],
  filter: filterRows,
  fan: fanRows,
};

/** Fields of a thing, as it is now: those of its hood or outlet, of the groups that are switched on, of each row. */
export function thingRows(thing: Thing, document: ShopDocument): FieldRow[] {
  const rows = ROWS[thing.kind] as (thing: Thing, document: ShopDocument) => FieldRow[];
  return [
    textRow('Name', 'name', 'Name', { optional: true }),
    textRow('Name', 'id', 'Short name', { hint: 'a letter, then letters, digits, - and _' }),
    ...rows(thing, document),
    ...placeRows('at', 'Place'),
    quantityRow('Place', 'turn', 'Turned by', 'angle', { optional: true, rule: 'any' }),
  ];
}

/** Coordinates of a point of the plan. */
export function placeRows(path: string, group: string): FieldRow[] {
  const prefix = path === '' ? '' : `${path}.`;
  return [
    quantityRow(group, `${prefix}x`, 'From the left', 'length', { rule: 'any' }),
    quantityRow(group, `${prefix}y`, 'From the top', 'length', { rule: 'any' }),
    quantityRow(group, `${prefix}z`, 'Height above the floor', 'length', { optional: true, rule: 'any' }),
  ];
}
