import { hiddenFields, issueProblem } from './issue-text.ts';
import { migrate } from './migrate.ts';
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

const refuse = (path: string, message: string, remedy: string): ReadResult => ({
  ok: false,
  problems: [{ path, message, remedy }],
});

/** Reads the text of a file: JSON, format, version, fields, units, named values and the shape of the shop. */
export function readDocument(text: string, options: ReadOptions = {}): ReadResult {
  if (text.length > LONGEST_DOCUMENT) {
    return refuse('', 'the file is larger than any shop document', 'open a Chipdraft shop document');
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
  const hidden = hiddenFields(migrated.value);
  if (hidden.length > 0) return { ok: false, problems: hidden };
  const parsed = SHOP.safeParse(migrated.value, { reportInput: true });
  if (!parsed.success) {
    return { ok: false, problems: parsed.error.issues.map((issue) => issueProblem(issue, migrated.value)) };
  }
  const problems: DocumentProblem[] = [];
  const names = namesOf(parsed.data, problems);
  const document = resolveFields(parsed.data, names, problems);
  if (problems.length > 0) return { ok: false, problems };
  const broken = checkShape(document);
  const gaps = findGaps(document);
  if (broken.length > 0)
    return { ok: false, problems: options.allowIncomplete ? broken : [...broken, ...gaps] };
  return gaps.length > 0 && !options.allowIncomplete
    ? { ok: false, problems: gaps }
    : { ok: true, document, gaps };
}
