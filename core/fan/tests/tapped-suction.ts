import { requireFinite, requireNotNegative, requirePositive } from '../../quantities/impossible-input.ts';

/** A suction read at the inlet of the fan. */
export interface TappedSuction {
  /** `s`, static pressure at the tap below the room [Pa]. */
  readonly suction_Pa: number;
  /** Diameter of the duct with the tap [m]; null for a still box, whose static pressure is its total pressure. */
  readonly duct_m: number | null;
  /** `m`, mass flow [kg/s]. */
  readonly massFlow_kgs: number;
  /** `rho`, density at the tap [kg/m3]. */
  readonly density_kgm3: number;
}

/**
 * Fan static pressure from a suction at its inlet, the outlet open to the room.
 *
 * Fan static pressure is outlet static less inlet total pressure. The outlet blows into the room (static zero), and the
 * inlet's total pressure is what the tap reads plus the velocity pressure there: `p_sF = s - rho (Q/A)^2/2`. In a still
 * box the velocity pressure is zero.
 *
 * @param tap - suction `suction_Pa` [Pa], duct `duct_m` [m], mass flow `massFlow_kgs` [kg/s] and density
 *   `density_kgm3` [kg/m3]
 * @returns fan static pressure [Pa]
 * @throws ImpossibleInput naming the field: not finite, mass flow below zero, duct or density not above zero
 *
 * @remarks
 * Range: a tap square to the flow without burr, air without swirl, nothing on the fan's outlet.
 * Outside: the value is still returned.
 * Leaves out: friction between tap and fan; the profile of the duct (true mean velocity pressure is a few per cent more).
 * Limits: no flow or a still box gives the suction itself.
 * Basis: published (the definition read, Burton in Occupational Health and Safety).
 * Source: AMCA 210 / ISO 5801, fan pressures; Burton, Occupational Health and Safety.
 * Checked: test/reference/fan-readings.test.ts.
 *
 * @example
 * ```ts
 * fanStaticPressure({ suction_Pa: 1000, duct_m: 0.1, massFlow_kgs: 0.12, density_kgm3: 1.2 }); // 902.7
 * ```
 */
export function fanStaticPressure(tap: TappedSuction): number {
  const suction = requireFinite('suction_Pa', tap.suction_Pa);
  const flow = requireNotNegative('massFlow_kgs', tap.massFlow_kgs);
  const density = requirePositive('density_kgm3', tap.density_kgm3);
  if (tap.duct_m === null) return suction;
  return suction - velocityPressure(flow, density, tap.duct_m);
}

function velocityPressure(massFlow_kgs: number, density_kgm3: number, duct_m: number): number {
  const area = (Math.PI / 4) * requirePositive('duct_m', duct_m) ** 2;
  return (massFlow_kgs / area) ** 2 / (2 * density_kgm3);
}
