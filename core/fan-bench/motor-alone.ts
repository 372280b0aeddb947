import { motorFindings } from '../checks/motor-findings.ts';
import type { Printer } from '../checks/finding.ts';
import type { FanDesign } from '../document/schema-fans.ts';
import { EXTRAPOLATION_MARGIN, fanCurve, fanTotalPressure } from '../fan/fan-curve.ts';
import type { FanCurve, FanCurveInput } from '../fan/fan-curve.ts';
import { drivenSpeedAt } from '../fan/motor/driven-fan.ts';
import type { DrivenFan } from '../fan/motor/driven-fan.ts';
import { loadRatio, matchDiameter, matchSpeed, SUITED } from '../fan/motor/match.ts';
import type { MotorModel } from '../fan/motor/motor-model.ts';
import type { Finding } from '../network/solution.ts';
import type { BenchAir } from './design-curve.ts';
import { motorOf } from './motor-of.ts';
import type { MotorAlone, MotorPoint } from './result.ts';

/** Places at which the curve is looked at for its best and its heaviest point. */
const LOOKS = 64;

/**
 * What the motor of a fan does with its wheel, by itself: wide open, blocked and at the best point of the fan's own curve.
 *
 * @param curveInput - the fan's curve, whose power is shaft power; null where there is none
 * @returns null where the fan has no motor
 * @throws ImpossibleInput naming a field of the motor, where no motor can be like this
 */
export function motorAlone(
  design: FanDesign,
  curveInput: FanCurveInput | null,
  air: Pick<BenchAir, 'density_kgm3'>,
): MotorAlone | null {
  if (!design.motor) return null;
  const model = motorOf(design.motor);
  const { source, basis } = model;
  const curve = curveInput === null ? null : fanCurve(curveInput);
  const unknown = { open: null, blocked: null, best: null };
  const noMatch = { loadRatio: null, matchSpeed_rpm: null, matchDiameter_m: null };
  if (curve === null || curve.power === null || curve.input.ratedSpeed_rpm === null) {
    const words =
      'No reading tells both speed and shaft power, so motor and wheel cannot be put together yet.';
    return { ...unknown, ...noMatch, words, source, basis };
  }
  const fan = { curve, motor: model };
  const density = air.density_kgm3;
  const flows = curve.pressure.x;
  const [first, last] = [flows[0]!, flows[flows.length - 1]!];
  const places = Array.from({ length: LOOKS + 1 }, (_, k) => first + ((last - first) * k) / LOOKS);
  const looks = places.map((flow) => lookAt(fan, flow, density));
  const heaviest = looks.reduce((a, b) => (b.load > a.load ? b : a));
  const best = looks.reduce((a, b) => (b.airShare > a.airShare ? b : a));
  const points = {
    open: looks[LOOKS]!.point,
    blocked: first <= EXTRAPOLATION_MARGIN * (last - first) ? lookAt(fan, 0, density).point : null,
    best: best.point,
  };
  if (!(heaviest.point.torque_Nm > 0)) {
    const words = 'By its readings the wheel asks no power, which cannot be: look at volts and amps again.';
    return { ...points, ...noMatch, words, source, basis };
  }
  const ratio = loadRatio(heaviest.point, model);
  const speed = matchSpeed(model.bestSpeed_rpm, ratio);
  return {
    ...points,
    loadRatio: ratio,
    matchSpeed_rpm: speed,
    matchDiameter_m: matchDiameter(design.wheelDiameter.si, ratio),
    words: wordsFor(ratio, speed, model),
    source: `${source}; wheel by the fan laws at the heaviest point of its curve`,
    basis,
  };
}

/** What is to be said of the motor on the bench; the worst of its points speaks. */
export function motorAloneFindings(design: FanDesign, alone: MotorAlone, print: Printer): Finding[] {
  if (!design.motor) return [];
  const points = [alone.open, alone.blocked, alone.best].filter((point) => point !== null);
  return motorFindings(design.id, { ...alone, model: motorOf(design.motor), points }, print);
}

interface Look {
  readonly point: MotorPoint;
  /** Shaft power at the rated speed [W]. */
  readonly load: number;
  /** Air power over input power [-]. */
  readonly airShare: number;
}

function lookAt(fan: DrivenFan, ratedFlow_m3s: number, density_kgm3: number): Look {
  const { curve, motor } = fan;
  const speed_rpm = drivenSpeedAt(fan, ratedFlow_m3s, density_kgm3);
  const speedRatio = speed_rpm / curve.input.ratedSpeed_rpm!;
  const point = pointOf(motor, speed_rpm);
  const air = airPowerAt(curve, ratedFlow_m3s * speedRatio, density_kgm3, speedRatio);
  return {
    point,
    load: point.shaftPower_W / speedRatio ** 3,
    airShare: point.inputPower_W > 0 ? air / point.inputPower_W : 0,
  };
}

function airPowerAt(curve: FanCurve, flow_m3s: number, density_kgm3: number, speedRatio: number): number {
  const out = new Float64Array(3);
  fanTotalPressure(curve, { flow_m3s, density_kgm3, speedRatio }, out);
  return flow_m3s * out[0]!;
}

function pointOf(model: MotorModel, speed_rpm: number): MotorPoint {
  const at = model.at(speed_rpm);
  const { continuousCurrent_A: lasting, batteryEnergy_J: energy } = model;
  return {
    speed_rpm,
    torque_Nm: at.torque_Nm,
    shaftPower_W: at.shaftPower_W,
    inputPower_W: at.inputPower_W,
    supplyCurrent_A: at.supplyCurrent_A,
    motorCurrent_A: at.motorCurrent_A,
    copperLoss_W: at.copperLoss_W,
    efficiency: at.inputPower_W > 0 ? at.shaftPower_W / at.inputPower_W : 0,
    currentShare: lasting === null ? null : at.motorCurrent_A / lasting,
    runTime_s: energy === null || !(at.inputPower_W > 0) ? null : energy / at.inputPower_W,
  };
}

function wordsFor(ratio: number, speed_rpm: number, model: MotorModel): string {
  const best = `${Math.round(model.bestSpeed_rpm)} rpm`;
  const match = `${Math.round(speed_rpm)} rpm`;
  const lasting =
    model.continuousCurrent_A === null
      ? 'the torque of its best point (no continuous current is given)'
      : 'the torque that it gives for ever';
  const asks = `at its best speed, ${best}, the wheel asks ${ratio.toPrecision(2)} times ${lasting}`;
  const check = 'check the rotor before any higher speed';
  if (ratio > SUITED.high) {
    return `The motor is too small for this wheel: ${asks}. They match at ${match}, or with a smaller wheel of the same shape.`;
  }
  if (ratio < SUITED.low) {
    return `The motor is larger than this wheel needs: ${asks}. They match at ${match}, or with a larger wheel; ${check}.`;
  }
  return `Motor and wheel suit each other: ${asks}.`;
}
