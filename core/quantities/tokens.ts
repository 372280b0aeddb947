import { Refusal, shorten } from './quantity-error.ts';

/** Longest text that a field reads. */
export const LONGEST_TEXT = 200;
/** Deepest nesting of round brackets that a field reads. */
export const DEEPEST_BRACKETS = 20;

/** Smallest piece of a typed quantity. A `group` is a sum such as `2 ft 3 in` that has been put in brackets. */
export interface Token {
  readonly kind: 'number' | 'word' | 'sign' | 'group';
  readonly text: string;
}

const NUMBER = /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const WORD = /[A-Za-z_][A-Za-z0-9_]*/y;
const NOT_ALLOWED = /[^A-Za-z0-9_\s.,+\-*/^()%'"°]/;

/** One spelling for signs that keyboards and copied text vary. */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/[µμ]/g, 'u'],
  [/[×·]/g, '*'],
  [/\u2212/g, '-'],
  [/[′’]/g, "'"],
  [/[″”]/g, '"'],
  [/²/g, '^2'],
  [/³/g, '^3'],
  [/°\s*([CF])(?![A-Za-z0-9_])/g, ' deg$1'],
];

/** Reads text into tokens; refuses what is too long, too deep, or has a character that no quantity needs. */
export function tokenise(text: string): Token[] {
  if (text.length > LONGEST_TEXT) throw new Refusal('too-long', `${LONGEST_TEXT} characters are read`);
  const spelled = SPELLINGS.reduce((changed, [from, to]) => changed.replace(from, to), text);
  if (spelled.trim() === '') throw new Refusal('empty');
  const alien = NOT_ALLOWED.exec(spelled);
  if (alien) throw new Refusal('not-allowed', `${alien[0]} has no meaning in a quantity`);
  const tokens = scan(spelled);
  refuseDeepBrackets(tokens);
  return addFeetAndInches(joinFractions(joinUnits(tokens)));
}

function scan(text: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  const match = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at;
    return pattern.exec(text)?.[0];
  };
  while (at < text.length) {
    const character = text[at]!;
    const number = match(NUMBER);
    const word = number === undefined ? match(WORD) : undefined;
    const last = tokens.at(-1);
    if (number !== undefined) tokens.push({ kind: 'number', text: number });
    else if (word !== undefined) tokens.push({ kind: 'word', text: word });
    else if (character === ',') throw new Refusal('comma');
    else if (character === '.') refuseUnlessAbbreviation(last, text[at + 1]);
    else if (character === "'" || character === '"') tokens.push(lengthMark(character, last));
    else if (character === '%') tokens.push({ kind: 'word', text: 'percent' });
    else if (character === '°') tokens.push({ kind: 'word', text: 'deg' });
    else if (character.trim() !== '') tokens.push({ kind: 'sign', text: character });
    at += (number ?? word ?? character).length;
  }
  return tokens;
}

/** `in.` is an abbreviation; `a.b` would reach into something. */
function refuseUnlessAbbreviation(last: Token | undefined, next: string | undefined): void {
  if (last?.kind === 'word' && !/[A-Za-z0-9_.]/.test(next ?? ' ')) return;
  throw new Refusal('not-allowed', 'a point belongs inside a number');
}

function lengthMark(mark: string, last: Token | undefined): Token {
  if (last?.kind === 'number') return { kind: 'word', text: mark === '"' ? 'in' : 'ft' };
  throw new Refusal(
    'not-allowed',
    `${mark} stands for ${mark === '"' ? 'inches' : 'feet'} after a number only`,
  );
}

function refuseDeepBrackets(tokens: readonly Token[]): void {
  let depth = 0;
  for (const { text } of tokens) {
    depth += text === '(' ? 1 : text === ')' ? -1 : 0;
    if (depth > DEEPEST_BRACKETS) throw new Refusal('too-long', `${DEEPEST_BRACKETS} brackets deep are read`);
  }
}

