import { fanCurve } from '../../../../core/fan/fan-curve.ts';
import type { FanCurve } from '../../../../core/fan/fan-curve.ts';
import { brushlessMotor } from '../../../../core/fan/motor/brushless.ts';
import type { BrushlessInput } from '../../../../core/fan/motor/brushless.ts';
import { inductionMotor } from '../../../../core/fan/motor/induction.ts';
import type { InductionInput } from '../../../../core/fan/motor/induction.ts';
import { seriesMotor } from '../../../../core/fan/motor/series.ts';

/** The brushless motor of the worked number, without controller loss or sag. */
export const PLAIN: BrushlessInput = {
  speedConstant_rpmV: 800,
  resistance_ohm: 0.05,
  noLoadCurrent_A: 1,
  supply_V: 18,
  supplyResistance_ohm: 0,
  throttle: 1,
  controllerLoss: 0,
  continuousCurrent_A: 30,
  batteryEnergy_J: null,
};
/** The same on a real battery. */
export const ON_BATTERY: BrushlessInput = {
  ...PLAIN,
  supplyResistance_ohm: 0.02,
  controllerLoss: 0.03,
  batteryEnergy_J: 5 * 18 * 3600,
};

/** A motor of a common size, four poles on 50 Hz. */
export const PLATE: InductionInput = {
  frequency_Hz: 50,
  poles: 4,
  ratedPower_W: 1500,
  ratedSpeed_rpm: 1440,
  ratedCurrent_A: 3.4,
  supply_V: 400,
  phases: 'three',
  powerFactor: 0.79,
  efficiency: 0.82,
  beltRatio: null,
};

/** Points of a motor as in a cleaner: torque falls and speed rises without load. */
export const CLEANER = [
  { torque_Nm: 0.45, speed_rpm: 18000, current_A: 5.6 },
  { torque_Nm: 0.3, speed_rpm: 24000, current_A: 4.6 },
  { torque_Nm: 0.15, speed_rpm: 31000, current_A: 3.2 },
  { torque_Nm: 0.05, speed_rpm: 38000, current_A: 2 },
];

export const MOTORS = {
  brushless: brushlessMotor(ON_BATTERY),
  series: seriesMotor({ points: CLEANER, supply_V: 230, continuousCurrent_A: 5 }),
  induction: inductionMotor(PLATE),
  belted: inductionMotor({ ...PLATE, beltRatio: 2 }),
} as const;

type Row = readonly [flow_m3s: number, pressure_Pa: number, power_W: number];
const curveOf = (rows: readonly Row[], pressureKind: 'static' | 'total'): FanCurve =>
  fanCurve({
    pressureKind,
    outletArea_m2: 0.00785,
    points: rows.map(([flow_m3s, pressure_Pa, power_W]) => ({ flow_m3s, pressure_Pa, power_W })),
    ratedSpeed_rpm: 12000,
    ratedDensity_kgm3: 1.2,
  });

/** A radial wheel: shaft power falls towards shut-off. */
export const RADIAL = curveOf(
  [
    [0, 3000, 90],
    [0.05, 2900, 190],
    [0.1, 2300, 290],
    [0.15, 1200, 370],
    [0.18, 100, 400],
  ],
  'static',
);
/** An axial wheel: shaft power is highest at shut-off. */
export const AXIAL = curveOf(
  [
    [0, 2000, 400],
    [0.05, 1600, 340],
    [0.1, 1100, 270],
    [0.15, 600, 190],
    [0.18, 100, 120],
  ],
  'static',
);
