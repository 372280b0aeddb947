import type { Quantity } from '../document/quantity-field.ts';
import type { Reading, ReadingKind, ReadingOf } from '../document/schema-fans.ts';
import { HOLE_PLATE_RANGE } from '../fan/tests/hole-plate.ts';
import { leastOrificeReynolds, orificeFlow, ORIFICE_RANGE } from '../fan/tests/orifice-plate.ts';
import { findOutside } from '../quantities/range.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { Printer } from '../checks/finding.ts';
import { orificePlate, orificeReading } from './reading-inputs.ts';
import type { TestAir } from './reading-inputs.ts';
import type { ReadingProblem } from './result.ts';

export const problem = (
  field: string | null,
  message: string,
  remedy: string,
  stops = true,
): ReadingProblem => ({ field, message, remedy, stops });

type Checks = {
  readonly [K in ReadingKind]: (reading: ReadingOf<K>, print: Printer) => readonly ReadingProblem[];
};

const SWAPPED =
  'type it as a positive figure; if it really pushes, the tube sits on the wrong side of the fan';

const suctionAbove = (suction: Quantity, print: Printer) =>
  suction.si > 0
    ? []
    : [problem('suction', `a suction of ${print(suction.si, 'pressure')} cannot be behind a fan`, SWAPPED)];

const suctionFrom = (suction: Quantity, print: Printer) =>
  suction.si >= 0 ? [] : suctionAbove(suction, print);

const aboveZero = (field: string, what: string, value: Quantity, print: Printer) =>
  value.si > 0
    ? []
    : [problem(field, `${what} of ${print(value.si, value.dimension)} tells no flow`, 'read it again')];

function list(field: string, values: readonly Quantity[], what: string): ReadingProblem[] {
  const below = values.findIndex((value) => value.si < 0);
  if (below >= 0)
    return [
      problem(
        `${field}[${below}]`,
        `${what} number ${below + 1} is below zero: air runs backwards or swirls there`,
        'measure in a longer straight duct, or turn the tubes round if all are so',
      ),
    ];
  if (values.every((value) => value.si === 0))
    return [problem(field, `every ${what} is zero: no flow was measured`, 'use a reading of a moving fan')];
  return [];
}

const CHECKS: Checks = {
  'sealed-lift': (r, print) => {
    const found: ReadingProblem[] = [];
    if (!(r.lift.si > 0))
      found.push(problem('lift', `a lift of ${print(r.lift.si, 'length')} tells no suction`, SWAPPED));
    if ((r.tube === undefined) !== (r.vessel === undefined))
      found.push(
        problem(
          r.tube ? 'vessel' : 'tube',
          'the sinking of the vessel is left out: it needs the inside diameter of both tube and vessel',
          'give both, or neither where the vessel is wide',
          false,
        ),
      );
    else if (r.tube && r.vessel && r.tube.si > r.vessel.si)
      found.push(
        problem('tube', 'the tube is wider than the vessel that it stands in', 'check the two diameters'),
      );
    return found;
  },
  'sealed-suction': (r, print) => suctionAbove(r.suction, print),
  'hole-plate': (r, print) => {
    const found = [...suctionAbove(r.suction, print)];
    const whole = r.hole.si * Math.sqrt(r.holes ?? 1);
    const tooLarge = (pipe: Quantity | undefined, where: string) => {
      if (!pipe || whole < pipe.si) return;
      found.push(
        problem(
          'hole',
          `the hole of ${print(whole, 'length')}${(r.holes ?? 1) > 1 ? ' (all holes as one)' : ''} is as large as the pipe ${where} it, ${print(pipe.si, 'length')}: it is no plate`,
          'check both diameters; a plate needs a hole of half the pipe or less',
        ),
      );
    };
    tooLarge(r.box, 'in front of');
    tooLarge(r.tapDiameter, 'behind');
    if (r.dischargeCoefficient && !(r.dischargeCoefficient.si <= 1))
      found.push(
        problem(
          'dischargeCoefficient',
          'a hole cannot pass more than the ideal jet: its coefficient is 1 at most',
          'leave it out for a sharp hole',
        ),
      );
    return found;
  },
  orifice: (r, print) => [
    ...suctionFrom(r.suction, print),
    ...aboveZero('difference', 'a difference', r.difference, print),
    ...(r.bore.si < r.pipe.si
      ? []
      : [
          problem(
            'bore',
            `the bore of ${print(r.bore.si, 'length')} is as large as the pipe, ${print(r.pipe.si, 'length')}`,
            'check both diameters; a bore is three quarters of the pipe at most',
          ),
        ]),
    ...(r.upstreamSuction === undefined ? [] : suctionFrom(r.upstreamSuction, print)).map((found) => ({
      ...found,
      field: 'upstreamSuction',
    })),
  ],
  'inlet-throat': (r, print) => [
    ...suctionFrom(r.suction, print),
    ...aboveZero('difference', 'a difference', r.difference, print),
  ],
  'pitot-traverse': (r, print) => [
    ...suctionFrom(r.suction, print),
    ...list('heads', r.heads, 'velocity pressure'),
  ],
  'vane-traverse': (r, print) => [
    ...suctionFrom(r.suction, print),
    ...list('velocities', r.velocities, 'velocity'),
  ],
  point: (r, print) =>
    r.flow.si >= 0
      ? []
      : [
          problem(
            'flow',
            `a flow of ${print(r.flow.si, 'flow')} runs backwards`,
            'check the sign of the point',
          ),
        ],
};

