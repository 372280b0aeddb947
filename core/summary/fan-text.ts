import type { Comparison } from '../fan-bench/compare.ts';
import type { BenchCurve, Estimate, FanBenchResult, MotorPoint, ReadingResult } from '../fan-bench/result.ts';
import type { Dimension, UnitSystem } from '../quantities/dimensions.ts';
import { displayUnit, NO_VALUE, printQuantity, toDisplay } from '../quantities/print.ts';
import { textTable, wrapText } from './text-table.ts';
import type { Column } from './text-table.ts';

const WIDTH = 100;
const DECIMALS: Readonly<Record<UnitSystem, Partial<Record<Dimension, number>>>> = {
  si: { flow: 0, pressure: 0, power: 0, speed: 0, current: 1 },
  us: { flow: 0, pressure: 2, power: 0, speed: 0, current: 1 },
};
const KIND_WORDS: Readonly<Record<string, string>> = {
  'sealed-lift': 'sealed lift',
  'sealed-suction': 'sealed suction',
  'hole-plate': 'hole plate',
  orifice: 'orifice plate',
  'inlet-throat': 'shaped inlet',
  'pitot-traverse': 'pitot traverse',
  'vane-traverse': 'vane traverse',
  point: 'given point',
};
/** Every second point of a curve is enough to read. */
const STEP = 2;

/** What the bench says of fans of a document, and all of them beside each other. */
export function fanText(
  title: string,
  fans: readonly FanBenchResult[],
  comparison: Comparison | null,
  units: UnitSystem,
): string {
  const lines = [title, ''];
  for (const fan of fans) lines.push(...oneFan(fan, units), '');
  if (comparison !== null && comparison.fans.length > 0) lines.push(...compared(comparison, units), '');
  lines.push(
    ...wrapText(
      'This workbook helps to design and certifies nothing. A wheel that breaks kills: guard it, stand out of its plane, and follow local codes and a licensed professional.',
      WIDTH,
    ),
  );
  return `${lines.join('\n').trimEnd()}\n`;
}

function oneFan(fan: FanBenchResult, units: UnitSystem): string[] {
  return [
    `FAN ${fan.id} "${fan.name}"`,
    ...(fan.readings.length === 0 ? ['  no readings'] : readingLines(fan.readings, units)),
    ...(fan.curve === null ? ['  no curve'] : curveLines(fan.curve, units)),
    ...motorLines(fan, units),
    ...rotorLines(fan, units),
    ...findingLines(fan),
  ];
}

const column = (value: number, dimension: Dimension, units: UnitSystem) =>
  toDisplay(value, dimension, units)
    .toFixed(DECIMALS[units][dimension] ?? 2)
    .replace(/^-(0(\.0*)?)$/, '$1');

/** A figure and, after ±, what holds nineteen times in twenty. */
function withError(estimate: Estimate | null, dimension: Dimension, units: UnitSystem): string {
  if (estimate === null) return NO_VALUE;
  return `${column(estimate.value, dimension, units)} ±${column(2 * estimate.error, dimension, units)}`;
}

const right = (head: string, unit = ''): Column => ({ head, align: 'right', unit });
const left = (head: string): Column => ({ head, align: 'left', unit: '' });

function readingLines(readings: readonly ReadingResult[], units: UnitSystem): string[] {
  const columns = [
    left('no'),
    left('reading'),
    right('flow', displayUnit('flow', units)),
    right('fan static', displayUnit('pressure', units)),
    right('speed', 'rpm'),
    right('input', 'W'),
    right('shaft', 'W'),
    right('efficiency', '%'),
    right('off curve', 'errors'),
    left(''),
  ];
  const rows = readings.map((reading, i) => [
    String(i + 1),
    KIND_WORDS[reading.kind] ?? reading.kind,
    withError(reading.flow_m3s, 'flow', units),
    withError(reading.staticPressure_Pa, 'pressure', units),
    `${withError(reading.speed_rpm, 'speed', units)}${reading.speedFrom === 'motor' ? ' (motor)' : reading.speedFrom === 'given' ? ' (given)' : ''}`,
    watts(reading.inputPower_W),
    watts(reading.shaftPower_W),
    reading.efficiency === null ? NO_VALUE : (100 * reading.efficiency.value).toFixed(0),
    reading.distance === null ? NO_VALUE : reading.distance.toFixed(1),
    reading.used ? '' : 'left out',
  ]);
  const problems = readings.flatMap((reading, i) =>
    reading.problems.flatMap(({ field, message, remedy }) =>
      wrapText(
        `  reading ${i + 1}${field === null ? '' : `, ${field}`}: ${message}; remedy: ${remedy}`,
        WIDTH,
        '    ',
      ),
    ),
  );
  return ['  readings, ± is what holds 19 times in 20', ...textTable(columns, rows, '  '), ...problems];
}

const watts = (estimate: Estimate | null) =>
  estimate === null ? NO_VALUE : `${estimate.value.toFixed(0)} ±${(2 * estimate.error).toFixed(0)}`;

