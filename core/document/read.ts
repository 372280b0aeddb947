import { isDeeper } from './depth.ts';
import { issueProblem } from './issue-text.ts';
import { migrate } from './migrate.ts';
import { parseWhole } from './parse-whole.ts';
import type { DocumentProblem } from './problem.ts';
import { namesOf, resolveFields } from './resolve.ts';
import { SHOP } from './schema.ts';
import type { ShopDocument } from './schema.ts';
import { checkShape, findGaps } from './shape.ts';

/** A document that can be used, or every reason why not. */
export type ReadResult =
  | {
      readonly ok: true;
      readonly document: ShopDocument;
      /** What the shop still lacks before air can be followed through it; empty unless asked for. */
      readonly gaps: readonly DocumentProblem[];
    }
  | { readonly ok: false; readonly problems: readonly DocumentProblem[] };

export interface ReadOptions {
  /** Opens a shop that is still being drawn, and says what it lacks instead of refusing it. */
  readonly allowIncomplete?: boolean;
}

/** Longest document text that is read; a shop of 5000 runs is about 5 MB. */
export const LONGEST_DOCUMENT = 50_000_000;

/** Deeper than this no document is nested; to take a deeper one apart would cost more than to look. */
const DEEPEST = 64;

/** Most problems that are told one by one; a person mends the first of them and reads again. */
export const MOST_PROBLEMS = 200;

/** The first problems, and how many more there are. */
function atMost(problems: readonly DocumentProblem[], all = problems.length): readonly DocumentProblem[] {
  if (all <= MOST_PROBLEMS) return problems;
  const left = all - MOST_PROBLEMS;
  const more = {
    path: '',
    message: `and ${left} more like these`,
    remedy: 'mend the first ones and read again',
  };
  return [...problems.slice(0, MOST_PROBLEMS), more];
}

const refuse = (path: string, message: string, remedy: string): ReadResult => ({
  ok: false,
  problems: [{ path, message, remedy }],
});

/** Reads the text of a file: JSON, format, version, fields, units, named values and the shape of the shop. */
export function readDocument(text: string, options: ReadOptions = {}): ReadResult {
  if (text.length > LONGEST_DOCUMENT) {
    const size = `${Math.ceil(text.length / 1e6)} million characters`;
    const limit = `${LONGEST_DOCUMENT / 1e6} million can be read`;
    return refuse('', `the file has ${size}, at most ${limit}`, 'open a shop document, or divide the shop');
  }
  if (isDeeper(text, DEEPEST)) {
    const what = `lists and groups lie more than ${DEEPEST} deep within each other`;
    return refuse('', what, 'open a shop document, or an earlier copy of this one');
  }
  let raw: unknown;
  try {
    raw = JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    const cut = text.trim() === '' ? 'the file is empty' : `the file is not whole JSON: ${why}`;
    return refuse('', cut, 'open another file, or an earlier copy of this one');
  }
  return readValue(raw, options);
}

/** As `readDocument`, from a value that was already parsed. */
export function readValue(raw: unknown, options: ReadOptions = {}): ReadResult {
  const migrated = migrate(raw);
  if (!migrated.ok) return { ok: false, problems: [migrated.problem] };
  const parsed = parseWhole(SHOP, migrated.value);
  if (!parsed.ok) {
    const { issues } = parsed;
    if (issues === null) return { ok: false, problems: parsed.problems };
    const told = issues.slice(0, MOST_PROBLEMS).map((issue) => issueProblem(issue, migrated.value));
    return { ok: false, problems: atMost(told, issues.length) };
  }
  const problems: DocumentProblem[] = [];
  const names = namesOf(parsed.data, problems);
  const document = resolveFields(parsed.data, names, problems);
  if (problems.length > 0) return { ok: false, problems: atMost(problems) };
  const broken = checkShape(document);
  const gaps = findGaps(document);
  if (broken.length > 0)
    return { ok: false, problems: atMost(options.allowIncomplete ? broken : [...broken, ...gaps]) };
  return gaps.length > 0 && !options.allowIncomplete
    ? { ok: false, problems: atMost(gaps) }
    : { ok: true, document, gaps };
}
