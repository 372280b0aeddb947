import {
  COLLECTOR,
  sheetJunction,
  sheetRow,
  SHOP,
  type Practice,
  type Row,
  type Segment,
  type Sheet,
} from './worked-shop.ts';

/** The whole sheet, in the order in which it is filled in: from the farthest hood to the stack. */
export function workedShop(practice: Practice): Sheet {
  const { round } = practice;
  const hood = (segment: Segment) => sheetRow(segment, segment.flow_cfm!, practice);
  const saw = hood(SHOP.saw);
  const bandSaw = hood(SHOP.bandSaw);
  const A = sheetJunction(
    'A',
    { row: saw, suction_inH2O: saw.suction_inH2O },
    { row: bandSaw, angle_deg: SHOP.bandSaw.entry_deg },
    SHOP.mainAB,
    practice,
  );
  const AB = sheetRow(SHOP.mainAB, A.joined_cfm, practice);

  const atB = round(A.suction_inH2O + A.mixing_inH2O + AB.suction_inH2O, 3);
  const sander = hood(SHOP.sander);
  const B = sheetJunction(
    'B',
    { row: AB, suction_inH2O: atB },
    { row: sander, angle_deg: SHOP.sander.entry_deg },
    SHOP.mainBC,
    practice,
  );
  const BC = sheetRow(SHOP.mainBC, B.joined_cfm, practice);

  const atC = round(B.suction_inH2O + B.mixing_inH2O + BC.suction_inH2O, 3);
  const first = hood(SHOP.sweepFirst);
  const sweep = hood(SHOP.sweep);
  const C = sheetJunction(
    'C',
    { row: BC, suction_inH2O: atC },
    { row: sweep, angle_deg: SHOP.sweep.entry_deg },
    SHOP.mainCD,
    practice,
  );
  const CD = sheetRow(SHOP.mainCD, C.joined_cfm, practice);

  const collector_inH2O = round(COLLECTOR.loss_inH2O * (C.joined_cfm / COLLECTOR.flow_cfm) ** 2, 3);
  const DE = sheetRow(SHOP.mainDE, C.joined_cfm, practice);
  const stack = sheetRow(SHOP.stack, C.joined_cfm, practice);
  const atD = round(C.suction_inH2O + C.mixing_inH2O + CD.suction_inH2O, 3);
  const fanInlet_inH2O = round(atD + collector_inH2O + DE.suction_inH2O, 3);
  const fanOutlet_inH2O = stack.suction_inH2O;
  // FSP = SPout - SPin - VPin, and SPin is below zero
  const fanStatic_inH2O = round(fanOutlet_inH2O + fanInlet_inH2O - DE.velocityPressure_inH2O, 3);

  // what a later junction draws harder, it draws harder all the way back to the hoods
  const pullC = C.suction_inH2O / C.main_inH2O;
  const pullB = (B.suction_inH2O / B.main_inH2O) * pullC;
  const flows: [row: Row, hoodFlow: number, pull: number][] = [
    [saw, A.governs === 'main' ? saw.flow_cfm : A.corrected_cfm, pullB],
    [bandSaw, A.governs === 'main' ? A.corrected_cfm : bandSaw.flow_cfm, pullB],
    [sander, B.governs === 'main' ? B.corrected_cfm : sander.flow_cfm, pullC],
    [sweep, C.governs === 'main' ? C.corrected_cfm : sweep.flow_cfm, 1],
  ];
  const each = <T>(of: (row: Row, flow: number, pull: number) => T) =>
    Object.fromEntries(flows.map(([row, flow, pull]) => [row.id, of(row, flow, pull)]));
  return {
    rows: [saw, bandSaw, AB, sander, BC, sweep, CD, DE, stack],
    junctions: [A, B, C],
    givenUp: { row: first, ratio: atC / first.suction_inH2O },
    hoods_cfm: each((_, flow, pull) => round(flow * Math.sqrt(pull), 0)),
    hoodSuctions_inH2O: each((row, flow, pull) =>
      round(row.hoodSuction_inH2O * (flow / row.flow_cfm) ** 2 * pull, 3),
    ),
    suctions_inH2O: {
      A: round(A.suction_inH2O * pullB, 3),
      B: round(B.suction_inH2O * pullC, 3),
      C: C.suction_inH2O,
    },
    collector_inH2O,
    fanInlet_inH2O,
    fanOutlet_inH2O,
    fanStatic_inH2O,
    fanTotal_inH2O: round(fanStatic_inH2O + stack.velocityPressure_inH2O, 3),
  };
}

/** The largest duct in which the flow still reaches a velocity [in], row 4 of the sheet. */
export const largestDiameter_in = (flow_cfm: number, velocity_fpm: number): number =>
  12 * Math.sqrt((4 * flow_cfm) / (Math.PI * velocity_fpm));

/** The sheet as a table: one line for each row of the printed form, one column for each segment. */
export function sheetText({ rows }: Sheet): string {
  const lines: [label: string, of: (row: Row) => number][] = [
    ['flow, cfm', (r) => r.flow_cfm],
    ['diameter, in', (r) => r.diameter_in],
    ['area, ft2', (r) => r.area_ft2],
    ['velocity, fpm', (r) => r.velocity_fpm],
    ['velocity pressure, in', (r) => r.velocityPressure_inH2O],
    ['hood suction, in', (r) => r.hoodSuction_inH2O],
    ['friction of a foot, VP', (r) => r.frictionPerFoot],
    ['friction, VP', (r) => r.friction],
    ['elbows and entry, VP', (r) => r.fittings],
    ['duct loss, in', (r) => r.ductLoss_inH2O],
    ['suction of segment, in', (r) => r.suction_inH2O],
  ];
  const head = ['', ...rows.map((row) => row.id)];
  const body = lines.map(([label, of]) => [label, ...rows.map((row) => String(Number(of(row).toFixed(4))))]);
  return [head, ...body]
    .map((cells) => cells.map((c, i) => (i ? c.padStart(8) : c.padEnd(24))).join(''))
    .join('\n');
}