function curveLines(curve: BenchCurve, units: UnitSystem): string[] {
  const at = curve.speed_rpm === null ? 'at the speed of the tests' : `at ${curve.speed_rpm.toFixed(0)} rpm`;
  const pressure = displayUnit('pressure', units);
  const columns = [
    right('flow', displayUnit('flow', units)),
    right('low', pressure),
    right('fan static', pressure),
    right('high', pressure),
    right('fan total', pressure),
    right('power', 'W'),
    right('efficiency', '%'),
  ];
  const rows = curve.points
    .filter((_, i) => i % STEP === 0)
    .map((point) => [
      column(point.flow_m3s, 'flow', units),
      column(point.low_Pa, 'pressure', units),
      column(point.staticPressure_Pa, 'pressure', units),
      column(point.high_Pa, 'pressure', units),
      column(point.totalPressure_Pa, 'pressure', units),
      point.power_W === null ? NO_VALUE : point.power_W.toFixed(0),
      point.efficiency === null ? NO_VALUE : (100 * point.efficiency).toFixed(0),
    ]);
  const band = `band in which it lies 9 times in 10, ±${(100 * curve.bandShare).toFixed(0)} % of the mean pressure`;
  return [
    `  curve ${at} and ${printQuantity(curve.density_kgm3, 'density', units)}; ${band}`,
    ...textTable(columns, rows, '  '),
    ...wrapText(`  ${curve.source} (${curve.basis})`, WIDTH, '    '),
  ];
}

function motorLines({ motor }: FanBenchResult, units: UnitSystem): string[] {
  if (motor === null) return [];
  const point = (name: string, at: MotorPoint | null) =>
    at === null
      ? []
      : [
          `    ${name}: ${at.speed_rpm.toFixed(0)} rpm, ${at.inputPower_W.toFixed(0)} W in, ${at.shaftPower_W.toFixed(0)} W at the shaft, ` +
            `${printQuantity(at.supplyCurrent_A, 'current', units)} from the supply, ${printQuantity(at.motorCurrent_A, 'current', units)} in the motor` +
            `${at.currentShare === null ? '' : ` (${(100 * at.currentShare).toFixed(0)} % of what it bears)`}` +
            `${at.runTime_s === null ? '' : `, ${printQuantity(at.runTime_s, 'time', units)} on the battery`}`,
        ];
  return [
    '  motor with this wheel',
    ...wrapText(`    ${motor.words}`, WIDTH, '    '),
    ...point('wide open', motor.open),
    ...point('blocked', motor.blocked),
    ...point('best', motor.best),
  ];
}

function rotorLines({ rotor }: FanBenchResult, units: UnitSystem): string[] {
  if (rotor === null) return [];
  const stress = (value: number) => printQuantity(value, 'stress', units);
  return [
    `  rotor at ${rotor.speed_rpm.toFixed(0)} rpm (${rotor.speedFrom})`,
    ...wrapText(
      `    tip ${printQuantity(rotor.tipSpeed_ms, 'velocity', units)}; stress ${stress(rotor.stress_Pa)} (${rotor.stressAt}) of ${stress(rotor.strength_Pa)}, ` +
        `factor ${rotor.safetyFactor.toPrecision(3)} where ${rotor.minimumFactor} is the least; limit ${rotor.speedLimit_rpm.toFixed(0)} rpm, ` +
        `burst expected near ${rotor.burstSpeed_rpm.toFixed(0)} rpm; rim grows by ${printQuantity(rotor.growth_m, 'length', units)}`,
      WIDTH,
      '    ',
    ),
  ];
}

function findingLines(fan: FanBenchResult): string[] {
  return fan.findings.flatMap(({ severity, message, remedy }) => [
    ...wrapText(`  ${severity.toUpperCase()}: ${message}`, WIDTH, '    '),
    ...wrapText(`    remedy: ${remedy}`, WIDTH, '      '),
  ]);
}

function compared(comparison: Comparison, units: UnitSystem): string[] {
  const columns = [
    left('fan'),
    right('lift', displayUnit('pressure', units)),
    right('blocked', 'W'),
    right('best', '%'),
    right('at', displayUnit('flow', units)),
    right('in the shop', displayUnit('flow', units)),
    right('fan static', displayUnit('pressure', units)),
    right('input', 'W'),
    right('current', 'A'),
    left('runs that hold'),
  ];
  const rows = comparison.fans.map((fan) => {
    const at = fan.inShop?.at ?? null;
    const input = at?.drive?.inputPower_W ?? at?.power_W ?? null;
    const current = at?.drive?.supplyCurrent_A ?? at?.current_A ?? null;
    return [
      fan.id,
      fan.lift_Pa === null ? NO_VALUE : column(fan.lift_Pa, 'pressure', units),
      fan.curve?.points[0]?.power_W?.toFixed(0) ?? NO_VALUE,
      fan.best?.efficiency ? (100 * fan.best.efficiency).toFixed(0) : NO_VALUE,
      fan.best === null ? NO_VALUE : column(fan.best.flow_m3s, 'flow', units),
      at === null ? NO_VALUE : column(at.flow_m3s, 'flow', units),
      at === null ? NO_VALUE : column(at.staticPressure_Pa, 'pressure', units),
      input?.toFixed(0) ?? NO_VALUE,
      current?.toFixed(1) ?? NO_VALUE,
      fan.inShop === null
        ? NO_VALUE
        : at === null
          ? (fan.inShop.reason ?? NO_VALUE)
          : `${fan.inShop.held} of ${fan.inShop.asked}`,
    ];
  });
  return [
    `ALL FANS, each in the place of the shop's fan, setting "${comparison.setting}"`,
    ...textTable(columns, rows, '  '),
  ];
}
