/**
 * One branched exhaust system by the velocity-pressure method, as rows of a calculation sheet: flow in cubic feet a
 * minute, velocity in feet a minute, pressure in inches of water, air of 0.075 lb/ft3. It uses nothing of the program, so
 * that the program can be checked against it. Suction counts as positive before the fan.
 *
 * Method and formulas: ACGIH, Industrial Ventilation, calculation sheet; read in two copies (ventilation design work sheet,
 * scribd.com/document/787317697; solved design problem, studylib.net/doc/5901563). Loss factors are from memory.
 */

/** Air of one speed that comes to a junction. */
export interface Stream {
  readonly flow_cfm: number;
  readonly velocity_fpm: number;
  readonly velocityPressure_inH2O: number;
  /** Between this stream and the one that leaves [degrees]. */
  readonly angle_deg: number;
}

/** What a designer brings to the sheet; the rows are the same whatever stands here. */
export interface Practice {
  readonly round: (value: number, places: number) => number;
  /** Of one velocity pressure [fpm]. */
  readonly standardVelocity_fpm: number;
  /** Friction of a foot of duct, in velocity pressures. */
  readonly frictionPerFoot: (velocity_fpm: number, flow_cfm: number, diameter_in: number) => number;
  /** Elbow of five pieces, radius 1.5 diameters, by its angle, in velocity pressures. */
  readonly elbow: (angle_deg: number) => number;
  /** Entry of a branch, in the branch's velocity pressures. */
  readonly branchEntry: (angle_deg: number) => number;
  /** Suction that a junction adds where its streams become one. */
  readonly mixing: (streams: readonly Stream[], velocity_fpm: number, pressure_inH2O: number) => number;
}

/** A length of duct of one size. */
export interface Segment {
  readonly id: string;
  readonly what: string;
  readonly flow_cfm?: number;
  readonly diameter_in: number;
  /** Entry loss of the hood in velocity pressures, at the start of a branch. */
  readonly hood?: number;
  readonly length_ft: number;
  readonly elbows_deg: readonly number[];
  /** Where the branch enters a main; 0 for the main itself. */
  readonly entry_deg: number;
}

/** A column of the printed sheet. */
export interface Row {
  readonly id: string;
  readonly flow_cfm: number;
  readonly diameter_in: number;
  readonly area_ft2: number;
  readonly velocity_fpm: number;
  readonly velocityPressure_inH2O: number;
  readonly hoodSuction_inH2O: number;
  readonly frictionPerFoot: number;
  readonly friction: number;
  readonly fittings: number;
  /** Friction and fittings, in velocity pressures. */
  readonly ductLoss: number;
  readonly ductLoss_inH2O: number;
  readonly suction_inH2O: number;
}

export interface Junction {
  readonly id: string;
  /** Suction that each side asks for, main before branch. */
  readonly main_inH2O: number;
  readonly branch_inH2O: number;
  readonly ratio: number;
  readonly governs: 'main' | 'branch';
  readonly suction_inH2O: number;
  /** The weaker side, drawn harder by the stronger one. */
  readonly corrected_cfm: number;
  readonly correctedVelocity_fpm: number;
  readonly correctedPressure_inH2O: number;
  readonly joined_cfm: number;
  readonly resultantPressure_inH2O: number;
  readonly mixing_inH2O: number;
}

export interface Sheet {
  readonly rows: readonly Row[];
  readonly junctions: readonly Junction[];
  /** First choice of a size that was given up, because its branch asked for too little. */
  readonly givenUp: { readonly row: Row; readonly ratio: number };
  /** Of each hood once all junctions are balanced. */
  readonly hoods_cfm: Readonly<Record<string, number>>;
  readonly hoodSuctions_inH2O: Readonly<Record<string, number>>;
  /** At each junction once all junctions are balanced. */
  readonly suctions_inH2O: Readonly<Record<string, number>>;
  readonly collector_inH2O: number;
  readonly fanInlet_inH2O: number;
  readonly fanOutlet_inH2O: number;
  readonly fanStatic_inH2O: number;
  readonly fanTotal_inH2O: number;
}

/** A side that asks for this many times less than the other gets a smaller duct, not more air. */
export const RESIZE_ABOVE = 1.2;

/** Half goes up; what binary figures add to a decimal half is taken off first. */
const toPlaces = (value: number, places: number) =>
  Math.round(Number((value * 10 ** places).toPrecision(12))) / 10 ** places;

/** Branch entries of the method at the angles used here. */
const ENTRY: Readonly<Record<number, number>> = { 0: 0, 30: 0.18, 45: 0.28 };

/**
 * The method as it is taught: velocity pressure to the hundredth, power-law friction of galvanised duct, elbows in
 * proportion to their angle, a loss factor for a branch's entry, and suction for speeding up, with no credit for slowing down.
 */
export const SHEET_PRACTICE: Practice = {
  round: toPlaces,
  standardVelocity_fpm: 4005,
  frictionPerFoot: (V, Q) => (0.0307 * V ** 0.533) / Q ** 0.612,
  elbow: (angle_deg) => (0.24 * angle_deg) / 90,
  branchEntry: (angle_deg) => ENTRY[angle_deg] ?? NaN,
  mixing: (streams, _, pressure_inH2O) => Math.max(0, pressure_inH2O - resultant(streams)),
};

/** Mean velocity pressure of streams by their flow, "VPr". */
export function resultant(streams: readonly Stream[]): number {
  const flow = streams.reduce((sum, s) => sum + s.flow_cfm, 0);
  return streams.reduce((sum, s) => sum + (s.flow_cfm / flow) * s.velocityPressure_inH2O, 0);
}

