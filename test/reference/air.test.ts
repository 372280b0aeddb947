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
import { against } from './ledger.ts';

// Tolerance stated in the file: 1e-6.
describe('moist air density, CIPM-2007', () => {
  const vapour = against({
    relation: 'saturationPressure',
    source: 'data 10b: another coding of CIPM-2007',
    basis: 'independent-program',
    kind: 'value',
  });
  const cipm = against({
    relation: 'moistAirDensity',
    source: 'data 10b: another coding of CIPM-2007, in its molar-mass form',
    basis: 'independent-program',
    kind: 'value',
  });
  const mixture = against({
    relation: 'moistAirDensity',
    source: 'an ideal mixture with a Magnus saturation pressure',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const gasConstant = against({
    relation: 'airState',
    source: 'gas constant of dry air, 287.05 J/(kg K)',
    basis: 'from-memory',
    kind: 'value',
  });
  const viscosityAt20 = against({
    relation: 'airState',
    source: "viscosity at 20 degC by the standard atmosphere's law, 1.8134e-5 Pa s",
    basis: 'from-memory',
    kind: 'value',
  });

  it.each(density.cases)('$in', ({ in: given, out }) => {
    const temperature_K = given.temperature_C + 273.15;
    vapour.within(saturationPressure(temperature_K), out.saturation_vapour_pressure_Pa, 1e-9);
    const value = moistAirDensity({
      pressure_Pa: given.pressure_Pa,
      temperature_K,
      relativeHumidity: given.relative_humidity_percent / 100,
      co2Fraction: given.co2_mole_fraction,
    });
    cipm.within(value, out.density_kg_m3, 1e-6);
  });

  it('stays within 0.15 % of an ideal mixture with a Magnus saturation pressure (second route, hand formula)', () => {
    for (const t of [0, 10, 20, 30]) {
      const steam_Pa = 0.6 * 611.2 * Math.exp((17.62 * t) / (243.12 + t));
      const ideal = (101325 - steam_Pa) / (287.05 * (t + 273.15)) + steam_Pa / (461.5 * (t + 273.15));
      const ours = moistAirDensity({ pressure_Pa: 101325, temperature_K: t + 273.15, relativeHumidity: 0.6 });
      mixture.within(ours, ideal, 1.5e-3);
    }
  });

  it('gives the gas constant of dry air, 287.05 J/(kg K), within 0.1 %', () => {
    const dry = airState({ pressure_Pa: 101325, temperature_K: 293.15, relativeHumidity: 0 });
    gasConstant.within(dry.gasConstant_JkgK, 287.05, 1e-3);
    viscosityAt20.within(dry.viscosity_Pas, 1.8134e-5, 1e-4);
  });
});

// Tolerance stated in the file: 1e-6.
describe('standard atmosphere', () => {
  const standard = against({
    relation: ['pressureAtAltitude', 'temperatureAtAltitude', 'sutherlandViscosity'],
    source: 'data 07: U.S. Standard Atmosphere, 1976',
    basis: 'independent-program',
    kind: 'value',
  });
  const idealAir = against({
    relation: 'moistAirDensity',
    source: 'data 07: ideal dry air of the U.S. Standard Atmosphere, 1976',
    basis: 'independent-program',
    kind: 'value',
  });

  it.each(atmosphere.cases)('$in', ({ in: given, out }) => {
    standard.within(pressureAtAltitude(given.altitude_m), out.pressure_Pa, 1e-6);
    const temperature_K = temperatureAtAltitude(given.altitude_m) + given.temperature_offset_K;
    standard.within(temperature_K, out.temperature_K, 1e-6);
    standard.within(sutherlandViscosity(temperature_K), out.dynamic_viscosity_Pa_s, 1e-6);
    const dry = { pressure_Pa: out.pressure_Pa, temperature_K, relativeHumidity: 0 };
    // Ideal dry air of the standard against CIPM-2007: the moist-air claim of 0.1 %, over the whole troposphere.
    idealAir.within(moistAirDensity(dry), out.density_kg_m3, 1e-3);
  });
});

// Tolerance stated in the file: 1e-9 for the same constants.
describe('viscosity', () => {
  const sutherland = against({
    relation: 'sutherlandViscosity',
    source: "data 10a: the standard atmosphere's Sutherland law",
    basis: 'independent-program',
    kind: 'value',
  });
  const dryAir = against({
    relation: 'moistAirDensity',
    source: 'data 10a: ideal dry air at 101325 Pa',
    basis: 'independent-program',
    kind: 'value',
  });

  it.each(viscosity.cases)('$in', ({ out }) => {
    sutherland.within(sutherlandViscosity(out.temperature_K), out.dynamic_viscosity_Pa_s, 1e-9);
    const dry = { pressure_Pa: 101325, temperature_K: out.temperature_K, relativeHumidity: 0 };
    dryAir.within(moistAirDensity(dry), out.dry_air_density_at_101325_Pa_kg_m3, 1e-3);
  });
});