/** Units that are written as two words. */
const TWO_WORDS: ReadonlyMap<string, string> = new Map([
  ...['wg', 'WG', 'wc', 'WC', 'H2O', 'h2o', 'water'].flatMap(
    (water) =>
      [
        [`in ${water}`, 'inH2O'],
        [`mm ${water}`, 'mmH2O'],
      ] as const,
  ),
  ['in Hg', 'inHg'],
  ['mm Hg', 'mmHg'],
  ['deg C', 'degC'],
  ['deg F', 'degF'],
  ['sq in', 'in2'],
  ['sq ft', 'ft2'],
  ['cu ft', 'ft3'],
]);

/** Second or first words of `TWO_WORDS` that mean nothing alone: no named value may be called so. */
export const PARTIAL_UNITS: ReadonlySet<string> = new Set(
  [...TWO_WORDS.keys()].flatMap((words) => words.split(' ')),
);

function joinUnits(tokens: readonly Token[]): Token[] {
  const joined: Token[] = [];
  for (const token of tokens) {
    const last = joined.at(-1);
    const unit =
      token.kind === 'word' && last?.kind === 'word'
        ? TWO_WORDS.get(`${last.text} ${token.text}`)
        : undefined;
    if (unit !== undefined) joined[joined.length - 1] = { kind: 'word', text: unit };
    else joined.push(token);
  }
  return joined;
}

const FEET: ReadonlySet<string> = new Set(['ft', 'foot', 'feet']);
const INCHES: ReadonlySet<string> = new Set(['in', 'inch', 'inches']);
const WHOLE = /^\d+$/;

/** A mixed number or a feet-and-inches pair may begin here without a second reading of what stands before. */
function mayBegin(before: Token | undefined): boolean {
  return before === undefined || (before.kind === 'sign' && '(+-*'.includes(before.text));
}

/** `2 1/2` becomes one number, `(2+1/2)`; `5 1/s` becomes `5 / s`. Two numbers side by side mean nothing else. */
function joinFractions(tokens: readonly Token[]): Token[] {
  const joined: Token[] = [];
  for (let at = 0; at < tokens.length; at += 1) {
    const [whole, top, slash, bottom, after] = tokens.slice(at, at + 5);
    const pair = whole!.kind === 'number' && top?.kind === 'number' && slash?.text === '/';
    const fraction =
      pair &&
      bottom?.kind === 'number' &&
      after?.text !== '^' &&
      (mayBegin(joined.at(-1)) || FEET.has(joined.at(-1)!.text));
    if (fraction && [whole!, top, bottom].every(({ text }) => WHOLE.test(text))) {
      joined.push({ kind: 'number', text: `(${whole!.text}+${top.text}/${bottom.text})` });
      at += 3;
    } else {
      joined.push(whole!);
      if (pair && top.text === '1' && bottom?.kind === 'word') at += 1;
    }
  }
  return joined;
}

/** `2 ft 3 in` and `2' 3"` become `(2 ft + 3 in)`. */
function addFeetAndInches(tokens: readonly Token[]): Token[] {
  const added: Token[] = [];
  for (let at = 0; at < tokens.length; at += 1) {
    const [feet, foot, inches, inch, after] = tokens.slice(at, at + 5);
    const pair = feet!.kind === 'number' && foot?.kind === 'word' && FEET.has(foot.text);
    const complete = inches?.kind === 'number' && inch?.kind === 'word' && INCHES.has(inch.text);
    if (pair && complete && after?.text !== '^' && mayBegin(added.at(-1))) {
      added.push({ kind: 'group', text: `(${feet!.text} ft + ${inches.text} inch)` });
      at += 3;
    } else added.push(feet!);
  }
  return added;
}

/** Words of the text, in order; empty where the text cannot be read at all. */
export function wordsOf(text: string): string[] {
  try {
    return tokenise(text)
      .filter(({ kind }) => kind === 'word')
      .map((token) => token.text);
  } catch (error) {
    if (error instanceof Refusal) return [];
    throw error;
  }
}

/** Quotes a word for a message. */
export function quote(word: string): string {
  return `\`${shorten(word, 40)}\``;
}
