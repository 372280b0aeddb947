import type { EffectivePiece } from './effective-pieces.ts';
import { choiceRow, flagRow, quantityRow, textRow } from './field.ts';
import type { FieldRow } from './field.ts';
import { MATERIAL_OPTIONS, plain, STYLE_OPTIONS } from './field-options.ts';
import { isHose } from './route.ts';
import type { ShopDocument } from './schema.ts';
import type { PieceKind, Run } from './schema-pieces.ts';
import { placeRows } from './thing-fields.ts';

const AS_DRAWN = 'empty: as drawn';

/** Fields of a run. */
export function runRows(run: Run): FieldRow[] {
  return [
    textRow('Name', 'name', 'Name', { optional: true }),
    textRow('Name', 'id', 'Short name'),
    quantityRow('Size', 'diameter', 'Inside diameter', 'length', {
      optional: true,
      hint: 'at the start of the run',
    }),
    choiceRow('Size', 'material', 'Material', MATERIAL_OPTIONS, { optional: true }),
    ...(run.route === undefined
      ? []
      : [
          choiceRow('Bends', 'route.bend.style', 'Elbows', STYLE_OPTIONS),
          quantityRow('Bends', 'route.bend.radiusRatio', 'Bend radius over diameter', 'coefficient'),
        ]),
    quantityRow('Needs', 'requiredVelocity', 'Required velocity', 'velocity', {
      optional: true,
      rule: 'not-negative',
      hint: 'empty: from the dust of the ports upstream',
    }),
    quantityRow('Rating', 'maxSuction', 'Suction that it stands', 'pressure', { optional: true }),
  ];
}

/** What may be typed for a leg of a drawn run in place of what the drawing gives. */
export function legRows(leg: number, hose: boolean): FieldRow[] {
  const path = `route.legs.${leg}`;
  return [
    quantityRow('In place of the drawing', `${path}.length`, 'Length', 'length', {
      optional: true,
      rule: 'not-negative',
      hint: AS_DRAWN,
    }),
    quantityRow('In place of the drawing', `${path}.diameter`, 'Inside diameter', 'length', {
      optional: true,
      hint: 'empty: that of the leg before',
    }),
    choiceRow('In place of the drawing', `${path}.material`, 'Material', MATERIAL_OPTIONS, {
      optional: true,
      hint: 'empty: that of the run',
    }),
    ...(hose
      ? [
          quantityRow('In place of the drawing', `${path}.compression`, 'Pushed together by', 'fraction', {
            optional: true,
            rule: 'share' as const,
          }),
        ]
      : []),
  ];
}

/** What may be typed for a corner of a drawn run, and where it lies. */
export function cornerRows(corner: number, hose: boolean): FieldRow[] {
  const path = `route.corners.${corner}`;
  return [
    quantityRow('In place of the drawing', `${path}.angle`, 'Bend angle', 'angle', {
      optional: true,
      hint: AS_DRAWN,
    }),
    ...(hose
      ? []
      : [
          choiceRow('In place of the drawing', `${path}.style`, 'Elbow', STYLE_OPTIONS, {
            optional: true,
            hint: 'empty: that of the run',
          }),
        ]),
    quantityRow(
      'In place of the drawing',
      `${path}.radiusRatio`,
      'Bend radius over diameter',
      'coefficient',
      { optional: true, hint: 'empty: that of the run' },
    ),
    ...placeRows(path, 'Place'),
  ];
}

const diameter = quantityRow('Size', 'diameter', 'Inside diameter', 'length', {
  optional: true,
  hint: 'empty: that of the piece before',
});
const material = choiceRow('Size', 'material', 'Material', MATERIAL_OPTIONS, {
  optional: true,
  hint: 'empty: that of the run',
});
const name = textRow('Name', 'name', 'Name', { optional: true });

