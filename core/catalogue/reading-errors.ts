import type { Sourced } from '../quantities/sourced.ts';

/**
 * What a reading may be off by, plus or minus what holds nineteen times in twenty (two standard deviations), with the
 * usual instrument of a small shop. A person's own figure stands before these.
 */
export interface UsualError extends Sourced {
  /** Of the unit of the quantity, whatever the reading. */
  readonly fixed: number;
  /** Of the reading itself [-]. */
  readonly share: number;
}

const sheet = (source: string) => ({ source, basis: 'common-practice' }) as const;
const guess = (source: string) => ({ source, basis: 'assumed' }) as const;

export const READING_ERRORS = {
  /** Pa; water gauge or cheap manometer, on a needle that swings. */
  pressure: { fixed: 15, share: 0.01, ...guess('water gauge read to 1 mm, swinging a little') },
  /** Pa; velocity pressures and differences, small and read with care. */
  head: { fixed: 3, share: 0.01, ...guess('inclined tube or electronic manometer') },
  /** m; rise of a water column by a rule. */
  height: { fixed: 0.002, share: 0, ...guess('rule with millimetres, eye level with the water') },
  /** m; holes and throats by a caliper. */
  size: { fixed: 0.0002, share: 0.002, ...guess('caliper, two ways across') },
  /** rpm; optical tachometer, fan wandering a little. */
  speed: { fixed: 0, share: 0.01, ...guess('optical tachometer; the fan wanders more than it errs') },
  /** m/s; vane wheel. */
  velocity: { fixed: 0.2, share: 0.03, ...sheet('data sheets of vane anemometers: 2 to 3 % and 0.2 m/s') },
  voltage: { fixed: 0, share: 0.01, ...sheet('data sheets of handheld meters') },
  current: { fixed: 0.1, share: 0.03, ...sheet('data sheets of clamp meters for direct current') },
  throttle: { fixed: 0.01, share: 0, ...guess('setting of a servo tester or controller') },
  /** W; battery energy put back by the charger over running time. */
  battery: { fixed: 0, share: 0.1, ...guess('charger count, charging loss and running time together') },
  /** Flow and pressure of a maker's table. */
  table: { fixed: 0, share: 0.05, ...guess("makers' tables: between a test to standard and a brochure") },
  /** Power of a maker's table. */
  tablePower: { fixed: 0, share: 0.05, ...guess('as the rest of the table') },
  /** Speed that follows from the motor's figures: speed constant and resistance. */
  motor: { fixed: 0, share: 0.04, ...guess("figures of a motor's label against the motor in hand") },
  /** Density of the room. */
  density: { fixed: 0, share: 0.006, ...guess('thermometer to 1 K, barometer or altitude to 4 hPa') },
} as const satisfies Readonly<Record<string, UsualError>>;

export type ReadingErrorId = keyof typeof READING_ERRORS;
