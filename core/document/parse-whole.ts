import type * as z from 'zod';
import type { DocumentProblem } from './problem.ts';
import { pathText } from './problem.ts';

interface Place {
  readonly value: object;
  readonly key: PropertyKey;
  readonly parent: Place | null;
}

/** Most fields that are told one by one. */
const MOST_TOLD = 20;

/** Where a group stands for a length, its own word of what it is worth would be asked for. */
const MEASURED = new Set<PropertyKey>(['length', 'size']);
const WORTH = ['toString', 'valueOf'];

function hiddenIn({ value, key }: Place): readonly string[] {
  if (Array.isArray(value)) return [];
  const hidden = Object.hasOwn(value, '__proto__') ? ['__proto__'] : [];
  return MEASURED.has(key) ? [...hidden, ...WORTH.filter((name) => Object.hasOwn(value, name))] : hidden;
}

/**
 * Fields that schemas pass over in silence or stumble over: `__proto__` where names are free, and within a `length`
 * what would be asked how long it is. Walks without recursion, so that depth does not matter, and each group once.
 */
function hiddenFields(raw: unknown): DocumentProblem[] {
  if (typeof raw !== 'object' || raw === null) return [];
  const problems: DocumentProblem[] = [];
  const seen = new Set<object>([raw]);
  const open: Place[] = [{ value: raw, key: '', parent: null }];
  for (let place = open.pop(); place !== undefined; place = open.pop()) {
    const { value } = place;
    for (const name of hiddenIn(place)) {
      const path: PropertyKey[] = [name];
      for (let at: Place = place; at.parent !== null; at = at.parent) path.unshift(at.key);
      const text = pathText(raw, path);
      problems.push({ path: text, message: `${text}: no field may have this name`, remedy: 'remove it' });
      if (problems.length === MOST_TOLD) return problems;
    }
    const isList = Array.isArray(value);
    for (const key of Object.keys(value)) {
      const item = (value as Record<string, unknown>)[key];
      if (typeof item !== 'object' || item === null || seen.has(item)) continue;
      seen.add(item);
      open.push({ value: item, key: isList ? Number(key) : key, parent: place });
    }
  }
  return problems;
}

const STUMBLED: DocumentProblem = {
  path: '',
  message: 'the document holds a value that cannot be read',
  remedy: 'open an earlier copy of it',
};

export type Parsed<T> =
  | { readonly ok: true; readonly data: T }
  | { readonly ok: false; readonly issues: readonly z.core.$ZodIssue[] }
  | { readonly ok: false; readonly issues: null; readonly problems: readonly DocumentProblem[] };

/** Reads a value by a schema; what the schema would pass over or stumble over is refused in words. */
export function parseWhole<S extends z.ZodType>(schema: S, raw: unknown): Parsed<z.output<S>> {
  let parsed: z.ZodSafeParseResult<z.output<S>>;
  try {
    parsed = schema.safeParse(raw, { reportInput: true });
  } catch {
    const hidden = hiddenFields(raw);
    return { ok: false, issues: null, problems: hidden.length > 0 ? hidden : [STUMBLED] };
  }
  if (!parsed.success) return { ok: false, issues: parsed.error.issues };
  const problems = hiddenFields(raw);
  return problems.length > 0 ? { ok: false, issues: null, problems } : { ok: true, data: parsed.data };
}