/** Fields of a piece that was put on its run by hand, or typed. */
export const PIECE_ROWS: Readonly<Record<PieceKind, readonly FieldRow[]>> = {
  straight: [
    quantityRow('Size', 'length', 'Length', 'length', { rule: 'not-negative' }),
    diameter,
    material,
    quantityRow('Size', 'compression', 'Pushed together by', 'fraction', {
      optional: true,
      rule: 'share',
      hint: 'hose only',
    }),
  ],
  elbow: [
    choiceRow('Size', 'style', 'Elbow', STYLE_OPTIONS),
    quantityRow('Size', 'angle', 'Bend angle', 'angle'),
    quantityRow('Size', 'radiusRatio', 'Bend radius over diameter', 'coefficient', {
      optional: true,
      hint: 'not for a mitre',
    }),
    diameter,
  ],
  'hose-bend': [
    quantityRow('Size', 'angle', 'Bend angle', 'angle'),
    quantityRow('Size', 'radius', 'Bend radius', 'length'),
    diameter,
    material,
  ],
  reducer: [
    quantityRow('Size', 'to', 'Inside diameter after it', 'length'),
    quantityRow('Size', 'angle', 'Included angle', 'angle', { optional: true, hint: 'empty: abrupt' }),
  ],
  gate: [
    diameter,
    quantityRow('Gate', 'opening', 'Opening where no setting says', 'fraction', {
      optional: true,
      rule: 'share',
      hint: 'empty: fully open',
    }),
  ],
  given: [
    name,
    quantityRow('Loss', 'coefficient', 'Loss coefficient', 'coefficient', { rule: 'not-negative' }),
    diameter,
  ],
  measured: [
    name,
    quantityRow('Loss', 'loss', 'Measured loss', 'pressure'),
    quantityRow('Loss', 'flow', 'Flow at that loss', 'flow'),
    diameter,
  ],
  bare: [
    quantityRow('Size', 'length', 'Length', 'length', { rule: 'not-negative' }),
    quantityRow('Size', 'diameter', 'Inside diameter', 'length'),
    quantityRow('Size', 'roughness', 'Roughness height', 'length', { rule: 'not-negative' }),
    quantityRow('Loss', 'coefficient', 'Loss coefficient of all fittings', 'coefficient', {
      rule: 'not-negative',
    }),
  ],
};

/** Fields of a piece; those of a piece that follows from the drawing start at its run. */
export function pieceRows(run: Run, piece: EffectivePiece): FieldRow[] {
  if (piece.source !== undefined) {
    // only a mitre does without a radius
    const needed = piece.kind === 'elbow' && piece.style !== 'mitre';
    const rows = PIECE_ROWS[piece.kind].map((row) =>
      needed && row.path[0] === 'radiusRatio' ? { ...row, optional: false } : row,
    );
    return [textRow('Name', 'id', 'Short name', piece.kind === 'gate' ? {} : { optional: true }), ...rows];
  }
  const leg = piece.leg ?? piece.corner ?? 0;
  const hose = isHose(run.route?.legs?.[leg]?.material ?? run.material);
  return piece.corner === undefined ? legRows(leg, hose) : cornerRows(piece.corner, hose);
}

const rangeRow = (path: string, label: string, hint = 'empty: the usual range') =>
  quantityRow('How sure', `ranges.${path}`, label, 'fraction', {
    optional: true,
    rule: 'not-negative',
    hint,
  });

/** How far the figures may be off, plus or minus what holds nineteen times in twenty. */
export const RANGE_ROWS: readonly FieldRow[] = [
  rangeRow('fan', 'Fan without tests'),
  rangeRow('friction', 'Friction of duct and hose'),
  rangeRow('coefficients', 'Hoods and fittings'),
  rangeRow('separator', 'Separator', 'empty: the spread of its models'),
  rangeRow('filter', 'Filter'),
];

