import { airState, pressureAtAltitude } from '../air/moist-air.ts';
import type { ShopDocument } from '../document/schema.ts';
import type { AirResult } from './solution.ts';

/** The room's air by the document; throws ImpossibleInput where no air can be so. */
export function roomAir(document: ShopDocument): AirResult {
  const { air } = document;
  if (air.kind === 'given') {
    return {
      density_kgm3: air.density.si,
      viscosity_Pas: air.viscosity.si,
      pressure_Pa: null,
      temperature_K: null,
    };
  }
  const pressure_Pa = air.barometer?.si ?? pressureAtAltitude(air.altitude?.si ?? 0);
  const state = airState({
    pressure_Pa,
    temperature_K: air.temperature.si,
    relativeHumidity: air.humidity.si,
  });
  return {
    density_kgm3: state.density_kgm3,
    viscosity_Pas: state.viscosity_Pas,
    pressure_Pa,
    temperature_K: air.temperature.si,
  };
}
