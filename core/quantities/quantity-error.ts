import { DIMENSIONS, withArticle, type Dimension } from './dimensions.ts';

/** Why a typed quantity was refused. */
export type QuantityReason =
  | 'empty'
  | 'syntax'
  | 'unknown-name'
  | 'wrong-dimension'
  | 'needs-unit'
  | 'not-finite'
  | 'too-long'
  | 'not-allowed'
  | 'comma';

/** Sentences by reason: `typed` is the quoted entry, `about` the part that the refusal is about. */
const MESSAGES: Readonly<Record<QuantityReason, (typed: string, about: string) => string>> = {
  empty: () => 'nothing is typed',
  syntax: (typed, about) => `${typed} cannot be read${about && `: ${about}`}`,
  'unknown-name': (typed, about) => `${typed} has a name that is not known: ${about}`,
  'wrong-dimension': (typed, about) => `${typed} ${about}`,
  'needs-unit': (typed, about) => `${typed} ${about || 'has no unit'}`,
  'not-finite': (typed, about) => `${typed} has no finite value${about && `: ${about}`}`,
  'too-long': (typed, about) => `${typed} is too long: ${about}`,
  'not-allowed': (typed, about) => `${typed} is not allowed: ${about}`,
  comma: (typed) =>
    `${typed} has a comma: write decimals with a point, as in 2.5, and no mark between thousands`,
};

const QUOTED_LENGTH = 60;

/** Text that was typed, short enough to be quoted. */
export function shorten(text: string, length = QUOTED_LENGTH): string {
  return text.length > length ? `${text.slice(0, length)}…` : text;
}

/** What would fit a field of this kind, as the end of a sentence. */
export function whatFits(dimension: Dimension): string {
  const { examples } = DIMENSIONS[dimension];
  return `${withArticle(dimension)} fits, such as ${examples.slice(0, -1).join(', ')} or ${examples.at(-1)!}`;
}

/** A typed quantity that was refused: which field, what was typed, why, and what would fit. */
export class QuantityError extends Error {
  override readonly name = 'QuantityError';

  constructor(
    readonly field: string,
    /** The entry, cut where it is longer than a field may be. */
    readonly typed: string,
    readonly reason: QuantityReason,
    about: string,
    /** What would fit, empty where the kind is not known. */
    readonly fits: string,
    options?: ErrorOptions,
  ) {
    const what = MESSAGES[reason](`\`${shorten(typed)}\``, about);
    super(`${field}: ${what}${fits && `; ${fits}`}`, options);
  }
}

/** Thrown inside this folder where a text is refused; the entry points turn it into a `QuantityError`. */
export class Refusal extends Error {
  override readonly name = 'Refusal';

  constructor(
    readonly reason: QuantityReason,
    readonly about = '',
    options?: ErrorOptions,
  ) {
    super(`${reason}: ${about}`, options);
  }
}
