import { resolveNamedValues } from '../quantities/named-values.ts';
import { parseQuantity } from '../quantities/parse.ts';
import type { NamedValues } from '../quantities/parse.ts';
import { hiddenFields, issueProblem } from './issue-text.ts';
import { migrate } from './migrate.ts';
import type { DocumentProblem } from './problem.ts';
import { pathText } from './problem.ts';
import { isQuantity } from './quantity-field.ts';
import type { Quantity } from './quantity-field.ts';
import { SHOP } from './schema.ts';
import type { ShopDocument } from './schema.ts';
import { checkShape } from './shape.ts';

/** A document that can be used, or every reason why not. */
export type ReadResult =
  | { readonly ok: true; readonly document: ShopDocument }
  | { readonly ok: false; readonly problems: readonly DocumentProblem[] };

/** Longest document text that is read; a shop of 5000 runs is about 5 MB. */
export const LONGEST_DOCUMENT = 50_000_000;

const refuse = (path: string, message: string, remedy: string): ReadResult => ({
  ok: false,
  problems: [{ path, message, remedy }],
});

/** Reads the text of a file: JSON, format, version, fields, units, named values and the shape of the shop. */
export function readDocument(text: string): ReadResult {
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
  return readValue(raw);
}

/** As `readDocument`, from a value that was already parsed. */
export function readValue(raw: unknown): ReadResult {
  const migrated = migrate(raw);
  if (!migrated.ok) return { ok: false, problems: [migrated.problem] };
  const hidden = hiddenFields(migrated.value);
  if (hidden.length > 0) return { ok: false, problems: hidden };
  const parsed = SHOP.safeParse(migrated.value, { reportInput: true });
  if (!parsed.success) {
    return { ok: false, problems: parsed.error.issues.map((issue) => issueProblem(issue, migrated.value)) };
  }
  const problems: DocumentProblem[] = [];
  const names = resolveNamedValues(parsed.data.values);
  names.errors.forEach((error, i) => {
    const path = `values[${names.errorRows[i]!}]`;
    problems.push({ path, message: `${path}: ${error.message}`, remedy: 'correct the named value' });
  });
  const document = resolveFields(parsed.data, names.values, problems);
  if (problems.length > 0) return { ok: false, problems };
  const shape = checkShape(document);
  return shape.length > 0 ? { ok: false, problems: shape } : { ok: true, document };
}

/** Gives every quantity field its SI value and checks it; what is wrong is added to `problems`. */
export function resolveFields(
  document: ShopDocument,
  names: NamedValues,
  problems: DocumentProblem[],
): ShopDocument {
  const walk = (value: unknown, path: (string | number)[]): unknown => {
    if (isQuantity(value)) return resolveOne(value, names, pathText(document, path), problems);
    if (Array.isArray(value)) return value.map((item, i) => walk(item, [...path, i]));
    if (typeof value === 'object' && value !== null) {
      return Object.fromEntries(
        Object.entries(value).map(([key, item]) => [key, walk(item, [...path, key])]),
      );
    }
    return value;
  };
  return walk(document, []) as ShopDocument;
}

const RULES: Readonly<Record<Quantity['rule'], (si: number) => string | null>> = {
  positive: (si) => (si > 0 ? null : 'must be above zero'),
  'not-negative': (si) => (si >= 0 ? null : 'must not be below zero'),
  share: (si) => (si >= 0 && si <= 1 ? null : 'must be between 0 and 1 (0 % and 100 %)'),
  any: () => null,
};

/** Largest SI value of any field; beyond it no shop exists and squares overflow. */
const LARGEST = 1e12;

function resolveOne(q: Quantity, names: NamedValues, path: string, problems: DocumentProblem[]): Quantity {
  let si = q.si;
  if (q.text !== null) {
    const parsed = parseQuantity(q.text, q.dimension, { field: path, names });
    if (!parsed.ok) {
      problems.push({ path, message: parsed.error.message, remedy: 'correct the entry' });
      return q;
    }
    si = parsed.si;
  }
  const typed = q.text === null ? String(q.si) : `\`${q.text}\``;
  const broken = Math.abs(si) > LARGEST ? 'is larger than anything in a shop' : RULES[q.rule](si);
  if (broken !== null) {
    problems.push({ path, message: `${path}: ${typed} ${broken}`, remedy: 'correct the value' });
  }
  return { ...q, si };
}