/** Rows 2 to 37 of the sheet for one segment. */
export function sheetRow(segment: Segment, flow_cfm: number, practice: Practice): Row {
  const { round } = practice;
  const { velocity_fpm, area_ft2, velocityPressure_inH2O } = speedIn(segment.diameter_in, flow_cfm, practice);
  const frictionPerFoot = round(practice.frictionPerFoot(velocity_fpm, flow_cfm, segment.diameter_in), 4);
  const friction = round(frictionPerFoot * segment.length_ft, 4);
  const elbows = segment.elbows_deg.map((angle) => round(practice.elbow(angle), 2));
  const fittings = round(
    elbows.reduce((sum, k) => sum + k, practice.branchEntry(segment.entry_deg)),
    4,
  );
  const hood = segment.hood === undefined ? 0 : (1 + segment.hood) * velocityPressure_inH2O;
  const hoodSuction_inH2O = round(hood, 3);
  const ductLoss = round(friction + fittings, 4);
  const ductLoss_inH2O = round(ductLoss * velocityPressure_inH2O, 3);
  return {
    id: segment.id,
    flow_cfm,
    diameter_in: segment.diameter_in,
    area_ft2,
    velocity_fpm,
    velocityPressure_inH2O,
    hoodSuction_inH2O,
    frictionPerFoot,
    friction,
    fittings,
    ductLoss,
    ductLoss_inH2O,
    suction_inH2O: round(hoodSuction_inH2O + ductLoss_inH2O, 3),
  };
}

function speedIn(diameter_in: number, flow_cfm: number, { round, standardVelocity_fpm }: Practice) {
  const area_ft2 = round((Math.PI * diameter_in ** 2) / 4 / 144, 4);
  const velocity_fpm = round(flow_cfm / area_ft2, 0);
  const velocityPressure_inH2O = round((velocity_fpm / standardVelocity_fpm) ** 2, 2);
  return { area_ft2, velocity_fpm, velocityPressure_inH2O };
}

/** Balances the two sides of a junction: the greater suction governs, and the other side gets more air. */
export function sheetJunction(
  id: string,
  main: { readonly row: Row; readonly suction_inH2O: number },
  branch: { readonly row: Row; readonly angle_deg: number },
  out: Segment,
  practice: Practice,
): Junction {
  const { round } = practice;
  const asks = { main: main.suction_inH2O, branch: branch.row.suction_inH2O };
  const governs = asks.main >= asks.branch ? 'main' : 'branch';
  const suction_inH2O = Math.max(asks.main, asks.branch);
  const least = Math.min(asks.main, asks.branch);
  const weaker = governs === 'main' ? branch.row : main.row;
  const stronger = governs === 'main' ? main.row : branch.row;
  const corrected_cfm = round(weaker.flow_cfm * Math.sqrt(suction_inH2O / least), 0);
  const corrected = speedIn(weaker.diameter_in, corrected_cfm, practice);
  const joined_cfm = corrected_cfm + stronger.flow_cfm;
  const angleOf = (row: Row) => (row === branch.row ? branch.angle_deg : 0);
  const streams: Stream[] = [
    { ...corrected, flow_cfm: corrected_cfm, angle_deg: angleOf(weaker) },
    { ...stronger, angle_deg: angleOf(stronger) },
  ];
  const leaving = speedIn(out.diameter_in, joined_cfm, practice);
  const mixing = practice.mixing(streams, leaving.velocity_fpm, leaving.velocityPressure_inH2O);
  return {
    id,
    main_inH2O: asks.main,
    branch_inH2O: asks.branch,
    ratio: suction_inH2O / least,
    governs,
    suction_inH2O,
    corrected_cfm,
    correctedVelocity_fpm: corrected.velocity_fpm,
    correctedPressure_inH2O: corrected.velocityPressure_inH2O,
    joined_cfm,
    resultantPressure_inH2O: round(resultant(streams), 2),
    mixing_inH2O: round(mixing, 2),
  };
}

/** The Tern Street shop on the sheet: four hoods, three junctions, collector, fan, stack. */
export const SHOP = {
  saw: seg('H1-A', 'table saw', 5, 14, [90, 90], { flow_cfm: 560, hood: 0.25 }),
  bandSaw: seg('H2-A', 'band saw', 4, 9, [90, 60], { flow_cfm: 380, hood: 0.25, entry_deg: 30 }),
  sander: seg('H3-B', 'disc sander', 4, 12, [90], { flow_cfm: 380, hood: 0.25, entry_deg: 30 }),
  sweepFirst: seg('H4-C', 'floor sweep, first choice', 6, 9, [90], {
    flow_cfm: 800,
    hood: 0.93,
    entry_deg: 45,
  }),
  sweep: seg('H4-C', 'floor sweep', 5.5, 9, [90], { flow_cfm: 800, hood: 0.93, entry_deg: 45 }),
  mainAB: seg('A-B', 'main', 6.5, 12, []),
  mainBC: seg('B-C', 'main', 7.5, 14, []),
  mainCD: seg('C-D', 'main to the collector', 10, 10, [90]),
  mainDE: seg('D-E', 'collector to fan', 10, 6, [90]),
  stack: seg('F-G', 'stack', 11, 12, []),
} as const;

/** What the collector's maker states; it grows with the square of flow. */
export const COLLECTOR = { loss_inH2O: 2.5, flow_cfm: 2200 } as const;

function seg(
  id: string,
  what: string,
  diameter_in: number,
  length_ft: number,
  elbows_deg: readonly number[],
  more: Partial<Segment> = {},
): Segment {
  return { id, what, diameter_in, length_ft, elbows_deg, entry_deg: 0, ...more };
}
