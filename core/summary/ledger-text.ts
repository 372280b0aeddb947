import type {
  AirResult,
  Finding,
  FanResult,
  RunResult,
  SettingResult,
  Solution,
} from '../network/solution.ts';
import { displayUnit, NO_VALUE, printQuantity, toDisplay } from '../quantities/print.ts';
import type { Dimension, UnitSystem } from '../quantities/dimensions.ts';
import { flowOrder } from './flow-order.ts';
import type { Stop } from './flow-order.ts';
import { textTable, wrapText } from './text-table.ts';
import type { Column } from './text-table.ts';

/** Width that the text keeps to where tables let it. */
const WIDTH = 100;

/** Decimals of the columns, by kind and units; a column has one unit and one number of decimals. */
const DECIMALS: Readonly<Record<UnitSystem, Partial<Record<Dimension, number>>>> = {
  si: { length: 0, velocity: 1, pressure: 0, flow: 0 },
  us: { length: 1, velocity: 0, pressure: 2, flow: 0 },
};
const LONG_UNIT: Readonly<Record<UnitSystem, { readonly unit: string; readonly perMetre: number }>> = {
  si: { unit: 'm', perMetre: 1 },
  us: { unit: 'ft', perMetre: 1 / 0.3048 },
};

/** The whole result as a person reads it: air, then each setting from the openings to the exhaust. */
export function ledgerText(solution: Solution, units: UnitSystem): string {
  const lines = [solution.document, airLine(solution.air, units), ''];
  for (const setting of solution.settings) lines.push(...settingText(setting, units), '');
  if (solution.settings.length > 1) lines.push(...allSettings(solution.settings, units), '');
  lines.push(...cautionLines(solution));
  return `${lines.join('\n').trimEnd()}\n`;
}

function airLine(air: AirResult, units: UnitSystem): string {
  const density = printQuantity(air.density_kgm3, 'density', units, { digits: 4 });
  if (air.pressure_Pa === null) return `air ${density}, held constant`;
  const kPa = printQuantity(air.pressure_Pa, 'pressure', units, { digits: 4 });
  return `air ${density} at ${kPa} absolute and ${printQuantity(air.temperature_K, 'temperature', units)}`;
}

function settingText(setting: SettingResult, units: UnitSystem): string[] {
  const title = `SETTING "${setting.name}"`;
  if (!setting.converged) {
    return [
      title,
      ...wrapText(`  no solution: ${setting.reasonText ?? ''}`, WIDTH, '    '),
      ...findingLines(setting),
    ];
  }
  const lines = [title, ...setting.fans.flatMap((fan) => fanLines(fan, units)), ''];
  const done = new Set<string>();
  for (const stop of flowOrder(setting)) lines.push(...stopLines(stop, setting, units, done));
  lines.push(...findingLines(setting));
  return lines;
}

function fanLines(fan: FanResult, units: UnitSystem): string[] {
  const print = (si: number | null, dimension: Dimension) => printQuantity(si, dimension, units);
  const parts = [
    `${print(fan.flow_m3s, 'flow')}`,
    `fan static ${print(fan.staticPressure_Pa, 'pressure')}`,
    `fan total ${print(fan.totalPressure_Pa, 'pressure')}`,
    ...(fan.speed_rpm === null ? [] : [print(fan.speed_rpm, 'speed')]),
    ...(fan.power_W === null ? [] : [print(fan.power_W, 'power')]),
    ...(fan.current_A === null ? [] : [print(fan.current_A, 'current')]),
    ...(fan.efficiency === null ? [] : [`efficiency ${(100 * fan.efficiency).toFixed(0)} %`]),
    fan.stable ? 'stable' : 'UNSTABLE',
  ];
  const lines = wrapText(`  fan ${fan.id} runs at ${parts.join(', ')}`, WIDTH, '      ');
  if (fan.allOperatingPoints.length > 1) {
    const points = fan.allOperatingPoints.map(
      (p) => `${print(p.flow_m3s, 'flow')} (${p.stable ? 'stable' : 'unstable'})`,
    );
    lines.push(...wrapText(`    could run at ${points.join(', ')}`, WIDTH, '      '));
  }
  return lines;
}

