import type { FanBenchResult, MotorPoint, RotorResult } from '../../fan-bench/result.ts';
import type { DriveResult } from '../../network/solution.ts';
import type { Dimension } from '../../quantities/dimensions.ts';
import { NO_VALUE, printQuantity } from '../../quantities/print.ts';
import type { SummaryFacts } from '../facts.ts';
import { htmlTable, pairs } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Child, Markup } from '../markup.ts';

type Print = (si: number | null, dimension: Dimension) => string;

const MOTOR_WORDS: Readonly<Record<DriveResult['motor'], string>> = {
  brushless: 'brushless motor',
  series: 'motor with brushes in series',
  induction: 'induction motor',
};

/** Motor and rotor of each fan, at work in the shop and by itself, with what the rotor bears. */
export function motorSection(facts: SummaryFacts): Markup {
  const { document, governing, units, nameOf } = facts;
  const print: Print = (si, dimension) => printQuantity(si, dimension, units);
  const driven = (governing?.fans ?? []).filter(({ drive }) => drive !== null);
  const benches = facts.benches().filter(({ motor, rotor }) => motor !== null || rotor !== null);
  if (driven.length === 0 && benches.length === 0) {
    return el(
      'p',
      {},
      'No fan has a motor or a rotor in this document, so that nothing is said of either: never run a home-made rotor without a guard.',
    );
  }
  const standsAs = (id: string): string => {
    const thing = document.things.find((one) => one.kind === 'fan' && one.design === id);
    return thing === undefined
      ? 'of the list; it does not stand in the shop'
      : `stands in the shop as ${nameOf(thing.id)}`;
  };
  return join(
    driven.map((fan) => [
      el('h3', {}, `${nameOf(fan.id)} at work in “${governing!.name}”`),
      pairs(driveRows(fan.drive!, fan.speed_rpm, print)),
    ]),
    benches.map((bench) => [
      el('h3', {}, `${bench.name} (${standsAs(bench.id)})`),
      motorRows(bench, print),
      bench.rotor === null ? null : rotorRows(bench.rotor, print),
      bench.findings
        .filter(({ code }) => code.startsWith('rotor') || code.startsWith('motor'))
        .map(({ severity, message, remedy }) =>
          el('p', {}, el('b', {}, severity), `: ${message}; ${remedy}.`),
        ),
    ]),
    el(
      'div',
      { class: 'safety' },
      el(
        'p',
        {},
        'A rotor that bursts kills. Guard it, stand out of its plane, bring its speed up in steps from a distance, and leave doubtful wheels and mains wiring to a licensed professional.',
      ),
    ),
  );
}

const share = (value: number | null): string => (value === null ? NO_VALUE : `${(100 * value).toFixed(0)} %`);

function driveRows(drive: DriveResult, speed_rpm: number | null, print: Print): (readonly [string, Child])[] {
  return [
    ['motor', MOTOR_WORDS[drive.motor]],
    ['speed', print(speed_rpm, 'speed')],
    ['torque', print(drive.torque_Nm, 'torque')],
    ['power at the shaft', print(drive.shaftPower_W, 'power')],
    ['power drawn', print(drive.inputPower_W, 'power')],
    ['current from the supply', print(drive.supplyCurrent_A, 'current')],
    ['current in the motor', print(drive.motorCurrent_A, 'current')],
    ['of what it bears for ever', share(drive.currentShare)],
    ['heat in its windings', print(drive.copperLoss_W, 'power')],
    ['on the battery', print(drive.runTime_s, 'time')],
  ];
}

function motorRows({ motor }: FanBenchResult, print: Print): Child {
  if (motor === null) return null;
  const points = [
    ['wide open', motor.open],
    ['blocked', motor.blocked],
    ['at its best', motor.best],
  ] as const;
  const known = points.filter((row): row is readonly [(typeof row)[0], MotorPoint] => row[1] !== null);
  return [
    el('p', {}, motor.words),
    known.length === 0
      ? null
      : htmlTable(
          [
            { head: 'with this wheel alone' },
            { head: 'speed', align: 'right' },
            { head: 'drawn', align: 'right' },
            { head: 'at the shaft', align: 'right' },
            { head: 'supply', align: 'right' },
            { head: 'motor', align: 'right' },
            { head: 'of its rating', align: 'right' },
            { head: 'battery', align: 'right' },
          ],
          known.map(([name, at]) => [
            name,
            print(at.speed_rpm, 'speed'),
            print(at.inputPower_W, 'power'),
            print(at.shaftPower_W, 'power'),
            print(at.supplyCurrent_A, 'current'),
            print(at.motorCurrent_A, 'current'),
            share(at.currentShare),
            print(at.runTime_s, 'time'),
          ]),
        ),
  ];
}

function rotorRows(rotor: RotorResult, print: Print): Child {
  const rows: (readonly [string, string])[] = [
    ['rotor turns at most', `${print(rotor.speed_rpm, 'speed')} (${rotor.speedFrom})`],
    ['speed limit with its factor', print(rotor.speedLimit_rpm, 'speed')],
    ['burst expected near', print(rotor.burstSpeed_rpm, 'speed')],
    ['tip speed', print(rotor.tipSpeed_ms, 'velocity')],
    [
      'stress',
      `${print(rotor.stress_Pa, 'stress')} (${rotor.stressAt}) of ${print(rotor.strength_Pa, 'stress')}`,
    ],
    ['stress at the blade root', print(rotor.rootStress_Pa, 'stress')],
    ['safety factor', `${rotor.safetyFactor.toPrecision(3)} where ${rotor.minimumFactor} is the least`],
    ['growth at the rim', print(rotor.growth_m, 'length')],
    ['gap left at the rim', print(rotor.rimGapLeft_m, 'length')],
    ['energy when it turns', print(rotor.energy_J, 'energy')],
    ['tone of the blades', print(rotor.bladePass_Hz, 'frequency')],
  ];
  return pairs(rows.filter(([, value]) => value !== NO_VALUE));
}
