import type { ROTOR_MESSAGES } from '../../../core/checks/rotor-messages.ts';
import { printerFor } from '../../../core/checks/finding.ts';
import { FAN_DESIGN } from '../../../core/document/schema-fans.ts';
import type { FanDesign } from '../../../core/document/schema-fans.ts';
import { rotorFindings, rotorResult } from '../../../core/fan-bench/rotor-of.ts';
import type { KnownSpeeds } from '../../../core/fan-bench/rotor-of.ts';
import type { Finding } from '../../../core/network/solution.ts';

type Loose = Readonly<Record<string, unknown>>;

export const NOTHING_KNOWN: KnownSpeeds = { motorNoLoad_rpm: null, highestReading_rpm: null };

/** A radial fan of 200 mm with a printed disc at 4000 rpm: strong, cool and with room to turn. */
export function rotorDesign(rotor: Loose = {}, fan: Loose = {}): FanDesign {
  return FAN_DESIGN.parse({
    id: 'blower',
    type: 'radial',
    wheelDiameter: 0.2,
    outletDiameter: 0.1,
    readings: [],
    ...fan,
    rotor: {
      form: 'disc',
      material: 'petg-in-plane',
      bore: 0.008,
      thickness: 0.006,
      maxSpeed: 4000,
      temperature: 303.15,
      ...rotor,
    },
  });
}

/** Blades for a bladed disc, all that it asks. */
export const BLADED: Loose = {
  form: 'bladed-disc',
  blades: 8,
  bladeMass: 0.01,
  bladeRadius: 0.07,
  bladeRootArea: 120e-6,
};

/** What is said of a design. */
export function said(
  design: FanDesign,
  known = NOTHING_KNOWN,
  units: 'si' | 'us' = 'si',
): readonly Finding[] {
  return rotorFindings(design, rotorResult(design, known), printerFor(units));
}

const raise =
  (rotor: Loose, fan: Loose = {}) =>
  () => ({ findings: said(rotorDesign(rotor, fan)) });

/** A rotor for every finding of the rotor's table, and the place that it must name. */
export const ROTOR_RAISED: Readonly<
  Record<keyof typeof ROTOR_MESSAGES, readonly [() => { readonly findings: readonly Finding[] }, string]>
> = {
  'rotor-factor-low': [raise({ maxSpeed: 12000 }), 'blower'],
  'rotor-over-speed': [raise({}, { speed: 12000 }), 'blower'],
  'rotor-tip-fast': [raise({ maxSpeed: 7000 }), 'blower'],
  'rim-gap-closed': [raise({ rimGap: 5e-6 }), 'blower'],
  'rotor-hot': [raise({ temperature: 328.15 }), 'blower'],
  'cut-off-close': [raise({ cutOffGap: 0.005, blades: 7 }), 'blower'],
  'cut-off-wide': [raise({ cutOffGap: 0.03 }), 'blower'],
  'rotor-speed-unknown': [raise({ maxSpeed: undefined }), 'blower'],
  'rotor-unchecked': [raise({ temperature: undefined }), 'blower'],
  'caution-rotor': [raise({}), 'blower'],
};
