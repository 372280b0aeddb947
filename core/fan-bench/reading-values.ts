import type { FanDesign, Reading } from '../document/schema-fans.ts';
import { sutherlandViscosity } from '../air/viscosity.ts';
import type { MotorModel } from '../fan/motor/motor-model.ts';
import { coefficientScales, outletVelocityPressure } from '../fan/reduce/coefficients.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import { driveOf } from './reading-drive.ts';
import type { Drive } from './reading-drive.ts';
import { measureOf } from './reading-inputs.ts';
import type { Inputs, TestAir, Values } from './reading-inputs.ts';
import type { BenchAir } from './room.ts';
import type { Estimate, ReadingProblem } from './result.ts';

/** Everything that one reading comes to; null where its figures do not tell. */
export interface Outcome {
  readonly flow_m3s: number;
  readonly staticPressure_Pa: number;
  readonly totalPressure_Pa: number;
  readonly airPower_W: number;
  readonly inputPower_W: number | null;
  readonly shaftPower_W: number | null;
  readonly efficiency: number | null;
  readonly speed_rpm: number | null;
  readonly flowCoefficient: number | null;
  readonly pressureCoefficient: number | null;
  readonly shaftCoefficient: number | null;
  readonly inputCoefficient: number | null;
}

export type OutcomeField = keyof Outcome;

/** A reading worked out: its figures, and how each source of error shifts them. */
export interface WorkedReading {
  readonly nominal: Outcome;
  readonly speedFrom: Drive['speedFrom'];
  /** By one standard error of each input. */
  readonly shifts: readonly { readonly common: string | null; readonly by: Outcome }[];
}

/** A reading with what it comes to and what is wrong with it. */
export interface ReducedReading {
  readonly reading: Reading;
  /** Null where its figures cannot be. */
  readonly worked: WorkedReading | null;
  readonly problems: readonly ReadingProblem[];
  /** Whether it goes into the curve. */
  readonly used: boolean;
  readonly density_kgm3: number;
}

/** Air of the room at the time of a reading: its temperature where one was read, the rest from the shop. */
export function testAir(reading: Reading, air: BenchAir): TestAir {
  const read = reading.temperature?.si ?? null;
  const temperature_K = read ?? air.temperature_K ?? USUAL_TEMPERATURE_K;
  const known = read !== null && air.temperature_K !== null;
  return {
    density_kgm3: known ? (air.density_kgm3 * air.temperature_K) / read : air.density_kgm3,
    viscosity_Pas: read === null ? air.viscosity_Pas : sutherlandViscosity(read),
    temperature_K,
    pressure_Pa: air.pressure_Pa,
  };
}

/** Where neither reading nor shop tells: only water gauges ask, and 10 K change them by 0.2 %. */
const USUAL_TEMPERATURE_K = 293.15;

/**
 * Works a reading out. Coefficients take density as it stands in the document: how far that is off cancels where the
 * curve is put back to pressures in the same room.
 *
 * @throws ImpossibleInput naming the figure that cannot be
 */
export function workOut(
  design: FanDesign,
  reading: Reading,
  air: TestAir,
  motor: MotorModel | null,
): WorkedReading {
  const measure = measureOf(reading, air);
  const drive = driveOf(design, reading, motor);
  const inputs: Inputs = { ...measure.inputs, ...drive.inputs };
  const values: Values = Object.fromEntries(Object.entries(inputs).map(([name, { value }]) => [name, value]));
  const asTotal = reading.kind === 'point' && reading.pressureKind === 'total';
  const nominalDensity = inputs['density']?.value ?? null;

  const outcome = (v: Values): Outcome => {
    const passed = measure.passed(v);
    const outlet = outletVelocityPressure(passed.flow_m3s, design.outletDiameter.si, passed.density_kgm3);
    const staticPressure_Pa = passed.staticPressure_Pa - (asTotal ? outlet : 0);
    const totalPressure_Pa = staticPressure_Pa + outlet;
    const airPower_W = passed.flow_m3s * totalPressure_Pa;
    const driven = drive.driven(v);
    const asTyped = nominalDensity === null ? 1 : nominalDensity / v['density']!;
    const scales =
      driven.speed_rpm === null
        ? null
        : coefficientScales({
            wheelDiameter_m: design.wheelDiameter.si,
            speed_rpm: driven.speed_rpm,
            density_kgm3: passed.density_kgm3 * asTyped,
          });
    const over = (value: number | null, scale: number | undefined) =>
      value === null || scale === undefined ? null : value / scale;
    return {
      ...{ flow_m3s: passed.flow_m3s, staticPressure_Pa, totalPressure_Pa, airPower_W },
      inputPower_W: driven.inputPower_W,
      shaftPower_W: driven.shaftPower_W,
      efficiency:
        driven.inputPower_W !== null && driven.inputPower_W > 0 ? airPower_W / driven.inputPower_W : null,
      speed_rpm: driven.speed_rpm,
      flowCoefficient: over(passed.flow_m3s, scales?.flow_m3s),
      pressureCoefficient: over(staticPressure_Pa, scales?.pressure_Pa),
      shaftCoefficient: over(driven.shaftPower_W, scales?.power_W),
      inputCoefficient: over(driven.inputPower_W, scales?.power_W),
    };
  };

  const nominal = outcome(values);
  for (const [field, value] of Object.entries(nominal)) {
    if (value !== null && !Number.isFinite(value))
      throw new ImpossibleInput(field, 'beyond all measure', 'a finite number');
  }
  const at = (name: string, value: number): Outcome | null => {
    try {
      const found = outcome({ ...values, [name]: value });
      return Object.values(found).every((x) => x === null || Number.isFinite(x)) ? found : null;
    } catch (error) {
      // one standard error away the figure is impossible: the other side tells the shift alone
      if (error instanceof ImpossibleInput) return null;
      throw error;
    }
  };
  const shifts = Object.entries(inputs)
    .filter(([, { error }]) => error > 0)
    .map(([name, { value, error, common }]) => {
      const up = at(name, value + error);
      const down = at(name, value - error);
      const sides = up !== null && down !== null ? 2 : 1;
      return { common, by: difference(up ?? nominal, down ?? nominal, sides) };
    });
  return { nominal, speedFrom: drive.speedFrom, shifts };
}

function difference(up: Outcome, down: Outcome, sides: number): Outcome {
  const entries = Object.entries(up).map(([field, value]) => {
    const other = down[field as OutcomeField];
    return [field, value === null || other === null ? null : ((value as number) - other) / sides];
  });
  return Object.fromEntries(entries) as unknown as Outcome;
}

/** A figure of a reading with its standard error, all sources together. */
export function estimateOf(worked: WorkedReading, field: OutcomeField): Estimate | null {
  const value = worked.nominal[field];
  if (value === null) return null;
  const squares = worked.shifts.reduce((sum, { by }) => sum + (by[field] ?? 0) ** 2, 0);
  const error = Math.sqrt(squares);
  return { value, error: Number.isFinite(error) ? error : Math.abs(value) };
}
