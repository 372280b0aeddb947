/**
 * The one result that screens, paper and command line read. Plain data in SI, gauge pressures; what does not apply is
 * null, never absent. Its JSON form is a contract.
 */

/** Where pressure is lost; the shares of the system curve. */
export type LossShare = 'hood' | 'duct' | 'hose' | 'fittings' | 'separator' | 'filter' | 'solids';
export const LOSS_SHARES: readonly LossShare[] = [
  'hood',
  'duct',
  'hose',
  'fittings',
  'separator',
  'filter',
  'solids',
];

export type Severity = 'danger' | 'fault' | 'warning' | 'advice' | 'caution';

/** Something that the user should know, where it is, and what would mend it. */
export interface Finding {
  readonly severity: Severity;
  /** Code of the message table in `core/checks`. */
  readonly code: string;
  /** Id of the thing, run or piece; `shop` for the whole. */
  readonly where: string;
  readonly message: string;
  readonly remedy: string;
}

/** One crossing of a fan's curve and the system's. */
export interface OperatingPoint {
  readonly flow_m3s: number;
  readonly massFlow_kgs: number;
  readonly totalPressure_Pa: number;
  readonly stable: boolean;
}

/** A motor at work in the shop: speed, torque and current that came out together with the flow. */
export interface DriveResult {
  readonly motor: 'brushless' | 'series' | 'induction';
  readonly torque_Nm: number;
  readonly shaftPower_W: number;
  readonly inputPower_W: number;
  readonly supplyCurrent_A: number;
  readonly motorCurrent_A: number;
  readonly copperLoss_W: number;
  /** Motor current over the continuous rating [-]; null where none is given. */
  readonly currentShare: number | null;
  /** On the battery [s]; null without one. */
  readonly runTime_s: number | null;
}

export interface FanResult {
  readonly id: string;
  readonly flow_m3s: number;
  readonly massFlow_kgs: number;
  readonly staticPressure_Pa: number;
  readonly totalPressure_Pa: number;
  readonly speed_rpm: number | null;
  readonly power_W: number | null;
  readonly current_A: number | null;
  /** Share of the input power that becomes air power [-]. */
  readonly efficiency: number | null;
  /** What turns it, where a motor is given with it. */
  readonly drive: DriveResult | null;
  readonly stable: boolean;
  readonly allOperatingPoints: readonly OperatingPoint[];
}

export interface PieceResult {
  readonly id: string;
  readonly kind: string;
  readonly share: LossShare;
  readonly diameter_m: number | null;
  readonly length_m: number | null;
  /** Mean velocity where the piece's coefficient refers to. */
  readonly velocity_ms: number | null;
  readonly velocityPressure_Pa: number | null;
  /** Loss over that velocity pressure, without the dust's part. */
  readonly coefficient: number | null;
  readonly frictionFactor: number | null;
  readonly loss_Pa: number;
  /** Part of the loss that the dust carried adds. */
  readonly solidsLoss_Pa: number;
  readonly totalPressureAfter_Pa: number | null;
  readonly staticPressureAfter_Pa: number | null;
  readonly source: string | null;
  readonly basis: string | null;
}

export interface RunResult {
  readonly id: string;
  readonly name: string | null;
  readonly from: string;
  readonly to: string;
  readonly massFlow_kgs: number;
  readonly flow_m3s: number;
  /** Lowest velocity in a straight piece of the run, or in any piece where it has none. */
  readonly velocity_ms: number | null;
  readonly requiredVelocity_ms: number | null;
  readonly requiredFlow_m3s: number | null;
  /** Flow and transport velocity both reached; null where nothing is asked or no air moves in the run. */
  readonly holds: boolean | null;
  readonly lossTotal_Pa: number;
  readonly dust_kgs: number;
  readonly pieces: readonly PieceResult[];
}

export interface NodeResult {
  readonly id: string;
  readonly totalPressure_Pa: number | null;
  readonly staticPressure_Pa: number | null;
}

export interface DeviceResult {
  readonly id: string;
  readonly kind: 'cyclone' | 'bin' | 'filter';
  readonly flow_m3s: number;
  readonly loss_Pa: number;
  readonly inletTotalPressure_Pa: number | null;
  /** Cyclone only. */
  readonly inletVelocity_ms: number | null;
  /** Loss by every pressure-drop model at this flow; cyclone only. */
  readonly lossByModel_Pa: Readonly<Record<string, number>> | null;
  readonly cutSize_m: number | null;
  /** Share of the arriving dust mass that stays here. */
  readonly catchShare: number | null;
  readonly catchByModel: Readonly<Record<string, number>> | null;
  /** Filter only: of each layer in the order of flow. */
  readonly faceVelocity_ms: readonly number[] | null;
  readonly dustIn_kgs: number;
  readonly model: string | null;
  readonly source: string | null;
  readonly basis: string | null;
}

export interface SettingResult {
  readonly name: string;
  readonly converged: boolean;
  /** Null when converged; else a code of a closed list. */
  readonly reason: string | null;
  /** The reason in words. */
  readonly reasonText: string | null;
  readonly iterations: number;
  readonly massResidual: number;
  readonly pressureResidual_Pa: number;
  readonly fans: readonly FanResult[];
  readonly runs: readonly RunResult[];
  readonly nodes: readonly NodeResult[];
  readonly devices: readonly DeviceResult[];
  readonly findings: readonly Finding[];
}

export interface AirResult {
  readonly density_kgm3: number;
  readonly viscosity_Pas: number;
  readonly pressure_Pa: number | null;
  readonly temperature_K: number | null;
}

export interface Solution {
  readonly document: string;
  readonly air: AirResult;
  readonly settings: readonly SettingResult[];
}
