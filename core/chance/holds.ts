import type { ShopDocument } from '../document/schema.ts';
import type { NetState } from '../network/balance.ts';
import { findSetting, settingNames } from '../network/apply-setting.ts';
import { openShop, solveSetting } from '../network/solve.ts';
import type { Workbench } from '../network/solve.ts';
import type { SettingResult } from '../network/solution.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import type { Chance } from './chance.ts';
import { gather } from './gather.ts';
import { listDraws } from './draws.ts';
import { fanSpreads } from './fan-spread.ts';
import { ownShop } from './own-shop.ts';
import { generatorOf, latinHypercube, normalQuantile } from '../quantities/random.ts';
import { Sampler } from './sampler.ts';
import { Tally } from './tally.ts';

export interface ChanceOptions {
  /** Name of a setting; absent: the first. */
  readonly setting?: string;
  readonly samples?: number;
  /** Whole number from 0 below 2^32; the same seed gives the same result. */
  readonly seed?: number;
}

export const DEFAULT_SAMPLES = 1000;
export const DEFAULT_SEED = 1;
/** Fewer say nothing; more take minutes and tell no more. */
export const LEAST_SAMPLES = 10;
export const MOST_SAMPLES = 100_000;

/**
 * How likely the transport velocity, and the flow that a port asks for, hold in every run at a gate setting.
 *
 * @param source - a shop that was read without problems, or its bench, which stays as it is
 * @throws ImpossibleInput naming `samples` or `seed`; RangeError where no setting has the name, or the shop cannot be
 */
export function howLikely(source: ShopDocument | Workbench, options: ChanceOptions = {}): Chance {
  const steps = chanceSteps(source, options, Infinity);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/**
 * The same in pieces: yields the number of samples that are done after every `chunk` of them, so that a caller may
 * look up, or leave.
 */
export function* chanceSteps(
  source: ShopDocument | Workbench,
  options: ChanceOptions,
  chunk: number,
): Generator<number, Chance> {
  const { samples = DEFAULT_SAMPLES, seed = DEFAULT_SEED } = options;
  if (!Number.isInteger(samples) || samples < LEAST_SAMPLES || samples > MOST_SAMPLES) {
    throw new ImpossibleInput('samples', samples, `a whole number from ${LEAST_SAMPLES} to ${MOST_SAMPLES}`);
  }
  const next = generatorOf(seed);
  const bench = benchOf(source);
  const name = options.setting ?? settingNames(bench.shop.document)[0]!;
  if (findSetting(bench.shop.document, name) === null) throw new RangeError(`no setting is named "${name}"`);

  const own = ownShop(bench.shop);
  const states = new Map<string, NetState>();
  const plans = new Map();
  const nominal = solveSetting({ shop: own.shop, plans, states }, name);
  const head = { document: bench.shop.document.name, setting: name, samples, seed };
  if (!nominal.converged) return unsolved(head, nominal);

  const list = listDraws(own, nominal, fanSpreads(own.shop, nominal.fans, seed));
  const tally = new Tally(own.shop, nominal, list, samples);
  if (list.draws.length === 0) tally.allNominal();
  else {
    const rows = latinHypercube(next, samples, list.draws.length);
    list.draws.forEach(({ curves }, d) => {
      const row = rows[d]!;
      if (curves === null) for (let k = 0; k < samples; k++) row[k] = normalQuantile(row[k]!);
      else for (let k = 0; k < samples; k++) row[k] = Math.floor(row[k]! * curves.length);
    });
    const sampler = new Sampler(own, plans, list, nominal, states.get(name)!);
    const values = new Float64Array(list.draws.length);
    for (let k = 0; k < samples; k++) {
      for (let d = 0; d < values.length; d++) values[d] = rows[d]![k]!;
      tally.take(k, sampler.sample(values), sampler, values);
      if ((k + 1) % chunk === 0) yield k + 1;
    }
  }
  return { ...head, converged: true, reason: null, reasonText: null, ranges: list.ranges, ...gather(tally) };
}

function benchOf(source: ShopDocument | Workbench): Workbench {
  if ('shop' in source) return source;
  const opened = openShop(source);
  if (opened.ok) return opened.bench;
  throw new RangeError(opened.problems.map((problem) => problem.message).join('; '));
}

function unsolved(
  head: Pick<Chance, 'document' | 'setting' | 'samples' | 'seed'>,
  { reason, reasonText }: SettingResult,
): Chance {
  return {
    ...head,
    converged: false,
    reason,
    reasonText,
    failures: { count: 0, byReason: {} },
    ranges: [],
    runs: [],
    fans: [],
    worstRun: null,
    causes: [],
    sentence: `Nothing can be said of chances, as the shop has no result as drawn: ${reasonText ?? ''}.`,
  };
}
