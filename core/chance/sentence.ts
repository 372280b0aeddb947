import type { CauseShare, Failures, RunChance } from './chance.ts';
import type { CauseId } from './ranges.ts';

/** A cause in words, as a sentence needs it. */
export const CAUSE_LABELS: Readonly<Record<CauseId, string>> = {
  fan: "the fan's curve",
  friction: 'wall friction',
  hoods: 'the loss of the hoods',
  fittings: 'the loss of the fittings',
  leaks: 'the size of the leaks',
  separator: "the separator's loss",
  filter: "the filter's state",
};

/** A cause of less is not worth a word [-]. */
const WORTH_A_WORD = 0.05;

/** Cases of a hundred in words; the ends are never said to be certain, as only so many samples were drawn. */
export function casesOfHundred(probability: number, samples: number): string {
  const cases = Math.round(100 * probability);
  if (probability === 0) return `in none of ${samples} cases tried`;
  if (probability === 1) return `in all ${samples} cases tried`;
  if (cases === 0) return 'in fewer than 1 of 100 cases';
  if (cases === 100) return 'in more than 99 of 100 cases';
  return `in ${cases} of 100 cases`;
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** What matters most, in words; null where nothing stands out. */
function causesText(causes: readonly CauseShare[]): string | null {
  const [first, second] = causes.filter((cause) => cause.share >= WORTH_A_WORD);
  if (first === undefined) return null;
  const most = `${first.label} matters most (${percent(first.share)} of the spread)`;
  return second === undefined ? most : `${most}, then ${second.label} (${percent(second.share)})`;
}

/** What a run is asked for. */
function askedFor(run: RunChance): string {
  const both = run.requiredVelocity_ms !== null && run.requiredFlow_m3s !== null;
  if (both) return 'its velocity and its flow';
  return run.requiredVelocity_ms === null ? 'its flow' : 'its velocity';
}

/** The plain sentence of one setting: how likely its worst run holds, and on what that hangs. */
export function sentenceOf(
  run: RunChance | null,
  name: string,
  asked: number,
  failures: Failures,
  samples: number,
): string {
  if (run === null || run.probability === null)
    return 'No run asks for a velocity or a flow in this setting.';
  const causes = causesText(run.causes);
  const failed =
    failures.count === 0
      ? ''
      : ` In ${failures.count} of ${samples} cases there is no result; those count as not held.`;
  const cases = casesOfHundred(run.probability, samples);
  if (run.probability === 1 && asked > 1) {
    const least = causes === null ? '' : `; for ${name}, which has the least to spare, ${causes}`;
    return `Every run holds what it is asked for ${cases}${least}.${failed}`;
  }
  const worst = asked > 1 ? ', the least sure of all,' : '';
  const because = causes === null ? '' : `; ${causes}`;
  return `${upper(name)}${worst} holds ${askedFor(run)} ${cases}${because}.${failed}`;
}

const upper = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
