import type { ShopFile } from '../../core/document/schema.ts';
import { COLLECTOR, SHOP, type Segment, type Sheet } from './worked-shop.ts';

type RunInput = ShopFile['runs'][number];
type Piece = RunInput['pieces'][number];
type Fan = Extract<ShopFile['things'][number], { kind: 'fan' }>;
type FanPoints = Fan['curve']['points'];

/** How the shop's losses are put into the document. */
export interface Typing {
  readonly name: string;
  readonly air: ShopFile['air'];
  readonly compressible: boolean;
  readonly hood: (segment: Segment) => Extract<ShopFile['things'][number], { kind: 'port' }>['hood'];
  readonly pieces: (segment: Segment) => Piece[];
  /** A junction, and how its two sides are called. */
  readonly junction: (angle_deg: number) => {
    readonly thing: { readonly kind: 'wye' | 'breeches'; readonly angle: string };
    readonly main: string;
    readonly branch: string;
  };
}

/** Air of the method; the viscosity is that of dry air at 70 F, which the sheet has in its friction constants. */
const STANDARD_AIR = { kind: 'given', density: '0.075 lb/ft3', viscosity: 1.82e-5 } as const;

/** Entries of the shop's hoods as the program has them: tapered at 90 degrees, and a plain duct end. */
const OWN_HOODS = {
  0.25: { kind: 'tapered', angle: '90 deg', shape: 'rectangular' },
  0.93: { kind: 'entry', entry: 'plain' },
} as const;

/** By the program's own relations: Colebrook's friction, its elbow table, streams that mix by momentum. */
export const ownRelations = (compressible: boolean): Typing => ({
  name: `own relations${compressible ? ', air that thins' : ''}`,
  // dry air of 0.075 lb/ft3 at 70 F: the pressure follows from the gas law
  air: compressible
    ? { kind: 'weather', temperature: '70 degF', humidity: '0 %', barometer: '101.475 kPa' }
    : STANDARD_AIR,
  compressible,
  hood: ({ hood }) => OWN_HOODS[hood as keyof typeof OWN_HOODS],
  pieces: (segment) => [
    { kind: 'straight', length: `${segment.length_ft} ft` },
    ...segment.elbows_deg.map((angle_deg): Piece => ({
      kind: 'elbow',
      style: 'five-piece',
      angle: `${angle_deg} deg`,
      radiusRatio: 1.5,
    })),
  ],
  junction: (angle_deg) => ({
    thing: { kind: 'wye', angle: `${angle_deg} deg` },
    main: 'main',
    branch: 'branch',
  }),
});

/**
 * By the method's figures: every row of the sheet is typed in as a given loss. Junctions only join: their streams share
 * one static pressure and run on side by side, and what the sheet does not credit for slowing down is given too.
 */
export function sheetFigures(sheet: Sheet): Typing {
  const rowOf = new Map(sheet.rows.map((row) => [row.id, row]));
  const slowed = new Map(
    sheet.junctions.map((j, i) => {
      const out = sheet.rows.find((row) => row.id === OUT_OF[i])!;
      const over = j.resultantPressure_inH2O - out.velocityPressure_inH2O;
      return [out.id, Math.max(0, over) / out.velocityPressure_inH2O];
    }),
  );
  return {
    name: 'figures of the sheet',
    air: STANDARD_AIR,
    compressible: false,
    hood: ({ hood }) => ({ kind: 'given', coefficient: hood! }),
    pieces: ({ id }) => [
      { kind: 'given', name: 'slowing down', coefficient: slowed.get(id) ?? 0 },
      { kind: 'given', name: 'friction', coefficient: rowOf.get(id)!.friction },
      { kind: 'given', name: 'elbows and entry', coefficient: rowOf.get(id)!.fittings },
    ],
    junction: () => ({ thing: { kind: 'breeches', angle: '0.001 deg' }, main: 'left', branch: 'right' }),
  };
}

/** The segment that leaves each junction. */
const OUT_OF = ['A-B', 'B-C', 'C-D'];

/** The shop as a document, with a fan of the given points. */
export function workedDocument(typing: Typing, points: FanPoints): ShopFile {
  const run = (segment: Segment, from: string, to: string, more: Piece[] = []): RunInput => ({
    id: segment.id,
    name: segment.what,
    from,
    to,
    diameter: `${segment.diameter_in} in`,
    material: 'galvanised-seamed',
    ...(segment === SHOP.stack ? {} : { requiredVelocity: '4000 fpm' }),
    pieces: [...typing.pieces(segment), ...more],
  });
  const port = (segment: Segment) => ({
    id: segment.id.split('-')[0]!,
    kind: 'port' as const,
    name: segment.what,
    hood: typing.hood(segment),
  });
  const at = {
    A: typing.junction(SHOP.bandSaw.entry_deg),
    B: typing.junction(SHOP.sander.entry_deg),
    C: typing.junction(SHOP.sweep.entry_deg),
  };
  const collector: Piece = {
    kind: 'measured',
    name: 'collector',
    loss: `${COLLECTOR.loss_inH2O} in wg`,
    flow: `${COLLECTOR.flow_cfm} cfm`,
  };
  return {
    format: 'chipdraft-shop',
    version: 2,
    name: `Tern Street, four hoods, by ${typing.name}`,
    units: 'us',
    options: { compressible: typing.compressible },
    air: typing.air,
    things: [
      ...[SHOP.saw, SHOP.bandSaw, SHOP.sander, SHOP.sweep].map(port),
      ...Object.entries(at).map(([id, { thing }]) => ({ id, ...thing })),
      {
        id: 'F',
        kind: 'fan',
        outletDiameter: `${SHOP.stack.diameter_in} in`,
        curve: { pressureKind: 'static', density: '0.075 lb/ft3', points },
      },
      { id: 'D', kind: 'joint' },
      { id: 'G', kind: 'exhaust', outlet: { kind: 'open' }, to: 'outside' },
    ],
    runs: [
      run(SHOP.saw, 'H1', `A.${at.A.main}`),
      run(SHOP.bandSaw, 'H2', `A.${at.A.branch}`),
      run(SHOP.mainAB, 'A.out', `B.${at.B.main}`),
      run(SHOP.sander, 'H3', `B.${at.B.branch}`),
      run(SHOP.mainBC, 'B.out', `C.${at.C.main}`),
      run(SHOP.sweep, 'H4', `C.${at.C.branch}`),
      // the collector stands at the end of the main: what matters is between which rows of the sheet it comes
      run(SHOP.mainCD, 'C.out', 'D', [collector]),
      run(SHOP.mainDE, 'D', 'F.in'),
      run(SHOP.stack, 'F.out', 'G'),
    ],
  } as ShopFile;
}

/** Shape of a radial fan's table about the point that it is bought for: shares of flow and of static pressure. */
const BOUGHT: readonly (readonly [flow: number, pressure: number])[] = [
  [0, 1.3],
  [0.4, 1.27],
  [0.7, 1.17],
  [0.9, 1.06],
  [1, 1],
  [1.1, 0.92],
  [1.25, 0.76],
];

/** A fan bought for one point: its curve goes through it. */
export const boughtFor = (flow_cfm: number, static_inH2O: number): FanPoints =>
  BOUGHT.map(([flow, pressure]) => ({
    flow: `${flow * flow_cfm} cfm`,
    pressure: `${pressure * static_inH2O} in wg`,
  }));
