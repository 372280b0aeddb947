import { findSetting, settingNames } from '../network/apply-setting.ts';
import type { Setting, ShopDocument } from '../document/schema.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import type { Sourced } from '../quantities/sourced.ts';
import type { Assumption } from './result.ts';

/** A figure of upkeep that the document may over-rule. */
interface Default extends Sourced {
  readonly what: string;
  readonly value: number;
}

/** Figures that stand where the document gives none. */
export const UPKEEP_DEFAULTS = {
  cuttingShare: {
    what: 'share of the running hours in which the machines cut',
    value: 0.3,
    source: 'no source; the rest is set-up, measuring and rapid moves with the fan on',
    basis: 'assumed',
  },
  cleaningRestores: {
    what: 'share of the cake that cleaning takes off',
    value: 0.85,
    source: 'no source; shaking leaves some of the cake, blowing through from the clean side less',
    basis: 'assumed',
  },
  binFull: {
    what: 'share of its volume at which a bin is full',
    value: 0.75,
    source: 'trade: empty before the heap reaches the cone, where it is whirled up again',
    basis: 'common-practice',
  },
  motorEfficiency: {
    what: 'shaft power over power drawn by the motor',
    value: 0.8,
    source: 'no source; small induction motors lie about 0.7 to 0.85',
    basis: 'assumed',
  },
} as const satisfies Readonly<Record<string, Default>>;

/** How the shop is used, with every default filled in. */
export interface Usage {
  readonly duty: readonly { readonly setting: Setting; readonly share: number }[];
  readonly cuttingShare: number;
  readonly cleaningRestores: number;
  readonly binFull: number;
  readonly motorEfficiency: number;
  readonly electricityPrice: number | null;
  readonly assumptions: readonly Assumption[];
}

/** Least sum of the shares of running hours that can be scaled to one. */
const LEAST_DUTY = 1e-6;

/**
 * Reads how a shop is used: settings by their share of the running hours (scaled so that they sum to one), and what
 * cleaning and emptying do.
 *
 * @throws ImpossibleInput naming the field: shares that sum to nothing
 */
export function usageOf(document: ShopDocument): Usage {
  const given = document.upkeep;
  const settings = settingNames(document).map((name) => findSetting(document, name)!);
  const typed = settings.some(({ hours }) => hours !== undefined);
  const shares = settings.map(({ hours }) => (typed ? (hours?.si ?? 0) : 1));
  const sum = shares.reduce((total, share) => total + share, 0);
  if (!(sum > LEAST_DUTY)) {
    throw new ImpossibleInput(
      'settings[0].hours',
      sum,
      'given so that the shares of all settings sum above zero',
    );
  }
  const duty = settings.map((setting, i) => ({ setting, share: shares[i]! / sum }));
  const assumptions: Assumption[] = [];
  const figure = (key: keyof typeof UPKEEP_DEFAULTS): number => {
    const { what, value, source, basis } = UPKEEP_DEFAULTS[key];
    const own = given?.[key]?.si;
    assumptions.push(
      own === undefined
        ? { what, value, dimension: 'fraction', source, basis }
        : {
            what,
            value: own,
            dimension: 'fraction',
            source: 'given in the document',
            basis: 'measured-by-user',
          },
    );
    return own ?? value;
  };
  return {
    duty: duty.filter(({ share }) => share > 0),
    cuttingShare: figure('cuttingShare'),
    cleaningRestores: figure('cleaningRestores'),
    binFull: figure('binFull'),
    motorEfficiency: figure('motorEfficiency'),
    electricityPrice: given?.electricityPrice?.si ?? null,
    assumptions,
  };
}