function pieceColumns(units: UnitSystem): Column[] {
  const right = (head: string, unit = ''): Column => ({ head, unit, align: 'right' });
  const pressure = displayUnit('pressure', units);
  return [
    { head: 'piece', align: 'left' },
    { head: 'kind', align: 'left' },
    right('dia', displayUnit('length', units)),
    right('length', LONG_UNIT[units].unit),
    right('velocity', displayUnit('velocity', units)),
    right('VP', pressure),
    right('coeff'),
    right('friction'),
    right('loss', pressure),
    right('SP after', pressure),
  ];
}

const cell = (si: number | null, dimension: Dimension, units: UnitSystem): string => {
  if (si === null) return NO_VALUE;
  return fixed(toDisplay(si, dimension, units), DECIMALS[units][dimension] ?? 2);
};

/** A number with so many decimals, and no minus before zero. */
function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

function stopLines(stop: Stop, setting: SettingResult, units: UnitSystem, done: Set<string>): string[] {
  if (stop.kind === 'run') {
    if (done.has(stop.run.id)) return [];
    done.add(stop.run.id);
    return runLines(stop.run, units);
  }
  const print = (si: number | null, dimension: Dimension) => printQuantity(si, dimension, units);
  const node = (id: string) => setting.nodes.find((n) => n.id === id);
  if (stop.kind === 'fan') {
    const { fan } = stop;
    const before = print(node(`${fan.id}.in`)?.staticPressure_Pa ?? null, 'pressure');
    const after = print(node(`${fan.id}.out`)?.staticPressure_Pa ?? null, 'pressure');
    return [
      `  [${fan.id}] fan: total rises ${print(fan.totalPressure_Pa, 'pressure')}; SP ${before} to ${after}`,
      '',
    ];
  }
  const { device } = stop;
  const parts = [`loss ${print(device.loss_Pa, 'pressure')} (${device.model ?? ''})`];
  if (device.lossByModel_Pa) {
    const all = Object.values(device.lossByModel_Pa);
    parts.push(`models say ${print(Math.min(...all), 'pressure')} to ${print(Math.max(...all), 'pressure')}`);
  }
  if (device.inletVelocity_ms !== null) parts.push(`inlet ${print(device.inletVelocity_ms, 'velocity')}`);
  if (device.catchShare !== null) parts.push(`catch ${(100 * device.catchShare).toFixed(1)} %`);
  if (device.cutSize_m !== null) parts.push(`cut size ${(device.cutSize_m * 1e6).toFixed(1)} um`);
  if (device.faceVelocity_ms) {
    parts.push(`face velocity ${device.faceVelocity_ms.map((v) => print(v, 'velocity')).join(', ')}`);
  }
  parts.push(`SP after ${print(node(`${device.id}.out`)?.staticPressure_Pa ?? null, 'pressure')}`);
  return [...wrapText(`  [${device.id}] ${device.kind}: ${parts.join('; ')}`, WIDTH, '      '), ''];
}

const VERDICT = { true: 'HOLDS', false: 'DOES NOT HOLD', null: '' } as const;

function runLines(run: RunResult, units: UnitSystem): string[] {
  const print = (si: number | null, dimension: Dimension) => printQuantity(si, dimension, units);
  const needs = [
    ...(run.requiredVelocity_ms === null ? [] : [print(run.requiredVelocity_ms, 'velocity')]),
    ...(run.requiredFlow_m3s === null ? [] : [print(run.requiredFlow_m3s, 'flow')]),
  ];
  const verdict = VERDICT[String(run.holds) as keyof typeof VERDICT];
  const head = [
    `  ${run.id}${run.name === null ? '' : ` ${run.name}`}  (${run.from} to ${run.to})`,
    run.massFlow_kgs === 0
      ? '    shut: no flow'
      : `    ${print(run.flow_m3s, 'flow')}, ${print(run.velocity_ms, 'velocity')}${needs.length > 0 ? `, needs ${needs.join(' and ')}` : ''}${verdict === '' ? '' : `: ${verdict}`}; loss ${print(run.lossTotal_Pa, 'pressure')}`,
  ];
  if (run.pieces.length === 0 || run.massFlow_kgs === 0) return [...head, ''];
  const rows = run.pieces.map((p) => [
    p.id,
    p.kind,
    cell(p.diameter_m, 'length', units),
    p.length_m === null ? NO_VALUE : (p.length_m * LONG_UNIT[units].perMetre).toFixed(2),
    cell(p.velocity_ms, 'velocity', units),
    cell(p.velocityPressure_Pa, 'pressure', units),
    p.coefficient === null ? NO_VALUE : fixed(p.coefficient, 3),
    p.frictionFactor === null ? NO_VALUE : p.frictionFactor.toFixed(4),
    cell(p.loss_Pa, 'pressure', units),
    cell(p.staticPressureAfter_Pa, 'pressure', units),
  ]);
  return [...head, ...textTable(pieceColumns(units), rows, '    '), ''];
}

