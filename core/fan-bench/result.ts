import type { Finding } from '../network/solution.ts';

/**
 * What the fan bench says of one fan of the document. Plain data in SI, speeds in rpm, gauge pressures; what does not
 * apply is null, never absent. The screen, the paper and the command line read this and work nothing out again.
 */
export interface FanBenchResult {
  readonly id: string;
  readonly name: string;
  readonly readings: readonly ReadingResult[];
  /** Null where no reading can be used. */
  readonly curve: BenchCurve | null;
  readonly motor: MotorAlone | null;
  readonly rotor: RotorResult | null;
  readonly findings: readonly Finding[];
}

/** A number with its standard error, both in the unit of the field's name. */
export interface Estimate {
  readonly value: number;
  readonly error: number;
}

/** What one reading comes to, at the speed and density of the test. */
export interface ReadingResult {
  readonly id: string;
  readonly kind: string;
  /** Whether it goes into the curve. */
  readonly used: boolean;
  readonly flow_m3s: Estimate | null;
  readonly staticPressure_Pa: Estimate | null;
  readonly totalPressure_Pa: Estimate | null;
  readonly airPower_W: Estimate | null;
  readonly inputPower_W: Estimate | null;
  readonly shaftPower_W: Estimate | null;
  /** Air power over input power [-]. */
  readonly efficiency: Estimate | null;
  readonly speed_rpm: Estimate | null;
  readonly speedFrom: 'read' | 'motor' | 'given' | null;
  readonly density_kgm3: number;
  readonly flowCoefficient: Estimate | null;
  readonly pressureCoefficient: Estimate | null;
  /** Distance from the curve through the others, in standard errors; null where it is not used. */
  readonly distance: number | null;
  /** What is wrong with it and what would mend it, for its row; the field where one is at fault. */
  readonly problems: readonly ReadingProblem[];
}

export interface ReadingProblem {
  readonly field: string | null;
  readonly message: string;
  readonly remedy: string;
  /** True where it keeps the reading out of the curve. */
  readonly stops: boolean;
}

/** The curve at one speed and density, with the band in which it lies nine times in ten. */
export interface BenchCurve {
  readonly speed_rpm: number | null;
  readonly density_kgm3: number;
  readonly outletArea_m2: number;
  readonly points: readonly BenchCurvePoint[];
  /** True where the shape is that of the type of fan and only its height was measured. */
  readonly shapeAssumed: boolean;
  /** Half width of the band over the curve, mean over the flows [-]. */
  readonly bandShare: number;
  /** Whole curves drawn from the same band, for the reckoning of chances; each over the flows of `points`. */
  readonly samples: readonly CurveSample[];
  readonly source: string;
  readonly basis: string;
}

export interface BenchCurvePoint {
  readonly flow_m3s: number;
  readonly staticPressure_Pa: number;
  readonly low_Pa: number;
  readonly high_Pa: number;
  readonly totalPressure_Pa: number;
  /** At the shaft where the motor is known, else of the supply; null where nothing tells. */
  readonly power_W: number | null;
  readonly efficiency: number | null;
}

export interface CurveSample {
  readonly staticPressure_Pa: readonly number[];
}

/** What the motor does with this rotor, by itself; with the shop see `FanResult.drive`. */
export interface MotorAlone {
  /** Wide open and blocked, on the fan's own curve; null where there is no curve with power. */
  readonly open: MotorPoint | null;
  readonly blocked: MotorPoint | null;
  readonly best: MotorPoint | null;
  /** Torque that the rotor asks over what the motor gives for ever, at the motor's best speed [-]. */
  readonly loadRatio: number | null;
  /** Speed at which the rotor would take what the motor gives for ever [rpm]. */
  readonly matchSpeed_rpm: number | null;
  /** Wheel diameter, same shape, that would match at the motor's speed [m]. */
  readonly matchDiameter_m: number | null;
  readonly words: string;
  readonly source: string;
  readonly basis: string;
}

export interface MotorPoint {
  readonly speed_rpm: number;
  readonly torque_Nm: number;
  readonly shaftPower_W: number;
  readonly inputPower_W: number;
  readonly supplyCurrent_A: number;
  readonly motorCurrent_A: number;
  readonly copperLoss_W: number;
  readonly efficiency: number;
  /** Motor current over the continuous rating [-]; null where none is given. */
  readonly currentShare: number | null;
  /** On the battery [s]; null without one. */
  readonly runTime_s: number | null;
}

export interface RotorResult {
  /** Highest speed that it may reach [rpm], and where that comes from. */
  readonly speed_rpm: number;
  readonly speedFrom: 'given' | 'motor without load' | 'design speed' | 'highest reading';
  readonly tipSpeed_ms: number;
  readonly stress_Pa: number;
  readonly stressAt: string;
  readonly rootStress_Pa: number | null;
  readonly strength_Pa: number;
  readonly safetyFactor: number;
  readonly minimumFactor: number;
  /** Speed at which stress reaches strength, without and with the factor [rpm]. */
  readonly burstSpeed_rpm: number;
  readonly speedLimit_rpm: number;
  readonly growth_m: number;
  readonly rimGapLeft_m: number | null;
  readonly bladePass_Hz: number | null;
  /** Gap to the cut-off edge over wheel diameter [-], against common practice. */
  readonly cutOffShare: number | null;
  readonly cutOffJudged: 'close' | 'usual' | 'wide' | null;
  /** Softening point of the material less its temperature [K]; null where either is not known. */
  readonly heatMargin_K: number | null;
  /** Of the disc and its blades at that speed [J]; null without a thickness. */
  readonly energy_J: number | null;
  readonly source: string;
  readonly basis: string;
}
