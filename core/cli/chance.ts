import { howLikely, LEAST_SAMPLES, MOST_SAMPLES } from '../chance/holds.ts';
import { SEEDS } from '../quantities/random.ts';
import { settingNames } from '../network/apply-setting.ts';
import { openShop } from '../network/solve.ts';
import { chanceText } from '../summary/chance-text.ts';
import { badDocument, fail, NO_SOLUTION, SOLVED, unknownSetting, wholeNumber } from './outcome.ts';
import type { Command } from './outcome.ts';

/** How likely every run holds. */
export const chanceCommand: Command = (document, { setting, json, file, ...numbers }) => {
  const unknown = unknownSetting('chance', document, setting);
  if (unknown !== null) return unknown;
  const samples = wholeNumber('samples', numbers.samples, LEAST_SAMPLES, MOST_SAMPLES);
  const seed = wholeNumber('seed', numbers.seed, 0, SEEDS - 1);
  if (typeof samples === 'object') return samples;
  if (typeof seed === 'object') return seed;
  const opened = openShop(document);
  if (!opened.ok) return badDocument(file, opened.problems);
  const options = {
    ...(samples === undefined ? {} : { samples }),
    ...(seed === undefined ? {} : { seed }),
  };
  const names = setting === undefined ? settingNames(document) : [setting];
  const chances = names.map((name) => howLikely(opened.bench, { ...options, setting: name }));
  const out = json ? `${JSON.stringify(chances, null, 2)}\n` : chanceText(chances, document.units);
  const unsolved = chances.filter((chance) => !chance.converged);
  if (unsolved.length === 0) return { out, err: '', code: SOLVED };
  const err = unsolved
    .map((c) => `${file}: no solution in setting "${c.setting}": ${c.reasonText ?? ''}`)
    .join('\n');
  return fail(NO_SOLUTION, `${err}\n  remedy: see \`book solve\` for what would mend it`, out);
};
