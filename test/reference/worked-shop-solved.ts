import { readDocument } from '../../core/document/read.ts';
import { solve } from '../../core/network/solve.ts';
import type { SettingResult } from '../../core/network/solution.ts';
import { boughtFor, workedDocument, type Typing } from './worked-shop-document.ts';
import type { Sheet } from './worked-shop.ts';

/** Inch of water at 4 degC [Pa], cubic foot a minute [m3/s], foot a minute [m/s], lb/ft3 [kg/m3]: NIST SP 811. */
export const INCH_WATER_Pa = 249.082;
export const CFM_m3s = 0.3048 ** 3 / 60;
export const FPM_ms = 0.3048 / 60;
export const STANDARD_DENSITY_kgm3 = (0.075 * 0.45359237) / 0.3048 ** 3;

/** What the program says of the shop, in the units of the sheet. */
export interface Solved {
  readonly setting: SettingResult;
  /** Of standard air, which is what the sheet counts. */
  readonly flows_cfm: Readonly<Record<string, number>>;
  readonly velocities_fpm: Readonly<Record<string, number>>;
  readonly hoodSuctions_inH2O: Readonly<Record<string, number>>;
  /** Static, at each junction and at the fan's inlet. */
  readonly suctions_inH2O: Readonly<Record<string, number>>;
  readonly fanStatic_inH2O: number;
  readonly fanTotal_inH2O: number;
}

const CLOSE_ENOUGH = 1e-7;
const MOST_FANS = 12;

/** The shop with a fan that was bought for one point. */
export function solvedWith(typing: Typing, flow_cfm: number, static_inH2O: number): Solved {
  const read = readDocument(JSON.stringify(workedDocument(typing, boughtFor(flow_cfm, static_inH2O))));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const solved = solve(read.document);
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  const setting = solved.solution.settings[0]!;
  if (setting.reasonText !== null) throw new Error(setting.reasonText);
  const fan = setting.fans[0]!;
  const ofRuns = (of: (run: SettingResult['runs'][number]) => number) =>
    Object.fromEntries(setting.runs.map((run) => [run.id, of(run)]));
  return {
    setting,
    flows_cfm: ofRuns((run) => run.massFlow_kgs / STANDARD_DENSITY_kgm3 / CFM_m3s),
    velocities_fpm: ofRuns((run) => run.velocity_ms! / FPM_ms),
    hoodSuctions_inH2O: ofRuns((run) => -run.pieces[0]!.staticPressureAfter_Pa! / INCH_WATER_Pa),
    suctions_inH2O: Object.fromEntries(
      setting.nodes.map((node) => [node.id, -(node.staticPressure_Pa ?? NaN) / INCH_WATER_Pa]),
    ),
    fanStatic_inH2O: fan.staticPressure_Pa / INCH_WATER_Pa,
    fanTotal_inH2O: fan.totalPressure_Pa / INCH_WATER_Pa,
  };
}

/** The shop with the fan that moves a flow of standard air exactly: one fan after another is tried. */
export function solvedAt(typing: Typing, flow_cfm: number): Solved {
  let static_inH2O = 7;
  for (let i = 0; i < MOST_FANS; i++) {
    const solved = solvedWith(typing, flow_cfm, static_inH2O);
    const share = solved.flows_cfm['D-E']! / flow_cfm;
    if (Math.abs(share - 1) < CLOSE_ENOUGH) return solved;
    // pressure asked for grows about as the square of flow, and the fan's falls by 0.7 where its flow grows by 1
    static_inH2O /= share ** 2.7;
  }
  throw new Error('no fan was found that moves the flow');
}

/** Sheet and program side by side, for whoever has to find out what differs. */
export function comparisonText(sheet: Sheet, ...solved: Solved[]): string {
  const lines: [label: string, sheet: number, of: (one: Solved) => number][] = [];
  const each = (
    label: string,
    from: Readonly<Record<string, number>>,
    of: (one: Solved) => Readonly<Record<string, number>>,
  ) => {
    for (const [id, value] of Object.entries(from))
      lines.push([label.replace('*', id), value, (one) => of(one)[id]!]);
  };
  each('flow *, cfm', sheet.hoods_cfm, (one) => one.flows_cfm);
  each('hood *, in', sheet.hoodSuctions_inH2O, (one) => one.hoodSuctions_inH2O);
  each('suction *, in', sheet.suctions_inH2O, (one) => one.suctions_inH2O);
  lines.push(
    ['suction at fan, in', sheet.fanInlet_inH2O, (one) => one.suctions_inH2O['F.in']!],
    ['fan static, in', sheet.fanStatic_inH2O, (one) => one.fanStatic_inH2O],
    ['fan total, in', sheet.fanTotal_inH2O, (one) => one.fanTotal_inH2O],
  );
  return lines
    .map(([label, value, of]) =>
      [label.padEnd(20), ...[value, ...solved.map(of)].map((v) => v.toFixed(3).padStart(10))].join(''),
    )
    .join('\n');
}

/** Runs checks; if one fails, the table stands under its message. */
export function besides(table: string, checks: () => void): void {
  try {
    checks();
  } catch (error) {
    if (error instanceof Error) error.message += `\n${table}`;
    throw error;
  }
}
