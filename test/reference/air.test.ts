import { describe, it } from 'vitest';
import {
  airState,
  moistAirDensity,
  pressureAtAltitude,
  saturationPressure,
  sutherlandViscosity,
  temperatureAtAltitude,
} from '../../core/air/moist-air.ts';
import atmosphere from './data/07_atmosphere.json' with { type: 'json' };
import viscosity from './data/10a_air_viscosity.json' with { type: 'json' };
import density from './data/10b_moist_air_density.json' with { type: 'json' };
import { expectRelative } from './relative.ts';

// Source: an independent coding of CIPM-2007 in its molar-mass form (10b), tolerance stated there 1e-6.
describe('moist air density, CIPM-2007', () => {
  it.each(density.cases)('$in', ({ in: given, out }) => {
    const temperature_K = given.temperature_C + 273.15;
    expectRelative(saturationPressure(temperature_K), out.saturation_vapour_pressure_Pa, 1e-9);
    const value = moistAirDensity({
      pressure_Pa: given.pressure_Pa,
      temperature_K,
      relativeHumidity: given.relative_humidity_percent / 100,
      co2Fraction: given.co2_mole_fraction,
    });
    expectRelative(value, out.density_kg_m3, 1e-6);
  });

  it('stays within 0.15 % of an ideal mixture with a Magnus saturation pressure (second route, hand formula)', () => {
    for (const t of [0, 10, 20, 30]) {
      const vapour = 0.6 * 611.2 * Math.exp((17.62 * t) / (243.12 + t));
      const ideal = (101325 - vapour) / (287.05 * (t + 273.15)) + vapour / (461.5 * (t + 273.15));
      const ours = moistAirDensity({ pressure_Pa: 101325, temperature_K: t + 273.15, relativeHumidity: 0.6 });
      expectRelative(ours, ideal, 1.5e-3);
    }
  });

  it('gives the gas constant of dry air, 287.05 J/(kg K), within 0.1 %', () => {
    const dry = airState({ pressure_Pa: 101325, temperature_K: 293.15, relativeHumidity: 0 });
    expectRelative(dry.gasConstant_JkgK, 287.05, 1e-3);
    expectRelative(dry.viscosity_Pas, 1.8134e-5, 1e-4);
  });
});

// Source: U.S. Standard Atmosphere 1976 through a public library (07), tolerance stated there 1e-6.
describe('standard atmosphere', () => {
  it.each(atmosphere.cases)('$in', ({ in: given, out }) => {
    expectRelative(pressureAtAltitude(given.altitude_m), out.pressure_Pa, 1e-6);
    const temperature_K = temperatureAtAltitude(given.altitude_m) + given.temperature_offset_K;
    expectRelative(temperature_K, out.temperature_K, 1e-6);
    expectRelative(sutherlandViscosity(temperature_K), out.dynamic_viscosity_Pa_s, 1e-6);
    const dry = { pressure_Pa: out.pressure_Pa, temperature_K, relativeHumidity: 0 };
    // Ideal dry air of the standard against CIPM-2007: the moist-air claim of 0.1 %, over the whole troposphere.
    expectRelative(moistAirDensity(dry), out.density_kg_m3, 1e-3);
  });
});

// Source: the same standard's Sutherland law (10a), tolerance stated there 1e-9 for the same constants.
describe('viscosity', () => {
  it.each(viscosity.cases)('$in', ({ out }) => {
    expectRelative(sutherlandViscosity(out.temperature_K), out.dynamic_viscosity_Pa_s, 1e-9);
    const dry = { pressure_Pa: 101325, temperature_K: out.temperature_K, relativeHumidity: 0 };
    expectRelative(moistAirDensity(dry), out.dry_air_density_at_101325_Pa_kg_m3, 1e-3);
  });
});
