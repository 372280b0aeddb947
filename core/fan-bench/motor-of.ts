import type { Motor } from '../document/schema-fans.ts';
import { brushlessMotor } from '../fan/motor/brushless.ts';
import { inductionMotor } from '../fan/motor/induction.ts';
import type { MotorModel } from '../fan/motor/motor-model.ts';
import { seriesMotor } from '../fan/motor/series.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';

/** Share of its power that a controller for a brushless motor loses, where the document does not say. */
export const CONTROLLER_LOSS = {
  value: 0.03,
  source: 'none: makers and users speak of 2 to 5 %',
  basis: 'common-practice',
} as const;

type Builders = { readonly [K in Motor['kind']]: (motor: Extract<Motor, { kind: K }>) => MotorModel };

const BUILDERS: Builders = {
  brushless: (motor) =>
    brushlessMotor({
      speedConstant_rpmV: motor.speedConstant.si,
      resistance_ohm: motor.resistance.si,
      noLoadCurrent_A: motor.noLoadCurrent.si,
      supply_V: motor.supply.si,
      supplyResistance_ohm: motor.supplyResistance?.si ?? 0,
      throttle: motor.throttle?.si ?? 1,
      controllerLoss: motor.controllerLoss?.si ?? CONTROLLER_LOSS.value,
      continuousCurrent_A: motor.continuousCurrent?.si ?? null,
      batteryEnergy_J: motor.batteryEnergy?.si ?? null,
    }),
  series: (motor) =>
    seriesMotor({
      points: motor.points.map((point) => ({
        torque_Nm: point.torque.si,
        speed_rpm: point.speed.si,
        current_A: point.current.si,
      })),
      supply_V: motor.supply.si,
      continuousCurrent_A: motor.continuousCurrent?.si ?? null,
    }),
  induction: (motor) =>
    inductionMotor({
      frequency_Hz: motor.frequency.si,
      poles: motor.poles,
      ratedPower_W: motor.ratedPower.si,
      ratedSpeed_rpm: motor.ratedSpeed.si,
      ratedCurrent_A: motor.ratedCurrent.si,
      supply_V: motor.supply.si,
      phases: motor.phases,
      powerFactor: motor.powerFactor?.si ?? null,
      efficiency: motor.efficiency?.si ?? null,
      beltRatio: motor.ratio?.si ?? null,
    }),
};

/** Names that a field has in the document, where they differ from that of the model without its unit. */
const FIELDS: Readonly<Record<string, string>> = { beltRatio: 'ratio' };

const built = new WeakMap<Motor, MotorModel>();

/**
 * The motor of a fan of the document, at the shaft of its wheel; made once for each motor.
 *
 * @throws ImpossibleInput naming the document's field, where no motor can be like this
 */
export function motorOf(motor: Motor): MotorModel {
  const known = built.get(motor);
  if (known !== undefined) return known;
  try {
    const model = (BUILDERS[motor.kind] as (motor: Motor) => MotorModel)(motor);
    built.set(motor, model);
    return model;
  } catch (error) {
    if (!(error instanceof ImpossibleInput)) throw error;
    const plain = error.field.replace(/_\w+$/, '');
    throw new ImpossibleInput(FIELDS[plain] ?? plain, error.value, error.rule);
  }
}
