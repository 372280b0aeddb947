import type { Printer } from '../checks/finding.ts';
import type { FanDesign } from '../document/schema-fans.ts';
import type { MotorModel } from '../fan/motor/motor-model.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import { motorOf } from './motor-of.ts';
import { seriesProblems } from './reading-series.ts';
import { figureProblems, problem, rangeProblems } from './reading-problems.ts';
import { testAir, workOut } from './reading-values.ts';
import type { ReducedReading, WorkedReading } from './reading-values.ts';
import type { ReadingProblem } from './result.ts';
import type { BenchAir } from './room.ts';

/** Readings of a fan, worked out; the curve is laid through those that are used. */
export interface Reduction {
  readonly readings: readonly ReducedReading[];
  /** Why the motor of the design tells nothing; null where it does, or where there is none. */
  readonly motorProblem: string | null;
}

/** Fields of the relations, by their names in the document. */
const FIELDS: Readonly<Record<string, string>> = { frontPipe: 'box', backPipe: 'tapDiameter', rise: 'lift' };

function refused(error: unknown): ReadingProblem {
  if (!(error instanceof ImpossibleInput)) throw error;
  const plain = error.field.replace(/_\w+$/, '');
  const field = FIELDS[plain] ?? plain;
  return problem(
    field,
    `${field} cannot be ${String(error.value)}: it must be ${error.rule}`,
    'check the reading',
  );
}

/** The motor of a design, or why its figures make none. */
export function benchMotor(design: FanDesign): { motor: MotorModel | null; problem: string | null } {
  if (!design.motor) return { motor: null, problem: null };
  try {
    return { motor: motorOf(design.motor), problem: null };
  } catch (error) {
    if (error instanceof ImpossibleInput) return { motor: null, problem: error.message };
    throw error;
  }
}

/** Works out every reading of a fan and tells at each what is wrong with it; never throws for a document that was read. */
export function reduceReadings(design: FanDesign, air: BenchAir, print: Printer): Reduction {
  const { motor, problem: motorProblem } = benchMotor(design);
  const first = design.readings.map((reading): ReducedReading => {
    const room = testAir(reading, air);
    const found = figureProblems(reading, print);
    let worked: WorkedReading | null = null;
    if (!found.some(({ stops }) => stops)) {
      try {
        worked = workOut(design, reading, room, motor);
        found.push(...rangeProblems(reading, room, print));
      } catch (error) {
        found.push(refused(error));
      }
    }
    const density_kgm3 = reading.kind === 'point' ? (reading.density?.si ?? 1.2) : room.density_kgm3;
    return { reading, worked, problems: found, used: worked !== null, density_kgm3 };
  });
  const more = seriesProblems(first, print);
  const readings = first.map((row) => {
    const problems = [...row.problems, ...(more.get(row.reading) ?? [])];
    return { ...row, problems, used: row.used && !problems.some(({ stops }) => stops) };
  });
  return { readings, motorProblem };
}