function findingLines(setting: SettingResult): string[] {
  const said = setting.findings.filter((f) => f.severity !== 'caution');
  if (said.length === 0) return setting.converged ? ['  findings: none'] : [];
  return ['  findings:', ...said.flatMap((f) => oneFinding(f))];
}

const oneFinding = (f: Finding): string[] => [
  ...wrapText(`    ${f.severity} at ${f.where}: ${f.message}`, WIDTH, '        '),
  ...wrapText(`        remedy: ${f.remedy}`, WIDTH, '            '),
];

/** Every run in every setting, side by side. */
function allSettings(settings: readonly SettingResult[], units: UnitSystem): string[] {
  const solved = settings.filter((s) => s.converged);
  const asked = new Set(
    solved.flatMap((s) => s.runs.filter((r) => r.requiredVelocity_ms !== null).map((r) => r.id)),
  );
  const ids = (solved[0]?.runs ?? []).map((r) => r.id).filter((id) => asked.has(id));
  const head = `velocity ${displayUnit('velocity', units)}`;
  const column = (s: SettingResult): string[] => [
    s.name,
    ...ids.map((id) => {
      const run = s.runs.find((r) => r.id === id);
      if (!run) return 'no solution';
      if (run.massFlow_kgs === 0) return 'shut';
      const mark = run.holds === null ? '' : run.holds ? ' holds' : ' FAILS';
      return `${cell(run.velocity_ms, 'velocity', units)}${mark}`;
    }),
    ...fanIds(settings).flatMap((id) => {
      const fan = s.fans.find((f) => f.id === id);
      if (!fan) return ['no solution', 'no solution'];
      return [cell(fan.flow_m3s, 'flow', units), cell(fan.staticPressure_Pa, 'pressure', units)];
    }),
  ];
  const labels = [
    head,
    ...ids,
    ...fanIds(settings).flatMap((id) => [
      `${id} flow ${displayUnit('flow', units)}`,
      `${id} static ${displayUnit('pressure', units)}`,
    ]),
  ];
  return ['ALL SETTINGS', ...sideBySide(labels, settings.map(column))];
}

const fanIds = (settings: readonly SettingResult[]) => [
  ...new Set(settings.flatMap((s) => s.fans.map((fan) => fan.id))),
];

/** Columns beside their labels, in as many tables as the width asks for; the first cell of each is its heading. */
function sideBySide(labels: readonly string[], columns: readonly (readonly string[])[]): string[] {
  const width = (cells: readonly string[]) => Math.max(...cells.map((text) => text.length));
  const lines: string[] = [];
  for (let at = 0; at < columns.length;) {
    let used = 2 + width(labels);
    const first = at;
    while (at < columns.length && (at === first || used + 2 + width(columns[at]!) <= WIDTH)) {
      used += 2 + width(columns[at]!);
      at++;
    }
    const shown = columns.slice(first, at);
    const heads = [labels, ...shown].map((cells, i): Column => ({
      head: cells[0]!,
      align: i === 0 ? 'left' : 'right',
    }));
    const rows = labels.slice(1).map((label, i) => [label, ...shown.map((cells) => cells[i + 1]!)]);
    lines.push(...(first > 0 ? [''] : []), ...textTable(heads, rows, '  '));
  }
  return lines;
}

function cautionLines(solution: Solution): string[] {
  const cautions = new Map<string, Finding>();
  for (const setting of solution.settings) {
    for (const f of setting.findings) if (f.severity === 'caution') cautions.set(f.code, f);
  }
  return [
    'CAUTIONS',
    ...[...cautions.values()].flatMap((f) => wrapText(`  ${f.message} ${f.remedy}`, WIDTH, '    ')),
    ...wrapText(
      '  Chipdraft helps to design; it certifies nothing. Local codes and licensed practice decide.',
      WIDTH,
      '    ',
    ),
  ];
}
