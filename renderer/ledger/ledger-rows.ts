import type { PieceResult, RunResult, SettingResult } from '../../core/network/solution.ts';
import { flowOrder } from '../../core/summary/flow-order.ts';
import type { UnitSystem } from '../../core/quantities/dimensions.ts';
import { printQuantity } from '../../core/quantities/print.ts';
import { figure, fixed, longFigure, plainFigure } from '../../core/summary/figures/charts/columns.ts';
import { marginOf, marginText, statusesOf } from '../../core/summary/figures/charts/status.ts';
import type { RunStatus } from '../../core/summary/figures/charts/status.ts';
import { kindWord, pieceWord } from '../../core/summary/figures/charts/words.ts';

/** Figures of a piece, as text and without units, in the order of the columns. */
export interface Figures {
  readonly diameter: string;
  readonly length: string;
  readonly velocity: string;
  readonly velocityPressure: string;
  readonly coefficient: string;
  readonly friction: string;
  readonly loss: string;
  readonly staticAfter: string;
  readonly totalAfter: string;
}

interface Row {
  /** Tells rows apart. */
  readonly key: string;
  /** Id that is selected with the row. */
  readonly select: string;
}

export interface RunRow extends Row {
  readonly kind: 'run';
  readonly run: RunResult;
  readonly status: RunStatus;
  /** Flow, velocity and needs in a line. */
  readonly says: string;
  readonly margin: string;
  readonly loss: string;
}

export interface PieceRow extends Row {
  readonly kind: 'piece';
  readonly runId: string;
  readonly piece: PieceResult;
  readonly word: string;
  readonly figures: Figures;
}

export interface DeviceRow extends Row {
  readonly kind: 'device' | 'fan';
  readonly word: string;
  readonly says: string;
  readonly figures: Figures;
  readonly source: string | null;
  readonly basis: string | null;
}

export type LedgerRow = RunRow | PieceRow | DeviceRow;

/** The ledger of a setting in the order of flow: each run with its pieces, devices and fans between them. */
export function ledgerRows(
  result: SettingResult,
  units: UnitSystem,
  things: ReadonlySet<string>,
): LedgerRow[] {
  const statuses = statusesOf(result);
  const nodes = new Map(result.nodes.map((node) => [node.id, node]));
  const rows: LedgerRow[] = [];
  const done = new Set<string>();
  const pressureAfter = (id: string) => {
    const node = nodes.get(`${id}.out`);
    return {
      staticAfter: figure(node?.staticPressure_Pa ?? null, 'pressure', units),
      totalAfter: figure(node?.totalPressure_Pa ?? null, 'pressure', units),
    };
  };
  for (const stop of flowOrder(result)) {
    if (stop.kind === 'run') {
      const { run } = stop;
      if (done.has(run.id)) continue;
      done.add(run.id);
      rows.push(runRow(run, statuses.get(run.id) ?? 'none', units));
      // a run in which nothing moves has no figures to show
      if (run.massFlow_kgs === 0) continue;
      run.pieces.forEach((piece, i) => rows.push(pieceRow(run, piece, i, units, things)));
      continue;
    }
    const blank = { ...NO_FIGURES };
    if (stop.kind === 'fan') {
      const { fan } = stop;
      rows.push({
        kind: 'fan',
        key: fan.id,
        select: fan.id,
        word: kindWord('fan'),
        says: fanSays(result, fan.id, units),
        figures: {
          ...blank,
          loss: figure(-fan.totalPressure_Pa, 'pressure', units),
          ...pressureAfter(fan.id),
        },
        source: null,
        basis: null,
      });
      continue;
    }
    const { device } = stop;
    rows.push({
      kind: 'device',
      key: device.id,
      select: device.id,
      word: kindWord(device.kind),
      says: deviceSays(device, units),
      figures: { ...blank, loss: figure(device.loss_Pa, 'pressure', units), ...pressureAfter(device.id) },
      source: device.source,
      basis: device.basis,
    });
  }
  return rows;
}

const NO_FIGURES: Figures = {
  diameter: '',
  length: '',
  velocity: '',
  velocityPressure: '',
  coefficient: '',
  friction: '',
  loss: '',
  staticAfter: '',
  totalAfter: '',
};