/** Fields of the shop as a whole. */
/** How the shop is used and cleaned, for what is reckoned over running hours. */
const UPKEEP_ROWS: readonly FieldRow[] = (
  [
    ['cuttingShare', 'Hours with machines cutting', 'share of the running hours; empty: 30 %'],
    ['cleaningRestores', 'Cake that cleaning takes off', 'empty: 85 %'],
    ['binFull', 'Bin counts as full at', 'share of its volume; empty: 75 %'],
    ['motorEfficiency', 'Motor efficiency', 'for a fan without a motor of its own; empty: 80 %'],
  ] as const
).map(([path, label, hint]) =>
  quantityRow('Upkeep', `upkeep.${path}`, label, 'fraction', { optional: true, rule: 'share', hint }),
);

export function documentRows(document: ShopDocument): FieldRow[] {
  const { air } = document;
  return [
    textRow('Shop', 'name', 'Name of the shop'),
    textRow('Shop', 'note', 'Notes', { optional: true }),
    choiceRow('Shop', 'units', 'Units', plain({ si: 'metric', us: 'US customary' })),
    choiceRow(
      'Air',
      'air.kind',
      'Air',
      plain({ weather: 'from temperature and altitude', given: 'given density' }),
    ),
    ...(air.kind === 'given'
      ? [
          quantityRow('Air', 'air.density', 'Density', 'density'),
          quantityRow('Air', 'air.viscosity', 'Viscosity', 'viscosity'),
        ]
      : [
          quantityRow('Air', 'air.temperature', 'Temperature', 'temperature'),
          quantityRow('Air', 'air.humidity', 'Relative humidity', 'fraction', { rule: 'share' }),
          quantityRow('Air', 'air.altitude', 'Altitude', 'length', { optional: true, rule: 'any' }),
          quantityRow('Air', 'air.barometer', 'Barometer', 'pressure', {
            optional: true,
            hint: 'absolute; stands before the altitude',
          }),
        ]),
    flagRow('Air', 'options.compressible', 'Air thins under suction'),
    flagRow('Air', 'options.solidsLoss', 'Count the loss of carried dust'),
    ...RANGE_ROWS,
    ...UPKEEP_ROWS,
    quantityRow('Upkeep', 'upkeep.electricityPrice', 'Price of a kWh', 'coefficient', {
      optional: true,
      rule: 'not-negative',
      hint: 'in your money',
    }),
    quantityRow('Parts', 'parts.spare', 'Spare duct, hose and clamps', 'fraction', {
      optional: true,
      rule: 'share',
      hint: 'empty: 5 %',
    }),
    quantityRow('Parts', 'parts.kerf', 'Width of the cut', 'length', {
      optional: true,
      rule: 'not-negative',
      hint: 'empty: 2 mm',
    }),
    textRow('Parts', 'parts.money', 'Money', { optional: true, hint: 'such as EUR' }),
    ...document.dusts.flatMap((dust, i) => dustRows(`dusts.${i}`, dust.name ?? dust.id)),
    ...(document.underlay === undefined
      ? []
      : [
          quantityRow('Plan picture', 'underlay.metresPerPixel', 'Metres in one pixel', 'coefficient'),
          quantityRow('Plan picture', 'underlay.at.x', 'From the left', 'length', { rule: 'any' }),
          quantityRow('Plan picture', 'underlay.at.y', 'From the top', 'length', { rule: 'any' }),
        ]),
  ];
}

function dustRows(path: string, group: string): FieldRow[] {
  return [
    textRow(group, `${path}.name`, 'Name', { optional: true }),
    quantityRow(group, `${path}.requiredVelocity`, 'Required velocity', 'velocity'),
    quantityRow(group, `${path}.fineVelocity`, 'Required velocity after a separator', 'velocity', {
      optional: true,
    }),
    quantityRow(group, `${path}.highVelocity`, 'Wastefully high above', 'velocity', { optional: true }),
    quantityRow(group, `${path}.particleDensity`, 'Particle density', 'density'),
    quantityRow(group, `${path}.bulkDensity`, 'Density of the heap', 'density'),
    quantityRow(group, `${path}.medianSize`, 'Median size', 'length'),
    quantityRow(group, `${path}.geometricDeviation`, 'Geometric standard deviation', 'coefficient'),
    flagRow(group, `${path}.combustible`, 'Can burn or explode'),
  ];
}
