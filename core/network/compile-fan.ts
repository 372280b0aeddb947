import type { FanDesign } from '../document/schema-fans.ts';
import type { ThingOf } from '../document/schema-things.ts';
import { designCurve } from '../fan-bench/design-curve.ts';
import type { BenchAir } from '../fan-bench/design-curve.ts';
import { motorOf } from '../fan-bench/motor-of.ts';
import { fanCurve } from '../fan/fan-curve.ts';
import type { FanCurve } from '../fan/fan-curve.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import type { FanDrive } from './net.ts';
import { roundArea } from './round-area.ts';

/** A fan of the document turned into what the solver asks. */
export interface BuiltFan {
  readonly drive: FanDrive;
  /** Its entry in the list of fans, where it stands for one. */
  readonly design: FanDesign | null;
}

/** A fan of the list that cannot be used, with what would mend it. */
export class UnusableDesign extends Error {
  constructor(
    message: string,
    readonly remedy: string,
  ) {
    super(message);
  }
}

/**
 * Builds a fan: from the design that it stands for, else from its own points.
 *
 * @throws ImpossibleInput naming a field of the thing
 * @throws UnusableDesign where the design gives no curve or no motor
 */
export function buildFan(fan: ThingOf<'fan'>, fans: readonly FanDesign[], air: BenchAir): BuiltFan {
  if (fan.design === undefined) return { drive: heldDrive(fan, ownCurve(fan)), design: null };
  const design = fans.find((one) => one.id === fan.design);
  if (design === undefined) {
    throw new UnusableDesign(
      `no fan of the list of fans is called "${fan.design}"`,
      'name a fan that is there',
    );
  }
  const curve = curveOf(design, air);
  // a speed that the thing holds stands before whatever turns it
  if (fan.speed !== undefined || !design.motor) return { drive: heldDrive(fan, curve), design };
  // without torque and speed nothing tells where the motor meets the wheel
  if (curve.power === null || curve.input.ratedSpeed_rpm === null) {
    return { drive: heldDrive(fan, curve), design };
  }
  const model = refusedAs(`the motor of "${design.id}" cannot be`, () => motorOf(design.motor!));
  const motor = { model, guess_rpm: new Float64Array([curve.input.ratedSpeed_rpm]) };
  return { drive: { curve, speedRatio: 1, motor }, design };
}

function heldDrive(fan: ThingOf<'fan'>, curve: FanCurve): FanDrive {
  const rated = curve.input.ratedSpeed_rpm;
  if (fan.speed && rated === null) {
    throw new ImpossibleInput('curve.speed', 'not given', 'given where the fan runs at a speed of its own');
  }
  return { curve, speedRatio: fan.speed && rated !== null ? fan.speed.si / rated : 1 };
}

function ownCurve(fan: ThingOf<'fan'>): FanCurve {
  return fanCurve({
    pressureKind: fan.curve.pressureKind,
    outletArea_m2: roundArea(fan.outletDiameter.si),
    points: fan.curve.points.map((point) => ({
      flow_m3s: point.flow.si,
      pressure_Pa: point.pressure.si,
      power_W: point.power?.si ?? null,
      current_A: point.current?.si ?? null,
    })),
    ratedSpeed_rpm: fan.curve.speed?.si ?? null,
    ratedDensity_kgm3: fan.curve.density.si,
  });
}

function curveOf(design: FanDesign, air: BenchAir): FanCurve {
  const found = designCurve(design, air);
  if (!found.ok) throw new UnusableDesign(found.message, found.remedy);
  return refusedAs(`the readings of "${design.id}" give no curve`, () => fanCurve(found.input));
}

/** Turns what a relation refuses of a design into words about the design. */
function refusedAs<T>(what: string, step: () => T): T {
  try {
    return step();
  } catch (error) {
    if (!(error instanceof ImpossibleInput)) throw error;
    throw new UnusableDesign(`${what}: ${error.message}`, 'correct it in the list of fans');
  }
}
