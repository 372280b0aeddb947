import type { Printer } from '../checks/finding.ts';
import type { Quantity } from '../document/quantity-field.ts';
import type { Reading } from '../document/schema-fans.ts';
import { problem } from './reading-problems.ts';
import { estimateOf } from './reading-values.ts';
import type { ReducedReading } from './reading-values.ts';
import type { ReadingProblem } from './result.ts';

/** Standard errors by which two figures must differ before one of them is called wrong. */
const CLEAR = 3;

type Problems = Map<Reading, ReadingProblem[]>;

const add = (into: Problems, reading: Reading, found: ReadingProblem) =>
  into.set(reading, [...(into.get(reading) ?? []), found]);

/** What is wrong with readings as they stand beside each other. */
export function seriesProblems(rows: readonly ReducedReading[], print: Printer): Problems {
  const found: Problems = new Map();
  sayTwice(rows, found);
  saySpeedless(rows, found);
  sayFallingLift(rows, found, print);
  return found;
}

/** Figures of a reading without its name, so that the same test typed twice is seen. */
function figuresOf(reading: Reading): string {
  const figures = { ...reading, id: '', note: '' };
  return JSON.stringify(figures, (_key, value: unknown) => {
    if (typeof value !== 'object' || value === null || !('si' in value)) return value;
    return (value as Quantity).si;
  });
}

function sayTwice(rows: readonly ReducedReading[], found: Problems): void {
  const seen = new Map<string, number>();
  rows.forEach(({ reading, used }, i) => {
    if (!used) return;
    const figures = figuresOf(reading);
    const before = seen.get(figures);
    if (before === undefined) {
      seen.set(figures, i);
      return;
    }
    const message = `the same figures as reading ${before + 1}: it counts once`;
    const remedy =
      'remove it, or type what was read the second time; two readings are never alike to the last digit';
    add(found, reading, problem(null, message, remedy));
  });
}

function saySpeedless(rows: readonly ReducedReading[], found: Problems): void {
  const used = rows.filter((row) => row.used);
  const speedless = used.filter(({ worked }) => worked!.speedFrom === null);
  if (speedless.length === 0 || speedless.length === used.length) return;
  for (const { reading } of speedless) {
    const message = 'its speed is not known, while that of other readings is';
    const remedy = 'read the speed, or volts and amps with the motor described, or give the speed of the fan';
    add(found, reading, problem('speed', message, remedy));
  }
}

function sayFallingLift(rows: readonly ReducedReading[], found: Problems, print: Printer): void {
  const lifts = rows.flatMap(({ reading, used, worked }) => {
    if (!used || !reading.kind.startsWith('sealed')) return [];
    const speed = estimateOf(worked!, 'speed_rpm');
    const lift = estimateOf(worked!, 'staticPressure_Pa')!;
    return speed === null || worked!.speedFrom === 'given' ? [] : [{ reading, speed, lift }];
  });
  for (const fast of lifts) {
    const slow = lifts.find(
      (other) =>
        fast.speed.value - other.speed.value > CLEAR * Math.hypot(fast.speed.error, other.speed.error) &&
        other.lift.value - fast.lift.value > CLEAR * Math.hypot(fast.lift.error, other.lift.error),
    );
    if (slow === undefined) continue;
    const message =
      `lifts less at ${print(fast.speed.value, 'speed')} (${print(fast.lift.value, 'pressure')}) than another ` +
      `reading at ${print(slow.speed.value, 'speed')} (${print(slow.lift.value, 'pressure')}): lift rises with the square of speed`;
    const remedy = 'look for a leak at the seal or a wrong speed, and read both again';
    add(
      found,
      fast.reading,
      problem(fast.reading.kind === 'sealed-lift' ? 'lift' : 'suction', message, remedy, false),
    );
  }
}