function runRow(run: RunResult, status: RunStatus, units: UnitSystem): RunRow {
  const needs = [
    ...(run.requiredVelocity_ms === null ? [] : [printQuantity(run.requiredVelocity_ms, 'velocity', units)]),
    ...(run.requiredFlow_m3s === null ? [] : [printQuantity(run.requiredFlow_m3s, 'flow', units)]),
  ];
  const flow = `${printQuantity(run.flow_m3s, 'flow', units)}, ${printQuantity(run.velocity_ms, 'velocity', units)}`;
  return {
    kind: 'run',
    key: run.id,
    select: run.id,
    run,
    status,
    says: run.massFlow_kgs === 0 ? '' : `${flow}${needs.length > 0 ? `; needs ${needs.join(' and ')}` : ''}`,
    margin: marginOf(run) === null ? '' : marginText(marginOf(run)),
    loss: run.massFlow_kgs === 0 ? '' : figure(run.lossTotal_Pa, 'pressure', units),
  };
}

function pieceRow(
  run: RunResult,
  piece: PieceResult,
  i: number,
  units: UnitSystem,
  things: ReadonlySet<string>,
): PieceRow {
  return {
    kind: 'piece',
    key: `${run.id}/${i}`,
    select: selectionOf(piece.id, things),
    runId: run.id,
    piece,
    word: pieceWord(piece),
    figures: {
      diameter: figure(piece.diameter_m, 'length', units),
      length: longFigure(piece.length_m, units),
      velocity: figure(piece.velocity_ms, 'velocity', units),
      velocityPressure: figure(piece.velocityPressure_Pa, 'pressure', units),
      coefficient: plainFigure(piece.coefficient, 3),
      friction: plainFigure(piece.frictionFactor, 4),
      loss: figure(piece.loss_Pa, 'pressure', units),
      staticAfter: figure(piece.staticPressureAfter_Pa, 'pressure', units),
      totalAfter: figure(piece.totalPressureAfter_Pa, 'pressure', units),
    },
  };
}

function deviceSays(device: SettingResult['devices'][number], units: UnitSystem): string {
  const print = (si: number | null, dimension: 'velocity' | 'pressure') =>
    printQuantity(si, dimension, units);
  const parts: string[] = [];
  if (device.model !== null) parts.push(device.model);
  if (device.lossByModel_Pa) {
    const all = Object.values(device.lossByModel_Pa);
    parts.push(`models say ${print(Math.min(...all), 'pressure')} to ${print(Math.max(...all), 'pressure')}`);
  }
  if (device.inletVelocity_ms !== null) parts.push(`inlet ${print(device.inletVelocity_ms, 'velocity')}`);
  if (device.catchShare !== null) parts.push(`catches ${fixed(100 * device.catchShare, 1)} %`);
  if (device.cutSize_m !== null) parts.push(`cut size ${fixed(device.cutSize_m * 1e6, 1)} um`);
  if (device.faceVelocity_ms) {
    parts.push(`face velocity ${device.faceVelocity_ms.map((v) => print(v, 'velocity')).join(', ')}`);
  }
  return parts.join('; ');
}

function fanSays(result: SettingResult, id: string, units: UnitSystem): string {
  const fan = result.fans.find((f) => f.id === id)!;
  const parts = [
    printQuantity(fan.flow_m3s, 'flow', units),
    `fan static ${printQuantity(fan.staticPressure_Pa, 'pressure', units)}`,
    ...(fan.speed_rpm === null ? [] : [printQuantity(fan.speed_rpm, 'speed', units)]),
    ...(fan.power_W === null ? [] : [printQuantity(fan.power_W, 'power', units)]),
    ...(fan.current_A === null ? [] : [printQuantity(fan.current_A, 'current', units)]),
    ...(fan.efficiency === null ? [] : [`efficiency ${fixed(100 * fan.efficiency, 0)} %`]),
    fan.stable ? 'stable' : 'UNSTABLE: flow will hunt or jump',
  ];
  return parts.join('; ');
}

/** Where a row stands among the rows that are shown, after some runs are folded. */
export const visibleRows = (rows: readonly LedgerRow[], folded: ReadonlySet<string>): LedgerRow[] =>
  rows.filter((row) => row.kind !== 'piece' || !folded.has(row.runId));

/** What is selected with a piece: the junction itself for what it takes from a run, else the piece. */
export function selectionOf(id: string, things: ReadonlySet<string>): string {
  const thing = id.split('.', 1)[0]!;
  return things.has(thing) ? thing : id;
}
