import type fc from 'fast-check';

/** One door through which texts and values of strangers come in, and how it is tried. */
export interface Target {
  /** What is knocked at, in words. */
  readonly says: string;
  /** Cases of the run in the unit suite. */
  readonly runs: number;
  /** Longest that a case may take where it is more work than reading [ms]. */
  readonly longest_ms?: number;
  /** Makes the cases, each with its trial: its value is kept apart so that a failure can be printed. */
  readonly trial: fc.Arbitrary<Trial>;
}

export interface Trial {
  /** What is tried, for the report. */
  readonly given: unknown;
  /** Tries it: gives a word for how it came out, and throws where it came out as it must not. */
  readonly run: () => string | Promise<string>;
}

/** Makes a target's trials of an arbitrary and what is done with each case. */
export function trials<T>(
  cases: fc.Arbitrary<T>,
  run: (given: T) => string | Promise<string>,
): fc.Arbitrary<Trial> {
  return cases.map((given) => ({ given, run: () => run(given) }));
}

/** Throws where something does not hold. */
export function must(holds: boolean, says: string): asserts holds {
  if (!holds) throw new Error(says);
}

/** Longest message that a person is asked to read. */
const LONGEST_MESSAGE = 3000;

/** A refusal has words, and no more of them than can be read. */
export function mustRead(message: unknown, remedy: unknown): void {
  must(typeof message === 'string' && message.trim() !== '', `a refusal without words: ${String(message)}`);
  must(typeof remedy === 'string' && remedy.trim() !== '', `a refusal without remedy: ${message}`);
  must(message.length + remedy.length <= LONGEST_MESSAGE, `a message of ${message.length} characters`);
}

/** Throws at the first number below `value` that is not finite. */
export function mustBeFinite(value: unknown, where: string): void {
  if (typeof value === 'number') must(Number.isFinite(value), `${where} is ${value}`);
  else if (Array.isArray(value)) value.forEach((item, i) => mustBeFinite(item, `${where}[${i}]`));
  else if (value instanceof Map)
    for (const [key, item] of value) mustBeFinite(item, `${where}(${String(key)})`);
  else if (typeof value === 'object' && value !== null)
    for (const [key, item] of Object.entries(value)) mustBeFinite(item, `${where}.${key}`);
}