/** What is wrong with the figures of one reading, before anything is worked out of them. */
export function figureProblems(reading: Reading, print: Printer): ReadingProblem[] {
  const own = (CHECKS[reading.kind] as (reading: Reading, print: Printer) => readonly ReadingProblem[])(
    reading,
    print,
  );
  return [...own, ...driveProblems(reading), ...airProblems(reading, print)];
}

function airProblems(reading: Reading, print: Printer): ReadingProblem[] {
  const T = reading.temperature?.si;
  if (T === undefined || (T > 233 && T < 373)) return [];
  const message = `air of ${print(T, 'temperature')} is no room's air`;
  return [problem('temperature', message, 'check its unit, or leave it out')];
}

function driveProblems(reading: Reading): ReadingProblem[] {
  const { voltage, current, throttle, speed, energy, time } = reading;
  const found: ReadingProblem[] = [];
  const say = (field: string, message: string, remedy: string) =>
    found.push(problem(field, message, remedy, false));
  if (current && !voltage)
    say('voltage', 'amps without volts tell no power', 'read the voltage at the supply as well');
  if (voltage && !current && !speed)
    say('current', 'volts without amps tell neither power nor speed', 'read the current as well');
  if (voltage && !(voltage.si > 0))
    say('voltage', 'a voltage must be above zero', 'swap the leads of the meter');
  if (current && current.si < 0) say('current', 'a current must not be below zero', 'turn the clamp round');
  if (throttle && !(throttle.si > 0 && throttle.si <= 1))
    say(
      'throttle',
      'a throttle lies above 0 % and at 100 % at most; it is left out',
      'type the duty as a share',
    );
  if (speed && !(speed.si > 0))
    say('speed', 'a fan that moves air turns: its speed is left out', 'read it again');
  if (energy && !time)
    say('time', 'energy without running time tells no power', 'give the time that took this energy');
  if (time && !energy) say('energy', 'a running time without energy tells no power', 'give the energy too');
  if (energy && time && !(energy.si > 0 && time.si > 0))
    say('energy', 'energy and time must be above zero; the power is left out', 'check both');
  return found;
}

/** Relations asked outside the range in which they were found; told, and the reading goes on. */
export function rangeProblems(reading: Reading, air: TestAir, print: Printer): ReadingProblem[] {
  if (reading.kind === 'hole-plate') {
    const area = (reading.holes ?? 1) * reading.hole.si ** 2;
    return outside('hole', HOLE_PLATE_RANGE, print, {
      'hole diameter': reading.hole.si,
      ...(reading.box ? { 'hole area over pipe area in front': area / reading.box.si ** 2 } : {}),
      ...(air.pressure_Pa === null
        ? {}
        : { 'suction over room pressure': reading.suction.si / air.pressure_Pa }),
    });
  }
  if (reading.kind !== 'orifice') return [];
  const plate = orificePlate(reading);
  const values = { bore: plate.bore_m, difference: reading.difference.si, density: air.density_kgm3 };
  const full = orificeReading(reading, air, values);
  const { pipeReynolds } = orificeFlow(full);
  const least = leastOrificeReynolds(plate);
  return [
    ...outside('bore', ORIFICE_RANGE, print, {
      'diameter ratio': plate.bore_m / plate.pipe_m,
      bore: plate.bore_m,
      'pipe diameter': plate.pipe_m,
      ...(full.upstreamPressure_Pa === null
        ? {}
        : { 'pressure ratio': 1 - reading.difference.si / full.upstreamPressure_Pa }),
    }),
    ...(pipeReynolds >= least
      ? []
      : [
          problem(
            'bore',
            `Reynolds number ${Math.round(pipeReynolds)} is below ${Math.round(least)}, where this plate is known`,
            'use a smaller pipe, or take the flow as rough',
            false,
          ),
        ]),
  ];
}

function outside(
  field: string,
  range: ValidRange,
  print: Printer,
  values: Readonly<Record<string, number>>,
): ReadingProblem[] {
  return findOutside(range, values).map(({ quantity, value, bounds }) => {
    const show = (x: number) => (bounds.unit === 'm' ? print(x, 'length') : String(Number(x.toPrecision(3))));
    const span = [
      bounds.low === undefined ? '' : `from ${show(bounds.low)}`,
      bounds.high === undefined ? '' : `up to ${show(bounds.high)}`,
    ];
    return problem(
      field,
      `${quantity} is ${show(value)}; the rule is known ${span.filter(Boolean).join(' ')}`,
      'take the flow as rough, or use a plate of another size',
      false,
    );
  });
}
