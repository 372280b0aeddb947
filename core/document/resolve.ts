import { resolveNamedValues } from '../quantities/named-values.ts';
import { parseQuantity } from '../quantities/parse.ts';
import type { NamedValues } from '../quantities/parse.ts';
import type { DocumentProblem } from './problem.ts';
import { pathText } from './problem.ts';
import { isQuantity } from './quantity-field.ts';
import type { Quantity } from './quantity-field.ts';
import type { ShopDocument } from './schema.ts';

type Path = readonly (string | number)[];

/** Named values of a document; rows that cannot be read are added to `problems`. */
export function namesOf(document: Pick<ShopDocument, 'values'>, problems: DocumentProblem[]): NamedValues {
  const names = resolveNamedValues(document.values);
  names.errors.forEach((error, i) => {
    const path = `values[${names.errorRows[i]!}]`;
    problems.push({ path, message: `${path}: ${error.message}`, remedy: 'correct the named value' });
  });
  return names.values;
}

/**
 * Gives every quantity field its SI value and checks it; what is wrong is added to `problems`. Parts in which no value
 * changes keep their identity.
 */
export function resolveFields(
  document: ShopDocument,
  names: NamedValues,
  problems: DocumentProblem[],
): ShopDocument {
  return resolveWithin(document, [], document, names, problems) as ShopDocument;
}

/** As `resolveFields`, for one part of a document, which stands at `path` of `root`. */
export function resolveWithin(
  part: unknown,
  path: Path,
  root: unknown,
  names: NamedValues,
  problems: DocumentProblem[],
): unknown {
  const walk = (value: unknown, at: Path): unknown => {
    if (isQuantity(value)) return resolveOne(value, names, () => pathText(root, at), problems);
    if (typeof value !== 'object' || value === null) return value;
    if (Array.isArray(value)) {
      const items = value.map((item, i) => walk(item, [...at, i]));
      return items.every((item, i) => Object.is(item, value[i])) ? value : items;
    }
    let changed = false;
    const entries = Object.entries(value).map(([key, item]) => {
      const next = walk(item, [...at, key]);
      changed ||= !Object.is(next, item);
      return [key, next] as const;
    });
    return changed ? Object.fromEntries(entries) : value;
  };
  return walk(part, path);
}

/** Works out every typed text once more, as after a change of a named value; what does not change keeps its identity. */
export function resolveAgain(
  document: ShopDocument,
):
  | { readonly ok: true; readonly document: ShopDocument }
  | { readonly ok: false; readonly problems: readonly DocumentProblem[] } {
  const problems: DocumentProblem[] = [];
  const names = namesOf(document, problems);
  const resolved = resolveFields(document, names, problems);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, document: resolved };
}

const RULES: Readonly<Record<Quantity['rule'], (si: number) => string | null>> = {
  positive: (si) => (si > 0 ? null : 'must be above zero'),
  'not-negative': (si) => (si >= 0 ? null : 'must not be below zero'),
  share: (si) => (si >= 0 && si <= 1 ? null : 'must be between 0 and 1 (0 % and 100 %)'),
  any: () => null,
};

/** Largest SI value of any field; beyond it no shop exists and squares overflow. */
const LARGEST = 1e12;

function resolveOne(
  q: Quantity,
  names: NamedValues,
  path: () => string,
  problems: DocumentProblem[],
): Quantity {
  let si = q.si;
  if (q.text !== null) {
    const parsed = parseQuantity(q.text, q.dimension, { field: '', names });
    if (!parsed.ok) {
      const place = path();
      const again = parseQuantity(q.text, q.dimension, { field: place, names });
      const message = again.ok ? place : again.error.message;
      problems.push({ path: place, message, remedy: 'correct the entry' });
      return q;
    }
    si = parsed.si;
  }
  const broken = Math.abs(si) > LARGEST ? 'is larger than anything in a shop' : RULES[q.rule](si);
  if (broken !== null) {
    const place = path();
    const typed = q.text === null ? String(q.si) : `\`${q.text}\``;
    problems.push({ path: place, message: `${place}: ${typed} ${broken}`, remedy: 'correct the value' });
  }
  return Object.is(si, q.si) ? q : { ...q, si };
}
