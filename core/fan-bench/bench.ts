import { finding, printerFor } from '../checks/finding.ts';

import type { FanDesign } from '../document/schema-fans.ts';
import type { ShopDocument } from '../document/schema.ts';
import { roomAir } from '../network/room-air.ts';
import type { Finding } from '../network/solution.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import { benchCurve } from './bench-curve.ts';
import { fitOfReading } from './curve-fit.ts';
import type { CurveFit } from './curve-fit.ts';
import { reduceDesign } from './design-curve.ts';
import type { ReducedDesign } from './design-curve.ts';
import { fanShapeOf } from './fan-shape.ts';
import { motorAlone, motorAloneFindings } from './motor-alone.ts';
import { benchMotor } from './reduction.ts';
import { estimateOf } from './reading-values.ts';
import type { OutcomeField, ReducedReading } from './reading-values.ts';
import { rotorFindings, rotorResult } from './rotor-of.ts';
import type { FanBenchResult, MotorAlone, ReadingResult } from './result.ts';
import type { BenchAir } from './room.ts';

export interface BenchOptions {
  /** Whole curves drawn for the band; 400 where it is not said. */
  readonly samples?: number;
  /** Of the draws; the same seed gives the same band. */
  readonly seed?: number;
}

const SAMPLES = 400;
const SEED = 20_210;
/** Standard errors from the curve through the others beyond which a reading is called astray. */
export const ASTRAY = 3;

/**
 * What the fan bench says of one fan of the document: readings, curve with its band, motor, rotor and findings.
 *
 * @throws RangeError where the document has no fan of that id
 */
export function benchFan(document: ShopDocument, id: string, options: BenchOptions = {}): FanBenchResult {
  const design = document.fans.find((fan) => fan.id === id);
  if (design === undefined) throw new RangeError(`no fan of the document is called "${id}"`);
  const print = printerFor(document.units);
  const name = design.name ?? id;
  const air = airOf(document);
  if (typeof air === 'string') {
    const findings = [finding('fan-no-curve', id, air)];
    return { id, name, readings: [], curve: null, motor: null, rotor: null, findings };
  }
  const reduced = reduceDesign(design, air, document.units);
  const { fit } = reduced;
  const curve =
    fit === null ? null : benchCurve(design, fit, options.samples ?? SAMPLES, options.seed ?? SEED);
  const readings = reduced.reduction.readings.map((row) => readingResult(row, fit));
  const motor = aloneMotor(design, reduced, air);
  const rotor = rotorResult(design, {
    motorNoLoad_rpm: benchMotor(design).motor?.noLoadSpeed_rpm ?? null,
    highestReading_rpm: highestSpeed(readings),
  });
  const findings = [
    ...rotorFindings(design, rotor, print),
    ...benchFindings(design, reduced, readings),
    ...(motor === null ? [] : motorAloneFindings(design, motor, print)),
  ];
  return { id, name, readings, curve, motor, rotor, findings: gravestFirst(findings) };
}

/** The room's air, or in words why there is none. */
function airOf(document: ShopDocument): BenchAir | string {
  try {
    return roomAir(document);
  } catch (error) {
    if (error instanceof ImpossibleInput) return `the air of the room cannot be: ${error.message}`;
    throw error;
  }
}

function highestSpeed(readings: readonly ReadingResult[]): number | null {
  const speeds = readings.flatMap(({ used, speed_rpm, speedFrom }) =>
    used && speed_rpm !== null && speedFrom !== 'given' ? [speed_rpm.value] : [],
  );
  return speeds.length === 0 ? null : Math.max(...speeds);
}

/** What the motor does with this rotor; without it where its figures cannot be. */
function aloneMotor(design: FanDesign, { curve, fit }: ReducedDesign, air: BenchAir): MotorAlone | null {
  if (benchMotor(design).motor === null) return null;
  return motorAlone(design, curve.ok && fit?.powerIs === 'shaft' ? curve.input : null, air);
}

function readingResult(row: ReducedReading, fit: CurveFit | null): ReadingResult {
  const { reading, worked, problems, used, density_kgm3 } = row;
  const of = (field: OutcomeField) => (worked === null ? null : estimateOf(worked, field));
  return {
    id: reading.id,
    kind: reading.kind,
    used: used && fit !== null,
    flow_m3s: of('flow_m3s'),
    staticPressure_Pa: of('staticPressure_Pa'),
    totalPressure_Pa: of('totalPressure_Pa'),
    airPower_W: of('airPower_W'),
    inputPower_W: of('inputPower_W'),
    shaftPower_W: of('shaftPower_W'),
    efficiency: of('efficiency'),
    speed_rpm: of('speed_rpm'),
    speedFrom: worked?.speedFrom ?? null,
    density_kgm3,
    flowCoefficient: of('flowCoefficient'),
    pressureCoefficient: of('pressureCoefficient'),
    distance: fit === null ? null : fitOfReading(fit, row),
    problems,
  };
}

function benchFindings(
  design: FanDesign,
  { reduction, fit, curve }: ReducedDesign,
  readings: readonly ReadingResult[],
): Finding[] {
  const found: Finding[] = [];
  const place = (i: number) => String(i + 1);
  if (!curve.ok) found.push(finding('fan-no-curve', design.id, curve.message));
  if (reduction.motorProblem !== null)
    found.push(finding('fan-motor-impossible', design.id, reduction.motorProblem));
  readings.forEach(({ problems, distance }, i) => {
    const stop = problems.find(({ stops }) => stops);
    if (stop) found.push(finding('reading-left-out', design.id, place(i), stop.message));
    if (distance !== null && Math.abs(distance) > ASTRAY)
      found.push(finding('reading-astray', design.id, place(i), Math.abs(distance).toFixed(1)));
  });
  if (fit?.shapeAssumed)
    found.push(finding('fan-shape-assumed', design.id, `a fan of this kind (${fanShapeOf(design).label})`));
  if (design.readings.length > 0) found.push(finding('caution-fan-tests', design.id));
  return found;
}

const GRAVITY = ['danger', 'fault', 'warning', 'advice', 'caution'];

const gravestFirst = (findings: readonly Finding[]) =>
  [...findings].sort((a, b) => GRAVITY.indexOf(a.severity) - GRAVITY.indexOf(b.severity));
